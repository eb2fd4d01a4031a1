package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "joint-not-cleaned",
	Title: "what lies across a joint is made before the joint's faces are cleaned",
	Why: `What is bored over a joint as the saw left it is bored round; cleaning the two faces afterwards takes metal out of the middle of
it, and closed again it is too small across the joint.`,
	Rows:      []string{"F3"},
	Source:    []string{"cleaning the joint adds to the kerf: geometry"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleHalves("", "screws", "saw", "bore", "base", "cap"),
	Sound:     exampleHalves("", "screws", "saw", "base", "cap", "bore"),
	OnHold:    jointNotCleaned,
})

func jointNotCleaned(h *eval.Holding, a *Ask) {
	if !h.Before.Closed || h.Part.Apart == nil {
		return
	}
	j := h.Part.Apart.Joint
	split := j.Form
	rough := ""
	for n, s := range h.Before.Joint {
		if !s.Done {
			rough = split.Feature.Pieces.V[n]
		}
	}
	for _, x := range h.Part.Halved(split) {
		f := h.Part.Forms[x.Form]
		if !madeIn(h, f) {
			continue
		}
		if rough == "" {
			a.Clear(finding.Margin{}, "")
			continue
		}
		a.Say(h.Work.SetUp.Path()+"+"+split.Name(), h.Place("piece", "hold"), "%s is made across %s, and the joint's face on %s is still as the saw left it: cleaning both faces takes %s more out of %s; clean them first",
			f.Name(), split.Name(), rough, mm(2*j.Clean), f.Name())
	}
}

// madeIn says whether a holding's steps make a feature.
func madeIn(h *eval.Holding, f *eval.Form) bool {
	for _, st := range h.Work.Steps {
		for _, t := range st.Makes {
			if t.Form != nil && t.Form.Feature == f.Feature && t.Sub == "" {
				return true
			}
		}
	}
	return false
}
