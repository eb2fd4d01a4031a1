package model

import "fettle/schema/drawing"

// Machine is a mill, a drill press or a lathe.
type Machine struct {
	Thing
	Spindle      Known[string] // "upright", "level"
	Taper        Known[drawing.Taper]
	Drawbars     Known[[]drawing.Thread]
	Speeds       Known[Speeds]
	Reverse      Known[bool]
	Table        Known[[]float64]
	TeeSlots     TeeSlots
	Travel       Known[[]float64]
	NoseToTable  Known[[]float64]
	Throat       Known[float64]
	Quill        Known[float64]
	Column       Known[string]
	NoseDiameter Known[float64]
	Backlash     Backlash
	LocksDrag    Known[bool]
	Tilts        Known[float64]
	TableSwivels Known[float64] // degrees, of a mill with a level spindle
	Repeats      Known[float64]
	Readout      Known[float64] // step of a readout on the slides
	LargestDrill Known[float64]
	AxisToTable  Known[[]float64]
	Dials        Dials
	Power        Known[float64]
	OutOfSquare  Known[float64]
	LatheParts
}

// LatheParts are the figures that a lathe alone has.
type LatheParts struct {
	Swing             Known[float64] // largest diameter over the bed
	SwingOverSlide    Known[float64] // largest diameter over the cross slide
	Gap               BedGap
	BetweenCentres    Known[float64]
	NoseToTailstock   Known[float64]
	Bore              Known[float64]
	Headstock         Known[float64] // spindle nose face to the rear end of the spindle
	Nose              Known[Nose]
	NoseLock          Known[bool]
	Brake             Known[bool]
	Tailstock         Tailstock
	TopSlide          TopSlide
	CrossSlide        CrossSlide
	ToolHeight        Known[float64]
	TurnsTaper        Known[float64] // mm on diameter in 100 mm
	LeadScrew         Known[LeadScrew]
	LeadScrewReverses Known[bool]
	Wheels            Known[[]float64]
	FixedTrain        Known[float64]
	DividingWheel     Known[int]
	TaperAttachment   TaperAttachment
	BedGap            Known[float64]
	Weight            Known[float64] // kg
}

// BedGap is a gap in the bed beside the headstock.
type BedGap struct {
	Said   bool
	Swing  Known[float64]
	Length Known[float64]
}

// Tailstock is that of a lathe.
type Tailstock struct {
	Said    bool
	Taper   Known[drawing.Taper]
	Travel  Known[float64]
	SetOver Known[float64]
}

// TopSlide is the slide that is set to an angle for tapers.
type TopSlide struct {
	Said     bool
	Travel   Known[float64]
	Division Known[float64]
	Turn     Known[float64]
}

// CrossSlide is the slide square to the axis. Its dial reads on diameter or on radius.
type CrossSlide struct {
	Said     bool
	Travel   Known[float64] // on radius
	Division Known[float64]
	Turn     Known[float64]
	Lines    Known[int]
	Reads    Known[string]
}

// TaperAttachment is a guide for turning tapers.
type TaperAttachment struct {
	Said   bool
	Length Known[float64]
	Angle  Known[float64] // included, degrees
}

// Dials are the graduated collars of a mill's slides.
type Dials struct {
	Said           bool
	X, Y, Z, Quill Dial
}

// Dial is one graduated collar.
type Dial struct {
	Said     bool
	Division Known[float64]
	Turn     Known[float64]
	Lines    Known[int]
}

// Nose is what chucks go on by: a thread, a taper, "bolted" or "camlock".
type Nose struct {
	Thread drawing.Thread
	Taper  drawing.Taper
	Word   string
}

// Screwed says that a chuck goes on by a thread, and can unscrew.
func (n Nose) Screwed() bool { return n.Thread.Series != "" }

// LeadScrew is the screw that moves the saddle: its lead in mm, and whether it was written
// as threads to the inch.
type LeadScrew struct {
	Lead float64
	Inch bool
	TPI  float64 // 0 where it was written as a length
}

// TeeSlots are the slots of a table.
type TeeSlots struct {
	Bare  Known[float64] // written as one figure: the width
	Width Known[float64]
}

// Backlash is the slack of the slides.
type Backlash struct {
	Bare Known[float64] // written as one figure, for x and y
	X, Y Known[float64]
}
