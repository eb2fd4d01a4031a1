package choose_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// What a rule says of a cut does not change with a choice to which it says that it is deaf, and
// the holding and the tool that are taken are those that would be taken if all were tried: over
// the recipes, generated ones, every case of the rules and every example.
func TestDeafRulesHearNothing(t *testing.T) {
	asked := map[string]int{}
	listen := func(name string, files text.Archive, folders ...string) {
		b, _, err := schema.Load(files, folders[0], folders[1:]...)
		if err != nil || b.Unread {
			return
		}
		choose.ListenForDeaf(b, asked, func(says string) { t.Errorf("%s: %s", name, says) })
	}
	for seed := range int64(2) {
		files, _ := generated(seed, 32)
		listen("generated", withClub(t, files), "r", "recipes/shops/club")
	}
	for _, r := range []string{"first", "jack", "dial", "tellurion"} {
		for _, s := range []string{"bench", "club", "attic"} {
			files := folders(t, "recipes/"+r+"/*.hcl", "recipes/shops/"+s+"/*.hcl")
			listen(r+" in "+s, files, "recipes/"+r, "recipes/shops/"+s)
		}
	}
	small := func(name, recipe string) {
		listen(name, text.Archive{"r/a.hcl": []byte(recipe), "s/a.hcl": []byte(rules.ExampleShop)}, "r", "s")
	}
	for _, r := range rules.Catalogue() {
		small(r.Name, r.Trips)
		small(r.Name, r.Sound)
	}
	archives, _ := filepath.Glob("../../testdata/rules/*.txtar")
	for _, n := range archives {
		raw, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range txtar.Parse(raw).Files {
			if !strings.HasSuffix(f.Name, ".shop") {
				small(filepath.Base(n)+" "+f.Name, string(f.Data))
			}
		}
	}
	for _, r := range rules.Catalogue() {
		if r.Deaf != 0 && asked[r.Name] == 0 {
			t.Errorf("%s says that it is deaf, and was never asked of two candidates", r.Name)
		}
	}
	t.Log(asked)
}
