package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "tap-not-started-square",
	Title: "a long thread is tapped by hand where nothing holds the tap square",
	Why: `A tap that is started by eye leans; in a deep thread it binds on one side and breaks, or the screw stands crooked.
It is started under the spindle that drilled the hole, before the piece is moved, or through a guide block.`,
	Rows:      []string{"D20"},
	Source:    []string{"limit: own proposal, common practice"},
	Limits:    []string{"tap_start"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     exampleTapBench(true),
	Sound:     exampleTapBench(false),
	OnCut:     tapNotStartedSquare,
})

// exampleTapBench taps a drilled hole by hand, on the bench or under the spindle.
func exampleTapBench(bench bool) string {
	s := replaced(exampleHole(), "    diameter = 6\n", "    diameter = 4.2\n    thread   = { size = \"M5\" }\n")
	if bench {
		return replaced(s, "      makes = hole.pin\n    }\n  }\n", `      makes = hole.pin
    }
  }

  bench "tap" {
    makes = [hole.pin.thread]
  }
`)
	}
	return replaced(s, "      makes = hole.pin\n    }\n", `      makes = hole.pin
    }
    operation {
      makes     = hole.pin.thread
      turned_by = "hand under the spindle"
    }
`)
}

func tapNotStartedSquare(k *eval.Cut, a *Ask) {
	if k.Choice.By != "tapping" {
		return
	}
	for _, t := range k.Step.Makes {
		if t.Sub != "thread" || t.Form == nil {
			continue
		}
		th, ok := t.Form.Feature.Thread.Size.Get()
		fs := k.Part.Feature(k.Before, t.Form)
		if !ok || fs == nil || !fs.Begun || th.Diameter <= 0 {
			continue
		}
		long, known := t.Form.Feature.Thread.Depth.Get()
		if !known {
			long, known = t.Form.Depth.Get()
		}
		if !known {
			continue
		}
		guided := k.Step.Step != nil && k.Step.Step.TurnedBy.V == "hand under the spindle"
		bench := k.Step.Work.Kind == "bench"
		byHand := bench || k.Step.Step != nil && k.Step.Step.TurnedBy.V == "hand"
		limit := a.Limit("tap_start") * th.Diameter
		switch {
		case guided || !byHand:
			a.Clear(finding.Margin{}, "")
			continue
		case long <= limit+1e-9:
			a.Clear(Bound(long, limit, "mm"), "the thread of "+t.Form.Name())
			continue
		}
		f := a.Say(t.Name()+"+start", k.Place("turned_by", "makes"), "%s is %s long, and %s is turned in by hand away from the spindle; usually one longer than %s is started under the spindle, before the piece is moved",
			t.Name(), mm(round(long)), th, mm(round(limit)))
		f.Margin = Bound(long, limit, "mm")
	}
}
