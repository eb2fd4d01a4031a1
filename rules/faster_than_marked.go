package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "faster-than-marked",
	Title: "a tool is to run faster than the speed that is marked on it",
	Why: `The figure on a large disc, an inserted cutter or a wheel is what its maker has tried it at. Above
it the tool can burst, or throw a tooth or an insert, with the force of a shot.`,
	Rows: []string{"J5"},
	Source: []string{"never run a wheel, a disc or a saw above the speed marked on it: common practice",
		"the mark as declared"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution:   "A disc that bursts is thrown with great force. Stay below the marked speed, stand out of its plane, and follow the machine's manual.",
	Trips:     exampleMarked(90),
	Sound:     exampleMarked(200),
	OnCut:     fasterThanMarked,
	OnTurn:    asCut(fasterThanMarked),
})

// exampleMarked saws with a saw that is marked with a highest speed.
func exampleMarked(most float64) string {
	return replaced(exampleSlit("holder = arbor.stub"), "slitting_saw.fine", "slitting_saw.marked") + `
slitting_saw "marked" {
  diameter  = 63
  width     = 0.8
  bore      = 16
  max_speed = ` + figure(most) + `
}
`
}

func fasterThanMarked(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.ByHand || !c.MaxSpeed.Is() {
		return // what is not marked is judged by its cutting speed
	}
	m := k.Hold.Choice.Machine
	if m == nil {
		return
	}
	a.Asks("%s is marked %s rev/min at most: does the spindle run slower?", k.ToolPath(), figure(c.MaxSpeed.V))
	turns, says, cause := turnsAt(k)
	if turns <= 0 {
		Need(a, m.Speeds)
		return
	}
	if turns <= c.MaxSpeed.V+1e-6 {
		a.Clear(Bound(turns, c.MaxSpeed.V, "rev/min"), k.ToolPath()+" against its marked speed")
		return
	}
	f := a.Say(cause+"+"+c.Path()+".max_speed", k.Place("speed", "tool"), "%s is marked %s rev/min at most, and is to run at %s",
		k.ToolPath(), figure(c.MaxSpeed.V), bare(says))
	f.Also = append(f.Also, finding.Note{Place: c.MaxSpeed.At, Says: "the speed marked on it"})
	f.Margin = Bound(turns, c.MaxSpeed.V, "rev/min")
}

// bare is a clause without the comma at its end.
func bare(s string) string {
	if n := len(s); n > 0 && s[n-1] == ',' {
		return s[:n-1]
	}
	return s
}
