package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "vee-block-does-not-fit",
	Title: "the round work is thinner or thicker than the vee block takes",
	Why: `Work that is too thin lies on the relief at the bottom of the vee, or below its edges where no clamp gets at it; too thick it
rides on the edges. Either way it rolls under the first cut.`,
	Rows: []string{"A14", "D10"},
	Source: []string{"look-up: the diameters that the shop declares for its block",
		"a side of a vee of the angle a touches d/2 sin(a/2) nearer to the bottom than the axis, which stands d/(2 sin(a/2)) from it: geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleInVee("[15, 50]"),
	Sound:     exampleInVee("[5, 50]"),
	OnHold:    veeBlockDoesNotFit,
})

// exampleInVee drills across a pin of 12 mm that lies in a vee block of its own.
func exampleInVee(bars string) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = 12
  length   = 60

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "body" {
    diameter = 12
  }

  hole "cross" {
    into     = outside.body
    at       = [50, 0]
    diameter = 2
  }

  setup "drill" {
    machine = mill.bench
    hold    = [v_block.own, vise.small]
    up      = "top"

    operation {
      makes = hole.cross
    }
  }
}

v_block "own" {
  bars   = ` + bars + `
  height = 20
  vee    = 10
}
`
}

// sameInVees is how much the diameters in the two blocks of a pair may differ before the work is said to
// lean, mm: as much as it may be uneven as stock. Common practice.
const sameInVees = 0.05

// veeBlockDoesNotFit holds the diameter that lies in the vee against what the owner says of the block, and
// against its own geometry.
func veeBlockDoesNotFit(h *eval.Holding, a *Ask) {
	v := h.Vee
	if v == nil {
		return
	}
	cause := v.Block.Path() + "+" + h.Part.Label
	if !v.Standing() {
		a.Say(cause, h.Work.SetUp.Vee.Looks.At, "the vee of %s looks up, and %s stands on end: it lies in no vee that looks up", v.Block.Path(), h.Part.Label)
		return
	}
	if long, ok := v.Block.Length.Get(); ok && v.Upright && long <= h.Choice.Height+h.Choice.Packing+0.0005 {
		f := a.Say(cause, h.Place("parallels", "packing", "hold"), "%s stands %s high on its end, and %s begins %s above its foot: it does not reach it", v.Block.Path(), mm(long), h.Part.Label, mm(h.Choice.Height+h.Choice.Packing))
		f.Margin = Bound(h.Choice.Height+h.Choice.Packing, long, "mm")
		return
	}
	for _, d := range v.Each {
		if math.Abs(d-v.Each[0]) > sameInVees {
			a.Say(cause, veePlace(h), "%s lies on %s mm in the one block of %s and on %s mm in the other: its axis leans", h.Part.Label, figure(round(v.Each[0])), v.Block.Path(), figure(round(d)))
			return
		}
	}
	veeBars(h, a, cause)
	veeTooShallow(h, a, cause)
}

// veeBars holds the diameter against those that the block is said to take.
func veeBars(h *eval.Holding, a *Ask, cause string) {
	v := h.Vee
	bars, ok := Need(a, v.Block.Bars)
	if !ok || len(bars) != 2 {
		return
	}
	d := round(v.D)
	var f *finding.Finding
	switch {
	case d < bars[0]-0.0005:
		f = a.Say(cause, veePlace(h), "%s takes work of %s mm at least, and %s is %s mm where it lies in it", v.Block.Path(), figure(bars[0]), h.Part.Label, figure(d))
		f.Margin = Room(d, bars[0])
	case d > bars[1]+0.0005:
		f = a.Say(cause, veePlace(h), "%s takes work of %s mm at most, and %s is %s mm where it lies in it", v.Block.Path(), figure(bars[1]), h.Part.Label, figure(d))
		f.Margin = Bound(d, bars[1], "mm")
	default:
		a.Clear(finding.Margin{}, "")
		return
	}
	f.Also = []finding.Note{{Place: v.Block.Bars.At, Says: "the diameters that it takes"}}
}

// veeTooShallow asks whether the sides of the vee touch the work: below the top of the block and clear of
// the slot along its bottom.
func veeTooShallow(h *eval.Holding, a *Ask, cause string) {
	v := h.Vee
	vee, ok := Need(a, v.Block.Vee)
	high, ok2 := Need(a, v.Block.Height)
	if !ok || !ok2 {
		return
	}
	touch := round(vee + v.Touch)
	switch slot := v.Block.Relief.V; {
	case high <= vee+0.0005:
		a.Say(cause, veePlace(h), "%s is %s high, and the sharp bottom of its vee lies %s above its foot: it has no vee", v.Block.Path(), mm(high), mm(vee))
	case touch > high+0.0005:
		f := a.Say(cause, veePlace(h), "the sides of the vee would touch %s %s above the foot of %s, which is %s high: it rides on the edges of the vee", h.Part.Label, mm(touch), v.Block.Path(), mm(high))
		f.Margin = Bound(touch, high, "mm")
	case v.Block.Relief.Is() && 2*v.Aside() < slot-0.0005:
		f := a.Say(cause, veePlace(h), "the sides of the vee would touch %s %s apart, and the slot at the bottom of %s is %s wide: it lies on the edges of the slot", h.Part.Label, mm(round(2*v.Aside())), v.Block.Path(), mm(slot))
		f.Margin = Room(round(2*v.Aside()), slot)
	default:
		a.Clear(Bound(touch, high, "mm"), "the height of the sides of "+v.Block.Path())
	}
}

// veePlace is where a set-up names its vee block.
func veePlace(h *eval.Holding) text.Place {
	for _, r := range h.Work.SetUp.Hold.V {
		if r.Item == h.Vee.Block.Item {
			return r.At
		}
	}
	return h.Place("hold")
}
