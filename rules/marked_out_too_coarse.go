package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "marked-out-too-coarse",
	Title: "a place is found by scribed lines, and its limits are finer than the eye",
	Why: `A line is scribed to a tenth of a millimetre, the punch set by eye and the drill let in where it likes: 0.1 to 0.2 mm
off is good work. Finer places are found with the dials from an edge, with buttons, or spotted through the mate.`,
	Rows:      []string{"D10", "E1"},
	Source:    []string{"0.1 to 0.2 mm by eye: common practice, own limit"},
	Limits:    []string{"by_eye", "drill_wander"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     replaced(exampleHole(`located = "marked out"`), "left = 20,", "left = \"20 ±0.05\","),
	Sound:     replaced(exampleHole(`located = "marked out"`), "left = 20,", "left = \"20 ±0.3\","),
	OnCut:     func(k *eval.Cut, a *Ask) { markedOut(k.Step, k.Part, drillsAway(k), a) },
	OnTurn:    func(k *eval.Turn, a *Ask) { markedOut(k.Step, k.Part, false, a) },
})

// drillsAway says whether a drill begins where nothing is spotted yet.
func drillsAway(k *eval.Cut) bool {
	if k.Choice.By != "drilling" {
		return false
	}
	for _, t := range k.Step.Makes {
		if fs := k.Part.Feature(k.Before, t.Form); fs != nil && (fs.Spotted || fs.Begun) {
			return false
		}
	}
	return true
}

// byLines says whether the place of a step is found by scribed lines: said so, or on the bench,
// where there are no dials, and nothing else is said.
func byLines(st *eval.Step) bool {
	if st.Step == nil || !st.Step.Located.Said() {
		return st.Work.Kind == "bench"
	}
	return st.Step.Located.V.Text == "marked out"
}

func markedOut(st *eval.Step, p *eval.Part, drills bool, a *Ask) {
	if st.Kind != "operation" || !byLines(st) {
		return
	}
	eye := a.Limit("by_eye")
	at := st.Work.SetUp.Item.At
	if st.Step != nil {
		at = st.Step.Item.At
		if l := st.Step.Item.Attr("located"); l != nil {
			at = l.Value.At
		}
	}
	for _, t := range st.Makes {
		if t.Form == nil || t.Sub != "" || len(t.Form.Mouths) == 0 {
			continue // edges and slots are brought to their lines with a file and a gauge
		}
		allowed, of, ok := finest(t.Form)
		if !ok {
			continue
		}
		off, how := eye, "by scribed lines and a punch mark"
		if m, ok := p.Marked(t.Form, st); ok && drills && !m.Step.Punched.V {
			off, how = eye+a.Limit("drill_wander"), "by scribed lines that are not punched"
		}
		if allowed >= off-1e-9 {
			a.Clear(Room(allowed, off), "the place of "+t.Name())
			continue
		}
		f := a.Say(t.Name()+"+marked", at, "%s may lie %s off %s, and its place is marked out; %s it usually comes within %s",
			t.Name(), mm(round(allowed)), of, how, mm(round(off)))
		f.Margin = Room(allowed, off)
	}
}

// finest is the least way that a hole may be off its place to either side: by the limits
// written to its distances, or by half its position zone.
func finest(f *eval.Form) (allowed float64, of string, ok bool) {
	take := func(x float64, what string) {
		if !ok || x < allowed {
			allowed, of, ok = x, what, true
		}
	}
	if z, said := f.Feature.PositionIn.Within.Get(); said {
		take(z/2, "its true place")
	}
	sized := func(s drawing.Size, from string) {
		if s.Tol.Kind == drawing.Deviations {
			take((s.Tol.Hi-s.Tol.Lo)/2, "its distance from "+from)
		}
	}
	for _, p := range f.Feature.At.V {
		for _, s := range p.Short {
			sized(s, "the datum faces")
		}
		for _, c := range p.Coords {
			sized(c.Size, c.Datum.Path())
		}
	}
	return allowed, of, ok
}
