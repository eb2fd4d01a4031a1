package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "bend-too-tight",
	Title: "the inside radius of a bend is less than the metal takes without cracking",
	Why: `The outside of a bend is stretched; hard metal cracks there, most of all where the bend lies along the grain that
rolling left. A larger radius, a bend across the grain, or annealing along the line is the cure.`,
	Rows:      []string{"G8"},
	Source:    []string{"least radius by metal, condition and grain: handbook, from memory of EN 485-2, EN 1652 and makers' sheets, and common practice"},
	Limits:    []string{"bend_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleBend("hard", "    inside_radius = 0.5\n"),
	Sound:     exampleBend("annealed", "    inside_radius = 0.5\n"),
	OnPart:    bendTooTight,
})

// exampleBend is a bracket of brass sheet with one bend and one hole.
func exampleBend(condition, attrs string) string {
	return `recipe "example" {
  units = "mm"
}

part "bracket" {
  material  = "CW508L"
  condition = "` + condition + `"
  length    = 40
  width     = 20
  thickness = 1

  hole "pin" {
    into     = "top"
    at       = { left = 10, front = 10 }
    diameter = 3
  }

  bend "leg" {
    at      = { right = 20 }
    towards = "top"
` + attrs + `  }

  setup "drill" {
    hold   = clamps.set
    up     = "top"
    back   = "back"
    clamps = [{ at = { right = 4, front = 10 } }]

    operation {
      makes = hole.pin
    }
  }

  bench "fold" {
    makes = [bend.leg]
    by    = "bending"
  }
}
`
}

func bendTooTight(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Features {
		if f.Kind != "bend" || !f.InsideRadius.Is() {
			continue // left out it is the least that the handbook allows
		}
		r := f.InsideRadius.V.Nominal
		t, ok := Need(a, p.Part.Part.Thickness)
		m, ok2 := Need(a, p.Part.Part.Material)
		if !ok || !ok2 || m.Unsure || len(handbook.BendConditions(m)) == 0 {
			continue
		}
		state := p.Part.Tempered()
		c, ok := Need(a, state)
		if !ok {
			continue
		}
		across, along, ok := handbook.LeastBend(m, c)
		if half, with, known := handbook.LeastBend(m, "half hard"); !ok && known && c == "hard" && r < half*a.Limit("bend_share")*t.Nominal-1e-6 {
			across, along, ok = half, with, true // hard metal takes no more than half hard does
		}
		if !ok {
			a.Lack(model.Lack{Fact: "the least bend radius of " + m.Name + " that is " + c, At: f.InsideRadius.At})
			continue
		}
		share := a.Limit("bend_share") * t.Nominal
		least, most := across*share, along*share
		grain := "across the grain"
		switch f.Grain.V {
		case "along":
			least, grain = most, "along the grain"
		case "across":
			most = least
		}
		switch {
		case r < least-1e-6:
			say := a.Say(p.Part.Label+".bend."+f.Label, f.InsideRadius.At, "bend.%s has %s inside; %s, %s and %s thick, usually cracks below %s %s",
				f.Label, mm(r), m.Name, c, mm(t.Nominal), mm(round(least)), grain)
			say.Margin = Room(r, round(least))
		case r >= most-1e-6:
			a.Clear(Room(r, round(most)), "the inside of bend."+f.Label)
		default:
			a.Lack(f.Grain.Missing()...)
		}
	}
}
