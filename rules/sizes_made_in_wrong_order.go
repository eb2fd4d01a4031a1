package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "sizes-made-in-wrong-order",
	Title: "a shaft is finished before its hole, and the hole is sized by a tool that cuts one size only",
	Why: `A reamer or a drill leaves the hole that it leaves. Turned first, the shaft fits by luck; turned after, it is brought to the
hole in the last cut. Make the hole first and the shaft to suit it.`,
	Rows:      []string{"F5"},
	Source:    []string{"order of work as written: after, and the order of the set-ups; common practice for fitted pairs"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleOrder("part.pin", ""),
	Sound:     exampleOrder("", "part.ring"),
	OnJoint:   sizesMadeInWrongOrder,
})

// exampleOrder is a pin that is turned and a hole that is reamed, either after the other.
func exampleOrder(ring, pin string) string {
	after := func(what string) string {
		if what == "" {
			return ""
		}
		return "    after = [" + what + "]\n"
	}
	s := examplePin(`"8 H7"`, `"8 g6"`, `"H7/g6"`)
	s = replaced(s, "    diameter = \"8 H7\"\n  }\n", `    diameter = "8 H7"
  }

  setup "ream" {
    hold = vise.small
    up   = "top"
    jaws = "back"
`+after(ring)+`
    operation {
      makes = hole.seat
      to    = 7.8
    }
    operation {
      makes = hole.seat
      by    = "reaming"
    }
  }
`)
	return replaced(s, "    diameter = \"8 g6\"\n  }\n", `    diameter = "8 g6"
  }

  setup "turn" {
    end = "right"
`+after(pin)+`
    operation {
      makes = outside.seat
    }
  }
`)
}

func sizesMadeInWrongOrder(j *eval.Joint, a *Ask) {
	f := j.Fit
	if f == nil || f.Hole.Made != nil {
		return
	}
	hole, shaft := j.Trace.Maker(&f.Hole), j.Trace.Maker(&f.Shaft)
	how, ok := j.Trace.FixedTool(&f.Hole)
	if hole == nil || shaft == nil || !ok {
		return
	}
	switch {
	case j.Trace.Before(shaft, hole):
		m := a.Say(f.Hole.Path+"+"+f.Shaft.Path, f.Hole.Form.Feature.Item.At, "%s is finished in %s, before %s, which comes out as the tool of its last step (%s) leaves it; make the hole first and the shaft to suit",
			f.Shaft.Path, shaft.Path(), f.Hole.Path, how)
		m.Also = []finding.Note{{Place: shaft.At, Says: "the shaft"}, {Place: hole.At, Says: "the hole"}}
	case j.Trace.Before(hole, shaft):
		a.Clear(finding.Margin{}, "")
	}
}
