package eval

import (
	"math"
	"slices"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A split is drawn closed. Until the two pieces are put together again, the second one lies
// farther off by what the saw and the cleaning of both joint faces take: the raw piece is longer
// by so much, and so is the part while it is one.
//
// So a part with a split has two frames. The work begins on the part as it lies apart (Part.Apart):
// the same forms in the same order, those on the second piece's side moved outwards, and those
// that run across the joint longer. The first holding of both pieces together after the split
// closes the joint: the piece is then two pieces side by side, in the frame of the drawing. A form
// that the joint cuts lengthwise (a bearing's bore, a slot along the joint) is not longer: made
// before the split it loses the gap, and a rule says so.

// SplitJoint is how a split stands apart.
type SplitJoint struct {
	Form   *Form   // of the part apart
	Axis   int     // square to the joint
	Sign   float64 // from the first piece to the second along the axis
	At     float64 // the closed joint, which is the first piece's own face there
	Gap    float64 // kerf and what cleaning takes off both faces
	Kerf   float64
	Clean  float64 // off each joint face after sawing
	Chosen bool    // the kerf is that of a saw
	halved []int   // which forms the closed joint cuts in two lengthwise
}

// Second is where the second piece's joint face lies, cleaned, while the pieces are apart.
func (j *SplitJoint) Second() float64 { return j.At + j.Sign*j.Gap }

// face is the joint's own face of a piece, 0 or 1, finished.
func (j *SplitJoint) face(n int) float64 {
	if n == 0 {
		return j.At
	}
	return j.Second()
}

// sawn is the same face as the saw leaves it.
func (j *SplitJoint) sawn(n int) float64 {
	if n == 0 {
		return j.At + j.Sign*j.Clean
	}
	return j.Second() - j.Sign*j.Clean
}

// off moves a place along the axis from the drawing to the part apart. A place on the joint
// itself is the first piece's.
func (j *SplitJoint) off(x float64) float64 {
	if (x-j.At)*j.Sign > model.Grain {
		return x + j.Sign*j.Gap
	}
	return x
}

// back moves a place along the axis from the part apart to the drawing.
func (j *SplitJoint) back(x float64) float64 {
	if (x-j.At)*j.Sign > j.Gap/2 {
		return x - j.Sign*j.Gap
	}
	return x
}

// openUp makes the part as it lies apart; it has none where nothing is split, where the drawing
// shows the gap, and of turned parts.
func (p *Part) openUp() {
	f := p.splitForm()
	if f == nil || p.Round {
		return
	}
	j := &SplitJoint{Axis: f.Across, Sign: -p.side(f, 0).Sign(), At: (f.Lo[f.Across] + f.Hi[f.Across]) / 2, Kerf: f.Width, Clean: p.cleanUp(f)}
	j.Chosen = !f.Feature.Kerf.Is()
	j.Gap = j.Kerf + 2*j.Clean
	q := *p
	q.Joint, q.Work, q.Forms = j, nil, nil
	q.Size[j.Axis] += j.Gap
	if j.Sign < 0 {
		q.Low[j.Axis] -= j.Gap
	}
	q.Sized[j.Axis].Nominal += j.Gap
	was := map[*Form]*Form{}
	for _, g := range p.Forms {
		h := *g
		h.beside = nil
		q.Forms = append(q.Forms, &h)
		was[g] = &h
	}
	for i, g := range p.Forms {
		h := q.Forms[i]
		if j.Halves(g) {
			j.halved = append(j.halved, i)
		}
		if !j.move(h) {
			return
		}
		for r := range h.Rims {
			h.Rims[r].Hole = was[h.Rims[r].Hole]
		}
		if g == f {
			j.Form = h
		}
	}
	f.Lo[j.Axis], f.Hi[j.Axis] = j.At, j.At
	a, b := j.sawn(0), j.sawn(1)
	j.Form.Lo[j.Axis], j.Form.Hi[j.Axis] = math.Min(a, b), math.Max(a, b)
	q.spell()
	p.Apart = &q
}

// splitForm is the part's split, where there is just one that is drawn closed.
func (p *Part) splitForm() *Form {
	var out *Form
	for _, f := range p.Forms {
		if f.Feature.Kind != "split" {
			continue
		}
		if out != nil || f.Wrong != "" || len(f.Lacks) > 0 || f.Feature.StaysOpen.V || len(f.Feature.Pieces.V) != 2 {
			return nil
		}
		out = f
	}
	return out
}

// cleanUp is what is taken off each joint face after sawing: as written; where a step makes a
// joint face, the usual; else nothing, and the faces stay as the saw leaves them.
func (p *Part) cleanUp(f *Form) float64 {
	if c, ok := f.Feature.CleanUp.Get(); ok {
		return math.Max(0, c)
	}
	for _, s := range p.Part.Work {
		refs := append([]model.Ref{}, s.Makes.V...)
		for _, st := range s.Steps {
			refs = append(refs, st.Makes.V...)
		}
		for _, r := range refs {
			if r.Item == f.Feature.Item && r.Sub != "" {
				return usualClean
			}
		}
	}
	return 0
}

// usualClean is what is taken off each face of a joint that a slitting saw has sawn, where a step
// makes it and no figure is written, mm: common practice.
const usualClean = 0.2

// move takes a form from the drawing to the part apart; false where its shape cannot be.
func (j *SplitJoint) move(f *Form) bool {
	if f.Wrong != "" || len(f.Lacks) > 0 {
		return true
	}
	a := j.Axis
	if len(f.Trim) > 0 || f.Under != nil || f.Skew != nil || len(f.Copies) > 0 || f.Lathe != nil {
		return false
	}
	f.Into = j.plane(f.Into)
	f.Edge = [2]Plane{j.plane(f.Edge[0]), j.plane(f.Edge[1])}
	f.Rims = append([]Rim(nil), f.Rims...)
	for i := range f.Rims {
		f.Rims[i].Face = j.plane(f.Rims[i].Face)
	}
	if f.Feature.Kind == "split" {
		return true
	}
	if len(f.Mouths) > 0 {
		j.moveHole(f)
		return true
	}
	lo, hi := f.Lo[a], f.Hi[a]
	if j.Halves(f) {
		d := j.Sign * j.Gap / 2
		f.Lo[a], f.Hi[a] = lo+d, hi+d
		return true
	}
	f.Lo[a], f.Hi[a] = j.end(lo, hi), j.end(hi, lo)
	if f.Into.Face != model.NoFace && f.Into.Face.Axis() == a && f.Depth.Is() {
		f.Depth.V = f.Hi[a] - f.Lo[a]
	}
	return true
}

// end moves one end of a room; one that lies on the joint is on the side of the other end.
func (j *SplitJoint) end(x, other float64) float64 {
	if math.Abs(x-j.At) <= model.Grain && (other-j.At)*j.Sign > model.Grain {
		return x + j.Sign*j.Gap
	}
	return j.off(x)
}

func (j *SplitJoint) plane(pl Plane) Plane {
	if pl.Face == model.NoFace || pl.Face.Axis() != j.Axis {
		return pl
	}
	if math.Abs(pl.At-j.At) <= model.Grain && pl.Face.Sign() != j.Sign {
		pl.At = j.Second() // the second piece's face looks at the first
		return pl
	}
	pl.At = j.off(pl.At)
	return pl
}

func (j *SplitJoint) moveHole(f *Form) {
	a := j.Axis
	f.Mouths = append([]solid.Vec(nil), f.Mouths...)
	for i := range f.Mouths {
		m := &f.Mouths[i]
		switch {
		case f.Into.Face.Axis() == a:
			m[a] = f.Into.At
		case j.crossed(m[a], f.Diameter.Or(0)/2):
			m[a] += j.Sign * j.Gap / 2
		default:
			m[a] = j.off(m[a])
		}
	}
	if f.Into.Face.Axis() != a || !f.Depth.Is() {
		return
	}
	// Along the axis: longer by the gap where it goes through the joint.
	if end := f.Into.At - f.Into.Face.Sign()*f.Depth.V; (end-j.At)*(f.Into.At-j.At) < 0 {
		f.Depth.V += j.Gap
	}
}

// crossed says whether the closed joint cuts lengthwise through a hole with its axis at x.
func (j *SplitJoint) crossed(x, r float64) bool { return math.Abs(x-j.At) < r-model.Grain }

// Halves says whether the closed joint cuts a form of the drawing in two lengthwise: a hole along
// the joint, or a slot or pocket with a wall on either side of it.
func (j *SplitJoint) Halves(f *Form) bool {
	a := j.Axis
	if f.Into.Face == model.NoFace || f.Into.Face.Axis() == a || f.Wrong != "" || len(f.Lacks) > 0 {
		return false
	}
	if len(f.Mouths) > 0 {
		for _, m := range f.Mouths {
			if j.crossed(m[a], f.Diameter.Or(0)/2) {
				return true
			}
		}
		return false
	}
	switch f.Feature.Kind {
	case "slot", "pocket":
		return !f.Open[model.FaceOn(a, -1)] && !f.Open[model.FaceOn(a, 1)] && f.Lo[a] < j.At-model.Grain && f.Hi[a] > j.At+model.Grain
	}
	return false
}

// Crosses says whether a hole of the drawing goes from one piece through the joint into the other.
func (j *SplitJoint) Crosses(f *Form) bool {
	if len(f.Mouths) == 0 || f.Wrong != "" || len(f.Lacks) > 0 || f.Into.Face.Axis() != j.Axis || !f.Depth.Is() {
		return false
	}
	end := f.Into.At - f.Into.Face.Sign()*f.Depth.V
	return (end-j.At)*(f.Into.At-j.At) < 0
}

// closeUp puts the two pieces of the part apart together, in the frame of the drawing. What the
// joint faces still have over is looked at by a rule; here they touch.
func (q *Part) closeUp(s *State) *State {
	j := q.Joint
	a := j.Axis
	n := s.next(s.Last, s.Key.With(digest("joint closed")))
	n.Closed = true
	var shift solid.Vec
	shift[a] = -j.Sign * j.Gap
	var first, second *solid.Piece
	if ps := s.Piece.Lumps(); len(ps) == 2 {
		first, second = ps[0], ps[1] // it was together before
	} else {
		first = s.Piece.Cut(solid.Removal{Take: q.half(j, 1, j.At), By: "the other piece"})
		second = s.Piece.Cut(solid.Removal{Take: q.half(j, 0, j.Second()), By: "the other piece"})
	}
	n.Piece = solid.Joined(first, second.Placed(unturned.Shifted(shift)))
	for _, f := range model.Faces {
		if f.Axis() == a {
			n.Faces[f].At = j.back(n.Faces[f].At)
		}
	}
	n.Burrs = slices.Clone(n.Burrs)
	for i, there := range n.Burrs {
		b := *there
		b.A[a], b.B[a] = j.back(b.A[a]), j.back(b.B[a])
		n.Burrs[i] = &b
	}
	q.deepen(n, -j.Gap)
	return n
}

// unturned leaves a piece as it stands.
var unturned = solid.Attitude(solid.Vec{0, 0, 1}, solid.Vec{0, 1, 0})

// deepen adds to the depth of the holes that go through the joint and are as deep as they are to be.
func (q *Part) deepen(n *State, by float64) {
	for i, f := range q.Forms {
		fs := n.Features[i]
		if q.Joint.Crosses(f) && fs.Depth > 0 && (near(fs.Depth, f.Depth.V) || near(fs.Depth+by, f.Depth.V)) {
			q.change(n, f).Depth += by
		}
	}
}

// opens says whether a stretch of work is on one piece of a split alone.
func (p *Part) opens(w *Work) bool {
	return p.Apart != nil && pieceOf(p.Forms[p.Apart.index(p.Apart.Joint.Form)], w) != ""
}

// takeApart lays the two pieces of a closed joint apart again.
func (q *Part) takeApart(s *State) *State {
	j := q.Joint
	ps := s.Piece.Lumps()
	n := s.next(s.Last, s.Key.With(digest("joint opened")))
	n.Closed = false
	if len(ps) != 2 {
		return n
	}
	var shift solid.Vec
	shift[j.Axis] = j.Sign * j.Gap
	n.Piece = solid.Joined(ps[0], ps[1].Placed(unturned.Shifted(shift)))
	for _, f := range model.Faces {
		if f.Axis() == j.Axis {
			n.Faces[f].At = j.off(n.Faces[f].At)
		}
	}
	n.Burrs = slices.Clone(n.Burrs)
	for i, there := range n.Burrs {
		b := *there
		b.A[j.Axis], b.B[j.Axis] = j.off(b.A[j.Axis]), j.off(b.B[j.Axis])
		n.Burrs[i] = &b
	}
	q.deepen(n, j.Gap)
	return n
}

// half is the room of one piece, 0 or 1, from a plane outwards, beyond all metal.
func (q *Part) half(j *SplitJoint, n int, from float64) solid.Shape {
	lo, hi := q.Blank.Lo, q.Blank.Hi
	out := q.outward()
	for i := range 3 {
		lo[i] -= out
		hi[i] += out
	}
	if (j.Sign > 0) == (n == 1) {
		lo[j.Axis] = from
	} else {
		hi[j.Axis] = from
	}
	return solid.Box(lo, hi)
}
