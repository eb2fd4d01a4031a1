package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "tap-wrench-does-not-fit",
	Title: "no tap wrench here takes the square of the tap",
	Why: `A hand tap, or a hand reamer, is turned by its square. A wrench that is too small does not go on; one that is too large grips
the corners, slips, and rounds them.`,
	Rows: []string{"B17"},
	Source: []string{"squares of hand taps: from memory, ISO 529 and DIN 352, whichever the tap follows",
		"of a shank 0.8 of its diameter: from memory, ISO 237", "what the wrenches take: as declared"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleWrench("4.5", "9"),
	Sound:     exampleWrench("2", "6"),
	OnCut:     tapWrenchDoesNotFit,
	OnTurn:    asCut(tapWrenchDoesNotFit),
})

// exampleWrench taps M4 by hand with a wrench for such squares.
func exampleWrench(least, most string) string {
	return replaced(exampleTap("3.3"), `"M5"`, `"M4"`) + `
tap_wrench "own" {
  squares = [` + least + `, ` + most + `]
}
`
}

func tapWrenchDoesNotFit(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || !k.Choice.ByHand || !oneOf(c.Kind, "tap", "reamer") || k.Unplayed != "" {
		return
	}
	var here []*model.Holder
	for _, h := range k.Part.Build.Shop.Holders {
		if h.Kind == "tap_wrench" && h.Here() {
			here = append(here, h)
		}
	}
	if len(here) == 0 {
		return // the drawer of wrenches is not written down
	}
	least, most, ok := eval.Square(k.Choice.Tool)
	if !ok {
		Need(a, eval.ShankDiameter(k.Choice.Tool))
		return
	}
	perhaps := false
	for _, h := range here {
		r, ok := Need(a, h.Squares)
		switch {
		case !ok || len(r) != 2:
			perhaps = true
		case least >= r[0]-0.0005 && most <= r[1]+0.0005:
			*a = Ask{v: Verdict{Rule: a.v.Rule, Spot: a.v.Spot}, build: a.build}
			a.Clear(between((least+most)/2, r[0], r[1]), "the square of "+k.ToolPath()+" in "+h.Path())
			return
		case most >= r[0]-0.0005 && least <= r[1]+0.0005:
			perhaps = true
			a.Lack(model.Lack{Fact: "the square of " + k.ToolPath(), At: c.At})
		}
	}
	if perhaps {
		return
	}
	h := here[0]
	f := a.Say(h.Path()+".squares+"+k.ToolPath(), k.Place("turned_by", "tool", "makes"), "%s is turned by a square of %s, and %s takes %s to %s",
		k.ToolPath(), fromTo(least, most), h.Path(), figure(h.Squares.V[0]), mm(h.Squares.V[1]))
	f.Also = []finding.Note{{Place: h.Squares.At, Says: "the squares that it takes"}}
}

// fromTo prints a span, or one figure where it has no width.
func fromTo(lo, hi float64) string {
	if hi-lo < 0.005 {
		return mm(round(lo))
	}
	return figure(round(lo)) + " to " + mm(round(hi))
}
