package rules

import (
	"strings"

	"fettle/eval"
	"fettle/eval/reckon/thread"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "no-such-thread-class",
	Title: "the class of a thread is one that its standard has not, or is that of its mate",
	Why: `A class says how much a thread may be off: 6H and 2B of nuts, 6g and 2A of screws. One of the wrong kind, or of another
standard, gives no limits, and the drill or the size over wires that follows from it is not what the drawing means.`,
	Rows:      []string{"D14", "I6"},
	Source:    []string{"ISO 965, ASME B1.1, BS 84 and BS 93, as tabled in the handbook"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     replaced(exampleTap("4.2"), `thread   = { size = "M5" }`, `thread   = { size = "M5", class = "6g" }`),
	Sound:     replaced(exampleTap("4.2"), `thread   = { size = "M5" }`, `thread   = { size = "M5", class = "6H" }`),
	OnPart:    noSuchThreadClass,
})

func noSuchThreadClass(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		m := f.Feature
		classOf(a, f, m.Thread.Size, m.Thread.Class, true)
		classOf(a, f, m.ThreadSize, m.Class, f.Lathe != nil && f.Lathe.Inside)
	}
}

func classOf(a *Ask, f *eval.Form, size model.Known[drawing.Thread], class model.Known[string], inside bool) {
	t, ok := size.Get()
	c, said := class.Get()
	if !ok || !said || f.Wrong != "" {
		return
	}
	if full, ok := handbook.FillThread(t); ok {
		t = full
	}
	if _, percent := drawing.ParseEngagement(c); percent && inside {
		a.Clear(finding.Margin{}, "")
		return
	}
	if len(thread.Classes(t.Series)) == 0 || !(t.Pitch > 0) {
		return
	}
	l, err := thread.LimitsOf(t, c)
	lies := map[bool]string{true: "inside", false: "outside"}
	switch {
	case err != nil:
		a.Say(f.Name()+".class", class.At, "%s is to be of class %s, and its standard has none of that name for %s; %s it has %s", f.Name(), c, t, lies[inside], strings.Join(classesOf(t, inside), ", "))
	case l.Inside != inside:
		a.Say(f.Name()+".class", class.At, "%s is to be of class %s, which is one of %s threads, and it is an %s one", f.Name(), c, lies[l.Inside], lies[inside])
	default:
		a.Clear(finding.Margin{}, "")
	}
}

// classesOf lists the classes of the thread of a nut, or of a screw.
func classesOf(t drawing.Thread, inside bool) (out []string) {
	for _, c := range thread.Classes(t.Series) {
		if l, err := thread.LimitsOf(t, c); err == nil && l.Inside == inside {
			out = append(out, c)
		}
	}
	return out
}
