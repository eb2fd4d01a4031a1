package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "speed-not-on-machine",
	Title: "the speed that is written is none that the spindle has",
	Why: `Belts and gears give a handful of speeds and nothing in between, and no two machines have the same. The next
lower one does, as a rule. Below the slowest there is none, and the edge runs faster than was meant.`,
	Rows:      []string{"B5"},
	Source:    []string{"look-up in the speeds of the machine, as declared"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleHole("tool  = drill.jobbers[6]", "speed = 800"),
	Sound:     exampleHole("tool  = drill.jobbers[6]", "speed = 1000"),
	OnCut:     speedNotOnMachine,
	OnTurn:    asCut(speedNotOnMachine),
})

func speedNotOnMachine(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Choice.Tool.Cutter == nil || k.Choice.Speed <= 0 || !speedWritten(k) {
		return
	}
	speeds, ok := Need(a, m.Speeds)
	if !ok {
		return
	}
	slowest, ok := speeds.Slowest()
	if !ok {
		return
	}
	rev := k.Choice.Speed
	if speeds.Has(rev) {
		a.Clear(finding.Margin{}, "")
		return
	}
	says := "its slowest is " + figure(slowest)
	if below, ok := speeds.At(rev); ok {
		says = "its fastest is " + figure(below)
		if above, ok := nextAbove(speeds, rev); ok {
			says = "it runs at " + figure(below) + " or at " + figure(above)
		}
	}
	a.Say(m.Path()+".speeds+"+figure(rev), k.Place("speed"), "%s has no speed of %s rev/min: %s", m.Path(), figure(rev), says)
}

// speedWritten says whether the step or its set-up says the speed.
func speedWritten(k *eval.Cut) bool {
	return k.Step.Step != nil && k.Step.Step.Speed.Is() || k.Step.Work.SetUp.Speed.Is()
}

func nextAbove(s model.Speeds, rev float64) (float64, bool) {
	best, ok := 0.0, false
	for _, v := range s.List {
		if v > rev && (!ok || v < best) {
			best, ok = v, true
		}
	}
	return best, ok
}

// turnsAt is what the spindle can turn at: the speed that was written or chosen, but never
// less than its slowest; named for a sentence, with its cause. 0 where it is not known.
func turnsAt(k *eval.Cut) (rev float64, named, cause string) {
	rev = k.Choice.Speed
	m := k.Hold.Choice.Machine
	slowest, ok := 0.0, false
	if m != nil {
		slowest, ok = m.Speeds.V.Slowest()
	}
	switch {
	case rev <= 0:
		return 0, "", ""
	case m == nil, speedWritten(k) && (!ok || rev >= slowest-model.Same):
		return rev, figure(rev) + " rev/min", k.Spot.String() + ".speed"
	}
	if ok {
		rev = max(rev, slowest)
	}
	return rev, "the slowest speed of " + pathOf(m.Item) + ", " + figure(rev) + " rev/min,", pathOf(m.Item) + ".speeds+" + k.ToolPath()
}
