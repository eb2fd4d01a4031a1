package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "legs-run-into-each-other",
	Title: "two legs of the sheet would lie in one place as it is folded",
	Why: `Folded as it is drawn, one leg runs through another that was folded before it: the last bend comes to a stop there. A shorter leg,
a wider base or a smaller angle leaves room for both.`,
	Rows:      []string{"I6"},
	Source:    []string{"the metal of the legs as it is folded: geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleTriangle("30"),
	Sound:     exampleTriangle("60"),
	OnPart:    legsRunIntoEachOther,
})

// exampleTriangle folds two legs of 40 mm inwards by 130 degrees, over a base so wide.
func exampleTriangle(wide string) string {
	bend := func(label, side string) string {
		return "  bend \"" + label + "\" {\n    at      = { " + side + " = 40 }\n    towards = \"top\"\n    angle   = 130\n    inside_radius = 1\n  }\n\n"
	}
	s := replaced(exampleBend("annealed", "    inside_radius = 1\n"), `  bend "leg" {
    at      = { right = 20 }
    towards = "top"
    inside_radius = 1
  }

`, bend("leg", "right")+bend("other", "left"))
	s = replaced(s, "length    = 40", "length    = 80 + "+wide)
	return replaced(s, "makes = [bend.leg]", "makes = [bend.leg, bend.other]")
}

func legsRunIntoEachOther(p *eval.PartTrace, a *Ask) {
	if p.End == nil || p.End.Bent == nil {
		return
	}
	all := p.LegsMeet()
	for _, m := range all {
		one, two := legWords(m.One), legWords(m.Two)
		a.Say(p.Part.Label+"+"+one+"+"+two, p.Part.Part.Item.At, "as it is folded, the leg %s runs into the leg %s", one, two)
	}
	if len(all) == 0 {
		a.Clear(finding.Margin{}, "")
	}
}

// legWords says which leg of bent sheet is meant, by the bends at its ends.
func legWords(ends [2]*eval.Form) string {
	switch {
	case ends[0] == nil && ends[1] != nil:
		return "before " + ends[1].Name()
	case ends[1] == nil && ends[0] != nil:
		return "beyond " + ends[0].Name()
	case ends[0] == nil:
		return "without a bend"
	}
	return "between " + ends[0].Name() + " and " + ends[1].Name()
}
