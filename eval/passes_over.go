package eval

import (
	"fettle/schema/model"
)

// PassesOver says whether the tool runs out beyond a side of the piece as it then is, lower than the top of
// the metal: whatever touches that side stands in its way, unless it stands lower still.
func (k *Cut) PassesOver(face model.Face) bool {
	if face == model.NoFace || k.LevelSpindle() {
		return false
	}
	out := k.Hold.Pose.Dir(Normal(face))
	var v [3]float64
	v[face.Axis()] = k.Before.Faces[face].At
	side := k.Hold.Pose.Point(v)
	edge := side[0]*out[0] + side[1]*out[1]
	r := k.Stack.Diameter.Or(k.Choice.Tool.Size) / 2
	for _, w := range k.Works {
		for _, m := range w.Moves {
			if min(m.From[2], m.To[2]) > k.Hold.Hi[2]-model.Grain {
				continue
			}
			for _, p := range [2][3]float64{m.From, m.To} {
				if out[2] < 0.5 && out[2] > -0.5 && p[0]*out[0]+p[1]*out[1]+r > edge+model.Grain {
					return true
				}
			}
		}
	}
	return false
}
