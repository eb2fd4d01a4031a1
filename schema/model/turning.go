package model

import "fettle/schema/drawing"

// Chuck is a lathe chuck, also on a dividing head or rotary table.
type Chuck struct {
	Thing
	Jaws        Known[int]
	Independent Known[bool]
	Diameter    Known[float64]
	Length      Known[float64] // spindle nose face to the front of the body
	JawLength   Known[float64]
	JawOut      Known[float64] // circle that the jaws sweep at the widest grip
	Bore        Known[float64]
	Grips       Known[[]float64]
	GripsInside Known[[]float64]
	Reversed    ReversedJaws
	Runout      Known[float64]
	Repeats     Known[float64]
	MaxSpeed    Known[float64]
	Mounts      Known[Nose]
}

// ReversedJaws are the jaws turned round, or a second set.
type ReversedJaws struct {
	Said        bool
	Grips       Known[[]float64]
	GripsInside Known[[]float64]
	JawOut      Known[float64]
}

// Centre is a lathe centre.
type Centre struct {
	Thing
	Shank Known[drawing.Taper]
	Live  Known[bool]
	Half  Known[bool]
	Out   Known[float64] // quill face to its point
	Pipe  Known[[]float64]
}

// Steady stands on the bed or moves with the saddle.
type Steady struct {
	Thing
	Sort  Known[string] `attr:"kind"` // "fixed", "travelling"
	Bars  Known[[]float64]
	Width Known[float64]
}

// Mandrel holds work by its bore.
type Mandrel struct {
	Thing
	Sort     Known[string] `attr:"kind"`
	Diameter Known[Sizes]
	Length   Known[float64]
	Thread   Known[drawing.Thread]
	Shoulder Known[float64]
	Nut      Known[drawing.Thread]
}

// Carrier drives work between centres.
type Carrier struct {
	Thing
	Bars  Known[[]float64]
	Swing Known[float64]
	Width Known[float64]
}

// SplitBush stands between jaw and work.
type SplitBush struct {
	Thing
	Bore    Known[Sizes]
	Outside Known[float64]
	Section Known[string]
	Length  Known[float64]
}

// Nut is a fastener, or holds threaded work in a chuck.
type Nut struct {
	Thing
	Thread Known[drawing.Thread]
	Across Known[float64]
	Length Known[float64]
	Split  Known[bool]
}

// BarSupport steadies bar behind the spindle.
type BarSupport struct {
	Thing
	Bars Known[[]float64]
}

// Faceplate is that of a lathe or dividing head.
type Faceplate struct {
	Thing
	Diameter Known[float64]
	Length   Known[float64] // spindle nose face to its front face
	Bore     Known[float64] // clear hole through its middle
	Slots    Known[float64]
	Mounts   Known[Nose]
	Mass     Known[float64]
}

// AnglePlate is an angle plate.
type AnglePlate struct {
	Thing
	Size      Known[[]float64] // along the bend, foot, upright
	Thickness Known[float64]   // of foot and upright
	Mass      Known[float64]
}

// VBlock is a vee block, or a matched pair.
type VBlock struct {
	Thing
	Bars   Known[[]float64]
	Height Known[float64]
	Vee    Known[float64] // foot to the sharp bottom of the vee
	Angle  Known[float64]
	Length Known[float64]
	Width  Known[float64] // across the vee
	Relief Known[float64] // width of the slot along the bottom of the vee; 0 none
}

// BalanceWeights are weights for work off centre.
type BalanceWeights struct {
	Thing
	Masses Known[[]float64]
}

// DividingHead divides by worm and plate.
type DividingHead struct {
	Thing
	Ratio        Known[float64]
	Plates       Known[[]Ref]
	Direct       Known[[]float64]
	CentreHeight Known[float64]
	Nose         Known[Nose]
	Taper        Known[drawing.Taper]
	StandsUp     Known[bool]
	Tilts        Known[[]float64]
	TiltToNose   Known[float64]
	Differential DifferentialGear
	Footstock    Footstock
}

// DifferentialGear gears the spindle to the plate.
type DifferentialGear struct {
	Said   bool
	Wheels Known[[]float64]
}

// Footstock supports the far end of the work.
type Footstock struct {
	Said         bool
	CentreHeight Known[float64]
}

// DividingPlate has circles of holes.
type DividingPlate struct {
	Thing
	Circles Known[[]float64]
}

// RotaryTable is a round table turned by a worm.
type RotaryTable struct {
	Thing
	Ratio        Known[float64]
	Height       Known[float64]
	Diameter     Known[float64]
	Bore         Known[Shank]
	StandsUp     Known[bool]
	CentreHeight Known[float64]
	Dial         TableDial
}

// TableDial is the dial of a rotary table's handle.
type TableDial struct {
	Said     bool
	Division Known[float64] // degrees
}

// SineBar is a sine bar or sine plate.
type SineBar struct {
	Thing
	Centres Known[float64]
	Error   Known[float64]
}

// SlipGauges is a set of slip gauges.
type SlipGauges struct {
	Thing
	Named Known[string] `attr:"set"`
	Sizes Known[Sizes]  `attr:"set"`
}

// HeatSource is a furnace or a torch.
type HeatSource struct {
	Thing
	Hottest Known[float64] // degrees Celsius
}

// ArborPress is a hand press.
type ArborPress struct {
	Thing
	Force   Known[float64] // N
	Opening Known[float64]
}

// Saw cuts pieces off the bar: a power saw, a hacksaw, a piercing saw.
type Saw struct {
	Thing
	Kerf    Known[float64]
	Opening Known[[]float64]
	Skew    Known[float64] // mm in 100 mm
}

// Screws are bought or own screws.
type Screws struct {
	Thing
	Thread       Known[drawing.Thread]
	Head         Known[string]
	Lengths      Known[Sizes]
	Driver       Known[string]
	HeadDiameter Known[float64]
}

// Pins are dowels and pins.
type Pins struct {
	Thing
	Diameter Known[Sizes]
	Lengths  Known[Sizes]
	Sort     Known[string] `attr:"kind"`
	Limits   Known[string]
}

// Bearings are ball and plain bearings.
type Bearings struct {
	Thing
	Code    Known[string]
	Bore    Known[float64]
	Outside Known[float64]
	Width   Known[float64]
}

// Circlips are rings for grooves.
type Circlips struct {
	Thing
	Diameter Known[Sizes]
	Inside   Known[bool]
}

// NumberPunches stamp figures.
type NumberPunches struct {
	Thing
	Height Known[float64]
	Width  Known[float64]
}
