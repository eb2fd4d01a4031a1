package eval

import (
	"fettle/eval/solid"
	"fettle/schema/model"
)

// Stroke is how far the tip goes down from the metal it meets first to its deepest place,
// in the deepest of the holes of the cut, mm; the way down to the metal is not in it. Where
// the axis runs in a hole already, it counts from the face that the tool comes in by.
func (k *Cut) Stroke() float64 {
	most := 0.0
	piece := k.Before.Piece.Standing(k.Hold.Pose)
	for _, w := range k.Works {
		if w.Target.Form == nil || len(w.Target.Form.Mouths) == 0 || !w.Facing {
			continue
		}
		top := k.Hold.UpOf(w.Entry)
		if f := w.Entry.Face; near(w.Entry.At, k.Part.FaceAt(f)) {
			top = k.Hold.UpOf(Plane{Face: f, At: k.Before.Faces[f].At})
		}
		for _, m := range w.Moves {
			above := solid.Vec{m.From[0], m.From[1], k.Hold.Hi[2] + model.Grain}
			if spans := piece.Ray(above, solid.Vec{0, 0, -1}); len(spans) > 0 {
				top = max(top, above[2]-spans[0].A)
			}
			most = max(most, top-min(m.From[2], m.To[2]))
		}
	}
	return most
}
