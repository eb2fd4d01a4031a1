package rules

import (
	"math"
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "neck-has-no-room",
	Title: "a tee-slot or dovetail cutter finds no way for its neck, or does not reach",
	Why: `The head cuts below the surface, and its neck has to follow in the open: the throat is milled first, wider than the
neck, and an end is open, since the head cannot be let down through the throat. How far the head stands out beside its
neck is all that it can undercut, and it goes no deeper than its neck is long.`,
	Rows:      []string{"B14"},
	Source:    []string{"geometry of the dry run and of the cutter"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleTee(6),
	Sound:     exampleTee(10),
	OnCut:     neckHasNoRoom,
})

// exampleTee mills a tee slot of some throat with the cutter of the examples, whose neck is 8 mm.
func exampleTee(throat float64) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 50
  width    = 40
  height   = 40

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  tee_slot "bolt" {
    into        = "top"
    at          = { front = 20 }
    width       = ` + figure(throat) + `
    depth       = 17
    foot_width  = 16
    foot_height = 7
  }

  setup "mill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 4

    operation {
      makes = tee_slot.bolt
      tool  = slot_drill.two
    }
    operation {
      makes = tee_slot.bolt
      tool  = tee_slot_cutter.tee
    }
  }
}
`
}

func isNeck(body string) bool { return strings.HasPrefix(body, "the neck of ") }

func neckHasNoRoom(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Unplayed != "" || c.Kind != "tee_slot_cutter" && c.Kind != "dovetail_cutter" {
		return
	}
	for _, w := range k.Works {
		if f := w.Target.Form; f != nil && f.Under != nil {
			undercutFits(k, f, a)
		}
	}
	for _, n := range k.Near {
		switch {
		case !n.Piece || !isNeck(n.Body):
		case n.Sure < 0:
			f := a.Say(pathOf(n.BodyItem)+"+neck", k.Place("tool", "makes"), "%s runs into the piece: what it passes through is not milled open yet, or is too narrow for it", n.Body)
			f.Margin = Room(n.Sure, 0)
		case n.Worst < 0 && len(n.Lacks) > 0:
			a.Lack(n.Lacks...)
		default:
			a.Clear(finding.Margin{}, "")
		}
	}
}

// undercutFits compares the figures of the cutter with those of the form.
func undercutFits(k *eval.Cut, f *eval.Form, a *Ask) {
	c, d, u := k.Choice.Tool.Cutter, k.Choice.Tool.Size, f.Under
	name, tool, at := f.Name(), k.Choice.Tool.Path(), k.Place("tool", "makes")
	cause := tool + "+" + name
	if l, ok := Need(a, c.Reach); ok && f.Depth.V > l+1e-6 {
		m := a.Say(cause+"+reach", at, "%s is %s deep, and %s goes %s deep at most", name, mm(f.Depth.V), tool, mm(l))
		m.Margin = Room(l, f.Depth.V)
	}
	if !u.Tongue && d > u.Foot+1e-6 {
		m := a.Say(cause+"+wide", at, "%s is %s over its teeth, and %s is %s wide at its widest", tool, mm(d), name, mm(round(u.Foot)))
		m.Margin = Bound(d, u.Foot, "mm")
	}
	throat := f.Feature.Width.V.Nominal
	if n, ok := Need(a, c.Neck); ok {
		// The neck may lean to either wall of the throat; of a dovetail the flank runs to the neck.
		side, can := (u.Foot-throat)/2, (d-n)/2
		if side > can+1e-6 {
			m := a.Say(cause+"+under", at, "%s undercuts by %s on each side, and the head of %s stands out %s beside its neck", name, mm(round(side)), tool, mm(round(can)))
			m.Margin = Room(can, side)
		}
	}
	if h, ok := Need(a, c.Width); ok && u.Angle == 0 && h > u.Height+1e-6 {
		m := a.Say(cause+"+high", at, "the head of %s is %s high, and the foot of %s is %s", tool, mm(h), name, mm(u.Height))
		m.Margin = Bound(h, u.Height, "mm")
	} else if ok && u.Angle > 0 && h < u.Height-1e-6 {
		m := a.Say(cause+"+high", at, "the flank of %s is %s high, and the head of %s %s", name, mm(u.Height), tool, mm(h))
		m.Margin = Room(h, u.Height)
	}
	if u.Angle > 0 {
		if deg, ok := Need(a, c.Angle); ok && math.Abs(deg-u.Angle*180/math.Pi) > 0.01 {
			a.Say(cause+"+angle", at, "%s has %s degrees, and %s %s", tool, figure(deg), name, figure(round(u.Angle*180/math.Pi)))
		}
	}
	if !u.Tongue && !f.Open[model.FaceOn(f.Along, 1)] && !f.Open[model.FaceOn(f.Along, -1)] && d > throat+1e-6 {
		a.Say(cause+"+end", at, "%s is closed at both ends, and the head of %s, %s, does not go down through its throat of %s", name, tool, mm(d), mm(throat))
	}
}
