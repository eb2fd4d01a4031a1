package solid

import "math"

// Stretches that run into each other on one line, one circle or one traced curve, alike in
// all else, are one edge.

// drawn joins stretches and gives them as edges.
func drawn(runs []run) []Edge {
	runs = joinRuns(runs)
	var out []Edge
	for i := range runs {
		out = append(out, edgeOf(&runs[i]))
	}
	return joinTraced(out)
}

// edgeOf gives a stretch as an edge.
func edgeOf(r *run) Edge {
	e := Edge{Contour: r.contour, Visible: r.visible, By: r.by}
	e.Points, _ = r.c.points(r.t0, r.t1)
	switch r.c.kind {
	case conic:
		e.Kind, e.Middle, e.U, e.V, e.From, e.To = Arc, r.c.o, r.c.u, r.c.v, r.t0, r.t1
	case ruled:
		e.Kind = Traced
	}
	return e
}

// joinRuns joins what runs on along one straight line or one conic.
func joinRuns(runs []run) []run {
	for again := true; again; {
		again = false
		for i := range runs {
			for j := i + 1; j < len(runs); j++ {
				if runs[i].c != nil && runs[j].c != nil && runs[i].join(&runs[j]) {
					runs[j].c = nil
					again = true
				}
			}
		}
	}
	keep := runs[:0]
	for _, r := range runs {
		if r.c != nil {
			keep = append(keep, r)
		}
	}
	return keep
}

// join takes another stretch over where it runs on from this one.
func (r *run) join(o *run) bool {
	if !r.alike(o) || r.c.kind != o.c.kind {
		return false
	}
	switch r.c.kind {
	case straight:
		a, b := o.ends()
		t0, t1 := a.Sub(r.c.o).Dot(r.c.u), b.Sub(r.c.o).Dot(r.c.u)
		if t0 > t1 {
			t0, t1 = t1, t0
		}
		if t0 > r.t1+2*Grain || t1 < r.t0-2*Grain {
			return false
		}
		if a.Sub(r.c.at(a.Sub(r.c.o).Dot(r.c.u))).Len() > Grain || b.Sub(r.c.at(b.Sub(r.c.o).Dot(r.c.u))).Len() > Grain {
			return false
		}
		r.t0, r.t1 = min(r.t0, t0), max(r.t1, t1)
		return true
	case conic:
		return r.c.coincides(o.c) && r.joinTurn(o, 2*Grain/max(r.c.u.Len(), r.c.v.Len()))
	}
	if r.c != o.c {
		return false
	}
	if math.Abs(r.t1-o.t0) < 1e-9 {
		r.t1 = o.t1
		return true
	}
	if math.Abs(o.t1-r.t0) < 1e-9 {
		r.t0 = o.t0
		return true
	}
	return false
}

// coincides says whether two conics are one with one beginning.
func (c *curve) coincides(o *curve) bool {
	return c == o || c.o.Sub(o.o).Len() < Grain && c.u.Sub(o.u).Len() < Grain && c.v.Sub(o.v).Len() < Grain
}

// joinTurn takes over an arc of the same conic, a whole turn on or back if need be.
func (r *run) joinTurn(o *run, slack float64) bool {
	for _, turn := range [3]float64{0, 2 * math.Pi, -2 * math.Pi} {
		t0, t1 := o.t0+turn, o.t1+turn
		if t0 > r.t1+slack || t1 < r.t0-slack {
			continue
		}
		r.t0, r.t1 = min(r.t0, t0), max(r.t1, t1)
		if r.t1-r.t0 > 2*math.Pi-slack {
			r.t0, r.t1 = 0, 2*math.Pi
		}
		return true
	}
	return false
}

// joinTraced joins traced edges end to end.
func joinTraced(es []Edge) []Edge {
	for again := true; again; {
		again = false
		for i := range es {
			for j := i + 1; j < len(es); j++ {
				if es[i].Points != nil && es[j].Points != nil && es[i].join(&es[j]) {
					es[j].Points = nil
					again = true
				}
			}
		}
	}
	keep := es[:0]
	for _, e := range es {
		if e.Points != nil {
			keep = append(keep, e)
		}
	}
	return keep
}

// join takes another traced edge over that begins or ends where this one does and runs on
// without a corner.
func (e *Edge) join(o *Edge) bool {
	if e.Kind != Traced || o.Kind != Traced || e.By != o.By || e.Contour != o.Contour || e.Visible != o.Visible || e.Closed() || o.Closed() {
		return false
	}
	for range 2 {
		for range 2 {
			if runsOn(e.Points, o.Points) {
				e.Points = append(append([]Vec(nil), e.Points...), o.Points[1:]...)
				return true
			}
			o.Points = backwards(o.Points)
		}
		e.Points = backwards(e.Points)
	}
	return false
}

// runsOn says whether a second curve goes on from the end of a first, turning by less than
// thirty degrees between the chords.
func runsOn(a, b []Vec) bool {
	n := len(a)
	if a[n-1].Sub(b[0]).Len() > 2*Grain {
		return false
	}
	return a[n-1].Sub(a[n-2]).Unit().Dot(b[1].Sub(b[0]).Unit()) > 0.866
}

func backwards(ps []Vec) []Vec {
	out := make([]Vec, len(ps))
	for i, p := range ps {
		out[len(ps)-1-i] = p
	}
	return out
}
