package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "no-such-packing",
	Title: "no packing of that height is in the drawer, or not enough pieces of it",
	Why: `Packing that is written with its height must be there, alone or as two pieces on each other; under a piece that lies on several,
each of them must be of the same height, and there once for each place.`,
	Rows:      []string{"B17"},
	Source:    []string{"look-up in the shop: its packing, single parallels and flat bar"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOnPacking("{ under = 7 }"),
	Sound:     exampleOnPacking("{ under = 10 }"),
	Shifted:   true,
	OnHold:    noSuchPacking,
})

// exampleOnPacking clamps a block on packing; the shop of the examples has 5, 10, 12 and 20 mm.
func exampleOnPacking(packing string) string {
	return replaced(exampleClamped(35), "    back   = \"back\"\n", "    back   = \"back\"\n    packing = "+packing+"\n")
}

// packed is how near packing must be to the height written, mm: it was measured with a rule or
// a caliper.
const packed = 0.05

func noSuchPacking(h *eval.Holding, a *Ask) {
	if h.Choice.Machine == nil || h.Shifted != nil && !h.NewPacking() {
		return
	}
	here := packingHere(&h.Part.Build.Shop, a)
	if len(here) == 0 {
		return // no drawer of packing is written down: any scrap may lie there
	}
	wanted := map[float64]int{}
	for _, p := range h.Work.SetUp.Packing {
		high, ok := p.Under.Get()
		if !ok || high <= 0 {
			continue
		}
		wanted[high]++
		has := pieces(here, high)
		switch {
		case has == 0 && !stacks(here, high):
			if a.lacking() {
				continue
			}
			a.Say("packing+"+figure(high), p.Under.At, "there is no packing %s high, nor two pieces that make it%s", mm(high), nearestPack(h.Part, here, high))
		case has > 0 && wanted[high] > has && !stacks(here, high):
			a.Say("packing+"+figure(high)+"+pieces", p.Under.At, "%d pieces of packing %s high are wanted under it, and the shop has %d", wanted[high], mm(high), has)
		default:
			a.Clear(finding.Margin{}, "")
		}
	}
}

// pack is pieces of packing of one block: their heights, and how many of each there are.
type pack struct {
	item  *model.Item
	sizes model.Sizes
	each  int
}

// packingHere is what can lie under work: packing, single parallels, flat bar. Nothing where the
// shop has no packing that is here.
func packingHere(shop *model.Shop, a *Ask) (out []pack) {
	for _, p := range shop.Packing {
		switch {
		case !p.Here():
		case !p.Heights.Is():
			a.Lack(p.Heights.Missing()...)
			out = append(out, pack{})
		default:
			out = append(out, pack{p.Item, p.Heights.V, p.Quantity.Or(1)})
		}
	}
	if len(out) == 0 {
		return nil
	}
	for _, p := range shop.Parallels {
		if p.Here() && p.Heights.Is() {
			out = append(out, pack{p.Item, p.Heights.V, 2 * p.Quantity.Or(1)})
		}
	}
	for _, s := range shop.Stock {
		if s.Here() && s.Flat.Thickness.Is() {
			out = append(out, pack{s.Item, model.Sizes{List: []model.Member{{Size: s.Flat.Thickness.V.Nominal}}}, 1})
		}
	}
	return out
}

// pieces counts those of a height.
func pieces(here []pack, high float64) (n int) {
	for _, p := range here {
		if near, ok := p.sizes.Nearest(high); ok && abs(near-high) <= packed+1e-9 {
			n += p.each
		}
	}
	return n
}

// nearestPack names the single piece that comes nearest to a height.
func nearestPack(p *eval.Part, here []pack, high float64) string {
	best, of := 0.0, (*model.Item)(nil)
	for _, k := range here {
		if near, ok := k.sizes.Nearest(high); ok && (of == nil || abs(near-high) < abs(best-high)) {
			best, of = near, k.item
		}
	}
	if of == nil {
		return ""
	}
	return "; the nearest is " + asMarked(p, of, best) + ", of " + of.Path()
}

// stacks says whether two pieces on each other are as high.
func stacks(here []pack, high float64) bool {
	for i, p := range here {
		for _, one := range p.sizes.Within(0, high, 200) {
			for j, q := range here {
				if near, ok := q.sizes.Nearest(high - one); ok && abs(near+one-high) <= packed+1e-9 && (i != j || p.each > 1 || abs(near-one) > packed) {
					return true
				}
			}
		}
	}
	return false
}
