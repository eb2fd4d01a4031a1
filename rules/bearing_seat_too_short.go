package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "bearing-seat-too-short",
	Title: "the seat of a ball bearing is too short to hold it square",
	Why: `A ring that sits in its housing, or on its shaft, by a small part of its width tips as it is pressed in and runs out of line
afterwards. Make the seat about as long as the bearing is wide; a seat that is longer is no fault, and one that is a little shorter lets a
cover hold the ring.`,
	Rows:      []string{"I7"},
	Source:    []string{"half of the width: common practice; width by its number: ISO 15, from memory"},
	Limits:    []string{"bearing_seat"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     exampleRingSeat("3"),
	Sound:     exampleRingSeat("7"),
	OnJoint:   bearingSeatTooShort,
})

// exampleRingSeat is a bearing 608 in a seat of some depth.
func exampleRingSeat(depth string) string {
	return `recipe "example" {
  units = "mm"
}

part "plate" {
  material = "mild steel"
  length   = 50
  width    = 40
  height   = 12

  hole "seat" {
    into     = "top"
    at       = [25, 20]
    diameter = "22 H7"
    depth    = ` + depth + `
    bottom   = "flat"
  }
}

bearings "small" {
  code = "608"
}

fit "race" {
  hole  = part.plate.hole.seat.diameter
  shaft = bearings.small.outside
  wants = "H7/h6"
}
`
}

func bearingSeatTooShort(j *eval.Joint, a *Ask) {
	if j.Fit == nil {
		return
	}
	s, ok := j.Fit.RingSeat(j.Trace)
	if !ok {
		return
	}
	wide, ok := Need(a, s.Width.Size)
	if !ok {
		return
	}
	limit := a.Limit("bearing_seat")
	share := s.Long / wide.Nominal
	if share >= limit-1e-6 {
		a.Clear(finding.Margin{Has: share, Wants: limit, Unit: "of its width"}, "the seat of "+s.Thing.Item.Path())
		return
	}
	in := "in"
	if s.On {
		in = "on"
	}
	f := a.Say(s.Seat.Path+"+"+s.Thing.Item.Path(), s.Seat.Size.At, "%s sits %s %s for %s of its %s; usually for %s of its width at least (bearing_seat)",
		s.Thing.Item.Path(), in, s.Seat.Path, mm(round(s.Long)), mm(round(wide.Nominal)), figure(limit))
	f.Margin = finding.Margin{Has: round(share), Wants: limit, Unit: "of its width"}
	f.Also = []finding.Note{{Place: j.Item.At, Says: "by this fit"}}
}
