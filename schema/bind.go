package schema

import (
	"cmp"
	"fmt"
	"hash/fnv"
	"slices"
	"strings"

	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

// The way from items to structs. An item is a block as it was written, with every value
// read; a struct of package model is what the dry run asks. A field of a struct is the
// attribute of the same name (JawWidth is jaw_width), so that no list of names is kept
// twice; bind_plan.go works the pairs out once for each struct and kind. What the table
// says of leaving an attribute out is filled in where it is a plain value.

// written is what was read: the items of both folders, and what only the reader of
// expressions can make.
type written struct {
	Sources     *text.Sources
	Folder      string        // of the recipe
	Recipe      *model.Item   // its header
	Shop        *model.Item   // the shop's header; nil where no shop is read
	RecipeItems []*model.Item // the other blocks at the top of the recipe's files
	ShopItems   []*model.Item // the other blocks at the top of the shop's files
	When        map[*model.Item]model.Expr
}

// bindBuild makes a build of what was written. The order of files does not matter: what
// has a label is sorted by it. Its findings are of values that only the whole can judge.
func bindBuild(w written) (*model.Build, []finding.Finding) {
	b := &model.Build{Sources: w.Sources}
	findings := bindRecipe(b, w)
	bindShop(&b.Shop, w)
	for _, i := range sorted(w.RecipeItems, "part") {
		b.Parts = append(b.Parts, bindPart(i))
	}
	b.Joints = sorted(w.RecipeItems, "fit", "mesh", "stack", "screw", "assembly")
	all := append(slices.Clone(w.ShopItems), w.RecipeItems...)
	bindJoints(b)
	for _, i := range sorted(w.RecipeItems, "made") {
		b.Made = append(b.Made, bound[model.Made](i))
	}
	for _, i := range sorted(all, "concession") {
		b.Excused = append(b.Excused, bound[model.Concession](i))
	}
	for _, i := range sorted(all, "house_rule") {
		h := bound[model.HouseRule](i)
		h.When = w.When[i]
		b.House = append(b.House, h)
	}
	b.Thumbs = bindThumbs(w)
	findings = append(findings, thumbsGivenTwice(w)...)
	return b, append(findings, speedsTheWrongWay(b.Shop.Machines)...)
}

// sorted picks the items of some kinds: by kind in the order named, then by label, then by
// where they stand.
func sorted(items []*model.Item, kinds ...string) []*model.Item {
	var out []*model.Item
	for _, i := range items {
		if slices.Contains(kinds, i.Kind) {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(a, b *model.Item) int {
		return cmp.Or(
			cmp.Compare(slices.Index(kinds, a.Kind), slices.Index(kinds, b.Kind)),
			cmp.Compare(a.Label, b.Label),
			comparePlaces(a.At, b.At),
		)
	})
	return out
}

func comparePlaces(a, b text.Place) int {
	return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.From, b.From), cmp.Compare(a.To, b.To))
}

func bindRecipe(b *model.Build, w written) []finding.Finding {
	b.Recipe = model.Recipe{Item: w.Recipe, Folder: w.Folder}
	if w.Recipe == nil {
		return nil
	}
	b.Recipe.Unit = w.Recipe.Unit
	b.Recipe.Title = words(w.Recipe, "title")
	if a := w.Recipe.Attr("shop"); a != nil {
		b.Recipe.Shops, _ = asTexts(&a.Value)
	}
	a := w.Recipe.Attr("general")
	if a == nil {
		return nil
	}
	general, wrong := generalTolerance(&a.Value, w.Recipe.Unit)
	b.Recipe.General = general
	if wrong == "" {
		return nil
	}
	return []finding.Finding{slip(slipWrongValue, w.Recipe, a, a.Value.At, wrong)}
}

// words gives a text of an item; "" where none is written.
func words(i *model.Item, name string) string {
	if a := i.Attr(name); a != nil && a.Value.Kind == model.Text {
		return a.Value.Text
	}
	return ""
}

// bindShop sorts the things of the shop and of the recipe into their structs. A thing in
// the recipe is one that this build makes or brings.
func bindShop(s *model.Shop, w written) {
	if w.Shop != nil {
		s.Item = w.Shop
		s.Label = w.Shop.Label
		s.Title = words(w.Shop, "title")
		s.AsOf = words(w.Shop, "as_of")
		s.Unit = w.Shop.Unit
	}
	for _, i := range append(slices.Clone(w.ShopItems), w.RecipeItems...) {
		if k := theTable().byName[i.Kind]; k != nil && k.Where == "shop" && k.Name != "rules_of_thumb" {
			s.All = append(s.All, i)
		}
	}
	slices.SortStableFunc(s.All, func(a, b *model.Item) int {
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Label, b.Label), comparePlaces(a.At, b.At))
	})
	for _, i := range s.All {
		bindThing(s, i)
	}
}

func bindThing(s *model.Shop, i *model.Item) {
	switch {
	case slices.Contains(machineKinds, i.Kind):
		s.Machines = append(s.Machines, bindMachine(i))
	case slices.Contains(holderKinds, i.Kind):
		s.Holders = append(s.Holders, bound[model.Holder](i))
	case slices.Contains(cutterKinds, i.Kind):
		s.Cutters = append(s.Cutters, bound[model.Cutter](i))
	case slices.Contains(instrumentKinds, i.Kind):
		s.Instruments = append(s.Instruments, bindInstrument(i))
	}
	switch i.Kind {
	case "vise":
		s.Vises = append(s.Vises, bound[model.Vise](i))
	case "parallels":
		s.Parallels = append(s.Parallels, bound[model.Parallels](i))
	case "packing":
		s.Packing = append(s.Packing, bound[model.Packing](i))
	case "round_bar":
		s.RoundBars = append(s.RoundBars, bound[model.RoundBar](i))
	case "soft_jaws":
		s.SoftJaws = append(s.SoftJaws, bound[model.SoftJaws](i))
	case "clamps":
		s.Clamps = append(s.Clamps, bound[model.Clamps](i))
	case "collets":
		s.Collets = append(s.Collets, bindCollets(i))
	case "sleeve":
		s.Sleeves = append(s.Sleeves, bound[model.Sleeve](i))
	case "stock":
		s.Stock = append(s.Stock, bound[model.Stock](i))
	}
	bindRound(s, i)
}

// bindMachine fills a machine. A bare length of tee_slots is the width of the slot; one of
// a mill's backlash holds for x and y.
func bindMachine(i *model.Item) *model.Machine {
	m := bound[model.Machine](i)
	if m.TeeSlots.Bare.Is() {
		m.TeeSlots.Width = m.TeeSlots.Bare
	}
	if i.Kind == "mill" && m.Backlash.Bare.Is() {
		m.Backlash.X, m.Backlash.Y = m.Backlash.Bare, m.Backlash.Bare
	}
	return m
}

// bindPart fills a part with its features in the order written and its work in the order
// written.
func bindPart(i *model.Item) *model.Part {
	p := bound[model.Part](i)
	if p.Bought.As.Said() {
		as := p.Bought.As
		p.Bought.Yes = model.Known[bool]{V: true, From: as.From, At: as.At, Of: as.Of, Attr: as.Attr}
	}
	for _, in := range i.Items {
		k := theTable().byName[in.Kind]
		switch {
		case k == nil:
		case k.Name == "blank":
			if p.Blank == nil { // a second one is a finding of its own
				p.Blank = bound[model.Blank](in)
			}
		case k.Name == "face":
			p.Faces = append(p.Faces, bound[model.FaceRule](in))
		case k.Where == "feature":
			p.Features = append(p.Features, bound[model.Feature](in))
		case k.Where == "setup":
			p.Work = append(p.Work, bindSetUp(in))
		}
	}
	return p
}

// bindSetUp fills a set-up with its steps. Each thing that the set-up itself makes is an
// operation of its own, before the steps that are written out.
func bindSetUp(i *model.Item) *model.SetUp {
	s := bound[model.SetUp](i)
	if i.Kind == "square_up" {
		noughtOnEachFace(&s.Leaves)
	}
	for _, o := range madeBySetUp(i) {
		s.Steps = append(s.Steps, bound[model.Step](o))
	}
	for _, in := range i.Items {
		if k := theTable().byName[in.Kind]; k != nil && k.Where == "step" {
			s.Steps = append(s.Steps, bound[model.Step](in))
		}
	}
	return s
}

// noughtOnEachFace fills what a square_up leaves where it does not say: 0, as the table has it.
func noughtOnEachFace(l *model.SixLengths) {
	for _, k := range []*model.Known[float64]{&l.Left, &l.Right, &l.Front, &l.Back, &l.Bottom, &l.Top} {
		if !k.Is() {
			k.V, k.From = 0, model.Standing
		}
	}
}

// madeBySetUp makes an operation of each member of a set-up's makes.
func madeBySetUp(i *model.Item) []*model.Item {
	a := i.Attr("makes")
	if a == nil || a.Value.Kind == model.NoValue {
		return nil
	}
	members := a.Value.List
	if a.Value.Kind != model.List {
		members = []model.Value{a.Value}
	}
	var out []*model.Item
	turns := map[string]int{}
	for n, v := range members {
		o := &model.Item{
			Kind: "operation", Word: "operation", At: v.At, Body: v.At, In: i, Unit: i.Unit, Turn: n + 1,
			Attrs: []model.Attr{{Name: "makes", Word: "makes", At: a.At, Value: v}},
		}
		ref, _ := asRef(&v)
		made := madeName(i, ref)
		o.Name = turnName(made, turns[made])
		turns[made]++
		h := fnv.New64a()
		digestItem(h, o)
		o.Digest = h.Sum64()
		out = append(out, o)
	}
	return out
}

// madeName is what a step makes, as it is called within its part: "hole.pillar".
func madeName(in *model.Item, r model.Ref) string {
	s := r.Path()
	if p := in.Up("part", "assembly"); p != nil {
		s = strings.TrimPrefix(s, p.Path()+".")
	}
	return s
}

// turnName tells steps that make the same thing apart: "hole.pillar", "hole.pillar, second".
func turnName(made string, before int) string {
	ordinals := [...]string{"", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"}
	switch {
	case before == 0:
		return made
	case before < len(ordinals):
		return made + ", " + ordinals[before]
	}
	return fmt.Sprintf("%s, number %d", made, before+1)
}
