package choose_test

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

func withClub(tb testing.TB, files text.Archive) text.Archive {
	all := folders(tb, "recipes/shops/club/*.hcl")
	maps.Copy(all, files)
	return all
}

// Generated recipes read without a slip, and every operation of theirs is made on paper.
func TestGeneratedRecipesRead(t *testing.T) {
	for seed := range int64(2) {
		files, n := generated(seed, 32)
		b, slips, err := schema.Load(withClub(t, files), "r", "recipes/shops/club")
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range slips {
			t.Errorf("%s: %s", s.Place.File, s.Says)
		}
		tr, vs, _ := choose.Choose(b, choose.Effort)
		res := rules.Judge(tr, vs, "")
		for _, u := range res.Unplayed {
			t.Errorf("%v: %s", u.Spot, u.Why)
		}
		made := 0
		for _, p := range tr.Parts {
			for _, m := range p.Moments {
				if m.Cut != nil || m.Turn != nil {
					made++
				}
			}
		}
		if made != n {
			t.Errorf("seed %d: %d operations are made on paper, %d were written", seed, made, n)
		}
		if testing.Verbose() {
			for _, f := range res.Findings {
				t.Log(f.Rule, f.Spots, f.Says)
			}
			t.Log(n, tr.Moments)
		}
	}
}

// BenchmarkScale is a whole check of generated recipes of so many operations.
func BenchmarkScale(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10_000} {
		files, _ := generated(1, n)
		files = withClub(b, files)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.SetBytes(int64(bytesOf(files, "r/")))
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

// BenchmarkBareParse reads the same bytes with the parser alone: what a check is held against.
func BenchmarkBareParse(b *testing.B) {
	for _, n := range []int{10, 1000} {
		files, _ := generated(1, n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.SetBytes(int64(bytesOf(files, "r/")))
			for b.Loop() {
				for name, text := range files {
					hclsyntax.ParseConfig(text, name, hcl.InitialPos)
				}
			}
		})
	}
}

// BenchmarkFirst is a whole check that takes the first candidate of every step: what is left of the
// cost when nothing is searched.
func BenchmarkFirst(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10_000} {
		files, _ := generated(1, n)
		files = withClub(b, files)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.SetBytes(int64(bytesOf(files, "")))
			for b.Loop() {
				build, _, err := schema.Load(files, "r", "recipes/shops/club")
				if err != nil {
					b.Fatal(err)
				}
				t, vs, _ := choose.Choose(build, 0)
				rules.Judge(t, vs, "")
			}
		})
	}
}

// BenchmarkLoadScale is the reading alone.
func BenchmarkLoadScale(b *testing.B) {
	for _, n := range []int{10, 100, 1000, 10_000} {
		files, _ := generated(1, n)
		files = withClub(b, files)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.SetBytes(int64(bytesOf(files, "")))
			for b.Loop() {
				if _, _, err := schema.Load(files, "r", "recipes/shops/club"); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkManyThings is a check beside 10,000 more things of one kind of which nothing is said.
func BenchmarkManyThings(b *testing.B) {
	for _, kind := range []string{"mill", "vise", "lathe", "chuck", "drill_chuck", "arbor", "drill"} {
		files, _ := generated(5, 22)
		files = withClub(b, files)
		body := ""
		if kind == "drill" {
			body = "  diameter = 8.37\n"
		}
		for part := range 20 {
			var w strings.Builder
			for i := range 500 {
				fmt.Fprintf(&w, "%s \"aa%d\" {\n%s}\n", kind, part*500+i, body)
			}
			files[fmt.Sprintf("recipes/shops/club/many%d.hcl", part)] = []byte(w.String())
		}
		b.Run(kind, func(b *testing.B) {
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

// whole is a whole check of one recipe.
func whole(b *testing.B, files text.Archive, effort int) {
	build, _, err := schema.Load(files, "r", "recipes/shops/club")
	if err != nil {
		b.Fatal(err)
	}
	t, vs, _ := choose.Choose(build, effort)
	rules.Judge(t, vs, "")
}

// BenchmarkFourKiB is a whole check of a recipe of about 4 KiB, from text to findings.
func BenchmarkFourKiB(b *testing.B) {
	files, _ := generated(1, 30)
	b.SetBytes(int64(bytesOf(files, "r/")))
	files = withClub(b, files)
	for b.Loop() {
		whole(b, files, choose.Effort)
	}
}

// BenchmarkThousandRecipes is a whole check of a thousand small recipes, one after the other.
func BenchmarkThousandRecipes(b *testing.B) {
	var all []text.Archive
	bytes := 0
	for seed := range int64(1000) {
		files, _ := generated(seed, 10)
		bytes += bytesOf(files, "r/")
		all = append(all, withClub(b, files))
	}
	b.SetBytes(int64(bytes))
	for b.Loop() {
		for _, files := range all {
			whole(b, files, choose.Effort)
		}
	}
}
