package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/fit"
	"fettle/schema/finding"
	"fettle/schema/handbook"
)

var _ = enter(Rule{
	Name:  "reamer-of-other-limits",
	Title: "the reamer makes holes of other limits than the drawing asks for",
	Why: `A reamer cuts one size, within limits of its own: those sold by the size alone are ground for H7. A hole that is to come out
between other limits wants a reamer for them, an adjustable one, boring, or a shaft made to the hole as it is.`,
	Rows: []string{"D4", "E1"},
	Source: []string{"limits as marked on the reamer; without a mark H7: ISO 522, from memory",
		"ISO 286"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     reamedTo("8 G7"),
	Sound:     reamedTo("8 H7"),
	OnCut:     reamerOfOtherLimits,
	OnTurn:    asCut(reamerOfOtherLimits),
})

// reamedTo reams a hole of 8 mm that has limits.
func reamedTo(size string) string {
	return replaced(exampleReam("7.8"), `diameter = "8 H7"`, `diameter = "`+size+`"`)
}

func reamerOfOtherLimits(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "reamer" || c.Taper.Is() || c.Opens.V > 0 || k.Unplayed != "" {
		return // a taper reamer goes by its depth, an adjustable one is set to the size
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || w.Target.Sub != "" || w.Wrong != "" || !w.Final || !f.Feature.Diameter.Is() || f.Feature.Thread.Said {
			continue
		}
		lim, ok := eval.LimitsOf(f.Feature.Diameter.V, k.Part.Build.Recipe.General, f.Feature.Item, "diameter").Get()
		if !ok {
			continue
		}
		makes, by, ok := reams(k.Choice.Tool)
		if !ok {
			continue
		}
		if makes.Lo >= lim.Lo-0.0005 && makes.Hi <= lim.Hi+0.0005 {
			a.Clear(finding.Margin{}, "")
			continue
		}
		how := "may come out beyond them"
		if makes.Lo > lim.Hi || makes.Hi < lim.Lo {
			how = "comes out beyond them"
		}
		s := a.Say(f.Name()+".diameter+"+k.ToolPath(), k.Place("tool", "makes"), "%s makes holes of %s to %s (%s), and %s is to be %s to %s: it %s",
			k.ToolPath(), figure(round(makes.Lo)), mm(round(makes.Hi)), by, f.Name(), figure(round(lim.Lo)), mm(round(lim.Hi)), how)
		if c.Limits.Is() {
			s.Also = []finding.Note{{Place: c.Limits.At, Says: "the reamer"}}
		}
	}
}

// reams is between what a reamer's holes come out, and by what: the class that is marked on it, else
// the usual one. False where the class is none of ISO 286.
func reams(t eval.Pick) (eval.Limits, string, bool) {
	class, by := t.Cutter.Limits.Or("H7"), "H7, as reamers without a mark are"
	if t.Cutter.Limits.Is() {
		by = class
	}
	lo, hi, err := fit.Limits(handbook.ISO286(), t.Size, class)
	return eval.Limits{Lo: t.Size + lo, Hi: t.Size + hi}, by, err == nil
}
