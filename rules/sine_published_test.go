package rules_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/rules"
	"fettle/schema/printed"
)

// leaning is a block that leans on a sine bar, with slip gauges of a set.
func leaning(centres string, angle float64, set string) string {
	s := rules.Find("sine-bar-not-close-enough").Sound
	s = strings.ReplaceAll(s, "by = 30", fmt.Sprintf("by = %.10f", angle))
	s = strings.Replace(s, "centres = 100", "centres = \""+centres+"\"", 1)
	return strings.Replace(s, `"M47"`, `"`+set+`"`, 1)
}

// sineSet plays such a block, and gives how its tilt is set.
func sineSet(t *testing.T, recipe string) eval.SineSet {
	t.Helper()
	trace, _ := madeIn(t, recipe, rules.ExampleShop)
	for _, m := range trace.Parts[0].Moments {
		if m.Hold == nil {
			continue
		}
		if s, ok := m.Hold.SineSet(); ok {
			return s
		}
	}
	t.Fatalf("nothing leans in\n%s", recipe)
	return eval.SineSet{}
}

// Printed heights under a sine bar, and printed counts of blocks, as a recipe asks for them: what the dry run
// puts under the roller is the printed height, and the set that is here makes it of as many blocks as printed.
// A stack is asked for by the angle that it sets on a bar long enough that it does not stand steeper than 45 degrees;
// rows with wear blocks are left to the reckoning, since nothing in a recipe asks for such.
func TestPublishedSineBarsInRecipes(t *testing.T) {
	bars, stacks := 0, 0
	for _, r := range printed.Rows(t, "taper.tsv", 5) {
		given := strings.Fields(r[1])
		switch {
		case r[0] == "sine bar":
			bars++
			centres, unit, set := given[0]+" mm", 1.0, "M88"
			if printed.Figure(t, given[0]) < 20 {
				centres, unit, set = given[0]+" in", 25.4, "E81"
			}
			s := sineSet(t, leaning(centres, printed.Figure(t, given[1]), set))
			if got := s.Wants / unit; math.Abs(got-printed.Figure(t, r[2])) > printed.Figure(t, r[3]) {
				t.Errorf("%s at %s degrees stands on %v, printed %s in %s", centres, given[1], got, r[2], r[4])
			}
			if most := 0.00051 * unit; !s.Made || math.Abs(s.Stack.Off) > most {
				t.Errorf("%s at %s degrees: %s, wanted within %v mm of %v", centres, given[1], s.Stack.Words(), most, s.Wants)
			}
		case r[0] == "stack" && given[2] == "0":
			stacks++
			height, bar, unit := printed.Figure(t, given[1]), 200.0, "mm"
			if strings.HasPrefix(given[0], "E") {
				bar, unit = 10, "in"
			}
			if set := given[0] + " " + given[1]; set == "M88 50.0005" {
				continue // a height of recipes is sought to 0.001 mm
			}
			s := sineSet(t, leaning(fmt.Sprintf("%v %s", bar, unit), math.Asin(height/bar)*180/math.Pi, given[0]))
			if len(s.Stack.Blocks) != int(printed.Figure(t, r[2])) || math.Abs(s.Stack.Off) > 1e-6 {
				t.Errorf("%s for %s %s: %s, printed %s blocks in %s", given[0], given[1], unit, s.Stack.Words(), r[2], r[4])
			}
		}
	}
	if bars < 7 || stacks < 15 {
		t.Errorf("%d bars and %d stacks are asked", bars, stacks)
	}
}
