package sheet

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/schema/model"
)

// demos are the recipes that stand with the project, each with a shop that can make it.
var demos = [][2]string{{"recipes/first", "recipes/shops/bench"}, {"recipes/jack", "recipes/shops/club"},
	{"recipes/dial", "recipes/shops/club"}, {"recipes/tellurion", "recipes/shops/club"}}

// finished calls a function for every finished part of the demos.
func finished(t *testing.T, do func(t *testing.T, p *eval.PartTrace)) {
	for _, d := range demos {
		for _, p := range checked(t, archive(t, d[0], d[1]), d[0], d[1]).Result.Trace.Parts {
			if p.End != nil {
				t.Run(d[0]+" "+p.Part.Label, func(t *testing.T) { do(t, p) })
			}
		}
	}
}

// Every distance and diameter that the recipe gives stands on the drawing, and no text lies on
// another or on a wide line.
func TestEverySizeIsDrawn(t *testing.T) {
	parts, sizesDrawn := 0, 0
	finished(t, func(t *testing.T, p *eval.PartTrace) {
		for i := range 4 {
			pr, all := []sketch.Projection{sketch.FirstAngle, sketch.ThirdAngle}[i%2], sizes(p)
			all.Paper = []sketch.Paper{sketch.Standard, sketch.Column}[i/2]
			d, left, err := sketch.Part(title(p), p.End.Piece, pr, all)
			if err != nil || len(left) > 0 {
				t.Fatalf("%s: no room for %q, error %v", pr, left, err)
			}
			if o := d.Overlaps(); len(o) > 0 {
				t.Errorf("%s: %v", pr, o)
			}
			on := func(figure string) bool {
				return slices.ContainsFunc(d.Texts, func(x sketch.Text) bool { return strings.Contains(x.Words, figure) })
			}
			for _, l := range p.Part.Laid() {
				if p.Part.Joined() || math.Abs(l.To-l.From) < model.Grain {
					continue
				}
				if sizesDrawn++; !on(written(l.Size)) {
					t.Errorf("%s: %s %s is not on it", pr, l.Of.Path(), written(l.Size))
				}
			}
			for _, f := range p.Part.Forms {
				if s := f.Feature.Diameter; s.Is() && !p.Part.Joined() {
					if sizesDrawn++; !on("Ø" + written(s.V)) {
						t.Errorf("%s: Ø%s of %s is not on it", pr, written(s.V), f.Name())
					}
				}
			}
		}
		parts++
	})
	if parts < 17 || sizesDrawn < 200 {
		t.Errorf("%d parts with %d sizes: the demos have more", parts, sizesDrawn)
	}
}

// A distance lies between places that are so far apart as it says.
func TestDistancesAreAsWritten(t *testing.T) {
	finished(t, func(t *testing.T, p *eval.PartTrace) {
		for _, l := range p.Part.Laid() {
			if d := math.Abs(l.To - l.From); math.Abs(d-math.Abs(l.Size.Nominal)) > 1e-9 {
				t.Errorf("%s.%s is written %s, and drawn %v", l.Of.Path(), l.Attr, written(l.Size), d)
			}
		}
	})
}
