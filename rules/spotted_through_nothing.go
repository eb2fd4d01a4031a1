package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "spotted-through-nothing",
	Title: "a place is to be spotted through a hole that is not there yet",
	Why: `What serves as a jig for another part has to be made first. Where each of two parts waits for the other, one of
them has to be marked out or found by the dials.`,
	Rows:      []string{"F20"},
	Source:    []string{"order of the work as written, and its after"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleSpotted("hole.guide"), "makes = hole.guide\n    }\n    operation {\n      makes   = hole.pin", "makes   = hole.pin"),
	Sound:     exampleSpotted("hole.guide"),
	OnBuild:   spottedThroughNothing,
})

// exampleSpotted makes one hole and spots another through it.
func exampleSpotted(through string) string {
	s := replaced(exampleHole("located = "+through), "      makes = hole.pin\n", "      makes = hole.guide\n    }\n    operation {\n      makes   = hole.pin\n")
	return replaced(s, "  hole \"pin\"", "  hole \"guide\" {\n    into     = \"top\"\n    at       = { left = 8, front = 15 }\n    diameter = 6\n  }\n\n  hole \"pin\"")
}

// stretch is one stretch of work of one part.
type stretch struct{ part, work int }

func spottedThroughNothing(t *eval.Trace, a *Ask) {
	order := orderOf(t)
	for pi, p := range t.Parts {
		for _, m := range p.Moments {
			st, before := operation(m)
			if st == nil || st.Step == nil || st.Step.Located.V.Item == nil {
				continue
			}
			r := st.Step.Located.V
			says := ""
			if f := p.Part.FormOf(r.Item); f != nil {
				if fs := p.Part.Feature(before, f); fs != nil && !fs.Begun {
					says = "is made later or not at all"
				}
			} else if from, ok := maker(t, r.Item); ok && order.reaches(stretch{pi, workOf(p.Part, st.Work)}, from) {
				says = "cannot be made before this: its part waits for it"
			}
			if says == "" {
				a.Clear(finding.Margin{}, "")
				continue
			}
			f := a.Say(st.Spot.Part+"+"+st.Spot.SetUp+"+"+r.Path(), st.Step.Item.Attr("located").Value.At, "%s is to be spotted through %s, which %s", names(st), r.Path(), says)
			f.Spots = []finding.Spot{st.Spot}
		}
	}
}

func names(st *eval.Step) string {
	var out []string
	for _, t := range st.Makes {
		out = append(out, t.Name())
	}
	return inWords(out)
}

func operation(m eval.Moment) (*eval.Step, *eval.State) {
	switch {
	case m.Cut != nil:
		return m.Cut.Step, m.Cut.Before
	case m.Turn != nil:
		return m.Turn.Step, m.Turn.Before
	}
	return nil, nil
}

func workOf(p *eval.Part, w *eval.Work) int {
	for i := range p.Work {
		if p.Work[i] == w {
			return i
		}
	}
	return -1
}

// maker is the first stretch of work in which a feature of some part is made.
func maker(t *eval.Trace, feature *model.Item) (stretch, bool) {
	for pi, p := range t.Parts {
		for wi, w := range p.Part.Work {
			for _, st := range w.Steps {
				for _, g := range st.Makes {
					if g.Form != nil && g.Form.Feature.Item == feature {
						return stretch{pi, wi}, true
					}
				}
			}
		}
	}
	return stretch{}, false
}

// waits holds, for each stretch, the stretches that wait for it.
type waits map[stretch][]stretch

// orderOf gathers what waits for what: within a part the written order, `after`, and what is
// spotted through a hole of another part.
func orderOf(t *eval.Trace) waits {
	o := waits{}
	for pi, p := range t.Parts {
		for wi, w := range p.Part.Work {
			here := stretch{pi, wi}
			if wi > 0 {
				o[stretch{pi, wi - 1}] = append(o[stretch{pi, wi - 1}], here)
			}
			for _, r := range w.SetUp.After.V {
				for pj, q := range t.Parts {
					for wj, v := range q.Part.Work {
						if last := wj == len(q.Part.Work)-1; r.Item != nil && (v.Of.Item == r.Item || q.Part.Item == r.Item && last) {
							o[stretch{pj, wj}] = append(o[stretch{pj, wj}], here)
						}
					}
				}
			}
			for _, st := range w.Steps {
				if st.Step == nil || st.Step.Located.V.Item == nil {
					continue
				}
				if from, ok := maker(t, st.Step.Located.V.Item); ok && from.part != pi {
					o[from] = append(o[from], here)
				}
			}
		}
	}
	return o
}

// reaches says whether one stretch has to wait for another.
func (o waits) reaches(from, to stretch) bool {
	seen := map[stretch]bool{}
	var walk func(s stretch) bool
	walk = func(s stretch) bool {
		if s == to {
			return true
		}
		if seen[s] {
			return false
		}
		seen[s] = true
		for _, n := range o[s] {
			if walk(n) {
				return true
			}
		}
		return false
	}
	return walk(from)
}
