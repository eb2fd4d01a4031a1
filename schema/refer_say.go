package schema

import (
	"fmt"
	"slices"
	"strings"

	"fettle/schema/text"
)

func (r *reader) noGiven(s step, in *node, at text.Place) string {
	var names []string
	for n := range in.home.given {
		names = append(names, n)
	}
	slices.Sort(names)
	if cure := minusCure(s.name, names, "given."); cure != "" {
		return cure
	}
	if n := r.near(s.name, names); n != "" {
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

var faceWords = []string{"left", "right", "front", "back", "bottom", "top", "outside"}

func noFace(word string) string {
	if n := near(word, faceWords); n != "" {
		return fmt.Sprintf("no face is called %s; the nearest is %s", quoted(word), n)
	}
	return fmt.Sprintf("no face is called %s; there are %s", quoted(word), all(faceWords))
}

func (r *reader) noWord(root string, k *kind, steps []step, in *node) string {
	if len(steps) > 1 {
		var kinds []string
		for _, p := range []string{"part", "assembly", "setup", in.home.role} {
			kinds = append(kinds, kindWords(p)...)
		}
		slices.Sort(kinds)
		if n := r.near(root, append(kinds, "given", "face")); n != "" {
			return fmt.Sprintf("nothing is of the kind %s; the nearest is %s", quoted(root), n)
		}
		return fmt.Sprintf("nothing is of the kind %s; a reference is written kind.label, such as hole.pillar", quoted(root))
	}
	if r.isChoice(root) {
		return fmt.Sprintf("a word stands in quotes: %s", quoted(root))
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
		if n := r.near(root, names); n != "" {
			return fmt.Sprintf("nothing is called %s here; the nearest is %s. A word that is meant as a text stands in quotes: %s", quoted(root), n, quoted(root))
		}
	}
	return fmt.Sprintf("nothing is called %s here; a word that is meant as a text stands in quotes: %s", shown(root), quoted(root))
}

// isChoice says whether the attribute that is being read takes a word as one of its choice.
func (r *reader) isChoice(word string) bool {
	if len(r.stack) == 0 {
		return false
	}
	for _, f := range r.stack[len(r.stack)-1].attr.Forms {
		if f.Kind == formWord && slices.Contains(f.OneOf, word) {
			return true
		}
	}
	return false
}

// noSuchFeature says that no feature, set-up or step has a name.
func (r *reader) noSuchFeature(k *kind, word string, steps []step, in *node, at text.Place) val {
	label := ""
	if len(steps) > 1 {
		label = steps[1].name
	}
	part := in.in("part", "assembly")
	if part == nil {
		typed := shown(string(r.bytes(at)))
		for _, n := range r.recipe.tops {
			if n.kind.Name == "part" && n.child(k, label) != nil {
				r.say(slipUnknownName, at, fmt.Sprintf("%s stands in a part: write %s.%s from here", typed, nameOf("part", n.item.Label), typed))
				return wrongVal
			}
		}
		r.say(slipUnknownName, at, fmt.Sprintf("%s stands in a part: write part.name.%s from here", typed, typed))
		return wrongVal
	}
	var labels []string
	var owners []string
	for p := in; p != nil; p = p.up {
		for _, from := range append(r.joined(p), p) {
			for _, c := range from.kids {
				if c.kind != k || c.item.Label == "" {
					continue
				}
				labels = append(labels, c.item.Label)
				if c.item.Label == label {
					owners = append(owners, nameOf("part", from.item.Label)+"."+nameOf(word, label))
				}
			}
		}
	}
	if len(owners) > 1 {
		r.say(slipUnknownName, at, fmt.Sprintf("more than one %s is called %s here: write %s", plain(word), quoted(label), either(owners)))
		return wrongVal
	}
	says := r.labelCure(word, label, labels, steps)
	if says == "" {
		says = r.noLabel(word, label, labels)
	}
	r.say(slipUnknownName, at, says)
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
	if cure := r.labelCure(word, label, labels, steps); cure != "" {
		r.say(slipUnknownName, at, cure)
		return wrongVal
	}
	says := r.noLabel(word, label, labels)
	if k.Where == "shop" && in.home.role == "recipe" {
		r.say(slipNotInShop, at, says)
		return r.absent(k, steps, at)
	}
	r.say(slipUnknownName, at, says)
	return wrongVal
}

// labelCure says how a label is written that was written so that it reads as another.
func (r *reader) labelCure(word, label string, labels []string, steps []step) string {
	if cure := minusCure(label, labels, word+"."); cure != "" {
		return cure
	}
	if len(steps) < 2 || steps[1].index {
		return ""
	}
	_, typed, _ := r.lineAround(steps[1].at)
	for _, l := range labels {
		if !hclWord(l) && strings.HasPrefix(typed, l) {
			return fmt.Sprintf("a label that is not one plain word is written in brackets and quotes: %s[%s]", word, quoted(l))
		}
	}
	return ""
}

// noLabel is the sentence for a label that is not there.
func (r *reader) noLabel(word, label string, labels []string) string {
	kindWord := plain(word)
	is := "is"
	if strings.HasSuffix(word, "s") && word != "drill_press" && word != "arbor_press" && word != "radius" {
		is = "are" // clamps, parallels, collets
	}
	says := fmt.Sprintf("no %s %s called %s", kindWord, is, quoted(label))
	if n := r.near(label, labels); n != "" {
		return says + "; the nearest is " + nameOf(word, n)
	}
	if len(labels) == 0 {
		return says + fmt.Sprintf("; there %s no %s at all", is, kindWord)
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
