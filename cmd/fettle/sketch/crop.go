package sketch

import "math"

// Narrowed cuts the empty paper on the left and right of a drawing down to a margin of 2 mm. What is
// written below all lines begins where these do.
func (d *Drawing) Narrowed() *Drawing {
	const margin = 2.0
	first, last, foot := d.Width, 0.0, d.Height
	see := func(x0, x1 float64) { first, last = min(first, x0), max(last, x1) }
	for i := range d.Strokes {
		for _, p := range d.Strokes[i].Points {
			see(p.X-wide/2, p.X+wide/2)
			foot = min(foot, p.Y)
		}
	}
	for _, h := range d.Heads {
		see(h.box().lo.X, h.box().hi.X)
	}
	below := math.Inf(1) // where the texts below all lines begin
	for _, t := range d.Texts {
		if b := t.box(); b.hi.Y < foot {
			below = min(below, b.lo.X)
		} else {
			see(b.lo.X, b.hi.X)
		}
	}
	moved := func(t Text) Text {
		if t.box().hi.Y < foot {
			t.At.X += first - below
		}
		return t
	}
	for _, t := range d.Texts {
		last = max(last, moved(t).box().hi.X)
	}
	if last <= first {
		return d
	}
	by := Point{-max(0, first-margin), 0}
	out := &Drawing{Width: last + margin + by.X, Height: d.Height, Title: d.Title}
	for _, s := range d.Strokes {
		ps := make([]Point, len(s.Points))
		for i, p := range s.Points {
			ps[i] = p.add(by)
		}
		s.Points, s.Middle = ps, s.Middle.add(by)
		out.Strokes = append(out.Strokes, s)
	}
	for _, t := range d.Texts {
		t = moved(t)
		t.At = t.At.add(by)
		out.Texts = append(out.Texts, t)
	}
	for _, h := range d.Heads {
		h.At = h.At.add(by)
		out.Heads = append(out.Heads, h)
	}
	return out
}
