package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A slot that runs aslant lies along none of the part's axes. The slides of a mill go along the table
// and across it and nowhere else by themselves, so that the piece is turned until the slot lies along
// one of them, on its own, with its vise, or on a rotary table.

// Skew is how a slot that runs aslant lies: its ends are the outermost metal on its middle line.
type Skew struct {
	A, B  solid.Vec
	OpenA bool // the end reaches an edge, and runs out there
	OpenB bool
}

// Along is its direction.
func (s *Skew) Along() solid.Vec { return s.B.Sub(s.A).Unit() }

// aslantSlot shapes a slot between two places of its face.
func (p *Part) aslantSlot(f *Form, v, w solid.Vec) {
	axis := f.Into.Face.Axis()
	v[axis], w[axis] = f.Into.At, f.Into.At
	s := &Skew{A: v, B: w, OpenA: p.atEdge(v, axis), OpenB: p.atEdge(w, axis)}
	f.Skew = s
	f.Lo, f.Hi = v, w
	side := solid.Vec{}
	side[axis] = 1
	side = side.Cross(s.Along()).Times(f.Width / 2)
	for i := range 3 {
		if i != axis {
			d := math.Abs(side[i])
			f.Lo[i], f.Hi[i] = math.Min(v[i], w[i])-d, math.Max(v[i], w[i])+d
		}
	}
	a, b := across(f.Into.Face)
	f.Across, f.Along = a, b
	f.fill()
	for i := range 3 {
		if i != axis && (f.Hi[i] < p.Low[i] || f.Lo[i] > p.High()[i]) {
			f.Wrong = "it lies outside the finished part"
		}
	}
}

// atEdge says whether a place of a face lies on its edge or beyond.
func (p *Part) atEdge(v solid.Vec, axis int) bool {
	for i := range 3 {
		if i != axis && (v[i] < p.Low[i]+model.Grain || v[i] > p.High()[i]-model.Grain) {
			return true
		}
	}
	return false
}

// skewed is what a slot that runs aslant takes, past open ends and faces by beyond.
func (f *Form) skewed(beyond float64) []solid.Removal {
	s, out := f.Skew, Normal(f.Into.Face)
	along := s.Along()
	a, b := s.A, s.B
	if s.OpenA {
		a = a.Sub(along.Times(beyond + f.Width))
	}
	if s.OpenB {
		b = b.Add(along.Times(beyond + f.Width))
	}
	deep := f.Depth.V
	if f.Through {
		deep += beyond
	}
	return solid.On(a, along, out).Slot(b.Sub(a).Len(), f.Width, deep, beyond, !s.OpenA, !s.OpenB, f.Name())
}

// room is what a straight feature takes within the envelope, for distances from it.
func (f *Form) room() []solid.Shape {
	if f.Skew == nil {
		return []solid.Shape{solid.Box(f.Lo, f.Hi)}
	}
	var out []solid.Shape
	for _, r := range f.skewed(0) {
		out = append(out, r.Take)
	}
	return out
}

// skewMoves are the ways of a cutter of radius r along a slot that runs aslant: down at one end, along
// either wall.
func (k *Cut) skewMoves(f *Form, r float64) ([]solid.Move, float64) {
	s, out := f.Skew, Normal(f.Into.Face)
	along := s.Along()
	end := func(v solid.Vec, open bool, sign float64) solid.Vec {
		if open {
			return v.Add(along.Times(sign * r))
		}
		return v.Sub(along.Times(sign * r))
	}
	a, b := end(s.A, s.OpenA, -1), end(s.B, s.OpenB, 1)
	down := out.Times(-f.Depth.V)
	beside := out.Cross(along).Times(math.Max(0, f.Width/2-r))
	at := func(v, off solid.Vec) solid.Vec { return k.Hold.Pose.Point(v.Add(down).Add(off)) }
	first := at(a, beside)
	above := first
	above[2] = k.Hold.Hi[2] + k.Part.Build.Thumbs["room"].Or(1)
	moves := []solid.Move{{From: above, To: first}, {From: first, To: at(b, beside)}}
	run := b.Sub(a).Len()
	if f.Width/2-r > model.Grain {
		other := beside.Times(-1)
		moves = append(moves, solid.Move{From: at(a, other), To: at(b, other)})
		run *= 2
	}
	return moves, run
}

// offSlides is how far a slot that runs aslant lies from the nearer of the table's two ways, and the
// turn about the upright that brings it there, degrees.
func offSlides(along solid.Vec) float64 {
	t := math.Mod(math.Atan2(along[1], along[0])*180/math.Pi+360, 90)
	if t > 45 {
		t -= 90
	}
	return -t
}

// skewWrong says why a slot that runs aslant is not milled as the piece lies; "" if it is.
func (k *Cut) skewWrong(f *Form) string {
	if d := k.Hold.Choice.Divided; d != nil && d.Upright || k.Choice.ByHand {
		return ""
	}
	return k.offSlides(f.Skew.Along())
}

// offSlides says how far what runs along a direction lies off the table's ways, and what turns it there; "" if
// it lies along one.
func (k *Cut) offSlides(along solid.Vec) string {
	off := offSlides(k.Hold.Pose.Dir(along))
	if math.Abs(off) < 1e-6 {
		return ""
	}
	was := 0.0
	if l := k.Hold.Choice.Lean; l.About == 2 {
		was = l.By
	}
	cure := "tilt = { about = \"z\", by = " + model.Figure(math.Round((was+off)*1e4)/1e4) + " } turns it there, or a rotary table"
	if math.Abs(was+off) < 1e-4 {
		cure = "it is milled with no tilt"
	}
	return "it runs " + model.Figure(math.Round(math.Abs(off)*1000)/1000) + " degrees from the nearer of the table's two ways: " + cure
}

// Turns lists the turns about the upright that lay slots which run aslant along a way of the table,
// for the faces up and back of a holding, degrees. Where what runs along the part's own axes is milled in the same
// holding, or slots run several ways, no turn serves, and there is none.
func (p *Part) Turns(w *Work, up, back model.Face) []float64 {
	pose := solid.Attitude(Normal(up), Normal(back))
	var out []float64
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			if by, ok := p.turnsAside(t, up, pose); ok {
				out = append(out, by)
				continue
			}
			if f := t.Form; f != nil && f.Skew != nil && f.Wrong == "" && len(f.Lacks) == 0 && f.Into.Face == up {
				out = append(out, offSlides(pose.Dir(f.Skew.Along())))
			} else if f != nil && f.Skew == nil && f.Into.Face == up && alongAxis[f.Feature.Kind] {
				out = append(out, 0)
			}
		}
	}
	for _, by := range out {
		if math.Abs(by-out[0]) > 1e-6 {
			return nil
		}
	}
	return out
}

// alongAxis are the kinds that are milled along an axis of their part.
var alongAxis = map[string]bool{"slot": true, "pocket": true, "step": true, "tee_slot": true, "dovetail": true}

// turnsAside is the turn about the upright that lays a straight feature which is made in the frame of its own
// part along a way of the table.
func (p *Part) turnsAside(t Target, up model.Face, pose solid.Pose) (float64, bool) {
	n, ok := p.asideOf(t)
	if !ok || t.Form == nil {
		return 0, false
	}
	q, lies := p.as(n)
	f := q.Forms[p.numberOf(t.Form)]
	if f.Wrong != "" || len(f.Lacks) > 0 || len(f.Mouths) > 0 || f.Into.Face == model.NoFace || len(f.Copies) > 0 {
		return 0, false
	}
	if d := lies.Dir(Normal(f.Into.Face)); d.Dot(Normal(up)) < 1-1e-9 {
		return 0, false
	}
	var along solid.Vec
	along[(f.Into.Face.Axis()+1)%3] = 1
	if f.Skew != nil {
		along = f.Skew.Along()
	}
	return offSlides(pose.Dir(lies.Dir(along))), true
}

// skewBurrs leaves burrs along both edges of a slot that runs aslant.
func (k *Cut) skewBurrs(f *Form) {
	side := Normal(f.Into.Face).Cross(f.Skew.Along()).Times(f.Width / 2)
	face := f.Into.Face
	for _, d := range [2]solid.Vec{side, side.Times(-1)} {
		a, b := f.Skew.A.Add(d), f.Skew.B.Add(d)
		a[face.Axis()], b[face.Axis()] = k.After.Faces[face].At, k.After.Faces[face].At
		k.burr(Burr{On: face, A: a, B: b, Edge: "the edge of " + f.Name() + " at " + face.String(), Names: []string{f.Name(), "face." + face.String()}})
	}
}
