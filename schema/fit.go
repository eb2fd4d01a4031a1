package schema

import (
	"fmt"
	"math"
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
	if !ok {
		if n := near(v.v.Text, materialNames()); n != "" && !m.Unsure {
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
	for _, m := range v.list {
		if m.state != known {
			out.state = max(out.state, m.state)
			continue
		}
		one, ok := f.any(m, forms)
		if !ok {
			inner := &fitter{r: f.r, attr: f.attr, in: f.in, unit: f.unit, why: f.why}
			if len(f.attr.Forms) > 1 && slices.ContainsFunc(f.attr.Forms, func(o form) bool { return o.Kind != formList }) && x.Of.Kind != formRef {
				return val{}, false
			}
			inner.complainOf(m, forms)
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
		return v, true
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

// complain says what an attribute wants.
func (f *fitter) complain(v val) { f.complainOf(v, f.attr.Forms) }

func (f *fitter) complainOf(v val, forms []form) {
	at := v.v.At
	name := f.attr.last()
	if v.v.Kind == model.RefTo {
		f.complainOfRef(v, forms)
		return
	}
	if v.v.Kind == model.Text {
		var choice []string
		for _, x := range forms {
			if x.Kind == formWord {
				choice = append(choice, x.OneOf...)
			}
			if x.Kind == formList && x.Of != nil && x.Of.Kind == formWord {
				choice = append(choice, x.Of.OneOf...)
			}
		}
		if n := near(v.v.Text, choice); n != "" {
			f.r.say(slipWrongValue, at, fmt.Sprintf("%s is not one of the words for %s; the nearest is %s", quoted(v.v.Text), name, quoted(n)))
			return
		}
		if f.why != "" && parsedForms(forms) == 1 {
			f.r.say(slipWrongValue, at, fmt.Sprintf("%s wants %s; %s", name, wanted(forms), f.why))
			return
		}
	}
	f.r.say(slipWrongValue, at, fmt.Sprintf("%s wants %s; this is %s", name, wanted(forms), v.what()))
}

// parsedForms counts the forms that are read from notation.
func parsedForms(forms []form) int {
	n := 0
	for _, x := range forms {
		switch x.Kind {
		case formLength, formDimension, formAngle, formThread, formTaper, formFeed, formSizes:
			n++
		}
	}
	return n
}

// complainOfRef says that a reference leads to something of another kind.
func (f *fitter) complainOfRef(v val, forms []form) {
	t := v.ref
	leads := "a face"
	switch {
	case t.kind != nil && t.attr:
		leads = "the " + plain(lastWord(t.sub)) + " of " + article(plain(t.kind.Name))
	case t.kind != nil:
		leads = article(plain(t.kind.Name))
	}
	f.r.say(slipWrongThing, v.v.At, fmt.Sprintf("%s wants %s; %s is %s", f.attr.last(), wanted(forms), shown(v.v.Ref.Text), leads))
}

func lastWord(dotted string) string { return dotted[strings.LastIndexByte(dotted, '.')+1:] }

// wanted lists the forms that an attribute takes, with an example of each.
func wanted(forms []form) string {
	var out []string
	for _, x := range forms {
		if w := wantedForm(x); !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return either(out)
}

func wantedForm(x form) string {
	switch x.Kind {
	case formLength:
		return `a length such as 12 or "3/8 in"`
	case formDimension:
		return `a dimension such as 8, "8 H7" or "30 ±0.1"`
	case formAngle:
		return `an angle in degrees such as 45 or "22 deg 30'"`
	case formNumber:
		return "a number such as 40"
	case formWhole:
		return "a whole number such as 4"
	case formText:
		return "a text in quotes"
	case formYesNo:
		return "true or false"
	case formSizes:
		return "a size or a set of sizes such as [2, 3, 4] or series(1, 13, 0.5)"
	case formSpeeds:
		return "speeds such as [120, 400, 900] or { from = 60, to = 2000 }"
	case formThread:
		return `a thread such as "M6" or "1/4-20 UNC"`
	case formTaper:
		return `a taper such as "MT2" or "1:10"`
	case formMaterial:
		return `a material such as "brass" or "CW614N"`
	case formPlace:
		return "a place such as [8, 12.5] or { left = 8, front = 12.5 }"
	case formFeed:
		return `a feed such as "0.1 mm/rev"`
	case formObject:
		return "an object { name = value }"
	case formWord:
		if len(x.OneOf) == 1 {
			return quoted(x.OneOf[0])
		}
		return "one of " + strings.ReplaceAll(quotedAll(x.OneOf), " and ", " or ")
	case formFigure:
		return either(x.OneOf)
	case formList:
		return wantedList(x)
	case formRef:
		return wantedRef(x)
	}
	return "a value"
}

func wantedList(x form) string {
	if x.Of == nil {
		return "a list"
	}
	switch x.Of.Kind {
	case formLength:
		return "a list of lengths such as [8, 12]"
	case formDimension:
		return "a list of dimensions"
	case formAngle:
		return "a list of angles such as [0, 90]"
	case formNumber, formWhole:
		return "a list of numbers such as [15, 16]"
	case formThread:
		return `a list of threads such as ["M6", "M8"]`
	case formText:
		return `a list of texts such as ["base", "cap"]`
	case formPlace:
		return "a list of places such as [[8, 12], [22, 12]]"
	case formObject:
		return "a list of objects { name = value }"
	case formWord:
		return "a list of words out of " + strings.ReplaceAll(quotedAll(x.Of.OneOf), " and ", ", ")
	case formRef:
		return "a list of references such as [" + exampleRef(x.Of.RefKinds) + "]"
	}
	return "a list"
}

func wantedRef(x form) string {
	if len(x.RefKinds) == 0 {
		return "a reference such as hole.pillar"
	}
	var kinds []string
	for _, k := range x.RefKinds {
		switch k {
		case "shop item":
			kinds = append(kinds, "a thing of the shop")
		default:
			kinds = append(kinds, article(plain(k)))
		}
	}
	return either(kinds) + " by reference, such as " + exampleRef(x.RefKinds)
}

func exampleRef(kinds []string) string {
	if len(kinds) == 0 {
		return "hole.pillar"
	}
	switch kinds[0] {
	case "shop item":
		return "vise.small"
	case "feature":
		return "hole.pillar"
	case "face":
		return "face.top"
	case "cutter":
		return "end_mill.long"
	case "instrument":
		return "micrometer.first"
	}
	return kinds[0] + ".name"
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

