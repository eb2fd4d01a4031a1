package schema

import (
	"fmt"
	"math"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
	"fettle/schema/text"
)

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
		if full, ok := r.fullSet(t.node); ok {
			if !r.member(&t, full, in.home.unit) {
				r.say(slipNotInShop, at, noMember(&t, full, in.home.unit))
			}
			return r.refTo(&t, at)
		}
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
		t.lost = true
	}
	return r.refTo(&t, at)
}

// fullSet is what a set of collets holds that names no sizes: the full set of its system.
func (r *reader) fullSet(n *node) (val, bool) {
	s := n.named["system"]
	if n.kind.Name != "collets" || s == nil {
		return val{}, false
	}
	row, ok := handbook.ColletSystem(r.read(s).v.Text)
	return val{v: model.Value{Kind: model.Set, Sizes: row.Full}}, ok
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
	// a size in quotes: in the unit of who asks, or as the folder of the set writes it
	for _, u := range []drawing.Unit{u, t.node.home.unit} {
		if mm, err := drawing.ParseLength(t.name, u); err == nil && set.v.Sizes.Has(mm) {
			t.size, t.name = mm, ""
			return true
		}
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
	if set.v.Kind == model.List {
		var has []string
		for _, m := range set.v.List {
			if m.Kind == model.ThreadOf {
				has = append(has, m.Thread.String())
			} else {
				has = append(has, model.Figure(m.Num))
			}
		}
		return says + "; it has " + someOf(has)
	}
	if near, ok := set.v.Sizes.Nearest(t.size); ok && t.name == "" {
		return says + "; the nearest it has is " + set.v.Sizes.Name(near)
	}
	return says
}
