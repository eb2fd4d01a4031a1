package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/balance"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "work-out-of-balance",
	Title: "work turns off its middle, faster than the lathe stands still for",
	Why: `A piece set over turns with its mass to one side: it pulls round with the spindle, by the square of the speed. Bolts and jaws
are loaded in turn, the work is cut out of round, and a light lathe walks. A weight opposite, or a lower speed, cures it. An
angle plate on a faceplate hangs on the side that the work lies on, and often weighs more than the work.`,
	Rows: []string{"C19", "J4"},
	Source: []string{"F = m r w^2, mechanics; the piece is counted and an angle plate under it, not clamps, jaws or packing",
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
	weighed := k.Hold.Work.SetUp.Balance
	if weighed.Is() && !weightsKnown(k) {
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
	against := ""
	if weighed.Is() {
		pull, against = eased(k, u.Moment, pull)
	}
	if far, err := balance.Force(u.Most, k.Choice.Speed); err == nil && u.Open.Fact != "" && pull <= most+1e-6 {
		if weighed.Is() {
			far, _ = eased(k, u.Most, far)
		}
		if far > most+1e-6 {
			a.Lack(u.Open)
			return
		}
		pull = far
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
		"%s middle %s mm off the axis: at %s rev/min it pulls round with %s N%s, %s of the weight of %s; usually %s at most (out_of_balance), kept up to %s rev/min without a weight opposite",
		weighsAndTurns(k, &u), tenth(u.Middle), figure(k.Choice.Speed), figure(float64(int(pull+0.5))), against,
		hundredth(pull/most*share), m.Path(), figure(share), figure(float64(int(slow))))
	f.Margin = Bound(round(pull), round(most), "N")
	f.Also = swaysWith(k, &u)
}

// weighsAndTurns says what turns, and what it weighs.
func weighsAndTurns(k *eval.Turn, u *eval.Unbalanced) string {
	if p := k.Hold.Choice.AnglePlate; p != nil {
		return k.Part.Label + " and " + p.Path() + " weigh " + hundredth(u.Kilograms) + " kg together and turn with their"
	}
	return k.Part.Label + " weighs " + hundredth(u.Kilograms) + " kg and turns with its"
}

// swaysWith says how fast the middle of all that turns goes round, where it is known what the faceplate weighs.
func swaysWith(k *eval.Turn, u *eval.Unbalanced) []finding.Note {
	p := k.Hold.Choice.Faceplate
	if p == nil || !p.Mass.Is() || k.Hold.Work.SetUp.Balance.Is() {
		return nil
	}
	all := u.Kilograms + p.Mass.V
	sway, err := balance.Sway(u.Moment, all, k.Choice.Speed)
	if err != nil {
		return nil
	}
	return []finding.Note{{Place: p.Mass.At, Says: "with it " + hundredth(all) + " kg turn, and their middle goes round at " + tenth(sway) + " mm/s; machines in general are balanced to 6.3 (ISO 21940-11, grade G 6.3)"}}
}

// weightsKnown says whether what balances the work is weights of which it is known what they weigh, on a
// faceplate of a known diameter; else weights that are written count as enough.
func weightsKnown(k *eval.Turn) bool {
	w, ok := model.Find(k.Hold.Part.Build.Shop.Weights, k.Hold.Work.SetUp.Balance.V.Item)
	f := k.Hold.Choice.Faceplate
	return ok && w.Masses.Is() && f != nil && f.Diameter.Is()
}

// eased is what is left of a pull with all the weights opposite, as far out as the faceplate goes, and
// how to say so. A weight's own middle lies within the rim: what it takes away is the most that it could.
func eased(k *eval.Turn, m balance.Moment, pull float64) (float64, string) {
	w, _ := model.Find(k.Hold.Part.Build.Shop.Weights, k.Hold.Work.SetUp.Balance.V.Item)
	kg := 0.0
	for _, x := range w.Masses.V {
		kg += x
	}
	least, err := balance.Counterweight(m, k.Hold.Choice.Faceplate.Diameter.V/2)
	if err != nil || least.Kilograms <= kg {
		return 0, ""
	}
	return pull * (1 - kg/least.Kilograms), " with all of " + w.Path() + " at the rim opposite"
}
