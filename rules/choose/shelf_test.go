package choose_test

import (
	"fmt"
	"strings"
	"testing"

	"fettle/rules/choose"
	"fettle/schema"
)

// A shop with hundreds of things that say the same is tried as one with a single one of them: as many
// moments are played, and the first is chosen. One that says something else is tried.
func TestAlikeThingsAreTriedOnce(t *testing.T) {
	for kind, body := range map[string]string{"mill": "", "vise": "  jaw_width = 77\n", "drill_chuck": "", "chuck": "", "arbor": "  seat = 9.5\n"} {
		moments := func(n int, last string) int {
			files, _ := generated(5, 22)
			files = withClub(t, files)
			var w strings.Builder
			for i := range n {
				said := body
				if i == n-1 {
					said += last
				}
				fmt.Fprintf(&w, "%s \"aa%03d\" {\n%s}\n", kind, i, said)
			}
			files["recipes/shops/club/many.hcl"] = []byte(w.String())
			b, slips, err := schema.Load(files, "r", "recipes/shops/club")
			if err != nil || b.Unread || len(slips) > 0 {
				t.Fatal(err, slips)
			}
			tr, _, _ := choose.Choose(b, choose.Effort)
			return tr.Moments
		}
		one, many := moments(1, ""), moments(300, "")
		if one != many {
			t.Errorf("%s: %d moments with one, %d with 300 that say the same", kind, one, many)
		}
		if kind == "mill" {
			if other := moments(300, "  speeds = [500]\n"); other <= one {
				t.Errorf("%s: %d moments with one, %d with another besides that says something else", kind, one, other)
			}
		}
	}
}
