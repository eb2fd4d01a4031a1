package report

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/text"
)

// Spotted gives findings about how a recipe is written the place in the work that they stand
// in: the part, set-up and step whose block holds the place in the file. One that stands in no
// part's block, or in a shop's file, has none.
func Spotted(slips []finding.Finding, t *eval.Trace) []finding.Finding {
	out := make([]finding.Finding, len(slips))
	for i, f := range slips {
		if spot := spotOf(t, f.Place); len(f.Spots) == 0 && spot.Part != "" {
			f.Spots = []finding.Spot{spot}
		}
		out[i] = f
	}
	return out
}

func spotOf(t *eval.Trace, at text.Place) finding.Spot {
	for _, p := range t.Makings() {
		if !within(at, p.Part.Item.Body) {
			continue
		}
		for _, w := range p.Part.Work {
			if w.SetUp == nil || !within(at, w.SetUp.Item.Body) {
				continue
			}
			for _, st := range w.Steps {
				if st.Step != nil && within(at, st.Step.Item.Body) {
					return st.Spot
				}
			}
			return finding.Spot{Part: w.Spot.Part, SetUp: w.Spot.SetUp}
		}
		return finding.Spot{Part: p.Part.Label}
	}
	return finding.Spot{}
}

func within(at, body text.Place) bool {
	return at.File == body.File && !at.None() && body.From <= at.From && at.To <= body.To
}
