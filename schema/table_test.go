package schema

import (
	"os"
	"slices"
	"strings"
	"testing"
)

func tableRows(t *testing.T) [][]string {
	t.Helper()
	var out [][]string
	for _, line := range strings.Split(strings.TrimRight(kindRows, "\n"), "\n")[1:] {
		out = append(out, strings.Split(line, "\t"))
	}
	return out
}

// Every row of the table is read into exactly one kind or attribute, with no word of its
// value left over.
func TestEveryRowIsRead(t *testing.T) {
	tab := theTable()
	for n, f := range tableRows(t) {
		k := tab.byName[f[1]]
		if k == nil {
			t.Errorf("line %d: kind %s is not read", n+2, f[1])
			continue
		}
		switch f[2] {
		case "":
			if k.Where != f[0] || k.Meaning != f[7] {
				t.Errorf("line %d: %s is not read as written", n+2, f[1])
			}
		case "NAME":
			if f[1] != "rules_of_thumb" && k.free == nil {
				t.Errorf("%s takes no words of its own", f[1])
			}
		default:
			a, ok := find(k.Attrs, f[2])
			if !ok || a.Value != f[3] || a.Unit != f[4] || a.LeftOut != f[6] || len(a.Forms) == 0 {
				t.Errorf("line %d: %s.%s is not read as written", n+2, f[1], f[2])
				continue
			}
			if got := map[bool]string{true: "yes", false: "no"}[a.Required]; a.Group == "" && got != f[5] || a.Group != "" && f[5] != "one of "+a.Group {
				t.Errorf("line %d: %s.%s: whether it must be there is not read", n+2, f[1], f[2])
			}
		}
	}
}

// The table is the contract, byte for byte: to change it is to change the copy too, on purpose.
func TestTableIsTheContract(t *testing.T) {
	want, err := os.ReadFile("../testdata/language/contract/kinds.tsv")
	if err != nil {
		t.Fatal(err)
	}
	if kindRows != string(want) {
		t.Error("kinds.tsv is not the contract's")
	}
}

// Every kind that a reference may point to is a kind, or a family of them.
func TestReferencesPointToKinds(t *testing.T) {
	families := []string{"shop item", "cutter", "instrument", "feature", "face"}
	var check func(kind string, a *attr, f form)
	check = func(kind string, a *attr, f form) {
		for _, w := range f.RefKinds {
			if !slices.Contains(families, w) && theTable().byName[w] == nil {
				t.Errorf("%s.%s refers to %q", kind, a.Name, w)
			}
		}
		if f.Of != nil {
			check(kind, a, *f.Of)
		}
	}
	for _, k := range theTable().kinds {
		for _, a := range attrsDeep(k.Attrs) {
			for _, f := range a.Forms {
				check(k.Name, a, f)
			}
		}
	}
}

func attrsDeep(as []*attr) []*attr {
	var out []*attr
	for _, a := range as {
		out = append(append(out, a), attrsDeep(a.Members)...)
	}
	return out
}

func TestReadForms(t *testing.T) {
	ref := func(kinds ...string) form { return form{Kind: formRef, RefKinds: kinds} }
	list := func(f form) form { return form{Kind: formList, Of: &f} }
	words := func(w ...string) form { return form{Kind: formWord, OneOf: w} }
	plain := func(k formKind) form { return form{Kind: k} }
	for value, want := range map[string][]form{
		"length or object":            {plain(formLength), plain(formObject)},
		"text or reference to face":   {plain(formText), ref("face")},
		`length, "through" or object`: {plain(formLength), words("through"), plain(formObject)},
		`reference to shop item, list or one of "centres" "hand"`: {
			ref("shop item"), list(ref("shop item")), words("centres", "hand")},
		"number, list of angle or object":                     {plain(formNumber), list(plain(formAngle)), plain(formObject)},
		"place or places":                                     {plain(formPlace), list(plain(formPlace))},
		"reference to face or list of reference to face":      {ref("face"), list(ref("face"))},
		"list of reference to part or setup":                  {list(ref("part", "setup"))},
		"thread or taper or one of \"bolted\" \"camlock\"":    {plain(formThread), plain(formTaper), words("bolted", "camlock")},
		`list of "length" "width"`:                            {list(words("length", "width"))},
		"one of 0 90 180 270":                                 {{Kind: formFigure, OneOf: []string{"0", "90", "180", "270"}}},
		"yes/no or reference to shop item":                    {plain(formYesNo), ref("shop item")},
		`object or "kept"`:                                    {plain(formObject), words("kept")},
		`one of "hand under the spindle" "hand"`:              {words("hand under the spindle", "hand")},
		"reference or list of reference":                      {ref(), list(ref())},
		"dimension, angle, number, whole, text or expression": {plain(formDimension), plain(formAngle), plain(formNumber), plain(formWhole), plain(formText), plain(formExpression)},
		`list of one of "taper" "spiral point" or number`: {
			{Kind: formList, Of: &form{Kind: formWord, OneOf: []string{"taper", "spiral point"}}, Others: []form{plain(formNumber)}}},
	} {
		got, err := readForms(value)
		if err != nil || !slices.EqualFunc(got, want, form.same) {
			t.Errorf("%s: %+v, %v; want %+v", value, got, err, want)
		}
	}
	for _, value := range []string{"", "lenght", "list", "list of", "one of", "length length", "length or", `one of "a`, `""`} {
		if got, err := readForms(value); err == nil {
			t.Errorf("%q is read as %+v", value, got)
		}
	}
}

func TestReadTableRefuses(t *testing.T) {
	const heads = "heads of columns\n"
	row := func(f ...string) string { return strings.Join(f, "\t") + "\n" }
	for why, rows := range map[string]string{
		"a column short":            row("shop", "vise", "", "", "", "no", "none", "Vise"),
		"a kind twice":              row("shop", "vise", "", "", "", "no", "none", "Vise", "") + row("shop", "vise", "", "", "", "no", "none", "Vise", ""),
		"an attribute without kind": row("shop", "vise", "jaw_width", "length", "mm", "no", "not known", "", ""),
		"an unknown form":           row("shop", "vise", "", "", "", "no", "none", "", "") + row("shop", "vise", "jaw_width", "breadth", "mm", "no", "", "", ""),
		"a member without object":   row("shop", "vise", "", "", "", "no", "none", "", "") + row("shop", "vise", "jaw.width", "length", "mm", "no", "", "", ""),
		"an unknown form of block":  row("shop", "vise", "", "heap", "", "no", "none", "", ""),
	} {
		if _, err := readTable(heads + rows); err == nil {
			t.Errorf("%s is read", why)
		}
	}
}

// Second spellings lead to the same row, and what is typed otherwise is no word.
func TestSecondSpellings(t *testing.T) {
	for n, f := range tableRows(t) {
		for _, w := range commaWords(f[8]) {
			if f[2] == "" {
				k, parents, ok := kindAnywhere(w)
				if !ok || k.Name != f[1] || len(parents) == 0 {
					t.Errorf("line %d: %s is not read as %s", n+2, w, f[1])
				}
				continue
			}
			if head, member := upTo(f[2]); member && !strings.Contains(w, ".") {
				w = head + "." + w
			}
			if a, ok := theTable().byName[f[1]].attr(w); !ok || a.Name != f[2] {
				t.Errorf("line %d: %s.%s is not read as %s", n+2, f[1], w, f[2])
			}
		}
	}
	for word, want := range map[string]string{
		"vice": "vise", "center": "centre", "calliper": "caliper", "gauge_blocks": "slip_gauges",
		"lathe_dog": "carrier", "set_up": "setup", "spigot": "outside",
	} {
		if k, _, ok := kindAnywhere(word); !ok || k.Name != want {
			t.Errorf("%s is not read as %s", word, want)
		}
	}
	for _, never := range []string{"grub_screw", "silver_steel", "bit", "visor"} {
		if k, _, ok := kindAnywhere(never); ok {
			t.Errorf("%s is read as %s", never, k.Name)
		}
	}
}

func TestAttributesOfKinds(t *testing.T) {
	for _, c := range []struct{ kind, word, from, name string }{
		{"vise", "jaw_width", "vise", "jaw_width"},
		{"vise", "quantity", "any_item", "quantity"},
		{"drill", "diameter", "drill", "diameter"}, // its own row wins
		{"drill", "flutes", "any_cutter", "teeth"}, // second spelling
		{"drill", "overall_length", "any_cutter", "overall"},
		{"gear_cutter", "flutes", "gear_cutter", "flutes"}, // except here
		{"gear_cutter", "teeth", "gear_cutter", "teeth"},
		{"arbor", "clamp.thread", "arbor", "clamp.thread"},
		{"dividing_head", "footstock.center_height", "dividing_head", "footstock.centre_height"},
		{"dividing_head", "tailstock.center_height", "dividing_head", "footstock.centre_height"},
		{"mill", "dials.x.division", "mill", "dials.x.division"},
		{"hole", "finish", "any_feature", "finish"},
		{"hole", "bolt_circle", "", ""}, // only within around
		{"hole", "around.bolt_circle", "any_feature", "around.pcd"},
		{"setup", "jaws", "vise_setup", "jaws"},
		{"setup", "stick_out", "turned_setup", "stick_out"},
		{"setup", "zero.by", "any_setup", "zero.by"},
		{"square_up", "jaws", "", ""},
		{"square_up", "leaves.top", "square_up", "leaves.top"},
		{"shift", "clamps.tip", "shift", "clamps.tip"},
		{"file", "teeth", "", ""}, // a file is no cutter of a machine
		{"given", "wall", "given", "wall"},
		{"rules_of_thumb", "room", "rules_of_thumb", "room"},
		{"rules_of_thumb", "rooom", "", ""},
		{"recipe", "general..xx", "recipe", "general..xx"},
		{"graduations", "lines.5", "graduations", "lines.5"},
	} {
		a, ok := theTable().byName[c.kind].attr(c.word)
		if ok != (c.name != "") || ok && (a.Kind != c.from || a.Name != c.name) {
			t.Errorf("%s.%s: %+v, %v", c.kind, c.word, a, ok)
		}
	}
}

// An attribute of a set-up that two holdings share takes what either takes, and a member
// that only one of them asks for is not asked for.
func TestSharedBetweenHoldings(t *testing.T) {
	setup := theTable().byName["setup"]
	soft, _ := setup.attr("soft")
	if !anyForm(soft, func(f form) bool { return f.Kind == formRef }) || !anyForm(soft, func(f form) bool { return f.Kind == formObject }) {
		t.Errorf("soft takes %+v", soft.Forms)
	}
	for _, m := range []string{"step", "bored", "depth"} {
		if a, ok := soft.member(m); !ok || a.Required {
			t.Errorf("soft.%s: %+v", m, a)
		}
	}
	if by, ok := setup.attr("support.by"); !ok || !by.Required {
		t.Errorf("support.by: %+v", by)
	}
}

func TestWhereKindsStand(t *testing.T) {
	for _, c := range []struct {
		parent, word string
		ok           bool
	}{
		{"recipe", "recipe", true}, {"recipe", "shop", false}, {"shop", "shop", true}, {"shop", "recipe", false},
		{"recipe", "vise", true}, {"shop", "vise", true}, {"part", "vise", false},
		{"recipe", "part", true}, {"shop", "part", false}, {"part", "hole", true}, {"recipe", "hole", false},
		{"assembly", "setup", true}, {"assembly", "square_up", false}, {"assembly", "place", true}, {"recipe", "place", false},
		{"setup", "operation", true}, {"bench", "measure", true}, {"square_up", "operation", false}, {"part", "operation", false},
		{"recipe", "made", true}, {"shop", "made", false}, {"shop", "house_rule", true}, {"shop", "rules_of_thumb", true},
		{"recipe", "rules_of_thumb", true}, {"shop", "any_item", false}, {"part", "any_feature", false},
	} {
		if _, ok := kindNamed(c.parent, c.word); ok != c.ok {
			t.Errorf("%s in %s: %v", c.word, c.parent, ok)
		}
	}
}

func TestNear(t *testing.T) {
	kinds := kindWords("shop")
	attrs := theTable().byName["vise"].words()
	for _, c := range []struct {
		word  string
		known []string
		want  string
	}{
		{"smal", []string{"big", "small", "smart"}, "small"},
		{"jaw_widht", attrs, "jaw_width"},
		{"jaw-width", attrs, "jaw_width"},
		{"JawWidth", attrs, "jaw_width"},
		{"micrometre", kinds, "micrometer"},
		{"vize", kinds, "vise"},
		{"slitting_swa", kinds, "slitting_saw"},
		{"slitingsaw", kinds, "slitting_saw"},
		{"zebra", kinds, ""},
		{"", kinds, ""},
		{strings.Repeat("x", 1<<20), kinds, ""},
		{"a", []string{"b"}, ""},
		{"m6", []string{"m5", "m8"}, "m5"}, // as near: the first
		{"small", nil, ""},
	} {
		if got := near(c.word, c.known); got != c.want {
			t.Errorf("near %.20q: %q, want %q", c.word, got, c.want)
		}
	}
}

func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		n    int
	}{
		{"", "", 0}, {"vise", "vise", 0}, {"vise", "vice", 1}, {"ivse", "vise", 1}, {"vise", "", 4}, {"saw", "saws", 1}, {"drlil", "drill", 1},
	} {
		if got := slips([]rune(c.a), []rune(c.b), 10); got != c.n {
			t.Errorf("%s to %s: %d slips, want %d", c.a, c.b, got, c.n)
		}
		if got := slips([]rune(c.b), []rune(c.a), 10); got != c.n {
			t.Errorf("%s to %s: %d slips, want %d", c.b, c.a, got, c.n)
		}
	}
}

func TestReferencesTake(t *testing.T) {
	for _, c := range []struct {
		attr, kind string
		ok         bool
	}{
		{"setup.hold", "vise", true}, {"setup.hold", "hole", false}, {"setup.tool", "slitting_saw", true}, {"setup.tool", "vise", false},
		{"hole.into", "outside", true}, {"hole.meets", "slot", true}, {"hole.meets", "vise", false},
		{"setup.set_by", "square", true}, {"setup.set_by", "dial_indicator", true}, {"setup.set_by", "drill", false},
		{"operation.tool", "drill", true}, {"blank.stock", "stock", true}, {"blank.stock", "drill", false},
	} {
		kindName, name, _ := strings.Cut(c.attr, ".")
		a, _ := theTable().byName[kindName].attr(name)
		if ok := anyForm(a, func(f form) bool { return f.takes(theTable().byName[c.kind]) }); ok != c.ok {
			t.Errorf("%s takes %s: %v", c.attr, c.kind, ok)
		}
	}
}

func BenchmarkReadTable(b *testing.B) {
	for b.Loop() {
		if _, err := readTable(kindRows); err != nil {
			b.Fatal(err)
		}
	}
}
