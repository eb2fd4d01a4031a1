package solid

import "math"

// Turning ways, as on a rotary table: the tool stays upright and its tip goes round a middle.
//
// What is swept at a level is every place within r of an arc of radius R: the disc of R + r less
// the disc of R − r and less the sector that is not swept, but for the discs at the arc's ends.
// So the region is a disc, and the rest are openings of the covering test, which is as exact as
// that of a straight way.

// Turning is a turning way of the tool's tip: from a place, about an upright axis through
// Middle (x, y), by an angle in radians from x towards y, which may be negative.
type Turning struct {
	From   Vec
	Middle [2]float64
	Angle  float64
}

// bow is the plane form of a turning way.
type bow struct {
	mid      pt
	r        float64
	from, to float64 // angles, from < to
}

// MeetsTurning is Meets on a turning way.
func (p *Piece) MeetsTurning(t Turned, w Turning) (Meeting, bool) {
	from := pt{w.From[0], w.From[1]}
	mid := pt{w.Middle[0], w.Middle[1]}
	if !finite(w.From) || !finite(Vec{mid.x, mid.y, w.Angle}) || p.blank.kind == empty {
		return Meeting{}, false
	}
	d := from.sub(mid)
	if d.len() < hair || w.Angle == 0 {
		return p.Meets(t, Move{w.From, w.From})
	}
	a := math.Atan2(d.y, d.x)
	b := &bow{mid, d.len(), min(a, a+w.Angle), max(a, a+w.Angle)}
	for _, l := range p.Lumps() {
		if hit, ok := l.meetsBow(t, w, b); ok {
			return hit, true
		}
	}
	return Meeting{}, false
}

func (p *Piece) meetsBow(t Turned, w Turning, b *bow) (Meeting, bool) {
	var two [2]Turned
	s := scenes.Get().(*scene)
	defer scenes.Put(s)
	s.parts = s.parts[:0]
	for _, small := range t.sized(-Grain, two[:0]) {
		s.parts = sweep(small, Move{w.From, w.From}, s.parts)
	}
	for i := range s.parts {
		s.body = &s.parts[i]
		s.body.bow = b
		if at, ok := s.find(p); ok {
			return Meeting{At: at, By: p.name(s.nearest(at)), Name: t.Name}, true
		}
	}
	return Meeting{}, false
}

// unswept adds what of the disc round a turning way the tool of radius r leaves.
func (b *bow) unswept(r float64, out []opening) []opening {
	if in := disc(b.mid, b.r-r); in.ok {
		out = append(out, opening{take: in, by: -1})
	}
	end := func(t float64) flat {
		sin, cos := math.Sincos(t)
		return disc(b.mid.add(pt{cos, sin}.times(b.r)), r)
	}
	rest := b.from + 2*math.Pi - b.to
	n := int(math.Ceil(rest / (2 * math.Pi / 3)))
	ends := []flat{end(b.from), end(b.to)}
	for i := range max(n, 0) {
		t0 := b.to + rest*float64(i)/float64(n)
		t1 := b.to + rest*float64(i+1)/float64(n)
		far := 1.1 * (b.r + r) / math.Cos((t1-t0)/2)
		corner := func(t float64) pt {
			sin, cos := math.Sincos(t)
			return b.mid.add(pt{cos, sin}.times(far))
		}
		out = append(out, opening{take: polygon([]pt{b.mid, corner(t0), corner(t1)}), less: ends, by: -1})
	}
	return out
}
