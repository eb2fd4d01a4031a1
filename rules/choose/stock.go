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
	var best *model.Stock
	var least float64
	for _, s := range c.build.Shop.Stock {
		m, ok := s.Material.Get()
		if !s.Here() || !ok || !handbook.Serves(want, m) {
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
