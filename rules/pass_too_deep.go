package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "pass-too-deep",
	Title: "the cutter is sent deeper into a slot in one pass than it usually bears",
	Why: `A cutter as wide as its slot cuts with half of its rim, and the chips have nowhere to go. The deeper the pass the more it
bends, the slot runs off, and a small cutter breaks. Shallower passes, and more of them, get there.`,
	Rows:      []string{"H10"},
	Source:    []string{"half the diameter at most of high-speed steel, usually in aluminium, less in the rest: seen in nominal cutting data"},
	Limits:    []string{"slot_pass"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     examplePass(4),
	Sound:     examplePass(2),
	OnCut:     passTooDeep,
})

// examplePass mills a slot of 6 mm, 4 mm deep, in passes so deep.
func examplePass(cut float64) string {
	return replaced(exampleSlot(""), "slot_drill.two[6]", "slot_drill.two[6]\n      cut   = "+figure(cut))
}

func passTooDeep(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Step.Step == nil || !k.Step.Step.Cut.Is() || !oneOf(c.Kind, "end_mill", "slot_drill") || k.Choice.By != "milling" {
		return
	}
	p, ok := k.Passes()
	if !ok || !slotted(k) || c.Of.V == "carbide" {
		return
	}
	each, d := p.Said.V, k.Choice.Tool.Size
	if p.Deep < each {
		each = p.Deep
	}
	most := a.Limit("slot_pass") * d
	if each <= most+0.0005 {
		a.Clear(Bound(round(each), round(most), "mm"), "the depth of a pass of "+k.ToolPath())
		return
	}
	f := a.Say(k.ToolPath()+".cut+"+k.Spot.String(), p.Said.At, "%s goes %s deep into the full width of %s in one pass; usually it goes %s at most, and less in hard metal",
		k.ToolPath(), mm(round(each)), targetName(k), mm(round(most)))
	f.Margin = Bound(round(each), round(most), "mm")
}

// slotted says whether the cutter is as wide as a slot that it makes.
func slotted(k *eval.Cut) bool {
	for _, w := range k.Works {
		if f := w.Target.Form; f != nil && oneOf(f.Feature.Kind, "slot", "pocket", "keyway") && f.Width > 0 && f.Width < 1.5*k.Choice.Tool.Size {
			return true
		}
	}
	return false
}
