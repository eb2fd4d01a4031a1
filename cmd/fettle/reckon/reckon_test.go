package reckon

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"fettle/schema/text"
)

// recipes are the demo shops, by their paths from the top of the checkout.
func recipes(t testing.TB) text.Archive {
	t.Helper()
	root := filepath.Join("..", "..", "..")
	out := text.Archive{}
	err := fs.WalkDir(os.DirFS(root), "recipes/shops", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".hcl") {
			return err
		}
		out[path], err = os.ReadFile(filepath.Join(root, path))
		return err
	})
	if err != nil || len(out) == 0 {
		t.Fatalf("%d files, %v", len(out), err)
	}
	return out
}

// ran gives what a question prints and its status.
func ran(t testing.TB, files text.Folder, args ...string) (page string, status int) {
	t.Helper()
	var b bytes.Buffer
	status, err := Run(args, files, &b)
	if err != nil {
		return err.Error(), status
	}
	return b.String(), status
}

// held says what is wrong with a page: a line of more than 80 columns, or a sign that does not
// print.
func held(page string) string {
	for line := range strings.Lines(page) {
		line = strings.TrimSuffix(line, "\n")
		if utf8.RuneCountInString(line) > wide {
			return "too wide: " + line
		}
		if strings.ContainsFunc(line, func(r rune) bool { return !unicode.IsPrint(r) }) {
			return "does not print: " + line
		}
	}
	return ""
}

// longestPage is how many lines a page has at most: what a printer puts on one sheet.
const longestPage = 66

// Every example of every subject is answered with yes, on one page, in both forms, the same
// each time.
func TestExamples(t *testing.T) {
	files := recipes(t)
	for _, s := range Subjects() {
		if len(s.Examples) < 2 {
			t.Errorf("%s has %d examples", s.Name, len(s.Examples))
		}
		for _, e := range s.Examples {
			args := append([]string{s.Name}, e...)
			page, status := ran(t, files, args...)
			if status != Answered {
				t.Errorf("%v ends with %d: %s", args, status, page)
				continue
			}
			if wrong := held(page); wrong != "" {
				t.Errorf("%v: %s", args, wrong)
			}
			if n := strings.Count(page, "\n"); n > longestPage {
				t.Errorf("%v has %d lines", args, n)
			}
			if again, _ := ran(t, files, args...); again != page {
				t.Errorf("%v is not the same twice", args)
			}
			d := asked(t, files, args...)
			if d.Answer != "yes" || len(d.Says) == 0 || len(d.Steps) == 0 || len(d.Sources) == 0 || len(d.Values) == 0 {
				t.Errorf("%v lacks something: %+v", args, d)
			}
			if first := fold(d.Says[0], wide)[0]; !strings.HasPrefix(page, first) {
				t.Errorf("%v does not begin with its answer: %q", args, page)
			}
		}
	}
}

// asked gives the JSON form of an answer, read strictly.
func asked(t testing.TB, files text.Folder, args ...string) document {
	t.Helper()
	page, status := ran(t, files, append(args, "--format", "json")...)
	if status == NotUnderstood {
		t.Fatalf("%v: %s", args, page)
	}
	var d document
	r := json.NewDecoder(strings.NewReader(page))
	r.DisallowUnknownFields()
	if err := r.Decode(&d); err != nil {
		t.Fatalf("%v: %v", args, err)
	}
	return d
}

// valued gives a figure of the JSON form by its name.
func (d document) valued(t testing.TB, name string) float64 {
	t.Helper()
	for _, v := range d.Values {
		if v.Name == name && v.Figure != nil {
			return *v.Figure
		}
	}
	t.Fatalf("%v has no figure %q: %+v", d.Asked, name, d.Values)
	return 0
}

// The list has each subject on a line of its own; usage pages keep to the width; names do not
// meet.
func TestSubjectsDeclared(t *testing.T) {
	page, _ := ran(t, text.Archive{})
	if help, status := ran(t, text.Archive{}, "--help"); help != page || status != Answered {
		t.Error("--help is not the list")
	}
	last := ""
	for _, s := range Subjects() {
		if s.Name <= last {
			t.Errorf("%s stands behind %s", s.Name, last)
		}
		last = s.Name
		if !slices.ContainsFunc(strings.Split(page, "\n"), func(l string) bool {
			return strings.HasPrefix(l, "  "+s.Name+" ") && strings.HasSuffix(l, "  "+s.Title)
		}) {
			t.Errorf("%s and its title have no line of their own", s.Name)
		}
		usage, status := ran(t, text.Archive{}, s.Name, "--help")
		if wrong := held(usage); wrong != "" || status != Answered {
			t.Errorf("%s --help: %s", s.Name, wrong)
		}
		names := map[string]bool{}
		for i, w := range append(append(slices.Clone(s.Words), s.Flags...), common...) {
			lo, hi := w.bounds()
			if names[w.Name] || w.Kind == 0 || w.Says == "" || w.isWord() != (i < len(s.Words)) || lo > hi || (w.Kind == OneOf) != (len(w.Of) > 0) {
				t.Errorf("%s: %q is not declared rightly", s.Name, w.Name)
			}
			names[w.Name] = true
			if w.Rest && (w.Kind != Text || i != len(s.Words)-1) {
				t.Errorf("%s: only the last word may take the rest, as a text", s.Name)
			}
		}
	}
	if wrong := held(page); wrong != "" {
		t.Error(wrong)
	}
}

// What is not understood is told in a sentence, word for word, and nothing is written.
func TestNotUnderstood(t *testing.T) {
	files := recipes(t)
	files["wrong/shop.hcl"] = []byte("shop \"x\" {\n")
	files["slips/shop.hcl"] = []byte("shop \"x\" {\n  units = \"mm\"\n}\ndrill \"d\" {\n  diameter = 5\n  colour = 3\n}\n")
	long := strings.Repeat("9", 1<<20)
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"fti"}, `there is no subject "fti"; fit is near`},
		{[]string{"\u202e"}, `there is no subject "\u202e"; there are `},
		{[]string{"--shop"}, `"--shop": name a subject first; there are `},
		{[]string{"fit"}, "fit wants SIZE: nominal size and pair, 12 H7/p6, or one class, 30 g6; over 0 to 500 mm (fettle reckon fit --help)"},
		{[]string{"fit", "12 H7", "--hoel", "3"}, `fit has no "--hoel"; --hole is near (fettle reckon fit --help)`},
		{[]string{"fit", "12 H7", "--colour", "3"}, `fit has no "--colour"; it has --hole, --shaft, --least-play, --most-play, --shop, --with, --units, --format, --all and --help (`},
		{[]string{"fit", "12 H7", "--SIZE", "3"}, `fit has no "--SIZE"; `},
		{[]string{"fit", "12 H7", "-hole", "3"}, `fit has no "-hole"; --hole is near`},
		{[]string{"fit", "12 H7", "--hole", "3", "--hole=4"}, "--hole is given twice"},
		{[]string{"fit", "12 H7", "--hole"}, "--hole wants a length from 0.001 to 600 mm, such as 12, 3/8 in or 5 thou behind it"},
		{[]string{"fit", "12 H7", "--hole", "--shaft", "3"}, "--hole wants a length from 0.001 to 600 mm, such as 12, 3/8 in or 5 thou behind it"},
		{[]string{"fit", "12 H7", "--hole", "x"}, `--hole wants a length from 0.001 to 600 mm, such as 12, 3/8 in or 5 thou; "x" is not a figure (`},
		{[]string{"fit", "12 H7", "--hole", "700"}, `--hole wants a length from 0.001 to 600 mm, such as 12, 3/8 in or 5 thou; "700" is outside that (`},
		{[]string{"fit", "12 H7", "--hole", "-0"}, `"-0": nought has no sign`},
		{[]string{"fit", "12 H7", "--hole", "-3"}, `"-3" is outside that`},
		{[]string{"fit", "12 H7", "--hole", "1e999999999"}, `"1e999999999": write the figure out, without a power of ten`},
		{[]string{"fit", "12 H7", "--hole", "NaN"}, `"NaN" is not a figure`},
		{[]string{"fit", "12 H7", "--hole", ""}, "--hole: a word with nothing in it was given"},
		{[]string{"fit", "12 H7", "--hole", long}, `--hole: "9999999999999999999999999999999999999..." has 1048576 bytes; a word has at most 2000`},
		{[]string{"fit", "12 H7", "--hole", "1.27"}, `--hole "1.27" is 1.27 mm, which cannot be meant for a size of 12 mm: from 10.8 to 13.2 mm is`},
		{[]string{"fit", "12 H7\x00"}, `"12 H7\x00" holds a sign that does not print`},
		{[]string{"fit", "12 H7\u202e"}, `"12 H7\u202e" holds a sign that does not print`},
		{[]string{"fit", "12 \xff"}, `is not readable as text`},
		{[]string{"fit", "12"}, `"12" names no class of ISO 286: write the size and the pair, as in 12 H7/p6, or one class, as in 30 g6`},
		{[]string{"fit", "12 h6/H7"}, `"h6/H7": the hole comes first, in capitals, then the shaft in small letters`},
		{[]string{"fit", "600 H7/p6"}, "tolerance classes are tabled for sizes over 0 up to 500 mm, not for 600 mm"},
		{[]string{"fit", "12 H7", "--units", "cm"}, `--units wants mm or in; "cm" is none of them`},
		{[]string{"fit", "12 H7", "--all=perhaps"}, `--all wants nothing behind it, or =yes or =no; "perhaps" is neither`},
		{[]string{"fit", "12 H7", "--with", "drill.jobbers"}, "--with picks among the things of a shop: say --shop too"},
		{[]string{"fit", "12 H7", "--shop", "nowhere"}, "there is no folder nowhere"},
		{[]string{"fit", "12 H7", "--shop", "-"}, "there is no folder ./-"},
		{[]string{"fit", "12 H7", "--shop", "wrong"}, "wrong/shop.hcl line "},
		{[]string{"fit", "12 H7", "--shop", "recipes/shops/bench", "--with", "drill.jobber"}, `the shop has no "drill.jobber"; drill.jobbers is near`},
		{append([]string{"fit"}, slices.Repeat([]string{"1"}, 300)...), "300 words are more than a question has; at most 200 are read"},
		{[]string{"thread", "M6", "--drills", "1..2"}, `"1..2" does not say its step, as in 1..10 by 0.1`},
		{[]string{"thread", "M6", "--drills", "1,,2"}, `"1,,2" has nothing between two commas or at an end`},
		{[]string{"thread", "M6", "--drills", "1..2 by 0"}, "a step is at least 0.001 mm"},
		{[]string{"thread", "M6", "--drills", strings.Repeat("1,", 1000)}, "more than 1000 are listed"},
		{[]string{"thread", "M6", "--lead", "secnd", "--depth", "5"}, `--lead has no "secnd"; second is near`},
		{[]string{"thread", "M6", "--lead", "second"}, "--lead is of the tap in a blind hole: say --depth too"},
		{[]string{"thread", "M6", "--material", "brss"}, `--material "brss" is not in the handbook; brass is near`},
		{[]string{"thread", "M6x5.5"}, `"M6x5.5": a pitch of 5.5 mm leaves no core in a diameter of 6 mm`},
		{[]string{"thread", "M7.3"}, `"M7.3" is not in the tables: write its diameter and pitch`},
	} {
		var b bytes.Buffer
		status, err := Run(c.args, files, &b)
		if status != NotUnderstood || err == nil || b.Len() > 0 {
			t.Errorf("%.60q: status %d, %v, %d bytes written", c.args, status, err, b.Len())
			continue
		}
		if !strings.Contains(err.Error(), c.says) {
			t.Errorf("%.60q:\n says %s\n want %s", c.args, err, c.says)
		}
	}
	if page, status := ran(t, files, "fit", "12 H7", "--shop", "slips"); status != Answered || !strings.Contains(page, "Note: One slip of writing in the files of slips: ") {
		t.Errorf("slips of the shop: %d\n%s", status, page)
	}
}

// Flags may stand anywhere, with an equals sign or without; "--" ends them; a flag may be
// denied.
func TestOrderOfWords(t *testing.T) {
	files := recipes(t)
	want, _ := ran(t, files, "fit", "12 H7/g6", "--hole", "12.008", "--all")
	for _, args := range [][]string{
		{"fit", "--hole=12.008", "--all=yes", "12", "H7/g6"},
		{"fit", "--all", "--hole", "12.008", "--", "12", "H7/g6"},
		{"fit", "12", "--hole", "12.008", "H7/g6", "--all=no"},
	} {
		if got, status := ran(t, files, args...); got != want || status != Answered {
			t.Errorf("%v: %d\n%s", args, status, got)
		}
	}
}

// Whatever the words are, a subject answers in a page or a sentence: no panic, no line that is
// too wide, nothing that does not print, and nothing written where it was not understood.
func FuzzWords(f *testing.F) {
	for i, s := range Subjects() {
		for _, e := range s.Examples {
			f.Add(uint8(i), strings.Join(e, "|"))
		}
		for _, w := range []string{"", "-", "--", "-0", "1e999999999", "\u202e", "\x00", "\xff", "1/0", "0", "--all=|x", "--help", "--shop=recipes/shops/bench|12",
			"--format=json|1|--with=a", "9999999999999999999999", "-5|--units=in", "M6|--drills=1..200 by 0.001|--all", "0.001 H7|--hole=0.4"} {
			f.Add(uint8(i), w)
		}
	}
	files := recipes(f)
	f.Fuzz(func(t *testing.T, n uint8, line string) {
		s := Subjects()[int(n)%len(subjects)]
		args := append([]string{s.Name}, strings.Split(line, "|")...)
		var b bytes.Buffer
		status, err := Run(args, files, &b)
		switch {
		case (status == NotUnderstood) != (err != nil), status < Answered, status > NotUnderstood:
			t.Fatalf("%q: status %d, %v", args, status, err)
		case err != nil && (b.Len() > 0 || !utf8.ValidString(err.Error()) || len(err.Error()) > 2000):
			t.Fatalf("%q: %d bytes written, %v", args, b.Len(), err)
		}
		if page := b.String(); !strings.HasPrefix(page, "{") {
			if wrong := held(page); wrong != "" {
				t.Fatalf("%q: %s", args, wrong)
			}
		}
	})
}
