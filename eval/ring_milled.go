package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A groove in a face is milled where a rotary table lying flat turns the piece under the cutter, the
// middle of the groove over the table's own. Table, piece and what holds it turn together, so that the
// way is played as if the spindle went round. A cutter as wide as the groove goes round once, a
// narrower one along either wall.

// ringMilled mills a groove in a face.
func (k *Cut) ringMilled(t Target) {
	f := t.Form
	fs := k.Part.change(k.After, f)
	deep := f.Depth.V
	if st := k.Step.Step; st != nil {
		deep -= st.Leaves.V
		if st.DownTo.Depth.Is() {
			deep = math.Min(deep, st.DownTo.Depth.V)
		}
	}
	w := Working{Target: t, Entry: f.Into, Depth: deep, Deep: deep}
	w.Facing = k.Hold.Pose.Dir(Normal(f.Into.Face))[2] > 0.5
	if w.Wrong = k.ringWrong(f, w.Facing); w.Wrong != "" {
		w.Facing = false
	} else if d, ok := k.Stack.Diameter.Get(); ok && w.Facing {
		w.Moves, w.Run = k.ringMoves(f, deep, d/2)
	}
	along, sign := f.Into.Face.Axis(), f.Into.Face.Sign()
	lo, hi := f.About.At, f.About.At
	floor, open := f.Into.At-sign*deep, f.Into.At+sign*k.Part.outward()
	lo[along], hi[along] = math.Min(floor, open), math.Max(floor, open)
	w.Took = []solid.Removal{f.ringTook(lo, hi, sign)}
	if fs.Finished {
		fs.Twice = true
	}
	fs.Begun, fs.Diameter, fs.Depth, fs.ByProcess, fs.By = true, 2*f.EndRing.Outer, deep, k.Choice.By, k.Spot
	fs.Finished = deep > f.Depth.V-model.Grain
	w.Final = fs.Finished
	k.took(w)
	k.ringBurrs(f)
}

// ringWrong says why a groove in a face that looks at the spindle is not milled in this holding.
func (k *Cut) ringWrong(f *Form, facing bool) string {
	d := k.Hold.Choice.Divided
	switch {
	case k.Choice.ByHand || !facing:
		return ""
	case d == nil:
		return "it is a ring, and nothing here turns the piece under the cutter: a rotary table lying flat does, or a lathe, the piece centred on the ring"
	}
	if off := k.besideTable(f.About); off > model.Grain {
		return besideWords(off, d)
	}
	return ""
}

// besideTable is how far a line that stands upright lies beside the middle of the table that turns the piece.
func (k *Cut) besideTable(a Axis) float64 {
	at, mid := k.Hold.Pose.Point(a.At), k.Hold.Pose.Point(k.Hold.turnedAbout())
	return math.Hypot(at[0]-mid[0], at[1]-mid[1])
}

func besideWords(off float64, d *Divided) string {
	return "its middle lies " + model.Figure(round3(off)) + " mm beside the one that " + d.Item().Path() + " turns the piece about; it wants a set-up of its own"
}

// ringMoves go down into the groove and round it.
func (k *Cut) ringMoves(f *Form, deep, r float64) (moves []solid.Move, run float64) {
	circles := []float64{math.Max(0, f.EndRing.Outer-r)}
	if in := f.EndRing.Inner + r; in < circles[0]-model.Grain {
		circles = append(circles, in)
	}
	return k.roundMoves(f, deep, circles)
}

// roundMoves go down to a depth below the face of a form and round its line on circles, in chords that
// keep within solid.Within of them.
func (k *Cut) roundMoves(f *Form, deep float64, circles []float64) (moves []solid.Move, run float64) {
	out := Normal(f.Into.Face)
	mid := f.About.At.Add(out.Times((f.Into.At - f.Into.Face.Sign()*deep) * f.Into.Face.Sign()))
	frame := solid.On(mid, Normal(model.FaceOn((f.About.Along+1)%3, 1)), out)
	for _, c := range circles {
		n := 1
		if c > solid.Within {
			n = min(360, int(math.Ceil(math.Pi/math.Acos(1-solid.Within/c))))
		}
		at := func(i int) solid.Vec {
			sin, cos := math.Sincos(2 * math.Pi * float64(i%n) / float64(n))
			return k.Hold.Pose.Point(frame.Point(c*cos, c*sin, 0))
		}
		above := at(0)
		above[2] = k.Hold.Hi[2] + k.Part.Build.Thumbs["room"].Or(1)
		moves = append(moves, solid.Move{From: above, To: at(0)})
		for i := range n {
			moves = append(moves, solid.Move{From: at(i), To: at(i + 1)})
		}
		run += 2 * math.Pi * c
	}
	return moves, run
}

// ringBurrs leaves burrs round both rims of a groove in a face.
func (k *Cut) ringBurrs(f *Form) {
	at := f.About.At
	at[f.About.Along] = k.After.Faces[f.Into.Face].At
	for _, r := range []float64{f.EndRing.Outer, f.EndRing.Inner} {
		if r > model.Grain {
			k.burr(Burr{On: f.Into.Face, Round: true, A: at, B: at, R: r, Edge: "the rim of " + f.Name() + " at " + f.Into.Name, Names: []string{f.Name(), f.Into.Name}})
		}
	}
}
