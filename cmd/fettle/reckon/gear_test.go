package reckon

import (
	"math"
	"strings"
	"testing"

	"fettle/schema/printed"
	"fettle/schema/text"
)

// The printed worms, pairs and spans come out of the command as they come out of the arithmetic.
// Sources stand in the rows.
func TestPublishedGears(t *testing.T) {
	names := map[string]string{"worm lead angle": "lead angle", "worm normal module": "normal module", "worm centre distance": "centre distance",
		"worm throat radius": "throat radius", "worm worm root dia": "worm root diameter", "worm wheel root dia": "wheel root diameter"}
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "gear.tsv", 5) {
		g := strings.Fields(r[1])
		var args []string
		var values []string
		switch {
		case names[r[0]] != "":
			args, values = []string{g[1] + "," + g[2], "--module", g[0], "--worm", g[3]}, []string{names[r[0]]}
		case r[0] == "spur pair shifted":
			args = []string{g[2] + "," + g[3], "--module", g[0], "--pressure", g[1], "--shift", g[4], "--mate-shift", g[5]}
			values = []string{"centre distance", "working angle", "first wheel tip diameter", "second wheel tip diameter", "first wheel root diameter", "second wheel root diameter"}
		case r[0] == "span":
			args, values = []string{g[2], "--module", g[0], "--pressure", g[1], "--helix", g[3], "--shift", g[4]}, []string{"wheel span"}
		case r[0] == "bevel long and short":
			args = []string{g[0] + "," + g[1], "--module", g[2], "--bevel", "--long"}
			values = []string{"first addendum", "second addendum", "first dedendum", "second dedendum", "first tip diameter", "second tip diameter"}
		default:
			continue
		}
		counts[strings.Fields(r[0])[0]]++
		d := asked(t, text.Archive{}, append([]string{"gear"}, args...)...)
		for i, want := range printed.Figures(t, r[2]) {
			if got := d.valued(t, values[i]); math.Abs(got-want) > printed.Figure(t, r[3]) {
				t.Errorf("%s %s: %s %v, printed %v in %s", r[0], r[1], values[i], got, want, r[4])
			}
		}
	}
	if counts["worm"] != 6 || counts["spur"] != 1 || counts["span"] != 5 || counts["bevel"] != 1 {
		t.Errorf("rows checked: %v", counts)
	}
}

// Every question of the examples, as the command answers it.
func BenchmarkGearAndDial(b *testing.B) {
	for _, name := range []string{"gear", "dial"} {
		for _, e := range find(name).Examples {
			b.Run(name+" "+strings.Join(e, " "), func(b *testing.B) {
				for b.Loop() {
					if page, status := ran(b, text.Archive{}, append([]string{name}, e...)...); status != Answered {
						b.Fatal(page)
					}
				}
			})
		}
	}
}
