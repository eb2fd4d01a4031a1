package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "finish-never-made",
	Title: "the drawing asks for a polished, lapped, scraped or ground surface, and nobody makes it so",
	Why: `A finish is work of its own, and takes metal: a few hundredths by emery, more by a scraper. What is not in the
order of work is forgotten, or done when the part is on size already and its fit is lost.`,
	Rows:      []string{"E1", "F17"},
	Source:    []string{"the work as written; polishing with emery takes 5 to 20 µm: common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     examplePolished(""),
	Sound: examplePolished(`
  bench "shine" {
    makes = [face.top]
    by    = "polishing"
  }
`),
	OnPart: finishNeverMade,
})

// examplePolished is a block whose top is to be polished, with some work after its drilling.
func examplePolished(work string) string {
	return replaced(exampleBlock("brass", work), "  setup \"drill\"", "  face \"top\" {\n    finish = \"polished\"\n  }\n\n  setup \"drill\"")
}

// finishes are the words for finishes, each with the processes that give it.
var finishes = []struct {
	word string
	by   []string
}{
	{"polish", []string{"polishing", "buffing", "lapping"}}, {"lapped", []string{"lapping"}}, {"scraped", []string{"scraping"}},
	{"ground", []string{"grinding", "lapping"}}, {"filed", []string{"filing"}},
}

func finishNeverMade(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	said := map[string]bool{}
	for _, s := range p.Part.Surfaces() {
		words := strings.ToLower(s.Finish.V)
		for _, fin := range finishes {
			if !strings.Contains(words, fin.word) {
				continue
			}
			cause := s.Target.Name()
			if !s.Own {
				cause = "the part"
			}
			if said[cause] {
				break
			}
			said[cause] = true
			if madeSo(p, &s, fin.by) {
				a.Clear(finding.Margin{}, "")
				break
			}
			f := a.Say(p.Part.Label+"."+cause+".finish", s.Finish.At, "%s is to be %s, and no step makes it so", cause, s.Finish.V)
			f.Level = finding.Advice
			break
		}
	}
}

// madeSo says whether a step gives a surface its finish: one that makes it by such a process, or is
// on stock that is bought so. Of what the part says of all its surfaces any step will do.
func madeSo(p *eval.PartTrace, s *eval.Surface, by []string) bool {
	is := func(said string) bool {
		for _, b := range by {
			if strings.Contains(strings.ToLower(said), b) {
				return true
			}
		}
		return false
	}
	if f := s.Target.Face; s.Target.Form == nil && !s.Target.Outside && oneOf("grinding", by...) && p.End.Faces[f].Skin == "ground" {
		return true
	}
	for _, w := range p.Part.Work {
		whole := is(w.SetUp.By.V)
		if whole && (!s.Own || len(w.Steps) == 0) {
			return true
		}
		for _, st := range w.Steps {
			if st.Step == nil || !whole && !is(st.Step.By.V) {
				continue
			}
			if !s.Own {
				return true
			}
			for _, t := range st.Makes {
				if t.Name() == s.Target.Name() {
					return true
				}
			}
		}
	}
	return false
}
