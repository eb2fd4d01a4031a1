package model

import "fettle/schema/drawing"

// The structs of this file are the things of a shop. A field is the attribute of the same
// name in the table of kinds (JawWidth is jaw_width), bound by package schema; a test holds
// the two together. Only what the dry run and the rules ask for has a struct: the rest of
// the table is read, and kept in the Item.

// Shop is everything that is there: the shop's folder and what the recipe itself makes.
type Shop struct {
	Label string // "" where no shop was named: every fact of it is not known
	Title string
	Unit  drawing.Unit
	AsOf  string
	Item  *Item

	Machines    []*Machine
	Vises       []*Vise
	Parallels   []*Parallels
	Packing     []*Packing
	RoundBars   []*RoundBar
	SoftJaws    []*SoftJaws
	Clamps      []*Clamps
	Holders     []*Holder
	Collets     []*Collets
	Sleeves     []*Sleeve
	Cutters     []*Cutter
	Instruments []*Instrument
	Stock       []*Stock
	Chucks      []*Chuck
	Centres     []*Centre
	Steadies    []*Steady
	Mandrels    []*Mandrel
	Carriers    []*Carrier
	SplitBushes []*SplitBush
	Nuts        []*Nut
	BarSupports []*BarSupport
	Faceplates  []*Faceplate
	AnglePlates []*AnglePlate
	VBlocks     []*VBlock
	Weights     []*BalanceWeights
	Heads       []*DividingHead
	Plates      []*DividingPlate
	Tables      []*RotaryTable
	SineBars    []*SineBar
	SlipGauges  []*SlipGauges
	Heats       []*HeatSource
	Presses     []*ArborPress
	Saws        []*Saw
	Screws      []*Screws
	Pins        []*Pins
	Bearings    []*Bearings
	Circlips    []*Circlips
	Punches     []*NumberPunches
	All         []*Item // every thing, by kind, then label
}

// Find gives the struct whose Item is i; nil if the shop has none.
func Find[T interface{ Block() *Item }](all []T, i *Item) (T, bool) {
	for _, t := range all {
		if t.Block() == i {
			return t, true
		}
	}
	var none T
	return none, false
}

// Thing is what every block of a shop may carry.
type Thing struct {
	*Item
	Quantity Known[int]
	State    Known[string]
	MadeAs   Known[Ref]
}

// Block gives the block that the struct was bound from.
func (t *Thing) Block() *Item { return t.Item }

// Here says whether the thing can be used now. Lent out, to make, on order are not here;
// borrowed and worn are. What a part of this build becomes is here when that is made: that it
// is made before it is used is a matter of the order of work.
func (t *Thing) Here() bool {
	switch t.State.V {
	case "to make":
		return t.MadeAs.Is()
	case "lent out", "on order":
		return false
	}
	return true
}

// AtHand says whether the thing may be chosen where nothing is written: it is here from the
// beginning, and not first made in this build.
func (t *Thing) AtHand() bool { return t.Here() && !t.MadeAs.Is() }

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

// Vise is a machine vise or a bench vise.
type Vise struct {
	Thing
	JawWidth     Known[float64]
	JawDepth     Known[float64] // bed to top of the jaw
	JawThickness Known[float64]
	Opening      Known[float64]
	Steps        Known[[]float64]
	Bed          Known[float64] // table to bed
	SwivelBase   Known[float64]
	Body         Known[[]float64]
	Handle       Known[float64]
	Force        Known[float64]
	Error        Known[float64]
	Repeats      Known[float64]
}

// Parallels are pairs of parallels.
type Parallels struct {
	Thing
	Heights   Known[Sizes]
	Thickness Known[float64]
	Length    Known[float64]
}

// Packing is odd pieces to put under or beside work.
type Packing struct {
	Thing
	Heights   Known[Sizes]
	Thickness Known[float64]
	Length    Known[float64]
}

// RoundBar is rods for the moving jaw.
type RoundBar struct {
	Thing
	Diameter Known[Sizes]
	Length   Known[float64]
}

// SoftJaws are jaws of soft metal.
type SoftJaws struct {
	Thing
	ForUseOn  Known[[]Ref]
	Heights   Known[Sizes]
	Thickness Known[float64]
}

// Clamps is a set of strap clamps.
type Clamps struct {
	Thing
	Slot   Known[float64]
	Studs  Known[drawing.Thread]
	Reach  Known[float64]
	Height Known[[]float64]
	Stands Known[float64]
}

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

// Instrument is anything that measures.
type Instrument struct {
	Thing
	Range     Known[[]float64]
	ReadsTo   Known[float64]
	Error     Known[float64]
	Measures  Known[string] `attr:"kind"` // "outside", "inside", "depth"
	Anvil     Known[float64]
	AnvilForm Known[string]
	Reach     Known[float64]
	Jaws      Known[float64]
	Inside    Known[[]float64]
	Base      Known[float64]
	Diameter  Known[Sizes] // plug gauges; edge finder and lever: one
	Limits    Known[string]
	Length    Known[float64]
}

// Stock is raw metal.
type Stock struct {
	Thing
	Round     Known[drawing.Size]
	Square    Known[drawing.Size]
	Hexagon   Known[drawing.Size]
	Flat      FlatBar
	Sheet     SheetMetal
	Tube      Tube
	Casting   Casting
	Material  Known[Material]
	Lengths   Known[[]float64]
	Limits    StockLimits
	Skin      Known[string]
	SkinDepth Known[float64]
	Condition Known[string]
	Skew      Known[float64]
}

// FlatBar is the section of flat bar.
type FlatBar struct {
	Said             bool
	Width, Thickness Known[drawing.Size]
}

// SheetMetal is the section of sheet.
type SheetMetal struct {
	Said      bool
	Thickness Known[drawing.Size]
	Width     Known[float64]
}

// Tube is the section of tube.
type Tube struct {
	Said          bool
	Outside, Wall Known[drawing.Size]
}

// Casting is a raw piece cast for one part.
type Casting struct {
	Said bool
	Size Known[[]float64]
	Over Known[float64]
}

// StockLimits is the tolerance of the section.
type StockLimits struct {
	Class Known[string]    // "h9"
	Sizes Known[[]float64] // least and most, as measured
}
