// Package bar cuts pieces from bars: how many of one length a bar gives, and which pieces
// to saw from which bar or offcut of the rack.
//
// Lengths are millimetres. Inside they are whole numbers of 1e-9 mm, in which every inch
// size down to 1/512 in is exact, so that five pieces that just fit do fit.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package bar

import (
	"cmp"
	"fmt"
	"math"
)

// Saw is what is lost besides the pieces, each 0 to MostLength mm.
type Saw struct {
	Kerf   float64 // width of the cut, mm
	Facing float64 // added to each piece for facing its ends, mm
	Grip   float64 // end of each bar that stays in the clamp and cannot be sawn, mm

	// EndIsFace says that the end of a bar as it is may be the last face of the last piece,
	// which then needs no cut of its own. Without meaning where there is a Grip.
	EndIsFace bool
}

// Bar is a length of stock on the rack. Lengths are mm, above 0 to MostLength; a count is 0 or
// more, and no more count than pieces are wanted.
type Bar struct {
	Name   string
	Length float64
	Count  int  // how many there are, or may be bought
	Offcut bool // already begun; taken before new bars
}

// Piece is what is wanted. Counts run from 0 to MostPieces.
type Piece struct {
	Name   string
	Length float64 // finished, mm
	Count  int
}

// Job is a rack and what is to come from it, all of one section and metal: up to MostPieces pieces
// in all and as many rows of bars, of MostKinds different lengths each. Lengths are above 0 to
// MostLength mm.
type Job struct {
	Bars   []Bar
	Pieces []Piece
	Saw    Saw
	Usable float64 // shortest remainder worth keeping, mm; 0 where none is
}

// Cut is one bar and what is sawn from it. Lengths are mm.
type Cut struct {
	Bar    string
	Length float64
	Offcut bool
	Pieces []string // longest first
	Left   float64  // what remains of it, its end in the clamp included, mm
	Kept   bool     // it is worth keeping
}

// Level is how far down the list of aims a plan is known to be the best there is.
type Level uint8

const (
	Nothing Level = iota
	NewBars       // no plan opens fewer new bars
	Scrap         // nor, with as few, leaves less scrap
	Kept          // nor, with that too, leaves fewer remainders to keep
	Touched       // nor, with all that, touches fewer bars
)

// String names the aim that is proved, "nothing" for none.
func (l Level) String() string {
	return [...]string{"nothing", "new bars", "scrap", "remainders", "bars touched"}[min(l, Touched)]
}

// Plan says what to saw from what. It is the best in this order: fewest new bars, least scrap
// (remainders too short to keep), fewest remainders to keep, fewest bars touched; Proved says how
// far that is certain. Lengths are mm.
type Plan struct {
	Cuts    []Cut
	NewBars int
	Scrap   float64 // mm
	Kept    int
	Touched int

	LeastNew int // no plan opens fewer new bars than this
	Proved   Level
}

// Short is the error of a rack that does not give all pieces.
type Short struct {
	By     float64 // mm of stock lacking at least; 0 where the lengths together would do
	Proved bool    // no way of sawing does it; otherwise none was found
}

// Error says by how much the rack is short, mm, or that no way of sawing it does.
func (e *Short) Error() string {
	switch {
	case e.By > 0:
		return fmt.Sprintf("the rack is at least %v mm short", e.By)
	case e.Proved:
		return "the rack has the length, and no way of sawing it gives all the pieces"
	}
	return "the rack has the length, and no way of sawing it was found that gives all the pieces"
}

// The ranges taken.
const (
	MostLength = 1e5 // mm: 5000 pieces of twice that are counted in 64 bits
	MostPieces = 5000
	MostKinds  = 200 // different lengths of pieces, and of bars
)

// unit is what lengths are counted in: 1e-9 mm.
const unit = 1e9

func units(mm float64) int64 { return int64(math.Round(mm * unit)) }
func mm(units int64) float64 { return float64(units) / unit }

// Count says how many pieces of a finished length one bar gives and what is left of it, the
// clamped end included, mm: the whole number of times that piece, facing and kerf go into the bar
// less its clamped end, plus one kerf where the bar's own end is the last face. Exact to 1e-9 mm.
// Bar and piece are above 0 to MostLength mm; an error names the length or the figure of the saw
// that is out of range, or says that there are more than 2^31 pieces.
func Count(bar, piece float64, s Saw) (n int, left float64, err error) {
	if err := s.check(); err != nil {
		return 0, 0, err
	}
	for _, l := range []float64{bar, piece} {
		if !(l > 0 && l <= MostLength) || units(l) == 0 {
			return 0, 0, fmt.Errorf("%v mm: lengths run from above 0 to %v mm", l, MostLength)
		}
	}
	each := units(piece) + units(s.Facing) + units(s.Kerf)
	room := s.room(units(bar))
	if each <= 0 || room < each {
		return 0, bar, nil
	}
	whole := room / each
	if whole > math.MaxInt32 {
		return 0, 0, fmt.Errorf("a piece of %v mm from a bar of %v mm: too many to count", piece, bar)
	}
	return int(whole), mm(max(0, units(bar)-whole*each)), nil
}

// room is the length of a bar that pieces, each with its kerf, may take up.
func (s Saw) room(bar int64) int64 {
	switch {
	case s.Grip > 0:
		return bar - units(s.Grip)
	case s.EndIsFace:
		return bar + units(s.Kerf)
	}
	return bar
}

func (s Saw) check() error {
	for i, x := range []float64{s.Kerf, s.Facing, s.Grip} {
		if !(x >= 0 && x <= MostLength) {
			return fmt.Errorf("the %s is %v mm: it runs from 0 to %v mm", []string{"kerf", "facing", "clamped end"}[i], x, MostLength)
		}
	}
	return nil
}

func (j Job) check() error {
	if err := j.Saw.check(); err != nil {
		return err
	}
	if !(j.Usable >= 0 && j.Usable <= MostLength) {
		return fmt.Errorf("the shortest remainder to keep is %v mm: it runs from 0 to %v mm", j.Usable, MostLength)
	}
	total := 0
	for _, p := range j.Pieces {
		if !(p.Length > 0 && p.Length <= MostLength) || units(p.Length) == 0 {
			return fmt.Errorf("%s is %v mm long: lengths run from above 0 to %v mm", p.Name, p.Length, MostLength)
		}
		if p.Count < 0 || p.Count > MostPieces {
			return fmt.Errorf("%s is wanted %d times: counts run from 0 to %d", p.Name, p.Count, MostPieces)
		}
		total += p.Count
	}
	for _, b := range j.Bars {
		if !(b.Length > 0 && b.Length <= MostLength) {
			return fmt.Errorf("%s is %v mm long: lengths run from above 0 to %v mm", b.Name, b.Length, MostLength)
		}
		if b.Count < 0 {
			return fmt.Errorf("there are %d of %s", b.Count, b.Name)
		}
	}
	if total > MostPieces || len(j.Pieces) > MostPieces || len(j.Bars) > MostPieces {
		return fmt.Errorf("%d pieces from %d bars: up to %d are looked at", total, len(j.Bars), MostPieces)
	}
	return nil
}

// score is what a plan comes to, in order of weight.
type score struct {
	fresh   int
	scrap   int64
	kept    int
	touched int
}

func (a score) compare(b score) int {
	return cmp.Or(cmp.Compare(a.fresh, b.fresh), cmp.Compare(a.scrap, b.scrap), cmp.Compare(a.kept, b.kept), cmp.Compare(a.touched, b.touched))
}

func (a score) plus(b score) score {
	return score{a.fresh + b.fresh, a.scrap + b.scrap, a.kept + b.kept, a.touched + b.touched}
}
