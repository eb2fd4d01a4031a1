package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "angle-plate-does-not-carry",
	Title: "on a faceplate the angle plate reaches neither far enough out nor far enough in",
	Why: `The foot of an angle plate on a faceplate stands out like a shelf. Work whose middle lies beyond its end tips off while it is
bolted, and hangs on the bolts as it turns. The upright stands as far out as the work is thick on that side of the axis: beyond
the rim of the faceplate no bolt goes through it. A larger plate, or the work turned round, cures it.`,
	Rows:      []string{"C19"},
	Source:    []string{"geometry: the middle of the work against the foot, the upright against the rim of the faceplate"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     onAnglePlate("[80, 28, 60]"),
	Sound:     onAnglePlate("[80, 50, 60]"),
	OnChuck:   anglePlateDoesNotCarry,
})

// onAnglePlate bores a block of steel that lies with its bottom on the foot of an angle plate of a size.
func onAnglePlate(size string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "mild steel"
  length   = 60
  width    = 50
  height   = 40

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "seat" {
    into     = "right"
    at       = { front = 25, bottom = 25 }
    diameter = 10
    depth    = 20
  }

  setup "turn" {
    machine = lathe.centre
    hold    = [angle_plate.own, faceplate.plate]
    up      = "right"
    beside  = "bottom"
    clamps  = [{ on = "top", at = { left = 15, front = 25 }, tip = 8 }, { on = "top", at = { left = 45, front = 25 }, tip = 8 }]

    operation {
      makes = hole.seat
      by    = "drilling"
      speed = 260
    }
  }
}

angle_plate "own" {
  size      = ` + size + `
  thickness = 10
  mass      = 0.65
}
`
}

func anglePlateDoesNotCarry(h *eval.Chucking, a *Ask) {
	p := h.Choice.AnglePlate
	if p == nil || h.Unplayed != "" {
		return
	}
	u := h.Work.SetUp
	s, ok := h.Shelf()
	switch {
	case !ok && !u.Beside.Is():
		Need(a, u.Beside)
		return
	case !ok:
		a.Say(u.Path()+".beside", h.Place("beside"), "the foot of %s stands out along the axis, and the %s face lies across it: the work lies on the foot with a face along the axis", p.Path(), u.Beside.V.Face)
		return
	}
	a.Asks("is the foot of %s square to the faceplate and set to its height with an indicator, and are its bolts tight before the work is put on?", p.Path())
	if foot, ok := Need(a, s.Foot); ok {
		footReaches(h, &s, foot, a)
	}
	uprightReaches(h, &s, a)
}

// footReaches compares the middle of the work with the end of the foot.
func footReaches(h *eval.Chucking, s *eval.Shelf, foot float64, a *Ask) {
	at, ok := h.MiddleAlong()
	if !ok {
		return
	}
	at = round(at + s.Along)
	if at <= foot+0.0005 {
		a.Clear(Bound(at, foot, "mm"), "the middle of "+h.Part.Label+" on the foot of "+s.Plate.Path())
		return
	}
	f := a.Say(s.Plate.Path()+".foot+"+h.Part.Label, h.Place("hold"), "the middle of %s lies %s from %s, and the foot of %s ends at %s: it tips off",
		h.Part.Label, mm(at), h.Choice.HeldBy(), s.Plate.Path(), mm(foot))
	f.Margin = Bound(at, foot, "mm")
	f.Also = []finding.Note{{Place: s.Plate.Size.At, Says: "its size"}}
}

// uprightReaches compares where the upright begins with the rim of the faceplate: a bolt in a slot must go
// between.
func uprightReaches(h *eval.Chucking, s *eval.Shelf, a *Ask) {
	plate := h.Choice.Faceplate
	d, ok := Need(a, plate.Diameter)
	if !ok {
		return
	}
	want, rim := round(s.Off+plate.Slots.Or(0)), round(d/2)
	if want < rim-0.0005 {
		a.Clear(Bound(want, rim, "mm"), "the upright of "+s.Plate.Path()+" on "+plate.Path())
		return
	}
	bolt := "no bolt"
	if plate.Slots.Is() {
		bolt = "no bolt of " + mm(plate.Slots.V) + ", as wide as its slots,"
	}
	f := a.Say(s.Plate.Path()+".upright+"+plate.Path(), h.Place("hold"), "the upright of %s begins %s from the axis, and the rim of %s lies at %s: %s goes through both",
		s.Plate.Path(), mm(round(s.Off)), plate.Path(), mm(rim), bolt)
	f.Margin = Bound(want, rim, "mm")
	f.Also = []finding.Note{{Place: plate.Diameter.At, Says: "its diameter"}}
}
