package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "chuck-grip-too-short",
	Title: "too little of the work lies in the jaws",
	Why: `A cut at the free end pries the work out of the jaws; the shorter the grip, the more the jaws spring open at their
mouth, and the work walks out. A centre at the free end takes the prying away.`,
	Rows:      []string{"C11"},
	Source:    []string{"a third of the jaw, half the diameter, no more than three times the grip standing out: common practice"},
	Limits:    []string{"jaw_grip_share", "chuck_grip_share", "stick_out_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Shifted:   true,
	Trips:     exampleWaist(replaced(inThree, "= 20", "= 8"), ""),
	Sound:     exampleWaist(inThree, ""),
	OnChuck:   chuckGripTooShort,
})

func chuckGripTooShort(h *eval.Chucking, a *Ask) {
	c := h.Choice.Chuck
	if c == nil || h.Supported() || h.Contact == 0 {
		return
	}
	jaw, ok := Need(a, c.JawLength)
	if !ok {
		return
	}
	worst := leastGrip(h, a, jaw)
	grip, what := round(h.Contact), h.Part.Label
	if long, by := h.WrapLength(); long < grip {
		grip, what = round(long), by.Path()+" round "+what
	}
	if grip >= worst.want-0.0005 {
		a.Clear(Room(grip, round(worst.want)), "the grip of "+c.Path())
		return
	}
	f := a.Say(c.Path()+"+"+h.Work.SetUp.Path(), h.Place("grip", "stick_out", "hold"), "%s grips %s of %s; usually at least %s mm is wanted (%s)",
		c.Path(), mm(grip), what, tenthUp(worst.want), worst.why)
	f.Margin = Room(grip, round(worst.want))
}

// gripWanted is a least length of grip, mm, and why.
type gripWanted struct {
	want float64
	why  string
}

// leastGrip is the most that the usual limits ask of the grip of a chuck.
func leastGrip(h *eval.Chucking, a *Ask, jaw float64) (worst gripWanted) {
	for _, b := range []gripWanted{
		{a.Limit("jaw_grip_share") * jaw, fmt.Sprintf("%s of the jaws' %s", hundredth(a.Limit("jaw_grip_share")), mm(jaw))},
		byDiameter(h, a, jaw),
		{h.Free / a.Limit("stick_out_share"), fmt.Sprintf("what stands out, %s, over %s", mm(round(h.Free)), figure(a.Limit("stick_out_share")))},
	} {
		if b.want > worst.want {
			worst = b
		}
	}
	return worst
}

// byDiameter is what thick work asks: no more than the jaws are long, and nothing while less stands out
// than is gripped, as with a disc in the steps of the jaws.
func byDiameter(h *eval.Chucking, a *Ask, jaw float64) gripWanted {
	d := h.RoundGripped()
	want := a.Limit("chuck_grip_share") * d
	switch {
	case h.Free <= h.Contact+0.0005:
		return gripWanted{}
	case want > jaw:
		return gripWanted{jaw, fmt.Sprintf("the whole length of the jaws, for a diameter of %s", mm(round(d)))}
	}
	return gripWanted{want, fmt.Sprintf("%s of the diameter of %s", hundredth(a.Limit("chuck_grip_share")), mm(round(d)))}
}
