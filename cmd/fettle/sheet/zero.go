package sheet

import (
	"math"

	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// zero is the place in the machine's frame that the figures of a set-up count from: x to the right
// (or, where its sign is -1, to the left), y towards the one who stands there (or, where its sign is
// -1, towards the column), z down. From a face they count into the piece.
type zero struct {
	at    solid.Vec
	sx    float64
	sy    float64
	names [3]string // what each counts from
}

// of gives a place as it counts from there.
func (z zero) of(v solid.Vec) solid.Vec {
	return solid.Vec{z.sx * (v[0] - z.at[0]), z.sy * (z.at[1] - v[1]), z.at[2] - v[2]}
}

// zeroOf gives the place that a set-up counts from: as written, else the left end, the fixed jaw
// or the side towards the column, and the top of the piece as it is; on a dividing head the free
// end and the axis.
func zeroOf(h *eval.Holding, k *eval.Cut, piece *solid.Piece, pose solid.Pose) zero {
	lo, hi := h.Lo, h.Hi
	if !h.Leaning() { // else what it sweeps counts
		lo, hi = solid.Vec{piece.Extent(0, -1)}, solid.Vec{piece.Extent(0, 1), piece.Extent(1, 1), piece.Extent(2, 1)}
	}
	z := zero{at: solid.Vec{lo[0], hi[1], hi[2]}, sx: 1, sy: 1,
		names: [3]string{"its left end", "the side towards the column", "its top"}}
	if h.Choice.Vise != nil {
		z.names[1] = "the fixed jaw"
	}
	if d := h.Choice.Divided; d != nil && h.Carried != nil {
		axis, _ := h.Line()
		z.at[1], z.names[1] = axis[1], "its axis"
		if d.Upright {
			z.at[0], z.names[0] = axis[0], "its axis"
		} else {
			z.at[0], z.sx, z.names[0] = hi[0], -1, "its free end"
		}
	}
	st := h.Before
	if k != nil {
		st = k.Stood()
	}
	w := &h.Work.SetUp.Zero
	for a, r := range [3]model.Known[model.Ref]{w.X, w.Y, w.Z} {
		v, looks, ok := placeOf(h, st, pose, r, a)
		if !ok {
			continue
		}
		z.at[a], z.names[a] = v, r.V.Path()
		switch {
		case a == 0 && looks > 0:
			z.sx = -1
		case a == 0:
			z.sx = 1
		case a == 1 && looks < 0:
			z.sy = -1
		}
	}
	return z
}

// placeOf is where a face or feature stands along an axis of the machine, and which way along it a
// face looks (of a feature 0); false where it does not say, or looks another way.
func placeOf(h *eval.Holding, st *eval.State, pose solid.Pose, r model.Known[model.Ref], axis int) (at, looks float64, ok bool) {
	if !r.Is() {
		return 0, 0, false
	}
	if r.V.Item != nil && r.V.Sub == "" {
		if f := h.Part.FormOf(r.V.Item); f != nil && len(f.Mouths) > 0 {
			return pose.Point(f.Mouths[0])[axis], 0, true
		}
	}
	pl, ok := h.Part.PlaneOf(r.V)
	if !ok {
		return 0, 0, false
	}
	if looks = pose.Dir(eval.Normal(pl.Face))[axis]; math.Abs(looks) < 0.999 {
		return 0, 0, false
	}
	var v solid.Vec
	v[pl.Face.Axis()] = pl.At
	if r.V.Face != model.NoFace {
		v[pl.Face.Axis()] = st.Faces[r.V.Face].At
	}
	return pose.Point(v)[axis], looks, true
}

// counts says in words what each figure counts from, and which way.
func (z zero) counts() string {
	way := "to the right"
	if z.sx < 0 {
		way = "to the left"
	}
	y := "towards you"
	if z.sy < 0 {
		y = "towards the column"
	}
	return z.names[0] + " (x, " + way + "), " + z.names[1] + " (y, " + y + ") and " + z.names[2] + " (z, down)"
}
