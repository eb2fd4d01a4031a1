package choose_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// said lists what the rules say of each part and what was chosen for it, one line each.
func said(t *testing.T, files text.Archive, effort int) map[string][]string {
	t.Helper()
	b, _, err := schema.Load(files, "r", "recipes/shops/club")
	if err != nil {
		t.Fatal(err)
	}
	_, vs, cs := choose.Choose(b, effort)
	out := map[string][]string{}
	for _, v := range vs {
		line := fmt.Sprint(v.Spot, v.Rule.Name, v.Kind, v.Margin)
		for _, f := range v.Found {
			line += f.Says
		}
		out[v.Spot.Part] = append(out[v.Spot.Part], line)
	}
	for _, c := range cs {
		out[c.Spot.Part] = append(out[c.Spot.Part], fmt.Sprint(c.Spot, c.What, c.Item))
	}
	return out
}

// What is said of a part and chosen for it hangs neither on the other parts of the build nor on
// their order, however little effort there is.
func TestEachPartByItself(t *testing.T) {
	files, _ := generated(7, 62)
	for _, effort := range []int{choose.Effort, 40} {
		whole := said(t, withClub(t, files), effort)
		backwards := text.Archive{}
		n := 0
		for name, b := range files {
			backwards[fmt.Sprintf("r/%c%s", 'z'-n, strings.TrimPrefix(name, "r/"))] = b
			n++
			if name == "r/head.hcl" {
				continue
			}
			part := strings.TrimSuffix(strings.TrimPrefix(name, "r/"), ".hcl")
			alone := said(t, withClub(t, text.Archive{"r/head.hcl": files["r/head.hcl"], name: b}), effort)
			if !slices.Equal(alone[part], whole[part]) {
				t.Errorf("effort %d: %s alone: %d lines, with others %d", effort, part, len(alone[part]), len(whole[part]))
			}
			if len(alone[part]) < 20 {
				t.Errorf("only %d lines about %s", len(alone[part]), part)
			}
		}
		other := said(t, withClub(t, backwards), effort)
		for part := range whole {
			if part != "" && !slices.Equal(other[part], whole[part]) {
				t.Errorf("effort %d: %s in another order of files: %d lines, not %d", effort, part, len(other[part]), len(whole[part]))
			}
		}
	}
}
