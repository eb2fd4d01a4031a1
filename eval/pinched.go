package eval

import (
	"math"

	"fettle/schema/model"
)

// Pinched says whether the jaws of a vise press on both prongs of a slit, split or slot that is open, and
// which feature that this holding makes lies between those prongs: seen along the jaws' pull, over the slit.
func (h *Holding) Pinched(f *Form) (making *Form, ok bool) {
	v := h.Choice.Vise
	if v == nil || !v.JawWidth.Is() || !v.JawDepth.Is() || h.Choice.Back == model.NoFace || h.Part.Feature(h.Before, f) == nil {
		return nil, false
	}
	if !h.Part.Feature(h.Before, f).Begun {
		return nil, false
	}
	pull := h.Choice.Back.Axis()
	slit := f.bounds()
	for a := range 3 {
		if a != pull && slit.hi[a]-slit.lo[a] <= slit.hi[pull]-slit.lo[pull] {
			return nil, false // the jaws press along it
		}
	}
	lo, hi := h.Pose.Point(slit.lo), h.Pose.Point(slit.hi)
	for i, jaw := range [2][2]float64{{0, v.JawWidth.V}, {h.bedLevel(), h.bedLevel() + v.JawDepth.V}} {
		a := 2 * i // along the jaws, then upright
		if over := min(max(lo[a], hi[a]), jaw[1]) - max(min(lo[a], hi[a]), jaw[0]); !(over > model.Grain) {
			return nil, false
		}
	}
	for _, st := range h.Work.Steps {
		for _, t := range st.Makes {
			if t.Form == nil || t.Form == f || t.Form.Of == f {
				continue
			}
			if made := t.Form.bounds(); !math.IsInf(made.lo[0], 0) && made.shadows(slit, pull) {
				return t.Form, true
			}
		}
	}
	return nil, true
}

// shadows says whether two boxes overlap, seen along an axis.
func (r bounds) shadows(o bounds, along int) bool {
	for a := range 3 {
		if a != along && min(r.hi[a], o.hi[a])-max(r.lo[a], o.lo[a]) <= model.Grain {
			return false
		}
	}
	return true
}
