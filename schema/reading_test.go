package schema

import (
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/schema/mark"
	"fettle/schema/text"
)

var renew = flag.Bool("renew", false, "write the marks of the reading cases anew; read the difference")

// Each file of testdata/language/reading is several cases: a folder named after the case is
// its recipe, and the folder "shop", where there is one, the shop of them all. Marks under
// the lines say what must be found, word for word and at that place; nothing else may be.
func TestReading(t *testing.T) {
	files, err := filepath.Glob("../testdata/language/reading/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, name := range files {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			src, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			a := txtar.Parse(src)
			readCases(t, a)
			if *renew {
				if err := os.WriteFile(name, txtar.Format(a), 0o644); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
}

func readCases(t *testing.T, a *txtar.Archive) {
	folder := text.Archive{}
	want := map[string][]mark.Mark{}
	var cases []string
	for _, f := range a.Files {
		clean, marks, err := mark.Read(f.Name, f.Data)
		if err != nil {
			t.Fatal(err)
		}
		folder[f.Name] = clean
		dir, _, _ := strings.Cut(f.Name, "/")
		want[dir] = append(want[dir], marks...)
		if dir != "shop" && !slices.Contains(cases, dir) {
			cases = append(cases, dir)
		}
	}
	shop := NoShop
	if slices.ContainsFunc(a.Files, func(f txtar.File) bool { return strings.HasPrefix(f.Name, "shop/") }) {
		shop = "shop"
	}
	found := map[string][]mark.Mark{}
	for _, c := range cases {
		t.Run(c, func(t *testing.T) {
			b, finds, err := Load(folder, c, shop)
			if err != nil {
				t.Fatal(err)
			}
			got := mark.Of(b.Sources, finds)
			for _, m := range got {
				found[m.File] = append(found[m.File], m)
			}
			if *renew {
				return
			}
			for _, line := range mark.Compare(append(slices.Clone(want[c]), want["shop"]...), got) {
				t.Error(line)
			}
			for _, f := range finds {
				slipLevel(f.Rule) // every finding of the reading is a slip that can be explained
			}
		})
	}
	if *renew {
		for i := range a.Files {
			f := &a.Files[i]
			ms := found[f.Name]
			slices.SortFunc(ms, func(a, b mark.Mark) int { return strings.Compare(a.String(), b.String()) })
			f.Data = mark.Write(folder[f.Name], slices.Compact(ms))
		}
	}
}
