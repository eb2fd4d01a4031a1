package choose_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// What a person is told to go and measure can be written down: every fact that a check lacked, and
// that names an attribute of a thing in the shop, is an attribute of such things.
func TestLackingFactsCanBeDeclared(t *testing.T) {
	attrs := declarable(t)
	named := regexp.MustCompile(`^([a-z_]+)\.[^.\[]+(?:\[[^\]]*\])?\.([a-z_]+)`)
	told, names := map[string]bool{}, 0
	look := func(name string, files text.Archive, folders ...string) {
		b, _, err := schema.Load(files, folders[0], folders[1:]...)
		if err != nil || b.Unread {
			return
		}
		_, vs, _ := choose.Choose(b, choose.Effort)
		for _, v := range vs {
			for _, l := range v.Lacks {
				m := named.FindStringSubmatch(l.Fact)
				if m == nil || attrs[m[1]] == nil || strings.Contains(l.Fact, " ") {
					continue
				}
				names++
				if !attrs[m[1]][m[2]] && !told[l.Fact] {
					told[l.Fact] = true
					t.Errorf("%s: %s lacks %s, and a %s has no %s", name, v.Rule.Name, l.Fact, m[1], m[2])
				}
			}
		}
	}
	for _, r := range []string{"first", "jack", "dial", "tellurion"} {
		for _, s := range []string{"bench", "club", "attic", "garage"} {
			look(r+" in "+s, folders(t, "recipes/"+r+"/*.hcl", "recipes/shops/"+s+"/*.hcl"), "recipes/"+r, "recipes/shops/"+s)
		}
	}
	archives, _ := filepath.Glob("../../testdata/rules/*.txtar")
	for _, n := range archives {
		raw, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		ar := txtar.Parse(raw)
		shops := map[string]string{}
		for _, f := range ar.Files {
			if s, ok := strings.CutSuffix(f.Name, ".shop"); ok {
				shops[s] = string(f.Data)
			}
		}
		for i, f := range ar.Files {
			if strings.HasSuffix(f.Name, ".shop") || testing.Short() && i%5 != 0 {
				continue
			}
			shop, own := shops[f.Name]
			if !own {
				shop = rules.ExampleShop
			}
			look(filepath.Base(n)+" "+f.Name, text.Archive{"r/a.hcl": f.Data, "s/a.hcl": []byte(shop)}, "r", "s")
		}
	}
	if names < 50 {
		t.Errorf("only %d facts name an attribute", names)
	}
}

// declarable reads the table of kinds: the attributes of each kind of thing in a shop.
func declarable(t *testing.T) map[string]map[string]bool {
	raw, err := os.ReadFile("../../schema/kinds.tsv")
	if err != nil {
		t.Fatal(err)
	}
	out, any, cutter := map[string]map[string]bool{}, map[string]bool{}, false
	common := map[string]bool{}
	var cutters []string
	for _, line := range strings.Split(string(raw), "\n") {
		c := strings.Split(line, "\t")
		if len(c) < 3 || c[0] != "shop" {
			continue
		}
		attr, _, _ := strings.Cut(c[2], ".")
		switch c[1] {
		case "any_item":
			any[attr] = true
		case "any_cutter":
			common[attr], cutter = true, true
		default:
			if out[c[1]] == nil {
				out[c[1]] = map[string]bool{}
				if cutter && !strings.Contains(" micrometer caliper depth_gauge stock file ", " "+c[1]+" ") {
					cutters = append(cutters, c[1])
				}
			}
			out[c[1]][attr] = true
		}
	}
	for _, m := range out {
		for a := range any {
			m[a] = true
		}
	}
	for _, k := range cutters {
		for a := range common {
			out[k][a] = true
		}
	}
	return out
}
