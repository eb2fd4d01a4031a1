package choose_test

import (
	"fmt"
	"maps"
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
