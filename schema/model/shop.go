package model

import "fettle/schema/drawing"

// The structs of this file and of machine, vise, tool, turning and stock are the things of a shop. A
// field is the attribute of the same name in the table of kinds (JawWidth is jaw_width), bound by
// package schema; a test holds the two together. Only what the dry run and the rules ask for has a
// struct: the rest of the table is read, and kept in the Item.

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
	Threads   Known[[]drawing.Thread] // thread gauges
}
