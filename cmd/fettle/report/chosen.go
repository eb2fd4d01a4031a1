package report

import (
	"slices"
	"strings"

	"fettle/rules/choose"
	"fettle/schema/finding"
)

// stepGroup is what was chosen in one set-up: for its holding, for all of its steps alike, and
// for each step.
type stepGroup struct {
	spot       finding.Spot // without a step
	holding    []choose.Choice
	throughout []choose.Choice
	steps      []step
}

type step struct {
	name string
	says []choose.Choice
}

// bySetUp gathers choices by set-up, in the order of the work.
func bySetUp(all []choose.Choice) []*stepGroup {
	var groups []*stepGroup
	for _, ch := range all {
		spot := finding.Spot{Part: ch.Spot.Part, SetUp: ch.Spot.SetUp}
		i := slices.IndexFunc(groups, func(g *stepGroup) bool { return g.spot == spot })
		if i < 0 {
			i = len(groups)
			groups = append(groups, &stepGroup{spot: spot})
		}
		groups[i].add(ch)
	}
	for _, g := range groups {
		g.alike()
	}
	return groups
}

func (g *stepGroup) add(ch choose.Choice) {
	if ch.Spot.Step == "" {
		g.holding = append(g.holding, ch)
		return
	}
	i := slices.IndexFunc(g.steps, func(s step) bool { return s.name == ch.Spot.Step })
	if i < 0 {
		i = len(g.steps)
		g.steps = append(g.steps, step{name: ch.Spot.Step})
	}
	g.steps[i].says = append(g.steps[i].says, ch)
}

// alike takes what several steps have in common, all of them, out of each.
func (g *stepGroup) alike() {
	if len(g.steps) < 2 {
		return
	}
	for _, ch := range g.steps[0].says {
		if !slices.ContainsFunc(g.steps, func(s step) bool { return !s.has(ch) }) {
			g.throughout = append(g.throughout, ch)
		}
	}
	for i := range g.steps {
		g.steps[i].says = slices.DeleteFunc(slices.Clone(g.steps[i].says), func(ch choose.Choice) bool {
			return slices.ContainsFunc(g.throughout, func(t choose.Choice) bool { return same(t, ch) })
		})
	}
}

func (s step) has(ch choose.Choice) bool {
	return slices.ContainsFunc(s.says, func(o choose.Choice) bool { return same(o, ch) })
}

func same(a, b choose.Choice) bool { return a.What == b.What && a.Item == b.Item }

// widestName is how many columns a step's name may take beside what was chosen for it; a longer
// one has a line to itself.
const widestName = 20

func (p page) chosen(c *Checked) {
	if len(c.Chosen) == 0 {
		return
	}
	p.line(0, "")
	p.title("Chosen, where the recipe leaves it open")
	for _, g := range bySetUp(c.Chosen) {
		p.para(2, whole(g.spot))
		lines := append([]step{{"holding", g.holding}, {"throughout", g.throughout}}, g.steps...)
		lines = slices.DeleteFunc(lines, func(s step) bool { return len(s.says) == 0 })
		under := 0
		for _, s := range lines {
			if n := len([]rune(Safe(s.name))); n <= widestName {
				under = max(under, n)
			}
		}
		for _, s := range lines {
			p.hang(4, Safe(s.name), listed(s.says), 4+under+2)
		}
	}
	p.whyChosen(c)
}

func listed(cs []choose.Choice) string {
	var words []string
	for _, ch := range cs {
		words = append(words, ch.What+" "+ch.Item)
	}
	return strings.Join(words, "; ")
}

// whyChosen gives each reason once, behind what it stands for.
func (p page) whyChosen(c *Checked) {
	p.line(2, "Why")
	var reasons []string
	whats := map[string][]string{}
	for _, ch := range c.Chosen {
		if whats[ch.Why] == nil {
			reasons = append(reasons, ch.Why)
		}
		if !slices.Contains(whats[ch.Why], ch.What) {
			whats[ch.Why] = append(whats[ch.Why], ch.What)
		}
	}
	for _, w := range reasons {
		p.para(4, strings.Join(whats[w], ", ")+": "+w)
	}
}
