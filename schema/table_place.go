package schema

import (
	"fmt"
	"slices"
)

// Families of kinds. A reference "to cutter" means any of the first list; the others give
// the structs of package model that several kinds share.
var (
	cutterKinds = []string{
		"drill", "centre_drill", "reamer", "tap", "die", "countersink", "counterbore",
		"end_mill", "slot_drill", "face_mill", "side_and_face_cutter", "slitting_saw", "tee_slot_cutter",
		"dovetail_cutter", "keyseat_cutter", "angle_cutter", "fly_cutter", "gear_cutter",
		"turning_tool", "boring_bar", "parting_tool", "threading_tool", "knurling_tool",
	}
	instrumentKinds = []string{
		"micrometer", "caliper", "depth_gauge", "height_gauge", "dial_indicator", "dial_test_indicator",
		"bore_gauge", "telescopic_gauge", "plug_gauge", "thread_gauge", "steel_rule", "protractor",
		"feelers", "edge_finder",
	}
	// things that work is set or measured with besides the instruments proper
	settingKinds = []string{"sine_bar", "slip_gauges", "square", "surface_plate", "angle_plate"}
	machineKinds = []string{"mill", "drill_press", "lathe"}
	holderKinds  = []string{"collet_chuck", "drill_chuck", "arbor", "boring_head", "tool_post", "die_holder", "tap_wrench"}
)

// setupShares are the shared rows of a set-up. What it is held by decides which of them
// count; an attribute that stands in several is one attribute that takes what either takes.
var setupShares = []string{"any_setup", "vise_setup", "clamped_setup", "turned_setup", "divided_setup"}

// parentsInOrder are the places where a block may stand: at the top of a folder, or within
// a block of that kind.
var parentsInOrder = []string{"recipe", "shop", "part", "assembly", "setup", "bench"}

// lend gives each kind the shared rows it carries. Its own row wins.
func (t *table) lend() error {
	for _, l := range [...]struct{ to, from []string }{
		{[]string{"shift.clamps"}, []string{"clamped_setup.clamps"}},
		{[]string{"shift.packing"}, []string{"vise_setup.packing"}},
		{[]string{"shift.support"}, []string{"turned_setup.support"}},
		{[]string{"square_up.leaves"}, []string{"blank.over"}},
	} {
		if err := t.borrow(l.to[0], l.from[0]); err != nil {
			return err
		}
	}
	length := form{Kind: formLength}
	for _, free := range [][2]string{{"recipe", "general"}, {"graduations", "lines"}} {
		a, ok := find(t.byName[free[0]].Attrs, free[1])
		if !ok {
			return fmt.Errorf("%s.%s is gone", free[0], free[1])
		}
		a.Free = &length
	}
	for _, k := range t.kinds {
		if k.Label == sharedRows {
			k.all = k.Attrs
		} else {
			k.all = slices.Clone(k.Attrs)
			for _, name := range sharesOf(k) {
				shared := t.byName[name]
				if shared == nil {
					return fmt.Errorf("the shared rows %s are gone", name)
				}
				k.take(shared.Attrs)
			}
		}
		if err := k.spell(); err != nil {
			return err
		}
	}
	return nil
}

// sharesOf names the shared rows that a kind carries.
func sharesOf(k *kind) []string {
	switch {
	case k.Where == "shop" && k.Name != "rules_of_thumb":
		if slices.Contains(cutterKinds, k.Name) {
			return []string{"any_cutter", "any_item"}
		}
		return []string{"any_item"}
	case k.Where == "feature":
		return []string{"any_feature"}
	case k.Name == "setup":
		return setupShares
	}
	return nil
}

// take adds shared rows. One that the kind has itself is left out; one that two sets of
// shared rows have is merged.
func (k *kind) take(shared []*attr) {
	for _, s := range shared {
		if _, own := find(k.Attrs, s.Name); own {
			continue
		}
		i := slices.IndexFunc(k.all, func(a *attr) bool { return a.Name == s.Name })
		if i < 0 {
			k.all = append(k.all, s)
			continue
		}
		k.all[i] = merged(k.all[i], s)
	}
}

// merged is one attribute that takes what either takes. A member is required only where
// both require it; a meaning in words is kept from both.
func merged(a, b *attr) *attr {
	m := *a
	m.Forms = slices.Clone(a.Forms)
	for _, f := range b.Forms {
		if !slices.ContainsFunc(m.Forms, f.same) {
			m.Forms = append(m.Forms, f)
		}
	}
	if b.Value != a.Value {
		m.Value = a.Value + "; or " + b.Value
	}
	if b.LeftOut != a.LeftOut {
		m.LeftOut = a.LeftOut + "; or " + b.LeftOut
	}
	m.Required = a.Required && b.Required
	m.Members = nil
	for _, x := range a.Members {
		y, both := find(b.Members, x.Name)
		if both {
			m.Members = append(m.Members, merged(x, y))
			continue
		}
		m.Members = append(m.Members, optional(x))
	}
	for _, y := range b.Members {
		if _, both := find(a.Members, y.Name); !both {
			m.Members = append(m.Members, optional(y))
		}
	}
	return &m
}

func optional(a *attr) *attr {
	o := *a
	o.Required = false
	return &o
}

// borrow gives an object without rows of its own the members of another that is written
// the same way.
func (t *table) borrow(to, from string) error {
	a, okA := t.full(to)
	b, okB := t.full(from)
	if !okA || !okB || len(a.Members) > 0 {
		return fmt.Errorf("%s cannot take the members of %s", to, from)
	}
	for _, m := range b.Members {
		c := *m
		c.Kind = a.Kind
		c.Name = a.Name + "." + m.last()
		a.Members = append(a.Members, &c)
		if c.Name == "support.by" {
			c.Forms = append(slices.Clone(c.Forms), form{Kind: formWord, OneOf: []string{"none"}})
		}
	}
	return nil
}

// full finds an attribute by kind and name: "blank.over".
func (t *table) full(path string) (*attr, bool) {
	for _, k := range t.kinds {
		if len(path) > len(k.Name) && path[:len(k.Name)+1] == k.Name+"." {
			return find(k.Attrs, path[len(k.Name)+1:])
		}
	}
	return nil, false
}

// spell enters every attribute of a kind under its name and its second spellings. A name
// of its own beats a second spelling of a shared row: flutes of a gear_cutter.
func (k *kind) spell() error {
	for _, a := range k.all {
		if k.byWord[a.Name] != nil {
			return fmt.Errorf("%s.%s stands twice", k.Name, a.Name)
		}
		k.byWord[a.Name] = a
	}
	for _, a := range k.all {
		for _, w := range a.Also {
			if k.byWord[w] == nil {
				k.byWord[w] = a
			}
		}
	}
	return nil
}

// place works out which kinds may stand where.
func (t *table) place() error {
	t.in = map[string]map[string]*kind{}
	for _, p := range parentsInOrder {
		t.in[p] = map[string]*kind{}
	}
	for _, k := range t.kinds {
		if k.Label == sharedRows {
			continue
		}
		for _, p := range parentsOf(k) {
			for _, w := range append([]string{k.Name}, k.Also...) {
				if other := t.in[p][w]; other != nil {
					return fmt.Errorf("%q means both %s and %s", w, other.Name, k.Name)
				}
				t.in[p][w] = k
			}
		}
	}
	t.words = map[string][]string{}
	for _, p := range parentsInOrder {
		t.words[p] = wordsInOrder(t.in[p])
	}
	return nil
}

func wordsInOrder(kinds map[string]*kind) []string {
	var names, second []string
	for w, k := range kinds {
		if w == k.Name {
			names = append(names, w)
		} else {
			second = append(second, w)
		}
	}
	slices.Sort(names)
	slices.Sort(second)
	return slices.Clip(append(names, second...))
}

// parentsOf says where a kind may stand. Things of a shop may be made for one build, so
// they stand in a recipe too.
func parentsOf(k *kind) []string {
	switch k.Where {
	case "header":
		return []string{k.Name}
	case "shop":
		return []string{"recipe", "shop"}
	case "feature":
		return []string{"part"}
	case "setup":
		if k.Name == "square_up" {
			return []string{"part"}
		}
		return []string{"part", "assembly"}
	case "step":
		return []string{"setup", "bench"}
	case "record":
		if k.Name == "made" {
			return []string{"recipe"}
		}
		return []string{"recipe", "shop"}
	}
	switch k.Name { // part and build
	case "blank":
		return []string{"part"}
	case "place":
		return []string{"assembly"}
	}
	return []string{"recipe"}
}
