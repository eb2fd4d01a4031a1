package choose_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

func folders(tb testing.TB, globs ...string) text.Archive {
	a := text.Archive{}
	root := "../../"
	for _, g := range globs {
		fs, err := filepath.Glob(root + g)
		if err != nil || len(fs) == 0 {
			tb.Fatal("no files", g, err)
		}
		for _, f := range fs {
			b, err := os.ReadFile(f)
			if err != nil {
				tb.Fatal(err)
			}
			a[filepath.ToSlash(strings.TrimPrefix(f, root))] = b
		}
	}
	return a
}

// BenchmarkCheck is a whole check of the demo recipe: read, choose, judge.
func BenchmarkCheck(b *testing.B) {
	files := folders(b, "recipes/first/*.hcl", "recipes/shops/bench/*.hcl")
	for b.Loop() {
		build, _, err := schema.Load(files, "recipes/first")
		if err != nil {
			b.Fatal(err)
		}
		t, vs, _ := choose.Choose(build, choose.Effort)
		rules.Judge(t, vs, "")
	}
}

// BenchmarkLoad is the reading alone.
func BenchmarkLoad(b *testing.B) {
	files := folders(b, "recipes/first/*.hcl", "recipes/shops/bench/*.hcl")
	for b.Loop() {
		if _, _, err := schema.Load(files, "recipes/first"); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPlate is a whole check of one part of so many drilled holes: growth within a part.
func BenchmarkPlate(b *testing.B) {
	for _, n := range []int{100, 200, 400, 800, 1600} {
		files := withClub(b, plate(n))
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				build, _, err := schema.Load(files, "r", "recipes/shops/club")
				if err != nil {
					b.Fatal(err)
				}
				t, vs, _ := choose.Choose(build, choose.Effort)
				rules.Judge(t, vs, "")
			}
		})
	}
}
