package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "holes-meet",
	Title: "a hole breaks into another feature, and nothing says that it should",
	Why: `The second drill is bent into the first hole, and what was to hold oil or a pin is open. Where they are
meant to meet, say so: meets = [hole.other]. Two holes in one axis, and a hole in a floor, are taken as meant.`,
	Rows:      []string{"D7", "D8"},
	Source:    []string{"arithmetic on the drawing; points of drills included, 0.300 D at 118 degrees"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleTwoHoles(16),
	Sound:     exampleTwoHoles(26),
	OnPart:    holesMeet,
})

// exampleTwoHoles crosses a hole from the top with one from the front, so far from the left.
func exampleTwoHoles(left float64) string {
	return replaced(exampleHole(), "  setup \"drill\"", `  hole "oil" {
    into     = "front"
    at       = { left = `+figure(left)+`, bottom = 10 }
    diameter = 3
    depth    = 20
  }

  setup "cross" {
    hold      = vise.small
    up        = "front"
    jaws      = "top"
    parallels = 8

    operation {
      makes = hole.oil
    }
  }

  setup "drill"`)
}

func holesMeet(p *eval.PartTrace, a *Ask) {
	if p.Part.Unplayed != "" {
		return
	}
	seen := map[[2]*eval.Form]bool{}
	for _, f := range p.Part.Forms {
		if f.Wrong != "" {
			continue
		}
		others := p.Part.Beside(f)
		for _, o := range others {
			g := o.Other
			if seen[[2]*eval.Form{g, f}] {
				continue
			}
			seen[[2]*eval.Form{f, g}] = true
			switch {
			case g == nil || eval.Meets(f, g):
			case o.Wall < -0.001 && (g.Feature.Kind == "slit" || g.Feature.Kind == "split"):
				// A saw cut may break into a hole: that is what it is for.
			case o.Wall < -0.001:
				m := a.Say(p.Part.Label+"."+f.Name()+"+"+o.And, placeOf(f, "at"),
					"%s breaks into %s by %s mm; if it is meant, say meets = [%s]", f.Name(), o.And, figure(round(-o.Wall)), o.And)
				m.Also = []finding.Note{{Place: g.Feature.Item.At, Says: o.And}}
				m.Margin = Room(round(o.Wall), 0)
			default:
				a.Clear(Room(round(o.Wall), 0), "metal between "+f.Name()+" and "+o.And)
			}
		}
	}
}

func formNamed(p *eval.Part, name string) *eval.Form {
	for _, f := range p.Forms {
		if f.Name() == name {
			return f
		}
	}
	return nil
}

// placeOf is where a feature says something, else its head.
func placeOf(f *eval.Form, attr string) text.Place {
	if a := f.Feature.Item.Attr(attr); a != nil {
		return a.Value.At
	}
	return f.Feature.Item.At
}
