package rules

import (
	"math"
	"strings"

	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "crossing-spoils-hole",
	Title: "a drill breaks into a hole that is finished already, or aslant into one that is there",
	Why: `Where a drill breaks into a hole it throws a burr into it: a hole that was reamed before must be deburred or reamed once more, else
no pin goes in. Where the two axes miss each other the drill breaks out on a slope and is bent into the first hole.`,
	Rows:      []string{"D8"},
	Source:    []string{"small first, then large where the axes cross; plug the first with the same metal; ream last: common practice", "slope of a round wall beside its middle: geometry"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleCrossing("diameter = \"6 H7\"", 20, true),
	Sound:     exampleCrossing("diameter = \"6 H7\"", 20, false),
	OnPart:    crossingSpoilsHole,
})

// exampleCrossing crosses a hole from the top with one from the front, drilled after it or before.
func exampleCrossing(diameter string, left float64, after bool) string {
	s := replaced(replaced(exampleTwoHoles(left), "    diameter = 3\n", "    diameter = 3\n    meets    = [hole.pin]\n"), "diameter = 6", diameter)
	if !after {
		return s
	}
	head, work, _ := strings.Cut(s, "  setup \"cross\"")
	cross, drill, _ := strings.Cut(work, "  setup \"drill\"")
	return head + "  setup \"drill\"" + strings.TrimSuffix(drill, "}\n") + "\n  setup \"cross\"" + strings.TrimRight(cross, "\n") + "\n}\n"
}

func crossingSpoilsHole(p *eval.PartTrace, a *Ask) {
	first, last := madeWhen(p)
	for _, f := range p.Part.Forms {
		for _, g := range p.Part.Forms {
			begun, ok := first[f]
			crossed, ok2 := first[g]
			if f == g || !ok || !ok2 || crossed <= begun {
				continue
			}
			off, meet := crossingOf(f, g)
			if !meet {
				continue
			}
			lean := math.Asin(min(1, 2*off/f.Diameter.V)) * 180 / math.Pi
			switch {
			case f.Feature.Diameter.V.Tol.Own() && last[f] < crossed && !deburredAfter(p, crossed):
				m := a.Say(p.Part.Label+"."+f.Name()+"+"+g.Name()+".burr", placeOf(f, "meets"), "%s is brought to its limits before %s is drilled into it, which leaves a burr in it, and nothing takes that off; drill %s first and finish %s last, or deburr it there",
					f.Name(), g.Name(), g.Name(), f.Name())
				m.Also = []finding.Note{{Place: g.Feature.Item.At, Says: g.Name()}}
			case round(lean) > slope && f.Diameter.V >= g.Diameter.V-0.001: // a smaller hole hardly turns a larger drill aside
				m := a.Say(p.Part.Label+"."+f.Name()+"+"+g.Name()+".aside", placeOf(g, "at"), "%s is drilled into %s, which is there already, %s beside its axis: the drill meets its wall at %s degrees and is bent; plug %s with the same metal first, or drill %s before it",
					g.Name(), f.Name(), mm(round(off)), figure(math.Round(lean)), f.Name(), g.Name())
				m.Also = []finding.Note{{Place: f.Feature.Item.At, Says: f.Name()}}
				m.Margin = Bound(round(lean), slope, "deg")
			default:
				a.Clear(finding.Margin{}, "")
			}
		}
	}
}

// deburredAfter says whether edges are deburred after a moment.
func deburredAfter(p *eval.PartTrace, moment int) bool {
	for _, m := range p.Moments[moment:] {
		if m.Deburr != nil {
			return true
		}
	}
	return false
}

// madeWhen is when each hole is first cut into and last worked, as numbers of moments.
func madeWhen(p *eval.PartTrace) (first, last map[*eval.Form]int) {
	first, last = map[*eval.Form]int{}, map[*eval.Form]int{}
	note := func(f *eval.Form, i int, by string) {
		if f == nil || len(f.Mouths) == 0 || !f.Diameter.Is() || oneOf(by, "spotting", "centring") {
			return
		}
		if _, ok := first[f]; !ok {
			first[f] = i
		}
		last[f] = i
	}
	for i, m := range p.Moments {
		if m.Cut != nil {
			for k := range m.Cut.Works {
				if w := &m.Cut.Works[k]; w.Wrong == "" && w.Target.Sub == "" {
					note(w.Target.Form, i, m.Cut.Choice.By)
				}
			}
		}
		if m.Turn != nil {
			for k := range m.Turn.Works {
				if w := &m.Turn.Works[k]; w.Wrong == "" && w.Target.Sub == "" {
					note(w.Target.Form, i, m.Turn.Choice.By)
				}
			}
		}
	}
	return first, last
}

// crossingOf is how far the axes of two holes that break into each other pass, mm; it does not count holes
// in one line.
func crossingOf(f, g *eval.Form) (off float64, meet bool) {
	across := f.Dir.Cross(g.Dir)
	if across.Len() < 0.5 {
		return 0, false // they run alike, or nearly so
	}
	n := across.Unit()
	rf, rg := f.Diameter.V/2, g.Diameter.V/2
	for _, a := range f.Mouths {
		for _, b := range g.Mouths {
			d := b.Sub(a)
			away := math.Abs(d.Dot(n))
			s := alongTo(d, g.Dir, across)
			t := alongTo(d, f.Dir, across)
			if away < rf+rg-0.001 && s > -rg && s < f.Depth.V+rg && t > -rf && t < g.Depth.V+rf {
				return away, true
			}
		}
	}
	return 0, false
}

// alongTo is how far from its foot a line passes nearest to another in the direction other; d leads from the
// foot of the first hole to that of the second, and across is square to both.
func alongTo(d, other, across solid.Vec) float64 {
	return d.Cross(other).Dot(across) / across.Dot(across)
}
