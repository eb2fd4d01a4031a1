package schema

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"fettle/schema/finding"
	"fettle/schema/text"
)

// oddPlace is one attribute of a kind of block, or a member of one, and how a file is written in
// which it stands.
type oddPlace struct {
	path  string // "hole.counterbore.depth"
	attr  *attr
	kind  *kind
	write func(value string) text.Archive
}

// oddPlaces lists them all.
func oddPlaces() (out []oddPlace) {
	for _, k := range theTable().kinds {
		if k.Label == sharedRows {
			continue
		}
		var add func(a *attr, before, after string)
		add = func(a *attr, before, after string) {
			if a.last() == "NAME" {
				return
			}
			out = append(out, oddPlace{k.Name + "." + a.Name, a, k, func(value string) text.Archive {
				return oddFile(k, before+a.last()+" = "+value+"\n"+after)
			}})
			for _, m := range a.Members {
				add(m, before+a.last()+" = {\n", "}\n"+after)
			}
		}
		for _, a := range k.all {
			if !strings.Contains(a.Name, ".") {
				add(a, "", "")
			}
		}
	}
	return out
}

// oddFile writes a block of a kind where it may stand, with something in it.
func oddFile(k *kind, within string) text.Archive {
	block := k.Name
	if k.Label != labelNone {
		block += ` "x"`
	}
	block += " {\n" + within + "}\n"
	r, s := "recipe \"r\" {\n  units = \"mm\"\n}\n", "shop \"s\" {\n  units = \"mm\"\n}\n"
	switch k.Where {
	case "header":
		if k.Name == "shop" {
			s = block
		} else {
			r = block
		}
	case "shop":
		s += block
	case "build":
		if k.Name == "place" {
			block = "assembly \"a\" {\n" + block + "}\n"
		}
		r += block
	case "feature", "setup":
		r += "part \"p\" {\nlength = 50\nwidth = 30\nheight = 20\n" + block + "}\n"
	case "step":
		r += "part \"p\" {\nlength = 50\nwidth = 30\nheight = 20\nsetup \"x\" {\n" + block + "}\n}\n"
	case "part":
		if k.Name == "blank" {
			r += "part \"p\" {\nlength = 50\nwidth = 30\nheight = 20\n" + block + "}\n"
		} else {
			r += block
		}
	default:
		r += block
	}
	return text.Archive{"r/a.hcl": []byte(r), "s/a.hcl": []byte(s)}
}

// oddValues are what a person or a program might write anywhere.
var oddValues = []string{"0", "-1", "1e300", "1e-300", `"NaN"`, `""`, "[]"}

// oddFindings reads a block in which an attribute has a value, and gives what is found at that
// value.
func oddFindings(t *testing.T, p oddPlace, value string) (at []finding.Finding) {
	t.Helper()
	files := p.write(value)
	_, finds, err := Load(files, "r", "s")
	if err != nil {
		t.Fatal(p.path, err)
	}
	for _, f := range finds {
		from := strings.LastIndex(string(files[f.Place.File]), p.attr.last()+" = "+value+"\n") + len(p.attr.last()+" = ")
		if f.Place.From >= from && f.Place.From <= from+len(value) {
			at = append(at, f)
		}
	}
	return at
}

// mayStand says whether a value that is no figure, or a figure beyond all reason, may stand for an
// attribute, as its forms in the table have it.
func mayStand(a *attr, shopBlock bool, value string) bool {
	forms := slices.Clone(a.Forms)
	list := false
	for _, x := range a.Forms {
		if x.Kind == formList {
			list = true
			forms = append(append(forms, *x.Of), x.Others...)
		}
	}
	takes := func(kinds ...formKind) bool {
		return slices.ContainsFunc(forms, func(x form) bool { return slices.Contains(kinds, x.Kind) })
	}
	switch value {
	case `"NaN"`:
		return takes(formText, formMaterial)
	case `""`:
		return a.Name == "note"
	case "[]": // of what a shop has: none of it
		return list && shopBlock && !slices.ContainsFunc(a.Forms, func(x form) bool {
			return x.Kind == formList && (x.Of.Kind == formLength || x.Of.Kind == formNumber)
		})
	}
	return false // 1e300, 1e-300
}

const oddTable = "../testdata/language/nought.tsv"

// Every attribute of every kind of block, given nought, a figure below it, figures beyond all
// reason, a text that is none, an empty text and an empty list: each is told of in one sentence
// at its place, or may stand. Which attributes take 0 and -1 is listed in nought.tsv beside
// the contract: a person has read it.
func TestOddValues(t *testing.T) {
	taken := map[string]map[string][]string{"0": {}, "-1": {}}
	n := 0
	for _, p := range oddPlaces() {
		for _, v := range oddValues {
			n++
			at := oddFindings(t, p, v)
			switch {
			case len(at) > 1:
				t.Errorf("%s = %s is told of %d times: %s; %s", p.path, v, len(at), at[0].Says, at[1].Says)
			case len(at) == 1:
				goodSentence(t, p, v, at[0])
			case v == "0" || v == "-1":
				taken[v][p.attr.Name] = append(taken[v][p.attr.Name], p.kind.Name)
			case !mayStand(p.attr, p.kind.Where == "shop", v):
				t.Errorf("%s = %s is taken without a word", p.path, v)
			}
		}
	}
	t.Log(n, "values")
	var b strings.Builder
	b.WriteString("# Attributes by name, that take 0, and those that take -1: all others tell of it. (go test ./schema -run OddValues -renew)\n")
	for _, v := range []string{"0", "-1"} {
		for _, name := range slices.Sorted(maps.Keys(taken[v])) {
			fmt.Fprintf(&b, "%s\t%s\t%s\n", v, name, strings.Join(taken[v][name], " "))
		}
	}
	if *renew {
		if err := os.WriteFile(oddTable, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(oddTable)
	if err != nil {
		t.Fatal(err)
	}
	was := strings.Split(string(want), "\n")
	for _, l := range strings.Split(b.String(), "\n") {
		if !slices.Contains(was, l) {
			t.Errorf("taken without a word, and not listed: %s", l)
		}
	}
	is := strings.Split(b.String(), "\n")
	for _, l := range was {
		if !slices.Contains(is, l) {
			t.Errorf("listed, and told of: %s", l)
		}
	}
}

// goodSentence holds what every sentence about a value keeps to: short, printing, it names the
// attribute or shows the value, and says nothing twice.
func goodSentence(t *testing.T, p oddPlace, value string, f finding.Finding) {
	t.Helper()
	says := f.Says
	switch {
	case f.Rule == "" || f.Level == 0 || f.Judgement == 0:
		t.Errorf("%s = %s: half a finding: %+v", p.path, value, f)
	case !strings.Contains(says, p.attr.last()) && !strings.Contains(says, value) && !strings.Contains(says, "reckoned with"):
		t.Errorf("%s = %s: the sentence names neither attribute nor value: %s", p.path, value, says)
	case len(says) > 420, strings.Contains(says, "  "), strings.Contains(says, "%!"), strings.HasSuffix(says, "."), strings.HasSuffix(says, "; "):
		t.Errorf("%s = %s: no good sentence: %s", p.path, value, says)
	case strings.Count(says, `"NaN"`) > 1:
		t.Errorf("%s = %s: says it twice: %s", p.path, value, says)
	}
}

// A list of ten thousand members, for one attribute of each form that the table has, is told of
// once at most and holds nothing up.
func TestOddLists(t *testing.T) {
	seen := map[string]bool{}
	long := "[" + strings.Repeat("1, ", 9999) + "1]"
	for _, p := range oddPlaces() {
		if seen[p.attr.Value] {
			continue
		}
		seen[p.attr.Value] = true
		if at := oddFindings(t, p, long); len(at) > 1 {
			t.Errorf("%s (%s) is told of %d times: %s; %s", p.path, p.attr.Value, len(at), at[0].Says, at[1].Says)
		}
	}
	if len(seen) < 60 {
		t.Errorf("only %d forms", len(seen))
	}
}
