package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "jaws-sweep-too-wide",
	Title: "the jaws stand out so far that they strike the bed, or hold by too little of their scroll",
	Why: `Jaws wound out for large work sweep a circle larger than the chuck. They strike the bed, the saddle or a hand, and with
only a turn of the scroll in them they can be thrown. Jaws turned round, a larger chuck or a faceplate hold it inside.`,
	Rows:      []string{"A7"},
	Source:    []string{"geometry; ten millimetres beyond the body: common practice"},
	Limits:    []string{"jaws_beyond_body"},
	Level:     finding.Danger,
	Judgement: finding.Thumb,
	Caution:   "Turn the chuck by hand through a whole turn before starting, keep sleeves and hands away, and follow the chuck's manual.",
	Trips:     wideWork(58),
	Sound:     wideWork(30),
	OnChuck:   jawsSweepTooWide,
})

// wideWork holds a disc of a diameter in a chuck of 125 mm whose jaws sweep 150 mm at 60 mm.
func wideWork(d float64) string {
	return replaced(exampleTurned("", inThree+"\n    jaws_reversed = false", "    operation {\n      makes = face.right\n    }"), "diameter = 20", "diameter = "+figure(d-2))
}

func jawsSweepTooWide(h *eval.Chucking, a *Ask) {
	c, m := h.Choice.Chuck, h.Choice.Machine
	if c == nil || m == nil || h.Gripped == 0 || h.Inside {
		return
	}
	a.Asks("do the jaws of %s clear bed and saddle when it is turned by hand?", c.Path())
	sweep, ok := Need(a, h.Sweeps())
	if !ok {
		return
	}
	if swing, ok := m.Swing.Get(); ok && sweep > swing+0.0005 {
		f := a.Say(c.Path()+".jaw_out+"+m.Path(), h.Place("hold"), "the jaws of %s sweep %s mm as they grip %s mm, and %s swings %s mm over its bed", c.Path(), figure(round(sweep)), figure(round(h.Gripped)), m.Path(), figure(swing))
		f.Margin = Bound(round(sweep), swing, "mm")
		return
	}
	body, ok := Need(a, c.Diameter)
	if !ok {
		return
	}
	out, most := round((sweep-body)/2), a.Limit("jaws_beyond_body")
	if out <= most+0.0005 {
		a.Clear(Bound(out, most, "mm"), "the jaws of "+c.Path()+" beyond its body")
		return
	}
	f := a.Say(c.Path()+".jaw_out+"+h.Part.Label, h.Place("hold"), "gripping %s mm, the jaws of %s stand out %s mm beyond its body; usually %s mm at most", figure(round(h.Gripped)), c.Path(), figure(out), figure(most))
	f.Margin = Bound(out, most, "mm")
}
