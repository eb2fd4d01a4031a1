package rules

import (
	"regexp"
	"strconv"
	"strings"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// asMarked words a size of a thing in the shop: in the unit of the findings, and where the shop
// counts in inches and the recipe does not, as it is marked there. A recipe in inches has inches
// behind every figure already.
func asMarked(p *eval.Part, of *model.Item, size float64) string {
	if of == nil || of.Unit != drawing.Inch || p.Build.Recipe.Unit == drawing.Inch {
		return mm(size)
	}
	return mm(size) + " (" + model.Inches(size) + " in)"
}

var members = regexp.MustCompile(`\[inch\(([0-9./ +-]+)\)\]`)

// inMillimetres names the members of sets written in inches by their size in mm: the cause of a
// finding, and so its identity, is the same in either unit.
func inMillimetres(cause string) string {
	if !strings.Contains(cause, "[inch(") {
		return cause
	}
	return members.ReplaceAllStringFunc(cause, func(m string) string {
		sum := 0.0
		for _, part := range strings.Split(members.FindStringSubmatch(m)[1], " + ") {
			over, under, fraction := strings.Cut(part, "/")
			x, err := strconv.ParseFloat(over, 64)
			if err != nil {
				return m
			}
			if y, err := strconv.ParseFloat(under, 64); fraction && err == nil && y > 0 {
				x /= y
			}
			sum += x
		}
		return "[" + figure(sum*drawing.Inch.MM()) + "]"
	})
}
