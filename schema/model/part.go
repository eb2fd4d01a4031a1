package model

import (
	"math"

	"fettle/schema/drawing"
)

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
	Hardness  Known[string]

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
	Concentric   ToFace
	Symmetric    ToFace
	RunoutTo     RunoutZone    `attr:"runout"`
	PositionIn   InZone        `attr:"position"`
	SurfaceIs    Known[string] `attr:"finish"`
}

// ToFace is a relation to one datum face.
type ToFace struct {
	Said   bool
	To     Known[Ref]
	Within Known[float64]
}

// RunoutZone is the full swing of an indicator allowed on a surface as it turns.
type RunoutZone struct {
	Said   bool
	To     Known[Ref]
	Within Known[float64]
	Over   Known[string]
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
	RoundParts
}

// RoundParts are the attributes of features of turned parts, of teeth, scales and sheet.
type RoundParts struct {
	Sort           Known[string]       `attr:"kind"` // keyway, dovetail
	Direction      Known[float64]      `attr:"at"`   // flat, keyway: degrees from top towards back
	ToAxis         Known[drawing.Size] // flat
	OverRound      Known[drawing.Size] `attr:"over"` // flat: to the round surface opposite
	Arc            Known[float64]      `attr:"over"` // graduations: degrees
	Count          Known[int]
	Across         Known[drawing.Size] // flats
	Start          Known[float64]      // degrees from top towards back
	FootWidth      Known[drawing.Size]
	FootHeight     Known[drawing.Size]
	OverRollers    OverRollers
	Eccentric      Eccentric
	Outer          Known[drawing.Size] // groove in an end
	Form           Known[string]
	TaperSize      Known[drawing.Taper] `attr:"size"`
	Small          Known[drawing.Size]
	Large          Known[drawing.Size]
	LargeEnd       Known[string]
	Mates          Known[Ref]
	Pitch          Known[float64]
	Stays          Known[bool]
	ThreadSize     Known[drawing.Thread] `attr:"size"`
	Class          Known[string]
	Starts         Known[int]
	Undercut       Known[Ref]
	Module         Known[float64]
	DiametralPitch Known[float64]
	HandOf         Known[string] `attr:"hand"`
	PressureAngle  Known[float64]
	PitchDiameter  Known[drawing.Size]
	Worm           Known[Ref]
	Notch          Notch
	Helix          Known[float64]
	Shifted        Known[float64]
	Thinned        Known[float64]
	Throated       Known[bool]
	Spacing        Known[drawing.Size]
	FromFace       Known[Ref]      `attr:"from"` // graduations: where all lines begin
	ZeroAt         Known[float64]  // degrees
	ZeroPlace      Known[Position] `attr:"zero_at"` // straight
	Runs           Known[string]
	SeenFrom       Known[Ref]
	LineWidth      Known[float64]
	Deep           Known[float64]
	Figures        ScaleFigures
	Towards        Known[Ref] // bend
	InsideRadius   Known[drawing.Size]
	Allowance      Known[float64]
	Grain          Known[string]
	Points         Known[[]Position] // outline
	Arcs           []OutlineArc
	Opening        Known[bool]   `attr:"inside"`
	EdgeLimits     Known[string] `attr:"limits"`
}

// OverRollers is the measured size of a dovetail.
type OverRollers struct {
	Said    bool
	Rollers Known[float64]
	Size    Known[drawing.Size]
}

// Eccentric is an axis beside the part's own.
type Eccentric struct {
	Said    bool
	By      Known[drawing.Size]
	Towards Known[float64] // degrees from top towards back
}

// Notch is the shape of an index notch or ratchet tooth.
type Notch struct {
	Said  bool
	Width Known[drawing.Size]
	Depth Known[drawing.Size]
	Angle Known[float64]
}

// ScaleFigures are the numbers beside the lines of a scale.
type ScaleFigures struct {
	Said     bool
	Every    Known[int]
	First    Known[float64]
	Step     Known[float64]
	Height   Known[float64]
	Runs     Known[string]
	SeenFrom Known[Ref]
	Feet     Known[Ref]
}

// OutlineArc is round instead of straight between two points of an outline.
type OutlineArc struct {
	From   Known[int]
	Radius Known[float64] // positive bulges outwards
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

// AxialModule is the axial pitch of a worm over pi, mm, however it is written.
func (f *Feature) AxialModule() Known[float64] {
	switch {
	case f.Module.Is():
		return f.Module
	case f.DiametralPitch.Is() && f.DiametralPitch.V > 0:
		return Map(f.DiametralPitch, func(p float64) float64 { return 25.4 / p })
	case f.Pitch.Is():
		return Map(f.Pitch, func(p float64) float64 { return p / math.Pi })
	}
	return f.Module
}
