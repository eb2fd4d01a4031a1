package sketch

import (
	"fettle/eval/solid"

	"math"
	"slices"
)

// crossings gives where the slanting line c crosses outlines, in order along it.
func crossings(outlines [][]Point, c float64) (out []float64) {
	for _, o := range outlines {
		for i, p := range o {
			q := o[(i+1)%len(o)]
			cp, cq := (p.Y-p.X)/math.Sqrt2, (q.Y-q.X)/math.Sqrt2
			if (cp <= c) != (cq <= c) {
				tp, tq := (p.Y+p.X)/math.Sqrt2, (q.Y+q.X)/math.Sqrt2
				out = append(out, tp+(tq-tp)*(c-cp)/(cq-cp))
			}
		}
	}
	slices.Sort(out)
	return out
}

// View says how a part is looked at: Towards points from it to the viewer, Right and Up are
// the part's directions that lie along the sheet's x and y; unit vectors square to each other.
type View struct{ Towards, Right, Up solid.Vec }

// The views of a part in the drawing's frame: x left to right, y front to back, z up.
var (
	Front = View{solid.Vec{0, -1, 0}, solid.Vec{1, 0, 0}, solid.Vec{0, 0, 1}}
	Top   = View{solid.Vec{0, 0, 1}, solid.Vec{1, 0, 0}, solid.Vec{0, 1, 0}}
	Left  = View{solid.Vec{-1, 0, 0}, solid.Vec{0, -1, 0}, solid.Vec{0, 0, 1}}
	Right = View{solid.Vec{1, 0, 0}, solid.Vec{0, 1, 0}, solid.Vec{0, 0, 1}}
)

// Isometric gives the view from in front, above and one side: -1 from the left, 1 from the
// right.
func Isometric(side float64) View {
	t := solid.Vec{math.Copysign(1, side), -1, 1}.Unit()
	r := solid.Vec{0, 0, 1}.Cross(t).Unit()
	return View{t, r, t.Cross(r)}
}

// flat gives a place or direction of the part on the sheet, before scale.
func (v View) flat(p solid.Vec) Point { return Point{p.Dot(v.Right), p.Dot(v.Up)} }

// Lines gives the lines of a part in a view at a scale, the part's origin at a place of the
// sheet. Where several lie on one another only the first in the order visible, hidden, centre
// line is drawn. Without hidden, only what is visible is given.
func (v View) Lines(p *solid.Piece, at Point, scale float64, hidden bool) ([]Stroke, error) {
	es, err := p.Seen(v.Towards)
	if err != nil {
		return nil, err
	}
	return v.lines(es, at, scale, hidden), nil
}

// lines is Lines of edges as they are seen in the view.
func (v View) lines(es []solid.Edge, at Point, scale float64, hidden bool) []Stroke {
	var seen, not []Stroke
	for i := range es {
		e := &es[i]
		switch {
		case e.Visible:
			seen = append(seen, v.stroke(e, at, scale, Wide))
		case hidden:
			not = append(not, v.stroke(e, at, scale, Hidden))
		}
	}
	out := once(seen, nil)
	out = append(out, once(not, out)...)
	if hidden {
		out = append(out, v.axes(es, at, scale)...)
	}
	return out
}

// stroke gives an edge as it lies on the sheet. A round seen on edge is a straight line.
func (v View) stroke(e *solid.Edge, at Point, scale float64, pen Pen) Stroke {
	put := func(p solid.Vec) Point { return at.add(v.flat(p).times(scale)) }
	if e.Kind == solid.Arc {
		u, w := v.flat(e.U).times(scale), v.flat(e.V).times(scale)
		if math.Abs(u.cross(w)) > 1e-6*max(u.dot(u), w.dot(w)) {
			return Ellipse(pen, put(e.Middle), u, w, e.From, e.To)
		}
	}
	s := Stroke{Pen: pen}
	for _, p := range e.Points {
		s.Points = append(s.Points, put(p))
	}
	if straight(s.Points) {
		s.Points = ends(s.Points)
	}
	return s
}

// straight says whether places lie on one line, to 0.002 mm.
func straight(ps []Point) bool {
	e := ends(ps)
	d := e[1].sub(e[0])
	for _, p := range ps {
		if d.len() > 0 && math.Abs(d.cross(p.sub(e[0])))/d.len() > 0.002 {
			return false
		}
	}
	return true
}

// ends gives the two places farthest apart along the longer side of what holds all.
func ends(ps []Point) []Point {
	a := ps[0]
	for _, p := range ps {
		if p.sub(ps[0]).len() > a.sub(ps[0]).len() {
			a = p
		}
	}
	b := a
	for _, p := range ps {
		if p.sub(a).len() > b.sub(a).len() {
			b = p
		}
	}
	return []Point{b, a}
}

// beyond is how far a centre line runs past what it marks, in mm on the paper.
const beyond = 3.0

// axis is a straight line of the part about which something is round, and the places on it at
// which that begins and ends.
type axis struct {
	at, along solid.Vec
	whose     []int // removals whose rounds lie about it; -1 is the blank's
	ends      []solid.Vec
}

// axes gives centre lines: a cross on each circle seen square, and one line along each axis
// that lies in the sheet, from the first to the last of what is round about it.
func (v View) axes(es []solid.Edge, at Point, scale float64) (out []Stroke) {
	var lying []axis
	for i := range es {
		e := &es[i]
		if e.Kind != solid.Arc || math.Abs(e.U.Len()-e.V.Len()) > 1e-6 || e.To-e.From < 0.99*math.Pi {
			continue
		}
		along := e.U.Cross(e.V).Unit()
		switch t := math.Abs(along.Dot(v.Towards)); {
		case t > 1-1e-9:
			m, r := at.add(v.flat(e.Middle).times(scale)), e.U.Len()*scale+beyond
			out = append(out, Stroke{Pen: Centre, Points: []Point{{m.X - r, m.Y}, {m.X + r, m.Y}}},
				Stroke{Pen: Centre, Points: []Point{{m.X, m.Y - r}, {m.X, m.Y + r}}})
		case t < 1e-9:
			lying = about(lying, e, along)
		}
	}
	for i := range lying {
		a := &lying[i]
		a.reach(es)
		var ps []Point
		d := v.flat(a.along).times(beyond)
		for _, q := range a.ends {
			m := at.add(v.flat(q).times(scale))
			ps = append(ps, m.add(d), m.sub(d))
		}
		out = append(out, Stroke{Pen: Centre, Points: ends(ps)})
	}
	return once(longest(out), nil)
}

// about adds a circle to the axis it lies about.
func about(all []axis, e *solid.Edge, along solid.Vec) []axis {
	for i := range all {
		a := &all[i]
		if a.along.Cross(along).Len() < 1e-9 && e.Middle.Sub(a.at).Cross(a.along).Len() < 1e-6 {
			a.ends, a.whose = append(a.ends, e.Middle), append(a.whose, e.By[1])
			return all
		}
	}
	return append(all, axis{e.Middle, along, []int{e.By[1]}, []solid.Vec{e.Middle}})
}

// reach adds how far the contours along an axis of the same rounds go: a hole may end on a
// round, where it leaves no circle.
func (a *axis) reach(es []solid.Edge) {
	for i := range es {
		e := &es[i]
		if !e.Contour || e.Kind != solid.Straight || !slices.Contains(a.whose, e.By[1]) {
			continue
		}
		if e.Points[1].Sub(e.Points[0]).Unit().Cross(a.along).Len() > 1e-9 {
			continue
		}
		for _, p := range e.Points {
			a.ends = append(a.ends, a.at.Add(a.along.Times(p.Sub(a.at).Dot(a.along))))
		}
	}
}

// longest puts long lines first, so that a short one on a long one is the one left out.
func longest(ss []Stroke) []Stroke {
	slices.SortStableFunc(ss, func(a, b Stroke) int {
		la, lb := a.Points[0].sub(a.Points[len(a.Points)-1]).len(), b.Points[0].sub(b.Points[len(b.Points)-1]).len()
		switch {
		case la > lb+1e-9:
			return -1
		case lb > la+1e-9:
			return 1
		}
		return 0
	})
	return ss
}
