package choose_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// FuzzCheck plays whatever reads as a recipe: nothing that a person can type may stop the
// check by a fault of its own. Seeds are the demo recipe, every example of the catalogue,
// every case of the rules and all of the hostile table.
func FuzzCheck(f *testing.F) {
	for _, g := range []string{"../../recipes/*/*.hcl", "../../testdata/recipes/*/*.hcl"} {
		names, _ := filepath.Glob(g)
		for _, n := range names {
			b, err := os.ReadFile(n)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(string(b))
		}
	}
	for _, r := range rules.Catalogue() {
		f.Add(r.Trips)
		f.Add(r.Sound)
	}
	archives, _ := filepath.Glob("../../testdata/rules/*.txtar")
	more, _ := filepath.Glob("../../testdata/hostile/*.txtar")
	if len(more) == 0 {
		f.Fatal("no hostile seeds")
	}
	for _, n := range append(archives, more...) {
		ar, err := txtar.ParseFile(n)
		if err != nil {
			f.Fatal(err)
		}
		for _, file := range ar.Files {
			f.Add(string(file.Data))
		}
	}
	f.Fuzz(func(t *testing.T, recipe string) {
		if len(recipe) > 20_000 {
			return
		}
		b, _, err := schema.Load(text.Archive{"r/a.hcl": []byte(recipe), "s/a.hcl": []byte(rules.ExampleShop)}, "r", "s")
		if err != nil || b.Unread {
			return
		}
		tr, vs, _ := choose.Choose(b, 300)
		for _, fd := range rules.Judge(tr, vs, "2026-11-25").Findings {
			if fd.Rule == rules.Fault {
				t.Fatal(fd.Says)
			}
			if fd.Level == 0 || fd.Judgement == 0 || fd.Says == "" {
				t.Fatalf("half a finding: %+v", fd)
			}
		}
	})
}
