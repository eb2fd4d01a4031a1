package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/balance"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "work-out-of-balance",
	Title: "work turns off its middle, faster than the lathe stands still for",
	Why: `A piece set over turns with its mass to one side: it pulls round with the spindle, by the square of the speed. Bolts and jaws
are loaded in turn, the work is cut out of round, and a light lathe walks. A weight opposite, or a lower speed, cures it.`,
	Rows: []string{"C19", "J4"},
	Source: []string{"F = m r w^2, mechanics; the piece alone is counted, not clamps, jaws or packing",
		"a twentieth of the lathe's weight: common practice without a source"},
	Limits:    []string{"out_of_balance"},
	Level:     finding.Danger,
	Judgement: finding.Thumb,
	Caution: "Work that is out of balance can throw a clamp, a weight or itself. Turn it over by hand first, begin at the lowest speed, " +
		"stand out of its plane, and follow the manual of the machine.",
	Trips:  unbalanced("1100"),
	Sound:  unbalanced("260"),
	OnTurn: workOutOfBalance,
})

// unbalanced turns a boss near one end of a block of steel at a speed.
func unbalanced(speed string) string {
	s := replaced(exampleBoss("chuck.four", "12"), "EN AW-6082", "mild steel")
	return replaced(s, "makes = outside.boss", "makes = outside.boss\n      speed = "+speed)
}

func workOutOfBalance(k *eval.Turn, a *Ask) {
	m := k.Lathe()
	known, off := k.Unbalanced()
	if !off || m == nil {
		return
	}
	if k.Hold.Work.SetUp.Balance.Is() {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Asks("does %s stand still wherever it is turned to by hand, clamps and weights on it?", k.Hold.Choice.HeldBy())
	u, ok := Need(a, known)
	weight, ok2 := Need(a, m.Weight)
	if k.Choice.Speed <= 0 {
		Need(a, m.Speeds)
		return
	}
	if !ok || !ok2 {
		return
	}
	share := a.Limit("out_of_balance")
	most, err := balance.Weight(weight, share)
	pull, err2 := balance.Force(u.Moment, k.Choice.Speed)
	if err != nil || err2 != nil {
		return
	}
	if pull <= most+1e-6 {
		a.Clear(Bound(round(pull), round(most), "N"), "the pull of "+k.Part.Label+" off its middle")
		return
	}
	slow, _, err := balance.SpeedAt(u.Moment, most)
	if err != nil {
		return
	}
	f := a.Say(k.Hold.Work.SetUp.Path()+".balance", k.Place("speed", "hold"),
		"%s weighs %s kg and turns with its middle %s mm off the axis: at %s rev/min it pulls round with %s N, %s of the weight of %s; usually %s at most (out_of_balance), kept up to %s rev/min without a weight opposite",
		k.Part.Label, hundredth(u.Kilograms), tenth(u.Middle), figure(k.Choice.Speed), figure(float64(int(pull+0.5))),
		hundredth(pull/most*share), m.Path(), figure(share), figure(float64(int(slow))))
	f.Margin = Bound(round(pull), round(most), "N")
}
