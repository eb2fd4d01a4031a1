package rules

import (
	"regexp"
	"strconv"

	"fettle/schema/drawing"
	"fettle/schema/finding"
)

// A recipe in inches gets its sentences in both: every length in millimetres is followed by
// itself in inches. 25.4 mm to the inch, exactly.

var lengths = regexp.MustCompile(`(?:(-?\d+(?:\.\d+)?) to )?(-?\d+(?:\.\d+)?) mm(?:[^²\w]|$)`)

// inBoth rewrites a sentence for a recipe in inches.
func inBoth(s string) string {
	out, at := "", 0
	for _, m := range lengths.FindAllStringSubmatchIndex(s, -1) {
		end := m[5] + len(" mm")
		out += s[at:end] + " ("
		if m[2] >= 0 {
			out += inches(s[m[2]:m[3]]) + " to "
		}
		out += inches(s[m[4]:m[5]]) + " in)"
		at = end
	}
	return out + s[at:]
}

// inches converts a figure, to a tenth of a thou: as fine as a hundredth of a millimetre
// and a little more.
func inches(mm string) string {
	x, err := strconv.ParseFloat(mm, 64)
	if err != nil {
		return mm
	}
	return strconv.FormatFloat(x/drawing.Inch.MM(), 'f', 4, 64)
}

// bothUnits rewrites the sentences of findings.
func bothUnits(fs []finding.Finding) {
	for i := range fs {
		fs[i].Says = inBoth(fs[i].Says)
	}
}
