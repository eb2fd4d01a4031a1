package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "chuck-over-its-speed",
	Title: "a chuck is to run faster than it is marked for",
	Why: `The faster a chuck turns, the more its jaws are flung outwards: it grips less, and at some speed not at all. The figure
marked on it is what its maker allows.`,
	Rows:      []string{"J5"},
	Source:    []string{"the mark as declared"},
	Level:     finding.Danger,
	Judgement: finding.Fact,
	Caution:   "Work that leaves a chuck flies far. Stay below the marked speed, stand out of its plane, and follow the chuck's manual.",
	Trips:     replaced(exampleWaist(inThree, "speed = 420"), "chuck.three", "chuck.marked") + markedChuck(400),
	Sound:     replaced(exampleWaist(inThree, "speed = 420"), "chuck.three", "chuck.marked") + markedChuck(600),
	OnTurn:    chuckOverItsSpeed,
})

// markedChuck is a chuck with a speed marked on it.
func markedChuck(most float64) string {
	return "\nchuck \"marked\" {\n  jaws       = 3\n  diameter   = 125\n  length     = 85\n  bore       = 32\n  grips      = [3, 60]\n  jaw_length = 25\n  jaw_out    = 150\n  max_speed  = " +
		figure(most) + "\n  mounts     = \"M39x4\"\n}\n"
}

func chuckOverItsSpeed(k *eval.Turn, a *Ask) {
	c := k.Hold.Choice.Chuck
	if c == nil || k.Hold.Unplayed != "" || k.Choice.ByHand || k.Choice.Speed <= 0 {
		return
	}
	a.Asks("what speed is %s marked for?", c.Path())
	if !c.MaxSpeed.Is() {
		return // most small chucks are not marked
	}
	most := c.MaxSpeed.V
	if k.Choice.Speed <= most+1e-6 {
		a.Clear(Bound(k.Choice.Speed, most, "rev/min"), c.Path()+" against its marked speed")
		return
	}
	f := a.Say(c.Path()+".max_speed+"+k.Spot.String(), k.Place("speed", "hold"), "%s is marked %s rev/min at most, and is to run at %s rev/min", c.Path(), figure(most), figure(k.Choice.Speed))
	f.Margin = Bound(k.Choice.Speed, most, "rev/min")
	f.Also = []finding.Note{{Place: c.MaxSpeed.At, Says: "the speed marked on it"}}
}
