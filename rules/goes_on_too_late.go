package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "goes-on-too-late",
	Title: "a part is to go onto a shaft on which others already stand in its way from both ends",
	Why: `Alone each part goes onto its seat; in the order of the benches the last one does not, since what was put on before
is larger than its hole on one side, and the shaft on the other. It goes on before them.`,
	Rows:      []string{"F16", "F20"},
	Source:    []string{"outsides of what benches joined before on the same shaft, and the shaft's own diameters, against the largest limit of a closed hole"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOnShaft("wheel", "collar"),
	Sound:     exampleOnShaft("collar", "wheel"),
	OnBuild:   goesOnTooLate,
})

// exampleOnShaft is a shaft with a flange on its left, a seat for a collar beside it and a smaller one for a
// wheel at its right end, joined in the order given.
func exampleOnShaft(first, then string) string {
	ring := func(name, hole string, across float64) string {
		return `
part "` + name + `" {
  material = "brass"
  diameter = ` + figure(across) + `
  length   = 8

  hole "bore" {
    into     = "right"
    diameter = "` + hole + `"
  }
}

fit "` + name + `" {
  hole  = part.` + name + `.hole.bore.diameter
  shaft = part.shaft.outside.` + name + `.diameter
  wants = "H7/g6"
}
`
	}
	return `recipe "example" {
  units = "mm"
}

part "shaft" {
  material = "mild steel"
  diameter = 20
  length   = 60

  outside "collar" {
    from     = 10
    to       = 18
    diameter = "12 g6"
  }

  outside "wheel" {
    from     = 18
    diameter = "8 g6"
  }
}
` + ring("collar", "12 H7", 18) + ring("wheel", "8 H7", 30) + `
assembly "all" {
  of = [part.shaft, part.collar, part.wheel]

  bench "first" {
    joins = [fit.` + first + `]
  }

  bench "then" {
    joins = [fit.` + then + `]
  }
}
`
}

func goesOnTooLate(t *eval.Trace, a *Ask) {
	for _, g := range t.Goings() {
		hole, ok := Need(a, g.Fit.Hole.Limits)
		if !ok {
			continue
		}
		own := min(g.Left.Diameter, g.Right.Diameter)
		if own <= hole.Hi+0.001 {
			a.Clear(Bound(round(own), round(hole.Hi), "mm"), "the way of "+g.Fit.Hole.Path+" past what is on "+g.Fit.Shaft.Part.Path())
			continue
		}
		by := g.Left.By
		if by == nil {
			by = g.Right.By
		}
		f := a.Say(g.Fit.Hole.Path+"+"+by.Path(), g.Bench.Item.Attr("joins").Value.At,
			"%s of %s is to go onto %s when %s stands on that shaft already: %s are in its way on the left%s and %s on the right%s; it goes on before",
			g.Fit.Hole.Path, span(hole), g.Fit.Shaft.Path, by.Path(), mm(round(g.Left.Diameter)), ofPart(g.Left), mm(round(g.Right.Diameter)), ofPart(g.Right))
		f.Margin = Bound(round(own), round(hole.Hi), "mm")
		f.Also = both(g.Fit)
		f.Spots = []finding.Spot{{SetUp: g.Bench.Kind + " " + g.Bench.Label}}
	}
}

func ofPart(b eval.Barrier) string {
	if b.By == nil {
		return ""
	}
	return " (" + b.By.Path() + ")"
}
