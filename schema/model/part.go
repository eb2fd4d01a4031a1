package model

import "fettle/schema/drawing"

// Part is one thing to make: its finished envelope, its features, and the work in order.
type Part struct {
	*Item
	Title     Known[string]
	Material  Known[Material]
	Condition Known[string]
	Length    Known[drawing.Size]
	Width     Known[drawing.Size]
	Height    Known[drawing.Size]
	Thickness Known[drawing.Size]
	Diameter  Known[drawing.Size]
	Hexagon   Known[drawing.Size]
	Square    Known[drawing.Size]
	Quantity  Known[int]
	Hand      Known[string]
	MirrorOf  Known[Ref]
	Bought    Bought
	Edges     Known[float64]
	Finish    Known[string]

	Blank    *Blank // nil where none is written
	Faces    []*FaceRule
	Features []*Feature
	Work     []*SetUp // set-ups, square_up, bench and heat in written order
}

// Block gives the block that the struct was bound from.
func (p *Part) Block() *Item { return p.Item }

// Bought says that a part is bought ready.
type Bought struct {
	Yes Known[bool]
	As  Known[Ref]
}

// Blank is the raw piece and where the finished part lies in it.
type Blank struct {
	*Item
	Stock     Known[Ref]
	Lies      Known[[]string]
	Cut       Known[drawing.Size]
	Over      SixLengths
	Skin      SixWords
	Condition Known[string]
	Bar       Known[bool]
}

// SixLengths has a length for each face.
type SixLengths struct {
	Said                                  bool
	Left, Right, Front, Back, Bottom, Top Known[float64]
	Outside                               Known[float64]
}

// On gives the length at a face.
func (s *SixLengths) On(f Face) Known[float64] {
	return [...]Known[float64]{{}, s.Left, s.Right, s.Front, s.Back, s.Bottom, s.Top}[f]
}

// SixWords has a word for each face.
type SixWords struct {
	Said                                  bool
	Left, Right, Front, Back, Bottom, Top Known[string]
	Outside                               Known[string]
}

// On gives the word at a face.
func (s *SixWords) On(f Face) Known[string] {
	return [...]Known[string]{{}, s.Left, s.Right, s.Front, s.Back, s.Bottom, s.Top}[f]
}

// FaceRule is what a part says of one of its own faces.
type FaceRule struct {
	*Item
	Limits Known[string]
	Raw    Known[bool]
	Relations
}

// Relations is what ISO 1101 says of a surface.
type Relations struct {
	Flatness     Known[float64] `attr:"flat"`
	Roundness    Known[float64] `attr:"round"`
	Straightness Known[float64] `attr:"straight"`
	SquareTo     ToFace         `attr:"square"`
	ParallelTo   ToFace         `attr:"parallel"`
	PositionIn   InZone         `attr:"position"`
	SurfaceIs    Known[string]  `attr:"finish"`
}

// ToFace is a relation to one datum face.
type ToFace struct {
	Said   bool
	To     Known[Ref]
	Within Known[float64]
}

// InZone is a position tolerance.
type InZone struct {
	Said   bool
	To     Known[[]Ref]
	Within Known[float64]
}

// Feature is a piece of missing metal: a hole, a slot, a slit. Which fields count follows
// from its Kind.
type Feature struct {
	*Item
	Relations
	Into        Known[Ref]
	At          Known[[]Position]
	From, To    Known[Position]
	Side        Known[Ref]
	Diameter    Known[drawing.Size]
	Width       Known[drawing.Size]
	Depth       Known[Depth]
	Bottom      Known[string]
	Ends        Known[string]
	Corner      Known[float64]
	FloorCorner Known[float64]
	Thread      HoleThread
	Counterbore Counterbore
	Countersink Countersink
	Around      Around
	Tilted      Tilted
	Meets       Known[[]Ref]
	Size        Known[drawing.Size] // chamfer, radius
	Angle       Known[float64]
	On          Known[[]Ref]
	Kerf        Known[drawing.Size]
	CleanUp     Known[float64]
	Pieces      Known[[]string]
	StaysOpen   Known[bool]
}

// Block gives the block that the struct was bound from.
func (f *Feature) Block() *Item { return f.Item }

// HoleThread is the thread in a hole.
type HoleThread struct {
	Said  bool
	Size  Known[drawing.Thread]
	Class Known[string]
	Depth Known[float64]
	From  Known[Ref]
}

// Counterbore is a flat-bottomed larger mouth.
type Counterbore struct {
	Said     bool
	Diameter Known[drawing.Size]
	Depth    Known[drawing.Size]
	On       Known[Ref]
}

// Countersink is a conical mouth.
type Countersink struct {
	Said     bool
	Diameter Known[drawing.Size]
	Angle    Known[float64]
	On       Known[Ref]
}

// Around is the same feature again round a circle.
type Around struct {
	Said  bool
	Count Known[int]
	Pcd   Known[drawing.Size]
	Start Known[float64]
	Over  Known[float64]
}

// Tilted is an axis that leans.
type Tilted struct {
	Said    bool
	Towards Known[Ref]
	By      Known[float64]
}
