package eval

import (
	"math"

	"fettle/schema/model"
)

// ways are the orders in which the sides of a part can lie in a bar: along it, across its
// width, through its thickness. The first is the order in which a drawing gives them.
var ways = [6][3]int{{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}}

// Lie is how a part lies in a stock: as its blank says, else, of the ways in which section
// and longest length hold it, the one that uses the least of the bar; the order of the
// drawing where two use as much. A way that leaves a sawn end on a face that no step makes
// is not taken unless the drawing's order does. Counted with the metal written over its
// faces, or as finished. False where it does not go in.
func (p *Part) Lie(s *model.Stock, over bool) ([3]int, bool) {
	if b := p.Part.Blank; b != nil && b.Lies.Is() {
		lies := ways[0]
		for i, w := range b.Lies.V {
			if axis, ok := sides[w]; ok && i < 3 {
				lies[i] = axis
			}
		}
		return lies, p.goesIn(s, lies, over)
	}
	best, least := ways[0], math.Inf(1)
	for i, way := range ways {
		ends := p.Machined(model.FaceOn(way[0], -1)) && p.Machined(model.FaceOn(way[0], 1))
		if i > 0 && way[0] != 0 && !ends || !p.goesIn(s, way, over) {
			continue
		}
		if l := p.raw(way[0], over); l < least-model.Grain {
			best, least = way, l
		}
	}
	return best, !math.IsInf(least, 1)
}

// raw is the size of the part along an axis, with the metal that is written over its two
// faces if that is to count.
func (p *Part) raw(axis int, over bool) float64 {
	l := p.Size[axis]
	if b := p.Part.Blank; over && b != nil {
		l += b.Over.On(model.FaceOn(axis, -1)).Or(0) + b.Over.On(model.FaceOn(axis, 1)).Or(0)
	}
	return l
}

// goesIn says whether the part, laid so, is no larger than section and longest length. Of
// round and hexagon its corners must lie within.
func (p *Part) goesIn(s *model.Stock, way [3]int, over bool) bool {
	longest := 0.0
	for _, l := range s.Lengths.V {
		longest = max(longest, l)
	}
	if s.Lengths.Is() && p.raw(way[0], over) > longest+model.Grain {
		return false
	}
	w, t, sized := Section(s)
	a, b := p.raw(way[1], over), p.raw(way[2], over)
	switch {
	case !sized:
		return true
	case s.Round.Is():
		return math.Hypot(p.Size[way[1]], p.Size[way[2]]) <= w.Nominal+model.Grain
	case s.Hexagon.Is():
		return acrossFlats(p.Size[way[1]], p.Size[way[2]]) <= w.Nominal+model.Grain
	}
	return a <= w.Nominal+model.Grain && b <= t.Nominal+model.Grain
}

// acrossFlats is the least hexagon round a rectangle with one side square to two of its
// flats. Of a hexagon s across its flats, at a height of a/2 from its middle, (2 s - a)/sqrt(3)
// is left across.
func acrossFlats(a, b float64) float64 {
	one := func(a, b float64) float64 { return max(a, (a+b*math.Sqrt(3))/2) }
	return min(one(a, b), one(b, a))
}

// lie settles how the part lies in its stock, and says so where it was chosen.
func (p *Part) lie() {
	b := &p.Blank
	written := p.Part.Blank != nil && p.Part.Blank.Lies.Is()
	b.Lies = ways[0]
	switch {
	case b.Stock != nil:
		lies, ok := p.Lie(b.Stock, true)
		if !ok {
			lies, _ = p.Lie(b.Stock, false)
		}
		b.Lies = lies
	case written:
		b.Lies, _ = p.Lie(&model.Stock{}, false)
	}
	if b.Lies != ways[0] && !written {
		names := [3]string{"length", "width", "height"}
		b.Chosen = append(b.Chosen, "its "+names[b.Lies[0]]+" along the bar, its "+names[b.Lies[1]]+" across, its "+names[b.Lies[2]]+" through")
	}
}
