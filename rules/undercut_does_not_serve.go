package rules

import (
	"fettle/eval"
	"fettle/eval/reckon/thread"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "undercut-does-not-serve",
	Title: "the groove that a thread is to run out into is not there, not beside it, or not deep enough",
	Why: `The tool runs out into an undercut only if it lies at the end of the thread, is cut before it, and goes at least as deep as the
thread does. Over a higher floor the point of the tool drags, and a nut stops on what it leaves.`,
	Rows:      []string{"D17"},
	Source:    []string{"geometry; root of the thread by its standard's profile"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleUndercut("14", true),
	Sound:     exampleUndercut("13", true),
	OnTurn:    undercutDoesNotServe,
})

// exampleUndercut is a thread M16 with an undercut of a diameter at its floor, cut before it or after.
func exampleUndercut(floor string, first bool) string {
	s := replaced(exampleThread("M16x2"), "  thread \"end\" {", `  groove "relief" {
    on       = outside.waist
    from     = 40
    to       = 45
    diameter = `+floor+`
  }

  thread "end" {
    undercut = groove.relief`)
	groove := "    operation {\n      makes = groove.relief\n    }\n"
	thread := "    operation {\n      makes = thread.end\n      tool  = threading_tool.metric\n    }"
	if first {
		return replaced(s, thread, groove+thread)
	}
	return replaced(s, thread, thread+"\n"+groove)
}

func undercutDoesNotServe(k *eval.Turn, a *Ask) {
	if k.Unplayed != "" || k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		f := w.Target.Form
		if f == nil || f.Feature.Kind != "thread" || f.Lathe == nil || !f.Feature.Undercut.Is() {
			continue
		}
		g := k.Part.FormOf(f.Feature.Undercut.V.Item)
		if g == nil || g.Lathe == nil {
			continue
		}
		at, cause := f.Feature.Undercut.At, f.Name()+"+"+g.Name()
		_, _, root, known := thread.Diameters(k.Choice.Tool.Thread)
		floor := 2 * min(g.Lathe.R0, g.Lathe.R1)
		if f.Lathe.Inside {
			root, floor = -k.Choice.Tool.Thread.Diameter, -2*max(g.Lathe.R0, g.Lathe.R1)
		}
		switch {
		case g.Lathe.X0 > f.Lathe.X1+0.001 || g.Lathe.X1 < f.Lathe.X0-0.001:
			a.Say(cause, at, "%s is to run out into %s, which lies %s to %s mm along the axis and does not touch it (%s to %s mm)",
				f.Name(), g.Name(), figure(round(g.Lathe.X0)), figure(round(g.Lathe.X1)), figure(round(f.Lathe.X0)), figure(round(f.Lathe.X1)))
		case !k.Part.Feature(k.Before, g).Begun:
			a.Say(cause, k.Place("makes"), "%s is cut before %s, which it is to run out into", f.Name(), g.Name())
		case !known:
		case floor > root+0.0005:
			m := a.Say(cause, at, "%s is to run out into %s, whose floor is %s across; the thread goes down to %s", f.Name(), g.Name(), mm(round(abs(floor))), mm(round(abs(root))))
			m.Margin = floorMargin(floor, root)
		default:
			a.Clear(floorMargin(floor, root), "the floor of "+g.Name())
		}
	}
}

// floorMargin compares a floor with what the thread goes down to; both below nought in a bore, where more
// is deeper.
func floorMargin(floor, root float64) finding.Margin {
	if floor < 0 {
		return Room(round(-floor), round(-root))
	}
	return Bound(round(floor), round(root), "mm")
}
