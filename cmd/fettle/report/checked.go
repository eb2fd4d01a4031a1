// Package report tells what a check found: as text for a person, as JSON for a program.
package report

import (
	"strings"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Checked is one recipe checked against one shop.
type Checked struct {
	Recipe, Shop string
	Build        *model.Build
	Read         bool              // false: a file could not be read, and Findings says why
	Findings     []finding.Finding // slips first, then in the order of the work
	Result       *rules.Result     // nil where nothing was judged
	Chosen       []choose.Choice
}

// Counts are how many parts, set-ups and operations were looked at. A square_up counts as
// its six holdings.
func (c *Checked) Counts() (parts, setups, operations int) {
	if c.Result == nil {
		return
	}
	for _, p := range c.Result.Trace.Makings() {
		if !p.Part.Joined() {
			parts++
		}
		for _, w := range p.Part.Work {
			if w.Kind == "setup" {
				setups++
			}
			for _, s := range w.Steps {
				if s.Kind == "operation" {
					operations++
				}
			}
		}
	}
	return
}

// turn is where a part stands in the recipe, from 1; 0 is what is no part's.
func (c *Checked) turn(label string) int {
	if label == "" {
		return 0
	}
	if c.Build != nil {
		for i, p := range c.Build.Parts {
			if p.Label == label {
				return i + 1
			}
		}
		return len(c.Build.Parts) + 1
	}
	return 1
}

// verdicts counts how often rules were asked and came to an answer, or stayed open.
func (c *Checked) verdicts() (asked, open int) {
	for _, a := range c.Result.Asked {
		asked += a.Clear + a.Trouble + a.Open
		open += a.Open
	}
	return
}

// limitsFor are the limits of judgement behind a finding: those that its sentence names, or
// else all that its rule asks for.
func limitsFor(f *finding.Finding) []string {
	all := limitsOf(f.Rule)
	var named []string
	for _, l := range all {
		if strings.Contains(f.Says, "("+l+")") {
			named = append(named, l)
		}
	}
	if named != nil {
		return named
	}
	return all
}

func limitsOf(name string) []string {
	if r := rules.Find(name); r != nil {
		return r.Limits
	}
	return nil
}

func cautionOf(name string) string {
	if r := rules.Find(name); r != nil {
		return r.Caution
	}
	return ""
}
