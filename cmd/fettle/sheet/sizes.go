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

// note is what an arrow points out of a feature.
func note(p *eval.Part, f *eval.Form, g model.General) (sketch.Note, bool) {
	m := f.Feature
	switch {
	case len(f.Mouths) > 0:
		return holeNote(f, g), true
	case f.Lathe != nil:
		return turnedNote(p, f, g)
	case m.Kind == "chamfer" || m.Kind == "radius":
		return edgeNote(f)
	case f.Into.Face != model.NoFace && m.Corner.Is() && m.Corner.V > 0 && (m.Kind == "pocket" || m.Kind == "slot"):
		in := facing(f.Into.Face.Axis())
		at := f.Hi
		return sketch.Note{In: in, At: at, Words: "corners R" + model.Figure(m.Corner.V)}, true
	case f.Skew != nil || f.Seat != nil || len(f.Copies) > 0:
		words := m.Kind
		if m.Width.Is() {
			words += " " + toleranced(m.Width.V, g, m.Item, "width") + " wide"
		}
		if f.Depth.Is() && !f.Through {
			words += " × " + model.Figure(f.Depth.V) + " deep"
		}
		if n := len(f.Copies); n > 1 {
			words = fmt.Sprintf("%d × %s", n, words)
		}
		in := sketch.InFront
		if f.Into.Face != model.NoFace {
			in = facing(f.Into.Face.Axis())
		}
		return sketch.Note{In: in, At: f.Lo.Add(f.Hi).Times(0.5), Words: words}, true
	case f.Tooth != nil:
		return onRound(p, f, toothWords(f.Tooth)), true
	case f.Rack != nil:
		return rackNote(p, f), true
	case f.Scale != nil:
		return scaleNote(p, f), true
	case m.Kind == "flat" || m.Kind == "flats" || m.Kind == "keyway":
		return flatNote(f, g)
	}
	return sketch.Note{}, false
}

func holeNote(f *eval.Form, g model.General) sketch.Note {
	m := f.Feature
	var words []string
	say := func(format string, args ...any) { words = append(words, fmt.Sprintf(format, args...)) }
	if m.Thread.Said && m.Thread.Size.Is() {
		w := m.Thread.Size.V.Written
		if d, ok := m.Thread.Depth.Get(); ok {
			w += " × " + model.Figure(d)
		}
		say("%s", w)
	}
	hole := ""
	if m.Kind == "centre_hole" {
		hole = "centre hole "
	}
	if m.Diameter.Is() {
		hole += "Ø" + toleranced(m.Diameter.V, g, m.Item, "diameter")
	} else if f.Diameter.Is() {
		hole += "Ø" + model.Figure(f.Diameter.V)
	}
	switch {
	case f.Through:
		hole += " through"
	case f.Depth.Is():
		hole += " × " + model.Figure(f.Depth.V) + " deep"
	}
	say("%s", hole)
	if b := m.Counterbore; b.Said && b.Diameter.Is() {
		w := "bored Ø" + toleranced(b.Diameter.V, g, m.Item, "counterbore.diameter")
		if b.Depth.Is() {
			w += " × " + toleranced(b.Depth.V, g, m.Item, "counterbore.depth")
		}
		say("%s", w)
	}
	if c := m.Countersink; c.Said && c.Diameter.Is() {
		w := "sunk Ø" + toleranced(c.Diameter.V, g, m.Item, "countersink.diameter")
		if c.Angle.Is() {
			w += " × " + model.Figure(c.Angle.V) + "°"
		}
		say("%s", w)
	}
	if m.Around.Said && m.Around.Pcd.Is() {
		say("on Ø%s", toleranced(m.Around.Pcd.V, g, m.Item, "around.pcd"))
	}
	all := strings.Join(words, ", ")
	if n := len(f.Mouths); n > 1 {
		all = fmt.Sprintf("%d × %s", n, all)
	}
	n := sketch.Note{In: sketch.InFront, At: f.Mouths[0], Words: all}
	if f.Into.Face != model.NoFace {
		n.In = facing(f.Into.Face.Axis())
		if math.Abs(f.Dir[f.Into.Face.Axis()]) > 1-1e-9 {
			n.Radius = f.Diameter.Or(0) / 2
		}
	}
	return n
}

// onRound points at the side of a round surface, as seen from the front.
func onRound(p *eval.Part, f *eval.Form, words string) sketch.Note {
	lo, hi := p.Low[0], p.High()[0]
	r := p.High()[2]
	on := f
	if f.On != nil {
		on = f.On
	}
	if l := on.Lathe; l != nil {
		lo, hi, r = l.X0, l.X1, (l.R0+l.R1)/2
	}
	return sketch.Note{In: sketch.InFront, At: solid.Vec{(lo + hi) / 2, 0, r}, Words: words}
}

func turnedNote(p *eval.Part, f *eval.Form, g model.General) (sketch.Note, bool) {
	m, l := f.Feature, f.Lathe
	var words string
	switch {
	case m.Kind == "chamfer":
		words = model.Figure(f.Size) + " × " + model.Figure(m.Angle.Or(45)) + "°"
	case m.Kind == "radius":
		words = "R" + model.Figure(f.Size)
	case m.ThreadSize.Is():
		words = threadWords(m)
	case m.Kind == "taper" && m.TaperSize.Is():
		words = "taper " + m.TaperSize.V.Written
	case m.Kind == "taper":
		words = "taper, half angle " + model.Figure(f.Half*180/math.Pi) + "°"
	case m.Kind == "knurl":
		words = "knurl"
		if m.Form.Is() {
			words = m.Form.V + " knurl"
		}
		if m.Pitch.Is() {
			words += ", pitch " + model.Figure(m.Pitch.V)
		}
	case m.Kind == "worm":
		words = "worm"
		if x, ok := m.Module.Get(); ok {
			words += ", module " + model.Figure(x)
		}
		if n := m.Starts.Or(1); n > 1 {
			words += fmt.Sprintf(", %d starts", n)
		}
	case f.EndRing != nil:
		words = "groove Ø" + toleranced(m.Outer.V, g, m.Item, "outer") + " × " + toleranced(m.Width.V, g, m.Item, "width") + " wide, " + model.Figure(f.Depth.V) + " deep"
		mid := f.About.At
		mid[f.About.Along] = f.Into.At
		return sketch.Note{In: facing(f.About.Along), At: mid, Radius: f.EndRing.Outer, Words: words}, true
	case m.Kind == "groove":
		words = grooveWords(m, g)
		if l.Inside {
			words += " inside"
		}
	case m.Diameter.Is():
		words = "Ø" + toleranced(m.Diameter.V, g, m.Item, "diameter")
		if l.Inside {
			words += " inside"
		}
	default:
		return sketch.Note{}, false
	}
	at := onLine(f.About, (l.X0+l.X1)/2, (l.R0+l.R1)/2)
	n := sketch.Note{In: sketch.InFront, At: at, Words: words}
	if f.About.Along == 1 {
		n.In = sketch.Above
	}
	return n, true
}

func edgeNote(f *eval.Form) (sketch.Note, bool) {
	words := "R" + model.Figure(f.Size)
	if f.Feature.Kind == "chamfer" {
		words = model.Figure(f.Size) + " × " + model.Figure(f.Feature.Angle.Or(45)) + "°"
	}
	if len(f.Rims) > 0 {
		r := f.Rims[0]
		if n := len(f.Rims); n > 1 {
			words = fmt.Sprintf("%d × %s", n, words)
		}
		if len(r.Hole.Mouths) == 0 || r.Face.Face == model.NoFace {
			return sketch.Note{}, false
		}
		return sketch.Note{In: facing(r.Face.Face.Axis()), At: r.Hole.Mouths[0], Radius: r.Hole.Diameter.Or(0)/2 + f.Size, Words: words}, true
	}
	a, b := f.Edge[0], f.Edge[1]
	if a.Face == model.NoFace || b.Face == model.NoFace || a.Face.Axis() == b.Face.Axis() {
		return sketch.Note{}, false
	}
	var at solid.Vec
	at[a.Face.Axis()], at[b.Face.Axis()] = a.At-a.Face.Sign()*f.Size/2, b.At-b.Face.Sign()*f.Size/2
	return sketch.Note{In: facing(3 - a.Face.Axis() - b.Face.Axis()), At: at, Words: words}, true
}

func flatNote(f *eval.Form, g model.General) (sketch.Note, bool) {
	m := f.Feature
	words := m.Kind
	switch {
	case m.Across.Is():
		words = fmt.Sprintf("%d flats, %s across", m.Count.Or(2), toleranced(m.Across.V, g, m.Item, "across"))
	case m.ToAxis.Is():
		words = "flat, " + toleranced(m.ToAxis.V, g, m.Item, "to_axis") + " to the axis"
	case m.OverRound.Is():
		words = "flat, " + toleranced(m.OverRound.V, g, m.Item, "over") + " over the round"
	case m.Width.Is():
		words += " " + toleranced(m.Width.V, g, m.Item, "width") + " wide"
		switch {
		case f.KeyBore != nil && m.Depth.Is():
			words += " × " + toleranced(m.Depth.V.Size, g, m.Item, "depth") + " deep"
		case f.Depth.Is():
			words += " × " + model.Figure(f.Depth.V) + " deep"
		}
	case f.Depth.Is():
		words += " " + model.Figure(f.Depth.V) + " deep"
	}
	return sketch.Note{In: sketch.InFront, At: f.Lo.Add(f.Hi).Times(0.5), Words: words}, true
}

// onLine is a place beside a line, so far from it that it lies on the contour as it is drawn.
func onLine(a eval.Axis, along, r float64) solid.Vec {
	v := a.At
	v[a.Along] = along
	if a.Along == 0 {
		v[2] += r
	} else {
		v[0] += r
	}
	return v
}
