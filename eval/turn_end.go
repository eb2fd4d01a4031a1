package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// end faces or parts one end of the piece.
func (k *Turn) end(w *Turning) {
	f := w.Target.Face
	x := k.endPlace(f)
	lo, hi, ok := k.Before.Profile.Ends()
	if !ok {
		return
	}
	w.Width = 0
	if k.Choice.By == "parting" {
		k.part(w, f, x)
		return
	}
	if f.Sign() > 0 {
		w.X0, w.X1 = x, math.Max(x, hi)
	} else {
		w.X0, w.X1 = math.Min(x, lo), x
	}
	k.reach(w)
	w.Off = w.X1 - w.X0
	if held := k.heldEnd(); f == held {
		w.Wrong = "the " + f.String() + " end is the one that is held"
		return
	}
	w.Final = near(x, k.Part.FaceAt(f))
	k.After.Profile = k.Before.Profile.faced(x, f.Sign())
	k.takeBeyond(x, f.Sign())
	k.faceDone(f, x)
	k.seatGone(f, x)
}

// seatGone notes that no seat for a centre is left in an end that was faced to x.
func (k *Turn) seatGone(f model.Face, x float64) {
	if !k.After.Centred[endIndex(f)] {
		return
	}
	spans := k.After.Piece.Ray(solid.Vec{x + f.Sign(), 0, 0}, solid.Vec{-f.Sign(), 0, 0})
	if len(spans) > 0 && spans[0].A <= 1+model.Grain {
		k.After.Centred[endIndex(f)] = false
	}
}

// heldEnd is the end that sits in the jaws; between centres neither does.
func (k *Turn) heldEnd() model.Face {
	if k.Hold.Choice.Centres {
		return model.NoFace
	}
	return k.Hold.Choice.End
}

// endPlace is where the step brings an end to: its finished place, with the metal it leaves.
func (k *Turn) endPlace(f model.Face) float64 {
	x := k.Part.FaceAt(f) + f.Sign()*k.leaves()
	st := k.Step.Step
	if st == nil || !st.To.Is() {
		return x
	}
	to := st.To.V
	if to.From.IsNone() { // to the opposite face as it then is
		lo, hi, _ := k.Before.Profile.Ends()
		if f.Sign() > 0 {
			return lo + to.Size.Nominal
		}
		return hi - to.Size.Nominal
	}
	if pl, ok := k.Part.PlaneOf(to.From); ok && pl.Face.Axis() == k.Hold.About.Along {
		return pl.At + f.Sign()*to.Size.Nominal
	}
	return x
}

// part frees the piece from what is held: the tool goes in beyond the finished face.
func (k *Turn) part(w *Turning, f model.Face, x float64) {
	w.Width = toolWidth(k.Choice.Tool)
	w.X0, w.X1 = x, x+f.Sign()*w.Width
	if w.X1 < w.X0 {
		w.X0, w.X1 = w.X1, w.X0
	}
	k.reach(w)
	w.Off = w.Had
	w.Final = near(x, k.Part.FaceAt(f))
	if f != k.heldEnd() {
		w.Wrong = "the piece would be parted off at its free end: the " + f.String() + " face is not on the side that is held"
		return
	}
	k.After.Profile = k.Before.Profile.faced(x, f.Sign())
	k.takeBeyond(x, f.Sign())
	k.faceDone(f, x)
	k.After.Parted = true
}

// faceDone notes a face that was made.
func (k *Turn) faceDone(f model.Face, x float64) {
	fs := &k.After.Faces[f]
	fs.At, fs.Skin, fs.Done, fs.By = x, "", near(x, k.Part.FaceAt(f)), k.Spot
	fs.Times++
}

// takeBeyond takes everything beyond a place along the axis from the solid.
func (k *Turn) takeBeyond(x, sign float64) {
	r := k.clear()
	lo, hi, _ := k.Before.Profile.Ends()
	far := lo - 1
	if sign > 0 {
		far = hi + 1
	}
	from, to := solid.Vec{math.Min(x, far), 0, 0}, solid.Vec{math.Max(x, far), 0, 0}
	k.After.Piece = k.After.Piece.Cut(solid.Removal{Take: solid.Cylinder(from, to, r), By: "face"})
}

// clear is a radius beyond all the metal.
func (k *Turn) clear() float64 {
	if k.Part.Own(k.Hold.About) {
		return k.Part.Blank.Hi[1] + k.Part.outward()
	}
	return k.Before.Profile.Most() + k.Part.outward()
}
