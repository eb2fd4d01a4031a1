package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cutter-body-meets-work",
	Title: "the body of a fly cutter meets the work before its edge is at depth",
	Why: `A fly cutter has one edge that stands out of a body, and cuts no deeper than it stands out. Deeper gaps want the edge set out
farther, so that it swings wider, or a body that is thinner.`,
	Rows:      []string{"H9"},
	Source:    []string{"geometry: half of what the edge swings wider than the body"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleFly("26"),
	Sound:     exampleFly("20"),
	OnCut:     cutterBodyMeetsWork,
})

// exampleFly finishes the throated wheel of the examples with a fly cutter of such a body.
func exampleFly(body string) string {
	return replaced(exampleThroated("36"), "tool  = gear_cutter.hob", "tool  = fly_cutter.one") + `
fly_cutter "one" {
  diameter = [25, 60]
  body     = ` + body + `
  shank    = 10
}
`
}

func cutterBodyMeetsWork(k *eval.Cut, a *Ask) {
	c, t := k.Choice.Tool.Cutter, k.Choice.Tool
	if c == nil || c.Kind != "fly_cutter" || k.Unplayed != "" || !(t.Size > 0) {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Tooth == nil || w.Wrong != "" || !w.Facing {
			continue
		}
		body, ok := Need(a, c.BodyDiameter)
		if !ok {
			return
		}
		out, deep := round((t.Size-body)/2), w.Depth
		if f.Tooth.Throat != nil { // the body turns in the hollow
			deep = min(deep, f.Tooth.Throat.Deep())
		}
		if deep = round(deep); deep <= out+0.0005 {
			a.Clear(Bound(deep, out, "mm"), "the depth of "+w.Target.Name()+" beside the body of "+c.Path())
			continue
		}
		says := a.Say(c.Path()+".body+"+w.Target.Name(), k.Place("tool", "makes"), "%s is cut %s deep; %s swings %s mm round a body of %s, so that its edge stands out %s",
			w.Target.Name(), mm(deep), t.Path(), figure(round(t.Size)), figure(body), mm(max(0, out)))
		says.Margin = Bound(deep, out, "mm")
		says.Also = []finding.Note{{Place: c.BodyDiameter.At, Says: "its body"}}
	}
}
