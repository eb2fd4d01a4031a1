package choose_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// One slip of the pen is told of once, at its own place, and nothing that follows from it is
// told of beside it. Every attribute of a recipe, or of a shop, is misspelt in turn, and then
// given a value of the wrong kind.
func TestOneSlipOneFinding(t *testing.T) {
	for _, c := range []struct{ recipe, shop, in string }{
		{"recipes/first", "recipes/shops/bench", "recipes/first"},
		{"recipes/first", "recipes/shops/bench", "recipes/shops/bench"},
		{"testdata/recipes/telling", "recipes/shops/attic", "testdata/recipes/telling"},
		{"testdata/recipes/telling", "recipes/shops/attic", "recipes/shops/attic"},
	} {
		files := text.Archive{}
		name := ""
		for _, dir := range []string{c.recipe, c.shop} {
			paths, _ := filepath.Glob(filepath.Join("..", "..", dir, "*.hcl"))
			if len(paths) != 1 {
				t.Fatalf("%s holds %d files; this test wants one", dir, len(paths))
			}
			data, err := os.ReadFile(paths[0])
			if err != nil {
				t.Fatal(err)
			}
			at := dir + "/" + filepath.Base(paths[0])
			files[at] = data
			if dir == c.in {
				name = at
			}
		}
		written := string(files[name])
		before := slipped(t, files, c.recipe, c.shop)
		lines := strings.Split(written, "\n")
		tried := 0
		for i, line := range lines {
			m := attribute.FindStringSubmatch(line)
			if m == nil {
				continue
			}
			last := m[2][len(m[2])-1:]
			value := "true"
			if m[4] == "true" || m[4] == "false" {
				value = "3"
			}
			for _, other := range []string{m[1] + m[2] + last + m[3] + m[4], m[1] + m[2] + m[3] + value} {
				if m[2] == "title" || m[2] == "note" {
					continue
				}
				tried++
				changed := append([]string{}, lines...)
				changed[i] = other
				files[name] = []byte(strings.Join(changed, "\n"))
				var added []string
				for where, told := range slipped(t, files, c.recipe, c.shop) {
					if _, old := before[where]; !old {
						added = append(added, where+": "+told)
					}
				}
				if len(added) != 1 || !strings.HasPrefix(added[0], fmt.Sprintf("line %d, ", i+1)) {
					t.Errorf("%s line %d: %s\n\t%s", name, i+1, strings.TrimSpace(other), strings.Join(added, "\n\t"))
				}
			}
		}
		if tried < 60 {
			t.Errorf("only %d slips were tried in %s", tried, name)
		}
		files[name] = []byte(written)
	}
}

var attribute = regexp.MustCompile(`^(\s*)([a-z_]+)(\s*=\s*)([^{\[]*)$`)

// slipped gives the sentences told of a recipe, by the lines they are placed at and their rules.
func slipped(t *testing.T, files text.Archive, recipe, shop string) map[string]string {
	t.Helper()
	b, slips, err := schema.Load(files, recipe, shop)
	if err != nil {
		t.Fatal(err)
	}
	tr, vs, _ := choose.Choose(b, choose.Effort)
	out := map[string]string{}
	for _, f := range append(slips, rules.Judge(tr, vs, "").Findings...) {
		out[fmt.Sprintf("line %d, %s", b.Sources.Mark(f.Place).Line, f.Rule)] = f.Says
	}
	return out
}
