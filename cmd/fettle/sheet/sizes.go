package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// sizes are what the drawing of a part says besides its outlines: as the recipe gives them, each
// once, in the view that looks along the hole or slot it is of.
func sizes(t *eval.PartTrace) sketch.Sizes {
	p := t.Part
	if t.Lies != nil {
		return foldedSizes(t)
	}
	forms := p.Forms
	if p.Joined() { // the others stand with their parts
		forms, _ = t.MadeTogether()
	}
	forms, unmade := madeOf(t, forms)
	s := sketch.Sizes{General: general(p.Build.Recipe.General), Turned: !p.Joined() && turnedAlone(p)}
	g := p.Build.Recipe.General
	for _, l := range p.Laid() {
		if p.Joined() && !slices.Contains(forms, l.Form) || slices.Contains(unmade, l.Form) {
			continue
		}
		in, ok := viewOf(p, &l)
		if !ok || l.Axis > 0 && s.Turned && in == sketch.Above {
			continue
		}
		at, upto := math.NaN(), math.NaN()
		switch i := other(in, l.Axis); {
		case l.Form == nil || l.Form.Lathe != nil:
		case len(l.Form.Mouths) > 0 || l.Form.Feature.Kind == "outline":
			at, upto = l.At[i], l.At[i]
		default:
			at, upto = l.Form.Lo[i], l.Form.Hi[i]
		}
		if l.Placed && (math.Abs(l.To-l.From) < model.Grain || math.Abs(math.Abs(l.To-l.From)-p.Size[l.Axis]) < model.Grain) {
			continue // at the datum itself, or as far off as the part is long
		}
		s.Lengths = append(s.Lengths, sketch.Length{In: in, Axis: l.Axis, From: l.From, To: l.To, At: at, Upto: upto, Placed: l.Placed,
			Words: toleranced(l.Size, g, l.Of, l.Attr)})
	}
	s.Lengths = once(s.Lengths)
	m := p.Part
	lo, hi := p.Low, p.High()
	switch r := m.Diameter; {
	case p.Joined():
	case p.Round && r.Is():
		s.Lengths = append(s.Lengths, sketch.Length{In: sketch.InFront, Axis: 2, From: -r.V.Nominal / 2, To: r.V.Nominal / 2, At: math.NaN(),
			Words: "Ø" + toleranced(r.V, g, m.Item, "diameter")})
	case p.Round && m.Hexagon.Is():
		s.Notes = append(s.Notes, sketch.Note{In: sketch.Aside, At: solid.Vec{lo[0], 0, hi[2]}, Words: "hexagon " + toleranced(m.Hexagon.V, g, m.Item, "hexagon") + " across flats"})
	case p.Round && m.Square.Is():
		s.Notes = append(s.Notes, sketch.Note{In: sketch.Aside, At: solid.Vec{lo[0], 0, hi[2]}, Words: "square " + toleranced(m.Square.V, g, m.Item, "square")})
	}
	for _, f := range forms {
		if f.Wrong == "" && len(f.Lacks) == 0 {
			if n, ok := note(p, f, g); ok && !slices.ContainsFunc(s.Notes, func(o sketch.Note) bool { return same(n, o) }) && !wholeDiameter(p, f) {
				s.Notes = append(s.Notes, n)
			}
		}
	}
	return s
}

// same says whether two notes say the same of what lies one behind the other.
func same(a, b sketch.Note) bool {
	d := a.At.Sub(b.At)
	d[[3]int{1, 2, 0}[a.In]] = 0
	return a.In == b.In && a.Words == b.Words && d.Len() < model.Grain
}

// wholeDiameter says whether an outside is as thick as the part, of which that is said already.
func wholeDiameter(p *eval.Part, f *eval.Form) bool {
	d := f.Feature.Diameter
	return f.Feature.Kind == "outside" && p.Own(f.About) && d.Is() && p.Part.Diameter.Is() && d.V.Written == p.Part.Diameter.V.Written
}

// once leaves out what says the same of the same two places again.
func once(ls []sketch.Length) (out []sketch.Length) {
	seen := map[string]bool{}
	for _, l := range ls {
		key := fmt.Sprintf("%d %d %.4f %.4f %s", l.In, l.Axis, min(l.From, l.To), max(l.From, l.To), l.Words)
		if !seen[key] {
			seen[key] = true
			out = append(out, l)
		}
	}
	return out
}

// turnedAlone says whether a part is round all over, so that one view shows it all from the side.
func turnedAlone(p *eval.Part) bool {
	if !p.Round {
		return false
	}
	for _, f := range p.Forms {
		switch {
		case f.Lathe != nil && p.Own(f.About):
		case f.Into.Face != model.NoFace && f.Into.Face.Axis() == 0:
		case f.Tooth != nil || f.Scale != nil:
		default:
			return false
		}
	}
	return !p.Part.Hexagon.Is() && !p.Part.Square.Is()
}

// viewOf is the view in which a distance is drawn.
func viewOf(p *eval.Part, l *eval.Laid) (sketch.Which, bool) {
	f := l.Form
	switch {
	case f == nil && l.Axis == 1, f != nil && f.Lathe != nil && l.Axis == 1:
		return sketch.Above, true
	case f == nil || f.Lathe != nil:
		return sketch.InFront, true
	}
	switch into := f.Into.Face.Axis(); {
	case into == l.Axis && into == 1: // how deep it is
		return sketch.Above, true
	case into == l.Axis, into == 1:
		return sketch.InFront, true
	case into == 2:
		return sketch.Above, true
	}
	return sketch.Aside, true
}

// other is the axis of a part that lies in a view beside another.
func other(in sketch.Which, axis int) int {
	sees := [3][2]int{{0, 2}, {0, 1}, {1, 2}}[in]
	if sees[0] == axis {
		return sees[1]
	}
	return sees[0]
}

// facing is the view that looks along an axis.
func facing(axis int) sketch.Which {
	return [3]sketch.Which{sketch.Aside, sketch.InFront, sketch.Above}[axis]
}

// toleranced writes a size with its limits of its own: "8 H7 (+0.015 0)".
func toleranced(s drawing.Size, g model.General, of *model.Item, attr string) string {
	words := written(s)
	if s.Unit != drawing.Millimetre && !strings.Contains(words, "mm") {
		words = model.Figure(s.Nominal) + " (" + words + ")"
	}
	if l := eval.LimitsOf(s, g, of, attr); s.Tol.Kind == drawing.Class && l.Is() {
		words += fmt.Sprintf(" (%s %s)", signed(l.V.Hi-s.Nominal), signed(l.V.Lo-s.Nominal))
	}
	return words
}

func signed(x float64) string {
	if math.Abs(x) < 5e-7 {
		return "0"
	}
	if x > 0 {
		return "+" + model.Figure(x)
	}
	return model.Figure(x)
}

// general says what holds for sizes without limits of their own.
func general(g model.General) string {
	switch {
	case g.From == model.Unknown:
		return ""
	case g.Class != "":
		return "else ISO 2768-" + g.Class
	case g.Either > 0:
		return "else ±" + model.Figure(g.Either)
	}
	return "else by decimal places"
}
