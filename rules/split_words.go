package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// worksOf lists what a moment makes.
func worksOf(m eval.Moment) []eval.Target {
	var out []eval.Target
	switch {
	case m.Cut != nil:
		for _, w := range m.Cut.Works {
			if w.Wrong == "" {
				out = append(out, w.Target)
			}
		}
	case m.Turn != nil:
		for _, w := range m.Turn.Works {
			if w.Wrong == "" {
				out = append(out, w.Target)
			}
		}
	}
	return out
}

// finishedBy says whether a form of the part is at its size after a moment.
func finishedBy(m eval.Moment, form int) bool {
	switch {
	case m.Cut != nil:
		return m.Cut.After.Features[form].Finished
	case m.Turn != nil:
		return m.Turn.After.Features[form].Finished
	}
	return false
}

// stepOf names the step of a moment.
func stepOf(m eval.Moment) string {
	var spot finding.Spot
	switch {
	case m.Cut != nil:
		spot = m.Cut.Spot
	case m.Turn != nil:
		spot = m.Turn.Spot
	}
	if spot.Step == "" {
		return spot.SetUp
	}
	return spot.SetUp + " (" + spot.Step + ")"
}

// limitsAcross are the limits of a form's size across a joint: of its diameter or width.
func limitsAcross(p *eval.PartTrace, f *eval.Form) model.Known[eval.Limits] {
	size, attr := f.Feature.Diameter, "diameter"
	if !size.Is() {
		size, attr = f.Feature.Width, "width"
	}
	if !size.Is() {
		return model.Known[eval.Limits]{}
	}
	return eval.LimitsOf(size.V, p.Part.Build.Recipe.General, f.Feature.Item, attr)
}
