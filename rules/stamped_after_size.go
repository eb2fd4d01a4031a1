package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "stamped-after-size",
	Title: "figures are stamped into a surface that nothing is taken off afterwards",
	Why: `A punch throws up an edge round every figure, and swells or bends a thin ring. Stamped with the ring supported from inside
and some hundredths left on, the surface is skimmed clean and to its size afterwards.`,
	Rows:      []string{"H15"},
	Source:    []string{"order in use: common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleStamped(""),
	Sound:     exampleStamped(skimmed),
	OnPart:    stampedAfterSize,
})

// exampleStamped is a dial with figures stamped at the bench, and what follows.
func exampleStamped(then string) string {
	return replaced(exampleDial(40, `figures = { every = 10, height = 2 }`), "      makes = graduations.scale\n    }\n  }\n", `      makes = graduations.scale
    }
  }

  bench "stamp" {
    mark {
      out     = [graduations.scale]
      figures = "0 10 20 30 40"
    }
  }
`+then)
}

const skimmed = `
  setup "skim" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "left"
    grip    = 15

    operation {
      makes = outside.rim
    }
  }
`

func stampedAfterSize(p *eval.PartTrace, a *Ask) {
	for _, s := range p.Part.Stamps() {
		if s.After {
			a.Clear(finding.Margin{}, "")
			continue
		}
		on := "the outside of " + p.Part.Label
		switch {
		case s.Form.Scale.End:
			on = "the " + s.Form.Into.Name + " face"
		case s.Form.On != nil:
			on = s.Form.On.Name()
		}
		f := a.Say(p.Part.Label+"."+s.Form.Name()+".stamped", s.Step.Step.Item.At, "the figures of %s are stamped, and nothing is taken off %s afterwards: leave some hundredths on it and skim it clean", s.Form.Name(), on)
		f.Spots = []finding.Spot{s.Step.Spot}
	}
}
