package schema

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"
)

// The language as data. kinds.tsv has one row for each kind of block and each attribute of
// it; every attribute is declared there and nowhere else. Decoding, near names, defaults,
// binding to structs and the page README.md of this folder all read it through this file.

//go:embed kinds.tsv
var kindRows string

// labelRule says whether a block of a kind carries a label.
type labelRule uint8

const (
	labelWanted labelRule = iota
	labelOptional
	labelNone
	sharedRows // no block at all: attributes that other kinds share, such as any_item
)

// kind is one kind of block.
type kind struct {
	Where    string // header, shop, part, feature, setup, step, build or record
	Name     string
	Label    labelRule
	Required bool // the header of a recipe
	LeftOut  string
	Meaning  string
	Also     []string // second spellings
	Attrs    []*attr  // its own rows in the order of the table

	all    []*attr          // its own, then the shared ones
	byWord map[string]*attr // all of them, second spellings too
	free   *attr            // of given: any single word is an attribute
}

// attr is one attribute, or a member of an object ("clamp.thread").
type attr struct {
	Kind     string // the kind in whose rows it stands: of jaw_width "vise", of quantity "any_item"
	Name     string // "jaw_width"; of a member the dotted name, "clamp.thread"
	Value    string // as the table has it: "length or object"
	Forms    []form // the same, read
	Unit     string
	Required bool   // of a member: once its object is written
	Group    string // exactly one of the group must be written; "" none
	LeftOut  string
	Meaning  string
	Also     []string
	Members  []*attr // of an object whose keys are fixed
	Free     *form   // of an object whose keys are free: what each holds
}

// table is kinds.tsv, read.
type table struct {
	kinds  []*kind // in the order of the file, shared rows included
	byName map[string]*kind
	in     map[string]map[string]*kind // by the parent, then by the word
	words  map[string][]string         // the same words, in order
}

var theTable = sync.OnceValue(func() *table {
	t, err := readTable(kindRows)
	if err != nil {
		panic("the table of kinds is not as it must be: " + err.Error())
	}
	return t
})

// kindNamed finds a kind by its word or a second spelling. The parent is where the block
// stands: "recipe" or "shop" at the top of a folder, else the kind of the block around it.
func kindNamed(parent, word string) (*kind, bool) {
	k, ok := theTable().in[parent][word]
	return k, ok
}

// kindAnywhere finds a kind by its word or a second spelling wherever it may stand, and
// says in which parents that is, for the sentence that tells where a block belongs.
func kindAnywhere(word string) (k *kind, parents []string, ok bool) {
	for _, p := range parentsInOrder {
		if found, here := theTable().in[p][word]; here {
			k, parents, ok = found, append(parents, p), true
		}
	}
	return k, parents, ok
}

// kindWords lists every word that may begin a block in a parent: the names in alphabetical
// order, then the second spellings. The list is the table's own and must not be changed.
func kindWords(parent string) []string { return theTable().words[parent] }

// attr finds an attribute by its name or a second spelling; a dotted word finds a member.
func (k *kind) attr(word string) (*attr, bool) {
	if a, ok := k.byWord[word]; ok {
		return a, true
	}
	if head, rest, dotted := strings.Cut(word, "."); dotted {
		if a, ok := k.byWord[head]; ok {
			return a.member(rest)
		}
		return nil, false
	}
	if k.free != nil {
		a := *k.free
		a.Name = word
		return &a, true
	}
	return nil, false
}

// words lists the attributes of a kind in the order of the table, second spellings after.
func (k *kind) words() []string { return wordsOf(k.all) }

// attrs lists the attributes of a kind: its own in the order of the table, then the shared.
func (k *kind) attrs() []*attr { return k.all }

// member finds a member of an object by its last word, or by a dotted one within it.
func (a *attr) member(word string) (*attr, bool) {
	if a.Free != nil {
		return &attr{Kind: a.Kind, Name: a.Name + "." + word, Value: "length", Forms: []form{*a.Free}, Unit: a.Unit, LeftOut: "none"}, true
	}
	head, rest, deeper := strings.Cut(word, ".")
	for _, m := range a.Members {
		if m.last() != head && !slices.Contains(m.Also, a.Name+"."+head) && !slices.Contains(m.Also, head) {
			continue
		}
		if deeper {
			return m.member(rest)
		}
		return m, true
	}
	return nil, false
}

// last is the name without the objects around it: of clamp.thread "thread".
func (a *attr) last() string { return a.Name[strings.LastIndexByte(a.Name, '.')+1:] }

func wordsOf(as []*attr) []string {
	var out, second []string
	for _, a := range as {
		out = append(out, a.last())
		for _, w := range a.Also {
			second = append(second, w[strings.LastIndexByte(w, '.')+1:])
		}
	}
	return append(out, second...)
}

// readTable reads the rows, hangs members below their objects, lends shared rows to the
// kinds that carry them, and works out which kind may stand where.
func readTable(rows string) (*table, error) {
	t := &table{byName: map[string]*kind{}}
	for n, line := range strings.Split(strings.TrimRight(rows, "\n"), "\n") {
		if n == 0 {
			continue // the heads of the columns
		}
		f := strings.Split(line, "\t")
		if len(f) != 9 {
			return nil, fmt.Errorf("line %d has %d columns and not 9", n+1, len(f))
		}
		if err := t.row(f); err != nil {
			return nil, fmt.Errorf("line %d: %w", n+1, err)
		}
	}
	if err := t.lend(); err != nil {
		return nil, err
	}
	return t, t.place()
}

var labelRules = map[string]labelRule{
	"":                      labelWanted, // things of a shop
	"block with a label":    labelWanted,
	"block, label optional": labelOptional,
	"block without a label": labelNone,
	"shared attributes":     sharedRows,
}

func (t *table) row(f []string) error {
	where, kindName, name, value := f[0], f[1], f[2], f[3]
	if name == "" {
		rule, ok := labelRules[value]
		if !ok {
			return fmt.Errorf("%q is no form of a block", value)
		}
		if kindName == "rules_of_thumb" {
			rule = labelNone
		}
		if strings.HasPrefix(kindName, "any_") {
			rule = sharedRows
		}
		if t.byName[kindName] != nil {
			return fmt.Errorf("%s stands twice", kindName)
		}
		k := &kind{Where: where, Name: kindName, Label: rule, Required: f[5] == "yes",
			LeftOut: f[6], Meaning: f[7], Also: commaWords(f[8]), byWord: map[string]*attr{}}
		t.kinds = append(t.kinds, k)
		t.byName[kindName] = k
		return nil
	}
	k := t.byName[kindName]
	if k == nil {
		return fmt.Errorf("%s.%s stands before its kind", kindName, name)
	}
	forms, err := readForms(value)
	if err != nil {
		return fmt.Errorf("%s.%s: %w", kindName, name, err)
	}
	a := &attr{Kind: kindName, Name: name, Value: value, Forms: forms, Unit: f[4],
		Required: f[5] == "yes", LeftOut: f[6], Meaning: f[7], Also: commaWords(f[8])}
	if g, ok := strings.CutPrefix(f[5], "one of "); ok {
		a.Group = g
	}
	switch head, dotted := upTo(name); {
	case name == "NAME" && kindName == "rules_of_thumb":
		// stands for the names of the limits, which have a row each
	case name == "NAME":
		k.free = a
	case dotted:
		o, ok := find(k.Attrs, head)
		if !ok {
			return fmt.Errorf("%s.%s stands before its object", kindName, name)
		}
		o.Members = append(o.Members, a)
	default:
		k.Attrs = append(k.Attrs, a)
	}
	return nil
}

// upTo gives what stands before the last full stop, and whether there is one.
func upTo(name string) (string, bool) {
	i := strings.LastIndexByte(name, '.')
	if i < 0 {
		return "", false
	}
	return name[:i], true
}

// find looks an attribute or member up by its full dotted name.
func find(as []*attr, name string) (*attr, bool) {
	for _, a := range as {
		if a.Name == name {
			return a, true
		}
		if strings.HasPrefix(name, a.Name+".") {
			return find(a.Members, name)
		}
	}
	return nil, false
}

func commaWords(s string) []string {
	var out []string
	for w := range strings.SplitSeq(s, ",") {
		if w = strings.TrimSpace(w); w != "" {
			out = append(out, w)
		}
	}
	return out
}
