package rules_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/printed"
	"fettle/schema/text"
)

// Printed fits of ISO 286 as a recipe writes them: the play of the joint is the printed one, the rule finds
// the fit as it is wanted, and only what is printed as interference counts as pressed.
func TestPublishedFitsAsJoints(t *testing.T) {
	recipe := "recipe \"fits\" {\n  units = \"mm\"\n}\n"
	var rows [][]string
	for _, r := range printed.Rows(t, "fit.tsv", 8) {
		if r[0] != "fit" {
			continue
		}
		n, d := len(rows), r[1]
		hole, shaft, _ := strings.Cut(r[2], "/")
		rows = append(rows, r)
		recipe += fmt.Sprintf(`
part "ring %d" {
  length = 200
  width  = 200
  height = 20

  hole "seat" {
    into     = "top"
    at       = [100, 100]
    diameter = "%s %s"
  }
}

part "pin %d" {
  diameter = "%s %s"
  length   = 30
}

fit "%d" {
  hole  = part["ring %d"].hole.seat.diameter
  shaft = part["pin %d"].diameter
  wants = "%s"
}
`, n, d, hole, n, d, shaft, n, n, n, r[2])
	}
	b, slips, err := schema.Load(text.Archive{"recipe/recipe.hcl": []byte(recipe), "shop/shop.hcl": []byte(rules.ExampleShop)}, "recipe", "shop")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips)
	}
	trace, vs, _ := choose.Choose(b, choose.Effort)
	seen := 0
	for _, j := range trace.Joints {
		if j.Fit == nil {
			continue
		}
		var n int
		fmt.Sscan(j.Item.Label, &n)
		r := rows[n]
		seen++
		least, most := printed.Figure(t, r[3]), printed.Figure(t, r[4])
		p := j.Fit.Play
		if !p.Is() || math.Abs(p.V.Lo*1000-least) > 0.05 || math.Abs(p.V.Hi*1000-most) > 0.05 {
			t.Errorf("%s %s: %+v, printed %v to %v in %s", r[1], r[2], p, least, most, r[7])
		}
		if pressed := j.Fit.Pressed(); !pressed.Is() || pressed.V != (r[5] == "interference") {
			t.Errorf("%s %s is pressed: %+v, printed %s", r[1], r[2], pressed, r[5])
		}
	}
	if seen < 11 {
		t.Errorf("%d fits are asked", seen)
	}
	for _, v := range vs {
		if v.Rule.Name == "fit-not-as-wanted" && v.Kind == rules.Trouble {
			t.Errorf("%v", v.Found)
		}
	}
}
