package solid

import (
	"errors"
	"math"
	"slices"
)

// The lines of a drawing. A piece is its blank less what was taken, each body convex and each
// bounded by planes, cylinders, cones and balls. Every edge of the metal is therefore a
// stretch of a curve that two such surfaces share, and it is found in four steps:
//
//  1. every two surfaces of bodies that lie near each other give the curves they share
//     (edge_meet.go);
//  2. a curve is split wherever it crosses the surface of a body (edge_split.go);
//  3. in the middle of each stretch the ring of metal round the curve says whether there is an
//     edge of the metal (edge_ring.go), and stretches found twice are dropped;
//  4. for a direction of view the contours of rounds are added, everything is split where the
//     drawings of two curves cross, and a ray towards the viewer from the middle of each
//     stretch says whether it is visible (edge_view.go).
//
// Lines, circles and ellipses are exact; other curves are given by places on both surfaces
// whose chords leave the curve by no more than 0.02 mm. An edge shorter than a Grain is none;
// surfaces less than half a Grain apart are one. A round that a removal makes of cones or planes
// has the edges between them.

// EdgeKind says what curve an edge is.
type EdgeKind uint8

const (
	Straight EdgeKind = iota // from Points[0] to Points[1]
	Arc                      // of a circle or an ellipse: Middle + cos t·U + sin t·V, t from From to To
	Traced                   // through Points, within 0.02 mm
)

// Edge is a line of a drawing in the piece's frame, in mm.
type Edge struct {
	Kind   EdgeKind
	Points []Vec // in order along the edge; of an arc as well, chords within 0.02 mm

	Middle, U, V Vec     // an arc: of a circle U and V are equally long and square to each other
	From, To     float64 // an arc: its angles, From < To ≤ From + 2π

	Contour bool   // not an edge of the metal but where a round turns away from the viewer
	Visible bool   // for the direction that was asked for
	By      [2]int // whose surfaces meet, the lesser first: numbers in Removals, -1 is the blank's own
}

// Closed says whether an edge ends where it begins.
func (e *Edge) Closed() bool {
	return e.Kind != Straight && e.Points[0].Sub(e.Points[len(e.Points)-1]).Len() < Grain
}

// run is a stretch of a curve.
type run struct {
	c       *curve
	t0, t1  float64
	by      [2]int
	contour bool
	visible bool
	near    []int // the bodies near its curve
}

func (r *run) ends() (a, b Vec) { return r.c.at(r.t0), r.c.at(r.t1) }
func (r *run) middle() float64  { return (r.t0 + r.t1) / 2 }
func (r *run) alike(o *run) bool {
	return r.by == o.by && r.contour == o.contour && r.visible == o.visible
}

// short says whether a stretch is less than some length, in mm.
func (r *run) short(than float64) bool {
	if r.c.kind == straight {
		return r.t1-r.t0 < than
	}
	a, b := r.ends()
	m := r.c.at(r.middle())
	return m.Sub(a).Len()+m.Sub(b).Len() < than
}

// Edges gives every edge of the metal, none of them seen from anywhere (Visible is true of
// all), in an order that depends on the piece alone.
func (p *Piece) Edges() []Edge {
	w := p.wire()
	runs := w.edges()
	for i := range runs {
		runs[i].visible = true
	}
	return drawn(runs)
}

// Seen gives the edges and contours of the piece for a viewer far away in a direction, each
// visible or hidden all along. What is seen end on, as a point, is left out. It is an error if
// the direction is none.
func (p *Piece) Seen(towards Vec) ([]Edge, error) {
	out, err := p.SeenFrom(towards)
	if err != nil {
		return nil, err
	}
	return out[0], nil
}

// SeenFrom is Seen from several directions, in their order; the edges, which are the same from
// everywhere, are told once.
func (p *Piece) SeenFrom(towards ...Vec) ([][]Edge, error) {
	for _, t := range towards {
		if !finite(t) || !(t.Len() > 0) || math.IsInf(t.Len(), 0) {
			return nil, errors.New("the direction of view has no length, or one that is no number")
		}
	}
	w := p.wire()
	edges := w.edges()
	var out [][]Edge
	for _, t := range towards {
		t = t.Unit()
		runs := unique(w.contours(t, slices.Clone(edges)))
		out = append(out, drawn(w.see(runs, t)))
	}
	return out, nil
}

// edges gives the stretches of all curves that are edges of the metal.
func (w *wire) edges() []run {
	var out []run
	for i := range w.bodies {
		a := &w.bodies[i]
		if !touch(a.lo, a.hi, w.lo, w.hi) {
			continue
		}
		for j := i; j < len(w.bodies); j++ {
			if b := &w.bodies[j]; touch(a.lo, a.hi, b.lo, b.hi) {
				out = w.between(a, b, out)
			}
		}
	}
	return unique(out)
}

// between adds the edges at which the surfaces of two bodies meet.
func (w *wire) between(a, b *chunk, out []run) []run {
	for i := range a.skins {
		s := &a.skins[i]
		if !touch(s.lo, s.hi, b.lo, b.hi) {
			continue
		}
		from := 0
		if a == b {
			from = i + 1
		}
		for j := from; j < len(b.skins); j++ {
			t := &b.skins[j]
			lo, hi := most(most(s.lo, t.lo), w.lo), least(least(s.hi, t.hi), w.hi)
			if lo[0] > hi[0] || lo[1] > hi[1] || lo[2] > hi[2] {
				continue
			}
			for _, c := range meet(s, t) {
				out = w.trace(&c, lo, hi, out)
			}
		}
	}
	return out
}

// trace adds the stretches of a curve within a box that are edges of the metal or, if it is a
// contour, lie on its smooth surface.
func (w *wire) trace(c *curve, lo, hi Vec, out []run) []run {
	if !c.within(lo, hi) || !w.mayBe(c) {
		return out
	}
	a, b := c.bounds()
	near := w.near(a, b, nil)
	ts := w.splits(c, near)
	for i := 0; i+1 < len(ts); i++ {
		r := run{c: c, t0: ts[i], t1: ts[i+1], near: near, contour: c.b == nil}
		if r.short(Grain) {
			continue
		}
		m := c.at(r.middle())
		if !w.own(c, m) {
			continue
		}
		w.stand(m, near)
		ring := w.ring(c.along(r.middle()))
		ok := false
		if r.contour {
			r.by, ok = ring.rounds(c.a.out(m))
		} else {
			r.by, ok = ring.edge()
		}
		if ok {
			out = append(out, r)
		}
	}
	return out
}

// own says whether the bodies of a curve's surfaces reach to a place of it.
func (w *wire) own(c *curve, v Vec) bool {
	return w.bodies[c.a.body].holds(v) && (c.b == nil || w.bodies[c.b.body].holds(v))
}

// mayBe says whether the bodies of a curve's surfaces, and some blank, come near it.
func (w *wire) mayBe(c *curve) bool {
	if c.kind == straight {
		return true
	}
	c.mark()
	reaches := func(n int) bool {
		b := &w.bodies[n]
		for _, v := range c.pts {
			in := true
			for i := range b.skins {
				in = in && b.skins[i].depth(v) > -c.step
			}
			if in {
				return true
			}
		}
		return false
	}
	blank := false
	for _, p := range w.parts {
		blank = blank || reaches(p.stock)
	}
	return blank && reaches(c.a.body) && (c.b == nil || c.b.body == c.a.body || reaches(c.b.body))
}

// same says whether two stretches are one: their ends are, and the middle of one is on the
// other.
func (r *run) same(o *run) bool {
	a, b := r.ends()
	x, y := o.ends()
	const far = 2 * Grain
	if !(a.Sub(x).Len() < far && b.Sub(y).Len() < far || a.Sub(y).Len() < far && b.Sub(x).Len() < far) {
		return false
	}
	m := r.c.at(r.middle())
	ps, _ := o.c.points(o.t0, o.t1)
	for i := 0; i+1 < len(ps); i++ {
		if fromChord(m, ps[i], ps[i+1]) < 3*sag {
			return true
		}
	}
	return false
}

// unique drops the stretches that were found before; an edge goes before a contour.
func unique(runs []run) []run {
	var out []run
	var boxes [][2]Vec
	for i := range runs {
		r := &runs[i]
		a, b := r.ends()
		lo, hi := least(a, b), most(a, b)
		twice := false
		for j := range out {
			if boxes[j][0].Sub(lo).near() && boxes[j][1].Sub(hi).near() && r.same(&out[j]) {
				twice = true
				break
			}
		}
		if !twice {
			out, boxes = append(out, *r), append(boxes, [2]Vec{lo, hi})
		}
	}
	return out
}

// near says whether no co-ordinate is above 2 Grains.
func (a Vec) near() bool {
	const far = 2 * Grain
	return math.Abs(a[0]) < far && math.Abs(a[1]) < far && math.Abs(a[2]) < far
}
