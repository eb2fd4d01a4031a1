package choose_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
)

// A shop of ten thousand more things of one kind, of which none is of use, changes nothing that
// is found, and holds nothing up.
func TestLargeShop(t *testing.T) {
	files, _ := generated(5, 22)
	want := withMargins(t, files)
	for kind, body := range map[string]string{
		"drill":        "diameter = %d.07\n",
		"slitting_saw": "diameter = 60\n  width = %d.07\n  bore = 16\n",
		"micrometer":   "range = [500, 5%02d]\n",
		"stock":        "material = \"mild steel\"\n  round = %d\n  lengths = [300]\n",
	} {
		for part := range 20 { // a file of more than 1 MiB is not read
			var b strings.Builder
			for i := range 500 {
				fmt.Fprintf(&b, "%s \"aa%d\" {\n  "+body+"}\n", kind, part*500+i, 10+i%89)
			}
			files[fmt.Sprintf("recipes/shops/club/many%d.hcl", part)] = []byte(b.String())
		}
		if got := withMargins(t, files); !slices.Equal(got, want) {
			t.Errorf("with 10,000 of %s:\n%s\nwithout:\n%s", kind, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
}
