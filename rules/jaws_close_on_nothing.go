package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "jaws-close-on-nothing",
	Title: "where the jaws should grip no metal is left",
	Why: `The end that was to be held has been parted off, faced away or never was there: with the last cut the only grip went.
Do the other end before parting, leave a spigot to hold by, or hold what was turned first in soft jaws or a split bush.`,
	Rows:      []string{"C9", "C10"},
	Source:    []string{"order of work as written; geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleWaist(replaced(inThree, "grip    = 20", "stick_out = 70"), ""),
	Sound:     exampleWaist(inThree, ""),
	OnChuck:   jawsCloseOnNothing,
})

func jawsCloseOnNothing(h *eval.Chucking, a *Ask) {
	c := &h.Choice
	if c.Centres || c.Faceplate != nil || c.Mandrel != nil {
		return
	}
	if h.Contact > 0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	lo, hi, _ := h.Before.Profile.Ends()
	a.Say(c.HeldBy()+"+"+h.Work.SetUp.Path(), h.Place("stick_out", "grip", "hold"), "%s closes on nothing: the piece is %s mm long now, and %s mm of it should stand out",
		c.HeldBy(), tenth(hi-lo), tenth(h.Free))
}
