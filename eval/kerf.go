package eval

import (
	"math"

	"fettle/schema/handbook"
	"fettle/schema/model"
)

// kerfOf is what the saw takes: as written; else the width of the saw that is written for it;
// else of the smallest saw here that goes through.
func (p *Part) kerfOf(f *Form) model.Known[float64] {
	if k, ok := f.Feature.Kerf.Get(); ok {
		return model.Known[float64]{V: k.Nominal, From: f.Feature.Kerf.From}
	}
	pinned := false
	for _, s := range p.Part.Work {
		for _, st := range s.Steps {
			if !makesItem(st.Makes.V, f.Feature.Item) {
				continue
			}
			tools := st.Tool.V
			if len(tools) == 0 {
				tools = s.Tool.V
			}
			for _, r := range tools {
				pinned = true
				if k := p.sawKerf(r); k.Is() || len(k.Lacks) > 0 {
					return k
				}
			}
		}
	}
	least := math.Inf(1)
	for i := range 3 {
		if i != f.Across {
			least = math.Min(least, p.Size[i])
		}
	}
	if !pinned {
		if c := p.smallestSaw(least); c != nil {
			return model.Known[float64]{V: c.Width.V, From: model.Chosen}
		}
	}
	return model.Lacking[float64](f.Feature.Kerf.Missing())
}

func makesItem(refs []model.Ref, i *model.Item) bool {
	for _, r := range refs {
		if r.Item == i && r.Sub == "" {
			return true
		}
	}
	return false
}

// sawKerf is the width of a cutter or saw of the shop.
func (p *Part) sawKerf(r model.Ref) model.Known[float64] {
	if c, ok := model.Find(p.Build.Shop.Cutters, r.Item); ok {
		if !c.Width.Is() {
			return model.Lacking[float64](c.Width.Missing())
		}
		return model.Known[float64]{V: c.Width.V, From: model.Chosen}
	}
	if s, ok := model.Find(p.Build.Shop.Saws, r.Item); ok {
		if s.Kerf.Is() {
			return model.Known[float64]{V: s.Kerf.V, From: model.Chosen}
		}
		if k, _, _, ok := handbook.Kerf(s.Item.Kind); ok {
			return model.Known[float64]{V: k, From: model.Handbook}
		}
	}
	return model.Known[float64]{}
}

// smallestSaw is the smallest slitting saw here of known width that goes through a depth beside the
// narrowest collar of an arbor here that takes it; where none does, the largest.
func (p *Part) smallestSaw(depth float64) *model.Cutter {
	var best, largest *model.Cutter
	size := func(c *model.Cutter) float64 { d, _ := c.Diameter.V.Nearest(0); return d }
	for _, c := range p.Build.Shop.Cutters {
		if c.Kind != "slitting_saw" || !c.Here() || !c.Width.Is() || !c.Diameter.Is() {
			continue
		}
		if largest == nil || size(c) > size(largest) {
			largest = c
		}
		collar := math.Inf(1)
		for _, h := range p.Build.Shop.Holders {
			if h.Kind == "arbor" && h.Here() && h.Seat.Is() && c.Bore.Is() && near(h.Seat.V, c.Bore.V) {
				collar = math.Min(collar, math.Max(h.Collar.Or(0), h.Clamp.Diameter.Or(0)))
			}
		}
		if (size(c)-collar)/2 >= depth && (best == nil || size(c) < size(best)) {
			best = c
		}
	}
	if best == nil {
		return largest
	}
	return best
}
