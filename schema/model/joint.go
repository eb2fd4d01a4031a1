package model

import "fettle/schema/drawing"

// Fit is a shaft in a hole.
type Fit struct {
	*Item
	Hole    Known[Ref]
	Shaft   Known[Ref]
	Class   Known[string]       `attr:"wants"` // "H7/g6"
	Play    Known[drawing.Size] `attr:"wants"` // clearance on diameter; negative is interference
	Engaged Known[float64]
	Joined  Known[string]
}

// Mesh is two sets of teeth, or worm and wheel.
type Mesh struct {
	*Item
	Wheel    Known[Ref]
	Pinion   Known[Ref]
	Worm     Known[Ref]
	Centres  Known[drawing.Size]
	Backlash Known[drawing.Size]
}

// Stack is a chain of dimensions and the gap that it must leave.
type Stack struct {
	*Item
	Path     Known[[]Ref]
	Wants    Known[drawing.Size]
	Reckoned Known[string]
}

// ScrewJoint is a screw that joins parts.
type ScrewJoint struct {
	*Item
	Size    Known[string]
	Head    Known[string]
	Through Known[[]Ref]
	Into    Known[Ref]
	Engaged Known[drawing.Size]
	Washer  Known[float64]
	Named   Known[string] `attr:"washer"`
	Locked  Known[string]
}

// Assembly is parts worked on when joined.
type Assembly struct {
	*Item
	Title    Known[string]
	Of       Known[[]Ref]
	JoinedBy Known[[]Ref]
	Apart    Known[bool]
	Quantity Known[int]

	Places []*Place
	Work   []*SetUp // set-ups, bench and heat in written order
}

// Place is where a part sits in an assembly.
type Place struct {
	*Item
	Part    Known[Ref]
	Touches Known[[]Ref]
	At      Known[Position]
	Turned  PlaceTurned
	Gap     Known[drawing.Size]
}

// PlaceTurned is a part turned about an axis of the first part.
type PlaceTurned struct {
	Said  bool
	About Known[string]
	By    Known[float64] // degrees
}
