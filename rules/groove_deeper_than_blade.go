package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "groove-deeper-than-blade",
	Title: "a groove is deeper than the grooving tool stands out",
	Why: `A blade cuts as deep as it stands out of its holder, in an end as on the round. Into an end it is fed along the axis, and the
groove's outer wall curves towards it: below the edge its outer side must be ground away to that curve, or it rubs.`,
	Rows:      []string{"B16"},
	Source:    []string{"geometry; how a tool for a groove in an end is ground: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleEndGroove("24"),
	Sound:     exampleEndGroove("4"),
	OnTurn:    grooveDeeperThanBlade,
})

// exampleEndGroove sinks a groove so deep into the free end, with a blade that reaches 16 mm.
func exampleEndGroove(deep string) string {
	return exampleTurned(`
  groove "face" {
    on    = "right"
    outer = 16
    width = 3
    depth = `+deep+`
  }
`, inThree, `
    operation {
      makes = face.right
    }
    operation {
      makes = groove.face
      tool  = parting_tool.blade
    }`)
}

func grooveDeeperThanBlade(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || k.Choice.By != "grooving" || c.Kind != "parting_tool" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Feature.Kind != "groove" || w.Wrong != "" {
			continue
		}
		if f.EndRing != nil {
			a.Asks("is %s ground away below its edge, so that it clears the outer wall of %s, %s across?", c.Path(), f.Name(), mm(round(2*f.EndRing.Outer)))
		}
		reach, ok := Need(a, c.Reach)
		if !ok {
			return
		}
		deep := round(w.Off)
		if reach >= deep-0.0005 {
			a.Clear(Room(reach, deep), c.Path()+" in "+f.Name())
			continue
		}
		says := a.Say(c.Path()+".reach+"+f.Name(), k.Place("tool", "makes"), "%s goes %s mm deep, and %s reaches %s", f.Name(), figure(deep), c.Path(), mm(reach))
		says.Margin = Room(reach, deep)
		says.Also = []finding.Note{{Place: c.Reach.At, Says: "its reach"}}
	}
}
