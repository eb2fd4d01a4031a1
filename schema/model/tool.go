package model

import "fettle/schema/drawing"

// Shank is what is held of a tool or holder: a taper, a diameter, or words.
type Shank struct {
	Taper    drawing.Taper
	Diameter float64
	Text     string
}

// Tail is the rear end of a shank: a drawbar thread, "tang" or "plain".
type Tail struct {
	Thread drawing.Thread
	Word   string
}

// Holder is what sits in the spindle and holds a tool: collet chuck, drill chuck, arbor,
// boring head, tap wrench.
type Holder struct {
	Thing
	System           Known[string]
	Shank            Known[Shank]
	Tail             Known[Tail]
	Mounts           Known[drawing.Taper]
	Block_           Known[string] `attr:"block"`
	Nose             Known[float64]
	Out              Known[float64]
	HoldsAgainstPull Known[bool]
	Range            Known[[]float64]
	Diameter         Known[float64]
	Seat             Known[float64]
	SeatLength       Known[[]float64]
	Spacers          Known[Sizes]
	Collar           Known[float64]
	Key              Known[bool]
	BodyDiameter     Known[float64] `attr:"body"`
	Clamp            ArborClamp
	Bores            Known[[]float64]
	Slide            Known[float64]
	Squares          Known[[]float64]
	Swing            Known[float64]
	Place            Known[string]  // tool post: "front", "rear"
	LeftOfEdge       Known[float64] // tool post: how far it stands out to the left of the edge
	Dies             Known[Sizes]
}

// ArborClamp is what holds a cutter on its arbor.
type ArborClamp struct {
	Said       bool
	By         Known[string]
	Thread     Known[drawing.Thread]
	Diameter   Known[float64]
	Length     Known[float64]
	WasherHeld Known[bool]
}

// Collets is a set of collets.
type Collets struct {
	Thing
	System Known[string]
	Sizes  Known[Sizes]
	Range  Known[float64]
	Tail   Known[drawing.Thread]
}

// Sleeve goes from one taper to a smaller one.
type Sleeve struct {
	Thing
	Outside Known[drawing.Taper]
	Inside  Known[drawing.Taper]
	Open    Known[bool]
}

// Lead is one kind of tap in a set: a word, or incomplete threads at the tip.
type Lead struct {
	Word    string
	Threads float64
}

// Cutter is any driven cutting tool.
type Cutter struct {
	Thing
	Diameter       Known[Sizes]
	Of             Known[string]
	Teeth          Known[int]
	Overall        Known[float64]
	FluteLength    Known[float64]
	Shank          Known[Shank]
	Hand           Known[string]
	MaxSpeed       Known[float64]
	Series         Known[string]
	Point          Known[float64] // included angle, degrees
	Lips           Known[string]
	ReamerKind     Known[string] `attr:"kind"`
	Lead           Known[float64]
	Opens          Known[float64] `attr:"range"`
	Limits         Known[string]
	Taper          Known[drawing.Taper]
	Threads        Known[[]drawing.Thread]
	Leads          Known[[]Lead]
	Angle          Known[float64]
	Least          Known[float64]
	Pilot          Known[float64]
	CentreCutting  Known[bool]
	DeadCentre     Known[float64]
	Neck           Known[float64]
	Corner         Known[float64]
	Width          Known[float64]
	Bore           Known[float64]
	Wobble         Known[float64]
	Marked         Known[string]
	Reach          Known[float64]
	SwingOf        Known[[]float64] `attr:"diameter"` // fly cutter: least, most
	Nose           Known[float64]   // lathe tool: radius at the tip
	Inside         Known[bool]
	LeastBore      Known[float64]
	UpsideDown     Known[bool]
	Pitch          Known[Sizes] // knurling tool
	Outside        Known[float64]
	Split          Known[bool]
	Module         Known[float64]
	DiametralPitch Known[float64]
	PressureAngle  Known[float64]
	ToothForm      Known[string]    `attr:"form"`
	ForTeeth       Known[[]float64] `attr:"teeth"` // gear cutter: least and most teeth, as printed on it
	BodyDiameter   Known[float64]   `attr:"body"`
}
