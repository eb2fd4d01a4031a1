package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:      "groove-narrower-than-tool",
	Title:     "the grooving tool is wider than the groove",
	Why:       `A square groove is as wide as the tool at least. A narrower blade is ground, or the groove is drawn wider.`,
	Rows:      []string{"B16", "B15"},
	Source:    []string{"look-up in the shop; geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleGroove("1.5"),
	Sound:     exampleGroove("2.5"),
	OnTurn:    grooveNarrowerThanTool,
})

// exampleGroove cuts a groove so wide with a blade of 2 mm.
func exampleGroove(width string) string {
	return exampleTurned(`
  outside "waist" {
    from     = 40
    diameter = 16
  }

  groove "ring" {
    on       = outside.waist
    at       = 50
    width    = `+width+`
    diameter = 14
  }
`, inThree, `
    operation {
      makes = outside.waist
    }
    operation {
      makes = groove.ring
      tool  = parting_tool.blade
    }`)
}

func grooveNarrowerThanTool(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.By != "grooving" || c.Kind != "parting_tool" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Feature.Kind != "groove" || f.Feature.Form.V == "round" || f.Feature.Form.V == "vee" {
			continue
		}
		width, ok := Need(a, c.Width)
		if !ok {
			return
		}
		if width <= f.Width+0.0005 {
			a.Clear(Bound(width, round(f.Width), "mm"), c.Path()+" in "+f.Name())
			continue
		}
		says := a.Say(f.Name()+"+"+c.Path(), k.Place("tool", "makes"), "%s is %s mm wide, and %s cuts %s", f.Name(), figure(round(f.Width)), c.Path(), mm(width))
		says.Margin = Bound(width, round(f.Width), "mm")
	}
}
