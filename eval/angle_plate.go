package eval

import (
	"math"

	"fettle/eval/reckon/balance"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// Work on an angle plate turns with it: the upright of the plate is bolted to a faceplate, its foot stands out
// from there as a shelf along the axis, and one face of the work lies on the outer side of the foot. That face is
// the one that `beside` names. The upright reaches outwards from the foot, away from the work, and stands with
// its middle under the axis (common practice). Lengths are mm, from the axis outwards, or from the faceplate
// towards the tailstock.

// Shelf is how the angle plate of a holding stands.
type Shelf struct {
	Face    model.Face           // of the piece, that lies on it
	Off     float64              // axis to that face
	Towards solid.Vec            // that way, in the frame of the line that turns
	Along   float64              // faceplate to the end of the piece that is towards it
	Bend    model.Known[float64] // length of the bend
	Foot    model.Known[float64] // how far the foot reaches from the faceplate
	Upright model.Known[float64] // how far the upright reaches from the outer side of the foot
	Plate   *model.AnglePlate    // never nil
}

// Hung is where the mass of an angle plate hangs.
type Hung struct {
	Kilograms float64
	Radius    float64 // axis to its centre of mass, along Towards
}

// Shelf is the angle plate that the work lies on; false where it lies on none, or nobody says with which face.
func (h *Chucking) Shelf() (s Shelf, ok bool) {
	a := h.Choice.AnglePlate
	face := h.Work.SetUp.Beside.V.Face
	if a == nil || h.Unplayed != "" || face == model.NoFace || face.Axis() == h.About.Along {
		return s, false
	}
	var out solid.Vec
	out[face.Axis()] = face.Sign()
	s = Shelf{Face: face, Off: (h.own.Faces[face].At - h.About.At[face.Axis()]) * face.Sign(), Along: h.Under(), Plate: a}
	s.Towards = h.About.Pose().Dir(out)
	side := func(i int) model.Known[float64] {
		if len(a.Size.V) < 3 {
			return model.Lacking[float64](model.Known[float64]{Of: a.Item, Attr: "size", At: a.At}.Missing())
		}
		return model.Map(a.Size, func(x []float64) float64 { return x[i] })
	}
	s.Bend, s.Foot, s.Upright = side(0), side(1), side(2)
	return s, true
}

// offPlate says what keeps work from being played on an angle plate; "" where nothing does.
func (h *Chucking) offPlate() string {
	c := &h.Choice
	switch {
	case c.AnglePlate == nil:
		return ""
	case c.Faceplate == nil:
		return c.AnglePlate.Path() + " turns on a spindle by a faceplate, and hold names none"
	case h.Part.Round:
		return "a turned part on an angle plate is not made on paper yet"
	}
	return ""
}

// Swings is the circle that the outer corners of the upright sweep.
func (s *Shelf) Swings() model.Known[float64] {
	return model.Both(s.Bend, s.Upright, func(b, u float64) float64 { return 2 * math.Hypot(s.Off+u, b/2) })
}

// Hangs brackets where the mass of the plate hangs, as an L of one thickness, its webs left out: between the legs
// without thickness, and legs half as thick as the shorter one is long. With the thickness declared both are one.
func (s *Shelf) Hangs() (least, most Hung, lacks []model.Lack) {
	a := s.Plate
	lacks = append(append(lacks, s.Foot.Missing()...), a.Mass.Missing()...)
	if len(lacks) > 0 {
		return least, most, lacks
	}
	f, u := s.Foot.V, s.Upright.V
	at := func(t float64) Hung {
		foot, upright := f*t, (u-t)*t
		return Hung{a.Mass.V, s.Off + (foot*t/2+upright*(t+u)/2)/(foot+upright)}
	}
	if t, ok := a.Thickness.Get(); ok && t > 0 && t < math.Min(f, u) {
		least = at(t)
		return least, least, nil
	}
	least, most = Hung{a.Mass.V, s.Off + u*u/2/(f+u)}, at(math.Min(f, u)/2)
	if least.Radius > most.Radius {
		least, most = most, least
	}
	return least, most, nil
}

// withShelf adds the pull of an angle plate to that of the piece on it: the least and the most that it can be.
func (u *Unbalanced) withShelf(s *Shelf, piece balance.Mass) []model.Lack {
	near, far, lacks := s.Hangs()
	if len(lacks) > 0 {
		return lacks
	}
	towards := math.Atan2(s.Towards[1], s.Towards[2]) * 180 / math.Pi
	sum := func(r float64) balance.Moment {
		angle := towards
		if r < 0 {
			r, angle = -r, towards+180
		}
		m, err := balance.Sum(piece, balance.Mass{Kilograms: near.Kilograms, Radius: r, Angle: angle})
		if err != nil {
			return balance.Moment{Size: math.NaN()}
		}
		return m
	}
	// The pull is least where the plate hangs as far out as the piece does on the other side.
	even := -piece.Kilograms * piece.Radius * math.Cos((piece.Angle-towards)*math.Pi/180) / near.Kilograms
	u.Moment = sum(math.Max(near.Radius, math.Min(far.Radius, even)))
	u.Most = sum(near.Radius)
	if m := sum(far.Radius); m.Size > u.Most.Size {
		u.Most = m
	}
	if math.IsNaN(u.Moment.Size) || math.IsNaN(u.Most.Size) {
		return []model.Lack{{Fact: s.Plate.Path() + ".mass (within what can be reckoned)", At: s.Plate.Mass.At}}
	}
	u.Kilograms += near.Kilograms
	u.Middle = u.Moment.Size / u.Kilograms
	if u.Most.Size > u.Moment.Size+1e-9 {
		u.Open = model.Lack{Fact: s.Plate.Path() + ".thickness", At: s.Plate.At}
	}
	return nil
}

// OnNose is what hangs on the nose of the spindle together, kg: faceplate, angle plate and the piece as it is put
// up. Clamps, bolts and packing are not counted. False where it is no work on a faceplate.
func (h *Chucking) OnNose() (model.Known[float64], bool) {
	f := h.Choice.Faceplate
	if f == nil || h.Unplayed != "" {
		return model.Known[float64]{}, false
	}
	kg := model.Both(f.Mass, h.Part.weighs(h.Before.Piece), func(a, b float64) float64 { return a + b })
	if a := h.Choice.AnglePlate; a != nil {
		kg = model.Both(kg, a.Mass, func(a, b float64) float64 { return a + b })
	}
	return kg, true
}

// MiddleAlong is where the middle of the piece's mass lies along the lathe's axis.
func (h *Chucking) MiddleAlong() (float64, bool) {
	c, ok := h.Before.Piece.Centre()
	return h.At(c[0]), ok
}

// PlateFromNose is how far an angle plate reaches from the nose of the spindle.
func (h *Chucking) PlateFromNose() model.Known[float64] {
	s, _ := h.Shelf()
	if s.Plate == nil {
		return model.Known[float64]{}
	}
	return model.Both(h.Choice.Faceplate.Length, s.Foot, func(l, f float64) float64 { return l + f })
}

// footRoom is the room of a tool on the slides beside the end of the foot, which turns with the work and stands
// farther out than it.
func (h *Chucking) footRoom(near float64) JawRoom {
	s, ok := h.Shelf()
	switch {
	case !ok:
		return JawRoom{Of: ToolToFoot, Lacks: []model.Lack{{Fact: h.Work.SetUp.Path() + ".beside"}}}
	case !s.Foot.Is():
		return JawRoom{Of: ToolToFoot, Lacks: s.Foot.Missing()}
	}
	end := s.Foot.V - h.Under()
	return JawRoom{Of: ToolToFoot, From: end, To: near, Room: round3(near - end)}
}
