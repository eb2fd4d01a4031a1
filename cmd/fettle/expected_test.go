package main

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Every recipe has its expected report beside it for every shop it is tried in. A person
// reads the difference before a report is renewed (go test ./cmd/fettle -run Expected -renew).
var expected = []struct {
	recipe, shop, report string
	status               int
}{
	{"recipes/first", "recipes/shops/bench", "recipes/first/report-bench.txt", 0},
	{"recipes/first", "recipes/shops/attic", "recipes/first/report-attic.txt", 1},
	{"recipes/first", "recipes/shops/garage", "recipes/first/report-garage.txt", 1},
	{"recipes/dial", "recipes/shops/club", "recipes/dial/report-club.txt", 0},
	{"recipes/dial", "recipes/shops/attic", "recipes/dial/report-attic.txt", 1},
	{"recipes/dial", "recipes/shops/garage", "recipes/dial/report-garage.txt", 1},
	{"recipes/jack", "recipes/shops/club", "recipes/jack/report-club.txt", 0},
	{"recipes/jack", "recipes/shops/attic", "recipes/jack/report-attic.txt", 1},
	{"recipes/jack", "recipes/shops/garage", "recipes/jack/report-garage.txt", 1},
	{"recipes/tellurion", "recipes/shops/club", "recipes/tellurion/report-club.txt", 0},
	{"recipes/tellurion", "recipes/shops/attic", "recipes/tellurion/report-attic.txt", 1},
	{"recipes/tellurion", "recipes/shops/garage", "recipes/tellurion/report-garage.txt", 1},
	{"testdata/recipes/wheels", "recipes/shops/club", "testdata/recipes/wheels/report-club.txt", 0},
	{"testdata/recipes/bends", "recipes/shops/club", "testdata/recipes/bends/report-club.txt", 0},
	{"testdata/recipes/vee", "recipes/shops/club", "testdata/recipes/vee/report-club.txt", 0},
	{"testdata/recipes/bought", "recipes/shops/club", "testdata/recipes/bought/report-club.txt", 0},
	{"testdata/recipes/plate", "recipes/shops/club", "testdata/recipes/plate/report-club.txt", 0},
	{"testdata/recipes/rack", "recipes/shops/club", "testdata/recipes/rack/report-club.txt", 0},
	{"testdata/recipes/telling", "recipes/shops/attic", "testdata/recipes/telling/report-attic.txt", 1},
	{"testdata/recipes/telling", "recipes/shops/bench", "testdata/recipes/telling/report-bench.txt", 1},
}

func TestExpectedReports(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	for _, e := range expected {
		t.Run(filepath.Base(e.recipe)+" "+filepath.Base(e.shop), func(t *testing.T) {
			var out, errs bytes.Buffer
			status := run([]string{"check", "--plain", "--on", "2026-11-25", "--shop", e.shop, e.recipe}, &out, &errs)
			if status != e.status || errs.Len() > 0 {
				t.Errorf("status %d, not %d; %s", status, e.status, errs.String())
			}
			if *renew {
				if err := os.WriteFile(e.report, out.Bytes(), 0o666); err != nil {
					t.Fatal(err)
				}
				return
			}
			want, err := os.ReadFile(e.report)
			if err != nil {
				t.Fatal(err)
			}
			if out.String() != string(want) {
				t.Errorf("the report differs from %s:\n%s", e.report, firstDifference(string(want), out.String()))
			}
			for i, l := range strings.Split(out.String(), "\n") {
				if n := len([]rune(l)); n > 80 && strings.Contains(strings.TrimSpace(l), " ") {
					t.Errorf("line %d has %d columns: %s", i+1, n, l)
				}
			}
		})
	}
}

func firstDifference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	for i := range w {
		if i >= len(g) || w[i] != g[i] {
			line := "(the end)"
			if i < len(g) {
				line = g[i]
			}
			return "expected: " + w[i] + "\nis:       " + line
		}
	}
	return "there is more of it: " + g[len(w)]
}

// The finding that the README shows is the one that the command prints.
func TestReadmeShowsWhatIsPrinted(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	report, err := os.ReadFile("recipes/first/report-attic.txt")
	if err != nil {
		t.Fatal(err)
	}
	_, after, ok := strings.Cut(string(report), "\n  DANGER")
	block, _, ok2 := strings.Cut(after, "\n\n")
	if !ok || !ok2 {
		t.Fatal("no danger is found in the attic")
	}
	for _, l := range strings.Split("  DANGER"+block, "\n") {
		if line := strings.TrimSpace(l); !strings.Contains(string(readme), line) {
			t.Errorf("the README does not show %q", line)
		}
	}
}

// The recipe that the README shows stands in the demo recipe, line by line and in its order.
func TestReadmeShowsTheRecipe(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	recipe, err := os.ReadFile("recipes/first/clamp.hcl")
	if err != nil {
		t.Fatal(err)
	}
	_, after, _ := strings.Cut(string(readme), "```hcl\n")
	shown, _, ok := strings.Cut(after, "```")
	if !ok {
		t.Fatal("the README shows no recipe")
	}
	rest := strings.Split(string(recipe), "\n")
	for _, l := range strings.Split(shown, "\n") {
		if l = strings.TrimSpace(l); l == "" {
			continue
		}
		i := slices.IndexFunc(rest, func(r string) bool { return strings.TrimSpace(r) == l })
		if i < 0 {
			t.Fatalf("%q does not follow in the recipe", l)
		}
		rest = rest[i+1:]
	}
}
