package eval

import (
	"hash/fnv"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// State is the piece at one moment of the work. It is never changed: the next state shares
// what came before with its siblings.
type State struct {
	Prev     *State
	Piece    *solid.Piece
	Faces    [7]FaceState
	Profile  Profile         // of a turned part: the piece in half section
	Features []*FeatureState // as many as the part has features, in their order; shared with the states before
	Parted   bool            // cut from the bar
	Closed   bool            // of a part with a split: its two pieces are put together again
	Joint    [2]FaceState    // of a part with a split: the faces of the joint, where it lies apart
	Alone    string          // the piece that is held alone after a split; "" the whole
	Centred  [2]bool         // a centre hole is in the left end, the right end
	Burrs    []*Burr         // shared with the states before; they never change
	Others   [][7]FaceState  // in an assembly: the faces of its second part and so on, in the assembly's frame
	Bent     *Bent           // of sheet with bends, once it is folded at one: how it lies
	Hidden   []*Burr         // in an assembly: burrs between two of its parts
	Treated  []Treatment     // what heat and glue have done so far, in order; never appended to in place
	Last     finding.Spot    // the step that made it
	Key      Key
}

// FaceState is how one of the part's own faces is now.
type FaceState struct {
	At    float64 // where its plane lies along its axis
	Skin  string  // "sawn", "drawn", …; "" once machined
	Done  bool    // at its finished place
	Times int     // how often it was machined
	By    finding.Spot
}

// FeatureState is how far one feature has come.
type FeatureState struct {
	Diameter  float64 // of a hole so far; 0 none yet
	Depth     float64 // full diameter so far
	Point     float64 // length of the point below it
	Through   bool
	Begun     bool // some metal is gone
	Finished  bool // at its finished size, but for thread, counterbore, countersink
	Threaded  bool
	Bored     bool // counterbored
	Sunk      bool // countersunk
	Spotted   bool
	ByProcess string
	By        finding.Spot
	Twice     bool // made again after it was finished
	Turns     int  // of a feature round the axis: how many of its places are made
}

// Burr is a ridge that a cut left along an edge.
type Burr struct {
	On     model.Face // the face that it stands out of
	Home   model.Face // that face in the frame of its own part, where that lies aslant to the whole; else NoFace
	Edge   string     // "the edge of top and left", "the rim of hole.pillar at the bottom face"
	Names  []string   // paths that name it in deburr: "face.top", "hole.pillar"
	Round  bool
	A, B   solid.Vec // ends of a straight edge; the centre of a rim is A
	R      float64   // radius of a rim
	Height float64   // usual, in mm: a limit of judgement
	By     finding.Spot
	Of     *Part // in an assembly: the part that it stands on
}

// Key identifies a state or a moment by all that it was made from. Equal keys are taken as
// equal moments.
type Key [2]uint64

// With is the key of what follows when more is read.
func (k Key) With(parts ...uint64) Key {
	h := fnv.New128a()
	var b [8]byte
	put := func(x uint64) {
		for i := range b {
			b[i] = byte(x >> (8 * i))
		}
		h.Write(b[:])
	}
	put(k[0])
	put(k[1])
	for _, p := range parts {
		put(p)
	}
	s := h.Sum(nil)
	var out Key
	for i := range 8 {
		out[0] |= uint64(s[i]) << (8 * i)
		out[1] |= uint64(s[8+i]) << (8 * i)
	}
	return out
}

// digest reduces words to a number for keys.
func digest(words ...string) uint64 {
	h := fnv.New64a()
	for _, w := range words {
		h.Write([]byte(w))
		h.Write([]byte{0})
	}
	return h.Sum64()
}

func itemDigest(i *model.Item) uint64 {
	if i == nil {
		return 0
	}
	return i.Digest ^ digest(i.Path())
}

// start is the raw piece.
func (p *Part) start() *State {
	s := &State{Piece: solid.Raw(p.Blank.Shape), Profile: p.Blank.Profile, Features: make([]*FeatureState, len(p.Forms))}
	for i := range s.Features {
		s.Features[i] = &FeatureState{}
	}
	if b := p.Blank.Profile; len(b) == 1 && b[0].In0 > 0 {
		s.Piece = s.Piece.Cut(solid.Removal{Take: solid.Cylinder(solid.Vec{b[0].X0 - 1, 0, 0}, solid.Vec{b[0].X1 + 1, 0, 0}, b[0].In0), By: "tube"})
	}
	for _, f := range model.Faces {
		at := p.Blank.Lo[f.Axis()]
		if f.Sign() > 0 {
			at = p.Blank.Hi[f.Axis()]
		}
		s.Faces[f] = FaceState{At: at, Skin: p.Blank.Skin[f].Or("raw"), Done: near(at, p.FaceAt(f)) && p.rawFace(f)}
	}
	s.Key = Key{}.With(itemDigest(p.Item), digest(p.blankWords()...))
	return s
}

func (p *Part) blankWords() []string {
	var w []string
	for i := range 3 {
		w = append(w, model.Figure(p.Blank.Lo[i]), model.Figure(p.Blank.Hi[i]))
	}
	if p.Blank.Stock != nil {
		w = append(w, p.Blank.Stock.Path())
	}
	return append(w, model.Figure(p.Size[0]), model.Figure(p.Size[1]), model.Figure(p.Size[2]))
}

// next is a copy to be changed before anyone sees it.
func (s *State) next(by finding.Spot, key Key) *State {
	n := *s
	n.Prev = s
	n.Features = append([]*FeatureState(nil), s.Features...)
	n.Burrs = s.Burrs[:len(s.Burrs):len(s.Burrs)] // whoever adds to it gets a list of his own
	n.Last, n.Key = by, key
	return &n
}

// Feature is the state of one form of the part, to be read.
func (p *Part) Feature(s *State, f *Form) *FeatureState {
	if i := p.numberOf(f); i >= 0 {
		return s.Features[i]
	}
	return nil
}

// change is the state of one form of the part in a state that nobody has seen yet, to be changed.
func (p *Part) change(s *State, f *Form) *FeatureState {
	i := p.numberOf(f)
	if i < 0 {
		return nil
	}
	if s.Prev != nil && s.Features[i] == s.Prev.Features[i] {
		own := *s.Features[i]
		s.Features[i] = &own
	}
	return s.Features[i]
}

func (p *Part) numberOf(f *Form) int {
	for i := range p.Forms {
		if p.Forms[i] == f || f.Of != nil && p.Forms[i] == f.Of {
			return i
		}
	}
	return -1
}

// Bounds is the box round the metal as it is.
func (s *State) Bounds() (lo, hi solid.Vec) {
	for i := range 3 {
		lo[i] = s.Piece.Extent(i, -1)
		hi[i] = s.Piece.Extent(i, 1)
	}
	return lo, hi
}
