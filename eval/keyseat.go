package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// The seat of a half-round (woodruff) key is a disc sunk into the shaft: a cutter as wide and as
// large as the key is fed straight in, square to the shaft's axis, its own axis lying across. Under
// an upright spindle the seat looks sideways, under a level one it looks up.

// KeySeat is the seat of a half-round key in a form that looks to the top.
type KeySeat struct {
	At       float64 // its middle along the axis
	Surface  float64 // radius of the shaft there
	Diameter float64 // of the cutter
}

// woodruffShape shapes the seat of a half-round key.
func (p *Part) woodruffShape(f *Form) {
	m := f.Feature
	g, ok := p.roundInto(m.Into.V)
	if !m.Into.Is() || !ok {
		f.Wrong = "a seat for a half-round key lies in an outside"
		return
	}
	on := p.reach(g)
	for _, k := range [][]model.Lack{m.Width.Missing(), m.Depth.Missing(), m.Diameter.Missing(), m.From.Missing()} {
		f.lack(k)
	}
	if len(f.Lacks) > 0 {
		return
	}
	x, ok := p.axial(m.From.V)
	if !ok {
		f.Wrong = "its place does not say how far along the axis its middle is"
		return
	}
	w, deep, d := m.Width.V.Nominal, m.Depth.V.Size.Nominal, m.Diameter.V.Nominal
	if !(w > 0) || !(deep > 0) || deep >= d/2 {
		f.Wrong = "it is " + model.Figure(deep) + " mm deep, and half of its cutter is " + model.Figure(d/2) + " mm: the cutter's own axis would lie in the shaft"
		return
	}
	half := beyondMiddle(d, deep)
	f.box(p, x-half, x+half, -w/2, w/2, on.R0-deep, on.R0)
	f.Seat = &KeySeat{At: x, Surface: on.R0, Diameter: d}
	f.Spins = []float64{m.Direction.Or(0)}
}

// seatOf is what the seat takes as it is drawn, the form looking to a face.
func (f *Form) seatOf() solid.Removal {
	out := Normal(f.Into.Face)
	at := solid.Vec{f.Seat.At, 0, 0}.Add(out.Times(f.Seat.Surface))
	return solid.On(at, solid.Vec{1, 0, 0}, out).Keyseat(f.Seat.Diameter, f.Width, f.Depth.V, f.Name())
}

// seated sinks a cutter for half-round keys; false where no such seat is made.
func (k *Cut) seated(t Target) bool {
	f := t.Form
	if f.Seat == nil {
		return false
	}
	fs := k.Part.change(k.After, f)
	w := Working{Target: t, Entry: f.Into, Depth: f.Depth.V, Reach: f.Depth.V, Deep: f.Width, Run: f.Depth.V}
	w.Took = []solid.Removal{f.seatOf()}
	axis, square := k.alongSpindle()
	w.Facing = square && axis == f.Across
	if !w.Facing {
		w.Wrong = "its cutter stands square to the spindle, and is fed in across it: turn the seat to look sideways under an upright spindle"
		if k.level {
			w.Wrong = "its cutter stands square to the spindle, and is fed in across it: turn the seat to look up or down the table"
		}
	}
	if k.Choice.Tool.Cutter != nil && k.Choice.Tool.Size > 0 && w.Facing {
		s := sawCut{radius: k.Choice.Tool.Size / 2, across: f.Across, along: f.Along, entry: f.Into, lo: f.Seat.At, hi: f.Seat.At,
			depth: f.Depth.V, outer: f.Into.Face.Sign() * (f.Seat.Surface + k.Part.outward())}
		s.width = k.Choice.Tool.Cutter.Width.Or(f.Width)
		w.Moves = s.moves(k)
	}
	if fs.Finished {
		fs.Twice = true
	}
	fs.Begun, fs.Finished, fs.Depth, fs.ByProcess, fs.By = true, true, f.Depth.V, k.Choice.By, k.Spot
	w.Final = true
	k.took(w)
	k.straightBurrs(f, f)
	return true
}

// runsOut says whether a keyway's ends are those that a disc cutter leaves.
func (f *Form) runsOut() bool { return f.Feature.Kind == "keyway" && f.Feature.Ends.V == "run-out" }

// arcs are what a disc of a radius takes beyond the closed ends of a keyway that runs out.
func (f *Form) arcs(r float64) []solid.Removal {
	var out []solid.Removal
	up := Normal(f.Into.Face)
	var half solid.Vec
	half[f.Across] = f.Width / 2
	for _, x := range [2]float64{f.Lo[f.Along], f.Hi[f.Along]} {
		var at solid.Vec
		at[f.Along] = x
		at = at.Add(up.Times(math.Abs(f.Into.At) - f.Depth.V + r))
		out = append(out, solid.Removal{Take: solid.Cylinder(at.Sub(half), at.Add(half), r), By: f.Name()})
	}
	return out
}
