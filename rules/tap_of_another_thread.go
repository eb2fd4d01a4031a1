package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/handbook"
)

var _ = enter(Rule{
	Name:  "tap-of-another-thread",
	Title: "the tap that is named does not cut the thread of the drawing",
	Why: `The screw goes by the drawing, the hole by the tap. Where the two differ in diameter, pitch or hand the
screw does not go in, or goes in and holds nothing.`,
	Rows:      []string{"I2", "D14"},
	Source:    []string{"the drawing against the tap as declared"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     replaced(exampleTap("4.2"), "makes = hole.pin.thread", "makes = hole.pin.thread\n      tool = tap.metric[\"M6\"]"),
	Sound:     replaced(exampleTap("4.2"), "makes = hole.pin.thread", "makes = hole.pin.thread\n      tool = tap.metric[\"M5\"]"),
	OnCut:     tapOfAnotherThread,
	OnTurn:    asCut(tapOfAnotherThread),
})

func tapOfAnotherThread(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "tap" {
		return
	}
	for _, w := range k.Works {
		if w.Target.Sub != "thread" {
			continue
		}
		want, ok := Need(a, w.Target.Form.Feature.Thread.Size)
		switch {
		case !ok:
		case k.Choice.Tool.Thread.Series == "":
			noneOf(k, a, w.Target.Name(), want)
		case otherThread(k, w.Target.Form):
			a.Say(w.Target.Name()+"+"+k.ToolPath(), k.Place("tool"), "%s is %s on the drawing, and %s cuts %s", w.Target.Name(), want, k.ToolPath(), k.Choice.Tool.Thread)
		default:
			a.Clear(finding.Margin{}, "")
		}
	}
}

// noneOf tells of a block of taps that is named as a whole and holds none of the thread.
func noneOf(k *eval.Cut, a *Ask, name string, want drawing.Thread) {
	c := k.Choice.Tool.Cutter
	there, ok := Need(a, c.Threads)
	if !ok {
		return
	}
	var cuts []string
	for _, t := range there {
		cuts = append(cuts, t.String())
	}
	a.Say(name+"+"+c.Path(), k.Place("tool"), "%s is %s on the drawing, and %s cuts %s", name, want, c.Path(), inWords(cuts))
}

// otherThread says whether the tap in use cuts another thread than the hole is to have.
func otherThread(k *eval.Cut, f *eval.Form) bool {
	want, ok := f.Feature.Thread.Size.Get()
	return ok && !filled(want).Same(filled(k.Choice.Tool.Thread))
}

// filled adds the standard pitch to a thread that is written without one.
func filled(t drawing.Thread) drawing.Thread {
	if full, ok := handbook.FillThread(t); ok {
		return full
	}
	return t
}
