package eval

import (
	"fettle/eval/solid"
	"fettle/schema/model"
)

// OpenBeside says whether a straight feature is open at any side square to a face: a cutter
// can come in from there.
func (f *Form) OpenBeside(face model.Face) bool {
	for _, g := range model.Faces {
		if g.Axis() != face.Axis() && f.Open[g] {
			return true
		}
	}
	return false
}

// WayIn is the diameter of a hole, made before, that leads into a closed feature down to its
// floor: a cutter can be let down there. False where there is none.
func (k *Cut) WayIn(w *Working) (float64, bool) {
	f := w.Target.Form
	best, found := 0.0, false
	for i, g := range k.Part.Forms {
		s := k.Before.Features[i]
		if len(g.Mouths) == 0 || !s.Begun || g.Into.Face.Axis() != f.Into.Face.Axis() {
			continue
		}
		for _, m := range g.Mouths {
			if inside(m, f.Lo, f.Hi, f.Into.Face.Axis()) && (s.Through || s.Depth >= f.Depth.V-model.Grain) && s.Diameter > best {
				best, found = s.Diameter, true
			}
		}
	}
	return best, found
}

func inside(v, lo, hi solid.Vec, skip int) bool {
	for i := range 3 {
		if i != skip && (v[i] < lo[i] || v[i] > hi[i]) {
			return false
		}
	}
	return true
}
