package schema

import (
	"fmt"
	"hash/fnv"
	"maps"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Decoding. Every slot of every block is read, what must be said and is not is found, and
// the nodes' items are handed over to be bound.

// build reads what is left to be read and binds the build. A build of unread files holds
// nothing but its sources.
func (r *reader) build() *model.Build {
	if r.unread {
		return &model.Build{Sources: r.sources, Unread: true}
	}
	w := written{Sources: r.sources, Folder: r.recipe.path, When: map[*model.Item]model.Expr{}}
	for _, f := range []*folder{r.recipe, r.shop} {
		if f == nil {
			continue
		}
		r.checkSection(f)
		for _, n := range f.tops {
			if n.kind.Where != "header" || n == f.header {
				r.decode(n, w.When)
			}
		}
		for _, n := range f.tops {
			switch {
			case n == f.header && f.role == "recipe":
				w.Recipe = n.item
			case n == f.header:
				w.Shop = n.item
			case n.kind.Where == "header":
			case f.role == "recipe":
				w.RecipeItems = append(w.RecipeItems, n.item)
			default:
				w.ShopItems = append(w.ShopItems, n.item)
			}
		}
	}
	b, finds := bindBuild(w)
	r.finds = append(r.finds, finds...)
	return b
}

// decode reads the slots of a block and of all within it.
func (r *reader) decode(n *node, when map[*model.Item]model.Expr) {
	for _, s := range n.slots {
		if len(s.attr.Forms) == 1 && s.attr.Forms[0].Kind == formExpression && n.kind.Name == "house_rule" {
			when[n.item] = r.condition(s)
			n.item.Attrs = append(n.item.Attrs, model.Attr{Name: s.attr.Name, Word: s.word, At: s.at,
				Value: model.Value{Kind: model.Text, Text: string(r.bytes(placeOf(s.expr.Range()))), At: placeOf(s.expr.Range())}})
			continue
		}
		v := r.read(s)
		a := model.Attr{Name: s.attr.Name, Word: s.word, At: s.at, Value: v.v}
		if s.attr.Name == "NAME" {
			a.Name = s.word
		}
		a.Value.At = placeOf(s.expr.Range())
		if v.state != known {
			a.Value.Kind = model.NoValue
		}
		n.item.Attrs = append(n.item.Attrs, a)
	}
	for _, name := range slices.Sorted(maps.Keys(n.meant)) {
		if at := n.meant[name]; n.named[name] == nil {
			n.item.Attrs = append(n.item.Attrs, model.Attr{Name: name, Word: name, At: at, Value: model.Value{At: at}})
		}
	}
	r.mustBeSaid(n)
	for _, k := range n.kids {
		r.decode(k, when)
	}
	if n.kind.Where == "step" {
		n.item.Name = r.stepCalled(n)
	}
	h := fnv.New64a()
	digestSaid(h, n.item)
	n.item.Alike = h.Sum64()
	put(h, n.item.Label)
	n.item.Digest = h.Sum64()
}

// mustBeSaid finds what a block lacks, and groups of which exactly one is wanted.
func (r *reader) mustBeSaid(n *node) {
	groups := map[string][]*attr{}
	var order []string
	for _, a := range n.kind.attrs() {
		if strings.Contains(a.Name, ".") || a.Name == "NAME" {
			continue
		}
		if a.Required && !n.says(a.Name) {
			r.say(slipNotGiven, n.item.At, fmt.Sprintf("%s must say %s: %s", article(plain(n.kind.Name)), a.Name, a.Meaning))
		}
		if a.Group != "" {
			if groups[a.Group] == nil {
				order = append(order, a.Group)
			}
			groups[a.Group] = append(groups[a.Group], a)
		}
	}
	for _, g := range order {
		r.oneOf(n, g, groups[g])
	}
	r.notBeside(n)
}

// notBeside finds pairs of which the table says that one is "not beside" the other.
func (r *reader) notBeside(n *node) {
	for i, s := range n.slots {
		_, other, ok := strings.Cut(s.attr.LeftOut, "not beside ")
		if !ok {
			continue
		}
		for _, first := range n.slots[:i] {
			if first.attr.Name == other {
				r.sayAlso(slipOneTooMany, s.at, fmt.Sprintf("%s cannot stand beside %s: each says the same thing in its own way", s.word, first.word), first.at, "the other one")
			}
		}
	}
}

// released says whether a part needs no section: it is bought, or the mirror of another.
func released(n *node) bool {
	return n.kind.Name == "part" && (n.named["bought"] != nil || n.named["mirror_of"] != nil)
}

func (r *reader) oneOf(n *node, group string, as []*attr) {
	var given []*slot
	var names []string
	meant := false
	for _, a := range as {
		names = append(names, a.Name)
		if s := n.named[a.Name]; s != nil {
			given = append(given, s)
		}
		_, m := n.meant[a.Name]
		meant = meant || m
	}
	switch {
	case len(given) == 2 && ringInFace(n):
	case len(given) > 1:
		r.sayAlso(slipOneTooMany, given[1].at, fmt.Sprintf("only one of %s may be given; %s stands already", all(names), given[0].word),
			given[0].at, "the first one")
	case len(given) == 0 && !meant && !released(n) && !settledElsewhere(n, group):
		r.say(slipNotGiven, n.item.At, fmt.Sprintf("%s must say one of %s", article(plain(n.kind.Name)), all(names)))
	}
}

// ringInFace says whether a groove is a ring in a face of a part that is not turned, whose middle must be
// said beside its larger diameter.
func ringInFace(n *node) bool {
	part := n.in("part")
	return n.kind.Name == "groove" && n.named["at"] != nil && n.named["outer"] != nil && part != nil &&
		part.named["diameter"] == nil && part.named["hexagon"] == nil && part.named["square"] == nil
}

// settledElsewhere lists the groups that something outside of them settles: the slope of a
// standard taper, the diameter of a part that its teeth give, a groove that takes its size
// from a circlip.
func settledElsewhere(n *node, group string) bool {
	switch group {
	case "section":
		for _, k := range n.kids {
			if k.kind.Name == "teeth" {
				return true
			}
		}
	case "tooth_size":
		return n.named["notch"] != nil
	}
	return false
}

// checkSection reads nothing: it holds that a prismatic part says its width as well.
func (r *reader) checkSection(f *folder) {
	for _, n := range f.tops {
		if n.kind.Name != "part" || released(n) {
			continue
		}
		if !n.says("length") {
			r.say(slipNotGiven, n.item.At, "a part must say length: "+lengthMeaning(n))
		}
		flat := n.says("height") || n.says("thickness")
		if flat && !n.says("width") {
			r.say(slipNotGiven, n.item.At, "a part with a height or thickness must say width: along y, from front to back")
		}
	}
}

func lengthMeaning(n *node) string {
	if a, ok := n.kind.attr("length"); ok {
		return a.Meaning
	}
	return "along x"
}

// nameSteps names the steps of a block that have no label: what each makes and its turn,
// "hole.pillar, second"; a deburr by its kind and turn.
func (r *reader) nameSteps(p *node) {
	if p.turns != nil {
		return
	}
	turns, names := map[*node]string{}, map[string]*node{}
	before, whole := r.madeBefore(p)
	for _, k := range p.kids {
		if k.kind.Where != "step" || k.item.Label != "" {
			continue
		}
		made, done := r.madeBy(k)
		whole = whole && done
		if made == "" {
			made = k.kind.Name
		}
		turns[k] = turnName(made, before[made])
		before[made]++
		names[turns[k]] = k
	}
	p.steps = names
	if whole { // else one of them is just being read, and is named later
		p.turns = turns
	}
}

// madeBefore counts what a set-up makes of itself, before the steps that are written out.
func (r *reader) madeBefore(p *node) (before map[string]int, done bool) {
	before = map[string]int{}
	s := p.named["makes"]
	if s == nil {
		return before, true
	}
	if s.state == beingRead {
		return before, false
	}
	for _, v := range r.read(s).v.List {
		before[madeName(p.item, v.Ref)]++
	}
	return before, true
}

// stepCalled is what a step is called in the work: "operation saw the split", or without a
// label as nameSteps has it.
func (r *reader) stepCalled(n *node) string {
	if n.item.Label != "" {
		return n.kind.Name + " " + n.item.Label
	}
	r.nameSteps(n.up)
	return n.up.turns[n]
}

// madeBy names the first thing that a step makes; false while that is just being read.
func (r *reader) madeBy(n *node) (made string, done bool) {
	s := n.named["makes"]
	if s == nil {
		return "", true
	}
	if s.state == beingRead {
		return "", false
	}
	v := r.read(s)
	first := v.v
	if first.Kind == model.List && len(first.List) > 0 {
		first = first.List[0]
	}
	if v.state != known || first.Kind != model.RefTo {
		return "", true
	}
	return madeName(n.item, first.Ref), true
}

// The handbook as the reader asks it.

func materialNamed(name string) (model.Material, bool) { return handbook.Material(name) }

func materialNames() []string { return handbook.MaterialNames() }

func fillThread(t drawing.Thread) (drawing.Thread, bool) { return handbook.FillThread(t) }

func setNamed(name string) (model.Sizes, bool) { return handbook.Set(name) }

func setNames() []string { return handbook.SetNames() }

// hclWord says whether a label can be written behind a dot: one plain word.
func hclWord(label string) bool { return hclsyntax.ValidIdentifier(label) }
