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
	of      *table
	cells   []string
	figures []float64 // of the cells; NaN where a cell is no number, 0 where it is empty
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
			t.rows = append(t.rows, row{t, cells, figures(cells)})
		}
	}
	return t
}

func figures(cells []string) []float64 {
	out := make([]float64, len(cells))
	for n, c := range cells {
		x, err := strconv.ParseFloat(c, 64)
		switch {
		case c == "":
		case err != nil || math.IsInf(x, 0):
			out[n] = math.NaN()
		default:
			out[n] = x
		}
	}
	return out
}

func (r row) column(name string) int {
	n, ok := r.of.columns[name]
	if !ok {
		panic("handbook table " + r.of.name + " has no column " + name)
	}
	return n
}

func (r row) text(column string) string { return r.cells[r.column(column)] }

// number gives a cell as a figure; an empty one is 0.
func (r row) number(column string) float64 {
	x := r.figures[r.column(column)]
	if math.IsNaN(x) {
		panic("handbook table " + r.of.name + ": no number in column " + column)
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
