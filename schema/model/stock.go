package model

import "fettle/schema/drawing"

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
