package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "drawbar-does-not-fit",
	Title: "no drawbar that is here screws into the holder",
	Why: `The thread in the end of a Morse shank belongs to the tool, not to the taper: M10, M12, 3/8 BSW and
others are all about. Without the bar the holder cannot be drawn up.`,
	Rows:      []string{"B7"},
	Source:    []string{"ISO 296 leaves the thread to the tool, in two families that do not mix: its scope, seen; usual threads: from memory"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Holding,
	Trips:     exampleSlit("holder = arbor.own") + ownArbor("MT3", "M10"),
	Sound:     exampleSlit("holder = arbor.own") + ownArbor("MT3", "M12"),
	OnCut:     drawbarDoesNotFit,
})

// wantsDrawbar says whether a holder needs a bar: where the tool is pushed sideways always;
// for drilling only where the holder has a thread for one at all and no tang.
func wantsDrawbar(k *eval.Cut) bool {
	switch k.Choice.By {
	case "milling", "sawing", "plunging", "boring":
		return true
	}
	return false
}

func drawbarDoesNotFit(k *eval.Cut, a *Ask) {
	if !wantsDrawbar(k) {
		return
	}
	joints(k, a, []string{"drawbar"}, func(l eval.Link) {
		if l.Why != "" {
			return // held by its taper alone: another rule
		}
		a.Say(pathOf(l.Lower)+".tail", k.Place("holder"), "%s has %s in its tail, and the drawbars of %s are %s",
			pathOf(l.Lower), l.Has, pathOf(l.Upper), orNone(l.Takes))
	})
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

// ownArbor is an arbor of the recipe's own, with a shank and tail.
func ownArbor(shank, tail string) string {
	return `
arbor "own" {
  shank  = "` + shank + `"
  tail   = "` + tail + `"
  seat   = 16
  collar = 25
  body   = 25
  out    = 40
  key    = false
  clamp  = { by = "nut", thread = "M14x1.5", diameter = 24, length = 14 }
}
`
}
