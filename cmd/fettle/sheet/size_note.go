package sheet

import (
	"fmt"
	"math"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

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
