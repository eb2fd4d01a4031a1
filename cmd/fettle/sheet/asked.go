package sheet

import (
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// asked puts on the page what a drawing asks of a part besides its sizes: its hardness and finish, form
// and place of its surfaces by ISO 1101, and how scales are cut and numbered.
func (m *maker) asked(t *eval.PartTrace) {
	p := t.Part
	if p.Joined() {
		return
	}
	var all []string
	put := func(what string, k model.Known[string]) {
		if k.Is() {
			all = append(all, what+" "+k.V)
		}
	}
	put("hardness", p.Hardness)
	put("condition", p.Condition)
	put("finish of all that says no other:", p.Finish)
	if p.Edges.Is() {
		all = append(all, "edges broken "+model.Figure(p.Edges.V)+" mm")
	}
	if len(all) > 0 {
		m.page.para("When finished: " + sentence(strings.Join(all, "; ")))
	}
	at := t.LastWorked(false)
	var rows [][]string
	row := func(of eval.Target, is, within, to string) {
		made := ""
		if w := at[of.Name()]; w != nil {
			made = w.By + ", " + w.Spot.SetUp
		}
		rows = append(rows, []string{of.Name(), is, within, to, made})
	}
	for _, c := range p.Conditions() {
		word := map[string]string{"runout": "run-out", "position": "position"}[c.Word]
		if word == "" {
			word = c.Word
		}
		if c.Whole {
			word += " over the whole length"
		}
		row(c.Target, word, model.Figure(c.Within.V), paths(c.To, p.Label))
	}
	for _, s := range p.Surfaces() {
		if s.Own {
			row(s.Target, s.Finish.V, "", "")
		}
	}
	for _, f := range p.Forms {
		if s := f.Feature.EdgeLimits; s.Is() {
			row(eval.Target{Form: f}, "its whole edge", s.V, "")
		}
		for _, words := range scaleWords(f, p.Round) {
			rows = append(rows, []string{f.Name(), words, "", "", ""})
		}
	}
	if len(rows) > 0 {
		m.page.table([]string{"surface", "is to be", "within, mm", "to", "worked last by"}, rows)
	}
}

// scaleWords says how the lines of a scale are cut, which way its figures grow and how they stand.
func scaleWords(f *eval.Form, round bool) (out []string) {
	m := f.Feature
	if m.Kind != "graduations" {
		return nil
	}
	var cut []string
	if m.LineWidth.Is() {
		cut = append(cut, model.Figure(m.LineWidth.V)+" mm wide")
	}
	if m.Deep.Is() {
		cut = append(cut, model.Figure(m.Deep.V)+" mm deep")
	}
	if len(cut) > 0 {
		out = append(out, "lines "+strings.Join(cut, ", "))
	}
	g := &m.Figures
	if !g.Said || g.Every.V < 1 {
		return out
	}
	runs, seen := "right", "the face that carries it" // what the language takes where nothing is said
	switch {
	case f.Scale != nil && f.Scale.Ruled != nil && f.Scale.Ruled.Round != nil:
		seen = "the side that carries it"
	case round:
		runs, seen = "clockwise", "the right end"
	}
	for _, k := range []model.Known[string]{m.Runs, g.Runs} {
		runs = k.Or(runs)
	}
	for _, k := range []model.Known[model.Ref]{m.SeenFrom, g.SeenFrom} {
		if k.Is() {
			seen = paths([]model.Ref{k.V}, "")
		}
	}
	words := "figures " + model.Figure(g.First.V) + ", " + model.Figure(g.First.V+g.Step.Or(float64(g.Every.V))) + " and so on, growing " + runs + ", read from " + seen
	feet := "the lines"
	if g.Feet.Is() {
		feet = paths([]model.Ref{g.Feet.V}, "")
	}
	return append(out, words+"; their feet towards "+feet)
}
