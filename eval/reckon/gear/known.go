package gear

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
)

// Standard pitches. Modules: ISO 54, both rows; diametral pitches: the usual inch list (both from
// memory).
var (
	modules = []float64{0.1, 0.12, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.7, 0.75, 0.8, 0.9, 1, 1.125, 1.25,
		1.375, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.5, 4, 4.5, 5, 5.5, 6, 6.5, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 22, 25, 28, 32}
	diametral = []float64{1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 36, 40,
		48, 64, 72, 80, 96, 120}
)

// Pitch is a standard pitch that a wheel may have. The module is mm.
type Pitch struct {
	Name   string // "module 1.5", "16 DP"
	Module float64
	Tip    float64 // tip diameter that it would have, mm
	Off    float64 // the measured tip diameter less that, mm
}

// FromTip names the standard pitches that a wheel of unknown make may have, by its measured tip
// diameter, 0.5 to 100,000 mm, and teeth, 3 to 10,000, nearest first: d = m (z + 2). A shifted or
// stub tooth misleads it, so several are given, at most as many as most says. An error names the
// figure out of range.
func FromTip(tip float64, teeth, most int) ([]Pitch, error) {
	if teeth < 3 || teeth > 10000 {
		return nil, fmt.Errorf("%d teeth: a wheel has from 3 to 10000", teeth)
	}
	if err := within("a tip diameter of", tip, 0.5, 1e5, " mm"); err != nil {
		return nil, err
	}
	var out []Pitch
	add := func(name string, m float64) {
		full := m * float64(teeth+2)
		out = append(out, Pitch{name, m, full, tip - full})
	}
	for _, m := range modules {
		add("module "+strconv.FormatFloat(m, 'f', -1, 64), m)
	}
	for _, p := range diametral {
		add(strconv.FormatFloat(p, 'f', -1, 64)+" DP", Module(p))
	}
	slices.SortStableFunc(out, func(a, b Pitch) int { return cmp.Compare(math.Abs(a.Off), math.Abs(b.Off)) })
	return out[:max(0, min(most, len(out)))], nil
}
