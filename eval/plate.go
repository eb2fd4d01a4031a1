package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Work against an angle plate stands on the table (on packing, or free) with one face on the plate's
// upright, and clamps hold it there. In the machine's frame the face of the upright is Y = 0, the plate
// stands behind it with its foot towards the column, and its left end is X = 0. Certain of it is a slab as
// thick as the plate is said to be, standing and lying; webs between the two may fill all the room behind.

// onPlate moves work along the plate, once it lies with its farthest metal at Y = 0 and its left-most at X = 0.
func (h *Holding) onPlate() {
	c := &h.Choice
	x := c.Along
	if c.Centred {
		wide := h.Hi[0] - h.Lo[0]
		x = (h.plateSize(0, wide) - wide) / 2
	}
	d := solid.Vec{x, 0, 0}
	h.Pose = h.Pose.Shifted(d)
	h.Piece = h.Before.Piece.Placed(h.Pose)
	h.Lo, h.Hi = h.Lo.Add(d), h.Hi.Add(d)
}

// plateSize is one size of the plate: along its bend, of its foot, of its upright; else what is given.
func (h *Holding) plateSize(i int, or float64) float64 {
	if s, ok := h.Choice.Plate.Size.Get(); ok && len(s) == 3 {
		return s[i]
	}
	return or
}

// uprightFace is the face of the plate's upright in the machine's frame, from its left end and up.
func (h *Holding) uprightFace() model.Known[solid.Rect] {
	return model.Map(h.Choice.Plate.Size, func([]float64) solid.Rect {
		return solid.Rect{Lo: [2]float64{0, h.PlateFoot}, Hi: [2]float64{h.plateSize(0, 0), h.PlateFoot + h.plateSize(2, 0)}}
	})
}

// standPlate puts the plate behind the work; foot is what it stands on above the table.
func (h *Holding) standPlate(foot float64) {
	p := h.Choice.Plate
	if p == nil {
		return
	}
	h.PlateFoot = foot
	h.layOnPlate()
	lacks := append(append([]model.Lack{}, p.Size.Missing()...), p.Thickness.Missing()...)
	thick := p.Thickness.Or(model.Grain)
	long, deep, high := h.plateSize(0, model.Grain), h.plateSize(1, model.Grain), h.plateSize(2, model.Grain)
	most := solid.Box(solid.Vec{0, 0, foot}, solid.Vec{h.plateSize(0, far), h.plateSize(1, far), foot + h.plateSize(2, far)})
	if !p.Size.Is() {
		most = solid.Box(solid.Vec{-far, 0, foot}, solid.Vec{far, far, foot + far})
	}
	webs := []model.Lack{{Fact: "where the webs of " + p.Path() + " are", At: p.Item.At}}
	h.obstacle("the upright of "+p.Path(), p.Item, solid.Box(solid.Vec{0, 0, foot}, solid.Vec{long, thick, foot + high}), most, lacks, webs)
	slab := solid.Box(solid.Vec{0, thick, foot}, solid.Vec{long, math.Max(deep, thick+model.Grain), foot + thick})
	h.obstacle("the foot of "+p.Path(), p.Item, slab, slab)
}

// layOnPlate finds what of the work lies on the upright.
func (h *Holding) layOnPlate() {
	r, ok := h.uprightFace().Get()
	if !ok {
		h.OnPlate = model.Lacking[Contact](h.Choice.Plate.Size.Missing())
		return
	}
	h.OnPlate = model.Sure(h.touch(1, 1, h.Hi[1], r))
}

// clampOn is the face that the tip of a clamp presses on: as written; else the one that looks up, of work
// on an angle plate the one that looks away from it.
func (h *Holding) clampOn(c *model.ClampAt) model.Face {
	switch {
	case c.On.Is() && c.On.V.Face != model.NoFace:
		return c.On.V.Face
	case h.Choice.Plate != nil:
		return h.Choice.Back.Opposite()
	}
	return h.Choice.Up
}

// strap is a clamp whose tip presses at a place on a face that looks along an axis of the machine: the
// strap runs off over the nearest edge of the piece to the stud, never down, as high as the nut stands.
func (h *Holding) strap(at solid.Vec, axis int, sign, reach, tip, high float64) solid.Shape {
	lo, hi := at, at
	if sign > 0 {
		hi[axis] += high
	} else {
		lo[axis] -= high
	}
	u, v := (axis+1)%3, (axis+2)%3
	if u > v {
		u, v = v, u
	}
	side, best := 0, math.Inf(1)
	for i, d := range [4]float64{at[u] - h.Lo[u], h.Hi[u] - at[u], at[v] - h.Lo[v], h.Hi[v] - at[v]} {
		if i == 2 && v == 2 {
			continue
		}
		if d < best-model.Grain {
			side, best = i, d
		}
	}
	along, cross := u, v
	if side >= 2 {
		along, cross = v, u
	}
	lo[cross] -= tip / 2
	hi[cross] += tip / 2
	if side%2 == 0 {
		lo[along] -= reach
	} else {
		hi[along] += reach
	}
	return solid.Box(lo, hi)
}

// bearUpright finds what lies behind the tip of a clamp that presses work on the upright of a plate.
func (h *Holding) bearUpright(b *Bearing, tip model.Known[float64]) {
	from := solid.Vec{b.At[0], h.Hi[1] + 1, b.At[2]}
	spans := h.Piece.Ray(from, solid.Vec{0, -1, 0})
	if b.Metal = len(spans) > 0; b.Metal {
		b.Foot = from[1] - spans[0].A // where the metal ends behind: 0 on the upright, below 0 off it
	}
	face, ok := h.uprightFace().Get()
	if !ok {
		b.Borne = model.Lacking[bool](h.Choice.Plate.Size.Missing())
		return
	}
	wide := math.Max(tip.Or(0), 2*model.Grain) / 2
	at := [2]float64{b.At[0], b.At[2]}
	var r solid.Rect
	for i := range at {
		r.Lo[i], r.Hi[i] = math.Max(at[i]-wide, face.Lo[i]), math.Min(at[i]+wide, face.Hi[i])
	}
	yes := r.Lo[0] < r.Hi[0] && r.Lo[1] < r.Hi[1] && h.Piece.Contact(1, 1, h.Hi[1], r).Touches
	if !yes && !tip.Is() {
		b.Borne = model.Lacking[bool](tip.Missing())
		return
	}
	b.Borne = model.Sure(yes)
}
