package reckon

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"

	"fettle/schema"
	"fettle/schema/model"
	"fettle/schema/text"
)

// shop is the shop that a question is put to.
type shop struct {
	folder string
	build  *model.Build
	slips  int // how many findings its files have
}

// benchside stands for the recipe that a question does not have. No folder on a disk has such
// a name.
const benchside = "\x00question"

// beside is a folder of files with an empty recipe put beside them: schema.Load reads a shop
// for a recipe.
type beside struct{ text.Folder }

func (b beside) List(folder string) (files, odd []string, err error) {
	if folder == benchside {
		return []string{benchside + "/question.hcl"}, nil, nil
	}
	return b.Folder.List(folder)
}

func (b beside) Read(name string, limit int64) ([]byte, error) {
	if strings.HasPrefix(name, benchside+"/") {
		return []byte("recipe \"question\" {\n  units = \"mm\"\n}\n"), nil
	}
	return b.Folder.Read(name, limit)
}

// openShop reads a shop. What is written wrongly in it is counted; `fettle check` is there to
// tell of it.
func openShop(files text.Folder, folder string) (*shop, error) {
	way := folder
	if way == schema.NoShop { // a folder of that very name
		way = "./" + folder
	}
	b, finds, err := schema.Load(beside{files}, benchside, way)
	if err != nil {
		return nil, err
	}
	s := &shop{folder: folder, build: b}
	for _, f := range finds {
		if strings.HasPrefix(f.Place.File, benchside) {
			continue
		}
		s.slips++
		if b.Unread {
			m := b.Sources.Mark(f.Place)
			return nil, fmt.Errorf("%s line %d: %s", m.File, m.Line, f.Says)
		}
	}
	if b.Unread {
		return nil, fmt.Errorf("the shop %s could not be read", folder)
	}
	return s, nil
}

// Shop gives the shop, and false where none was named.
func (a Ask) Shop() (model.Shop, bool) {
	if a.shop == nil {
		return model.Shop{}, false
	}
	return a.shop.build.Shop, true
}

// Thumb gives a limit of judgement by its name in rules_of_thumb: the shop's, else the one of
// the language.
func (a Ask) Thumb(name string) (float64, bool) {
	if a.shop != nil {
		return a.shop.build.Thumbs[name].Get()
	}
	return schema.StandingLimits()[name].Get()
}

// Things lists what the shop has of some kinds and can be used now, by kind, then label. Where
// --with names things of these kinds, only those.
func (a Ask) Things(kinds ...string) []*model.Item {
	if a.shop == nil {
		return nil
	}
	var all, picked []*model.Item
	for _, i := range a.shop.build.Shop.All {
		if !slices.Contains(kinds, i.Kind) || away(i) {
			continue
		}
		all = append(all, i)
		if slices.Contains(a.Texts("with"), i.Path()) {
			picked = append(picked, i)
		}
	}
	if len(picked) > 0 {
		return picked
	}
	return all
}

// away says whether a thing is not to be had now. Borrowed and worn are here.
func away(i *model.Item) bool {
	v, _ := Member(i, "state")
	return v.Text == "lent out" || v.Text == "to make" || v.Text == "on order"
}

// checkWith holds --with to things that the shop has.
func (a Ask) checkWith() error {
	asked := a.Texts("with")
	if len(asked) == 0 {
		return nil
	}
	if a.shop == nil {
		return errors.New("--with picks among the things of a shop: say --shop too")
	}
	var names []string
	for _, i := range a.shop.build.Shop.All {
		names = append(names, i.Path())
	}
	for _, w := range asked {
		if slices.Contains(names, w) {
			continue
		}
		if n := schema.Near(w, names); n != "" {
			return fmt.Errorf("the shop has no %s; %s is near", quoted(w), n)
		}
		return fmt.Errorf("the shop has no %s", quoted(w))
	}
	return nil
}

// Member gives what a thing says: "circles", or of an object "footstock.centre_height". False
// where it does not say it.
func Member(i *model.Item, name string) (model.Value, bool) {
	head, rest, deeper := strings.Cut(name, ".")
	at := i.Attr(name)
	if at == nil {
		at = i.Attr(head)
	} else {
		deeper = false
	}
	if at == nil {
		return model.Value{}, false
	}
	v := at.Value
	for deeper {
		head, rest, deeper = strings.Cut(rest, ".")
		n := slices.IndexFunc(v.Object, func(m model.Attr) bool { return m.Name == head || strings.HasSuffix(m.Name, "."+head) })
		if n < 0 {
			return model.Value{}, false
		}
		v = v.Object[n].Value
	}
	return v, v.Kind != model.NoValue
}

// Found is a figure with where it is from: "--drills", or "drill.jobbers of recipes/shops/bench".
type Found[T any] struct {
	V    T
	From string
	Item *model.Item // nil: of a flag
}

// found gives the flag's figure, else what every thing of the shop says.
func found[T any](a Ask, flag string, get func(string) (T, bool), attr string, of func(model.Value) (T, bool), kinds []string) []Found[T] {
	if v, ok := get(flag); ok {
		return []Found[T]{{V: v, From: a.of.want(flag).shown()}}
	}
	var out []Found[T]
	for _, i := range a.Things(kinds...) {
		v, ok := Member(i, attr)
		if !ok {
			continue
		}
		if x, ok := of(v); ok {
			out = append(out, Found[T]{x, i.Path() + " of " + a.shop.folder, i})
		}
	}
	return out
}

// SizesFrom gives drawers of sizes: the flag's, else those of every thing of some kinds.
func (a Ask) SizesFrom(flag, attr string, kinds ...string) []Found[model.Sizes] {
	return found(a, flag, a.Sizes, attr, func(v model.Value) (model.Sizes, bool) {
		if v.Kind == model.Number {
			return model.Sizes{Single: true, List: []model.Member{{Size: v.Num}}}, true
		}
		return v.Sizes, v.Kind == model.Set
	}, kinds)
}

// WholesFrom gives lists of whole numbers: the flag's, else those of every thing of some kinds
// ("circles" of each dividing_plate).
func (a Ask) WholesFrom(flag, attr string, kinds ...string) []Found[[]int] {
	return found(a, flag, a.Wholes, attr, func(v model.Value) ([]int, bool) {
		var out []int
		for _, x := range v.List {
			if x.Kind != model.Number || x.Num != math.Trunc(x.Num) || math.Abs(x.Num) > 1e6 {
				return nil, false
			}
			out = append(out, int(x.Num))
		}
		return out, len(out) > 0
	}, kinds)
}

// ExactFrom gives one figure, exact, pure or in mm: the flag's, else the shop's if one thing of
// the kinds says it; several are an error that names them. False where nobody says it.
func (a Ask) ExactFrom(flag, attr string, kinds ...string) (Found[*big.Rat], bool, error) {
	all := found(a, flag, a.Exact, attr, func(v model.Value) (*big.Rat, bool) {
		if v.Kind == model.Text {
			mm, err := pitch(strings.TrimSpace(v.Text), a.shop.build.Shop.Unit)
			return mm, err == nil
		}
		return decimal(v.Num), v.Kind == model.Number
	}, kinds)
	switch len(all) {
	case 0:
		return Found[*big.Rat]{}, false, nil
	case 1:
		return all[0], true, nil
	}
	var names []string
	for _, f := range all {
		names = append(names, f.Item.Path())
	}
	return Found[*big.Rat]{}, false, fmt.Errorf("the shop has %s: pick one with --with %s, or say --%s", and(names), names[0], flag)
}
