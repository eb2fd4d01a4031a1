package choose

import (
	"slices"
	"sort"

	"fettle/schema/model"
)

// shelf is what is tried of a shop where a recipe names nothing: of things that say the same, the first
// that is here. What holds of that holds of the others, so that a shop with a thousand equal chucks is
// looked through as fast as one with a single one.
type shelf struct {
	machines []*model.Machine
	vises    []*model.Vise
	chucks   []*model.Chuck // those that close on the middle by themselves first
	holders  map[string][]*model.Holder
}

func shelfOf(s *model.Shop) *shelf {
	out := &shelf{machines: distinct(s.Machines), vises: distinct(s.Vises), chucks: distinct(s.Chucks), holders: map[string][]*model.Holder{}}
	sort.SliceStable(out.chucks, func(i, j int) bool { return !out.chucks[i].Independent.V && out.chucks[j].Independent.V })
	for _, h := range distinct(s.Holders) {
		out.holders[h.Kind] = append(out.holders[h.Kind], h)
	}
	return out
}

// thing is what stands in a shop.
type thing interface {
	AtHand() bool
	Block() *model.Item
}

// distinct leaves out what is not here and what says the same as a thing before it.
func distinct[T thing](all []T) []T {
	type key struct {
		kind string
		says uint64
	}
	seen := map[key]bool{}
	return slices.DeleteFunc(slices.Clone(all), func(t T) bool {
		i := t.Block()
		k := key{i.Kind, i.Alike}
		was := seen[k]
		if t.AtHand() {
			seen[k] = true
		}
		return was || !t.AtHand()
	})
}
