package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
)

var _ = enter(Rule{
	Name:  "measured-while-warm",
	Title: "a close size is measured while the work is still warm from heavy cuts",
	Why: `Cutting warms the work, and what is warm is larger than it will be. A size that is brought to the middle of its limits in
the lathe or the mill, straight after much metal came off, has gone below them when the piece is cold. Let it cool before the last
cut, or compare it with something of the same metal that is as warm.`,
	Rows: []string{"E8"},
	Source: []string{"alpha L dT; alpha of steel 11.5 and of aluminium 23.1 in a million for each degree: NIST J. Res. 99 (1994) 31, of others the handbook's band, whose lower end is taken",
		"25 degrees after heavy cuts, a quarter of the limits, and from how much metal on the work is warm: own proposals, common practice"},
	Limits:    []string{"warming", "warming_share", "warm_from"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     exampleWarm("20 ±0.01", "8"),
	Sound:     exampleWarm("20 ±0.05", "8"),
	OnMeasure: measuredWhileWarm,
})

// exampleWarm mills so much off the top of a block and takes its height before the vise is opened.
func exampleWarm(height, over string) string {
	s := replaced(exampleHole(), "height   = 20", "height   = \""+height+"\"")
	s = replaced(s, "top = 0,", "top = "+over+",")
	return replaced(s, "      makes = hole.pin\n    }\n", `      makes = face.top
    }
    measure {
      size = height
    }
`)
}

func measuredWhileWarm(m *eval.Measurement, a *Ask) {
	if m.Wrong != "" || m.With == nil || m.Tried || m.Runs || m.Angle || m.Step.Work.Kind != "setup" || !(m.Size.Nominal > 0) {
		return
	}
	lim, ok := m.Limits.Get()
	metal, ok2 := m.Part.Material.Get()
	if !ok || !ok2 {
		return // other rules ask for these
	}
	e, ok := handbook.ElasticOf(metal.Name)
	if !ok || !e.Expansion.Known() {
		return
	}
	grows := e.Expansion.Lo * m.Size.Nominal * a.Limit("warming")
	most := a.Limit("warming_share") * lim.Width()
	switch {
	case grows <= most+1e-9:
		a.Clear(Bound(round(grows), round(most), "mm"), m.Name+" of warm work")
	case m.TakenOff() < a.Limit("warm_from"):
		a.Clear(finding.Margin{}, "")
	default:
		f := a.Say(m.Spot.Part+"."+m.Name+"+warm", m.Place("size", "with"),
			"%s is measured in the holding in which metal as much as %s of what is left came off; %s degrees warmer than when it is cold it is %s larger, and its limits lie %s apart: let it cool before the last cut",
			m.Name, hundredth(m.TakenOff()), figure(a.Limit("warming")), mm(round(grows)), mm(round(lim.Width())))
		f.Margin = Bound(round(grows), round(most), "mm")
	}
}
