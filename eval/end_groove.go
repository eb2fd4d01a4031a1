package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A groove in an end is a ring sunk into the face: on a lathe the tool stands along the axis and is fed
// into the end; of a part that is not turned the ring is in one of its faces, round a line square to that.
// It is in the solid alone; the half section has outside and bore, and neither changes.

// EndGroove is a groove in an end: the ring between two radii. Lengths are mm.
type EndGroove struct {
	Outer, Inner float64
}

// endGrooveShape shapes a groove in an end of a turned part, or in a face of another.
func (p *Part) endGrooveShape(f *Form) {
	m := f.Feature
	var pl Plane
	ok := len(m.On.V) > 0
	if ok {
		pl, ok = p.PlaneOf(m.On.V[0])
	}
	switch {
	case !m.On.Is():
		f.lack(m.On.Missing())
		return
	case !ok && !p.Round:
		f.Wrong = "its outer diameter is written, and it does not lie in a flat face: outer is that of a groove in a face"
		return
	case !ok || p.Round && pl.Face.Axis() != 0:
		f.Wrong = "its outer diameter is written, and it does not lie in an end: outer is that of a groove in an end"
		return
	case !p.Round && !p.ringMiddle(f, pl):
		return
	}
	for _, k := range [][]model.Lack{m.Outer.Missing(), m.Width.Missing(), m.Depth.Missing()} {
		f.lack(k)
	}
	if len(f.Lacks) > 0 {
		return
	}
	outer, wide, deep := m.Outer.V.Nominal/2, m.Width.V.Nominal, m.Depth.V.Size.Nominal
	x := pl.At - pl.Face.Sign()*deep
	f.Into, f.Dir, f.Width, f.Depth = pl, Normal(pl.Face).Times(-1), wide, model.Sure(deep)
	switch r := p.roundRing(f, pl.At-pl.Face.Sign()*model.Grain); {
	case !(wide > 0) || !(deep > 0):
		f.Wrong = "a groove has a width and a depth above nought"
	case outer > r+model.Grain/2 && !p.Round:
		f.Wrong = "it is " + model.Figure(2*outer) + " mm over its larger diameter, and round its middle the face is " + model.Figure(round3(2*r)) + " mm"
	case outer > r+model.Grain/2:
		f.Wrong = "it is " + model.Figure(2*outer) + " mm over its larger diameter, and the end is " + model.Figure(2*r) + " mm"
	case outer-wide < -model.Grain:
		f.Wrong = "it would reach beyond the axis: it is wider than half its larger diameter"
	case deep > p.far(pl)+model.Grain:
		f.Wrong = "it is deeper than the part is long"
		if !p.Round {
			f.Wrong = "it is deeper than the metal below its face"
		}
	}
	f.EndRing = &EndGroove{Outer: outer, Inner: math.Max(0, outer-wide)}
	f.Lathe = &Lathe{X0: math.Min(x, pl.At), X1: math.Max(x, pl.At), R0: outer, R1: outer, Inside: true, End: pl.Face}
	f.Diameter = model.Sure(2 * outer)
}

// Rounded says whether a form is milled by turning the piece all the way round under the cutter.
func (f *Form) Rounded() bool {
	return f.EndRing != nil || f.Feature.Kind == "outside" && f.Lathe != nil
}

// ringMiddle settles the line that a groove in a face of a part that is not turned lies round: its
// place on the face, else that of the round thing with which it is concentric.
func (p *Part) ringMiddle(f *Form, pl Plane) bool {
	m := f.Feature
	a, b := across(pl.Face)
	if m.At.Is() && len(m.At.V) > 0 {
		v, known := p.locate(pl.Face, m.At.V[0])
		if !known[a] || !known[b] {
			f.Wrong = "its place fixes only one of the two co-ordinates on that face"
			return false
		}
		f.About = AxisAt(pl.Face.Axis(), v)
		return true
	}
	g := p.FormOf(m.Concentric.To.V.Item)
	line, ok := p.axisOf(Target{Form: g})
	switch {
	case g == nil:
		f.lack(m.At.Missing())
		return false
	case !ok || line.Along != pl.Face.Axis():
		f.Wrong = "it is to be concentric with " + g.Name() + ", which lies round no line square to its face"
		return false
	}
	f.About = line
	return true
}

// roundRing is the radius round the line of a groove in a face within which there is metal below the
// face, a hair's breadth below it: of the turned surface there, or to the nearest side.
func (p *Part) roundRing(f *Form, x float64) float64 {
	r := p.besideAt(f, x)
	if p.Round {
		return r
	}
	for i := range 3 {
		if i != f.About.Along {
			r = math.Min(r, math.Min(f.About.At[i]-p.Low[i], p.High()[i]-f.About.At[i]))
		}
	}
	return r
}

// endGroove sinks a groove into an end, through the metal over it.
func (k *Turn) endGroove(w *Turning) {
	f := w.Target.Form
	l, ring, sign := *f.Lathe, f.EndRing, f.Into.Face.Sign()
	w.X0, w.X1, w.Inside = l.X0, l.X1, true
	w.R0, w.R1 = ring.Outer, ring.Outer
	deep := f.Depth.V - k.leaves()
	if st := k.Step.Step; st != nil && st.DownTo.Depth.Is() {
		deep = math.Min(deep, st.DownTo.Depth.V)
	}
	floor, end := f.Into.At-sign*deep, k.metalEnd(f.Into.Face)
	w.X0, w.X1 = math.Min(floor, end), math.Max(floor, end)
	k.reach(w)
	w.Had = 0 // it begins in the full metal
	w.Width, w.Depth, w.Off = toolWidth(k.Choice.Tool), deep, math.Max(0, (end-floor)*sign)
	if f.Into.Face == k.heldEnd() {
		w.Wrong = "it goes in from the " + f.Into.Face.String() + " end, which is the one that is held"
		return
	}
	fs := k.Part.change(k.After, f)
	w.Final, w.Done = near(deep, f.Depth.V), fs.Finished
	k.After.Piece = k.After.Piece.Cut(f.ringTook(solid.Vec{w.X0, 0, 0}, solid.Vec{w.X1, 0, 0}, sign))
	k.done(fs, 2*ring.Outer, w.Final)
	fs.Depth = deep
}

// ringTook is the ring between two places on its line, and a millimetre more where it is open.
func (f *Form) ringTook(a, b solid.Vec, sign float64) solid.Removal {
	out := b.Sub(a).Unit()
	if sign > 0 {
		b = b.Add(out)
	} else {
		a = a.Sub(out)
	}
	took := solid.Removal{Take: solid.Cylinder(a, b, f.EndRing.Outer), By: f.Name()}
	if f.EndRing.Inner > model.Grain {
		took.Less = []solid.Shape{solid.Cylinder(a, b, f.EndRing.Inner)}
	}
	return took
}
