package schema

import (
	"fmt"
	"math"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

func isWhole(x float64) bool { return x == math.Trunc(x) && math.Abs(x) <= 1e9 }

func (f *fitter) length(v val) (val, bool) {
	out := v
	switch v.v.Kind {
	case model.Number:
		if v.power == 0 {
			out.v.Num *= f.unit.MM()
		} else if v.power != 1 {
			return val{}, false
		}
	case model.SizeOf:
		out.v = model.Value{Kind: model.Number, Num: v.v.Size.Nominal, At: v.v.At, SizeOf: v.v.SizeOf}
	case model.Text:
		mm, err := drawing.ParseLength(v.v.Text, f.unit)
		if err != nil {
			f.why = err.Error()
			return val{}, false
		}
		out.v = model.Value{Kind: model.Number, Num: mm, At: v.v.At, SizeOf: v.v.SizeOf}
	case model.Set:
		x, power, ok := v.figureOf(f.unit)
		if !ok {
			return val{}, false
		}
		out = figure(x, power, v.v.At)
	default:
		return val{}, false
	}
	out.power = 1
	return out, true
}

func (f *fitter) dimension(v val) (val, bool) {
	out := v
	switch v.v.Kind {
	case model.SizeOf:
	case model.Text:
		s, err := drawing.ParseSize(v.v.Text, f.unit)
		if err != nil {
			f.why = err.Error()
			return val{}, false
		}
		out.v = model.Value{Kind: model.SizeOf, Size: s, At: v.v.At, SizeOf: v.v.SizeOf}
	case model.Number:
		if v.power != 0 && v.power != 1 {
			return val{}, false
		}
		out.v = model.Value{Kind: model.SizeOf, Size: bareSize(v, f.unit), At: v.v.At, SizeOf: v.v.SizeOf}
	case model.Set:
		x, power, ok := v.figureOf(f.unit)
		if !ok {
			return val{}, false
		}
		out.v = model.Value{Kind: model.SizeOf, Size: bareSize(figure(x, power, v.v.At), f.unit), At: v.v.At, SizeOf: v.v.SizeOf}
	default:
		return val{}, false
	}
	out.power = 1
	return out, true
}

func (f *fitter) angle(v val) (val, bool) {
	switch v.v.Kind {
	case model.Number:
		return v, v.power == 0
	case model.Text:
		deg, err := drawing.ParseAngle(v.v.Text)
		if err != nil {
			f.why = err.Error()
			return val{}, false
		}
		out := figure(deg, 0, v.v.At)
		out.v.SizeOf = v.v.SizeOf
		return out, true
	}
	return val{}, false
}

// number takes a pure figure; where the table gives it in mm (a module) also a length.
func (f *fitter) number(v val) (val, bool) {
	switch {
	case v.v.Kind == model.Number && (v.power == 0 || v.power == 1 && f.attr.Unit == "mm"):
		out := v
		out.power = 0
		return out, true
	case v.v.Kind == model.SizeOf && f.attr.Unit == "mm":
		return figure(v.v.Size.Nominal, 0, v.v.At), true
	}
	return val{}, false
}

// sizes takes one size, a list, a series or a usual set.
func (f *fitter) sizes(v val) (val, bool) {
	out := val{v: model.Value{Kind: model.Set, At: v.v.At}, power: 1, weight: 1}
	if v.v.Kind == model.Set {
		out.v.Sizes = scaled(v.v.Sizes, f.scale(v))
		return out, true
	}
	if v.v.Kind != model.List {
		one, ok := f.length(v)
		if !ok {
			return val{}, false
		}
		out.v.Sizes = model.Sizes{Single: true, List: []model.Member{{Size: one.v.Num}}}
		return out, true
	}
	for _, m := range v.list {
		if m.state == known && m.v.Kind == model.RefTo {
			m = f.r.deref(m)
		}
		if m.state != known {
			out.state = max(out.state, m.state)
			continue
		}
		if m.v.Kind == model.Set {
			s := scaled(m.v.Sizes, f.scale(m))
			out.v.Sizes.List = append(out.v.Sizes.List, s.List...)
			out.v.Sizes.Series = append(out.v.Sizes.Series, s.Series...)
			continue
		}
		one, ok := f.length(m)
		if !ok {
			return val{}, false
		}
		out.v.Sizes.List = append(out.v.Sizes.List, model.Member{Size: one.v.Num})
	}
	if out.state != known {
		return val{state: out.state}, true
	}
	return out, len(v.list) > 0
}

// scale is what bare figures of a set are multiplied by.
func (f *fitter) scale(v val) float64 {
	if v.power == 0 {
		return f.unit.MM()
	}
	return 1
}

func scaled(s model.Sizes, by float64) model.Sizes {
	if by == 1 {
		return s
	}
	out := model.Sizes{Single: s.Single, Named: s.Named}
	for _, m := range s.List {
		out.List = append(out.List, model.Member{Size: m.Size * by, Name: m.Name})
	}
	for _, r := range s.Series {
		out.Series = append(out.Series, model.Series{From: r.From * by, To: r.To * by, By: r.By * by})
	}
	return out
}

func (f *fitter) speeds(v val) (val, bool) {
	switch v.v.Kind {
	case model.Number:
		return v, v.power == 0
	case model.Set:
		return v, v.power == 0
	case model.List:
		return f.listOf(v, form{Kind: formList, Of: &form{Kind: formNumber}})
	case model.Object:
		number := []form{{Kind: formNumber}}
		return f.members(v, []*attr{
			{Kind: f.attr.Kind, Name: f.attr.Name + ".from", Forms: number, Required: true},
			{Kind: f.attr.Kind, Name: f.attr.Name + ".to", Forms: number, Required: true},
		})
	}
	return val{}, false
}

func (f *fitter) thread(v val) (val, bool) {
	if v.v.Kind == model.ThreadOf {
		return v, true
	}
	if v.v.Kind != model.Text {
		return val{}, false
	}
	t, err := drawing.ParseThread(v.v.Text)
	if err != nil {
		f.why = err.Error()
		return val{}, false
	}
	return val{v: model.Value{Kind: model.ThreadOf, Thread: filled(t), At: v.v.At}}, true
}

func (f *fitter) taper(v val) (val, bool) {
	if v.v.Kind == model.TaperOf {
		return v, true
	}
	if v.v.Kind != model.Text {
		return val{}, false
	}
	t, err := drawing.ParseTaper(v.v.Text)
	if err != nil {
		f.why = err.Error()
		return val{}, false
	}
	return val{v: model.Value{Kind: model.TaperOf, Taper: t, At: v.v.At}}, true
}

func (f *fitter) material(v val) (val, bool) {
	if v.v.Kind == model.MaterialOf {
		return v, true
	}
	if v.v.Kind != model.Text {
		return val{}, false
	}
	m, ok := materialNamed(v.v.Text)
	m.Written = v.v.Text
	m.Unsure = !ok && strings.EqualFold(strings.TrimSpace(v.v.Text), "unknown")
	if !ok {
		if n := f.r.near(v.v.Text, materialNames()); n != "" && !m.Unsure {
			f.r.say(slipUnknownName, v.v.At, fmt.Sprintf("no material is called %s in the handbook; the nearest is %s", quoted(v.v.Text), quoted(n)))
			return wrongVal, true
		}
	}
	return val{v: model.Value{Kind: model.MaterialOf, Material: m, At: v.v.At}}, true
}

func (f *fitter) feed(v val) (val, bool) {
	if v.v.Kind == model.FeedOf {
		return v, true
	}
	if v.v.Kind != model.Text {
		return val{}, false
	}
	d, err := drawing.ParseFeed(v.v.Text, f.unit)
	if err != nil {
		f.why = err.Error()
		return val{}, false
	}
	return val{v: model.Value{Kind: model.FeedOf, Feed: d, At: v.v.At}}, true
}

// powerOf says whether the value of an attribute is a length (1) or a plain figure (0).
func powerOf(a *attr) float64 {
	for _, x := range a.Forms {
		if p := powerOfForm(x); p != 0 {
			return p
		}
	}
	return 0
}

func powerOfForm(x form) float64 {
	switch x.Kind {
	case formLength, formDimension, formSizes:
		return 1
	}
	return 0
}

// filled completes a thread from the handbook: the coarse pitch, the diameter of a number.
func filled(t drawing.Thread) drawing.Thread {
	if full, ok := fillThread(t); ok {
		return full
	}
	return t
}
