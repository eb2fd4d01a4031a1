package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "keyway-ends-in-metal",
	Title: "a keyway or a gap of teeth in a bore ends where its tool cannot come out",
	Why: `A planed or broached keyway, or gap between teeth, is cut in strokes along the bore. Where it ends in the metal the chips stay at
its end, the tool jams in them and breaks, and a broach cannot go on at all. Drill a hole or turn a recess there, as deep as its
floor, or let it run through.`,
	Rows:      []string{"D17", "H9"},
	Source:    []string{"how a keyway is planed: common practice; geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Caution:   "Hold the spindle from turning by its back gear, a pin or a clamp, never by the motor: switch the lathe off at the wall while a bore is planed.",
	Trips:     examplePlaned("16", "46"),
	Sound:     examplePlaned("16", "40"),
	OnCut:     keywayEndsInMetal,
	OnTurn:    keywayPlanedIntoMetal,
})

// examplePlaned planes a keyway in a bore of a diameter that goes 20 mm deep into the free end, from
// so far along the axis.
func examplePlaned(wide, from string) string {
	return exampleTurned(`
  bore "seat" {
    into     = "right"
    from     = 40
    diameter = `+wide+`
  }

  groove "relief" {
    on       = bore.seat
    from     = 40
    width    = 4
    diameter = 19
  }

  hole "pilot" {
    into     = "right"
    diameter = 11
    depth    = 20
  }

  keyway "key" {
    into  = bore.seat
    from  = `+from+`
    width = 3
    depth = 1.4
  }
`, inThree, `
    operation {
      makes = face.right
    }
    operation {
      makes = hole.pilot
    }
    operation {
      makes = bore.seat
    }
    operation {
      makes = groove.relief
      by    = "boring"
    }
    operation {
      makes = keyway.key
      tool  = boring_bar.slim
    }`)
}

func keywayPlanedIntoMetal(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" || k.Choice.By != "planing" {
		return
	}
	lackingKey(a, k.Step)
	for _, w := range k.Works {
		if f := w.Target.Form; f != nil && f.KeyBore != nil && w.Wrong == "" {
			a.Asks("is a bit ground to %s mm wide for %s, its sides relieved, and is the spindle held from turning?", figure(round(f.Width)), f.Name())
			keyEnds(a, k.Part, f, k.Before, k.Place("makes"))
		}
		if f := w.Target.Form; f != nil && f.Tooth != nil && w.Wrong == "" {
			a.Asks("is a bit ground to the gap of %s, and is the spindle held from turning at every gap?", f.Name())
			toothEnds(a, k.Part, f, k.Own, k.Place("makes"))
		}
	}
}

func keywayEndsInMetal(k *eval.Cut, a *Ask) {
	if k.Choice.By != "broaching" {
		return
	}
	lackingKey(a, k.Step)
	for _, w := range k.Works {
		if f := w.Target.Form; f != nil && f.Tooth != nil && f.Tooth.Inside && w.Wrong == "" {
			toothEnds(a, k.Part, f, k.Before, k.Place("makes"))
		}
		if f := w.Target.Form; f != nil && f.KeyBore != nil && w.Wrong == "" {
			a.Asks("is a broach of %s mm here, with a guide bush for a bore of %s mm?", figure(round(f.Width)), figure(round(2*f.KeyBore.Radius)))
			keyEnds(a, k.Part, f, k.Before, k.Place("makes"))
		}
	}
}

// lackingKey says what is not known of a keyway that is to be cut along a bore.
func lackingKey(a *Ask, st *eval.Step) {
	for _, t := range st.Makes {
		if t.Form != nil && t.Form.Feature.Kind == "keyway" {
			a.Lack(t.Form.Lacks...)
		}
	}
}

// keyEnds says which end of a keyway lies in the metal.
func keyEnds(a *Ask, p *eval.Part, f *eval.Form, before *eval.State, at text.Place) {
	left, right := p.KeyEnds(f)
	comeOut(a, p, f, before, at, left, right, f.KeyBore.Radius+f.KeyBore.Deep)
}

// toothEnds says which end of the gaps of teeth in a bore lies in the metal; of teeth on an outside the
// dry run says it.
func toothEnds(a *Ask, p *eval.Part, f *eval.Form, before *eval.State, at text.Place) {
	if f.Tooth.Inside {
		left, right := p.ToothEnds(f)
		comeOut(a, p, f, before, at, left, right, f.Tooth.Root)
	}
}

// comeOut says which end of what is cut along a bore, so far from its line, lies in the metal.
func comeOut(a *Ask, p *eval.Part, f *eval.Form, before *eval.State, at text.Place, left, right eval.KeyEnd, reach float64) {
	across := figure(round(2 * reach))
	for _, e := range [2]eval.KeyEnd{left, right} {
		switch {
		case !e.Out:
			a.Say(f.Name()+"+"+figure(round(e.X)), at, "%s ends in the metal at %s mm along its bore: the tool does not come out there; a hole or a recess %s mm across would let it",
				f.Name(), figure(round(e.X)), across)
		case e.Recess != nil && !p.Begun(before, e.Recess):
			a.Say(f.Name()+"+"+e.Recess.Name(), at, "%s is to end in %s, which is not made yet: the tool does not come out there", f.Name(), e.Recess.Name())
		default:
			a.Clear(finding.Margin{}, "")
		}
	}
}
