package schema

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Objects and places: { left = 8, front = "8 ±0.05" }, { from = face.left, size = 20 }.

// keyWord gives the key of a member where it is one plain word or a text.
func keyWord(e hclsyntax.Expression) (string, bool) {
	k, ok := e.(*hclsyntax.ObjectConsKeyExpr)
	if !ok || k.ForceNonLiteral {
		return "", false
	}
	switch w := k.Wrapped.(type) {
	case *hclsyntax.ScopeTraversalExpr:
		if len(w.Traversal) == 1 {
			return w.Traversal.RootName(), true
		}
	case *hclsyntax.TemplateExpr:
		if len(w.Parts) == 1 {
			if l, ok := w.Parts[0].(*hclsyntax.LiteralValueExpr); ok {
				return l.Val.AsString(), true
			}
		}
		return "", len(w.Parts) == 0
	}
	return "", false
}

// object fits the members of an object by the rows of the table.
func (f *fitter) object(v val) (val, bool) {
	if v.v.Kind != model.Object {
		return val{}, false
	}
	return f.members(v, f.attr.Members)
}

func (f *fitter) members(v val, rows []*attr) (val, bool) {
	if v.object == nil {
		return v, true // read before, through a reference
	}
	out := val{v: model.Value{Kind: model.Object, At: v.v.At}, weight: v.weight}
	find := func(word string) (*attr, bool) {
		for _, m := range rows {
			if m.last() == word || slices.Contains(m.Also, word) || slices.Contains(m.Also, f.attr.Name+"."+word) {
				return m, true
			}
		}
		if len(rows) == 0 || f.attr.Free != nil {
			return f.freeMember(word)
		}
		return nil, false
	}
	seen := map[string]bool{}
	for _, item := range v.object.expr.Items {
		at := placeOf(item.KeyExpr.Range())
		word, ok := keyWord(item.KeyExpr)
		if !ok {
			f.r.say(slipWrongValue, at, fmt.Sprintf("within %s a member is written name = value, the name as one word", f.attr.last()))
			continue
		}
		row, ok := find(word)
		if !ok {
			f.strayMember(word, rows, item)
			continue
		}
		if seen[row.Name] {
			f.r.say(slipGivenTwice, at, fmt.Sprintf("%s is given twice within %s; the first one is taken", shown(word), f.attr.last()))
			continue
		}
		seen[row.Name] = true
		inner := &fitter{r: f.r, attr: row, in: f.in, unit: f.unit}
		got := inner.attribute(f.r.eval(item.ValueExpr, v.object.in))
		got.v.At = placeOf(item.ValueExpr.Range())
		if got.state != known {
			got.v.Kind = model.NoValue
		}
		out.list = append(out.list, got)
		out.weight += got.weight
		out.v.Object = append(out.v.Object, model.Attr{Name: row.Name, Word: word, At: at, Value: got.v})
	}
	for _, m := range rows {
		if m.Required && !seen[m.Name] {
			f.r.say(slipNotGiven, v.v.At, fmt.Sprintf("%s must say %s: %s", f.attr.last(), m.last(), m.Meaning))
			out.state = wrong
		}
	}
	f.oneOfMembers(v, rows, seen)
	if out.state != known {
		return val{state: out.state}, true
	}
	return out, true
}

// freeMember is the row of a member whose name the writer chooses.
func (f *fitter) freeMember(word string) (*attr, bool) {
	forms := []form{{Kind: formLength}}
	if f.attr.Free != nil {
		forms = []form{*f.attr.Free}
	} else if f.attr.Unit != "mm" {
		forms = []form{{Kind: formNumber}, {Kind: formText}, {Kind: formYesNo}, {Kind: formRef}}
	}
	return &attr{Kind: f.attr.Kind, Name: f.attr.Name + "." + word, Forms: forms, Unit: f.attr.Unit}, true
}

func (f *fitter) oneOfMembers(v val, rows []*attr, seen map[string]bool) {
	groups := map[string][]string{}
	for _, m := range rows {
		if m.Group != "" && seen[m.Name] {
			groups[m.Group] = append(groups[m.Group], m.last())
			if len(groups[m.Group]) == 2 {
				f.r.say(slipOneTooMany, v.v.At, fmt.Sprintf("only one of %s may be given within %s", all(groups[m.Group]), f.attr.last()))
			}
		}
	}
}

func (f *fitter) strayMember(word string, rows []*attr, item hclsyntax.ObjectConsItem) {
	at := placeOf(item.KeyExpr.Range())
	names := wordsOf(rows)
	if n := f.r.near(word, names); n != "" {
		f.r.say(slipUnknownWord, at, fmt.Sprintf("%s has no member %s; the nearest is %s", f.attr.last(), quoted(word), n))
		return
	}
	f.r.say(slipUnknownWord, at, fmt.Sprintf("%s has no member %s; it has %s", f.attr.last(), quoted(word), someOf(names)))
}

// place fits a place on a face: co-ordinates from left, front and bottom, or each with the
// datum it is measured from. One figure alone is one co-ordinate; a face alone is the
// place of that face.
func (f *fitter) place(v val) (val, bool) {
	out := val{v: model.Value{Kind: model.PositionOf, At: v.v.At}, weight: 1}
	out.v.Position.At = v.v.At
	switch v.v.Kind {
	case model.PositionOf:
		return v, true
	case model.List:
		return f.shortPlace(v, out)
	case model.Object:
		if v.object == nil {
			return val{}, false
		}
		return f.longPlace(v, out)
	case model.Number, model.Text, model.SizeOf:
		s, ok := f.dimension(v)
		if !ok {
			return val{}, false
		}
		out.v.Position.Short = []drawing.Size{s.v.Size}
		return out, true
	}
	return val{}, false
}

// isFace says whether a reference leads to a face: of the part, or one that a feature makes.
func isFace(t *target) bool {
	return t.kind == nil || t.sub != "" && !t.attr
}

// placeOfFace is the place where a face lies: no distance away from it.
func placeOfFace(v val) val {
	at := v.v.At
	p := model.Position{At: at, Coords: []model.Coordinate{{Datum: v.v.Ref, Size: drawing.PlainSize(0, "", drawing.Millimetre), At: at}}}
	return val{v: model.Value{Kind: model.PositionOf, Position: p, At: at}, weight: 1}
}

func (f *fitter) shortPlace(v, out val) (val, bool) {
	if len(v.list) == 0 || len(v.list) > 3 {
		return val{}, false
	}
	for i, m := range v.list {
		if m.state == known && m.v.Kind == model.RefTo {
			m = f.r.deref(m)
		}
		if m.state != known {
			out.state = max(out.state, m.state)
			continue
		}
		if i == 1 && f.onRound() {
			a, ok := f.angle(m)
			if !ok {
				return val{}, false
			}
			out.v.Position.Short = append(out.v.Position.Short, drawing.PlainSize(a.v.Num, "", drawing.Millimetre))
			continue
		}
		s, ok := f.dimension(m)
		if !ok {
			return val{}, false
		}
		out.v.Position.Short = append(out.v.Position.Short, s.v.Size)
	}
	if out.state != known {
		return val{state: out.state}, true
	}
	return out, true
}

// onRound says whether a place lies on a turned surface, where its second co-ordinate is
// an angle: into or on is the outside or a turned feature, and not one of its shoulders.
func (f *fitter) onRound() bool {
	part := f.in.in("part")
	toothed := part != nil && slices.ContainsFunc(part.kids, func(n *node) bool { return n.kind.Name == "teeth" })
	if part == nil || part.named["diameter"] == nil && part.named["hexagon"] == nil && part.named["square"] == nil && !toothed {
		return false
	}
	for _, name := range []string{"into", "on"} {
		s := f.in.named[name]
		if s == nil || s.state == beingRead {
			continue
		}
		v := f.r.read(s)
		if v.state != known || v.v.Kind != model.RefTo {
			return false
		}
		ref := v.v.Ref
		switch {
		case ref.Item == nil:
			return ref.Face != model.Left && ref.Face != model.Right
		case ref.Sub == "left" || ref.Sub == "right" || ref.Sub == "floor":
			return false
		}
		return slices.Contains([]string{"outside", "bore", "taper", "knurl", "groove", "thread"}, ref.Item.Kind)
	}
	return false
}

func (f *fitter) longPlace(v, out val) (val, bool) {
	for _, item := range v.object.expr.Items {
		at := placeOf(item.KeyExpr.Range())
		datum, ok := f.datum(item.KeyExpr, v.object.in)
		if !ok {
			out.state = wrong
			continue
		}
		for _, c := range out.v.Position.Coords {
			if c.Datum.Path() == datum.Path() && datum.Item == nil {
				f.r.say(slipGivenTwice, at, fmt.Sprintf("%s is given twice in this place", shown(datum.Text)))
				out.state = wrong
			}
		}
		m := f.r.eval(item.ValueExpr, v.object.in)
		if m.state == known && m.v.Kind == model.RefTo {
			m = f.r.deref(m)
		}
		if m.state != known {
			out.state = max(out.state, m.state)
			continue
		}
		var size drawing.Size
		if datum.Text == "angle" {
			a, ok := f.angle(m)
			if !ok {
				f.r.say(slipWrongValue, m.v.At, "an angle in degrees is wanted here; this is "+m.what())
				out.state = wrong
				continue
			}
			size = drawing.PlainSize(a.v.Num, "", drawing.Millimetre)
		} else {
			s, ok := f.dimension(m)
			if !ok {
				says := "a distance such as 8 or \"8 ±0.05\" is wanted here; this is " + m.what()
				if f.why != "" {
					says = "a distance such as 8 or \"8 ±0.05\" is wanted here; " + bareReason(f.why)
				}
				f.r.say(slipWrongValue, placeOf(item.ValueExpr.Range()), says)
				out.state = wrong
				continue
			}
			size = s.v.Size
		}
		out.v.Position.Coords = append(out.v.Position.Coords, model.Coordinate{Datum: datum, Size: size, At: placeOf(item.ValueExpr.Range())})
	}
	if out.state != known {
		return val{state: out.state}, true
	}
	return out, len(v.object.expr.Items) > 0
}

// datum reads what a co-ordinate is measured from: a face by its name, or a reference.
func (f *fitter) datum(e hclsyntax.Expression, in *node) (model.Ref, bool) {
	at := placeOf(e.Range())
	if word, ok := keyWord(e); ok {
		face, six := model.ParseFace(word)
		if six || word == "angle" || word == "axis" {
			return model.Ref{At: at, Text: word, Face: face}, true
		}
		known := []string{"left", "right", "front", "back", "bottom", "top", "axis", "angle"}
		says := fmt.Sprintf("%s is no face to measure from", quoted(word))
		if n := f.r.near(word, known); n != "" {
			says += "; the nearest is " + n
		} else {
			says += "; there are " + strings.Join(known[:6], ", ") + ", and references such as hole.pillar"
		}
		f.r.say(slipUnknownName, at, says)
		return model.Ref{}, false
	}
	k, ok := e.(*hclsyntax.ObjectConsKeyExpr)
	if !ok || k.ForceNonLiteral {
		f.r.say(slipWrongValue, at, "what a place is measured from is written without brackets: { left = 8 } or { hole.pillar = 22 }")
		return model.Ref{}, false
	}
	v := f.r.eval(k.Wrapped, in)
	if v.state != known {
		return model.Ref{}, false
	}
	if v.v.Kind != model.RefTo || v.ref.attr {
		f.r.say(slipWrongThing, at, "a place is measured from a face or a feature; this is "+v.what())
		return model.Ref{}, false
	}
	return v.v.Ref, true
}
