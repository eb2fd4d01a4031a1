package model

import "fettle/schema/drawing"

// SetUp is one stretch of the work: a set-up, a square_up, a bench or a heat block. Its
// Kind says which.
type SetUp struct {
	*Item
	// any set-up
	Machine Known[Ref]
	Hold    Known[[]Ref] // from the work outwards; a bare word is in Ref.Text
	Piece   Known[[]string]
	Zero    Zero
	Stop    Stop
	After   Known[[]Ref]
	SetBy   Known[Ref]
	Within  Known[float64]
	Tilt    Tilt
	OnTable Known[[]float64]
	Moved   Known[bool]
	StuckBy Known[string]
	Vee     VeeAt
	Makes   Known[[]Ref]
	Holder  Known[[]Ref]
	Tool    Known[[]Ref]
	Speed   Known[float64]
	Feed    Known[drawing.Feed]
	// in a vise
	Up        Known[Ref]
	Jaws      Known[[]Ref]
	Parallels ParallelsAt
	Grip      Known[float64]
	Along     Known[float64]
	Packing   []PackingAt
	RoundBar  RoundBarAt
	Soft      Soft
	Turned    Known[float64]
	// clamped to the table
	Back   Known[Ref]
	Clamps []ClampAt
	Jacks  Known[[]Position]
	Free   Known[float64] // height of the lowest metal above the table, nothing under it
	Beside Known[Ref]
	// square_up
	Order  Known[[]Ref]
	Leaves SixLengths
	// bench
	By     Known[string]
	Marks  Known[[]Ref]
	Joins  Known[[]Ref]
	Opens  Known[[]Ref]
	TrueTo Known[Ref]
	TurnedHolding
	DividedHolding
	Heat

	Steps []*Step // in written order; `makes` of the set-up stands as one operation each
}

// Names says whether the holding names a thing.
func (s *SetUp) Names(i *Item) bool {
	for _, r := range s.Hold.V {
		if r.Item == i {
			return true
		}
	}
	return false
}

// Block gives the block that the struct was bound from.
func (s *SetUp) Block() *Item { return s.Item }

// Zero is where the dials are set to nought.
type Zero struct {
	Said    bool
	Kept    Known[string]
	X, Y, Z Known[Ref]
	By      Known[Ref]
}

// Stop is a work stop.
type Stop struct {
	Said        bool
	Against     Known[Ref]
	ClearOfTool Known[bool]
}

// Tilt is a piece leaning in its holding.
type Tilt struct {
	Said  bool
	About Known[string]
	By    Known[float64]
	SetBy Known[Ref]
}

// VeeAt is how a vee block stands.
type VeeAt struct {
	Said  bool
	Looks Known[string]
	At    Known[[]float64]
}

// ParallelsAt is the pair under the piece: its height, or the block it is from.
type ParallelsAt struct {
	Height Known[float64]
	Of     Known[Ref]
}

// RoundBarAt is the bar at the moving jaw: its diameter, or the block it is from.
type RoundBarAt struct {
	Diameter Known[float64]
	Of       Known[Ref]
}

// PackingAt is a piece put in to support or balance a grip.
type PackingAt struct {
	Left, Right, Under, Above Known[float64]
	At                        Known[Position]
	Size                      Known[[]float64]
}

// Soft is soft jaws: with a step cut in them, or bored for a piece in a chuck.
type Soft struct {
	Said  bool
	Step  Known[float64]
	Of    Known[Ref] // where nothing else is said of them
	Jaws  Known[Ref]
	Bored Known[drawing.Size]
	Depth Known[float64]
}

// Named is the block of the soft jaws, in whichever form it is written.
func (s *Soft) Named() Known[Ref] {
	if s.Jaws.Is() {
		return s.Jaws
	}
	return s.Of
}

// TurnedHolding is how a piece is held to be turned.
type TurnedHolding struct {
	End          Known[Ref]
	GripOn       Known[Ref] `attr:"on"`
	StickOut     Known[float64]
	Between      Known[Ref]
	Support      Support
	JawsReversed Known[bool]
	Driver       Known[Ref]
	Behind       Known[Ref]
	Balance      Known[Ref]
	Catcher      Known[string]
	SetOver      Known[float64]
}

// Support is what holds the other end, or the middle, of turned work.
type Support struct {
	Said  bool
	By    Known[Ref]
	At    Known[Position]
	AtEnd Known[string] `attr:"at"`
}

// DividedHolding is how a piece stands on a dividing head or rotary table.
type DividedHolding struct {
	Carries   Known[[]Ref]
	AxisAngle Known[float64] `attr:"axis"` // degrees above the table
	AxisWord  Known[string]  `attr:"axis"`
	Blocks    Known[float64]
}

// Heat is a heat treatment, or joining by heat.
type Heat struct {
	Does        Known[string]
	Temperature Known[float64] // degrees Celsius
	Colour      Known[string]  `attr:"temperature"` // a range or a colour, as written
	Soak        Known[float64] // minutes
	Quench      Known[string]
	Zone        Known[[]Ref]
	Filler      Known[string]
	Gap         Known[drawing.Size]
	Source      Known[Ref] `attr:"with"`
}

// ClampAt is one strap clamp on the piece.
type ClampAt struct {
	At    Known[Position]
	Tip   Known[float64]
	Reach Known[float64]
	On    Known[Ref]
}

// Step is one thing done within a set-up: an operation, a deburr, a measure, a mark, a shift.
type Step struct {
	*Item
	// operation
	Makes    Known[[]Ref]
	Tool     Known[[]Ref]
	Holder   Known[[]Ref]
	ToolOut  Known[float64]
	Mounted  Known[string]
	By       Known[string]
	TurnedBy Known[string]
	Leaves   Known[float64]
	To       Known[Depth]
	From     Known[Ref]
	DownTo   DownTo
	Speed    Known[float64]
	Feed     Known[drawing.Feed]
	Cut      Known[float64]
	Spindle  Known[string]
	Cutting  Known[string]
	Along    Known[string]
	Starts   Known[Ref]
	Located  Known[Ref]
	Index    Index
	TopSlide Known[float64] // degrees from the axis of the lathe
	Wheels   Known[[]float64]
	HalfNuts Known[string]
	Kept     Known[string] `attr:"support"` // "withdrawn", "in place"
	Oil      Known[string]
	Cold     Known[bool] // let cool before the cut
	// deburr
	Edges Known[[]Ref]
	// measure
	Measured  MeasuredSize `attr:"size"`
	With      Known[[]Ref]
	At        Known[Position]
	TakenOut  Known[bool]
	Runout    Known[Ref]
	OverWires Known[Ref]
	Tries     Known[Ref]
	Wire      Known[float64]
	// mark
	Out            Known[[]Ref]
	Punched        Known[bool]
	StampedFigures Known[string] `attr:"figures"`
	// shift
	Clamps  []ClampAt
	Packing []PackingAt
	Moved   Support `attr:"support"`
}

// Index is how a step divides: so many equal divisions, angles from the first, or with the
// plate and circle that are used.
type Index struct {
	Said   bool
	Bare   Known[float64]
	Angles Known[[]float64]
	Count  Known[int]
	Plate  Known[Ref]
	Circle Known[int]
}

// Block gives the block that the struct was bound from.
func (s *Step) Block() *Item { return s.Item }

// DownTo is how deep one operation goes: a depth from the face entered, or a face.
type DownTo struct {
	Depth Known[float64]
	Face  Known[Ref]
}

// MeasuredSize is what is measured: one dimension, or from one face or feature to another.
type MeasuredSize struct {
	Said     bool
	Of       Known[Ref]
	From, To Known[Ref]
}
