package eval

import (
	"testing"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// In a vise the face on the fixed jaw looks to the column (+Y) and the face that is up looks
// up (+Z). Seen from the front, the right-hand end of the piece then looks along (normal of
// the face on the fixed jaw) × (normal of the face that is up). All 24 attitudes.
func TestAttitudes(t *testing.T) {
	n := 0
	for _, up := range model.Faces {
		for _, back := range model.Faces {
			if up.Axis() == back.Axis() {
				continue
			}
			n++
			pose := solid.Attitude(Normal(up), Normal(back))
			right := Normal(back).Cross(Normal(up))
			if got := pose.Dir(right); got != (solid.Vec{1, 0, 0}) {
				t.Errorf("up %v, fixed jaw %v: the right-hand end looks along %v", up, back, got)
			}
			if got := pose.Dir(Normal(up)); got != (solid.Vec{0, 0, 1}) {
				t.Errorf("up %v, fixed jaw %v: up looks along %v", up, back, got)
			}
			h := &Holding{Pose: pose}
			if f := h.FaceTo(solid.Vec{0, 1, 0}); f != back {
				t.Errorf("up %v: the fixed jaw touches %v, not %v", up, f, back)
			}
		}
	}
	if n != 24 {
		t.Errorf("%d attitudes", n)
	}
}

func TestFaces(t *testing.T) {
	for _, f := range model.Faces {
		o := f.Opposite()
		if o == f || o.Opposite() != f || o.Axis() != f.Axis() || o.Sign() != -f.Sign() {
			t.Errorf("%v: opposite %v", f, o)
		}
		if g, ok := model.ParseFace(f.String()); !ok || g != f || model.FaceOn(f.Axis(), f.Sign()) != f {
			t.Errorf("%v does not come back", f)
		}
	}
}
