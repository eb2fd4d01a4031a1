package eval

import (
	"math"
	"slices"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Shortfall says how much a piece of stock lacks, in mm, for the finished part to come out of it
// however it is laid: the most that is lacking along any side, 0 where it comes out. Nothing is
// counted for cleaning up. Sides of the stock that nobody gave are taken to be long enough, and
// are listed where the answer hangs on them. A tube serves a turned part with a hole on its axis at
// least as wide as the tube's.
func (p *Part) Shortfall(s *model.Stock) (short float64, lacks []model.Lack) {
	if p.Apart != nil {
		p = p.Apart
	}
	want := p.Size
	if p.Round {
		want[1], want[2] = 2*p.Radius(), 2*p.Radius()
	}
	long, lacks := longest(s)
	switch w, t, sized := Section(s); {
	case s.Tube.Said:
		return p.tubeShort(s, long), lacks
	case s.Sheet.Said:
		wide, thick := s.Sheet.Width.Or(math.Inf(1)), s.Sheet.Thickness.V.Nominal
		return boxShort(want, [3]float64{long, wide, thick}), append(lacks, s.Sheet.Width.Missing()...)
	case s.Casting.Said:
		if size := s.Casting.Size.V; len(size) == 3 {
			return boxShort(want, [3]float64{size[0], size[1], size[2]}), nil
		}
		return 0, s.Casting.Size.Missing()
	case !sized:
		return 0, lacks
	case p.Round && !s.Flat.Said:
		return p.barShort(s, w.Nominal, long), lacks
	case s.Round.Is() || s.Hexagon.Is():
		across := math.Hypot
		if s.Hexagon.Is() {
			across = acrossFlats
		}
		least := math.Inf(1)
		for _, way := range ways {
			least = min(least, max(want[way[0]]-long, across(want[way[1]], want[way[2]])-w.Nominal))
		}
		return tooSmall(least), lacks
	default:
		return boxShort(want, [3]float64{long, w.Nominal, t.Nominal}), lacks
	}
}

// longest is the longest piece of a stock that is here; as long as anyone likes where nobody says.
func longest(s *model.Stock) (float64, []model.Lack) {
	if !s.Lengths.Is() {
		return math.Inf(1), s.Lengths.Missing()
	}
	return slices.Max(append([]float64{0}, s.Lengths.V...)), nil
}

func tooSmall(short float64) float64 {
	if short <= model.Grain {
		return 0
	}
	return short
}

// boxShort is what one box lacks to hold another with sides alongside: the sides of both are
// compared in order of size, which is the best way to lay them.
func boxShort(want, has [3]float64) float64 {
	slices.Sort(want[:])
	slices.Sort(has[:])
	short := 0.0
	for i := range want {
		short = max(short, want[i]-has[i])
	}
	return tooSmall(short)
}

// barShort is what a round, square or hexagon bar lacks for a turned part with its axis along it.
func (p *Part) barShort(s *model.Stock, size, long float64) float64 {
	across := 2 * p.Radius()
	switch {
	case s.Hexagon.Is():
		across = p.acrossIn(6)
	case s.Square.Is():
		across = p.acrossIn(4)
	}
	return tooSmall(max(p.Size[0]-long, across-size))
}

// tubeShort is what a tube lacks for a turned part: it must be as wide and as long as the part, and
// where the tube is hollow the part must be so too, as it is drawn.
func (p *Part) tubeShort(s *model.Stock, long float64) float64 {
	outside, inside := s.Tube.Outside.V.Nominal, s.Tube.Outside.V.Nominal-2*s.Tube.Wall.V.Nominal
	if !p.Round {
		return math.Inf(1)
	}
	return tooSmall(max(p.Size[0]-long, 2*p.Radius()-outside, inside-2*p.hollow()))
}

// hollow is the radius down to which a turned part is hollow all along, as it is drawn; 0 where it is
// solid somewhere.
func (p *Part) hollow() float64 {
	var drawn Profile
	drawn = append(drawn, Zone{X0: p.Low[0], X1: p.High()[0], Out0: p.Radius(), Out1: p.Radius()})
	for _, f := range p.Forms {
		switch l := f.Lathe; {
		case f.Wrong != "" || len(f.Lacks) > 0:
		case l != nil && l.Inside && l.End == model.NoFace && p.Own(f.About):
			drawn = drawn.bored(l.X0, l.X1, l.R0, l.R1)
		case l == nil && f.Into.Face.Axis() == 0:
			if h, ok := p.holeLine(f); ok && near(h.at[1], 0) && near(h.at[2], 0) {
				x0, x1 := h.at[0], h.at.Add(h.dir.Times(h.long))[0]
				drawn = drawn.bored(min(x0, x1), max(x0, x1), h.d/2, h.d/2)
			}
		}
	}
	least := p.Radius()
	for _, z := range drawn {
		least = min(least, z.In0, z.In1)
	}
	return least
}

// StockSize says what a piece of stock measures across, as people write it.
func StockSize(s *model.Stock) string {
	size := func(x drawing.Size) string { return model.Figure(x.Nominal) }
	switch {
	case s.Round.Is():
		return "⌀" + size(s.Round.V) + " mm"
	case s.Flat.Said:
		return size(s.Flat.Width.V) + " by " + size(s.Flat.Thickness.V) + " mm"
	case s.Square.Is():
		return size(s.Square.V) + " mm square"
	case s.Hexagon.Is():
		return size(s.Hexagon.V) + " mm across its flats"
	case s.Sheet.Said:
		return "sheet " + size(s.Sheet.Thickness.V) + " mm thick"
	case s.Tube.Said:
		return "tube ⌀" + size(s.Tube.Outside.V) + " mm with a wall of " + size(s.Tube.Wall.V) + " mm"
	case s.Casting.Said:
		return "a casting"
	}
	return ""
}
