package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "taper-of-other-slope",
	Title: "two tapers that are to be fitted to each other are of another slope, both inside or both outside, or of sizes that do not meet",
	Why: `A taper holds by touching all along. The slide is set once and both are turned at it, the hole first; drawn with two slopes they
touch at one end, and what is smaller at its large end than the other at its small end goes through without touching.`,
	Rows:      []string{"E12", "I7"},
	Source:    []string{"geometry of the drawing; printed slopes of one taper agree within a few hundredths of a millimetre in 100"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleTaperMates("1:20"),
	Sound:     exampleTaperMates("1:10"),
	OnBuild:   taperOfOtherSlope,
})

// exampleTaperMates is a plug of 1:10 that is to fit a bore of a slope.
func exampleTaperMates(bore string) string {
	return `recipe "example" {
  units = "mm"
}

part "plug" {
  material = "mild steel"
  diameter = 20
  length   = 60

  taper "nose" {
    from  = 40
    to    = 60
    size  = "1:10"
    large = 20
    mates = part.ring.taper.seat
  }
}

part "ring" {
  material = "mild steel"
  diameter = 40
  length   = 20

  bore "seat" {
    into     = "left"
    diameter = 18
  }

  taper "seat" {
    on        = bore.seat
    size      = "` + bore + `"
    large     = 20
    large_end = "left"
  }
}
`
}

// slopeAgrees is by how much the slopes of one taper may differ as they are printed or worked out from
// rounded diameters: mm on diameter for each mm of length.
const slopeAgrees = 0.0005

func taperOfOtherSlope(t *eval.Trace, a *Ask) {
	for _, p := range t.Parts {
		for _, f := range p.Part.Forms {
			mate := f.Feature.Mates.V.Item
			if f.Feature.Kind != "taper" || mate == nil || f.Lathe == nil {
				continue
			}
			for _, q := range t.Parts {
				if g := q.Part.FormOf(mate); g != nil && g.Lathe != nil && g.Wrong == "" {
					tapersMeet(p.Part, q.Part, f, g, a)
				}
			}
		}
	}
}

func tapersMeet(p, q *eval.Part, f, g *eval.Form, a *Ask) {
	at := f.Feature.Mates.At
	mine, other := p.Path()+"."+f.Name(), q.Path()+"."+g.Name()
	cause := mine + "+" + other
	one, two := 2*math.Tan(f.Half), 2*math.Tan(g.Half)
	small, large := 2*min(f.Lathe.R0, f.Lathe.R1), 2*max(f.Lathe.R0, f.Lathe.R1)
	least, most := 2*min(g.Lathe.R0, g.Lathe.R1), 2*max(g.Lathe.R0, g.Lathe.R1)
	switch {
	case f.Lathe.Inside == g.Lathe.Inside:
		a.Say(cause, at, "%s is to be fitted to %s, and both lie %s", mine, other, map[bool]string{true: "inside", false: "outside"}[f.Lathe.Inside])
	case math.Abs(one-two) > slopeAgrees:
		m := a.Say(cause, at, "%s has a slope of 1:%s on diameter, and %s, which it is to be fitted to, one of 1:%s: over %s they part by %s",
			mine, hundredth(1/one), other, hundredth(1/two), mm(round(f.Lathe.X1-f.Lathe.X0)), mm(round(math.Abs(one-two)*(f.Lathe.X1-f.Lathe.X0))))
		m.Also = []finding.Note{{Place: g.Feature.Item.At, Says: "its mate"}}
	case large <= least+0.001 || small >= most-0.001:
		a.Say(cause, at, "%s goes from %s to %s mm, and %s, which it is to be fitted to, from %s to %s mm: they do not touch",
			mine, figure(round(small)), figure(round(large)), other, figure(round(least)), figure(round(most)))
	default:
		a.Clear(finding.Margin{}, "")
	}
}
