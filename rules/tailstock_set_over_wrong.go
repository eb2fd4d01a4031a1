package rules

import (
	"math"

	"fettle/eval"
	"fettle/eval/reckon/taper"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "tailstock-set-over-wrong",
	Title: "the tailstock is set over where it may not be, farther than it goes, or by another figure than the taper wants",
	Why: `Set over, the tailstock turns a slow taper along all the work, between centres only: in a chuck it bends the work instead. The
figure hangs on the whole length between the centres, not on the length of the taper.`,
	Rows: []string{"A20"},
	Source: []string{"set-over = whole length x taper / 2: Machinery Repairman; Rose (see eval/reckon/taper)",
		"a twentieth of a millimetre on diameter over the taper: what a tailstock is set to by indicator, common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleSetOver("3"),
	Sound:     exampleSetOver("2.325"),
	OnTurn:    tailstockSetOverWrong,
})

// exampleSetOver turns a taper of 1:40 over the half of a piece of 186 mm between centres, the
// tailstock set over.
func exampleSetOver(by string) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = 20
  length   = 186

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  centre_hole "left" {
    into = "left"
  }

  centre_hole "right" {
    into = "right"
  }

  outside "cone" {
    from     = 96
    diameter = 20
  }

  taper "nose" {
    on        = outside.cone
    size      = "1:40"
    large_end = "left"
  }

  setup "first" {
    machine   = lathe.centre
    hold      = chuck.three
    end       = "left"
    stick_out = 160

    operation {
      makes = centre_hole.right
    }
  }

  setup "other" {
    machine   = lathe.centre
    hold      = chuck.three
    end       = "right"
    stick_out = 160

    operation {
      makes = centre_hole.left
    }
  }

  setup "turn" {
    machine  = lathe.centre
    hold     = "centres"
    end      = "left"
    set_over = ` + by + `

    operation {
      makes = taper.nose
    }
  }
}
`
}

// setOverGrain is how far off the diameter may come over a taper that is turned with the tailstock set
// over, mm.
const setOverGrain = 0.05

func tailstockSetOverWrong(k *eval.Turn, a *Ask) {
	set, ok := k.Hold.Work.SetUp.SetOver.Get()
	m := k.Lathe()
	if !ok || set == 0 || m == nil || k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		ratio, ok := eval.TaperOf(w.Target.Form)
		if !ok || w.Wrong != "" || w.Inside {
			continue
		}
		name, cause := w.Target.Name(), k.Hold.Work.SetUp.Path()+".set_over"
		if !k.Hold.Choice.Centres {
			a.Say(cause, k.Place("set_over", "hold"), "the tailstock is set over by %s mm for %s, and the work is held in %s: set over it bends the work, and turns a taper between centres only",
				figure(math.Abs(set)), name, k.Hold.Choice.HeldBy())
			continue
		}
		cone, err := taper.OnDiameter(ratio)
		if err != nil {
			return
		}
		whole, long := k.Hold.Between(), w.X1-w.X0
		want, _, err := cone.SetOver(whole)
		if err != nil {
			return
		}
		if goes, ok := Need(a, m.Tailstock.SetOver); ok && math.Abs(set) > goes+0.0005 {
			f := a.Say(m.Path()+".tailstock.set_over+"+name, k.Place("set_over"), "the tailstock of %s can be set over %s, and %s mm is asked", m.Path(), mm(goes), figure(math.Abs(set)))
			f.Margin = Bound(math.Abs(set), goes, "mm")
			continue
		}
		off := 2 * math.Abs(math.Abs(set)-want) / whole * long
		if off <= setOverGrain+1e-9 {
			a.Clear(Bound(round(off), setOverGrain, "mm"), "the set-over for "+name)
			continue
		}
		f := a.Say(cause+"+"+name, k.Place("set_over"), "%s wants the tailstock set over by %s mm on %s mm between centres, and it is set over by %s: over its %s mm the diameter comes %s mm off",
			name, figure(round(want)), figure(round(whole)), mm(math.Abs(set)), figure(round(long)), figure(round(off)))
		f.Margin = Bound(round(off), setOverGrain, "mm")
	}
}
