package eval

import (
	"fmt"
	"math"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Bent is how sheet lies that is folded at some of its bends.
type Bent struct {
	Made   []bool
	Poses  []solid.Pose // of every leg, from the frame of the drawing
	Corner float64      // metal of the sheet that belongs to no leg, since two bends meet there, mm³
	strips []int        // of how many lumps each bend consists, after those of the legs
}

// poses are those of all legs with some bends folded.
func (w *Folding) poses(made []bool, thick float64) []solid.Pose {
	out := make([]solid.Pose, len(w.Legs))
	out[0] = unturned
	for range w.Bends { // outwards from the base
		for i := range w.Bends {
			k := &w.Bends[i]
			out[k.Far] = after(out[k.Near], k.turn(made[i], thick))
		}
	}
	return out
}

// turn carries the far leg of a bend to where it lies beside the near one, both in the frame of the drawing.
func (k *Crease) turn(made bool, thick float64) solid.Pose {
	var out, at solid.Vec
	out[k.Axis], at[k.Axis] = k.Sign, k.At
	if !made {
		return unturned.Shifted(out.Times(-k.Takes))
	}
	if k.Angle < 0 {
		at[2] = thick
	}
	sin, cos := math.Sincos(k.Angle)
	for _, x := range []*float64{&sin, &cos} { // a right angle without its last digits
		if r := math.Round(*x); math.Abs(*x-r) < 1e-12 {
			*x = r
		}
	}
	up := solid.Vec{0, 0, cos}.Add(out.Times(sin))
	back := solid.Vec{0, 1, 0}
	if k.Axis == 1 {
		back = out.Times(cos).Sub(solid.Vec{0, 0, sin}).Times(k.Sign)
	}
	q := solid.Attitude(up, back)
	return q.Shifted(at.Sub(q.Point(at)))
}

// region is a rectangle of the flat sheet, in the frame of the drawing of a leg.
type region struct{ lo, hi [2]float64 }

// legRegion is the metal that goes with a leg: as far as there is any where no bend ends it.
func (w *Folding) legRegion(i int) region {
	l := &w.Legs[i]
	r := region{l.Lo, l.Hi}
	for axis := range 2 {
		c := &w.Along[axis]
		no := c.Base
		if axis == l.Axis {
			no = l.No
		}
		half := 0.0 // beside the base: half of what its bends take up
		if i > 0 && axis != l.Axis {
			half = 0.5
		}
		if no == 0 {
			r.lo[axis] = math.Inf(-1)
		} else {
			r.lo[axis] -= half * w.allowance(axis, no-1)
		}
		if no == len(c.Sheet.Folds) {
			r.hi[axis] = math.Inf(1)
		} else {
			r.hi[axis] += half * w.allowance(axis, no)
		}
	}
	return r
}

func (w *Folding) allowance(axis, no int) float64 {
	f := &w.Along[axis].Sheet.Folds[no]
	return 2*f.Setback.V - f.Takes.V
}

// strip is the metal of a bend that is not folded yet, in the frame of its near leg.
func (w *Folding) strip(k *Crease) region {
	var r region
	a, b := k.At-k.Sign*k.Setback, k.At-k.Sign*k.Setback+k.Sign*k.Allowance()
	r.lo[k.Axis], r.hi[k.Axis] = min(a, b), max(a, b)
	axis := 1 - k.Axis
	base := w.legRegion(0)
	r.lo[axis], r.hi[axis] = base.lo[axis], base.hi[axis]
	return r
}

// within cuts away what of a piece lies outside a region.
func (r region) within(p *solid.Piece) *solid.Piece {
	var lo, hi solid.Vec
	for i := range 3 {
		lo[i], hi[i] = p.Extent(i, -1)-1, p.Extent(i, 1)+1
	}
	var cuts []solid.Removal
	for axis := range 2 {
		if x := r.lo[axis]; x > lo[axis]+1 {
			to := hi
			to[axis] = x
			cuts = append(cuts, solid.Removal{Take: solid.Box(lo, to), By: "another leg"})
		}
		if x := r.hi[axis]; x < hi[axis]-1 {
			from := lo
			from[axis] = x
			cuts = append(cuts, solid.Removal{Take: solid.Box(from, hi), By: "another leg"})
		}
	}
	return p.Cut(cuts...)
}

// drawnLeg shifts what lies flat to the frame of the drawing of a leg.
func (w *Folding) drawnLeg(i int) solid.Pose {
	var by solid.Vec
	for axis := range 2 {
		no := w.Along[axis].Base
		if axis == w.Legs[i].Axis {
			no = w.Legs[i].No
		}
		by[axis] = w.Along[axis].taken(no)
	}
	return unturned.Shifted(by)
}

// open takes flat sheet for sheet with bends of which none is folded yet: legs, and strips between them.
func (w *Folding) open(drawn *Part, s *State) *State {
	b := &Bent{Made: make([]bool, len(w.Bends)), strips: make([]int, len(w.Bends))}
	thick := drawn.Size[2]
	b.Poses = w.poses(b.Made, thick)
	var parts []*solid.Piece
	for i := range w.Legs {
		to := w.drawnLeg(i)
		parts = append(parts, w.legRegion(i).within(s.Piece.Placed(to)).Placed(b.Poses[i]))
	}
	for i := range w.Bends {
		k := &w.Bends[i]
		strip := w.strip(k).within(s.Piece.Placed(w.drawnLeg(k.Near)))
		for _, piece := range k.pieces(strip, false, thick) {
			parts = append(parts, piece.Placed(b.Poses[k.Near]))
			b.strips[i]++
		}
	}
	b.Corner = w.corner(s.Piece, parts)
	n := s.next(s.Last, s.Key.With(digest("sheet with its bends")))
	n.Piece, n.Bent = solid.Joined(parts...), b
	var own [7]FaceState
	for _, f := range model.Faces {
		own[f] = s.Faces[f]
		if a := f.Axis(); a < 2 && f.Sign() > 0 {
			own[f].At += w.Along[a].taken(len(w.Along[a].Sheet.Folds))
		}
	}
	n.Others = [][7]FaceState{own}
	n.Burrs = nil
	for _, was := range s.Burrs {
		i := w.flatLeg(was.A.Add(was.B).Times(0.5))
		n.Burrs = append(n.Burrs, was.placed(after(b.Poses[i], w.drawnLeg(i))))
	}
	return n
}

// corner is the metal of flat sheet that goes with no leg and no bend. What lies beside where the bends
// themselves would cross is no more than the width of either, and is not counted.
func (w *Folding) corner(flat *solid.Piece, parts []*solid.Piece) float64 {
	var wide [2]float64
	for axis := range 2 {
		for i := range w.Along[axis].Sheet.Folds {
			wide[axis] = max(wide[axis], w.allowance(axis, i))
		}
	}
	if wide[0] == 0 || wide[1] == 0 {
		return 0
	}
	lost := flat.Volume()
	for _, p := range parts {
		lost -= p.Volume()
	}
	if lost < 4*wide[0]*wide[1]*w.Part.Size[2] {
		return 0
	}
	return lost
}

// BothWays says whether sheet is folded across either axis.
func (b *Bent) BothWays(w *Folding) bool {
	var ways [2]bool
	for i, made := range b.Made {
		ways[w.Bends[i].Axis] = ways[w.Bends[i].Axis] || made
	}
	return ways[0] && ways[1]
}

// flatLeg is the leg that a place of the flat sheet lies on, or nearest to.
func (w *Folding) flatLeg(v solid.Vec) int {
	best, least := 0, math.Inf(1)
	for i := range w.Legs {
		u := w.drawnLeg(i).Point(v)
		l, d := &w.Legs[i], 0.0
		for a := range 2 {
			d += max(0, l.Lo[a]-u[a], u[a]-l.Hi[a])
		}
		if d < least-model.Grain {
			best, least = i, d
		}
	}
	return best
}

// pieces makes the metal of a bend, folded or not, in the frame of its near leg: as wide as there is metal
// on the middle line of what is to become it.
func (k *Crease) pieces(strip *solid.Piece, made bool, thick float64) (out []*solid.Piece) {
	var along, mid solid.Vec
	axis := 1 - k.Axis
	along[axis] = 1
	mid[k.Axis], mid[2] = k.At-k.Sign*k.Setback+k.Sign*k.Allowance()/2, thick/2
	for _, x := range strip.Line(mid, along) {
		var u solid.Vec
		u[k.Axis] = k.Sign
		f := solid.Frame{U: u, V: solid.Vec{0, 0, 1}.Cross(u)} // the third axis is up
		f.At[k.Axis] = k.At - k.Sign*k.Setback
		f.At[axis] = x.A
		if f.V[axis] < 0 {
			f.At[axis] = x.B
		}
		if made {
			out = append(out, f.Bent(x.B-x.A, thick, solid.Bend{Angle: k.Angle, Inside: k.Inside}, k.Form.Name()))
		} else {
			out = append(out, solid.Raw(f.Block(solid.Vec{}, solid.Vec{k.Allowance(), x.B - x.A, thick})))
		}
	}
	return out
}

// fold folds the sheet at one of its bends; q is how it lies.
func (w *Folding) fold(drawn, q *Part, s *State, f *Form, by finding.Spot) (*Part, *State) {
	if s.Bent == nil {
		s = w.open(drawn, s)
	}
	no := -1
	for i := range w.Bends {
		if w.Bends[i].Form.Feature == f.Feature {
			no = i
		}
	}
	if no < 0 || s.Bent.Made[no] {
		return q, s
	}
	thick := drawn.Size[2]
	b := &Bent{Made: append([]bool(nil), s.Bent.Made...), Corner: s.Bent.Corner, strips: append([]int(nil), s.Bent.strips...)}
	b.Made[no] = true
	b.Poses = w.poses(b.Made, thick)
	lumps := s.Piece.Lumps()
	move := func(i int) solid.Pose { return after(b.Poses[i], s.Bent.Poses[i].Inverse()) }
	var parts []*solid.Piece
	for i := range w.Legs {
		parts = append(parts, lumps[i].Placed(move(i)))
	}
	at := len(w.Legs)
	for i := range w.Bends {
		k := &w.Bends[i]
		own := lumps[at : at+s.Bent.strips[i]]
		at += s.Bent.strips[i]
		if i != no {
			for _, l := range own {
				parts = append(parts, l.Placed(move(k.Near)))
			}
			continue
		}
		b.strips[i] = 0
		for _, l := range own {
			for _, piece := range k.pieces(l.Placed(s.Bent.Poses[k.Near].Inverse()), true, thick) {
				parts = append(parts, piece.Placed(b.Poses[k.Near]))
				b.strips[i]++
			}
		}
	}
	n := s.next(by, s.Key.With(digest("folded", f.Name())))
	n.Piece, n.Bent = solid.Joined(parts...), b
	fs := q.change(n, q.Forms[drawn.numberOf(w.Bends[no].Form)])
	fs.Begun, fs.Finished, fs.ByProcess, fs.By = true, true, "bending", by
	n.Burrs = nil
	for _, was := range s.Burrs {
		n.Burrs = append(n.Burrs, was.placed(move(w.bentLeg(s.Bent, was.A.Add(was.B).Times(0.5)))))
	}
	for _, f := range model.Faces {
		n.Faces[f].At = n.Piece.Extent(f.Axis(), f.Sign())
	}
	next := w.lying(drawn, b, n)
	next.envelopeFaces(n)
	return next, n
}

// bentLeg is the leg that a place of the sheet as it is lies on, or nearest to.
func (w *Folding) bentLeg(b *Bent, v solid.Vec) int {
	best, least := 0, math.Inf(1)
	for i := range w.Legs {
		u := b.Poses[i].Inverse().Point(v)
		l, d := &w.Legs[i], max(0, -u[2])
		for a := range 2 {
			d += max(0, l.Lo[a]-u[a], u[a]-l.Hi[a])
		}
		if d < least-model.Grain {
			best, least = i, d
		}
	}
	return best
}

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
	for i, l := range w.Legs {
		for _, x := range []float64{l.Over[0], l.Over[1]} {
			for _, y := range []float64{l.Over[2], l.Over[3]} {
				for _, z := range []float64{0, drawn.Size[2]} {
					v := b.Poses[i].Point(solid.Vec{x, y, z})
					for a := range 3 {
						lo[a], hi[a] = min(lo[a], v[a]), max(hi[a], v[a])
					}
				}
			}
		}
	}
	return lo, hi
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
