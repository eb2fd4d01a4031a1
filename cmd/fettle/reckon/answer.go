package reckon

import (
	"math"
	"strconv"
)

// Answer is one page: the sentences that answer, tables, the working, sources and caution.
type Answer struct {
	No      bool     // the question has an answer, and it is no: status 1
	Says    []string // the answer first; whole sentences
	Tables  []Table
	Steps   []string // the working, each step with the figures in place
	Sources []string
	Caution string  // where the work can hurt someone, or a figure can mislead
	Values  []Value // the same figures by name, for --format json, in this order
}

// Table is rows below a head.
type Table struct {
	Title string
	Head  []Column
	Rows  [][]string
	Most  int // rows shown without --all; 0: all
	// Around is the row, from 0, about which those lie that are shown.
	Around int
}

// Column is the head of a column; figures stand to the right.
type Column struct {
	Name  string
	Right bool
}

// left and right make columns.
func left(name string) Column  { return Column{Name: name} }
func right(name string) Column { return Column{Name: name, Right: true} }

// Value is a figure or a word by its name.
type Value struct {
	Name   string
	Figure float64
	Words  string // of a word, or an exact figure as a fraction; "" where Figure says it
	IsWord bool   // there is no Figure
	Unit   string // "mm", "degrees", "%"; "" pure
	From   string // "--hole", "drill.jobbers of shop", "ISO 286-1", "worked out"
}

// figure makes a value of a number.
func figure(name string, x float64, unit, from string) Value {
	return Value{Name: name, Figure: x, Unit: unit, From: from}
}

// word makes a value of a word.
func word(name, w, from string) Value { return Value{Name: name, Words: w, IsWord: true, From: from} }

// clean drops the dust of float64 beyond twelve figures; what is no number is 0 and false.
func clean(x float64) (float64, bool) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	r, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	return r, err == nil
}
