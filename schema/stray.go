package schema

import (
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/schema/text"
)

// refusedWords are words of the trade that mean two things, with what to say instead.
var refusedWords = map[string]string{
	"jaw_height": "jaw_height may mean the jaw above the bed or above the table: say jaw_depth for the height of the gripping face above the bed of the vise, and bed for the height of that bed above the table",
}

// strayBlock says why a block cannot stand where it does.
func (r *reader) strayBlock(f *folder, up *node, b *hclsyntax.Block) {
	at := placeOf(b.TypeRange)
	where := "at the top of a " + f.role
	parent := f.role
	if up != nil {
		where = "in " + article(plain(up.kind.Name))
		parent = up.kind.Name
		if a, ok := up.kind.attr(b.Type); ok {
			cure := b.Type + " = …"
			if slices.ContainsFunc(a.Forms, func(f form) bool { return f.Kind == formObject }) {
				cure = b.Type + " = { … }"
			}
			r.say(slipOutOfPlace, at, fmt.Sprintf("%s is an attribute of %s and not a block: write %s", b.Type, article(plain(up.kind.Name)), cure))
			return
		}
	}
	if k, parents, ok := kindAnywhere(b.Type); ok {
		if k.Where == "header" {
			r.say(slipOutOfPlace, at, fmt.Sprintf("a %s block is the header of a %s's folder, and this is the folder of a %s", k.Name, k.Name, f.role))
			return
		}
		r.say(slipOutOfPlace, at, fmt.Sprintf("%s cannot stand %s; it belongs %s", article(plain(b.Type)), where, either(placesOf(parents))))
		return
	}
	if n := r.near(b.Type, kindWords(parent)); n != "" {
		r.say(slipUnknownWord, at, fmt.Sprintf("no block is called %s; the nearest is %s", quoted(b.Type), n))
		return
	}
	if owners := ownersOf(b.Type); len(owners) > 0 && len(owners) <= 3 {
		r.say(slipUnknownWord, at, fmt.Sprintf("no block is called %s; it is an attribute of %s", quoted(b.Type), either(owners)))
		return
	}
	r.say(slipUnknownWord, at, fmt.Sprintf("no block is called %s; %s may stand %s", quoted(b.Type), someOf(kindWords(parent)), where))
}

func placesOf(parents []string) []string {
	var out []string
	for _, p := range parents {
		if p == "recipe" || p == "shop" {
			out = append(out, "at the top of a "+p)
			continue
		}
		out = append(out, "in "+article(plain(p)))
	}
	return out
}

// someOf lists a few words where there are many.
func someOf(words []string) string {
	const few = 12
	if len(words) <= few {
		return all(words)
	}
	return strings.Join(words[:few], ", ") + " and others"
}

// means notes the attribute that a misspelt word stands for. It is told of as misspelt, and
// not once more as not given; nor does its standing value take its place.
func (n *node) means(near string, at text.Place) {
	a, ok := n.kind.attr(near)
	if !ok || strings.Contains(a.Name, ".") || a.Name == "NAME" {
		return
	}
	if n.meant == nil {
		n.meant = map[string]text.Place{}
	}
	if _, twice := n.meant[a.Name]; !twice {
		n.meant[a.Name] = at
	}
}

// says tells whether an attribute stands in the block, be it misspelt.
func (n *node) says(name string) bool {
	_, meant := n.meant[name]
	return meant || n.named[name] != nil
}

// strayWord says why a word is no attribute of a block.
func (r *reader) strayWord(n *node, word string, at text.Place) {
	block, it := article(plain(n.kind.Name))+" has", "it has"
	if several(plain(n.kind.Name)) {
		block, it = plain(n.kind.Name)+" have", "they have"
	}
	if cure, ok := refusedWords[word]; ok {
		r.say(slipRefusedWord, at, cure)
		return
	}
	if k, ok := kindNamed(n.kind.Name, word); ok {
		r.say(slipOutOfPlace, at, fmt.Sprintf("%s is a block of its own and not an attribute: write it without the equals sign, %s { … }", word, headOf(k, word)))
		return
	}
	if near := r.near(word, n.kind.words()); near != "" {
		r.say(slipUnknownWord, at, fmt.Sprintf("%s no attribute %s; the nearest is %s", block, quoted(word), near))
		n.means(near, at)
		return
	}
	if up := ownerOf(n, word); up != nil {
		r.say(slipUnknownWord, at, fmt.Sprintf("%s no attribute %s; it belongs in the %s around it", block, quoted(word), plain(up.kind.Name)))
		return
	}
	if owners := ownersOf(word); len(owners) > 0 && len(owners) <= 3 {
		r.say(slipUnknownWord, at, fmt.Sprintf("%s no attribute %s; %s has", block, quoted(word), either(owners)))
		return
	}
	words := ownWords(n.kind)
	if len(words) == 0 {
		r.say(slipUnknownWord, at, fmt.Sprintf("%s no attribute %s", block, quoted(word)))
		return
	}
	r.say(slipUnknownWord, at, fmt.Sprintf("%s no attribute %s; %s %s", block, quoted(word), it, someOf(words)))
}

func headOf(k *kind, word string) string {
	if k.Label == labelWanted {
		return word + ` "name"`
	}
	return word
}

// ownerOf finds a block around a node that has an attribute of this name.
func ownerOf(n *node, word string) *node {
	for up := n.up; up != nil; up = up.up {
		if _, ok := up.kind.attr(word); ok {
			return up
		}
	}
	return nil
}

// ownersOf lists the kinds that have an attribute of this name in their own rows.
func ownersOf(word string) []string {
	var out []string
	for _, k := range theTable().kinds {
		if k.Label == sharedRows || k.free != nil {
			continue
		}
		if slices.ContainsFunc(k.Attrs, func(a *attr) bool { return a.Name == word }) {
			out = append(out, article(plain(k.Name)))
		}
	}
	return out
}

func ownWords(k *kind) []string {
	var out []string
	for _, a := range k.attrs() {
		out = append(out, a.Name)
	}
	return out
}
