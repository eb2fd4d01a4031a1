package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A mill goes round an outline with the side of its cutter, right through. The slides carry it along
// edges that lie along the ways of the table and no others; a rotary table lying flat turns the piece
// so that every straight edge can be brought along a way, and sweeps an arc whose middle stands over
// the table's own. The way is the edge set off by the cutter's radius; arcs are played as chords that
// keep within solid.Within of them.

// OutlineWay is the edge of an outline or of an opening, in the frame of the face it is drawn on.
type OutlineWay struct {
	Frame   solid.Frame
	Edges   []OutlineEdge // in turn, anticlockwise
	Opening bool
	Corners []solid.Vec // its points as they are written, on the face, in the part's frame
	Arcs    []solid.OutlineArc
}

// OutlineEdge is one edge: straight, or an arc about Middle that bulges away from what the outline
// holds (Radius above 0) or into it. In mm along the frame's U and V.
type OutlineEdge struct {
	A, B, Middle [2]float64
	Radius       float64 // 0: straight
}

// outlineEdges are the edges of an outline, turned anticlockwise.
func outlineEdges(points [][2]float64, arcs []solid.OutlineArc) []OutlineEdge {
	n := len(points)
	radius := make([]float64, n)
	for _, a := range arcs {
		if a.From >= 0 && a.From < n {
			radius[a.From] = a.Radius
		}
	}
	area := 0.0
	for i, p := range points {
		q := points[(i+1)%n]
		area += p[0]*q[1] - q[0]*p[1]
	}
	out := make([]OutlineEdge, n)
	for i, p := range points {
		e := OutlineEdge{A: p, B: points[(i+1)%n], Radius: radius[i]}
		if area < 0 {
			e.A, e.B = e.B, e.A
			out[n-1-i] = e.centred()
			continue
		}
		out[i] = e.centred()
	}
	return out
}

// centred works out the middle of an arc.
func (e OutlineEdge) centred() OutlineEdge {
	if e.Radius == 0 {
		return e
	}
	d := [2]float64{e.B[0] - e.A[0], e.B[1] - e.A[1]}
	c := math.Hypot(d[0], d[1])
	if c == 0 {
		e.Radius = 0
		return e
	}
	h := math.Sqrt(math.Max(0, e.Radius*e.Radius-c*c/4))
	if e.Radius > 0 {
		h = -h // the outward side is on the right of the edge
	}
	e.Middle = [2]float64{(e.A[0]+e.B[0])/2 + d[1]/c*h, (e.A[1]+e.B[1])/2 - d[0]/c*h}
	return e
}

// chords are the ends of the straight pieces that an edge is played as, without its first place.
func (e OutlineEdge) chords() [][2]float64 {
	if e.Radius == 0 {
		return [][2]float64{e.B}
	}
	r := math.Abs(e.Radius)
	from, to := math.Atan2(e.A[1]-e.Middle[1], e.A[0]-e.Middle[0]), math.Atan2(e.B[1]-e.Middle[1], e.B[0]-e.Middle[0])
	turn := math.Mod(to-from+4*math.Pi, 2*math.Pi)
	if e.Radius < 0 {
		turn -= 2 * math.Pi
	}
	n := max(1, int(math.Ceil(math.Abs(turn)/(2*math.Acos(math.Max(0, 1-solid.Within/r))))))
	n = min(n, 360)
	out := make([][2]float64, 0, n)
	for i := 1; i < n; i++ {
		sin, cos := math.Sincos(from + turn*float64(i)/float64(n))
		out = append(out, [2]float64{e.Middle[0] + r*cos, e.Middle[1] + r*sin})
	}
	return append(out, e.B)
}

// outlineRoom is the room of an opening; an outline is open all round.
func (p *Part) outlineRoom(f *Form) {
	if !f.Way.Opening {
		for _, face := range model.Faces {
			f.Open[face] = true
		}
		return
	}
	f.Open[f.Into.Face], f.Open[f.Into.Face.Opposite()] = true, true
	f.Lo, f.Hi = p.High(), p.Low
	for _, e := range f.Way.Edges {
		for _, c := range e.chords() {
			v := f.Way.Frame.Point(c[0], c[1], 0)
			for i := range 3 {
				f.Lo[i], f.Hi[i] = math.Min(f.Lo[i], v[i]), math.Max(f.Hi[i], v[i])
			}
		}
	}
	axis := f.Into.Face.Axis()
	f.Lo[axis], f.Hi[axis] = p.Low[axis], p.High()[axis]
}

// Middles are the middles of the arcs of an outline, each once, in the part's frame.
func (f *Form) Middles() []solid.Vec {
	var out []solid.Vec
	for _, e := range f.Way.Edges {
		if e.Radius == 0 {
			continue
		}
		v, known := f.Way.Frame.Point(e.Middle[0], e.Middle[1], 0), false
		for _, o := range out {
			known = known || o.Sub(v).Len() < model.Grain
		}
		if !known {
			out = append(out, v)
		}
	}
	return out
}

// Hollow is the least radius of the arcs of an outline that are hollow from the side of the cutter;
// false where it has none.
func (f *Form) Hollow() (least float64, ok bool) {
	for _, e := range f.Way.Edges {
		if e.Radius < 0 != f.Way.Opening && e.Radius != 0 && (!ok || math.Abs(e.Radius) < least) {
			least, ok = math.Abs(e.Radius), true
		}
	}
	return least, ok
}

// Sharp says whether an outline has a hollow corner without a radius, which a cutter leaves round.
func (f *Form) Sharp() bool {
	es := f.Way.Edges
	for i, e := range es {
		next := es[(i+1)%len(es)]
		if e.Radius != 0 || next.Radius != 0 {
			continue // an arc mostly runs on smoothly
		}
		cross := (e.B[0]-e.A[0])*(next.B[1]-next.A[1]) - (e.B[1]-e.A[1])*(next.B[0]-next.A[0])
		if cross < -model.Same && !f.Way.Opening || cross > model.Same && f.Way.Opening {
			return true
		}
	}
	return false
}

// outlineWrong says why the slides of this holding do not carry a cutter round an outline.
func (k *Cut) outlineWrong(f *Form) string {
	if k.Hold.Choice.Divided != nil && k.Hold.Choice.Divided.Table != nil {
		return ""
	}
	for _, e := range f.Way.Edges {
		if k.idleEdge(f, e) {
			continue
		}
		if e.Radius != 0 {
			return "it has arcs, and the slides of a table sweep none: a rotary table lying flat does, or they are cut and filed at the bench"
		}
		d := k.Hold.Pose.Dir(f.Way.Frame.Point(e.B[0], e.B[1], 0).Sub(f.Way.Frame.Point(e.A[0], e.A[1], 0)).Unit())
		if math.Abs(d[0]) < 1-1e-9 && math.Abs(d[1]) < 1-1e-9 {
			return "one of its edges lies aslant of both ways of the table: a rotary table turns it, or it is cut and filed at the bench"
		}
	}
	return ""
}

// idleEdge says whether nothing is to be taken along an edge: it lies in a face of the part that has
// no metal over it.
func (k *Cut) idleEdge(f *Form, e OutlineEdge) bool {
	if e.Radius != 0 || f.Way.Opening {
		return false
	}
	a, b := f.Way.Frame.Point(e.A[0], e.A[1], 0), f.Way.Frame.Point(e.B[0], e.B[1], 0)
	for _, face := range model.Faces {
		i := face.Axis()
		if i == f.Into.Face.Axis() || !near(a[i], k.Part.FaceAt(face)) || !near(b[i], k.Part.FaceAt(face)) {
			continue
		}
		return (k.Before.Faces[face].At-k.Part.FaceAt(face))*face.Sign() < model.Grain
	}
	return false
}

// corner2 is a place of an outline that is played: where it lies and whether what leads to it cuts.
type corner2 struct {
	at   [2]float64
	idle bool
}

// outlineMoves are the ways of the cutter's middle round an outline, its end some way below the far
// face, in the machine's frame.
func (k *Cut) outlineMoves(f *Form, r float64) (moves []solid.Move, run float64, wrong string) {
	var ps []corner2
	for _, e := range f.Way.Edges {
		idle := k.idleEdge(f, e)
		for _, c := range e.chords() {
			ps = append(ps, corner2{c, idle})
		}
	}
	side := 1.0 // the cutter runs on the right of an edge, outside
	if f.Way.Opening {
		side = -1
	}
	n := len(ps)
	dir := func(i int) [2]float64 { // of what leads to a place
		a, b := ps[(i-1+n)%n].at, ps[i%n].at
		l := math.Hypot(b[0]-a[0], b[1]-a[1])
		if l == 0 {
			return [2]float64{}
		}
		return [2]float64{(b[0] - a[0]) / l, (b[1] - a[1]) / l}
	}
	off := func(i int) (in, out [2]float64) { // the cutter's middle at a place: coming, going
		d, g := dir(i), dir(i+1)
		m, q := [2]float64{d[1] * side, -d[0] * side}, [2]float64{g[1] * side, -g[0] * side}
		at := ps[i].at
		if 1+m[0]*q[0]+m[1]*q[1] < 0.5 && g[0]*m[0]+g[1]*m[1] < 0 { // round a pointed corner in two goes
			return [2]float64{at[0] + r*(m[0]+d[0]), at[1] + r*(m[1]+d[1])}, [2]float64{at[0] + r*(q[0]-g[0]), at[1] + r*(q[1]-g[1])}
		}
		w := r / math.Max(1+m[0]*q[0]+m[1]*q[1], 1e-6)
		p := [2]float64{at[0] + w*(m[0]+q[0]), at[1] + w*(m[1]+q[1])}
		return p, p
	}
	depth := f.Depth.V + k.Part.Build.Thumbs["flange_gap"].Or(0.5)
	place := func(p [2]float64) solid.Vec { return k.Hold.Pose.Point(f.Way.Frame.Point(p[0], p[1], -depth)) }
	first := true
	for i := range ps {
		_, from := off((i - 1 + n) % n)
		to, on := off(i)
		d := dir(i)
		if (to[0]-from[0])*d[0]+(to[1]-from[1])*d[1] < -solid.Within {
			return nil, 0, "a cutter of " + model.Figure(2*r) + " mm does not go into its narrow places"
		}
		if ps[i].idle {
			first = true
			continue
		}
		a, b := place(from), place(to)
		if first {
			above := a
			above[2] = k.Hold.Hi[2] + k.Part.Build.Thumbs["room"].Or(1)
			moves, first = append(moves, solid.Move{From: above, To: a}), false
		}
		moves = append(moves, solid.Move{From: a, To: b})
		if on != to && !ps[(i+1)%n].idle {
			moves = append(moves, solid.Move{From: b, To: place(on)})
		}
		run += b.Sub(a).Len()
	}
	return moves, run, ""
}

// Swept is an arc of an outline as a rotary table sweeps it, its middle over the table's.
type Swept struct {
	Middle solid.Vec // on the face that it is drawn on, in the part's frame
	Arc    float64   // its radius, mm
	Tool   float64   // radius on which the cutter's middle stands
}

// Sweeps are the arcs of an outline for a cutter of a radius, those about one middle and of one radius
// once.
func (f *Form) Sweeps(r float64) []Swept {
	var out []Swept
	for _, e := range f.Way.Edges {
		if e.Radius == 0 {
			continue
		}
		s := Swept{Middle: f.Way.Frame.Point(e.Middle[0], e.Middle[1], 0), Arc: math.Abs(e.Radius)}
		s.Tool = s.Arc + r
		if e.Radius < 0 != f.Way.Opening {
			s.Tool = math.Max(0, s.Arc-r)
		}
		known := false
		for _, o := range out {
			known = known || o.Middle.Sub(s.Middle).Len() < model.Grain && near(o.Tool, s.Tool)
		}
		if !known {
			out = append(out, s)
		}
	}
	return out
}
