package reckon

import (
	"encoding/json"
	"io"
)

// The JSON form of an answer, format 1. New fields come at the end of an object.
type document struct {
	Format  int        `json:"format"`
	Subject string     `json:"subject"`
	Asked   []string   `json:"asked"`
	Shop    string     `json:"shop"` // "" none
	Answer  string     `json:"answer"`
	Says    []string   `json:"says"`
	Values  []valueDoc `json:"values"`
	Tables  []tableDoc `json:"tables"` // at their full length
	Steps   []string   `json:"steps"`
	Sources []string   `json:"sources"`
	Caution string     `json:"caution"`
	Note    string     `json:"note"`
}

type valueDoc struct {
	Name   string   `json:"name"`
	Figure *float64 `json:"figure"` // null of a word
	Words  string   `json:"words"`
	Unit   string   `json:"unit"`
	From   string   `json:"from"`
}

type tableDoc struct {
	Title string     `json:"title"`
	Head  []string   `json:"head"`
	Rows  [][]string `json:"rows"`
}

func (a Answer) json(w io.Writer, ask Ask, note string) error {
	d := document{Format: 1, Subject: ask.of.Name, Asked: some(ask.words), Answer: "yes", Says: some(a.Says), Values: []valueDoc{},
		Tables: []tableDoc{}, Steps: some(a.Steps), Sources: some(a.Sources), Caution: a.Caution, Note: note}
	if a.No {
		d.Answer = "no"
	}
	if ask.shop != nil {
		d.Shop = ask.shop.folder
	}
	for _, v := range a.Values {
		vd := valueDoc{Name: v.Name, Words: v.Words, Unit: v.Unit, From: v.From}
		if x, ok := clean(v.Figure); ok && !v.IsWord {
			vd.Figure = &x
		}
		d.Values = append(d.Values, vd)
	}
	for _, t := range a.Tables {
		td := tableDoc{Title: t.Title, Head: []string{}, Rows: [][]string{}}
		for _, c := range t.Head {
			td.Head = append(td.Head, c.Name)
		}
		td.Rows = append(td.Rows, t.Rows...)
		d.Tables = append(d.Tables, td)
	}
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(d)
}

func some(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}
