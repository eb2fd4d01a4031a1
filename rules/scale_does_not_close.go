package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "scale-does-not-close",
	Title: "what is counted on the dividing head does not go into the drawing's round",
	Why: `Sixty teeth cut with a count of 59 end in one narrow tooth or one wide gap. A scale whose long lines or figures stand at every
tenth of 96 lines has a short step where it comes round. Scribe all the places lightly first, and cut only when the last one meets the first.`,
	Rows:      []string{"H3", "H13"},
	Source:    []string{"arithmetic"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleWheel("", "", "index = 48", ""),
	Sound:     exampleWheel("", "", "index = 60", ""),
	OnPart:    scaleDoesNotClose,
})

func scaleDoesNotClose(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		if f.Scale != nil && f.Scale.Full() {
			roundOfLines(p, f, a)
		}
	}
	for _, w := range p.Part.Work {
		for _, st := range w.Steps {
			if st.Step == nil || !st.Step.Index.Said {
				continue
			}
			for _, t := range st.Makes {
				counted(p, st, t, a)
			}
		}
	}
}

// roundOfLines holds the turns of long lines and of figures against the lines of a full circle.
func roundOfLines(p *eval.PartTrace, f *eval.Form, a *Ask) {
	n := f.Scale.Count
	for _, l := range f.Scale.Lines {
		if n%l.Every != 0 {
			a.Say(fmt.Sprintf("%s.%s.lines.%d", p.Part.Label, f.Name(), l.Every), placeOf(f, "lines"),
				"%s has %d lines, and every %s is to be %s long: where it comes round the last of them stand %s apart",
				f.Name(), n, nth(l.Every), mm(l.Length), linesOf(n%l.Every))
			continue
		}
		a.Clear(finding.Margin{}, "")
	}
	if every := f.Feature.Figures.Every.V; f.Feature.Figures.Said && every > 0 && n%every != 0 {
		a.Say(fmt.Sprintf("%s.%s.figures", p.Part.Label, f.Name()), placeOf(f, "figures"),
			"%s has %d lines and a figure at every %s: where it comes round the last figure stands %s from the first", f.Name(), n, nth(every), linesOf(n%every))
	}
}

func linesOf(n int) string {
	if n == 1 {
		return "1 line"
	}
	return fmt.Sprintf("%d lines", n)
}

func nth(n int) string {
	switch {
	case n%100 >= 11 && n%100 <= 13:
	case n%10 == 1:
		return fmt.Sprintf("%dst", n)
	case n%10 == 2:
		return fmt.Sprintf("%dnd", n)
	case n%10 == 3:
		return fmt.Sprintf("%drd", n)
	}
	return fmt.Sprintf("%dth", n)
}

// counted holds the index of a step against what it makes. A multiple of it passes places over.
func counted(p *eval.PartTrace, st *eval.Step, t eval.Target, a *Ask) {
	places, full := t.Places()
	if places < 2 {
		return
	}
	in := &st.Step.Index
	n, at := 0, in.Bare.At
	switch {
	case in.Count.Is():
		n, at = in.Count.V, in.Count.At
	case in.Bare.Is():
		n = int(in.Bare.V)
	case in.Angles.Is() && len(in.Angles.V) != places:
		a.Say(st.Work.SetUp.Path()+"+"+t.Name()+".index", in.Angles.At, "%s has %d places, and %d angles are written for it", t.Name(), places, len(in.Angles.V))
		return
	default:
		return
	}
	if !full || n < 1 {
		return
	}
	if n%places == 0 {
		a.Clear(finding.Margin{}, "")
		return
	}
	left := "the last would be spoilt"
	if n < places {
		left = fmt.Sprintf("%d of them would be lacking", places-n)
	}
	a.Say(st.Work.SetUp.Path()+"+"+t.Name()+".index", at, "%s has %d places in the circle, and %d are counted: %s", t.Name(), places, n, left)
}
