package schema

import (
	"fmt"
	"slices"
	"strings"

	"fettle/schema/model"
	"fettle/schema/text"
)

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
				child, in := r.childOf(c.node, k, label), c.in
				if o := r.mirrored(c.node); child == nil && o != nil && k.Where == "feature" {
					child, in = r.childOf(o, k, label), c.node
				}
				if child == nil {
					r.say(slipUnknownName, at, r.noChild(c.node, k, s.name, label))
					return wrongVal
				}
				c = target{node: child, kind: k, in: in}
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
	if near := r.near(label, labels); near != "" {
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
	words := append(k.words(), kindWords(k.Name)...)
	if k.Where == "feature" {
		words = append(words, madeFaces(c.node)...)
	}
	name := plain(k.Name)
	if c.node != nil {
		name = c.node.item.Path()
	}
	says := fmt.Sprintf("%s has no %s", name, quoted(s.name))
	if n := r.near(s.name, words); n != "" {
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

// refTo makes the value of a reference.
func (r *reader) refTo(t *target, at text.Place) val {
	ref := model.Ref{At: at, Text: string(r.bytes(at)), Sub: t.sub, Has: t.has, Size: t.size, Name: t.name, Face: t.face}
	if t.node != nil {
		ref.Item = t.node.item
	}
	if t.in != nil {
		ref.In = t.in.item
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
	case t.lost:
		return wrongVal
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
	if a != nil && t.node != nil && t.node.says(a.Name) {
		return wrongVal // misspelt, and told of there
	}
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
