package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "steady-on-rough",
	Title: "the fingers of a steady run on a surface that is not turned true",
	Why: `A steady makes the work run as true as the track its fingers touch. On a raw skin, flats, a thread or a knurl it jolts, wears
its fingers, and what is turned repeats every fault of the track. Turn a short track first, or put a sleeve on.`,
	Rows:      []string{"C18"},
	Source:    []string{"common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Shifted:   true,
	Trips:     exampleSteady("30", ""),
	Sound:     exampleSteady("50", ""),
	OnChuck:   steadyOnRough,
})

// exampleSteady turns the right end in one holding, and runs a steady at a place in the next.
func exampleSteady(at, more string) string {
	s := exampleTurned(`
  outside "waist" {
    from     = 40
    diameter = 16
  }
`, inThree+"\n    support = { by = steady.bed, at = "+at+" }"+more, `
    operation {
      makes = face.right
    }`)
	return replaced(s, "  setup \"turn\"", "  setup \"first\" {\n"+inThree+"\n\n    operation {\n      makes = outside.waist\n    }\n  }\n\n  setup \"turn\"")
}

func steadyOnRough(h *eval.Chucking, a *Ask) {
	z := h.Track()
	if z == nil || h.Choice.Machine == nil {
		return
	}
	word := z.Spoilt
	switch {
	case z.Flats > 0:
		word = "not round"
	case z.Skin != "":
		word = skinWord(z.Skin)
	case !z.Straight():
		word = "tapered"
	}
	if word == "" {
		a.Clear(finding.Margin{}, "")
		return
	}
	s := h.Choice.Support
	a.Say(h.Work.SetUp.Path()+".support", h.Place("support", "hold"), "%s runs on %s at %s mm along its axis, where it is %s",
		s.Steady.Path(), h.Part.Label, figure(round(s.At)), word)
}

// skinWord says of a raw surface what it is.
func skinWord(skin string) string {
	if skin == "raw" {
		return "as the stock is"
	}
	return "still " + skin
}
