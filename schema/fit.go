package schema

import (
	"slices"
	"strconv"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Fitting. The table says in which forms an attribute may be written; the first form that
// takes the value settles what it is. Where none does, one sentence says what is wanted.

// fitter fits values for one attribute.
type fitter struct {
	r    *reader
	attr *attr
	in   *node
	unit drawing.Unit
	why  string // what a parser said of a text that came nearest
}

// fit makes of a raw value what its slot wants.
func (r *reader) fit(v val, s *slot) val {
	f := &fitter{r: r, attr: s.attr, in: s.of, unit: s.of.home.unit}
	if s.of.kind.Name == "recipe" || s.of.kind.Name == "shop" {
		f.unit = headerUnit(s.of)
	}
	return f.attribute(v)
}

// headerUnit reads the unit of a header's own figures; the folder's is not settled yet.
func headerUnit(n *node) drawing.Unit {
	if s := n.named["units"]; s != nil && s.state == wasRead && s.got.v.Text == "in" {
		return drawing.Inch
	}
	return n.home.unit
}

func (f *fitter) attribute(v val) val {
	if v.state != known {
		return val{state: v.state, v: model.Value{At: v.v.At}}
	}
	if f.attr.Kind == "given" {
		return v
	}
	if says := f.refused(v); says != "" {
		f.r.say(slipRefusedWord, v.v.At, says)
		return wrongVal
	}
	out, ok := f.any(v, f.attr.Forms)
	if !ok {
		f.complain(v)
		return val{state: wrong, v: model.Value{At: v.v.At}}
	}
	if out.state != known {
		return out
	}
	if !f.inRange(&out) {
		return val{state: wrong, v: model.Value{At: v.v.At}}
	}
	return out
}

// refused says why a word is not taken because it means two things.
func (f *fitter) refused(v val) string {
	if f.attr.Kind != "tap" || f.attr.Name != "leads" {
		return ""
	}
	for _, m := range append(v.list, v) {
		if m.v.Kind == model.Text && m.v.Text == "plug" {
			return `"plug" means the second tap of a set to some and the bottoming tap to others: say "second" or "bottoming"`
		}
	}
	return ""
}

// any fits a value to the first form that takes it. Words of a choice come before free
// text, and a text that is a reference in disguise ("top") becomes one.
func (f *fitter) any(v val, forms []form) (val, bool) {
	hasRef := slices.ContainsFunc(forms, func(x form) bool { return x.Kind == formRef })
	var later []form
	for _, x := range forms {
		if x.Kind == formText {
			later = append(later, x)
			continue
		}
		if out, ok := f.one(v, x); ok {
			return out, true
		}
	}
	for _, x := range later {
		if out, ok := f.one(v, x); ok {
			if hasRef {
				return f.wordRef(out)
			}
			return out, true
		}
	}
	return val{}, false
}

// wordRef makes a reference of a text: a face by its name, or a bare word.
func (f *fitter) wordRef(v val) (val, bool) {
	face, six := model.ParseFace(v.v.Text)
	if wantsFace(f.attr) && !six && v.v.Text != "outside" {
		f.r.say(slipUnknownName, v.v.At, noFace(v.v.Text))
		return wrongVal, true
	}
	t := &target{face: face, word: v.v.Text}
	out := f.r.refTo(t, v.v.At)
	out.v.Ref.Text = v.v.Text
	return out, true
}

// wantsFace says whether every text of an attribute names a face.
func wantsFace(a *attr) bool {
	for _, x := range a.Forms {
		for x.Kind == formList && x.Of != nil {
			x = *x.Of
		}
		if x.Kind == formRef && slices.Contains(x.RefKinds, "face") {
			return true
		}
	}
	return false
}

// one fits a value to one form.
func (f *fitter) one(v val, x form) (val, bool) {
	if v.state != known {
		return v, true
	}
	if x.Kind == formRef {
		return f.reference(v, x)
	}
	if v.v.Kind == model.RefTo {
		if x.Kind == formPlace && isFace(v.ref) {
			return placeOfFace(v), true
		}
		d := f.r.deref(v)
		if d.state != known {
			return d, true
		}
		if d.v.Kind == model.RefTo && d.ref == v.ref {
			return val{}, false // a thing, where a value is wanted
		}
		d.v.At = v.v.At
		return f.one(d, x)
	}
	switch x.Kind {
	case formLength:
		if f.attr.Name == "depth" {
			return f.dimension(v) // a drawing may give limits for a depth too
		}
		return f.length(v)
	case formDimension:
		return f.dimension(v)
	case formAngle:
		return f.angle(v)
	case formNumber:
		return f.number(v)
	case formWhole:
		return v, v.v.Kind == model.Number && v.power == 0 && isWhole(v.v.Num)
	case formFigure:
		return v, v.v.Kind == model.Number && slices.ContainsFunc(x.OneOf, func(w string) bool { n, _ := strconv.ParseFloat(w, 64); return sameFigure(n, v.v.Num) })
	case formText:
		return v, v.v.Kind == model.Text
	case formWord:
		return v, v.v.Kind == model.Text && slices.Contains(x.OneOf, v.v.Text)
	case formYesNo:
		return v, v.v.Kind == model.YesNo
	case formSizes:
		return f.sizes(v)
	case formSpeeds:
		return f.speeds(v)
	case formThread:
		return f.thread(v)
	case formTaper:
		return f.taper(v)
	case formMaterial:
		return f.material(v)
	case formFeed:
		return f.feed(v)
	case formPlace:
		return f.place(v)
	case formObject:
		return f.object(v)
	case formList:
		return f.listOf(v, x)
	case formExpression:
		return v, true
	}
	return val{}, false
}

// listOf fits the members of a list. One reference, word, thread or object alone stands for
// a list of one; a figure does not, because most lists of figures have a fixed order.
func (f *fitter) listOf(v val, x form) (val, bool) {
	if x.Of == nil {
		return val{}, false
	}
	forms := append([]form{*x.Of}, x.Others...)
	if v.v.Kind != model.List {
		switch x.Of.Kind {
		case formRef, formText, formWord, formThread, formObject, formPlace:
			one, ok := f.any(v, forms)
			if !ok || one.state != known {
				return one, ok
			}
			return val{v: model.Value{Kind: model.List, At: v.v.At, List: []model.Value{one.v}}, list: []val{one}, weight: 1 + one.weight}, true
		}
		return val{}, false
	}
	out := val{v: model.Value{Kind: model.List, At: v.v.At}, weight: v.weight, power: powerOfForm(*x.Of)}
	told := ""
	for _, m := range v.list {
		if m.state != known {
			out.state = max(out.state, m.state)
			continue
		}
		if x.Of.Kind == formPlace && m.v.Kind != model.List && m.v.Kind != model.Object && m.v.Kind != model.RefTo && m.v.Kind != model.PositionOf {
			return val{}, false // a list of figures is one place, and this is none
		}
		one, ok := f.any(m, forms)
		if !ok {
			inner := &fitter{r: f.r, attr: f.attr, in: f.in, unit: f.unit, why: f.why}
			if len(f.attr.Forms) > 1 && slices.ContainsFunc(f.attr.Forms, func(o form) bool { return o.Kind != formList }) && x.Of.Kind != formRef {
				return val{}, false
			}
			told = f.r.once(told, func() { inner.complainOf(m, forms) })
			out.state = wrong
			continue
		}
		out.state = max(out.state, one.state)
		out.list = append(out.list, one)
		out.v.List = append(out.v.List, one.v)
	}
	if out.state != known {
		return val{state: out.state, v: model.Value{At: v.v.At}}, true
	}
	return out, true
}

// reference takes a reference whose target is of a kind that is wanted.
func (f *fitter) reference(v val, x form) (val, bool) {
	if v.v.Kind != model.RefTo {
		// A face may stand by its name alone wherever a face is wanted, also within a list.
		if _, six := model.ParseFace(v.v.Text); six && v.v.Kind == model.Text && slices.Contains(x.RefKinds, "face") {
			return f.wordRef(v)
		}
		return val{}, false
	}
	t := v.ref
	switch {
	case len(x.RefKinds) == 0:
		return v, f.attr.last() != "makes" || t.kind == nil || t.kind.Where != "shop"
	case t.kind == nil || t.face != model.NoFace || strings.HasPrefix(t.sub, "face."):
		return v, slices.Contains(x.RefKinds, "face") || slices.Contains(x.RefKinds, "feature")
	case t.attr && t.sub == "thread" && slices.Contains(x.RefKinds, "thread"):
		return v, true
	case t.attr && isFeaturePart(t) && x.takes(t.kind):
		return v, true
	case t.attr:
		return val{}, false // a value, not a thing
	case slices.Contains(x.RefKinds, "setup") && t.kind.Where == "setup":
		return v, true
	case slices.Contains(x.RefKinds, "shop item") && t.kind.Name == "part":
		return v, true // a part of this build that work is held on or with
	}
	return v, x.takes(t.kind)
}

// isFeaturePart says whether a reference leads to a part of a feature that is made for
// itself: hole.screw.thread, hole.screw.counterbore.
func isFeaturePart(t *target) bool {
	return t.kind.Where == "feature" && slices.Contains([]string{"thread", "counterbore", "countersink"}, t.sub)
}
