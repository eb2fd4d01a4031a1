package eval

import (
	"math"

	"fettle/schema/model"
)

// SawnAslant is by how much a sawn face of the raw piece runs out of square from one side of its section
// to the other, mm: as is said of the stock's ends, and as is said of the saw that runs truest, where
// every saw here says it. A cut runs out of square across the wider side at the worst.
func (p *Part) SawnAslant(f model.Face) (stock, saw float64) {
	b := p.Blank
	i, j := (f.Axis()+1)%3, (f.Axis()+2)%3
	wide := math.Max(b.Hi[i]-b.Lo[i], b.Hi[j]-b.Lo[j])
	if b.Stock != nil {
		stock = math.Abs(b.Stock.Skew.Or(0)) * wide / 100
	}
	saw = math.Inf(1)
	for _, s := range p.Build.Shop.Saws {
		if s.Here() && s.Kind != "piercing_saw" {
			saw = math.Min(saw, math.Abs(s.Skew.Or(0))*wide/100)
		}
	}
	if math.IsInf(saw, 1) {
		saw = 0
	}
	return stock, saw
}

// SawOpening is the largest section that goes through a saw that is here, mm, the smaller side first;
// false where a hand saw is here, which has no such thing, or no saw at all. Without the figures of
// one of them it lacks.
func SawOpening(b *model.Build) (open model.Known[[2]float64], by *model.Saw, limited bool) {
	var lacks []model.Lack
	for _, s := range b.Shop.Saws {
		if !s.Here() || s.Kind == "piercing_saw" {
			continue
		}
		if s.Kind == "hacksaw" {
			return open, nil, false
		}
		o, ok := s.Opening.Get()
		if !ok || len(o) != 2 {
			lacks = append(lacks, s.Opening.Missing()...)
			by = s
			continue
		}
		if by == nil || o[0]*o[1] > open.V[0]*open.V[1] {
			open, by = model.Sure([2]float64{math.Min(o[0], o[1]), math.Max(o[0], o[1])}), s
		}
	}
	if len(lacks) > 0 {
		open = model.Lacking[[2]float64](lacks)
	}
	return open, by, by != nil
}

// SawnSection is the section of a stock as it goes through a saw, mm, the smaller side first: of round and
// hexagon what it is over all. False of sheet and castings.
func SawnSection(s *model.Stock) ([2]float64, bool) {
	both := func(d float64) ([2]float64, bool) { return [2]float64{d, d}, true }
	switch {
	case s.Round.Is():
		return both(s.Round.V.Nominal)
	case s.Square.Is():
		return both(s.Square.V.Nominal)
	case s.Tube.Outside.Is():
		return both(s.Tube.Outside.V.Nominal)
	case s.Hexagon.Is():
		return [2]float64{s.Hexagon.V.Nominal, s.Hexagon.V.Nominal * 2 / math.Sqrt(3)}, true
	case s.Flat.Width.Is() && s.Flat.Thickness.Is():
		a, b := s.Flat.Thickness.V.Nominal, s.Flat.Width.V.Nominal
		return [2]float64{math.Min(a, b), math.Max(a, b)}, true
	}
	return [2]float64{}, false
}
