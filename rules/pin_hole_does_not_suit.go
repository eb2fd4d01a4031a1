package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/fit"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "pin-hole-does-not-suit",
	Title: "a hole is not what its kind of pin wants",
	Why: `A spring pin holds by being squeezed and a grooved pin by the metal beside its grooves: in a hole over its limits either falls
out, in one under them it does not go in or is spoilt. Either goes in a hole as the drill leaves it, and gains nothing from a reamer. A taper pin wants a hole drilled
to its small end and opened with a taper reamer until the pin stands a little out: drilled larger, there is nothing for the reamer to find.`,
	Rows:      []string{"I7", "E16"},
	Source:    []string{"ISO 8752 (spring pins, hole H12), DIN 1470 to 1475 (grooved pins, H11, to 3 mm H9), ISO 2339 (taper pins, 1:50, named by the small end): from memory"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleSprung("4.2 ±0.02"),
	Sound:     exampleSprung("4.05 ±0.05"),
	OnJoint:   pinHoleDoesNotSuit,
})

// exampleSprung is a spring pin of 4 mm in a hole.
func exampleSprung(hole string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "mild steel"
  length   = 40
  width    = 30
  height   = 16

  hole "pin" {
    into     = "top"
    at       = { left = 20, front = 15 }
    diameter = "` + hole + `"
  }
}

pins "spring" {
  kind     = "spring"
  diameter = [3, 4, 5]
}

fit "pin" {
  hole  = part.block.hole.pin.diameter
  shaft = pins.spring[4]
  wants = "-0.6..-0.2"
}
`
}

func pinHoleDoesNotSuit(j *eval.Joint, a *Ask) {
	f := j.Fit
	if f == nil {
		return
	}
	pin, ok := f.Pin(j.Trace)
	if !ok {
		return
	}
	std, ok := handbook.PinOf(pin.Pins.Sort.V, pin.Diameter)
	switch {
	case !ok:
	case pin.Pins.Sort.V == "taper":
		taperPin(j, pin, a)
	case std.Hole != "":
		lo, hi, err := fit.Limits(handbook.ISO286(), pin.Diameter, std.Hole)
		if n := f.Hole.Size; n.Is() && f.Hole.Made == nil && !n.V.Tol.Own() && abs(n.V.Nominal-pin.Diameter) < model.Same {
			a.Clear(finding.Margin{}, "") // drilled with a drill of its size, and no limits of its own
			return
		}
		hole, known := Need(a, f.Hole.Limits)
		if err != nil || !known {
			return
		}
		lo, hi = pin.Diameter+lo, pin.Diameter+hi
		if hole.Lo >= lo-model.Same && hole.Hi <= hi+model.Same {
			a.Clear(Room(round(min(hole.Lo-lo, hi-hole.Hi)), 0), "the hole of "+f.Shaft.Path)
			return
		}
		m := a.Say(f.Hole.Path+"+"+f.Shaft.Path, j.Item.At, "%s is %s, and a %s pin of %s wants a hole of %s (%s)", f.Hole.Path, span(hole), pin.Pins.Sort.V, mm(pin.Diameter), span(eval.Limits{Lo: lo, Hi: hi}), std.Hole)
		m.Also = both(f)
	}
}

// taperPin asks whether the hole is drilled to the small end, and whether a reamer of its taper is here.
func taperPin(j *eval.Joint, pin eval.PinFit, a *Ask) {
	f := j.Fit
	hole, ok := Need(a, f.Hole.Size)
	if !ok {
		return
	}
	if hole.Nominal > pin.Diameter+model.Grain {
		m := a.Say(f.Hole.Path+"+"+f.Shaft.Path, j.Item.At, "%s is %s, and a taper pin of %s is that at its small end: drilled %s larger, the hole has no taper until the pin is %s deeper",
			f.Hole.Path, mm(round(hole.Nominal)), mm(pin.Diameter), mm(round(hole.Nominal-pin.Diameter)), mm(round((hole.Nominal-pin.Diameter)/handbook.PinTaper)))
		m.Also = both(f)
		return
	}
	reamers := false
	for _, c := range j.Trace.Build.Shop.Cutters {
		if c.Kind != "reamer" || !c.Here() {
			continue
		}
		reamers = true
		if t, ok := c.Taper.Get(); ok && abs(t.Ratio-handbook.PinTaper) < 1e-6 && c.Diameter.V.Has(pin.Diameter) {
			a.Clear(finding.Margin{}, "")
			return
		}
	}
	if !reamers {
		a.Lack(model.Lack{Fact: "a taper reamer for " + f.Shaft.Path + " (the shop names no reamer)", At: j.Item.At})
		return
	}
	m := a.Say(f.Shaft.Path+"+reamer", j.Item.At, "no reamer of 1:50 for a taper pin of %s is here; %s is not opened to its taper", mm(pin.Diameter), f.Hole.Path)
	m.Also = both(f)
}
