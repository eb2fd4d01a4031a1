package rules

import (
	"fmt"
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "worm-lead-cannot-be-cut",
	Title: "no train of the lathe's wheels comes near the lead of the worm",
	Why: `The pitch of a worm is pi times the module, which no train gives exactly; with the right wheels it comes out within a few
parts in a hundred thousand. Where the nearest train is off by more than the play of the teeth over the pitches in mesh, the worm binds in its
wheel. A hob or tap of the same lathe's pitch cuts both alike, and a worm of a pitch that can be cut wants another module.`,
	Rows: []string{"H12"},
	Source: []string{"lead pi m times starts: any gear text; trains: reckon/screwcut",
		"three pitches in mesh and a play of 0.04 modules: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleWormCut("wheels = [40, 50]"),
	Sound:     exampleWormCut("wheels = [20, 30, 40, 50, 60, 70, 80, 95, 100, 127]"),
	OnTurn:    wormLeadCannotBeCut,
})

// exampleWormCut is a worm of module 1 on a lathe of its own.
func exampleWormCut(wheels string) string {
	return `recipe "example" {
  units = "mm"
}

part "worm" {
  material = "mild steel"
  diameter = 20
  length   = 60

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "thread" {
    from     = 30
    diameter = 20
  }

  worm "drive" {
    on     = outside.thread
    module = 1
  }

  setup "turn" {
    machine = lathe.own
    hold    = chuck.three
    end     = "left"
    grip    = 20

    operation {
      makes = worm.drive
    }
  }
}

lathe "own" {
  swing       = 250
  bore        = 26
  nose        = "M39x4"
  speeds      = [60, 100, 160, 260]
  lead_screw  = 3
  fixed_train = 1
  ` + wheels + `
}
`
}

// mostOff is the greatest error of a worm's lead, in parts of a million: it takes a play of 0.04
// modules over three pitches, 0.04/(3 pi).
const mostOff = 0.04 / (3 * math.Pi) * 1e6

func wormLeadCannotBeCut(k *eval.Turn, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Hold.Unplayed != "" || k.Choice.By != "threading" || k.Step.Step.Wheels.Is() {
		return
	}
	for _, t := range k.Step.Makes {
		if t.Form == nil || t.Form.Feature.Kind != "worm" {
			continue
		}
		_, ok := Need(a, m.LeadScrew)
		_, ok2 := Need(a, m.Wheels)
		_, ok3 := Need(a, m.FixedTrain)
		if ok && ok2 && ok3 {
			wormTrain(k, t.Form, a)
		}
	}
}

func wormTrain(k *eval.Turn, f *eval.Form, a *Ask) {
	m := k.Hold.Choice.Machine
	pitch, lead, err := eval.WormLead(f.Feature)
	if err != nil {
		return
	}
	found, err := eval.Trains(m, lead, eval.NearWorm)
	if err != nil {
		return
	}
	says := fmt.Sprintf("the lead of %s is %s mm, and no train of two pairs of the wheels of %s comes within a fiftieth of it", f.Name(), figure(round(lead.MM())), m.Path())
	if len(found.Trains) > 0 {
		best := found.Trains[0]
		if math.Abs(best.PPM) <= mostOff {
			a.Clear(finding.Margin{Has: round(math.Abs(best.PPM)), Wants: round(mostOff), Unit: "ppm", Less: true}, "the lead of "+f.Name()+" by "+best.String())
			return
		}
		says = fmt.Sprintf("the lead of %s is %s mm; the nearest train of the wheels of %s, %s, cuts %s mm: over three pitches that is %s mm off",
			f.Name(), figure(round(lead.MM())), m.Path(), best.String(), figure(round(best.Lead)), figure(round(math.Abs(best.Over(3*pitch.MM())))))
	}
	a.Say(m.Path()+"+"+f.Name(), k.Place("makes"), "%s", says)
}
