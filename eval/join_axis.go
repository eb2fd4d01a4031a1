package eval

import (
	"math"

	"fettle/schema/model"
)

// holeAt is where the axis of a single hole lies along an axis of its part that is square to it; false of
// anything else.
func (f *Form) holeAt(axis int) (float64, bool) {
	if len(f.Mouths) != 1 || f.Wrong != "" || f.tilted() || f.Into.Face == model.NoFace || f.Into.Face.Axis() == axis {
		return 0, false
	}
	return f.Mouths[0][axis], true
}

// axisInPath takes a hole at either end of a path of faces for a plane through its axis, which looks away
// from the face beside it in the path, into the gap. False where it is none, or no face of its part stands beside it.
func (t *Trace) axisInPath(path []model.Ref, i int) (*Part, Plane, bool) {
	r := path[i]
	beside := i + 1
	if i > 0 {
		beside = i - 1
	}
	if i > 0 && i < len(path)-1 || beside >= len(path) || r.Item == nil || r.Sub != "" || r.Item.Kind != "hole" && r.Item.Kind != "bore" {
		return nil, Plane{}, false
	}
	p := t.partOf(r.Part())
	q, face, ok := t.plane(path[beside])
	if p == nil || !ok || q != p {
		return nil, Plane{}, false
	}
	f := p.FormOf(r.Item)
	if f == nil {
		return nil, Plane{}, false
	}
	axis := face.Face.Axis()
	at, ok := f.holeAt(axis)
	if !ok || math.Abs(at-face.At) < model.Grain {
		return nil, Plane{}, false
	}
	return p, Plane{model.FaceOn(axis, math.Copysign(1, at-face.At)), at, f.Name()}, true
}
