package model

import "fettle/schema/drawing"

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
