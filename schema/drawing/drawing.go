// Package drawing reads the notation of drawings: "8 H7", "30 ±0.1", "3/8 in",
// "M6x0.75 LH", "MT2", "22 deg 30'". It knows how such words are written, not what a
// standard makes of them: a class is kept as its letters, and a thread without a pitch
// has none until the handbook is asked.
//
// Lengths are millimetres, angles degrees.
package drawing

// Unit is what a bare length means in a folder.
type Unit uint8

const (
	Millimetre Unit = iota
	Inch
)

// MM is how many millimetres the unit has: 25.4 for the inch, exactly (ISO 31-1).
func (u Unit) MM() float64 {
	if u == Inch {
		return 25.4
	}
	return 1
}

func (u Unit) String() string {
	if u == Inch {
		return "in"
	}
	return "mm"
}

// TolKind says how the limits of a dimension are given.
type TolKind uint8

const (
	General    TolKind = iota // none written: the general tolerance holds
	Deviations                // limits written as figures: Lo and Hi
	Class                     // a class of ISO 286: Letters
)

// Tolerance is what stands behind the nominal size.
type Tolerance struct {
	Kind    TolKind
	Lo, Hi  float64 // deviations from nominal in mm, Lo <= Hi; Deviations only
	Letters string  // "H7", "js6"; Class only
}

// Own says whether a size has limits of its own: figures, or a class.
func (t Tolerance) Own() bool { return t.Kind == Deviations || t.Kind == Class }

// Size is a dimension as it stands on the drawing.
type Size struct {
	Nominal  float64 // mm; of a range the middle
	Tol      Tolerance
	Decimals int    // decimal places as written, for general tolerances by places; -1 where not written as a text or a plain number
	Unit     Unit   // unit it was written in, for printing
	Written  string // as written
}

// Thread is a thread designation.
type Thread struct {
	Series   string  // "M", "UN", "UNC", "UNF", "UNEF", "BSW", "BSF", "ME", "BA", "BSB", "Tr", "BSP", "BSPT", "NPT"
	Diameter float64 // major diameter, mm; 0 where the series numbers its sizes and the handbook must say (BA, # sizes)
	Pitch    float64 // mm; 0 where not written: the coarse pitch of the series
	Size     string  // the size word of a numbered or inch series: "2", "1/4", "#10"
	Left     bool
	Coarse   bool // the pitch is the coarse one of a metric size, which is not spoken; the handbook says so
	Written  string
}

// Taper is a taper designation: of a named series, or a plain ratio on diameter.
type Taper struct {
	Series  string  // "MT", "JT", "R8", "ISO", "BT", "CAT", "SK", "NMTB", "B&S", "5C", "W", "B"; "" for a plain ratio
	Number  string  // "2", "30", "33"; "" for R8
	Ratio   float64 // of a plain ratio "1:10": 0.1, on diameter
	Written string
}

// FeedKind says what a feed is counted over.
type FeedKind uint8

const (
	PerTurn   FeedKind = iota // mm for each turn
	PerTooth                  // mm for each tooth
	PerMinute                 // mm in a minute
	ByHand
)

// Feed is a rate of feed.
type Feed struct {
	Kind    FeedKind
	Rate    float64 // mm
	Written string
}
