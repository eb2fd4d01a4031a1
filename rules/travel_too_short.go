package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "travel-too-short",
	Title: "the table runs out of travel before the cut or the pattern of holes ends",
	Why: `Milling wants the whole length of the work and the cutter's width besides, to run on and off. A
pattern of holes wants its span. What the slides cannot give is made in two set-ups, or with the
work turned.`,
	Rows:      []string{"A4"},
	Source:    []string{"arithmetic"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleLong(320),
	Sound:     exampleLong(200),
	OnCut:     travelTooShort,
})

// exampleLong mills a slot along the whole of a long piece.
func exampleLong(length float64) string {
	return replaced(exampleSlot(""), "length   = 40", "length   = "+figure(length))
}

func travelTooShort(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || k.Choice.Tool.Cutter == nil || k.Unplayed != "" || m.Kind == "drill_press" {
		return
	}
	span := tableSpan(k.Hold, []*eval.Cut{k})
	if max(span[0], span[1]) < 0.001 {
		return
	}
	t, ok := Need(a, m.Travel)
	if !ok || len(t) < 2 {
		return
	}
	for i, axis := range []string{"along the table", "across the table"} {
		need := span[i]
		if need > t[i]+0.0005 {
			f := a.Say(pathOf(m.Item)+".travel", k.Place("along", "tool"), "%s needs %s mm of travel %s, with the cutter running on and off; %s has %s",
				targetName(k), tenth(need), axis, m.Path(), mm(t[i]))
			f.Margin = Bound(need, t[i], "mm")
		} else if need > 0.001 {
			a.Clear(Bound(need, t[i], "mm"), "travel of "+m.Path()+" "+axis)
		}
	}
}

func targetName(k *eval.Cut) string {
	if len(k.Works) > 0 {
		return k.Works[0].Target.Name()
	}
	return "it"
}
