package rules

import (
	"math"

	"fettle/eval"
	"fettle/eval/reckon/fit"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "fit-not-as-wanted",
	Title: "the sizes of hole and shaft do not give the fit that is wanted",
	Why: `Two sizes with their limits settle between which clearances the pair can come out, whatever the drawing calls the fit. A
size that was measured counts as it is: then the mate has to make up for it.`,
	Rows:      []string{"I7", "E16", "F5"},
	Source:    []string{"ISO 286-1, tables of tolerances and deviations; arithmetic"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleFit(`"8 H7"`, `"8 k6"`, `"H7/g6"`),
	Sound:     exampleFit(`"8 H7"`, `"8 g6"`, `"H7/g6"`),
	OnJoint:   fitNotAsWanted,
})

func fitNotAsWanted(j *eval.Joint, a *Ask) {
	f := j.Fit
	if f == nil {
		return
	}
	if pin, ok := f.Pin(j.Trace); ok && pin.Pins.Sort.V == "taper" {
		a.Clear(finding.Margin{}, "") // its hole is opened by a reamer of its taper until the pin sits
		return
	}
	wants, ok := Need(a, f.Wants)
	play, ok2 := Need(a, f.Play)
	if !ok || !ok2 {
		return
	}
	if _, mate, open := f.Mate(); open && mate.Hi >= mate.Lo-0.0005 {
		a.Clear(finding.Margin{}, "") // the other part can still be made to it
		return
	}
	low, high := wants.Lo-play.Lo, play.Hi-wants.Hi
	if low <= 0.0005 && high <= 0.0005 {
		a.Clear(Room(round(math.Min(-low, -high)), 0), "the fit of "+f.Shaft.Path+" in "+f.Hole.Path)
		return
	}
	says := a.Say(j.Item.Path(), f.Model.Item.At, "%s in %s can come out with %s; wanted is %s", f.Shaft.Path, f.Hole.Path, playOf(play), playOf(wants))
	if f.Class != "" {
		says.Says += " (" + f.Class + ")"
	}
	for _, d := range []*eval.Dimension{&f.Hole, &f.Shaft} {
		if d.Made != nil {
			says.Also = append(says.Also, finding.Note{Place: d.Made.Item.At, Says: d.Path + " as made"})
		}
	}
}

// playOf words the clearances that a pair can have.
func playOf(p eval.Limits) string {
	lo, hi := figure(round(p.Lo)), figure(round(p.Hi))
	switch fit.KindOf(round(p.Lo), round(p.Hi)) {
	case fit.Clearance:
		return lo + " to " + hi + " mm of play"
	case fit.Interference:
		return figure(round(-p.Hi)) + " to " + figure(round(-p.Lo)) + " mm of interference"
	}
	return "anything from " + figure(round(-p.Lo)) + " mm of interference to " + hi + " mm of play"
}
