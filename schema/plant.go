package schema

import (
	"fmt"
	"sort"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/drawing"
	"fettle/schema/model"
	"fettle/schema/text"
)

// node is a block that is being read.
type node struct {
	item  *model.Item
	kind  *kind
	home  *folder
	up    *node // the block it stands in; nil at the top of a file
	kids  []*node
	slots []*slot // its attributes in written order
	named map[string]*slot
	meant map[string]text.Place // attributes that a misspelt word was meant for, by name
	found index                 // its kids by kind and label
	steps map[string]*node      // its steps without a label by their names; nil until asked for
	turns map[*node]string      // and their names
}

// index finds blocks by kind and label. Of several with one name it keeps the first.
type index map[indexKey]*node

type indexKey struct {
	kind  *kind
	label string
}

func (x *index) add(n *node) (first *node) {
	key := indexKey{n.kind, n.item.Label}
	if first = (*x)[key]; first != nil {
		return first
	}
	if *x == nil {
		*x = index{}
	}
	(*x)[key] = n
	return nil
}

// slot is an attribute as it was written, and what it came to once it was worked out.
type slot struct {
	of    *node
	attr  *attr
	word  string
	at    text.Place // of the word
	expr  hclsyntax.Expression
	state slotState
	got   val
}

type slotState uint8

const (
	notRead slotState = iota
	beingRead
	wasRead
)

func (s *slot) path() string { return s.of.item.Path() + "." + s.attr.Name }

func (n *node) setUnit(u drawing.Unit) {
	n.item.Unit = u
	for _, k := range n.kids {
		k.setUnit(u)
	}
}

// in gives the nearest block of a kind around a node, the node itself included.
func (n *node) in(kinds ...string) *node {
	for ; n != nil; n = n.up {
		for _, k := range kinds {
			if n.kind.Name == k {
				return n
			}
		}
	}
	return nil
}

// child finds a block within this one by kind and label.
func (n *node) child(k *kind, label string) *node {
	if k.Label == labelNone {
		label = ""
	}
	return n.found[indexKey{k, label}]
}

// plantFile adds the blocks of a file to its folder.
func (r *reader) plantFile(f *folder, name string, body *hclsyntax.Body) {
	for _, a := range inSource(body.Attributes) {
		r.say(slipOutOfPlace, placeOf(a.NameRange), fmt.Sprintf("%s stands outside any block; at the top of a file there are only blocks, such as %s", shown(a.Name), exampleTop(f.role)))
	}
	for _, b := range body.Blocks {
		if n := r.plant(f, nil, b); n != nil {
			r.nameOnce(f.found.add(n), n)
			f.tops = append(f.tops, n)
		}
	}
}

func exampleTop(role string) string {
	if role == "shop" {
		return `vise "small" { … }`
	}
	return `part "clamp" { … }`
}

func inSource(as hclsyntax.Attributes) []*hclsyntax.Attribute {
	out := make([]*hclsyntax.Attribute, 0, len(as))
	for _, a := range as {
		out = append(out, a)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].NameRange.Start.Byte < out[j].NameRange.Start.Byte })
	return out
}

// plant makes the node of a block and of all within it; nil where the block cannot stand here.
func (r *reader) plant(f *folder, up *node, b *hclsyntax.Block) *node {
	parent := f.role
	if up != nil {
		parent = up.kind.Name
	}
	k, ok := kindNamed(parent, b.Type)
	if !ok {
		// a header of the other sort is kept, so that the folder can be told for what it is
		if k, _, ok = kindAnywhere(b.Type); !ok || up != nil || k.Where != "header" {
			r.strayBlock(f, up, b)
			return nil
		}
		r.strayBlock(f, up, b)
	}
	n := &node{kind: k, home: f, up: up, named: map[string]*slot{}}
	n.item = &model.Item{Kind: k.Name, Word: b.Type, Unit: f.unit, At: placeOf(b.TypeRange)}
	n.item.Body = text.Place{File: n.item.At.File, From: n.item.At.From, To: b.CloseBraceRange.End.Byte}
	if up != nil {
		n.item.In = up.item
	}
	r.label(n, b)
	for _, a := range inSource(b.Body.Attributes) {
		r.plantSlot(n, a)
	}
	turns := map[*kind]int{}
	for _, inner := range b.Body.Blocks {
		c := r.plant(f, n, inner)
		if c == nil {
			continue
		}
		turns[c.kind]++
		c.item.Turn = turns[c.kind]
		r.nameOnce(n.found.add(c), c)
		n.kids = append(n.kids, c)
		n.item.Items = append(n.item.Items, c.item)
	}
	return n
}

// label reads the label of a block, by whether its kind carries one.
func (r *reader) label(n *node, b *hclsyntax.Block) {
	for i, l := range b.LabelRanges {
		if i == 0 {
			n.item.At.To = l.End.Byte
		}
	}
	wanted := n.kind.Label
	switch {
	case len(b.Labels) > 1:
		r.say(slipLabel, placeOf(b.LabelRanges[1]), fmt.Sprintf("%s has one label, and this is a second one", article(plain(n.kind.Name))))
	case len(b.Labels) == 0 && wanted == labelWanted:
		r.say(slipLabel, placeOf(b.TypeRange), fmt.Sprintf("a label is missing: write %s \"name\" { … }", b.Type))
	case len(b.Labels) == 1 && wanted == labelNone:
		r.say(slipLabel, placeOf(b.LabelRanges[0]), fmt.Sprintf("%s has no label: write %s { … }", article(plain(n.kind.Name)), b.Type))
		return
	case len(b.Labels) == 1 && b.Labels[0] == "":
		r.say(slipLabel, placeOf(b.LabelRanges[0]), "the label is empty: nothing could refer to it")
	}
	if len(b.Labels) > 0 {
		n.item.Label = b.Labels[0]
	}
}

// nameOnce says so where a block has the name of one before it.
func (r *reader) nameOnce(first, n *node) {
	single := n.kind.Name == "blank"
	switch {
	case first == nil || n.kind.Where == "header" || n.kind.Where == "record" && n.kind.Name != "house_rule":
	case single:
		r.sayAlso(slipGivenTwice, n.item.At, "a part has one blank, and this is a second one", first.item.At, "the first one")
	case n.item.Label != "":
		r.sayAlso(slipNameTwice, n.item.At, fmt.Sprintf("%s %s stands here for the second time; a reference leads to the first", plain(n.kind.Name), quoted(n.item.Label)), first.item.At, "the first one")
	}
}

func (r *reader) plantSlot(n *node, a *hclsyntax.Attribute) {
	at := placeOf(a.NameRange)
	row, ok := n.kind.attr(a.Name)
	if !ok {
		r.strayWord(n, a.Name, at)
		return
	}
	s := &slot{of: n, attr: row, word: a.Name, at: at, expr: a.Expr}
	if first := n.named[row.Name]; first != nil {
		r.sayAlso(slipGivenTwice, at, fmt.Sprintf("%s and %s are the same, and are given twice; the first one is taken", first.word, a.Name), first.at, "the first one")
		return
	}
	n.slots = append(n.slots, s)
	n.named[row.Name] = s
	if n.kind.Name == "given" {
		r.plantGiven(s)
	}
}

// plantGiven enters a named figure of the folder.
func (r *reader) plantGiven(s *slot) {
	f := s.of.home
	if f.given == nil {
		f.given = map[string]*slot{}
	}
	if first := f.given[s.word]; first != nil {
		r.sayAlso(slipGivenTwice, s.at, fmt.Sprintf("given.%s is given twice; the first one is taken", s.word), first.at, "the first one")
		return
	}
	f.given[s.word] = s
}
