package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cutter-does-not-lean",
	Title: "gaps of teeth lean, and neither head nor table of the mill leans as far",
	Why: `A disc cutter makes a gap as wide as itself only if its plane lies along the gap. On an upright spindle the head of the mill leans
by the helix angle, or by the lead angle of the worm; under a level spindle the table is swung. A disc that stands square tears the
gap wide and thins the teeth. Straight teeth, a smaller angle, another mill, or packing the dividing head over.`,
	Rows:      []string{"H11"},
	Source:    []string{"the cutter is set to the helix angle: any book on milling (from memory); geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Caution:   "Turn the spindle by hand through a full turn at both ends of the cut before starting: how a leaning cutter and its arbor clear head, chuck and footstock is not reckoned.",
	Deaf:      Mounting,
	Trips:     exampleHelical("tilts         = 10", "20"),
	Sound:     exampleHelical("tilts         = 45", "20"),
	OnCut:     cutterDoesNotLean,
})

// exampleHelical is the wheel of the examples with teeth that lean to the right by so many degrees, on a
// mill of its own of which more is written.
func exampleHelical(machine, helix string) string {
	return helicalOn(exampleWheel("hand   = \"right\"\n    helix  = "+helix, "machine = mill.own", "", ""), machine, "32.925", "[24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100]", "[55, 134]")
}

// helicalOn puts a wheel with teeth that lean on a mill of its own: more of the mill, the blank's diameter,
// the wheels of the head, the range of the cutter.
func helicalOn(s, machine, blank, wheels, teeth string) string {
	s = replaced(replaced(s, "  diameter = 31\n  length", "  diameter = "+blank+"\n  length"), "from     = 60\n    diameter = 31", "from     = 60\n    diameter = "+blank)
	s = replaced(replaced(s, "wheels = []", "wheels = "+wheels), "teeth          = [55, 134]", "teeth          = "+teeth)
	return s + `
mill "own" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [100, 200, 350, 600, 1000, 1800]
  travel        = [300, 140, 200]
  nose_to_table = [40, 400]
  throat        = 200
  column        = "dovetail"
  quill         = 40
  nose_diameter = 50
  backlash      = 0.15
  dials         = { x = { division = 0.05, turn = 5 } }
  ` + machine + `
}
`
}

func cutterDoesNotLean(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if k.Hold.Unplayed != "" || m == nil || k.Hold.Choice.Divided == nil {
		return
	}
	for _, t := range k.Step.Makes {
		_, by, ok := k.LeansBy(t.Form)
		if !ok {
			continue
		}
		if by == 0 {
			a.Clear(finding.Margin{}, "") // the head is set over instead: by how much is another rule's
			continue
		}
		can, what := m.Tilts, "the head of "+m.Path()
		if k.LevelSpindle() {
			can, what = m.TableSwivels, "the table of "+m.Path()
		}
		most, ok := Need(a, can)
		switch {
		case !ok:
		case most < by-1e-6:
			f := a.Say(m.Path()+"+"+t.Form.Name()+"+lean", k.Place("makes"), "the gaps of %s lean %s deg, and %s leans %s deg at most", t.Form.Name(), figure(round(by)), what, figure(round(most)))
			f.Margin = finding.Margin{Has: round(most), Wants: round(by), Unit: "deg"}
			f.Also = []finding.Note{{Place: can.At, Says: "what it can do"}}
		default:
			a.Clear(finding.Margin{Has: round(most), Wants: round(by), Unit: "deg"}, what+" for "+t.Form.Name())
		}
	}
}
