package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "bar-not-to-size",
	Title: "a diameter is left as the bar is, and the bar may lie outside its limits",
	Why: `Bar is sold by its nominal size and drawn to a class of its own, mostly below it: bright steel to h9 or h11, ground silver
steel to h8 or so, and now and then a bar is over. Where a fit hangs on it, measure the bar, or turn the seat from the next size up.`,
	Rows:      []string{"E17"},
	Source:    []string{"limits of the bar as they are declared against those of the drawing (ISO 286)"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleAsDrawn(`"25 g6"`, `limits   = "h9"`),
	Sound:     exampleAsDrawn(`"25 g6"`, "limits   = [24.982, 24.99]"),
	OnPart:    barNotToSize,
})

// exampleAsDrawn is a pin of bar whose outside no step makes.
func exampleAsDrawn(diameter, limits string) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = ` + diameter + `
  length   = 40

  blank {
    stock = stock.own
    over  = { left = 0, right = 1 }
  }

  setup "face" {
    end = "left"

    operation {
      makes = face.right
    }
  }
}

stock "own" {
  material = "mild steel"
  round    = 25
  lengths  = [300]
  skin     = "drawn"
  ` + limits + `
}
`
}

func barNotToSize(p *eval.PartTrace, a *Ask) {
	for _, d := range p.AsDrawn() {
		want := eval.LimitsOf(d.Size.V, model.General{}, d.Of, "diameter")
		s := p.Part.Blank.Stock
		has, ok := Need(a, eval.BarLimits(s))
		lim, ok2 := Need(a, want)
		if !ok || !ok2 {
			continue
		}
		if has.Lo >= lim.Lo-1e-6 && has.Hi <= lim.Hi+1e-6 {
			a.Clear(finding.Margin{}, "")
			continue
		}
		f := a.Say(p.Part.Label+"."+d.Name+"+"+s.Path(), d.Size.At, "no step makes %s, so that it is as %s is: %s by its limits, and %s is wanted",
			d.Name, s.Path(), span(has), span(lim))
		f.Also = []finding.Note{{Place: s.Item.At, Says: "the bar"}}
	}
}
