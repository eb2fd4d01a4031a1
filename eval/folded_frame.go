package eval

import (
	"fmt"
	"math"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// lying is the part as it lies with some bends folded. Its frame is the base's.
func (w *Folding) lying(drawn *Part, b *Bent, s *State) *Part {
	key := fmt.Sprint(b.Made)
	if q := w.parts[key]; q != nil {
		return q
	}
	q := *drawn
	m := *drawn.Part
	lo, hi := w.envelope(drawn, b)
	q.Low, q.Size = lo, hi.Sub(lo)
	for i := range 3 {
		if q.Sized[i].Nominal != q.Size[i] {
			q.Sized[i].Nominal, q.Sized[i].Written = q.Size[i], ""
		}
	}
	m.Height, m.Thickness = model.Sure(q.Sized[2]), model.Known[drawing.Size]{}
	q.Part, q.Flat, q.Folded, q.Bent = &m, nil, w, b
	q.Forms, q.Work, q.boxes, q.seen = nil, nil, nil, nil
	q.whole = s.Piece
	for i := range 3 {
		q.Blank.Lo[i], q.Blank.Hi[i] = s.Faces[model.FaceOn(i, -1)].At, s.Faces[model.FaceOn(i, 1)].At
	}
	q.Blank.Shape = solid.Box(q.Blank.Lo, q.Blank.Hi)
	was := map[*Form]*Form{}
	for _, f := range drawn.Forms {
		g := *f
		g.beside = nil
		was[f] = &g
		q.Forms = append(q.Forms, &g)
	}
	for i, g := range q.Forms {
		for r := range g.Rims {
			g.Rims = append([]Rim(nil), g.Rims...)
			g.Rims[r].Hole = was[g.Rims[r].Hole]
		}
		if n, ok := w.on(drawn, drawn.Forms[i]); ok {
			g.placed(b.Poses[n], false)
		} else if g.Wrong == "" {
			g.later("it goes over a bend, and is made while the sheet lies flat")
		}
	}
	q.spell()
	w.parts[key] = &q
	return &q
}

// BendLine is the line about which the flat sheet is bent, in the middle of what the bend takes up.
func (w *Folding) BendLine(i int) (a, b solid.Vec) {
	k := &w.Bends[i]
	no := k.No
	if k.Sign < 0 {
		no++
	}
	x := k.At - k.Sign*(k.Setback-k.Allowance()/2) - w.Along[k.Axis].taken(no)
	a[k.Axis], b[k.Axis] = x, x
	axis := 1 - k.Axis
	c := &w.Along[axis]
	a[axis], b[axis] = w.Part.Low[axis], w.Part.High()[axis]
	if len(c.Sheet.Folds) > 0 {
		a[axis], b[axis] = k.From-c.taken(c.Base), k.To-c.taken(c.Base)
	}
	return a, b
}

// long is how long a bend is: where the sheet is folded across it too, no longer than what is straight between
// those bends.
func (w *Folding) long(f *Form, whole float64) float64 {
	for i := range w.Bends {
		if k := &w.Bends[i]; k.Form.Feature == f.Feature && len(w.Along[1-k.Axis].Sheet.Folds) > 0 {
			return k.To - k.From
		}
	}
	return whole
}

// FlatState is the sheet before it is folded for the first time; as it is in the end where it never is.
func (t *PartTrace) FlatState() *State {
	if t.flat != nil {
		return t.flat
	}
	return t.End
}

// bend plays a bench that folds sheet, step by step.
func (pl *Player) bend(t *PartTrace, d Decider) {
	w := t.Lies.Folded
	for i := range t.Lies.Work[t.next].Steps {
		work := t.Lies.Work[t.next] // of the part as it lies now
		st := work.Steps[i]
		t.End = pl.step(t, t.Lies, bench(t.Lies, t.End, work), work, st, t.End, d)
		for _, x := range st.Makes {
			if x.Form != nil && x.Form.Feature.Kind == "bend" {
				if t.flat == nil {
					t.flat = t.End
				}
				t.Lies, t.End = w.fold(w.Drawn, t.Lies, t.End, x.Form, st.Spot)
			}
		}
	}
}

// FaceAtEnd is how a face of the drawing is once all is done.
func (t *PartTrace) FaceAtEnd(f model.Face) FaceState {
	s := t.End.Faces[f]
	switch a := f.Axis(); {
	case t.Lies == nil || t.Lies == t.Part:
	case t.End.Bent != nil:
		s = t.End.Others[0][f]
	case a < 2 && f.Sign() > 0:
		s.At += t.Lies.Folded.Along[a].taken(len(t.Lies.Folded.Along[a].Sheet.Folds))
	}
	return s
}

// envelope is the room of the folded part as it is drawn.
func (w *Folding) envelope(drawn *Part, b *Bent) (lo, hi solid.Vec) {
	lo, hi = solid.Vec{math.Inf(1), math.Inf(1), math.Inf(1)}, solid.Vec{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	put := func(v solid.Vec) {
		for a := range 3 {
			lo[a], hi[a] = min(lo[a], v[a]), max(hi[a], v[a])
		}
	}
	for i := range w.Legs {
		over := w.overTo(b, i)
		for _, x := range []float64{over[0], over[1]} {
			for _, y := range []float64{over[2], over[3]} {
				for _, z := range []float64{0, drawn.Size[2]} {
					put(b.Poses[i].Point(solid.Vec{x, y, z}))
				}
			}
		}
	}
	for i := range w.Bends {
		if k := &w.Bends[i]; b.Made[i] && k.over90() {
			for _, v := range k.outermost(b.Poses[k.Near], drawn.Size[2]) {
				put(v)
			}
		}
	}
	return lo, hi
}

// over90 says whether a bend goes over a right angle, so that its legs do not meet where they are measured to.
func (k *Crease) over90() bool { return math.Abs(k.Angle) > math.Pi/2+1e-9 }

// overTo is a leg over its outsides, as Leg.Over has it; at a bend over 90 degrees that is folded no farther
// than it is straight.
func (w *Folding) overTo(b *Bent, i int) [4]float64 {
	over := w.Legs[i].Over
	for n := range w.Bends {
		k := &w.Bends[n]
		if !b.Made[n] || !k.over90() || k.Near != i && k.Far != i {
			continue
		}
		if away := k.Sign > 0; away == (k.Near == i) {
			over[2*k.Axis+1] = w.Legs[i].Hi[k.Axis]
		} else {
			over[2*k.Axis] = w.Legs[i].Lo[k.Axis]
		}
	}
	return over
}

// outermost are the places of the outside of a bend that look along an axis of the base, the near leg of the
// bend lying so.
func (k *Crease) outermost(near solid.Pose, thick float64) (out []solid.Vec) {
	r, a := k.Inside+thick, math.Abs(k.Angle)
	var along, up, centre solid.Vec
	along[k.Axis], up[2] = k.Sign, 1
	centre[k.Axis], centre[2] = k.At-k.Sign*k.Setback, r
	if k.Angle < 0 {
		centre[2], up[2] = thick-r, -1
	}
	centre[1-k.Axis] = k.From
	for i := range 3 {
		for _, sign := range [2]float64{-1, 1} {
			var d solid.Vec
			d[i] = sign
			d = near.Inverse().Dir(d)
			// From the end of the near leg, where the outside looks away from the centre against up.
			if turn := math.Atan2(d.Dot(along), -d.Dot(up)); math.Abs(d[1-k.Axis]) < 1e-9 && turn > 0 && turn < a {
				out = append(out, near.Point(centre.Add(d.Times(r))))
			}
		}
	}
	return out
}

// on is the leg that a form of the drawing lies on; false where it goes over a bend.
func (w *Folding) on(drawn *Part, f *Form) (leg int, ok bool) {
	if f.Wrong != "" || len(f.Lacks) > 0 || f.Way != nil && !f.Way.Opening {
		return 0, false
	}
	lo, hi := f.Lo, f.Hi
	if len(f.Mouths) > 0 {
		lo, hi = f.Mouths[0], f.Mouths[0]
		for _, m := range f.Mouths {
			for a := range 3 {
				lo[a], hi[a] = min(lo[a], m[a]), max(hi[a], m[a])
			}
		}
	}
	for axis := range 2 {
		c := &w.Along[axis]
		a, b := c.no(lo[axis]+model.Grain), c.no(hi[axis]-model.Grain)
		if a > b {
			a, b = b, a
		}
		switch {
		case a != b:
			return 0, false
		case a != c.Base && leg != 0:
			return 0, false // in a corner
		case a != c.Base:
			leg = w.leg(axis, a)
		}
	}
	return leg, true
}

// envelopeFaces notes how the faces of the folded part are that look the six ways: as the face of the leg that
// lies outermost there. Where they lie is worked out already.
func (q *Part) envelopeFaces(s *State) {
	w, own := q.Folded, s.Others[0]
	for _, f := range model.Faces {
		s.Faces[f] = FaceState{At: s.Faces[f].At, Done: true}
		for i := range w.Legs {
			for _, g := range model.Faces {
				if n, ok := q.faceLeg(g, i); !ok || n != i {
					continue
				}
				var v solid.Vec
				v[g.Axis()] = own[g].At
				d := s.Bent.Poses[i].Dir(Normal(g))
				if d.Dot(Normal(f)) > 1-1e-9 && near(s.Bent.Poses[i].Point(v)[f.Axis()], s.Faces[f].At) {
					s.Faces[f].Skin, s.Faces[f].Done, s.Faces[f].Times, s.Faces[f].By = own[g].Skin, own[g].Done, own[g].Times, own[g].By
				}
			}
		}
	}
}

// faceLeg is the leg that a face of the drawing is of; top and bottom are of every leg: of the one in question.
func (q *Part) faceLeg(f model.Face, leg int) (int, bool) {
	w := q.Folded
	if f.Axis() == 2 {
		return leg, true
	}
	c := &w.Along[f.Axis()]
	if len(c.Sheet.Folds) == 0 {
		return leg, true
	}
	no := 0
	if f.Sign() > 0 {
		no = len(c.Sheet.Folds)
	}
	return w.leg(f.Axis(), no), true
}

// legOf is the leg that a target is made on, where the sheet is folded.
func (q *Part) legOf(t Target) (int, bool) {
	if t.Form == nil {
		return q.faceLeg(t.Face, 0)
	}
	drawn := q.Folded.Drawn
	n, _ := q.Folded.on(drawn, drawn.Forms[q.numberOf(t.Form)])
	return n, true
}

// asLeg is the folded part in the frame of one of its legs, in which that lies as it is drawn.
func (q *Part) asLeg(n int) (*Part, solid.Pose) {
	pose := q.Bent.Poses[n]
	if r := q.seen[n]; r != nil {
		return r, pose
	}
	w := q.Folded
	r := *w.Drawn
	r.Flat, r.Folded, r.Work, r.boxes, r.seen, r.Forms = nil, w, q.Work, nil, nil, nil
	r.Leg = true
	whole := q.whole.Placed(pose.Inverse())
	for i := range 3 {
		r.Blank.Lo[i], r.Blank.Hi[i] = whole.Extent(i, -1), whole.Extent(i, 1)
	}
	r.Blank.Shape = solid.Box(r.Blank.Lo, r.Blank.Hi)
	was := map[*Form]*Form{}
	for _, f := range w.Drawn.Forms {
		g := *f
		g.beside = nil
		was[f] = &g
		r.Forms = append(r.Forms, &g)
		switch on, ok := w.on(w.Drawn, f); {
		case g.Wrong != "":
		case !ok:
			g.later("it goes over a bend, and is made while the sheet lies flat")
		case on != n:
			g.later("it lies on another leg")
		}
	}
	for _, g := range r.Forms {
		g.Rims = append([]Rim(nil), g.Rims...)
		for i := range g.Rims {
			g.Rims[i].Hole = was[g.Rims[i].Hole]
		}
	}
	if q.seen == nil {
		q.seen = map[int]*Part{}
	}
	q.seen[n] = &r
	return &r, pose
}
