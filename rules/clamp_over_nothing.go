package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "clamp-over-nothing",
	Title: "a clamp presses where nothing lies under the piece",
	Why: `A strap presses with the force of its stud. Over a gap it bends the piece down; what is cut then is right only until
the clamp comes off, and the piece may rock under the cut. A clamp belongs over metal that stands on the table,
on packing or on a jack.`,
	Rows:      []string{"C5"},
	Source:    []string{"clamp over solid metal or packing, never over a gap: common practice", "geometry of the dry run"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Shifted:   true,
	Trips:     exampleClamped(5),
	Sound:     exampleClamped(35),
	OnHold:    clampOverNothing,
})

// exampleClamped drills a block with a step below its left end, clamped so far from that end.
func exampleClamped(left float64) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 60
  width    = 40
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  step "foot" {
    into  = "bottom"
    side  = "left"
    width = 20
    depth = 5
  }

  hole "pin" {
    into     = "top"
    at       = { right = 8, front = 8 }
    diameter = 6
    depth    = 8
  }

  setup "foot" {
    hold = vise.small
    up   = "bottom"
    jaws = "back"

    operation {
      makes = step.foot
    }
  }

  setup "drill" {
    hold   = clamps.set
    up     = "top"
    back   = "back"
    clamps = [{ at = { left = ` + figure(left) + `, back = 10 }, tip = 8 }]

    operation {
      makes = hole.pin
      tool  = drill.jobbers[6]
    }
  }
}
`
}

func clampOverNothing(h *eval.Holding, a *Ask) {
	for _, b := range h.Bearings() {
		borne, known := Need(a, b.Borne)
		if !known {
			continue
		}
		if borne {
			a.Clear(finding.Margin{}, "")
			continue
		}
		if b.Against {
			clampOffUpright(h, b, a)
			continue
		}
		what := "where nothing lies under the piece, which is bent down there: pack it there, or clamp where it lies on something"
		switch {
		case !b.Metal:
			what = "on nothing: no metal is there"
		case b.Foot > b.Seat+0.0005:
			what = "where the piece ends " + mm(round(b.Foot-b.Seat)) + " above what it lies on, and is bent down: pack that gap, or clamp where it lies on something"
		}
		a.Say(h.Work.SetUp.Path()+".clamps+"+tenth(b.At[0])+"+"+tenth(b.At[1]), b.Place, "the clamp %s and %s of the piece presses %s",
			fromEnd(b.At[0]-h.Lo[0], "the left end"), fromEnd(h.Hi[1]-b.At[1], "the back"), what)
	}
}

// clampOffUpright words a clamp that presses work on an angle plate where that is not behind it.
func clampOffUpright(h *eval.Holding, b eval.Bearing, a *Ask) {
	plate := h.Choice.Plate.Path()
	what := "where the upright of " + plate + " is not behind it: it tips the piece off the plate"
	switch {
	case !b.Metal:
		what = "on nothing: no metal is there"
	case b.Foot < -0.0005:
		what = "where the piece stands " + mm(round(-b.Foot)) + " off the upright of " + plate + ", and is bent: pack that gap, or clamp where it lies on it"
	}
	a.Say(h.Work.SetUp.Path()+".clamps+"+tenth(b.At[0])+"+"+tenth(b.At[2]), b.Place, "the clamp %s and %s of the piece presses %s",
		fromEnd(b.At[0]-h.Lo[0], "the left end"), fromEnd(b.At[2]-h.Lo[2], "the foot"), what)
}

// fromEnd words a distance from an end, or beyond it.
func fromEnd(x float64, end string) string {
	if x < -0.05 {
		return tenth(-x) + " mm beyond " + end
	}
	return tenth(x) + " mm from " + end
}
