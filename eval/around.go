package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Slots, pockets, steps and slits that are repeated round a circle are shaped once, where they are
// drawn, and taken once for each place, turned about the middle of the circle. What is drawn is the
// first place, at the angle at which it starts. In the end of a turned part the circle lies round its
// axis; elsewhere its middle follows from the first place, the angle and the pitch circle.

// repeat settles the places of a straight feature that is repeated round a circle.
func (p *Part) repeat(f *Form) {
	m := f.Feature.Around
	if !m.Said || len(f.Mouths) > 0 || f.Wrong != "" || len(f.Lacks) > 0 || f.Into.Face == model.NoFace {
		return
	}
	switch f.Feature.Kind {
	case "slot", "pocket", "step", "slit":
	default:
		return
	}
	n, ok := m.Count.Get()
	if !ok || n < 1 || n > 1000 {
		f.lack(m.Count.Missing())
		return
	}
	a, b := across(f.Into.Face)
	start := m.Start.Or(0) * math.Pi / 180
	own := f.Lo.Add(f.Hi).Times(0.5)
	pcd, said := m.Pcd.Get()
	switch {
	case p.Round && f.Into.Face.Axis() == 0:
		f.Centre = solid.Vec{own[0], 0, 0}
		if r := math.Hypot(own[a], own[b]); said && f.Feature.Kind == "pocket" && math.Abs(r-pcd.Nominal/2) > 0.05 {
			f.Wrong = "as it is drawn its middle lies " + model.Figure(math.Round(r*1000)/1000) + " mm from the axis, and its circle has a radius of " + model.Figure(pcd.Nominal/2) + " mm"
			return
		}
	case p.Round:
		return
	case !said:
		f.lack(m.Pcd.Missing())
		return
	default:
		f.Centre = own
		f.Centre[a] -= pcd.Nominal / 2 * math.Cos(start)
		f.Centre[b] -= pcd.Nominal / 2 * math.Sin(start)
	}
	over := m.Over.Or(360)
	step := over / float64(n)
	if over < 360 && n > 1 {
		step = over / float64(n-1)
	}
	for i := range n {
		f.Copies = append(f.Copies, float64(i)*step)
	}
}

// repeated takes what is taken at the first place at all of them.
func (f *Form) repeated(took []solid.Removal) []solid.Removal {
	var out []solid.Removal
	for _, by := range f.Copies {
		for _, r := range took {
			if by == 0 {
				out = append(out, r)
				continue
			}
			out = append(out, turnedBack(r, f.turn(by)))
		}
	}
	return out
}

// quarters says whether all places stand square to each other, so that slides reach them.
func (f *Form) quarters() bool {
	for _, by := range f.Copies {
		if q := by / 90; math.Abs(q-math.Round(q)) > 1e-9 {
			return false
		}
	}
	return true
}

// spread takes a working at every place of its form, and says where the holding cannot turn to them.
func (k *Cut) spread(w *Working) {
	f := w.Target.Form
	if f == nil || len(f.Copies) == 0 || w.Target.Sub != "" {
		return
	}
	w.Took = f.repeated(w.Took)
	if k.Hold.Choice.Divided == nil && !k.Choice.ByHand && !f.quarters() && w.Wrong == "" {
		w.Facing = false
		w.Wrong = "its places stand turned against each other, and nothing here turns the piece: a dividing head or a rotary table does"
	}
	w.Run *= float64(len(f.Copies))
	if k.Part.Round && k.Hold.Choice.Divided != nil {
		return // the piece turns, and what holds it is as round
	}
	first := w.Moves
	for _, by := range f.Copies[1:] {
		turn := f.turn(by)
		at := func(v solid.Vec) solid.Vec {
			return k.Hold.Pose.Point(turn.Point(k.Hold.Pose.Inverse().Point(v)))
		}
		for _, m := range first {
			w.Moves = append(w.Moves, solid.Move{From: at(m.From), To: at(m.To)})
		}
	}
}

// turn is the pose that carries the first place to one that lies so many degrees on.
func (f *Form) turn(by float64) solid.Pose {
	axis := f.Into.Face.Axis()
	if axis == 1 {
		by = -by // from x towards z is clockwise about y
	}
	turn := Lean{axis, by}.pose()
	return turn.Shifted(f.Centre.Sub(turn.Point(f.Centre)))
}

// webRound is the metal between a slot or slit and the next one round its circle: their middle lines
// lie apart by so much more than the width of one. False of other forms, and where they run into each other.
func (p *Part) webRound(f *Form) (Web, bool) {
	if len(f.Copies) < 2 || f.Feature.Kind != "slot" && f.Feature.Kind != "slit" {
		return Web{}, false
	}
	line := [2]solid.Vec{f.Lo, f.Hi}
	for i := range line {
		line[i][f.Across] = (f.Lo[f.Across] + f.Hi[f.Across]) / 2
		line[i][f.Into.Face.Axis()] = f.Into.At
	}
	if !f.Open[model.FaceOn(f.Along, -1)] {
		line[0][f.Along] += f.Width / 2
	}
	if !f.Open[model.FaceOn(f.Along, 1)] {
		line[1][f.Along] -= f.Width / 2
	}
	turn := f.turn(f.Copies[1])
	thick := lineGap(line, [2]solid.Vec{turn.Point(line[0]), turn.Point(line[1])}) - f.Width
	return Web{Of: f, And: "its next place", Thick: thick}, thick > model.Grain
}
