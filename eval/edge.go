package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// breakEdge makes a chamfer or a radius: on the edge of two faces, or on rims of holes.
func (k *Cut) breakEdge(t Target) {
	f := t.Form
	fs := k.Part.change(k.After, f)
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

// rimTook is the cone that breaks a rim, or for a radius the cones that touch the round.
func (k *Cut) rimTook(f *Form, r Rim) []solid.Removal {
	out := Normal(r.Face.Face)
	d := r.Hole.Diameter.Or(0) / 2
	legs := [][2]float64{{f.Size * math.Tan(f.Feature.Angle.Or(45)*math.Pi/180), f.Size}}
	if f.Feature.Kind == "radius" {
		legs = roundLegs(f.Size)
	}
	var took []solid.Removal
	for _, m := range r.Hole.Mouths {
		at := r.Hole.at(m, r.Face)
		for _, l := range legs {
			wide := d + l[0]
			if !(wide > 0) || math.IsInf(wide, 0) {
				continue
			}
			took = append(took, solid.Removal{Take: solid.Cone(at.Sub(out.Times(l[1])), at, d, wide), By: f.Name()})
		}
	}
	return took
}

// roundLegs are the two legs, along the face and down the hole, of bevels that touch a rounded edge
// of a radius. Together they never take more than the round, and leave at most solid.Within more. The
// line that touches at an angle t meets the face r (1 - (1 - sin t) / cos t) from the edge: derived.
func roundLegs(r float64) [][2]float64 {
	n := 1
	for n < 40 && r*(1/math.Cos(math.Pi/4/float64(n+1))-1) > solid.Within {
		n++
	}
	var out [][2]float64
	for i := range n {
		sin, cos := math.Sincos(float64(i+1) / float64(n+1) * math.Pi / 2)
		out = append(out, [2]float64{r * (1 - (1-sin)/cos), r * (1 - (1-cos)/sin)})
	}
	return out
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
