package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "soft-jaws-do-not-fit",
	Title: "soft jaws are bored to another diameter than the work has, or are for another holding",
	Why: `Soft jaws hold truly where they are bored, under load, to the diameter of the work. Bored larger they touch in the middle of each jaw,
bored smaller at its two edges: the work is marked, goes lobed and runs out like in any other jaws. A step bored behind
holds it square only if it goes in as deep.`,
	Rows:      []string{"C3", "E5"},
	Source:    []string{"within about 0.05 mm of the outside: seen in print on thin rings", "geometry"},
	Limits:    []string{"soft_jaws_bore"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleSoft("20.5"),
	Sound:     exampleSoft("20"),
	OnChuck:   softJawsDoNotFit,
	OnHold:    softJawsOfAnother,
})

// exampleSoft turns a waist on bright bar of 20 mm held in soft jaws bored so.
func exampleSoft(bored string) string {
	s := exampleWaist(replaced(inThree, "grip    = 20", "grip    = 20\n    soft    = { bored = "+bored+", depth = 20 }"), "")
	return replaced(s, "outside = 1", "outside = 0")
}

func softJawsDoNotFit(h *eval.Chucking, a *Ask) {
	soft := h.Work.SetUp.Soft
	if !soft.Said || h.Unplayed != "" || h.Choice.Chuck == nil {
		return
	}
	if deep, ok := soft.Depth.Get(); ok && h.Held > round(deep)+0.0005 {
		a.Say(h.Work.SetUp.Path()+".soft.depth", soft.Depth.At, "%s are to go into the soft jaws, and the step in them lies %s behind their face", mm(round(h.Held)), mm(deep))
	}
	bored, ok := soft.Bored.Get()
	if !ok || h.Gripped <= 0 {
		return
	}
	off, most := round(abs(bored.Nominal-h.Gripped)), a.Limit("soft_jaws_bore")
	if off <= most+0.0005 {
		a.Clear(Bound(off, most, "mm"), "the soft jaws of "+h.Choice.Chuck.Path())
		return
	}
	touch := "each touches in its middle alone"
	if bored.Nominal < h.Gripped {
		touch = "each touches at its edges alone"
	}
	f := a.Say(h.Work.SetUp.Path()+".soft", soft.Bored.At, "the soft jaws are bored to %s and grip ⌀%s: %s; usually they are bored to it within %s",
		mm(round(bored.Nominal)), mm(round(h.Gripped)), touch, mm(most))
	f.Margin = Bound(off, most, "mm")
}

func softJawsOfAnother(h *eval.Holding, a *Ask) {
	ref := h.Work.SetUp.Soft.Named()
	if h.Unplayed != "" || h.Choice.Vise == nil || !ref.Is() {
		return
	}
	jaws, found := model.Find(h.Part.Build.Shop.SoftJaws, ref.V.Item)
	if !found {
		return
	}
	for _, r := range jaws.ForUseOn.V {
		if r.Item == h.Choice.Vise.Item {
			a.Clear(finding.Margin{}, "")
			return
		}
	}
	if jaws.ForUseOn.Is() {
		f := a.Say(h.Work.SetUp.Path()+".soft", ref.At, "%s are not for %s", jaws.Path(), h.Choice.Vise.Path())
		f.Also = []finding.Note{{Place: jaws.ForUseOn.At, Says: "what they are for"}}
	}
}
