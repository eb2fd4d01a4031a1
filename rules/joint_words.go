package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/text"
)

// span words two limits of a size.
func span(l eval.Limits) string {
	if round(l.Lo) == round(l.Hi) {
		return mm(round(l.Lo))
	}
	return figure(round(l.Lo)) + " to " + mm(round(l.Hi))
}

// placeIn is where a joint says something, else its head.
func placeIn(j *eval.Joint, attrs ...string) text.Place {
	for _, name := range attrs {
		if a := j.Item.Attr(name); a != nil {
			return a.Value.At
		}
	}
	return j.Item.At
}

// both are the places of the two diameters of a fit.
func both(f *eval.FitJoint) []finding.Note {
	return []finding.Note{{Place: f.Hole.Size.At, Says: "the hole"}, {Place: f.Shaft.Size.At, Says: "the shaft"}}
}
