package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "climb-on-slack-screw",
	Title: "a climb cut on a slide whose screw has slack",
	Why: `When the work is fed with the teeth, the cutter pulls the table along by the slack of its screw: the
work is snatched, teeth break, and a thin saw jams over its full depth. Fed against the teeth, the screw holds.`,
	Rows:      []string{"J1"},
	Source:    []string{"the slack against what a tooth is fed, where that is written", "feeding with the cutter draws the work under and breaks teeth: printed workshop courses", "slide locks set to drag can hold a light cut: common practice"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution:   "A snatched cut can break the cutter and throw the work. Feed against the teeth, and follow the machine's manual.",
	Trips:     exampleSlit("holder  = arbor.left\n      cutting = \"climb\""),
	Sound:     exampleSlit("holder  = arbor.stub\n      cutting = \"conventional\""),
	OnCut:     climbOnSlackScrew,
})

func climbOnSlackScrew(k *eval.Cut, a *Ask) {
	if k.Choice.Tool.Cutter == nil || k.Unplayed != "" {
		return
	}
	switch k.Choice.By {
	case "milling", "sawing":
	default:
		return
	}
	climbs, bySide := k.Climbs()
	if !climbs {
		a.Clear(finding.Margin{}, "")
		return
	}
	m := k.Hold.Choice.Machine
	if m == nil {
		return
	}
	a.Asks("is there slack between screw and nut of the slide that feeds, and can its lock be set to drag?")
	slack := slackOf(m)
	s, ok := Need(a, slack)
	if !ok {
		return
	}
	tooth, fed := k.Feeding().PerTooth()
	switch {
	case s <= 0 || m.LocksDrag.V:
		a.Clear(finding.Margin{}, "")
	case fed && s <= tooth+1e-9:
		a.Clear(Bound(s, tooth, "mm"), "the slack of "+m.Path()+" against what a tooth is fed")
	default:
		what, attr, cure := "a climb cut", "cutting", "feed against the teeth"
		if side, ok := k.Begins(); bySide && ok {
			what, attr, cure = "begun at "+k.Starts().String()+" it is a climb cut", "starts", "begin at "+side.String()
		}
		f := a.Say(pathOf(m.Item)+".backlash+"+k.Spot.String(), k.Place(attr),
			"%s, and the screws of %s have up to %s of slack: the cutter will snatch the work by so much; %s", what, m.Path(), mm(s), cure)
		f.Also = []finding.Note{{Place: slack.At, Says: "the slack"}}
	}
}
