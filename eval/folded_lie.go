package eval

import (
	"math"

	"fettle/eval/solid"
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
	to := at
	along, rise := solid.Apart(k.Angle, k.Inside, thick)
	to[k.Axis] += k.Sign * along
	to[2] = rise
	if k.Angle < 0 {
		at[2] = thick
		to[2] = thick - rise
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
	return q.Shifted(to.Sub(q.Point(at)))
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
