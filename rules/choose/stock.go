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
		if !sized || s.Round.Is() || s.Hexagon.Is() || !holds(p, w.Nominal, t.Nominal, s.Lengths) {
			continue
		}
		if area := w.Nominal * t.Nominal; best == nil || area < least-model.Same {
			best, least = s, area
		}
	}
	return best
}

// holds says whether a bar of the section and with the lengths is large enough, the part's
// length along the bar, its width across, its height through.
func holds(p *eval.Part, width, thickness float64, lengths model.Known[[]float64]) bool {
	if p.Size[1] > width+model.Grain || p.Size[2] > thickness+model.Grain {
		return false
	}
	if !lengths.Is() {
		return true
	}
	for _, l := range lengths.V {
		if l >= p.Size[0]-model.Grain {
			return true
		}
	}
	return false
}
