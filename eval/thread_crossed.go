package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A thread that is crossed by a slit or a hole after it was cut keeps a burr in every turn that was
// cut through. Whether a cut crosses it is seen on lines along the thread, just within the roots of its
// grooves (a tapped hole is played as wide as its thread): metal that stood there before the cut and is gone after it, on some of the lines and not on all,
// or with thread left on both sides of the gap when the part is done. What takes the end of a thread
// away all round (a counterbore, facing, parting) does not cross it.

// helix is a stretch of thread.
type helix struct {
	at, dir solid.Vec // where it begins, and whereto
	long    float64   // mm
	radius  float64   // of the lines looked along, mm
	pitch   float64
}

// crossLines is how many lines are looked along, and crossShare is how much of a pitch must be left on
// either side of a gap to be thread.
const (
	crossLines = 24
	crossShare = 0.5
)

// rootOutside is how far outside of a hole's thread the lines lie, mm: little, so that a clearance hole
// over the thread takes them.
const rootOutside = 0.02

// Threaded says whether a form has a thread, of a hole or on what is turned.
func (f *Form) Threaded() bool { return f.Feature.Thread.Said || f.Feature.Kind == "thread" }

// helices are the threads of a form, given the diameter of the hole before tapping. None where pitch or
// depth is not known, and of threads about a line of their own.
func (p *Part) helices(f *Form, hole float64) (out []helix) {
	if l := f.Lathe; f.Feature.Kind == "thread" && l != nil && p.Own(f.About) && f.Feature.ThreadSize.Is() {
		pitch := f.Feature.ThreadSize.V.Pitch
		r := l.R0 - 0.5*pitch
		if l.Inside {
			r = l.R0 + rootOutside
		}
		if pitch > 0 && r > 0 {
			out = append(out, helix{solid.Vec{l.X0, 0, 0}, solid.Vec{1, 0, 0}, l.X1 - l.X0, r, pitch})
		}
		return out
	}
	th, ok := f.Feature.Thread.Size.Get()
	if !ok || len(f.Mouths) == 0 || len(f.Spins) > 1 || !(th.Pitch > 0) || !(th.Diameter > hole) || !(hole > 0) {
		return nil
	}
	long := f.Feature.Thread.Depth.Or(f.Depth.V)
	for i, m := range f.Mouths {
		out = append(out, helix{m, f.dir(i), long, th.Diameter/2 + rootOutside, th.Pitch})
	}
	return out
}

// Crosses says whether a cut goes across a thread that was there before it, as it is left on the
// finished part. A split does not count: it is sawn through work that is tapped already (drill and tap,
// then saw: common practice), and both mouths at the joint lie open afterwards.
func (p *Part) Crosses(k *Cut, f *Form, end *State) bool {
	i := p.numberOf(f)
	fs := k.Before.Features[i]
	if k.Unplayed != "" || !fs.Threaded || f.Wrong != "" || len(f.Lacks) > 0 || !p.comesNear(k, f, i) {
		return false
	}
	for _, h := range p.helices(f, fs.Diameter) {
		if h.crossed(k.Before.Piece, k.After.Piece, end.Piece) {
			return true
		}
	}
	return false
}

// comesNear says whether what a cut makes may reach a form: the boxes round both meet.
func (p *Part) comesNear(k *Cut, f *Form, number int) bool {
	box := p.boxOf(number)
	if l := f.Lathe; l != nil {
		r := max(l.R0, l.R1)
		box = bounds{solid.Vec{l.X0, -r, -r}, solid.Vec{l.X1, r, r}}
	}
	for _, w := range k.Works {
		g := w.Target.Form
		if g == nil || g.Feature == f.Feature || g.Feature.Kind == "split" || w.Wrong != "" || w.Target.Sub != "" {
			continue
		}
		j := p.numberOf(g)
		if j < 0 || len(g.Spins) > 0 || len(w.Took) == 0 || p.boxOf(j).apart(box) == 0 {
			return true
		}
	}
	return false
}

// crossed looks along the lines of a thread.
func (h helix) crossed(before, after, end *solid.Piece) bool {
	u := solid.Vec{1, 0, 0}
	if math.Abs(h.dir[0]) > 0.9 {
		u = solid.Vec{0, 1, 0}
	}
	u = h.dir.Cross(u).Unit()
	v := h.dir.Cross(u)
	gone := 0
	for n := range crossLines {
		sin, cos := math.Sincos(2 * math.Pi * (float64(n) + 0.37) / crossLines)
		from := h.at.Add(u.Times(h.radius * cos)).Add(v.Times(h.radius * sin))
		a, b, ok := h.gap(before.Ray(from, h.dir), after.Ray(from, h.dir))
		if !ok {
			continue
		}
		gone++
		left := end.Ray(from, h.dir)
		if h.metal(left, 0, a) >= crossShare*h.pitch && h.metal(left, b, h.long) >= crossShare*h.pitch {
			return true
		}
	}
	return gone > 0 && gone < crossLines
}

// gap is where metal went from a line, within the length of the thread; false where none did.
func (h helix) gap(before, after []solid.Span) (a, b float64, ok bool) {
	a, b = math.Inf(1), math.Inf(-1)
	for _, s := range before {
		lo, hi := max(s.A, 0), min(s.B, h.long)
		at := lo
		for _, t := range after {
			if t.B <= at || t.A >= hi {
				continue
			}
			if t.A > at+model.Grain {
				a, b = min(a, at), max(b, t.A)
			}
			at = max(at, t.B)
		}
		if at < hi-model.Grain {
			a, b = min(a, at), max(b, hi)
		}
	}
	return a, b, b > a
}

// metal is how much there is on a line between two places.
func (h helix) metal(spans []solid.Span, from, to float64) (sum float64) {
	for _, s := range spans {
		sum += max(0, min(s.B, to)-max(s.A, from))
	}
	return sum
}
