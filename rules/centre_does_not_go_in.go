package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:      "centre-does-not-go-in",
	Title:     "the centre has another taper than the tailstock",
	Why:       `A centre stands true only in a socket of its own taper. A smaller one goes in with a sleeve; a larger one does not go in at all.`,
	Rows:      []string{"B11"},
	Source:    []string{"look-up: tapers as the shop declares them"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOwnCentre("MT3"),
	Sound:     exampleOwnCentre("MT2"),
	OnChuck:   centreDoesNotGoIn,
})

// exampleOwnCentre supports the free end by a centre with a shank of its own, in a tailstock with MT2.
func exampleOwnCentre(shank string) string {
	return exampleWaist(inThree+"\n    support = { by = centre.own, at = \"right\" }", "") + `
centre "own" {
  shank = "` + shank + `"
  live  = false
  out   = 60
}
`
}

func centreDoesNotGoIn(h *eval.Chucking, a *Ask) {
	s, m := h.Choice.Support, h.Choice.Machine
	if s == nil || s.Centre == nil || m == nil {
		return
	}
	shank, ok := Need(a, s.Centre.Shank)
	socket, ok2 := Need(a, m.Tailstock.Taper)
	if !ok || !ok2 {
		return
	}
	if shank.Same(socket) || eval.Sleeved(&h.Part.Build.Shop, socket, shank) {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(s.Centre.Path()+".shank+"+m.Path(), h.Place("support"), "%s has a shank of %s, and the tailstock of %s takes %s; no sleeve that is here goes between them",
		s.Centre.Path(), shank, m.Path(), socket)
	f.Also = []finding.Note{{Place: s.Centre.Shank.At, Says: "its shank"}, {Place: m.Tailstock.Taper.At, Says: "the tailstock's"}}
}
