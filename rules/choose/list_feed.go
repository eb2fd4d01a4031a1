package choose

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// feedChoices tells how an operation is fed, how deep a pass goes and what is put on the cut, where
// the recipe leaves it open.
func feedChoices(spot finding.Spot, f eval.Feeding, p eval.Passes, cuts bool, oil string, said bool) (out []Choice) {
	add := func(what, item, why string) {
		out = append(out, Choice{Spot: spot, What: what, Item: item, Why: why})
	}
	if !f.Said.Is() && f.Lead == 0 && !f.Printed.None() {
		add("feed", "by hand, "+model.Figure(round(f.Printed.Lo))+" to "+model.Figure(round(f.Printed.Hi))+" "+over(f), "as printed; no feed of the machine is known")
	}
	if n := p.Count(); cuts && n > 0 && !p.Said.Is() {
		add("cut", fmt.Sprintf("%s, %s mm at most each", passes(n), model.Figure(round(p.Usual))), "the deepest that is usual for tool and metal")
	}
	if oil != "" && !said {
		add("oil", oil, "common practice, by process and metal")
	}
	return out
}

// over is what a printed feed is counted over.
func over(f eval.Feeding) string {
	if f.Printed.PerTooth {
		return "mm/tooth"
	}
	return "mm/rev"
}

func passes(n int) string {
	if n == 1 {
		return "1 pass"
	}
	return fmt.Sprintf("%d passes", n)
}
