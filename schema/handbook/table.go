// Package handbook holds the tables of the trade that fettle works with: limits, threads,
// tapers, drills, collets, cutting speeds, materials. Each is a text file with a source in
// every row; a value that nobody looked up is marked "from memory", a habit of the trade
// "common practice".
//
// Lengths are millimetres unless a name says otherwise. A table that lacks an answer says
// so: the second result is false, and nothing is made up in its place.
package handbook

import (
	"embed"
	"fmt"
	"math"
	"strconv"
	"strings"
)

//go:embed table/*.tsv
var files embed.FS

// table is one file: its column names and its rows.
type table struct {
	name    string
	columns map[string]int
	rows    []row
}

type row struct {
	of    *table
	cells []string
}

// load reads a table. A table that does not hold together is our own broken promise.
func load(name string) *table {
	b, err := files.ReadFile("table/" + name + ".tsv")
	if err != nil {
		panic(err)
	}
	t := &table{name: name}
	for line := range strings.Lines(string(b)) {
		line = strings.TrimSuffix(line, "\n")
		cells := strings.Split(line, "\t")
		switch {
		case strings.HasPrefix(line, "# "):
		case t.columns == nil:
			t.columns = map[string]int{}
			for n, c := range cells {
				t.columns[c] = n
			}
		case len(cells) != len(t.columns):
			panic(fmt.Sprintf("handbook table %s: %d cells in row %q", name, len(cells), line))
		default:
			t.rows = append(t.rows, row{t, cells})
		}
	}
	return t
}

func (r row) text(column string) string {
	n, ok := r.of.columns[column]
	if !ok {
		panic("handbook table " + r.of.name + " has no column " + column)
	}
	return r.cells[n]
}

// number reads a cell; an empty one is 0.
func (r row) number(column string) float64 {
	s := r.text(column)
	if s == "" {
		return 0
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		panic("handbook table " + r.of.name + ": " + strconv.Quote(s) + " in column " + column)
	}
	return x
}

// covers says whether a size lies over .. up to and including the row's two bounds: a size
// on a bound belongs to the step below it, as in every table of ISO 286.
func (r row) covers(size float64) bool {
	return size > r.number("over_mm")+hair && size <= r.number("to_mm")+hair
}

// hair is the least that a size must pass a bound to be over it, in mm: above the error of
// a float64 sum, below any figure of a drawing.
const hair = 1e-6
