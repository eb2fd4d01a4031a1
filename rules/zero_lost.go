package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "zero-lost",
	Title: "work by the dials goes on after the piece has been taken out",
	Why: `A piece that leaves its holding does not come back to its place by itself: the zero is lost. Finish what is
placed by the dials first, put a stop beside the piece, or find the zero again.`,
	Rows:      []string{"E6"},
	Source:    []string{"order of work as written"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleTakenOut(""),
	Sound:     exampleTakenOut("    stop = { against = \"left\" }\n"),
	Together:  true,
	OnPart:    zeroLost,
})

// exampleTakenOut measures a piece out of its vise, then drills another hole.
func exampleTakenOut(stop string) string {
	s := replaced(exampleHole(), "      makes = hole.pin\n    }\n", `      makes = hole.pin
    }
    deburr {}
    measure {
      size      = height
      with      = micrometer.first
      taken_out = true
    }
    operation {
      makes = hole.other
    }
`)
	s = replaced(s, "    parallels = 10\n", "    parallels = 10\n"+stop)
	return replaced(s, "  setup \"drill\"", `  hole "other" {
    into     = "top"
    at       = { left = 8, front = 15 }
    diameter = 3
  }

  setup "drill"`)
}

func zeroLost(p *eval.PartTrace, a *Ask) {
	for _, s := range p.Stretches() {
		out := false
		for _, m := range s.Moments {
			switch {
			case m.Measure != nil:
				out = out || m.Measure.Step.Step.TakenOut.V
			case m.Cut != nil && out:
				if s.Hold.Work.SetUp.Stop.Said || located(m.Cut) || !placed(m.Cut) {
					a.Clear(finding.Margin{}, "")
					continue
				}
				f := a.Say(s.Hold.Work.SetUp.Path()+"+taken out", m.Cut.Place("makes"),
					"the piece was taken out to be measured, and %s is placed by the dials after that without a stop: its zero is lost", targetName(m.Cut))
				f.Spots[0] = m.Cut.Spot
			case m.Cut != nil:
				a.Clear(finding.Margin{}, "")
			}
		}
	}
}

// placed says whether anything made is placed along or across the table: all but a face
// that looks up.
func placed(k *eval.Cut) bool {
	for _, w := range k.Works {
		if w.Target.Form != nil {
			return true
		}
	}
	return false
}
