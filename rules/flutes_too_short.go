package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "flutes-too-short",
	Title: "the cut is deeper than the flutes of the tool are long, and its shank is as thick",
	Why: `Behind the flutes a milling cutter does not cut. Where its shank is as thick as its edges it rubs on the
wall, burns it and pushes the cutter over; a drill's flutes must also carry the chips out of the hole.`,
	Rows:      []string{"A16"},
	Source:    []string{"common practice; lengths of drills: ISO 235, from memory"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleDeepSlot(20),
	Sound:     exampleDeepSlot(12),
	OnCut:     flutesTooShort,
	OnTurn:    asCut(flutesTooShort),
})

// exampleDeepSlot mills a slot so deep with a slot drill whose flutes are 19 mm long.
func exampleDeepSlot(depth float64) string {
	s := replaced(exampleSlot(""), "depth = 4", "depth = "+figure(depth))
	s = replaced(s, "height   = 20", "height   = 30")
	s = replaced(s, "width = 6", "width = 10")
	return replaced(s, "slot_drill.two[6]", "slot_drill.two[10]")
}

func flutesTooShort(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Unplayed != "" || !oneOf(c.Kind, "end_mill", "slot_drill", "drill") {
		return
	}
	for _, w := range k.Works {
		if !w.Facing {
			continue
		}
		deep := w.Deep
		if w.Target.Form != nil && len(w.Target.Form.Mouths) > 0 {
			deep = w.Passed + w.Depth
		}
		flutes, ok := Need(a, k.Stack.Flutes)
		if !ok {
			continue
		}
		if deep <= flutes+0.0005 {
			a.Clear(Bound(round(deep), flutes, "mm"), "the depth of "+w.Target.Name()+" against the flutes of "+k.ToolPath())
			continue
		}
		shank, ok := Need(a, k.Stack.Shank)
		if c.Neck.Is() {
			shank, ok = c.Neck.V, true
		}
		if !ok {
			continue
		}
		if c.Kind != "drill" && shank < k.Choice.Tool.Size-0.01 {
			if each := saidPass(k); each > flutes+0.0005 {
				f := a.Say(k.ToolPath()+".flute_length+"+w.Target.Name()+".cut", k.Place("cut"), "a pass of %s goes %s mm deep and its flutes are %s long: behind them it does not cut",
					k.ToolPath(), figure(round(each)), mm(flutes))
				f.Margin = Bound(round(each), flutes, "mm")
				continue
			}
			a.Clear(finding.Margin{}, "")
			continue
		}
		f := a.Say(k.ToolPath()+".flute_length+"+w.Target.Name(), k.Place("tool"),
			"%s is %s deep and the flutes of %s are %s long: behind them its shank of %s rubs", w.Target.Name(), mm(round(deep)), k.ToolPath(), mm(flutes), mm(shank))
		if c.Kind == "drill" {
			what := w.Target.Name() + " is "
			if k.Hold.Above() > 0 {
				what = w.Target.Name() + " with what lies on the piece is "
			}
			f.Says = what + mm(round(deep)) + " deep and the flutes of " + k.ToolPath() + " are " + mm(flutes) + " long: the chips cannot get out"
		}
		f.Margin = Bound(round(deep), flutes, "mm")
	}
}

// saidPass is how deep a pass goes that is written, no deeper than what there is to cut, mm; 0 where none is.
func saidPass(k *eval.Cut) float64 {
	p, ok := k.Passes()
	if !ok || !p.Said.Is() {
		return 0
	}
	return min(p.Said.V, p.Deep)
}
