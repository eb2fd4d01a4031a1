package model

import (
	"fettle/schema/drawing"
	"fettle/schema/text"
)

// Build is one recipe against one shop.
type Build struct {
	Sources    *text.Sources
	Unread     bool // a file could not be read: nothing else is here
	Recipe     Recipe
	Shop       Shop
	Parts      []*Part
	Fits       []*Fit
	Meshes     []*Mesh
	Stacks     []*Stack
	Screwed    []*ScrewJoint
	Assemblies []*Assembly
	Joints     []*Item // the blocks of these five, by kind, then label
	Made       []*Made
	Excused    []*Concession
	House      []*HouseRule
	Thumbs     map[string]Known[float64] // every limit of judgement, by name
}

// Recipe is the head of a recipe folder.
type Recipe struct {
	*Item
	Folder  string
	Title   string
	Unit    drawing.Unit
	Shops   []string // usual shops, relative to the folder
	General General
}

// General is the general tolerance of a recipe.
type General struct {
	From   Origin // Unknown: untoleranced sizes have no limits
	At     text.Place
	Class  string    // "ISO 2768-m": its letter, f m c v
	Either float64   // "±0.005": half the tolerance, mm
	Places []float64 // by decimal places: index 2 is ".xx"; 0 where none is given, mm
}

// Made is a measured size.
type Made struct {
	*Item
	Of   Known[Ref]
	Size Known[float64]
	On   Known[string]
}

// Concession accepts one rule at one place.
type Concession struct {
	*Item
	At      Known[Ref]
	Because Known[string]
	Until   Known[string]
}

// HouseRule is a rule of the shop's own.
type HouseRule struct {
	*Item
	LooksAt Known[string]
	When    Expr
	Says    Known[string]
	Level   Known[string]
}

// Answer is what a condition comes to.
type Answer uint8

const (
	NotKnown Answer = iota
	Yes
	No
)

// Expr is a condition compiled from the file: it looks facts up by the path below the
// thing it is asked about ("cutting", "tool", "diameter").
type Expr interface {
	Eval(look func(path []string) Value) (Answer, []Lack)
}
