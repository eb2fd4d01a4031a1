package schema

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/schema/text"
)

// FuzzLoad reads any text as a recipe beside a small shop: never a crash, never a long wait,
// every finding whole and at a place that is in the file, and the same twice.
func FuzzLoad(f *testing.F) {
	var shop []byte
	files, _ := filepath.Glob("../testdata/language/reading/*.txtar")
	for _, glob := range []string{"../testdata/language/*.txtar", "../testdata/hostile/*.txtar", "../testdata/rules/*.txtar"} {
		more, _ := filepath.Glob(glob)
		if len(more) == 0 {
			f.Fatal("no seeds in " + glob)
		}
		files = append(files, more...)
	}
	for _, name := range files {
		src, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		for _, file := range txtar.Parse(src).Files {
			if shop == nil && strings.Contains(file.Name, "shop") {
				shop = file.Data
			}
			f.Add(string(file.Data))
			if strings.Contains(name, "rules") || strings.Contains(name, "hostile") {
				continue // whole files are enough: there are many
			}
			for _, block := range topBlocks(string(file.Data)) {
				f.Add(block)
			}
		}
	}
	f.Fuzz(func(t *testing.T, src string) {
		if len(src) > 10_000 {
			return
		}
		folder := text.Archive{"r/a.hcl": []byte(src), "s/a.hcl": shop}
		if !strings.Contains(src, "recipe") {
			folder["r/head.hcl"] = []byte("recipe \"fuzz\" {\n  units = \"mm\"\n}\n")
		}
		start := time.Now()
		b, finds, err := Load(folder, "r", "s")
		if took := time.Since(start); took > 5*time.Second {
			t.Errorf("took %v", took)
		}
		if err != nil {
			return
		}
		for _, x := range finds {
			slipLevel(x.Rule)
			if x.Says == "" || x.Cause == "" || x.Place.File == "" {
				t.Errorf("half a finding: %+v", x)
			}
			if n := len(b.Sources.Bytes(x.Place.File)); x.Place.From < 0 || x.Place.From > x.Place.To || x.Place.To > n {
				t.Errorf("%s at %d to %d of %d bytes", x.Rule, x.Place.From, x.Place.To, n)
			}
		}
		_, again, _ := Load(folder, "r", "s")
		if got, want := strings.Join(sayings(again), "\n"), strings.Join(sayings(finds), "\n"); got != want {
			t.Errorf("the second reading says\n%s\nthe first\n%s", got, want)
		}
	})
}
