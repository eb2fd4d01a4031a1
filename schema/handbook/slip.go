package handbook

import (
	"math"
	"strings"
	"sync"

	"fettle/schema/drawing"
)

// SlipGrain is how many grains a unit has in which the sizes of slip gauges are counted: a grain is
// 0.00001 mm, of an inch set 0.00001 in.
const SlipGrain = 100000

// SlipGauges is a set of slip gauges.
type SlipGauges struct {
	Name   string
	Unit   drawing.Unit // of its sizes
	Sizes  []int64      // grains, in the order of the table
	Source string
}

var slipRows = sync.OnceValue(func() []SlipGauges {
	var out []SlipGauges
	for _, r := range load("slip_gauge").rows {
		if n := len(out); n == 0 || out[n-1].Name != r.text("set") {
			unit := drawing.Millimetre
			if r.text("unit") == "in" {
				unit = drawing.Inch
			}
			out = append(out, SlipGauges{Name: r.text("set"), Unit: unit, Source: r.text("source")})
		}
		s := &out[len(out)-1]
		s.Sizes = append(s.Sizes, slipRow(r)...)
	}
	return out
})

func slipRow(r row) (sizes []int64) {
	grains := func(column string) int64 { return int64(math.Round(r.number(column) * SlipGrain)) }
	for x := grains("from"); x <= grains("to"); x += max(grains("step"), 1) {
		sizes = append(sizes, x)
	}
	return sizes
}

// SlipSet gives a usual set by the number of its pieces: "M88", "M88/1", "E81". Case does not
// matter, and what stands behind a stroke (how many sets, or the make-up) is not looked at. The
// sizes of the answer are shared and must not be changed.
func SlipSet(name string) (SlipGauges, bool) {
	short, _, _ := strings.Cut(strings.ToUpper(strings.TrimSpace(name)), "/")
	for _, s := range slipRows() {
		if s.Name == short {
			return s, true
		}
	}
	return SlipGauges{}, false
}

// SlipSetNames lists the sets, in the order of the table.
func SlipSetNames() []string {
	var out []string
	for _, s := range slipRows() {
		out = append(out, s.Name)
	}
	return out
}
