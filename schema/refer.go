package schema

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/zclconf/go-cty/cty"

	"fettle/schema/drawing"
	"fettle/schema/model"
	"fettle/schema/text"
)

// References. The first word decides where a name is looked up: given; face; a kind that
// stands in a part (looked up from the inside outwards); a kind that stands at the top of
// a file; else an attribute of the part around it.

// target is what a reference leads to.
type target struct {
	node *node  // the block; nil of a part's own face, and of a thing of a shop that is not there
	kind *kind  // its kind; nil of a face
	path string // of an unresolved one: as far as it is written
	sub  string // what of the block: "diameter", "thread", "floor"
	attr bool   // sub is an attribute, dotted for members
	face model.Face
	word string // a face that is none of the six: "outside"
	has  bool   // a member of a set is picked
	size float64
	name string
}

// step is one link of a written reference.
type step struct {
	name  string
	index bool // in brackets
	num   float64
	isNum bool
	at    text.Place
}

func stepsOf(t hcl.Traversal) []step {
	var out []step
	for _, s := range t {
		switch s := s.(type) {
		case hcl.TraverseRoot:
			out = append(out, step{name: s.Name, at: placeOf(s.SrcRange)})
		case hcl.TraverseAttr:
			at := placeOf(s.SrcRange)
			at.From = at.To - len(s.Name)
			out = append(out, step{name: s.Name, at: at})
		case hcl.TraverseIndex:
			st := step{index: true, at: placeOf(s.SrcRange)}
			switch {
			case s.Key.IsNull() || !s.Key.IsKnown():
			case s.Key.Type() == cty.String:
				st.name = s.Key.AsString()
			case s.Key.Type() == cty.Number:
				st.num, _ = s.Key.AsBigFloat().Float64()
				st.isNum = true
				st.name = model.Figure(st.num)
			}
			out = append(out, st)
		}
	}
	return out
}

// traverse resolves a reference as it is written.
func (r *reader) traverse(t hcl.Traversal, in *node, at text.Place) val {
	steps := stepsOf(t)
	root := steps[0].name
	switch {
	case root == "given":
		return r.givenFigure(steps, in, at)
	case root == "face" && len(steps) > 1:
		return r.ownFace(steps, in, at)
	}
	k := kindOfWord(root, in)
	if len(steps) == 1 || k == nil {
		return r.bareWord(steps, k, in, at)
	}
	n := 1 // steps used up
	label := ""
	if k.Label != labelNone {
		label = steps[1].name
		n = 2
	}
	if placedInPart(k) {
		node := r.inPart(k, label, in)
		if node == nil {
			return r.noSuchFeature(k, root, steps, in, at)
		}
		return r.walk(&target{node: node, kind: k}, steps[n:], at, in)
	}
	node, unread := r.top(k, label, in)
	switch {
	case node != nil:
		return r.walk(&target{node: node, kind: k}, steps[n:], at, in)
	case unread:
		return r.absent(k, steps, at)
	}
	return r.noSuchThing(k, root, steps, in, at)
}

// kindOfWord finds the kind that a reference begins with.
func kindOfWord(word string, in *node) *kind {
	for _, parent := range []string{"part", "setup", "assembly", in.home.role, "recipe"} {
		if k, ok := kindNamed(parent, word); ok {
			return k
		}
	}
	return nil
}

// placedInPart says whether blocks of a kind stand within a part or assembly.
func placedInPart(k *kind) bool {
	return k.Where == "feature" || k.Where == "setup" || k.Where == "step" || k.Name == "blank" || k.Name == "place"
}

// inPart looks a block up from the inside outwards; in an assembly also in the parts that
// it joins, where only one of them has it.
func (r *reader) inPart(k *kind, label string, in *node) *node {
	for p := in; p != nil; p = p.up {
		if c := r.childOf(p, k, label); c != nil {
			return c
		}
		if p.kind.Name != "assembly" {
			continue
		}
		var found *node
		for _, part := range r.joined(p) {
			if c := r.childOf(part, k, label); c != nil {
				if found != nil {
					return nil
				}
				found = c
			}
		}
		if found != nil {
			return found
		}
	}
	return nil
}

// joined lists the parts of an assembly.
func (r *reader) joined(assembly *node) []*node {
	s := assembly.named["of"]
	if s == nil || s.state == beingRead {
		return nil
	}
	var out []*node
	for _, v := range r.read(s).list {
		if v.ref != nil && v.ref.node != nil {
			out = append(out, v.ref.node)
		}
	}
	return out
}

// childOf finds a block within another by its label, a step without one by its name.
func (r *reader) childOf(p *node, k *kind, label string) *node {
	if c := p.child(k, label); c != nil {
		return c
	}
	if k.Where == "step" {
		for _, c := range p.kids {
			if c.kind == k && c.item.Label == "" && r.stepName(c) == label {
				return c
			}
		}
	}
	return nil
}

// top looks a block up at the top of the files: things of a shop in the folder that refers
// to them, then in the other. unread: there is no shop that could have it.
func (r *reader) top(k *kind, label string, in *node) (n *node, unread bool) {
	for _, f := range r.foldersFor(k, in) {
		for _, n := range f.tops {
			if n.kind == k && n.item.Label == label {
				return n, false
			}
		}
	}
	if k.Where == "shop" {
		return nil, r.shop == nil
	}
	return nil, in.home.role == "shop" // a shop is read with many recipes
}

func (r *reader) foldersFor(k *kind, in *node) []*folder {
	out := []*folder{r.recipe}
	switch {
	case r.shop == nil:
	case in.home == r.shop:
		out = []*folder{r.shop, r.recipe}
	case k.Where == "shop":
		out = []*folder{r.recipe, r.shop}
	}
	return slices.DeleteFunc(out, func(f *folder) bool { return f == nil })
}

// absent is a reference to a thing of a shop that was not read.
func (r *reader) absent(k *kind, steps []step, at text.Place) val {
	t := &target{kind: k, path: shown(string(r.bytes(at)))}
	n := 2
	if k.Label == labelNone {
		n = 1
	}
	if len(steps) > n && steps[n].index {
		t.has, t.size, t.name = true, steps[n].num, ""
		if !steps[n].isNum {
			t.name = steps[n].name
		}
		n++
	}
	for _, s := range steps[min(n, len(steps)):] {
		if a, ok := k.attr(s.name); ok && t.sub == "" {
			t.sub, t.attr = a.Name, true
		}
	}
	return r.refTo(t, at)
}

// givenFigure reads given.wall.
func (r *reader) givenFigure(steps []step, in *node, at text.Place) val {
	if len(steps) < 2 {
		r.say(slipUnknownName, at, "given holds figures by name: write given.name")
		return wrongVal
	}
	s := in.home.given[steps[1].name]
	if s == nil {
		r.say(slipUnknownName, at, r.noGiven(steps[1], in, at))
		return wrongVal
	}
	v := r.read(s)
	for _, st := range steps[2:] {
		if v.state != known {
			return v
		}
		if v.object == nil {
			r.say(slipUnknownName, st.at, fmt.Sprintf("given.%s is %s and holds nothing by the name of %s", steps[1].name, v.what(), quoted(st.name)))
			return wrongVal
		}
		v = r.memberOf(v, st)
	}
	if v.v.SizeOf == "" && v.state == known {
		v.v.SizeOf = "given." + steps[1].name
	}
	v.src = srcOf(v)
	return v
}

func srcOf(v val) string {
	if v.v.Kind == model.Number {
		return v.src
	}
	return ""
}

// memberOf reads one member of an object that has no slot of its own.
func (r *reader) memberOf(v val, st step) val {
	for _, item := range v.object.expr.Items {
		if key, ok := keyWord(item.KeyExpr); ok && key == st.name {
			return r.eval(item.ValueExpr, v.object.in)
		}
	}
	r.say(slipUnknownName, st.at, fmt.Sprintf("the object has no member %s", quoted(st.name)))
	return wrongVal
}

func (r *reader) noGiven(s step, in *node, at text.Place) string {
	var names []string
	for n := range in.home.given {
		names = append(names, n)
	}
	slices.Sort(names)
	if cure := minusCure(s.name, names, "given."); cure != "" {
		return cure
	}
	if n := near(s.name, names); n != "" {
		return fmt.Sprintf("no figure is given by the name of %s; the nearest is given.%s", quoted(s.name), n)
	}
	return fmt.Sprintf("no figure is given by the name of %s: write it down in given { %s = … }", quoted(s.name), shown(s.name))
}

// minusCure says that a minus needs blanks, where a name with a minus in it begins with a
// name that there is.
func minusCure(name string, names []string, before string) string {
	for i := len(name) - 1; i > 0; i-- {
		if name[i] == '-' && slices.Contains(names, name[:i]) {
			return fmt.Sprintf("%s is one name, and nothing is called so; a minus needs blanks around it: %s%s - %s", quoted(before+name), before, name[:i], name[i+1:])
		}
	}
	return ""
}

// ownFace reads face.top.
func (r *reader) ownFace(steps []step, in *node, at text.Place) val {
	label := steps[1].name
	if len(steps) > 2 { // face.top.finish: what its block says
		faceKind, _ := kindNamed("part", "face")
		if n := r.inPart(faceKind, label, in); n != nil {
			return r.walk(&target{node: n, kind: faceKind}, steps[2:], at, in)
		}
	}
	t := &target{}
	if f, ok := model.ParseFace(label); ok {
		t.face = f
	} else if label == "outside" {
		t.word = label
	} else {
		r.say(slipUnknownName, at, noFace(label))
		return wrongVal
	}
	if len(steps) > 2 {
		r.say(slipUnknownName, steps[2].at, fmt.Sprintf("nothing is said of this face, so it has no %s: a block face %q { … } can say it", shown(steps[2].name), label))
		return wrongVal
	}
	return r.refTo(t, at)
}

var faceWords = []string{"left", "right", "front", "back", "bottom", "top", "outside"}

func noFace(word string) string {
	if n := near(word, faceWords); n != "" {
		return fmt.Sprintf("no face is called %s; the nearest is %s", quoted(word), n)
	}
	return fmt.Sprintf("no face is called %s; there are %s", quoted(word), all(faceWords))
}

// bareWord reads a word that stands alone, or begins with a word that is no kind: an
// attribute of the part around it, or of the block itself.
func (r *reader) bareWord(steps []step, k *kind, in *node, at text.Place) val {
	root := steps[0].name
	for _, n := range []*node{in.in("part", "assembly"), in} {
		if n == nil {
			continue
		}
		if a, ok := n.kind.attr(root); ok && n.kind.free == nil {
			return r.walk(&target{node: n, kind: n.kind}, steps, at, in)
		} else if ok && in.home.given[root] != nil {
			r.say(slipUnknownName, at, fmt.Sprintf("write given.%s", a.Name))
			return wrongVal
		}
	}
	if k != nil && k.Label == labelNone && placedInPart(k) {
		if n := r.inPart(k, "", in); n != nil {
			return r.walk(&target{node: n, kind: k}, steps[1:], at, in)
		}
		r.say(slipUnknownName, at, fmt.Sprintf("there is no %s here", plain(k.Name)))
		return wrongVal
	}
	r.say(slipUnknownName, at, r.noWord(root, k, steps, in))
	return wrongVal
}

func (r *reader) noWord(root string, k *kind, steps []step, in *node) string {
	if len(steps) > 1 {
		var kinds []string
		for _, p := range []string{"part", "assembly", "setup", in.home.role} {
			kinds = append(kinds, kindWords(p)...)
		}
		slices.Sort(kinds)
		if n := near(root, append(kinds, "given", "face")); n != "" {
			return fmt.Sprintf("nothing is of the kind %s; the nearest is %s", quoted(root), n)
		}
		return fmt.Sprintf("nothing is of the kind %s; a reference is written kind.label, such as hole.pillar", quoted(root))
	}
	switch {
	case root == "yes" || root == "on":
		return fmt.Sprintf("%s is not a value: write true", root)
	case root == "no" || root == "off":
		return fmt.Sprintf("%s is not a value: write false", root)
	case root == "null":
		return "what is not known is left out, and not written as null"
	case k != nil:
		return fmt.Sprintf("which %s? A reference is written %s.label", plain(root), root)
	}
	part := in.in("part", "assembly")
	var names []string
	if part != nil {
		for _, s := range part.slots {
			names = append(names, s.attr.Name)
		}
		if cure := minusCure(root, names, ""); cure != "" {
			return cure
		}
	}
	var given []string
	for n := range in.home.given {
		given = append(given, n)
	}
	if slices.Contains(given, root) {
		return fmt.Sprintf("nothing is called %s here; write given.%s", quoted(root), root)
	}
	if len(names) > 0 {
		if n := near(root, names); n != "" {
			return fmt.Sprintf("nothing is called %s here; the nearest is %s. A word that is meant as a text stands in quotes: %s", quoted(root), n, quoted(root))
		}
	}
	return fmt.Sprintf("nothing is called %s here; a word that is meant as a text stands in quotes: %s", shown(root), quoted(root))
}

// noSuchFeature says that no feature, set-up or step has a name.
func (r *reader) noSuchFeature(k *kind, word string, steps []step, in *node, at text.Place) val {
	label := ""
	if len(steps) > 1 {
		label = steps[1].name
	}
	part := in.in("part", "assembly")
	if part == nil {
		for _, n := range r.recipe.tops {
			if n.kind.Name == "part" && n.child(k, label) != nil {
				r.say(slipUnknownName, at, fmt.Sprintf("%s stands in a part: write %s.%s.%s from here", shown(string(r.bytes(at))), nameOf("part", n.item.Label), word, label))
				return wrongVal
			}
		}
		r.say(slipUnknownName, at, fmt.Sprintf("%s stands in a part: write part.name.%s from here", shown(string(r.bytes(at))), shown(string(r.bytes(at)))))
		return wrongVal
	}
	var labels []string
	for p := in; p != nil; p = p.up {
		for _, c := range p.kids {
			if c.kind == k && c.item.Label != "" {
				labels = append(labels, c.item.Label)
			}
		}
	}
	r.say(slipUnknownName, at, r.noLabel(word, label, labels, steps, plain(word)))
	return wrongVal
}

// noSuchThing says that nothing at the top of the files has a name.
func (r *reader) noSuchThing(k *kind, word string, steps []step, in *node, at text.Place) val {
	label := steps[1].name
	var labels []string
	for _, f := range r.foldersFor(k, in) {
		for _, n := range f.tops {
			if n.kind == k && n.item.Label != "" {
				labels = append(labels, n.item.Label)
			}
		}
	}
	slices.Sort(labels)
	labels = slices.Compact(labels)
	says := r.noLabel(word, label, labels, steps, plain(word))
	if k.Where == "shop" && in.home.role == "recipe" {
		r.say(slipNotInShop, at, says)
		return r.absent(k, steps, at)
	}
	r.say(slipUnknownName, at, says)
	return wrongVal
}

// noLabel is the sentence for a label that is not there, with the cure if one shows.
func (r *reader) noLabel(word, label string, labels []string, steps []step, kindWord string) string {
	if cure := minusCure(label, labels, word+"."); cure != "" {
		return cure
	}
	if len(steps) > 1 && !steps[1].index {
		// a label that is no plain word: cutter.slit-50x0.5-1
		_, typed, _ := r.lineAround(steps[1].at)
		for _, l := range labels {
			if !hclWord(l) && strings.HasPrefix(typed, l) {
				return fmt.Sprintf("a label that is not one plain word is written in brackets and quotes: %s[%s]", word, quoted(l))
			}
		}
	}
	says := fmt.Sprintf("no %s is called %s", kindWord, quoted(label))
	if n := near(label, labels); n != "" {
		return says + "; the nearest is " + nameOf(word, n)
	}
	if len(labels) == 0 {
		return says + fmt.Sprintf("; there is no %s at all", kindWord)
	}
	var names []string
	for _, l := range labels {
		names = append(names, nameOf(word, l))
	}
	verb := "; there are "
	if len(names) == 1 {
		verb = "; there is "
	}
	return says + verb + someOf(names)
}

// nameOf writes a reference to a label: vise.small, vise["the small one"].
func nameOf(word, label string) string {
	if hclWord(label) {
		return word + "." + label
	}
	return word + "[" + quoted(label) + "]"
}

// walk goes on from a block along the rest of a reference.
func (r *reader) walk(t *target, rest []step, at text.Place, in *node) val {
	c := *t
	for i := 0; i < len(rest); i++ {
		s := rest[i]
		if s.index && c.sub == "" {
			key := textVal(s.name, s.at)
			if s.isNum {
				key = figure(s.num, 0, s.at)
			}
			v := r.pick(r.refTo(&c, at), key, s.at, at, in)
			if v.state != known {
				return v
			}
			c = *v.ref
			continue
		}
		if c.node != nil && c.sub == "" {
			if k, ok := kindNamed(c.node.kind.Name, s.name); ok && (i+1 < len(rest) || k.Label == labelNone) {
				label := ""
				if k.Label != labelNone {
					i++
					label = rest[i].name
				}
				if k.Name == "face" && i == len(rest)-1 {
					if f, six := model.ParseFace(label); six || label == "outside" {
						c.sub, c.face = "face."+label, f
						return r.refTo(&c, at)
					}
				}
				child := r.childOf(c.node, k, label)
				if child == nil {
					r.say(slipUnknownName, at, r.noChild(c.node, k, s.name, label))
					return wrongVal
				}
				c = target{node: child, kind: k}
				continue
			}
		}
		if !r.stepInto(&c, s) {
			return wrongVal
		}
	}
	return r.refTo(&c, at)
}

func (r *reader) noChild(n *node, k *kind, word, label string) string {
	var labels []string
	for _, c := range n.kids {
		if c.kind == k && c.item.Label != "" {
			labels = append(labels, c.item.Label)
		}
	}
	says := fmt.Sprintf("%s has no %s called %s", n.item.Path(), plain(word), quoted(label))
	if near := near(label, labels); near != "" {
		return says + "; the nearest is " + nameOf(word, near)
	}
	return says
}

// stepInto adds one name to what of a block is meant: an attribute, a member of one, or a
// face that the feature makes.
func (r *reader) stepInto(c *target, s step) bool {
	k := c.kind
	if c.sub != "" {
		if c.attr {
			if a, ok := k.attr(c.sub + "." + s.name); ok {
				c.sub = a.Name
				return true
			}
			c.sub += "." + s.name // within a value: checked when it is read
			return true
		}
		r.say(slipUnknownName, s.at, fmt.Sprintf("nothing lies below %s", c.sub))
		return false
	}
	if k.Where == "feature" && slices.Contains(madeFaces(c.node), s.name) {
		c.sub = s.name
		return true
	}
	if a, ok := k.attr(s.name); ok {
		c.sub, c.attr = a.Name, true
		return true
	}
	words := k.words()
	if k.Where == "feature" {
		words = append(words, madeFaces(c.node)...)
	}
	name := plain(k.Name)
	if c.node != nil {
		name = c.node.item.Path()
	}
	says := fmt.Sprintf("%s has no %s", name, quoted(s.name))
	if n := near(s.name, words); n != "" {
		says += "; the nearest is " + n
	}
	r.say(slipUnknownName, s.at, says)
	return false
}

// madeFaces are the words for faces that a feature makes: the shoulders of a turned
// surface, the floor and walls of a pocket, the pieces of a split. Words of section 5 of the
// language; a word that the kind has as an attribute keeps that meaning.
func madeFaces(n *node) []string {
	if n == nil {
		return nil
	}
	if n.kind.Name == "split" {
		var out []string
		if s := n.named["pieces"]; s != nil && s.state != beingRead {
			if s.state == wasRead {
				for _, v := range s.got.v.List {
					out = append(out, v.Text)
				}
			}
		}
		return out
	}
	var out []string
	for _, w := range []string{"floor", "left", "right", "front", "back", "bottom", "top", "wall", "rim"} {
		if a, ok := n.kind.attr(w); ok && a.Kind == n.kind.Name {
			continue
		}
		out = append(out, w)
	}
	return out
}

// pick takes a member of a set: drill.jobbers[4.5], drill.numbers["#7"].
func (r *reader) pick(v val, key val, keyAt, at text.Place, in *node) val {
	if v.v.Kind != model.RefTo || v.ref.sub != "" || v.ref.kind == nil || v.ref.kind.Where != "shop" || v.ref.has {
		r.say(slipWrongValue, at, "nothing can be picked from this; a member is picked from a set of a shop, such as drill.jobbers[4.5]")
		return wrongVal
	}
	t := *v.ref
	t.has = true
	if key.v.Kind == model.Text {
		t.name = key.v.Text
	} else if x, power, ok := key.figureOf(in.home.unit); ok {
		if power == 0 {
			x *= in.home.unit.MM()
		}
		t.size = x
	} else {
		r.say(slipWrongValue, keyAt, "a member is picked by its size or its name; this is "+key.what())
		return wrongVal
	}
	if t.node == nil {
		return r.refTo(&t, at)
	}
	s := setOf(t.node)
	if s == nil {
		r.say(slipWrongValue, at, fmt.Sprintf("%s is no set, so nothing can be picked from it", t.node.item.Path()))
		return wrongVal
	}
	set := r.read(s)
	if set.state != known {
		return r.refTo(&t, at)
	}
	if !r.member(&t, set, in.home.unit) {
		rule := slipUnknownName
		if in.home.role == "recipe" && t.node.home.role == "shop" {
			rule = slipNotInShop
		}
		r.say(rule, at, noMember(&t, set, in.home.unit))
	}
	return r.refTo(&t, at)
}

// setOf finds the attribute that a member of a thing is picked by.
func setOf(n *node) *slot {
	for _, name := range []string{"diameter", "heights", "sizes", "threads", "bore", "lengths", "circles", "masses", "pitch", "dies", "set"} {
		s := n.named[name]
		if s == nil {
			continue
		}
		for _, f := range s.attr.Forms {
			if f.Kind == formSizes || f.Kind == formList {
				return s
			}
		}
	}
	return nil
}

// member looks the picked member up in its set and completes it.
func (r *reader) member(t *target, set val, u drawing.Unit) bool {
	if set.v.Kind == model.List { // threads, circles
		for _, m := range set.v.List {
			switch {
			case m.Kind == model.ThreadOf && t.name != "":
				if p, err := drawing.ParseThread(t.name); err == nil && filled(p).Same(m.Thread) {
					return true
				}
			case m.Kind == model.Number && t.name == "":
				if math.Abs(m.Num-t.size) < model.Same || math.Abs(m.Num-t.size/u.MM()) < model.Same {
					t.size = m.Num
					return true
				}
			}
		}
		return false
	}
	if t.name == "" {
		return set.v.Sizes.Has(t.size)
	}
	for _, m := range set.v.Sizes.List {
		if m.Name == t.name {
			t.size = m.Size
			return true
		}
	}
	if mm, err := drawing.ParseLength(t.name, u); err == nil && set.v.Sizes.Has(mm) {
		t.size, t.name = mm, ""
		return true
	}
	return false
}

func noMember(t *target, set val, u drawing.Unit) string {
	wanted := t.name
	if wanted == "" {
		wanted = inUnits(t.size, 1, u)
		if u == drawing.Inch {
			wanted += " in"
		}
	} else {
		wanted = quoted(wanted)
	}
	says := fmt.Sprintf("%s has no %s", t.node.item.Path(), wanted)
	if near, ok := set.v.Sizes.Nearest(t.size); ok && t.name == "" {
		return says + "; the nearest it has is " + set.v.Sizes.Name(near)
	}
	return says
}

// refTo makes the value of a reference.
func (r *reader) refTo(t *target, at text.Place) val {
	ref := model.Ref{At: at, Text: string(r.bytes(at)), Sub: t.sub, Has: t.has, Size: t.size, Name: t.name, Face: t.face}
	if t.node != nil {
		ref.Item = t.node.item
	}
	if t.word != "" {
		ref.Text = t.word
	}
	return val{v: model.Value{Kind: model.RefTo, At: at, Ref: ref}, ref: t, weight: 1}
}

// deref gives what is written where a reference leads to an attribute.
func (r *reader) deref(v val) val {
	t := v.ref
	switch {
	case t.node == nil && t.kind != nil:
		return lackingVal // a thing of a shop that was not read
	case t.node == nil || t.sub == "" || !t.attr:
		return v // a thing or a face: no figure
	}
	a, isRow := t.kind.attr(t.sub)
	head, rest, _ := strings.Cut(t.sub, ".")
	s := t.node.named[head]
	if s == nil {
		return r.unsaid(t, a, isRow, v.v.At)
	}
	if t.has && s == setOf(t.node) && rest == "" {
		out := figure(t.size, 1, v.v.At)
		return out
	}
	got := r.read(s)
	for rest != "" && got.state == known {
		head, rest, _ = strings.Cut(rest, ".")
		next, ok := inside(got, head)
		if !ok {
			return r.unsaid(t, a, isRow, v.v.At)
		}
		got = next
	}
	if got.state != known {
		return val{state: got.state}
	}
	got.v.SizeOf = t.node.item.Path() + "." + t.sub
	got.v.At = v.v.At
	got.src = srcOf(got)
	return got
}

// inside reads a member of a value that was read: of an object by its name, of a place by
// the face it is measured from.
func inside(v val, name string) (val, bool) {
	switch v.v.Kind {
	case model.Object:
		for i, a := range v.v.Object {
			if a.Name == name || strings.HasSuffix(a.Name, "."+name) {
				if i < len(v.list) {
					return v.list[i], true
				}
			}
		}
	case model.PositionOf:
		for _, c := range v.v.Position.Coords {
			if c.Datum.Face.String() == name && c.Datum.Face != model.NoFace {
				return val{v: model.Value{Kind: model.SizeOf, Size: c.Size, At: c.At}, power: 1}, true
			}
		}
	}
	return val{}, false
}

// unsaid is an attribute that is referred to and was not written: its standing value if the
// table has one; of a thing of a shop it is not known; else it should have been said.
func (r *reader) unsaid(t *target, a *attr, isRow bool, at text.Place) val {
	if isRow {
		if v, from := standing(a); from != model.Unknown {
			v.At = at
			return val{v: v, power: powerOf(a)}
		}
	}
	if t.kind.Where == "shop" || t.kind.Where == "header" {
		return lackingVal
	}
	r.say(slipNotGiven, at, fmt.Sprintf("%s.%s is not written, so nothing can be worked out from it", t.node.item.Path(), t.sub))
	return wrongVal
}
