package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "bend-wider-than-jaws",
	Title: "a bend is longer than the jaws of the vise that it is folded in",
	Why: `Beyond the ends of the jaws nothing backs the sheet: the leg lags behind there and the bend comes out round and wavy.
Two lengths of angle iron or bar as long as the bend, held in the vise together with the sheet, make jaws of any length;
named as the tool of the bench they are taken for that.`,
	Rows:      []string{"A14"},
	Source:    []string{"the sheet's size along the bend against the width of the jaws"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleFolded(80),
	Sound:     exampleFolded(20),
	OnPart:    bendWiderThanJaws,
})

// exampleFolded folds a bracket so wide in the vise of the examples.
func exampleFolded(wide float64) string {
	s := replaced(exampleBend("annealed", "    inside_radius = 1\n"), "width     = 20", "width     = "+figure(wide))
	return replaced(s, "    by    = \"bending\"\n", "    by    = \"bending\"\n    hold  = vise.small\n")
}

func bendWiderThanJaws(p *eval.PartTrace, a *Ask) {
	for _, b := range p.Part.VisedBends() {
		jaws, ok := Need(a, b.Vise.JawWidth)
		if !ok {
			continue
		}
		if b.Long <= jaws+1e-6 {
			a.Clear(Bound(b.Long, jaws, "mm"), b.Form.Name()+" in the jaws of "+b.Vise.Path())
			continue
		}
		f := a.Say(p.Part.Label+"."+b.Form.Name()+"+"+b.Vise.Path(), b.Bench.Item.Attr("hold").Value.At, "%s is %s long, and the jaws of %s are %s wide: fold it between two bars as long as the bend",
			b.Form.Name(), mm(b.Long), b.Vise.Path(), mm(jaws))
		f.Margin = Bound(b.Long, jaws, "mm")
		f.Spots[0].SetUp = b.Bench.Kind + " " + b.Bench.Label
	}
}
