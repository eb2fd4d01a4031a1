package handbook

import (
	"math"
	"strings"
	"sync"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

var (
	drillSets    = sync.OnceValue(func() []row { return load("drill_set").rows })
	drillLengths = sync.OnceValue(func() []row { return load("drill_length").rows })
	tapLeads     = sync.OnceValue(func() []row { return load("tap_lead").rows })
	reams        = sync.OnceValue(func() []row { return load("ream").rows })
	reamerLeads  = sync.OnceValue(func() []row { return load("reamer_lead").rows })
	instruments  = sync.OnceValue(func() []row { return load("instrument").rows })
	cutterBores  = sync.OnceValue(func() []row { return load("cutter_bore").rows })
	kerfs        = sync.OnceValue(func() []row { return load("kerf").rows })
)

// Set gives a usual set of sizes by its name: "number drills", "letter drills",
// "fraction drills". Its members have the names they are asked for by: "#7", "F", "17/64".
func Set(name string) (model.Sizes, bool) {
	s := model.Sizes{Named: name}
	for _, r := range drillSets() {
		if r.text("set") == name {
			s.List = append(s.List, model.Member{Size: exactInch(r.number("inch")), Name: r.text("name")})
		}
	}
	return s, len(s.List) > 0
}

// exactInch turns inches of at most six decimals into mm without the last-bit error of a product.
func exactInch(in float64) float64 { return math.Round(in*25.4*1e7) / 1e7 }

// SetNames lists the sets, in the order of the table.
func SetNames() []string {
	var out []string
	for _, r := range drillSets() {
		if s := r.text("set"); len(out) == 0 || out[len(out)-1] != s {
			out = append(out, s)
		}
	}
	return out
}

// DrillLengths gives the whole length and the length of flutes of a drill of a standard
// series: "stub", "jobber", "long", "taper shank". False outside the diameters of the series.
func DrillLengths(series string, diameter float64) (overall, flutes float64, ok bool) {
	for _, r := range drillLengths() {
		if r.text("series") == series && r.covers(diameter) {
			return r.number("overall_mm"), r.number("flutes_mm"), true
		}
	}
	return 0, 0, false
}

// DrillTaper gives the taper of a drill of the taper shank series.
func DrillTaper(diameter float64) (drawing.Taper, bool) {
	for _, r := range drillLengths() {
		if r.text("shank") != "" && r.covers(diameter) {
			t, err := drawing.ParseTaper(r.text("shank"))
			return t, err == nil
		}
	}
	return drawing.Taper{}, false
}

// DrillPoint gives the length of a drill's point for each mm of diameter, from its included
// angle in degrees: (1/2) / tan(angle/2). 0.300 at 118, 0.207 at 135.
func DrillPoint(included float64) float64 {
	if !(included > 0 && included < 180) {
		return 0
	}
	return 0.5 / math.Tan(included/2*math.Pi/180)
}

// TapLead gives the incomplete threads at the tip of a tap, in pitches, by its word:
// "taper", "second", "bottoming", "spiral point", "spiral flute".
func TapLead(word string) (lo, hi float64, ok bool) {
	for _, r := range tapLeads() {
		if r.text("word") == word {
			return r.number("least"), r.number("most"), true
		}
	}
	return 0, 0, false
}

// reamerKind gives the kind whose allowances hold: an adjustable reamer is worked by hand.
func reamerKind(kind string) string {
	if kind == "adjustable" {
		return "hand"
	}
	return kind
}

// ReamAllowance gives the least and most metal to leave for a reamer ("hand", "machine",
// "adjustable"), mm on diameter. Light metals take half as much again for hand reamers.
func ReamAllowance(reamer string, diameter float64, group string) (lo, hi float64, source string, ok bool) {
	for _, r := range reams() {
		if r.text("reamer") == reamerKind(reamer) && r.covers(diameter) {
			hi := r.number("most_mm")
			if group == "aluminium" && reamerKind(reamer) == "hand" {
				hi *= 1.5
			}
			return r.number("least_mm"), hi, r.text("source"), true
		}
	}
	return 0, 0, "", false
}

// ReamerLead gives the length at the tip of a reamer that does not yet cut to size.
func ReamerLead(kind string, diameter float64) (mm float64, ok bool) {
	for _, r := range reamerLeads() {
		if r.text("reamer") == kind && r.covers(diameter) {
			return r.number("lead_mm"), true
		}
	}
	return 0, false
}

// ColletRow is a system of collets. None grips a shank above its nominal size.
type ColletRow struct {
	System      string
	Largest     float64        // largest nominal size
	Body        float64        // outside diameter; 0 not in the tables
	Nut         drawing.Thread // of the closing nut; zero where a drawbar closes it
	Full        model.Sizes    // usual full set in mm
	FullInch    model.Sizes    // usual full set in inch sizes; empty where none is usual
	closesSmall float64
	closes      float64
	Source      string
}

// Closes gives how far a collet of a nominal size closes below it, mm.
func (c ColletRow) Closes(nominal float64) float64 {
	if nominal <= 3+hair {
		return c.closesSmall
	}
	return c.closes
}

var colletRows = sync.OnceValue(func() []ColletRow {
	var out []ColletRow
	for _, r := range load("collet").rows {
		c := ColletRow{System: r.text("system"), Largest: r.number("largest_mm"), Body: r.number("body_mm"),
			closesSmall: r.number("closes_small_mm"), closes: r.number("closes_mm"), Source: r.text("source")}
		if n := r.text("nut"); n != "" {
			t, err := drawing.ParseThread(n)
			if err != nil {
				panic(err)
			}
			c.Nut, _ = FillThread(t)
		}
		c.Full, c.FullInch = sizeList(r.text("sizes_mm"), drawing.Millimetre), sizeList(r.text("sizes_in"), drawing.Inch)
		out = append(out, c)
	}
	return out
})

// ColletSystem gives a system by its name: "ER25", "5C", "R8", "MT3". Blanks and case do not
// matter. The sets of the answer are shared and must not be changed.
func ColletSystem(name string) (ColletRow, bool) {
	k := strings.ToUpper(strings.ReplaceAll(name, " ", ""))
	for _, c := range colletRows() {
		if c.System == k {
			return c, true
		}
	}
	return ColletRow{}, false
}

func sizeList(words string, u drawing.Unit) model.Sizes {
	var s model.Sizes
	for _, w := range strings.Fields(words) {
		mm, err := drawing.ParseLength(w, u)
		if err != nil {
			panic(err)
		}
		s.List = append(s.List, model.Member{Size: mm})
	}
	return s
}

// InstrumentError gives how far the reading of an instrument may be off, mm (a protractor:
// degrees). Kinds are those of the shop ("micrometer", "caliper", "dial_indicator", ...) and
// "inside micrometer". lo and hi are its range, 0 and 0 where it is not known: then the
// shortest of the table counts. readsTo is its smallest step, 0 where not known: then the
// coarsest counts. False where no table reaches so far.
func InstrumentError(kind string, lo, hi, readsTo float64) (mm float64, ok bool) {
	reach, step := math.Inf(1), 0.0
	for _, r := range instruments() {
		if r.text("kind") != kind || r.number("to") < hi-hair || r.number("from") > max(lo, 0)+hair && lo+hi > 0 {
			continue
		}
		to, s := r.number("to"), r.number("reads_to")
		if to < reach || to == reach && nearer(s, step, readsTo) {
			reach, step, mm, ok = to, s, r.number("error"), true
		}
	}
	return mm, ok
}

// nearer says whether a step of a table suits an instrument better than another: the
// coarsest that is not coarser than its own, else the finest.
func nearer(s, than, own float64) bool {
	if own == 0 {
		return s > than
	}
	fits, before := s <= own+1e-4, than <= own+1e-4
	switch {
	case fits && before:
		return s > than
	case fits != before:
		return fits
	}
	return s < than
}

// CutterBore gives the bore that a cutter of a kind ("slitting_saw", "side_and_face_cutter",
// "face_mill") and diameter is usually made with.
func CutterBore(kind string, diameter float64) (mm float64, ok bool) {
	for _, r := range cutterBores() {
		if r.text("cutter") == kind && math.Abs(r.number("diameter_mm")-diameter) < hair {
			return r.number("bore_mm"), true
		}
	}
	return 0, false
}

// Kerf gives the width of metal that a saw ("hacksaw", "power_saw", "piercing_saw") takes:
// usual, least and most, mm. Common practice.
func Kerf(saw string) (usual, least, most float64, ok bool) {
	for _, r := range kerfs() {
		if r.text("saw") == saw {
			return r.number("usual_mm"), r.number("least_mm"), r.number("most_mm"), true
		}
	}
	return 0, 0, 0, false
}

// CentreSize gives the usual pilot diameter of a centre hole for work of a diameter, mm:
// from memory (DIN 332-1 gives such a choice); common practice.
func CentreSize(work float64) float64 {
	for _, c := range [...]struct{ to, size float64 }{{6, 1}, {10, 1.6}, {16, 2}, {25, 2.5}, {40, 3.15}, {63, 4}} {
		if work <= c.to {
			return c.size
		}
	}
	return 5
}
