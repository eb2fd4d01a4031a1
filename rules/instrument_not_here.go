package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "instrument-not-here",
	Title: "the instrument that is named is lent out, still to be made, or on order",
	Why: `A size that nothing can be held against is not known. Have the instrument back before the work begins,
or measure with another that is here.`,
	Rows:      []string{"B18"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOwnMicrometer("lent out"),
	Sound:     exampleOwnMicrometer("borrowed"),
	OnMeasure: instrumentNotHere,
})

// exampleOwnMicrometer measures a piece with a micrometer in such a state.
func exampleOwnMicrometer(state string) string {
	return replaced(exampleHole(), "      makes = hole.pin\n    }\n", `      makes = hole.pin
    }
    deburr {}
    measure {
      size      = height
      with      = micrometer.own
      taken_out = true
    }
`) + `
micrometer "own" {
  range    = [0, 25]
  reads_to = 0.01
  anvil    = 6.5
  state    = "` + state + `"
}
`
}

func instrumentNotHere(m *eval.Measurement, a *Ask) {
	i := m.With
	if g, ok := m.Gauged(); ok && i == nil {
		gaugesHere(g.Set, m, a)
		return
	}
	switch {
	case i == nil:
	case i.Here():
		a.Clear(finding.Margin{}, "")
	default:
		f := a.Say(i.Path()+".state", m.Place("with"), "%s is not here: its state is %q", i.Path(), i.State.V)
		f.Also = []finding.Note{{Place: i.State.At, Says: "its state"}}
	}
}

func gaugesHere(g *model.SlipGauges, m *eval.Measurement, a *Ask) {
	if g.Here() {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(g.Path()+".state", m.Place("with"), "%s is not here: its state is %q", g.Path(), g.State.V)
	f.Also = []finding.Note{{Place: g.State.At, Says: "its state"}}
}
