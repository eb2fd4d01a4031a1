package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "wrench-has-no-room",
	Title: "a wall of the piece stops the handle of the tap wrench",
	Why: `A tap goes down as it turns, and its wrench with it. Where a wall beside the hole stands higher than the wrench comes to lie,
the handle strikes it; with a quarter turn of room the wrench can still be set on again and again, with less it cannot.`,
	Rows:      []string{"A17"},
	Source:    []string{"geometry; squares of taps from memory (ISO 237)"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     exampleQuarterTurn(20),
	Sound:     exampleQuarterTurn(60),
	OnCut:     wrenchHasNoRoom,
})

// exampleQuarterTurn taps a hole by hand so far from a wall.
func exampleQuarterTurn(from float64) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 90
  width    = 60
  height   = 60

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  step "low" {
    into  = "top"
    side  = "left"
    width = 70
    depth = 50
  }

  hole "screw" {
    into   = step.low.floor
    at     = { left = ` + figure(70-from) + `, front = 30 }
    thread = { size = "M6" }
  }

  bench "hand work" {
    operation {
      makes = step.low
      by    = "filing"
    }
    operation {
      makes = hole.screw
    }
    operation {
      makes     = hole.screw.thread
      turned_by = "hand"
      tool      = tap.own
    }
  }
}

tap "own" {
  threads = ["M6"]
  leads   = ["taper"]
  overall = 66
}

tap_wrench "own" {
  swing = 160
}
`
}

// quarter is the least turn, in degrees, after which a wrench goes on the square again.
const quarter = 90

func wrenchHasNoRoom(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || !k.Choice.ByHand || k.Unplayed != "" || !oneOf(k.Choice.By, "tapping", "reaming") {
		return
	}
	wrench := wrenchFor(k)
	if wrench == nil {
		return
	}
	swing, known := Need(a, wrench.Swing)
	if !known {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		if w.Wrong != "" || len(w.Moves) == 0 {
			continue
		}
		t, known := Need(a, k.WrenchTurns(w, swing))
		switch {
		case !known:
			return
		case t.Free >= quarter:
			a.Clear(finding.Margin{}, "")
			continue
		}
		f := a.Say(wrench.Path()+"+"+w.Target.Name(), k.Place("holder", "turned_by", "tool", "makes"),
			"%s sweeps a circle of %s and comes to lie %s above the tip of %s; metal stands there %s from the axis of %s, and the handle turns through %s° only: a quarter turn at least is wanted to set it on again",
			wrench.Path(), mm(swing), mm(round(t.High)), k.ToolPath(), mm(round(t.At)), w.Target.Form.Name(), figure(t.Free))
		f.Margin = Room(t.At, swing/2)
		return
	}
}

// wrenchFor is what a tap or hand reamer is turned with: the wrench that is written, else the one of the shop.
func wrenchFor(k *eval.Cut) *model.Holder {
	for _, m := range k.Choice.Mounts {
		if m.Holder != nil && m.Holder.Kind == "tap_wrench" {
			return m.Holder
		}
	}
	return eval.Wrench(&k.Part.Build.Shop, k.Choice.Tool)
}
