package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "zero-lost",
	Title: "work by the dials goes on after the piece has been taken out, or its holding moved",
	Why: `A piece that leaves its holding does not come back to its place by itself, nor does a holding that has been moved: the
zero is lost. Finish what is placed by the dials first, put a stop beside the piece, or find the zero again.`,
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
		if s.Hold.Unplayed == "" {
			zeroKept(p, s, a)
		}
		out := false
		for _, m := range s.Moments {
			switch {
			case m.Measure != nil:
				out = out || m.Measure.Step.Step.TakenOut.V
			case m.Cut != nil && out:
				if stopped(s.Hold) || located(m.Cut) || !placed(m.Cut, alongJaws(s.Hold)) {
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

// stopped says whether something brings each piece of a set-up to the same place.
func stopped(h *eval.Holding) bool {
	return h.Work.SetUp.Stop.Said || h.Work.SetUp.Beside.Is()
}

// zeroKept asks whether a zero that is said to be kept from the set-up before can be: machine and holding must
// be the same and unmoved, and the piece, which is put up afresh, must go against a stop.
func zeroKept(p *eval.PartTrace, s eval.Stretch, a *Ask) {
	u := s.Hold.Work.SetUp
	kept, still := u.Zero.Kept.Is(), u.Moved.Is() && !u.Moved.V
	before := p.HeldBefore(s.Hold)
	switch why := heldOtherwise(before, s.Hold); {
	case !kept && !still:
		return
	case !kept && why != "" && before != nil:
		a.Say(u.Path()+".moved", u.Moved.At, "the holding is said not to have moved, and %s", why)
	case kept && why != "":
		a.Say(u.Path()+".zero", u.Zero.Kept.At, "the zero is to be kept, and %s: it must be found again", why)
	case kept && u.Moved.V:
		a.Say(u.Path()+".zero", u.Zero.Kept.At, "the zero is to be kept, and the holding has been moved on the table: it must be found again")
	case kept && !stopped(s.Hold):
		zeroAfresh(before, s, a)
	default:
		a.Clear(finding.Margin{}, "")
	}
}

// heldOtherwise says how the holding before differs; "" where machine and holding are the same.
func heldOtherwise(before, now *eval.Holding) string {
	was, is := before.On(), now.On()
	switch {
	case before == nil:
		return "no holding comes before this one"
	case was.Item() != is.Item():
		return pathOf(was.Item()) + " was used before, and now " + pathOf(is.Item()) + " is"
	case was.Thing() != is.Thing():
		return pathOf(was.Thing()) + " held the piece before, and now " + pathOf(is.Thing()) + " does"
	}
	return ""
}

// zeroAfresh looks for the first cut that is placed by a zero from before, with nothing to bring the piece
// back to its place.
func zeroAfresh(before *eval.Holding, s eval.Stretch, a *Ask) {
	u, along := s.Hold.Work.SetUp, alongJaws(s.Hold)
	was, is := before.On(), s.Hold.On()
	round := is.Vise != nil && (was.Up != is.Up || was.Back != is.Back)
	for _, m := range s.Moments {
		if m.Cut == nil || located(m.Cut) || !placed(m.Cut, along) && !(round && placed(m.Cut, -1)) {
			continue
		}
		f := a.Say(u.Path()+".zero", u.Zero.Kept.At, "the zero is to be kept, and the piece is put up afresh without a stop before %s is placed by the dials: along the jaws nothing brings it back to its place", targetName(m.Cut))
		if round {
			f.Says = fmt.Sprintf("the zero is to be kept, and the piece is turned round, %s up and %s on the fixed jaw, before %s is placed by the dials: the faces that it was found from lie elsewhere now", is.Up, is.Back, targetName(m.Cut))
		}
		f.Spots[0] = m.Cut.Spot
		return
	}
	a.Clear(finding.Margin{}, "")
}

// alongJaws is the axis of the piece that lies along the jaws of a vise; -1 in any other holding. Across them
// and in height the jaw and the bed bring a piece back to its place.
func alongJaws(h *eval.Holding) int {
	c := h.On()
	if c.Vise == nil || c.Up == model.NoFace || c.Back == model.NoFace || c.Up.Axis() == c.Back.Axis() {
		return -1
	}
	return 3 - c.Up.Axis() - c.Back.Axis()
}

// placed says whether anything made is placed along or across the table: all but a face that looks up, and
// what runs out of the piece at both ends of the free axis.
func placed(k *eval.Cut, free int) bool {
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil {
			continue
		}
		through := free >= 0 && len(f.Mouths) == 0
		for _, end := range []model.Face{model.Left, model.Right, model.Front, model.Back, model.Bottom, model.Top} {
			through = through && (end.Axis() != free || f.Open[end])
		}
		if !through {
			return true
		}
	}
	return false
}
