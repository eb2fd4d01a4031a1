package eval

import (
	"math"

	"fettle/schema/model"
)

// splitFaces notes the two faces that a saw leaves where it splits a part.
func (k *Cut) splitFaces(f *Form) {
	j := k.Part.Joint
	if j == nil || f != j.Form {
		return
	}
	skin := ""
	if j.Clean > 0 || k.Choice.ByHand {
		skin = "sawn"
	}
	for n := range 2 {
		k.After.Joint[n] = FaceState{At: j.sawn(n), Skin: skin, Done: j.Clean <= model.Grain, By: k.Spot}
	}
}

// jointFaced machines the face of a joint of the piece that is held; false where the target is no
// such face.
func (k *Cut) jointFaced(t Target) bool {
	n, ok := t.joint()
	if !ok {
		return false
	}
	face := k.Part.side(t.Form, 1-n)
	j := k.Part.Joint
	switch {
	case j == nil || k.Before.Alone != t.Sub:
		w := Working{Target: t, Entry: Plane{Face: face, Name: t.Name()}, Wrong: "it lies against the other piece"}
		if !k.Part.Feature(k.Before, t.Form).Finished {
			w.Wrong = "the piece is not split yet"
		}
		k.Works = append(k.Works, w)
		return true
	}
	var others []*Burr // those of the piece that is not here
	for _, b := range k.After.Burrs {
		if b.On == face && math.Abs(b.A[j.Axis]-j.face(n)) > j.Gap+model.Grain {
			others = append(others, b)
		}
	}
	k.faced(t, face, j.face(n), t.Name())
	for i := range k.After.Burrs {
		if b := k.After.Burrs[i]; b.By == k.Spot && len(b.Names) == 2 && b.Names[0] == "face."+face.String() {
			own := *b
			own.Names = []string{t.Name(), b.Names[1]}
			own.Edge = "the edge of " + t.Name() + " and " + b.On.String()
			k.After.Burrs[i] = &own
		}
	}
	k.After.Burrs = append(k.After.Burrs, others...)
	k.After.Joint[n] = k.After.Faces[face]
	return true
}
