package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Holding is the moment when the piece has been put up and nothing is cut yet.
type Holding struct {
	Spot   finding.Spot
	Work   *Work
	Part   *Part
	Choice HoldChoice
	Before *State
	Pose   solid.Pose   // part's frame to the machine's
	Piece  *solid.Piece // the piece in the machine's frame
	Lo, Hi solid.Vec    // the metal's extent in the machine's frame
	Turned float64      // of the vise on the table, degrees anticlockwise
	Key    Key
	// Heights above the table.
	Bed    model.Known[float64] // bed of the vise
	JawTop model.Known[float64]
	Seat   model.Known[float64] // lowest metal
	// Contacts, where they can be reckoned.
	Carried       *Chucking // on a dividing head or rotary table: the piece in what is on it
	Fixed, Moving model.Known[Contact]
	Under         model.Known[Contact]       // the whole underside, at the level it sits on
	Seats         []Seat                     // the things it sits on, each with what it carries
	Between       model.Known[solid.Squeeze] // what stands between the two jaws
	Opening       model.Known[float64]       // width between the jaws
	Tips          []solid.Vec                // just inside the metal that each clamp presses on, in the part's frame
	Obstacles     []Obstacle
	Lacks         []model.Lack // what was not known of the obstacles
	Seen          *Seen        // where it is seen from a part of the whole; else nil
	views         map[int]*Holding
	states        map[Key]*State // by the key of the whole's
	wholes        map[Key]*State // the whole's by the key of what is seen of it
	steps         map[*Step]*Step
	Upright       *Holding             // where all leans together: the same before it leans; else nil
	Shifted       *Holding             // the holding of the start, where clamps or packing were moved since; else nil
	OnPlate       model.Known[Contact] // what lies on the upright of an angle plate
	PlateFoot     float64              // what that stands on above the table
	Sunk          float64              // how far it hangs into the bore of a rotary table, mm
	Vee           *InVee               // the work as it lies in a vee block; else nil
	// FixedAt and MovingAt are where the faces of the jaws of a vise stand, across them.
	FixedAt, MovingAt float64
	jawsLack          []model.Lack // why where the jaws stand is not known
	// Unplayed says in a sentence why this holding is not made on paper; "" if it is.
	Unplayed string
}

// Contact is a jaw, or a seat, against the piece.
type Contact struct {
	solid.Contact
	Face  model.Face // of the part
	Rect  solid.Rect // of jaw or seat, in the machine's frame
	Grip  float64    // height of the touched patch
	Left  float64    // its left end along the jaws
	Right float64
}

// Seat is one thing that the piece sits on: a parallel, the bed, packing, the table.
type Seat struct {
	Name    string
	Item    *model.Item
	Contact model.Known[Contact]
}

// Obstacle is a thing that stands in the machine's frame. Where a size of it is not known,
// Least is what certainly stands there and Most all that could.
type Obstacle struct {
	Name  string // "the fixed jaw of vise.small"
	Item  *model.Item
	Least solid.Shape
	Most  solid.Shape
	Same  bool // Least and Most are alike
	Lacks []model.Lack
	Hole  Hole
}

// Hole is an upright hole right through a thing that stands in the machine's frame: its middle, the radius that it
// has at the least and the one that it could have. Nought: none.
type Hole struct {
	At          [2]float64
	Least, Most float64
}

// room is how far a part of a tool on its way stays inside a hole of that radius; no room at all where it is not
// inside it everywhere.
func (o Hole) room(b solid.Turned, m solid.Move, radius float64) float64 {
	room := radius - math.Max(b.R0, b.R1)
	for _, v := range [2]solid.Vec{m.From, m.To} {
		room = math.Min(room, radius-math.Max(b.R0, b.R1)-math.Hypot(v[0]-o.At[0], v[1]-o.At[1]))
	}
	if radius <= 0 || room < 0 {
		return math.Inf(-1)
	}
	return room
}

// far is beyond anything in a small workshop, in mm: the size of what is not known.
const far = 2000.0

// Hold puts the piece up as the choice says.
func (pl *Player) Hold(p *Part, before *State, w *Work, c HoldChoice) *Holding {
	key := before.Key.With(itemDigest(w.SetUp.Item), digest(c.Words(), w.Spot.Step, w.Facing.String()))
	if h, ok := pl.holds[key]; ok {
		return h
	}
	pl.Moments++
	h := &Holding{Spot: w.Spot, Work: w, Part: p, Choice: c, Before: before, Key: key}
	h.play()
	pl.holds[key] = h
	return h
}

func (h *Holding) play() {
	c := &h.Choice
	h.Pose = solid.Attitude(solid.Vec{0, 0, 1}, solid.Vec{0, 1, 0})
	h.Piece = h.Before.Piece
	switch {
	case c.NotPlayed != "":
		h.Unplayed = c.NotPlayed
	case h.Work.Unplayed != "":
		h.Unplayed = h.Work.Unplayed
	case c.Up == model.NoFace || c.Back == model.NoFace || c.Up.Axis() == c.Back.Axis():
		h.Unplayed = "which way up the piece is held is not settled"
	case h.Work.SetUp.Tilt.Said && c.Lean.By == 0 && h.Work.SetUp.Tilt.By.V != 0 && !h.gashesOnly():
		h.Unplayed = "how the piece leans is not known"
	}
	if h.Unplayed != "" {
		return
	}
	h.Turned = h.Work.SetUp.Turned.Or(0)
	h.Pose = solid.Attitude(Normal(c.Up), Normal(c.Back))
	if c.leansAlone() {
		h.Pose = after(c.Lean.pose(), h.Pose)
	}
	placed := h.Before.Piece.Placed(h.Pose)
	var lo, hi solid.Vec
	for i := range 3 {
		lo[i], hi[i] = placed.Extent(i, -1), placed.Extent(i, 1)
	}
	if math.IsNaN(lo[0]) {
		h.Unplayed = "nothing is left of the piece"
		return
	}
	if h.Unplayed = h.vee(); h.Unplayed != "" {
		return
	}
	switch {
	case c.Divided != nil && c.Vise == nil && c.Clamps == nil:
		h.onHead()
	case c.Vise != nil:
		h.inVise(lo, hi)
	case c.Clamps != nil:
		h.onTable(lo, hi)
	default:
		h.shift(lo, hi, solid.Vec{0, 0, 0}, 0)
		h.Seat = model.Sure(c.Packing)
	}
	if c.Lean.By != 0 && !c.leansAlone() && h.Unplayed == "" {
		h.leaned()
	}
}

// shift lays the piece with its lowest metal at height seat, its left-most at x and its
// farthest back at y.
func (h *Holding) shift(lo, hi solid.Vec, at solid.Vec, seat float64) {
	d := solid.Vec{at[0] - lo[0], at[1] - hi[1], seat - lo[2]}
	h.Pose = h.Pose.Shifted(d)
	h.Piece = h.Before.Piece.Placed(h.Pose)
	h.Lo, h.Hi = lo.Add(d), hi.Add(d)
}

// FaceTo gives the face of the part that looks along a direction of the machine.
func (h *Holding) FaceTo(dir solid.Vec) model.Face { return faceAlong(h.Pose.Inverse().Dir(dir)) }

// Height is where a place of the part lies above the table.
func (h *Holding) Height(v solid.Vec) float64 { return h.Pose.Point(v)[2] }

// UpOf is where a plane of the part that looks up or down lies above the table.
func (h *Holding) UpOf(pl Plane) float64 {
	var v solid.Vec
	v[pl.Face.Axis()] = pl.At
	return h.Height(v)
}

func (h *Holding) obstacle(name string, item *model.Item, least, most solid.Shape, lacks ...[]model.Lack) {
	o := Obstacle{Name: name, Item: item, Least: least, Most: most}
	for _, l := range lacks {
		o.Lacks = append(o.Lacks, l...)
	}
	o.Same = len(o.Lacks) == 0
	h.Obstacles = append(h.Obstacles, o)
}

// table puts the machine's table under everything.
func (h *Holding) table() {
	box := solid.Box(solid.Vec{-far, -far, -far}, solid.Vec{far, far, 0})
	var item *model.Item
	if h.Choice.Machine != nil {
		item = h.Choice.Machine.Item
	}
	h.obstacle("the table", item, box, box)
}
