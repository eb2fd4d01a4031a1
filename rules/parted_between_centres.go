package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "parted-between-centres",
	Title: "the piece is parted while a centre holds its free end",
	Why: `As the blade nears the middle both halves lean together and shut on it: the blade jams and breaks, or the piece is thrown.
Stop short and saw the rest with the spindle still, or take the centre away first.`,
	Rows:      []string{"C24"},
	Source:    []string{"common practice"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution:   "A jammed blade throws pieces. Never part work that a centre holds; follow the machine's manual.",
	Trips:     exampleParting("    stick_out = 70\n    support = { by = centre.live, at = \"right\" }", 20),
	Sound:     exampleParting("    stick_out = 70", 20),
	OnTurn:    partedBetweenCentres,
})

func partedBetweenCentres(k *eval.Turn, a *Ask) {
	if k.Choice.By != "parting" || k.Hold.Unplayed != "" {
		return
	}
	s := k.Hold.Choice.Support
	if !k.Hold.Choice.Centres && (s == nil || s.Middle || s.Steady != nil || k.Choice.Withdrawn) {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(k.Hold.Work.SetUp.Path()+"+parting", k.Place("by", "makes"), "%s is parted off while a centre holds its free end: the cut closes on the blade; withdraw the centre first (support = \"withdrawn\"), or saw",
		k.Part.Label)
}
