// Package thread is the arithmetic of screw threads: diameters from the profile, percent of
// thread and the drill for it, how deep a blind hole must be, how much of a screw holds.
//
// Lengths are millimetres. "Percent of thread" has two bases in print: a hole of the major
// diameter less the pitch is 77 % of the American National double depth 1.299 P and 92 % of
// the 1.0825 P that a thread of today has. Handbook tables and tap makers use the first, so
// it is used here, and every answer says its basis.
//
// Diameters come from the profiles, whose standards stand beside them; where a comment names no other
// source, a figure follows from these by geometry or is the definition of its words.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package thread

import (
	"fmt"
	"math"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Profile is what a form makes of a pitch: each figure is a multiple of the pitch, taken off
// the major diameter.
type Profile struct {
	Effective float64 // to the pitch diameter
	Nut       float64 // to the basic minor diameter of the nut
	Root      float64 // to the root of the screw
	Full      float64 // to what counts as 100 % of thread
	Basis     string  // of Full, in words
}

var (
	// ISO 68-1 and ASME B1.1: 60 degrees, H = P sqrt(3)/2, effective 3H/4, nut 5H/4, root
	// 17H/12; 100 % of thread by Machinery's Handbook is 2 x 0.6495 P = 1.29904 P.
	sixty = Profile{0.649519, 1.082532, 1.226869, 1.299038, "the double depth of 1.299 P that drill tables use"}
	// BS 84: 55 degrees, depth 0.640327 P.
	whitworth = Profile{0.640327, 1.280654, 1.280654, 1.280654, "the full Whitworth depth"}
	// BS 93: 47.5 degrees, depth 0.6 P.
	association = Profile{0.6, 1.2, 1.2, 1.2, "the full BA depth"}
	// ISO 2904: 30 degrees, depth of engagement 0.5 P; the root clears by 0.15 to 1 mm more,
	// which is left out.
	trapezoidal = Profile{0.5, 1, 1, 1, "the full trapezoidal depth"}
)

// ProfileOf gives the profile of a series, by the standards named above; false for tapered pipe
// threads, which are cut to gauge, and for words that are no series.
func ProfileOf(series string) (Profile, bool) {
	switch series {
	case "M", "UN", "UNC", "UNF", "UNEF":
		return sixty, true
	case "BSW", "BSF", "ME", "BSB", "BSP":
		return whitworth, true
	case "BA":
		return association, true
	case "Tr":
		return trapezoidal, true
	}
	return Profile{}, false
}

// known gives the profile of a thread that has its diameter and pitch.
func known(t drawing.Thread) (Profile, bool) {
	p, ok := ProfileOf(t.Series)
	return p, ok && t.Diameter > 0 && t.Pitch > 0 && outside(t) == nil
}

// The ranges taken, mm.
const (
	LeastDiameter, MostDiameter = 0.05, 10000
	LeastPitch, MostPitch       = 0.01, 1000
)

// outside refuses a diameter and pitch that are given and out of range, or leave no core. It says
// nothing of those that are not known: 0.
func outside(t drawing.Thread) error {
	if t.Diameter == 0 || t.Pitch == 0 {
		return nil
	}
	p, _ := ProfileOf(t.Series)
	if !(t.Diameter >= LeastDiameter && t.Diameter <= MostDiameter && t.Pitch >= LeastPitch && t.Pitch <= MostPitch && p.Root*t.Pitch < t.Diameter) {
		return fmt.Errorf("a thread of %v mm with a pitch of %v mm: diameters from %v to %v mm and pitches from %v to %v mm that leave a core are wanted",
			t.Diameter, t.Pitch, LeastDiameter, MostDiameter, LeastPitch, MostPitch)
	}
	return nil
}

// Diameters gives the pitch diameter, the basic minor diameter of the nut and the root diameter of
// the screw, mm, by the profile. False where the thread lacks its diameter or pitch, where they
// lie outside LeastDiameter to MostDiameter and LeastPitch to MostPitch, and where the pitch
// leaves no core.
func Diameters(t drawing.Thread) (effective, nut, root float64, ok bool) {
	p, ok := known(t)
	if !ok {
		return 0, 0, 0, false
	}
	return t.Diameter - p.Effective*t.Pitch, t.Diameter - p.Nut*t.Pitch, t.Diameter - p.Root*t.Pitch, true
}

// Percent gives the percent of thread that a hole, mm, leaves, and its basis in words. Below
// nought there is no thread at all. False where Diameters has none, and for a hole that is no
// number or beyond all reason.
func Percent(t drawing.Thread, hole float64) (percent float64, basis string, ok bool) {
	p, ok := known(t)
	if !ok || !(math.Abs(hole) <= 10*MostDiameter) {
		return 0, "", false
	}
	return (t.Diameter - hole) / (p.Full * t.Pitch) * 100, p.Basis, true
}

// Hole gives the hole, mm, that leaves a percent of thread. False where Diameters has none, and
// for a percent beyond 1000 either way. Nothing asks whether the hole is above 0.
func Hole(t drawing.Thread, percent float64) (mm float64, ok bool) {
	p, ok := known(t)
	if !ok || !(math.Abs(percent) <= 1000) {
		return 0, false
	}
	return t.Diameter - p.Full*t.Pitch*percent/100, true
}

// Choice is a drill to tap after; sizes mm.
type Choice struct {
	Drill   float64
	Percent float64
	Basis   string
	Book    float64 // the drill of the tables; 0 none there
	Source  string  // of Book
}

// Usual is the percent of thread that is aimed at where the tables have no drill for a
// thread (common practice).
const Usual = 75

// Drill picks, of the drills that are there, mm, the one nearest to the tables' drill; without one
// in the tables, nearest to Usual percent. Only drills that leave from least to most percent
// count, both in, save that the tables' own drill always does. Of two as near the larger is taken:
// it is easier on the tap. False where no drill will do, where Diameters has none, and where least
// and most do not rise or lie beyond 1000 percent.
func Drill(t drawing.Thread, there model.Sizes, least, most float64) (Choice, bool) {
	c := Choice{}
	aim, ok := Hole(t, Usual)
	if !ok || !(least <= most && math.Abs(least) <= 1000 && math.Abs(most) <= 1000) {
		return c, false
	}
	c.Book, c.Source, ok = handbook.TappingDrill(t)
	if ok {
		aim = c.Book
		if there.Has(aim) {
			c.Drill = aim
			c.Percent, c.Basis, _ = Percent(t, aim)
			return c, true
		}
	}
	small, _ := Hole(t, most)
	large, _ := Hole(t, least)
	small = math.Max(small, 0)
	best := math.Inf(1)
	for _, d := range nearest(there, aim, small, large) {
		if gap := math.Abs(d - aim); gap < best-model.Same || gap < best+model.Same && d > c.Drill {
			best, c.Drill = gap, d
		}
	}
	if math.IsInf(best, 1) {
		return c, false
	}
	c.Percent, c.Basis, _ = Percent(t, c.Drill)
	return c, true
}

// nearest gives the members of a set next to a size on either side, within bounds; it never
// walks a long series.
func nearest(s model.Sizes, aim, lo, hi float64) []float64 {
	var out []float64
	for _, m := range s.List {
		if m.Size >= lo-model.Same && m.Size <= hi+model.Same {
			out = append(out, m.Size)
		}
	}
	at := math.Min(math.Max(aim, lo), hi)
	for _, r := range s.Series {
		below := at
		if r.By > 0 {
			below = math.Max(lo, at-r.By)
		}
		one := model.Sizes{Series: []model.Series{r}}
		out = append(out, one.Within(below, hi, 3)...)
	}
	return out
}

// Blind gives how deep the full diameter of a blind hole must be, mm, for a length of full thread,
// mm: that length, the tap's incomplete threads (leadPitches), and one pitch of room. Source: a
// cutting tool supplier's page on the least depth for tapping. A bare formula; BlindWith asks for
// ranges.
func Blind(fullThread, pitch, leadPitches float64) float64 {
	return fullThread + (leadPitches+1)*pitch
}

// BlindBS1936 is the older rule for the same depth, mm: a quarter of the thread's length more
// below 6 mm diameter, a fifth from 6 to 12, both in, and 0.15 above. Source: BS 1936, quoted on a
// reference page; not seen in the standard. A bare formula: no number where the diameter is none.
func BlindBS1936(fullThread, diameter float64) float64 {
	switch {
	case math.IsNaN(diameter):
		return diameter
	case diameter < 6-model.Same:
		return fullThread * 1.25
	case diameter <= 12+model.Same:
		return fullThread * 1.20
	}
	return fullThread * 1.15
}

// FullThread is the other way about: the full thread, mm, that a tap leaves in a blind hole of a
// depth, mm; never below nought. A bare formula; what is no number stays none.
func FullThread(depth, pitch, leadPitches float64) float64 {
	return math.Max(0, depth-(leadPitches+1)*pitch)
}

// Engaged gives how much of a screw holds, mm: its length less what it passes through before the
// thread (parts, washer, a counterbore taken off), and no more than the thread is long; never
// below nought. A bare formula; what is no number stays none.
func Engaged(screw, passes, threadLength float64) float64 {
	return math.Max(0, math.Min(screw-passes, threadLength))
}

// LeastEngaged gives the length of thread that usually holds as well as the screw, in
// diameters, by the group of the metal that is tapped: steel 1, iron and copper alloys
// 1.25, aluminium and plastics 1.5. Common practice; a group that is not known has none.
func LeastEngaged(group string) (diameters float64, ok bool) {
	switch group {
	case "steel_free_cutting", "steel_mild", "steel_tool", "stainless_303", "stainless_304":
		return 1, true
	case "cast_iron", "brass_free_cutting", "bronze", "copper":
		return 1.25, true
	case "aluminium", "acetal":
		return 1.5, true
	}
	return 0, false
}
