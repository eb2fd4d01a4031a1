package sheet

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fettle/cmd/fettle/report"
	"fettle/cmd/fettle/sketch"
	"fettle/rules"
	"fettle/schema/text"
)

// tripped plays the example of a rule that it trips on, in the shop of the examples.
func tripped(t *testing.T, rule string) *checkedTrip {
	t.Helper()
	shop, err := os.ReadFile(filepath.Join(root, "rules", "example.hcl"))
	if err != nil {
		t.Fatal(err)
	}
	r := rules.Find(rule)
	if r == nil {
		t.Fatal("no rule " + rule)
	}
	c := checked(t, text.Archive{"example/recipe.hcl": []byte(r.Trips), "shop/shop.hcl": shop}, "example", "shop")
	out := &checkedTrip{checked: c}
	for i := range c.Findings {
		if f := &c.Findings[i]; f.Rule == rule {
			out.says = append(out.says, f.Says)
			out.has = append(out.has, f.Margin.Has)
		}
	}
	if len(out.says) == 0 {
		t.Fatalf("%s: the example does not trip it", rule)
	}
	every(t, c.Result.Trace, func(name string, a Asked, d *sketch.Drawing) {
		if a.SetUp != "" && a.Step > 0 {
			out.drawings = append(out.drawings, d)
		}
	})
	return out
}

type checkedTrip struct {
	says     []string
	has      []float64
	drawings []*sketch.Drawing
	checked  *report.Checked
}

// Where things meet the drawing rings the place, and its figure is that of the finding's sentence and
// of its margin.
func TestMeetingsAreRinged(t *testing.T) {
	for _, rule := range []string{"tool-meets-holding", "holder-meets-piece", "drilled-into-holding", "tool-runs-into-jaws"} {
		trip := tripped(t, rule)
		found := 0
		for i, says := range trip.says {
			want := "CLASH by " + tenthUp(-trip.has[i]) + ":"
			if rule != "tool-runs-into-jaws" && !strings.Contains(says, " "+tenthUp(-trip.has[i])+" mm") {
				t.Errorf("%s: the sentence %q does not have the figure of its margin, %g", rule, says, trip.has[i])
			}
			for _, d := range trip.drawings {
				if strings.Contains(joined(d), want) {
					if rings(d) == 0 {
						t.Errorf("%s: %q is not ringed", rule, want)
					}
					found++
					break
				}
			}
		}
		if found < len(trip.says) {
			t.Errorf("%s: %d findings, %d drawn: %q", rule, len(trip.says), found, trip.says)
		}
		for _, d := range trip.drawings {
			for _, o := range d.Overlaps() {
				t.Errorf("%s: %s", rule, o)
			}
		}
	}
}

// joined is all that is written on a drawing, in the order it was written.
func joined(d *sketch.Drawing) string {
	var words []string
	for _, t := range d.Texts {
		words = append(words, t.Words)
	}
	return strings.Join(words, " ")
}

// rings counts the heavy rings of a drawing.
func rings(d *sketch.Drawing) (n int) {
	for i := range d.Strokes {
		s := &d.Strokes[i]
		if s.Arc && s.Pen == sketch.Wide && s.U.X == 3.5 && s.V.Y == 3.5 {
			n++
		}
	}
	return n
}

// Drawings of set-ups that go wrong, or stand on other machines, kept as they are.
func TestExpectedTrips(t *testing.T) {
	for file, rule := range map[string]string{"setting-clash": "tool-meets-holding", "setting-post": "tool-runs-into-jaws", "setting-level": "axis-out-of-reach"} {
		trip := tripped(t, rule)
		got := trip.drawings[len(trip.drawings)-1].SVG()
		path := filepath.Join(root, "testdata", "sketch", file+".svg")
		if *renew {
			if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s.svg differs: go test -run Expected -renew, and look at it", file)
		}
	}
}
