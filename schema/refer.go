package schema

import (
	"fmt"
	"slices"

	"github.com/hashicorp/hcl/v2"
	"github.com/zclconf/go-cty/cty"

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
	lost bool   // the set has no such member
	size float64
	name string
	in   *node // the mirrored part that a feature of its other hand is named through
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
		if o := r.mirrored(p); o != nil && k.Where == "feature" {
			if c := r.childOf(o, k, label); c != nil {
				return c
			}
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

// mirrored is the part that a part is the other hand of: its features are this one's too.
func (r *reader) mirrored(part *node) *node {
	s := part.named["mirror_of"]
	if part.kind.Name != "part" || s == nil || s.state == beingRead {
		return nil
	}
	if v := r.read(s); v.ref != nil {
		return v.ref.node
	}
	return nil
}

// joined lists the parts of an assembly.
func (r *reader) joined(assembly *node) []*node {
	s := assembly.named["of"]
	if assembly.kind.Name != "assembly" || s == nil || s.state == beingRead {
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
		r.nameSteps(p)
		if c := p.steps[label]; c != nil && c.kind == k {
			return c
		}
	}
	return nil
}

// top looks a block up at the top of the files: things of a shop in the folder that refers
// to them, then in the other. unread: there is no shop that could have it.
func (r *reader) top(k *kind, label string, in *node) (n *node, unread bool) {
	for _, f := range r.foldersFor(k, in) {
		if n := f.found[indexKey{k, label}]; n != nil {
			return n, false
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
	says := fmt.Sprintf("the object has no member %s", quoted(st.name))
	var names []string
	for _, item := range v.object.expr.Items {
		if key, ok := keyWord(item.KeyExpr); ok {
			names = append(names, key)
		}
	}
	if n := r.near(st.name, names); n != "" {
		says += "; the nearest is " + n
	}
	r.say(slipUnknownName, st.at, says)
	return wrongVal
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

// bareWord reads a word that stands alone, or begins with a word that is no kind: an
// attribute of the part around it, or of the block itself.
func (r *reader) bareWord(steps []step, k *kind, in *node, at text.Place) val {
	root := steps[0].name
	for _, n := range []*node{in.in("part", "assembly"), in} {
		if n == nil {
			continue
		}
		a, ok := n.kind.attr(root)
		if ok && n.kind.free == nil && (n.kind.Name == "part" || n.kind.Name == "assembly" || n.named[a.Name] != nil) {
			return r.walk(&target{node: n, kind: n.kind}, steps, at, in)
		} else if ok && n.kind.free != nil && in.home.given[root] != nil {
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
