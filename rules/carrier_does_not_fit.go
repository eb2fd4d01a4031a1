package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "carrier-does-not-fit",
	Title: "the carrier does not go on the work between centres, or does not turn over the bed",
	Why: `Between centres nothing turns the work but the carrier on its end. One that is too small does not go on, one that is too large
bottoms its screw before it holds; its tail sweeps a circle that must clear the bed.`,
	Rows:      []string{"A6"},
	Source:    []string{"look-up: the diameters that the shop declares; the circle that it sweeps against the swing: geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleDriven("[4, 20]", "110"),
	Sound:     exampleDriven("[4, 40]", "110"),
	OnChuck:   carrierDoesNotFit,
})

// exampleDriven turns a pin of 22 mm between centres, driven by a carrier of its own.
func exampleDriven(bars, swing string) string {
	return exampleWaist(`    machine = lathe.centre
    hold    = "centres"
    end     = "left"
    driver  = carrier.own`, "") + `
carrier "own" {
  bars  = ` + bars + `
  swing = ` + swing + `
}
`
}

func carrierDoesNotFit(h *eval.Chucking, a *Ask) {
	if !h.Choice.Centres || h.Choice.Machine == nil {
		return
	}
	d, ok := h.Driven()
	if !ok {
		return
	}
	c, found := h.Carrier()
	switch {
	case found:
		carrierOn(h, c, d, a)
	case h.Work.SetUp.Driver.Is():
	default:
		a.Lack(model.Lack{Fact: "what drives the work between centres (driver)"})
	}
}

func carrierOn(h *eval.Chucking, c *model.Carrier, d float64, a *Ask) {
	m := h.Choice.Machine
	bars, ok := Need(a, c.Bars)
	if ok && len(bars) == 2 {
		if d < bars[0]-0.0005 || d > bars[1]+0.0005 {
			f := a.Say(c.Path()+".bars+"+h.Part.Label, h.Place("driver", "hold"), "%s goes on %s to %s mm, and %s is %s mm thick at the end that it drives",
				c.Path(), figure(bars[0]), figure(bars[1]), h.Part.Label, figure(round(d)))
			f.Also = []finding.Note{{Place: c.Bars.At, Says: "the diameters that it holds"}}
			return
		}
		a.Clear(Bound(round(d), bars[1], "mm"), "the end of "+h.Part.Label+" in "+c.Path())
	}
	sweeps, ok := Need(a, c.Swing)
	swing, ok2 := Need(a, m.Swing)
	if !ok || !ok2 || sweeps <= swing+0.0005 {
		return
	}
	f := a.Say(c.Path()+".swing+"+m.Path(), h.Place("driver", "hold"), "%s sweeps a circle of %s, and %s swings %s over its bed", c.Path(), mm(sweeps), m.Path(), mm(swing))
	f.Margin, f.Also = Bound(sweeps, swing, "mm"), []finding.Note{{Place: c.Swing.At, Says: "the circle that it sweeps"}}
}
