package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// breakEdge makes a chamfer or a radius: on the edge of two faces, or on rims of holes.
func (k *Cut) breakEdge(t Target) {
	f := t.Form
	fs := k.Part.Feature(k.After, f)
	w := Working{Target: t, Facing: true, Final: true, Depth: f.Size}
	switch {
	case len(f.Rims) > 0:
		for _, r := range f.Rims {
			w.Took = append(w.Took, k.rimTook(f, r)...)
		}
		w.Entry = f.Rims[0].Face
	case f.Edge[0].Face != model.NoFace:
		w.Took = k.edgeTook(f)
		w.Entry = f.Edge[0]
	}
	k.bevel(f, &w)
	if fs.Finished {
		fs.Twice = true
	}
	fs.Begun, fs.Finished, fs.ByProcess, fs.By = true, true, k.Choice.By, k.Spot
	k.took(w)
}

// rimTook is the cone that breaks a rim; a radius is taken as the cone that just holds it,
// which takes a little less than the round does at its ends.
func (k *Cut) rimTook(f *Form, r Rim) []solid.Removal {
	half := f.Feature.Angle.Or(45) * math.Pi / 180
	out := Normal(r.Face.Face)
	d := r.Hole.Diameter.Or(0) / 2
	var took []solid.Removal
	for _, m := range r.Hole.Mouths {
		at := m
		at[r.Face.Face.Axis()] = r.Face.At
		in := at.Sub(out.Times(f.Size))
		wide := d + f.Size*math.Tan(half)
		if !(wide > 0) || math.IsInf(wide, 0) {
			continue
		}
		took = append(took, solid.Removal{Take: solid.Cone(in, at, d, wide), By: f.Name()})
	}
	return took
}

// edgeTook is the wedge that a chamfer takes off the edge of two faces, or for a radius
// the square corner less the round.
func (k *Cut) edgeTook(f *Form) []solid.Removal {
	p, q := f.Edge[0], f.Edge[1]
	a, b := p.Face.Axis(), q.Face.Axis()
	lo, hi := k.Part.Low, k.Part.High()
	out := k.Part.outward()
	for i := range 3 {
		lo[i] -= out
		hi[i] += out
	}
	legB := f.Size // along the first face, so across the second
	legA := f.Size
	if f.Feature.Kind == "chamfer" {
		// The angle stands between the bevel and the first face named.
		legA = legB * math.Tan(f.Feature.Angle.Or(45)*math.Pi/180)
	}
	set := func(pl Plane, leg float64) (in float64) {
		in = pl.At - pl.Face.Sign()*leg
		if pl.Face.Sign() > 0 {
			lo[pl.Face.Axis()], hi[pl.Face.Axis()] = in, pl.At
		} else {
			lo[pl.Face.Axis()], hi[pl.Face.Axis()] = pl.At, in
		}
		return in
	}
	inA, inB := set(p, legA), set(q, legB)
	if f.Feature.Kind == "radius" {
		var from, to solid.Vec
		from[a], from[b], from[f.Along] = inA, inB, lo[f.Along]
		to[a], to[b], to[f.Along] = inA, inB, hi[f.Along]
		return []solid.Removal{{Take: solid.Box(lo, hi), Less: []solid.Shape{solid.Cylinder(from, to, f.Size)}, By: f.Name()}}
	}
	// The wedge lies beyond the plane through the two inner edges.
	var n solid.Vec
	n[a], n[b] = p.Face.Sign()/legA, q.Face.Sign()/legB
	var on solid.Vec
	on[a], on[b] = p.At, inB
	halves := []solid.Half{{N: n.Times(-1), C: -n.Dot(on)}}
	for i := range 3 {
		var e solid.Vec
		e[i] = 1
		halves = append(halves, solid.Half{N: e, C: hi[i]}, solid.Half{N: e.Times(-1), C: -lo[i]})
	}
	return []solid.Removal{{Take: solid.Prism(halves...), By: f.Name()}}
}
