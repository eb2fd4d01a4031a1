package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// inVise puts the piece between the jaws of a vise, on parallels or on the bed.
func (h *Holding) inVise(lo, hi solid.Vec) {
	c, v := &h.Choice, h.Choice.Vise
	h.Bed = v.Bed
	if s, ok := v.SwivelBase.Get(); ok {
		h.Bed = model.Map(v.Bed, func(b float64) float64 { return b + s })
	}
	under := c.underVise()
	h.Bed = model.Both(h.Bed, under, func(b, u float64) float64 { return b + u })
	h.JawTop = model.Both(h.Bed, c.JawDepth(), func(b, d float64) float64 { return b + d })
	rise := c.Height + c.Packing + c.Step
	h.Seat = model.Map(h.Bed, func(b float64) float64 { return b + rise })
	y, lift := 0.0, model.Sure(0.0)
	if h.Vee != nil {
		var least float64
		y, lift, least = h.veeInVise(lo, hi)
		rise += least
		h.Seat = model.Both(h.Seat, lift, func(s, l float64) float64 { return s + l })
	}
	x := c.Along
	if c.Centred {
		w := v.JawWidth.Or(hi[0] - lo[0])
		x = (w - (hi[0] - lo[0])) / 2
	}
	// Without the height of the bed the piece is laid at height 0 of its own; nothing that
	// hangs on the table is then known.
	h.shift(lo, hi, solid.Vec{x, y, 0}, h.Seat.Or(h.Bed.Or(0)+rise))
	h.FixedAt, h.MovingAt = h.Hi[1], h.Lo[1]-c.RoundBar
	if h.Vee != nil {
		h.FixedAt, h.MovingAt = h.veeJaws()
	}
	h.viseContacts()
	h.viseObstacles()
	h.standVee(h.bedLevel())
	if c.Divided != nil && c.Divided.Table != nil {
		h.rotaryFace(c.Divided, under.Or(h.Bed.Or(0)))
	}
	h.table()
	h.belowVee(0, lift)
}

// bedLevel is the bed in the frame used: its height above the table, or 0 where not known.
func (h *Holding) bedLevel() float64 { return h.Bed.Or(0) }

func (h *Holding) viseContacts() {
	v := h.Choice.Vise
	h.Opening = model.Sure(h.FixedAt - h.MovingAt)
	if len(h.jawsLack) > 0 {
		h.Opening = model.Lacking[float64](h.jawsLack)
	}
	if h.Jaws() == nil {
		return
	}
	depth := h.Choice.JawDepth()
	if !depth.Is() || !v.JawWidth.Is() {
		lack := model.Lacking[Contact](depth.Missing(), v.JawWidth.Missing())
		h.Fixed, h.Moving = lack, lack
	} else {
		bed := h.bedLevel()
		r := solid.Rect{Lo: [2]float64{0, bed}, Hi: [2]float64{v.JawWidth.V, bed + depth.V}}
		h.Fixed = model.Sure(h.touch(1, 1, h.Hi[1], r))
		h.Moving = model.Sure(h.touch(1, -1, h.Lo[1], r))
		h.veeTouches()
	}
	if h.Fixed.Is() {
		h.Between = model.Sure(h.Piece.Squeeze(1, h.Fixed.V.Rect, h.Moving.V.Rect))
	} else {
		h.Between = model.Lacking[solid.Squeeze](h.Fixed.Missing())
	}
	under := solid.Rect{Lo: [2]float64{h.Lo[0], h.Lo[1]}, Hi: [2]float64{h.Hi[0], h.Hi[1]}}
	h.Under = model.Sure(h.touch(2, -1, h.Lo[2], under))
	h.seats()
}

// seats lists what the piece sits on between the jaws: each of the two parallels, or the
// bed, over as much of it as the jaws are long.
func (h *Holding) seats() {
	c := &h.Choice
	if h.Vee != nil && (h.Vee.Looks == "up" || h.Vee.Lifts > 0) {
		return // its two sides, which no face lies on
	}
	left, right := 0.0, h.Choice.Vise.JawWidth.Or(far)
	strip := func(name string, item *model.Item, lo, hi float64) {
		r := solid.Rect{Lo: [2]float64{left, lo}, Hi: [2]float64{right, hi}}
		h.Seats = append(h.Seats, Seat{name, item, model.Sure(h.touch(2, -1, h.Lo[2], r))})
	}
	if c.Step > 0 {
		strip("the step of the soft jaws", c.Vise.Item, h.Lo[1], h.Hi[1])
		return
	}
	if c.Height <= 0 || c.Pair == nil {
		strip("the bed of "+c.Vise.Path(), c.Vise.Item, h.Lo[1], h.Hi[1])
		return
	}
	t, ok := c.Pair.Thickness.Get()
	if !ok {
		lack := model.Lacking[Contact](c.Pair.Thickness.Missing())
		h.Seats = []Seat{{"the parallel at the fixed jaw", c.Pair.Item, lack}, {"the parallel at the moving jaw", c.Pair.Item, lack}}
		return
	}
	strip("the parallel at the fixed jaw", c.Pair.Item, h.Hi[1]-t, h.Hi[1])
	strip("the parallel at the moving jaw", c.Pair.Item, h.Lo[1], h.Lo[1]+t)
}

// touch is the piece against a flat thing at axis = at, seen from the side that sign says.
func (h *Holding) touch(axis int, sign, at float64, r solid.Rect) Contact {
	var n solid.Vec
	n[axis] = sign
	c := Contact{Contact: h.Piece.Contact(axis, sign, at, r), Face: h.FaceTo(n), Rect: r}
	if c.Touches {
		c.Grip = c.Hi[1] - c.Lo[1]
		c.Left, c.Right = c.Lo[0], c.Hi[0]
	}
	return c
}

// viseObstacles stands the jaws, the pair of parallels and the bed in the machine's frame.
func (h *Holding) viseObstacles() {
	v := h.Choice.Vise
	bed := h.bedLevel()
	width, depth, thick := v.JawWidth, h.Choice.JawDepth(), v.JawThickness
	lacks := append(append(append([]model.Lack{}, width.Missing()...), depth.Missing()...), thick.Missing()...)
	jaw := func(name string, y, dir float64) {
		if len(h.jawsLack) > 0 && !h.touched(dir) {
			h.jawSomewhere("the "+name+" jaw of "+v.Path(), y, dir, bed)
			return
		}
		least := solid.Box(solid.Vec{0, min(y, y+dir*thick.Or(model.Grain)), bed},
			solid.Vec{width.Or(model.Grain), max(y, y+dir*thick.Or(model.Grain)), bed + depth.Or(model.Grain)})
		l, w := 0.0, width.Or(far)
		if !width.Is() {
			l = -far
		}
		most := solid.Box(solid.Vec{l, min(y, y+dir*thick.Or(far)), bed},
			solid.Vec{w, max(y, y+dir*thick.Or(far)), bed + depth.Or(far)})
		h.obstacle("the "+name+" jaw of "+v.Path(), v.Item, least, most, lacks)
	}
	jaw("fixed", h.FixedAt, 1)
	jaw("moving", h.MovingAt, -1)
	h.pair(bed)
	h.softStep(bed)
	// The bed reaches down to the table; without its height, as far as anything could go.
	foot := h.Choice.underVise().Or(0)
	if !h.Bed.Is() {
		foot = -far
	}
	body := solid.Box(solid.Vec{0, h.MovingAt + h.Choice.RoundBar, foot}, solid.Vec{width.Or(model.Grain), h.FixedAt, bed})
	if b, ok := v.Body.Get(); ok && len(b) == 2 {
		x := width.Or(0) / 2
		most := solid.Box(solid.Vec{x - b[0]/2, -b[1], foot}, solid.Vec{x + b[0]/2, b[1], bed})
		h.obstacle("the bed of "+v.Path(), v.Item, most, most)
		return
	}
	h.obstacle("the bed of "+v.Path(), v.Item, body, body)
}

// JawDepth is how high the gripping faces of a vise stand above its bed: its own, or those of the soft jaws on it.
func (c *HoldChoice) JawDepth() model.Known[float64] {
	switch {
	case c.Soft == nil:
		return c.Vise.JawDepth
	case c.SoftHigh > 0:
		return model.Sure(c.SoftHigh)
	}
	return model.Lacking[float64](c.Soft.Heights.Missing())
}

// softStep stands the ledges of soft jaws under the piece, one at each jaw: how wide they are cut nobody
// says, so that a hair of each is certain, and up to the middle of the piece may be there, but no more than
// there is metal in them.
func (h *Holding) softStep(bed float64) {
	c := &h.Choice
	if c.Step <= 0 {
		return
	}
	lacks := []model.Lack{{Fact: "how wide the step of the soft jaws is cut", At: h.Work.SetUp.At}}
	half, width := (h.Hi[1]-h.Lo[1])/2, c.Vise.JawWidth
	if c.Soft != nil {
		half = math.Min(half, c.Soft.Thickness.Or(half))
	}
	one := func(name string, y, dir float64) {
		box := func(wide float64) solid.Shape {
			return solid.Box(solid.Vec{0, min(y, y+dir*wide), bed}, solid.Vec{width.Or(h.Hi[0]), max(y, y+dir*wide), bed + c.Step})
		}
		h.obstacle("the step of the "+name+" soft jaw", c.Vise.Item, box(model.Grain), box(math.Max(half, model.Grain)), lacks)
	}
	one("fixed", h.Hi[1], -1)
	one("moving", h.Lo[1], 1)
}

// pair stands the two parallels against the jaws, one at each.
func (h *Holding) pair(bed float64) {
	c := &h.Choice
	if c.Pair == nil || c.Height <= 0 {
		return
	}
	t, length := c.Pair.Thickness, c.Pair.Length
	// Of a pair whose length is not known, what certainly stands there is under the piece,
	// between the jaws; it may stick out at both ends. Where the jaws end is not known
	// either if their width is not: then a hair of it stands under the middle of the piece.
	lo, hi := h.Lo[0], h.Hi[0]
	mid := (lo + hi) / 2
	width := c.Vise.JawWidth
	if w, ok := width.Get(); ok {
		lo, hi, mid = max(lo, 0), min(hi, w), w/2
	} else {
		lo, hi = mid, mid+model.Grain
	}
	mostLo, mostHi := mid-far, mid+far
	if l, ok := length.Get(); ok && width.Is() {
		lo, hi = mid-l/2, mid+l/2
		mostLo, mostHi = lo, hi
	}
	front, back := h.Lo[1], h.Hi[1]
	if h.Vee != nil && h.Vee.Blocked { // they lie under the block
		front, back = h.MovingAt, h.FixedAt
	}
	half := (back - front) / 2
	one := func(name string, y, dir float64) {
		box := func(lo, hi, thick float64) solid.Shape {
			return solid.Box(solid.Vec{lo, min(y, y+dir*thick), bed}, solid.Vec{hi, max(y, y+dir*thick), bed + c.Height})
		}
		h.obstacle("the parallel at the "+name+" jaw", c.Pair.Item, box(lo, hi, t.Or(model.Grain)),
			box(mostLo, mostHi, math.Max(t.Or(half), model.Grain)), t.Missing(), length.Missing(), width.Missing())
	}
	one("fixed", back, -1)
	one("moving", front, 1)
}

// onTable lays the piece on the table, or on packing, under strap clamps.
func (h *Holding) onTable(lo, hi solid.Vec) {
	h.shift(lo, hi, solid.Vec{0, 0, 0}, 0)
	if h.Choice.Plate != nil {
		h.onPlate()
	}
	rise := math.Max(h.rise(), h.Choice.Free)
	h.Seat = model.Sure(rise)
	base, lift := rise, model.Sure(0.0)
	if h.Vee != nil && h.Vee.Looks == "up" && h.Vee.Standing() {
		var least float64
		lift, least = h.veeSeat(h.Lo)
		rise += least
		h.Seat = model.Map(lift, func(l float64) float64 { return base + l })
	}
	alone := rise
	if d := h.Choice.Divided; d != nil {
		rise = h.onRotary(d, rise)
	}
	h.Pose = h.Pose.Shifted(solid.Vec{0, 0, rise})
	h.Piece = h.Before.Piece.Placed(h.Pose)
	h.Lo[2], h.Hi[2] = h.Lo[2]+rise, h.Hi[2]+rise
	h.standVee(0)
	h.standPlate(rise - alone)
	under := solid.Rect{Lo: [2]float64{h.Lo[0], h.Lo[1]}, Hi: [2]float64{h.Hi[0], h.Hi[1]}}
	h.Under = model.Sure(h.touch(2, -1, h.Lo[2]+h.Sunk, under))
	for i := range h.Work.SetUp.Clamps {
		h.clamp(&h.Work.SetUp.Clamps[i])
	}
	h.table()
	h.belowVee(len(h.Obstacles)-1, lift)
}

// clamp stands one strap on the piece: its tip where it presses, the strap running off
// over the nearest edge to the stud, as high as the nut stands.
func (h *Holding) clamp(c *model.ClampAt) {
	pos, ok := c.At.Get()
	if !ok {
		h.Lacks = append(h.Lacks, c.At.Missing()...)
		return
	}
	face := h.clampOn(c)
	v, known := h.Part.locate(face, pos)
	a, b := across(face)
	if !known[a] || !known[b] {
		return
	}
	v[face.Axis()] = h.Before.Faces[face].At
	h.Tips = append(h.Tips, v.Sub(Normal(face).Times(0.01)))
	at := h.Pose.Point(v)
	tip := c.Tip.Or(model.Grain)
	n := h.Pose.Dir(Normal(face))
	axis := 2
	for i := range 2 {
		if math.Abs(n[i]) > 0.5 {
			axis = i
		}
	}
	run := func(reach, tip, high float64) solid.Shape { return h.strap(at, axis, n[axis], reach, tip, high) }
	stands, reach := h.Choice.Clamps.Stands, c.Reach
	if !reach.Is() {
		reach = h.Choice.Clamps.Reach
	}
	h.obstacle("the clamp on "+face.String(), h.Choice.Clamps.Item,
		run(reach.Or(model.Grain), tip, stands.Or(model.Grain)),
		run(reach.Or(far), c.Tip.Or(far), stands.Or(far)),
		c.Tip.Missing(), reach.Missing(), stands.Missing())
}

// Above is how thick what lies on top of the piece is, to be cut into, mm.
func (h *Holding) Above() float64 {
	most := 0.0
	for _, p := range h.Work.SetUp.Packing {
		most = max(most, p.Above.V)
	}
	return most
}
