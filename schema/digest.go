package schema

import (
	"hash"
	"strconv"

	"fettle/schema/model"
)

// digestItem puts all that a block says into a hash, with its values and not its layout.
func digestItem(h hash.Hash64, i *model.Item) {
	digestSaid(h, i)
	put(h, i.Label)
}

// digestSaid takes in all that an item says, but not what it is called.
func digestSaid(h hash.Hash64, i *model.Item) {
	put(h, i.Kind)
	for n := range i.Attrs {
		put(h, i.Attrs[n].Name)
		digestValue(h, &i.Attrs[n].Value)
	}
	for _, in := range i.Items {
		digestItem(h, in)
	}
	put(h, "end")
}

func put(h hash.Hash64, words ...string) {
	for _, w := range words {
		h.Write([]byte(w))
		h.Write([]byte{0})
	}
}

func digestValue(h hash.Hash64, v *model.Value) {
	num := func(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
	put(h, strconv.Itoa(int(v.Kind)), num(v.Num), v.Text, strconv.FormatBool(v.Yes), v.Size.String(), num(v.Size.Tol.Lo), num(v.Size.Tol.Hi),
		v.Ref.Path(), v.Thread.String(), v.Taper.String(), v.Feed.Written, v.Material.Name, v.Material.Written)
	for i := range v.List {
		digestValue(h, &v.List[i])
	}
	for i := range v.Object {
		put(h, v.Object[i].Name)
		digestValue(h, &v.Object[i].Value)
	}
	for _, m := range v.Sizes.List {
		put(h, num(m.Size), m.Name)
	}
	for _, s := range v.Sizes.Series {
		put(h, num(s.From), num(s.To), num(s.By))
	}
	for _, s := range v.Position.Short {
		put(h, s.String())
	}
	for _, c := range v.Position.Coords {
		put(h, c.Datum.Path(), c.Size.String())
	}
	put(h, ".")
}
