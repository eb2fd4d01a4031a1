package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "measured-over-odd-teeth",
	Title: "a diameter with an odd number of teeth is taken between two flat anvils",
	Why: `Over an odd number of teeth a tip lies on one anvil and two on the other, and the reading is short. Take the diameter
before the teeth are cut, measure from a tip to the bore and double it, or reckon the shortfall in.`,
	Rows:      []string{"E11"},
	Source:    []string{"radius times (1 - cos(180/teeth)): geometry of two parallel anvils over the tips"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleOddTeeth(15, true),
	Sound:     exampleOddTeeth(16, true),
	OnMeasure: measuredOverOddTeeth,
})

// exampleOddTeeth is a ratchet wheel so measured after its notches are cut, or before.
func exampleOddTeeth(count int, after bool) string {
	measure := `
    measure {
      size = outside.rim.diameter
      with = micrometer.second
    }
`
	first, then := measure, ""
	if after {
		first, then = "", measure
	}
	return `recipe "example" {
  units = "mm"
}

part "wheel" {
  material = "brass"
  diameter = 40
  length   = 30

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "rim" {
    from     = 22
    diameter = "32 ±0.05"
  }

  teeth "ring" {
    on    = outside.rim
    count = ` + figure(float64(count)) + `
    form  = "notch"
    notch = { width = 2, depth = 2 }
  }

  setup "turn" {
    end = "left"

    operation {
      makes = outside.rim
    }
` + first + `  }

  bench "file" {
    makes = [teeth.ring]
    by    = "filing"
  }

  setup "again" {
    end = "left"
` + then + `  }
}

micrometer "second" {
  range    = [25, 50]
  reads_to = 0.01
  anvil    = 6.5
}
`
}

func measuredOverOddTeeth(m *eval.Measurement, a *Ask) {
	if m.With == nil || !oneOf(m.With.Kind, "micrometer", "caliper") {
		return
	}
	if f, ok := m.OddFlats(); ok && m.With.AnvilForm.V != "vee" {
		a.Say(m.With.Path()+"+"+f.Name(), m.Place("with", "size"), "%s has %d flats, and none of them lies opposite another: between the anvils of %s there is no %s to take; measure from each flat to the round opposite it, or over a vee",
			f.Name(), f.Feature.Count.V, m.With.Path(), m.Name)
		return
	}
	f, short, ok := m.OddTeeth()
	if ok && m.With.AnvilForm.V == "vee" {
		a.Clear(finding.Margin{}, "") // made for odd numbers of edges
		return
	}
	if !ok {
		if m.Form != nil && m.Form.Feature.Kind == "outside" {
			a.Clear(finding.Margin{}, "")
		}
		return
	}
	lim, ok := Need(a, m.Limits)
	if !ok {
		return
	}
	if short <= lim.Width()/10 {
		a.Clear(Bound(round(short), round(lim.Width()/10), "mm"), m.Name+" over "+f.Name())
		return
	}
	n := a.Say(m.With.Path()+"+"+f.Name(), m.Place("with", "size"), "%s has %d teeth, and between the anvils of %s a tip lies against two: %s reads %s short",
		f.Name(), f.Tooth.Count, m.With.Path(), m.Name, mm(round(short)))
	n.Margin = Bound(round(short), round(lim.Width()/10), "mm")
}
