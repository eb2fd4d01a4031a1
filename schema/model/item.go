package model

import (
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/text"
)

// Item is a block as it was written: a thing of the shop, a part, a feature, a set-up, a step.
type Item struct {
	Kind   string     // its kind in the table: "vise"
	Word   string     // the kind as typed: "vice"
	Label  string     // "" where it has none
	At     text.Place // the header: kind and label
	Body   text.Place // the whole block
	In     *Item      // the block it stands in; nil at the top of a file
	Unit   drawing.Unit
	Attrs  []Attr  // in written order
	Items  []*Item // the blocks within, in written order
	Turn   int     // number of its turn among the blocks of its kind in its parent, from 1; names steps without a label
	Name   string  // what it is called in the work: "operation saw the split", "hole.pillar, second"
	Alike  uint64  // as Digest, but for its label: two things of one kind that say the same have the same
	Digest uint64  // of all that it says, with its values: the same words give the same digest wherever they stand
}

// Attr is an attribute as it was written, with what it came to.
type Attr struct {
	Name  string     // in the table: "jaw_width"; of a member "clamp.thread"
	Word  string     // as typed
	At    text.Place // the name
	Value Value
}

// Path is the item's name from the top: "part.clamp.hole.pillar".
func (i *Item) Path() string {
	if i == nil {
		return ""
	}
	s := i.Kind
	if i.Label != "" {
		s += "." + i.Label
	}
	if i.In != nil {
		return i.In.Path() + "." + s
	}
	return s
}

// Up gives the nearest enclosing item of a kind, the item itself included; nil if there is none.
func (i *Item) Up(kinds ...string) *Item {
	for ; i != nil; i = i.In {
		for _, k := range kinds {
			if i.Kind == k {
				return i
			}
		}
	}
	return nil
}

// Attr finds an attribute by its name in the table; nil if it was not written.
func (i *Item) Attr(name string) *Attr {
	for n := range i.Attrs {
		if i.Attrs[n].Name == name {
			return &i.Attrs[n]
		}
	}
	return nil
}

// ValueKind says what a value came to.
type ValueKind uint8

const (
	NoValue    ValueKind = iota
	Number               // Num, in mm, degrees or pure
	Text                 // Text
	YesNo                // Yes
	SizeOf               // Size: a dimension with its limits
	RefTo                // Ref
	List                 // List
	Object               // Attrs
	Set                  // Sizes
	ThreadOf             // Thread
	TaperOf              // Taper
	FeedOf               // Feed
	PositionOf           // Position
	MaterialOf           // Material
)

// Value is what an expression came to. Kind says which field counts.
type Value struct {
	Kind     ValueKind
	At       text.Place
	Num      float64
	Text     string
	Yes      bool
	Size     drawing.Size
	Ref      Ref
	List     []Value
	Object   []Attr
	Sizes    Sizes
	Thread   drawing.Thread
	Taper    drawing.Taper
	Feed     drawing.Feed
	Position Position
	Material Material
	SizeOf   string // path of the dimension that a bare reference carried: "part.clamp.hole.pillar.diameter"
}

// Ref is a reference to a thing, a feature, a face or a part of one.
type Ref struct {
	At   text.Place
	Text string // as typed, or the bare word of "hand", "centres"
	Item *Item  // the block; nil for a face of the part itself and for bare words
	Face Face   // a face of the part itself: face.top, "top"
	Sub  string // what of the block: "thread", "floor", "left", "diameter"; "" the whole
	Has  bool   // a member of a set was picked
	Size float64
	Name string // of a member with a name: "#7"
	In   *Item  // the mirrored part that a feature of its other hand was named through; nil of all else
}

// OfThread says whether a thread itself is meant: that of a hole, or one on a surface.
func (r Ref) OfThread() bool {
	if r.Item == nil { // a text
		words := strings.Split(r.Text, ".")
		return len(words) == 3 && words[0] == "hole" && words[2] == "thread" || len(words) == 2 && words[0] == "thread"
	}
	return r.Item.Kind == "hole" && (r.Sub == "thread" || r.Sub == "thread.size") || r.Item.Kind == "thread" && (r.Sub == "" || r.Sub == "size")
}

// Part is the part that the block is or stands in, as it was named: the mirrored part of a feature that
// was named through one. Nil where it stands in none.
func (r Ref) Part() *Item {
	switch {
	case r.In != nil:
		return r.In
	case r.Item == nil:
		return nil
	}
	return r.Item.Up("part")
}

// IsNone says that nothing is referred to.
func (r Ref) IsNone() bool { return r.Item == nil && r.Face == NoFace && r.Text == "" }

// Path names what is referred to: "hole.pillar", "face.top", "reamer.machine[8]".
func (r Ref) Path() string {
	switch {
	case r.Item != nil:
		s := r.Item.Path()
		if up := r.Item.Up("part"); r.In != nil && up != nil {
			s = r.In.Path() + strings.TrimPrefix(s, up.Path())
		}
		if r.Has {
			if r.Name != "" {
				s += `["` + r.Name + `"]`
			} else {
				s += "[" + Figure(r.Size) + "]"
			}
		}
		if r.Sub != "" {
			s += "." + r.Sub
		}
		return s
	case r.Face != NoFace:
		return "face." + r.Face.String()
	}
	return r.Text
}

// Face is one of the six faces of a prismatic part. The zero Face is none of them.
type Face uint8

const (
	NoFace Face = iota
	Left        // -x
	Right       // +x
	Front       // -y
	Back        // +y
	Bottom      // -z
	Top         // +z
)

var faceNames = [...]string{"", "left", "right", "front", "back", "bottom", "top"}

func (f Face) String() string {
	if int(f) < len(faceNames) {
		return faceNames[f]
	}
	return "?"
}

// ParseFace reads the name of a face.
func ParseFace(s string) (Face, bool) {
	for f := Left; f <= Top; f++ {
		if faceNames[f] == s {
			return f, true
		}
	}
	return NoFace, false
}

// Opposite is the face on the other side.
func (f Face) Opposite() Face {
	if f == NoFace {
		return f
	}
	return (f - 1) ^ 1 + 1
}

// Axis is 0, 1 or 2 for x, y, z, the direction that the face is square to.
func (f Face) Axis() int { return int(f-1) / 2 }

// Sign is -1 for left, front and bottom, +1 for right, back and top.
func (f Face) Sign() float64 {
	if (f-1)%2 == 0 {
		return -1
	}
	return 1
}

// Faces lists the six, in the order of their axes.
var Faces = [...]Face{Left, Right, Front, Back, Bottom, Top}

// FaceOn gives the face that looks along an axis.
func FaceOn(axis int, sign float64) Face {
	f := Face(2*axis + 1)
	if sign > 0 {
		f++
	}
	return f
}

// Position is a place on a face: short, from left, front, bottom, or one co-ordinate
// after another, each with the datum it is measured from.
type Position struct {
	At     text.Place
	Short  []drawing.Size
	Coords []Coordinate
}

// Coordinate is one distance of a position.
type Coordinate struct {
	Datum Ref // a face, or a feature whose middle counts
	Size  drawing.Size
	At    text.Place
}

// Material is what a thing is made of.
type Material struct {
	Written string
	Name    string  // the handbook's name; "" where it is not in the handbook
	Group   string  // its row in the cutting tables: "brass_free_cutting"; "" not known
	Density float64 // kg/m3; 0 not known
	Unsure  bool    // written "unknown": nobody knows what it is
}

// Sizes is a set of sizes. It is asked, never spelled out: a series of a million members
// costs nothing. All in mm.
type Sizes struct {
	Single bool // written as one size, not as a set
	List   []Member
	Series []Series
	Named  string // name of a usual set, "number drills"; its members are in List
}

// Member is one size of a set.
type Member struct {
	Size float64
	Name string // "#7", "A"; "" where the size is its name
}

// Series is sizes in equal steps, both ends included where the step meets them.
type Series struct{ From, To, By float64 }

// Speeds are the speeds of a spindle, rev/min: a list for belts and gears, or stepless.
type Speeds struct {
	List     []float64 // ascending
	From, To float64   // stepless
	Stepless bool
}

// Depth is how deep a feature goes.
type Depth struct {
	Through bool
	Size    drawing.Size
	From    Ref // the face it counts from, where written { from, size }
}

// Turned says that a face is an end of a turned part.
func (f Face) Turned() bool { return f == Left || f == Right }
