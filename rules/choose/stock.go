package choose

import (
	"fettle/eval"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// stock takes the first bar, by name, of the part's metal whose section and one of whose
// lengths hold the finished part, the one with the least metal to spare; nil where nothing
// can be said.
func (c *chooser) stock(p *eval.Part) *model.Stock {
	want, ok := p.Material.Get()
	if !ok {
		return nil
	}
	if p.Round {
		return c.roundStock(p, want)
	}
	var best *model.Stock
	var least float64
	for _, s := range c.build.Shop.Stock {
		m, ok := s.Material.Get()
		if !s.AtHand() || !ok || !handbook.Serves(want, m) {
			continue
		}
		if s.Sheet.Said {
			if a, goes := p.OutOfSheet(s); goes && (best == nil || a < least-model.Same) {
				best, least = s, a
			}
			continue
		}
		w, t, sized := eval.Section(s)
		if !sized || s.Round.Is() || s.Hexagon.Is() {
			continue
		}
		if _, goes := p.Lie(s, false); !goes {
			continue
		}
		if area := w.Nominal * t.Nominal; best == nil || area < least-model.Same {
			best, least = s, area
		}
	}
	return best
}

// roundStock takes, for a turned part, the thinnest bar of its metal that holds it across, of
// the part's own section first; and of whose lengths one is long enough.
func (c *chooser) roundStock(p *eval.Part, want model.Material) *model.Stock {
	var best *model.Stock
	var least float64
	for _, s := range c.build.Shop.Stock {
		m, ok := s.Material.Get()
		if !s.AtHand() || !ok || !handbook.Serves(want, m) {
			continue
		}
		d, ok := p.BarAcross(s)
		if ok && (best == nil || d < least-model.Same) {
			best, least = s, d
		}
	}
	return best
}
