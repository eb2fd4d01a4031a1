package schema

import (
	"fmt"
	"hash"
	"hash/fnv"
	"math"
	"slices"
	"strconv"
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
			r.decode(n, w.When)
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
	r.mustBeSaid(n)
	for _, k := range n.kids {
		r.decode(k, when)
	}
	if n.kind.Where == "step" {
		n.item.Name = r.stepCalled(n)
	}
	h := fnv.New64a()
	digestItem(h, n.item)
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
		if a.Required && n.named[a.Name] == nil {
			r.say(slipNotGiven, n.item.At, fmt.Sprintf("%s must say its %s: %s", article(plain(n.kind.Name)), a.Name, a.Meaning))
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
}

// released says whether a part needs no section: it is bought, or the mirror of another.
func released(n *node) bool {
	return n.kind.Name == "part" && (n.named["bought"] != nil || n.named["mirror_of"] != nil)
}

func (r *reader) oneOf(n *node, group string, as []*attr) {
	var given []*slot
	var names []string
	for _, a := range as {
		names = append(names, a.Name)
		if s := n.named[a.Name]; s != nil {
			given = append(given, s)
		}
	}
	switch {
	case len(given) > 1:
		r.sayAlso(slipOneTooMany, given[1].at, fmt.Sprintf("only one of %s may be given; %s stands already", all(names), given[0].word),
			given[0].at, "the first one")
	case len(given) == 0 && !released(n) && !settledElsewhere(n, group):
		r.say(slipNotGiven, n.item.At, fmt.Sprintf("%s must say one of %s", article(plain(n.kind.Name)), all(names)))
	}
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
		if n.named["length"] == nil {
			r.say(slipNotGiven, n.item.At, "a part must say its length: "+lengthMeaning(n))
		}
		flat := n.named["height"] != nil || n.named["thickness"] != nil
		if flat && n.named["width"] == nil {
			r.say(slipNotGiven, n.item.At, "a part with a height or thickness must say its width: along y, from front to back")
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

// most100m is the longest length that a workshop knows, in mm.
const most100m = 100_000.0

// mayBeNegative lists the lengths and figures that may lie below nought.
var mayBeNegative = []string{"along", "wants", "gap", "set_over", "on_table", "shifted", "tilts", "at", "from", "to", "clearance", "first", "step", "temperature", "start", "size", "by", "axis", "NAME", "angle", "to_axis", "zero_at", "top_slide"}

// mustBeAbove lists the lengths that are nothing if they are nought.
var mustBeAbove = []string{"diameter", "width", "length", "height", "thickness", "jaw_width", "jaw_depth", "opening", "seat",
	"pcd", "hexagon", "square", "round", "module", "diametral_pitch", "ratio", "centres", "overall"}

// inRange says whether every figure of a value can be what the attribute means.
func (f *fitter) inRange(out *val) bool {
	return f.within(&out.v, f.attr.last())
}

func (f *fitter) within(v *model.Value, name string) bool {
	switch v.Kind {
	case model.Number:
		return f.figureWithin(v, v.Num, name)
	case model.SizeOf:
		return f.figureWithin(v, v.Size.Nominal, name)
	case model.List:
		for i := range v.List {
			if !f.within(&v.List[i], name) {
				return false
			}
		}
	case model.Set:
		lo, hi, ok := v.Sizes.Range()
		return !ok || f.figureWithin(v, lo, name) && f.figureWithin(v, hi, name)
	}
	return true
}

func (f *fitter) figureWithin(v *model.Value, x float64, name string) bool {
	says := ""
	u := f.attr.Unit
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		says = "this is not a figure that can be reckoned with"
	case u == "mm" && math.Abs(x) > most100m:
		says = fmt.Sprintf("%s of %s m is longer than any workshop knows", name, trimmedFigure(x/1000))
	case u == "deg" && math.Abs(x) > 360:
		says = fmt.Sprintf("%s of %s degrees is more than a full turn", name, trimmedFigure(x))
	case u != "mm" && math.Abs(x) > 1e9:
		says = fmt.Sprintf("%s of %s is more than any workshop knows", name, trimmedFigure(x))
	case x < 0 && !slices.Contains(mayBeNegative, name):
		says = fmt.Sprintf("%s cannot be below nought", name)
	case x == 0 && slices.Contains(mustBeAbove, name):
		says = fmt.Sprintf("%s cannot be nought", name)
	case f.wantsWhole() && x < 1 && !slices.Contains(mayBeNegative, name):
		says = fmt.Sprintf("%s is at least 1", name)
	default:
		return true
	}
	f.r.say(slipOutOfRange, v.At, says)
	return false
}

func (f *fitter) wantsWhole() bool {
	for _, x := range f.attr.Forms {
		if x.Kind != formWhole && !(x.Kind == formList && x.Of != nil && x.Of.Kind == formWhole) {
			return false
		}
	}
	return len(f.attr.Forms) > 0
}

func trimmedFigure(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// digestItem puts all that a block says into a hash, with its values and not its layout.
func digestItem(h hash.Hash64, i *model.Item) {
	put(h, i.Kind, i.Label)
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

// The handbook as the reader asks it.

func materialNamed(name string) (model.Material, bool) { return handbook.Material(name) }

func materialNames() []string { return handbook.MaterialNames() }

func fillThread(t drawing.Thread) (drawing.Thread, bool) { return handbook.FillThread(t) }

func setNamed(name string) (model.Sizes, bool) { return handbook.Set(name) }

func setNames() []string { return handbook.SetNames() }

// hclWord says whether a label can be written behind a dot: one plain word.
func hclWord(label string) bool { return hclsyntax.ValidIdentifier(label) }
