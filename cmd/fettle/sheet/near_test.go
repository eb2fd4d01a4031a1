package sheet

import (
	"bytes"
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"

	"fettle/cmd/fettle/report"
	"fettle/cmd/fettle/sketch"
	"fettle/eval/solid"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

// Law: the place of a round piece of the tool nearest to another place is on it, and none of many
// others of its surface is nearer.
func TestNearestPlaceOfTheTool(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		b := solid.Turned{Z0: f("z0", -20, 20), R0: f("r0", 0, 30), R1: f("r1", 0.1, 30)}
		b.Z1 = b.Z0 + f("h", 0.1, 60)
		tool, v := solid.Vec{f("x", -50, 50), f("y", -50, 50), f("z", -50, 50)}, solid.Vec{f("u", -80, 80), f("v", -80, 80), f("w", -80, 80)}
		a := onBody(b, tool, v)
		d := a.Sub(v).Len()
		r, z := math.Hypot(a[0]-tool[0], a[1]-tool[1]), a[2]-tool[2]
		if at := b.R0 + (b.R1-b.R0)*(z-b.Z0)/(b.Z1-b.Z0); d > 0 && (z < b.Z0-1e-9 || z > b.Z1+1e-9 || r > at+1e-9) {
			t.Fatalf("%v is not on the tool", a)
		}
		for i := range 24 {
			sin, cos := math.Sincos(float64(i) * math.Pi / 12)
			for k := range 21 {
				h := float64(k) / 20
				q := tool.Add(solid.Vec{cos * (b.R0 + (b.R1-b.R0)*h), sin * (b.R0 + (b.R1-b.R0)*h), b.Z0 + (b.Z1-b.Z0)*h})
				if q.Sub(v).Len() < d-1e-9 {
					t.Fatalf("%v is nearer than %v", q, a)
				}
			}
		}
	})
}

// What a drawing says of the room between two things is what the dry run found over the whole way,
// and lies between the two places that it is drawn at.
func TestRoomsAreThoseOfTheDryRun(t *testing.T) {
	seen, bounds := 0, 0
	for _, r := range recipes {
		for _, p := range played(t, r[0], r[1]).Parts {
			for _, g := range settings(p) {
				for _, k := range g.cuts {
					if k.Unplayed != "" || g.hold.Unplayed != "" {
						continue
					}
					for i, c := range closest(g.hold, k) {
						apart := c.a.Sub(c.b).Len()
						switch {
						case c.mm < 0:
							continue
						case c.least && apart < c.mm-0.02:
							t.Errorf("%s: %s to %s is at least %g, and drawn between places %g apart", k.Spot, c.body.Name, c.thing, c.mm, apart)
						case c.least:
							bounds++
							continue
						case math.Abs(apart-c.mm) > 0.002:
							t.Errorf("%s: %s to %s is %g, and drawn between places %g apart", k.Spot, c.body.Name, c.thing, c.mm, apart)
						}
						seen++
						d, err := sketch.Set(Milled(g.hold, k))
						if err != nil {
							t.Fatal(err)
						}
						want, found := sketch.Figure(math.Round(c.mm*100)/100), false
						for _, x := range d.Texts {
							found = found || x.Words == want || strings.HasPrefix(x.Words, want+" as it")
						}
						if !found {
							t.Errorf("%s: room %d, %s, is not on the drawing", k.Spot, i, want)
						}
					}
				}
			}
		}
	}
	if seen < 50 || bounds < 2 {
		t.Errorf("only %d rooms and %d bounds seen", seen, bounds)
	}
}

// The figures of rooms and meetings are those of the JSON report: the finding's margin, to what
// the label is rounded to.
func TestRoomsAreThoseOfTheReport(t *testing.T) {
	for rule, label := range map[string]*regexp.Regexp{
		"tool-meets-holding":    regexp.MustCompile(`CLASH by ([0-9.]+):`),
		"holder-meets-piece":    regexp.MustCompile(`CLASH by ([0-9.]+):`),
		"drilled-into-holding":  regexp.MustCompile(`CLASH by ([0-9.]+):`),
		"tool-close-to-holding": regexp.MustCompile(`\b([0-9.]+)\b`),
	} {
		trip := tripped(t, rule)
		var raw bytes.Buffer
		if err := report.JSON(&raw, []*report.Checked{trip.checked}); err != nil {
			t.Fatal(err)
		}
		var doc struct {
			Checked []struct {
				Findings []struct {
					Rule   string
					Margin *struct{ Has float64 }
				}
			}
		}
		if err := json.Unmarshal(raw.Bytes(), &doc); err != nil {
			t.Fatal(err)
		}
		figures := map[string]bool{}
		for _, d := range trip.drawings {
			for _, m := range label.FindAllStringSubmatch(joined(d), -1) {
				figures[m[1]] = true
			}
		}
		seen := 0
		for _, f := range doc.Checked[0].Findings {
			if f.Rule != rule {
				continue
			}
			seen++
			want := tenthUp(-f.Margin.Has)
			if rule == "tool-close-to-holding" {
				want = sketch.Figure(math.Round(f.Margin.Has*100) / 100)
			}
			if !figures[want] {
				t.Errorf("%s: the report has %g, the drawings have %v", rule, f.Margin.Has, figures)
			}
		}
		if seen == 0 {
			t.Errorf("%s: no finding in the report", rule)
		}
	}
}
