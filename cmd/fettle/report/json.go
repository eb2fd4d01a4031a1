package report

import (
	"encoding/json"
	"io"
	"math"

	"fettle/schema/finding"
	"fettle/schema/text"
)

// The JSON form, version 1. A field is never taken away or given another meaning within a
// version; new ones may come at the end of an object.

type document struct {
	Format  int          `json:"format"`
	Checked []checkedDoc `json:"checked"`
}

type checkedDoc struct {
	Recipe     string        `json:"recipe"`
	Shop       string        `json:"shop"`
	Parts      int           `json:"parts"`
	Setups     int           `json:"setups"`
	Operations int           `json:"operations"`
	Findings   []findingDoc  `json:"findings"`
	Chosen     []choiceDoc   `json:"chosen"`
	Tightest   []tightDoc    `json:"tightest"`
	Unknown    []unknownDoc  `json:"unknown"`
	Asked      []askedDoc    `json:"asked"`
	Questions  []questionDoc `json:"questions"`
	NotPlayed  []unplayedDoc `json:"not_played"`
	Read       bool          `json:"read"`
	Excused    int           `json:"excused"`
}

type findingDoc struct {
	Rule      string      `json:"rule"`
	Covers    []string    `json:"covers"`
	Level     string      `json:"level"`
	Judgement string      `json:"judgement"`
	Cause     string      `json:"cause"`
	File      string      `json:"file"`
	Line      int         `json:"line"`
	Column    int         `json:"column"`
	Length    int         `json:"length"`
	At        []string    `json:"at"`
	Says      string      `json:"says"`
	Also      []alsoDoc   `json:"also"`
	Margin    *marginDoc  `json:"margin"`
	Remedies  []remedyDoc `json:"remedies"`
	Spots     [][]string  `json:"spots"`
}

type alsoDoc struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Length int    `json:"length"`
	Says   string `json:"says"`
}

type marginDoc struct {
	Has   float64 `json:"has"`
	Wants float64 `json:"wants"`
	Unit  string  `json:"unit"`
	Less  bool    `json:"at_most"`
}

type remedyDoc struct {
	Title string    `json:"title"`
	Edits []editDoc `json:"edits"`
}

type editDoc struct {
	File string `json:"file"`
	From int    `json:"from"`
	To   int    `json:"to"`
	New  string `json:"new"`
}

type choiceDoc struct {
	At   []string `json:"at"`
	What string   `json:"what"`
	Item string   `json:"item"`
	Why  string   `json:"why"`
}

type tightDoc struct {
	Rule   string    `json:"rule"`
	At     []string  `json:"at"`
	What   string    `json:"what"`
	Margin marginDoc `json:"margin"`
}

type unknownDoc struct {
	Fact    string `json:"fact"`
	Settles int    `json:"settles"`
}

type askedDoc struct {
	Rule    string `json:"rule"`
	Clear   int    `json:"clear"`
	Trouble int    `json:"trouble"`
	Open    int    `json:"open"`
}

type questionDoc struct {
	Rule string   `json:"rule"`
	At   []string `json:"at"`
	Asks string   `json:"asks"`
	For  []string `json:"for"`
}

type unplayedDoc struct {
	At  []string `json:"at"`
	Why string   `json:"why"`
}

// JSON writes what was checked, in the order given.
func JSON(w io.Writer, all []*Checked) error {
	d := document{Format: 1, Checked: []checkedDoc{}}
	for _, c := range all {
		d.Checked = append(d.Checked, c.doc())
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(d)
}

func (c *Checked) doc() checkedDoc {
	d := checkedDoc{Recipe: c.Recipe, Shop: c.Shop, Read: c.Read, Findings: []findingDoc{}, Chosen: []choiceDoc{},
		Tightest: []tightDoc{}, Unknown: []unknownDoc{}, Asked: []askedDoc{}, Questions: []questionDoc{}, NotPlayed: []unplayedDoc{}}
	d.Parts, d.Setups, d.Operations = c.Counts()
	for i := range c.Findings {
		d.Findings = append(d.Findings, findingOf(c.Build.Sources, &c.Findings[i]))
	}
	for _, ch := range c.Chosen {
		d.Chosen = append(d.Chosen, choiceDoc{words(ch.Spot), ch.What, ch.Item, ch.Why})
	}
	r := c.Result
	if r == nil {
		return d
	}
	d.Excused = r.Excused
	for _, t := range r.Tightest {
		d.Tightest = append(d.Tightest, tightDoc{t.Rule, words(t.Spot), t.What, marginOf(t.Margin)})
	}
	for _, u := range r.Unknown {
		d.Unknown = append(d.Unknown, unknownDoc{u.Fact, u.Settles})
	}
	for _, a := range r.Asked {
		d.Asked = append(d.Asked, askedDoc{a.Rule, a.Clear, a.Trouble, a.Open})
	}
	for _, q := range r.Questions {
		d.Questions = append(d.Questions, questionDoc{q.Rule, words(q.Spot), q.Asks, some(q.For)})
	}
	for _, u := range r.Unplayed {
		d.NotPlayed = append(d.NotPlayed, unplayedDoc{words(u.Spot), u.Why})
	}
	return d
}

func findingOf(s *text.Sources, f *finding.Finding) findingDoc {
	m := s.Mark(f.Place)
	d := findingDoc{Rule: f.Rule, Covers: some(f.Rows), Level: f.Level.String(), Judgement: f.Judgement.String(), Cause: f.Cause,
		File: m.File, Line: m.Line, Column: m.Column, Length: m.Length, At: []string{}, Says: f.Says,
		Also: []alsoDoc{}, Remedies: []remedyDoc{}, Spots: [][]string{}}
	if len(f.Spots) > 0 {
		d.At = words(f.Spots[0])
	}
	for _, sp := range f.Spots {
		d.Spots = append(d.Spots, words(sp))
	}
	for _, n := range f.Also {
		a := s.Mark(n.Place)
		d.Also = append(d.Also, alsoDoc{a.File, a.Line, a.Column, a.Length, n.Says})
	}
	if f.Margin.Unit != "" {
		mg := marginOf(f.Margin)
		d.Margin = &mg
	}
	for _, r := range f.Remedies {
		rd := remedyDoc{Title: r.Title, Edits: []editDoc{}}
		for _, e := range r.Edits {
			rd.Edits = append(rd.Edits, editDoc{e.File, e.From, e.To, e.New})
		}
		d.Remedies = append(d.Remedies, rd)
	}
	return d
}

func words(s finding.Spot) []string { return some(s.Words()) }

func some(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

func marginOf(m finding.Margin) marginDoc {
	return marginDoc{Has: thousandth(m.Has), Wants: thousandth(m.Wants), Unit: m.Unit, Less: m.Less}
}

func thousandth(x float64) float64 {
	r := math.Round(x*1000) / 1000
	if r == 0 || math.IsNaN(r) || math.IsInf(r, 0) {
		return 0
	}
	return r
}
