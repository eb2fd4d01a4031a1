package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "place-lost-with-head",
	Title: "on a round column the head must move between two tools, and the place is lost",
	Why: `A head that swings on a round column does not come down where it was. Every tool of a set-up must reach
and clear within the stroke of the quill from one height of the head, or the centre has to be picked up again. Collets, stub drills and
tools of like length keep the head where it is.`,
	Rows:      []string{"A3"},
	Source:    []string{"arithmetic: heights of the head at which each tool both clears and reaches"},
	Limits:    []string{"room"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleRoundColumn("long"),
	Sound:     exampleRoundColumn("stub"),
	Together:  true,
	OnPart:    placeLostWithHead,
})

// exampleRoundColumn drills with a long drill or a stub one beside a short slot drill in a
// collet, on a mill with a round column.
func exampleRoundColumn(series string) string {
	return replaced(replaced(exampleHole("tool  = drill.own", "holder = drill_chuck.keyed"), "    hold      = vise.small", "    machine   = mill.round\n    hold      = vise.small"), "    }\n  }\n}\n", `    }
    operation {
      makes  = slot.key
      tool   = slot_drill.two[6]
      holder = [collet_chuck.er, collets.er[10]]
    }
  }

  slot "key" {
    into  = "top"
    at    = { front = 5 }
    width = 6
    depth = 4
  }
}

drill "own" {
  diameter = 6
  series   = "`+series+`"
  of       = "HSS"
}

mill "round" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [200, 600, 1800]
  travel        = [300, 140, 200]
  nose_to_table = [40, 350]
  column        = "round"
  quill         = 90
  nose_diameter = 50
}
`)
}

func placeLostWithHead(p *eval.PartTrace, a *Ask) {
	for _, s := range p.Stretches() {
		m := s.Hold.Choice.Machine
		if m == nil || m.Column.V != "round" {
			continue
		}
		headMoves(s, a)
	}
}

func headMoves(s eval.Stretch, a *Ask) {
	m := s.Hold.Choice.Machine
	low, high := math.Inf(-1), math.Inf(1) // heights of the head that serve every tool so far
	var first, last *eval.Cut
	for _, mo := range s.Moments {
		k := mo.Cut
		if k == nil || k.Choice.Tool.Cutter == nil || k.Choice.ByHand || located(k) {
			continue
		}
		t := k.Tower()
		clears, ok := Need(a, t.High)
		reaches, ok2 := Need(a, t.Low)
		q, ok3 := Need(a, m.Quill)
		if !ok || !ok2 || !ok3 {
			return
		}
		lo, hi := clears, reaches+q
		if first != nil && (lo > high+0.0005 || hi < low-0.0005) {
			gap := max(lo-high, low-hi)
			f := a.Say(m.Path()+".column+"+s.Hold.Work.SetUp.Path(), k.Place("tool", "holder"),
				"%s has a round column: with %s its head may stand from %s to %s mm above the table, with %s from %s to %s mm: it must be moved by %s mm in between, and the place is lost",
				m.Path(), last.ToolPath(), tenth(low), tenth(high), k.ToolPath(), tenth(lo), tenth(hi), tenthUp(gap))
			f.Spots[0] = k.Spot
			return
		}
		low, high = max(low, lo), min(high, hi)
		if first == nil {
			first = k
		}
		last = k
	}
	if first != nil && first != last {
		a.Clear(Room(round(high-low), 0), "the heights of the head of "+m.Path()+" that serve "+s.Hold.Work.Spot.SetUp)
	}
}

// located says whether the place of a cut is found by other means than the dials.
func located(k *eval.Cut) bool {
	return k.Step.Step != nil && k.Step.Step.Located.Is() && k.Step.Step.Located.V.Text != "dials"
}
