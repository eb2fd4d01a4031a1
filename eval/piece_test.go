package eval

import (
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// A bearing 16 mm high is split at half height with a kerf of 1.6: the cap alone is 7.2 mm
// high, and a hole made in it is then in the whole as well.
func TestPieceAlone(t *testing.T) {
	size := solid.Vec{30, 20, 16}
	split := &model.Feature{Item: &model.Item{Kind: "split", Label: "halves"}}
	split.Pieces = model.Sure([]string{"base", "cap"})
	split.At = model.Sure([]model.Position{{Coords: []model.Coordinate{{Datum: model.Ref{Face: model.Bottom}, Size: drawing.Size{Nominal: 8}}}}})
	split.Kerf = model.Sure(drawing.Size{Nominal: 1.6})
	p := &Part{Part: &model.Part{Item: &model.Item{Kind: "part", Label: "b"}, Features: []*model.Feature{split}}, Build: &model.Build{}, Size: size}
	p.forms()
	p.Blank.Hi, p.Blank.Shape = size, solid.Box(solid.Vec{}, size)
	s := p.start()
	s.Piece = s.Piece.Cut(p.Forms[0].removal(p.outward(), 0)...)
	s.Features[0].Finished = true
	for _, c := range []struct {
		piece  string
		lo, hi float64
	}{{"base", 0, 7.2}, {"cap", 8.8, 16}} {
		w := &Work{SetUp: &model.SetUp{Piece: model.Sure([]string{c.piece})}, Spot: finding.Spot{Part: "b"}}
		one, ok := p.alone(s, w)
		if !ok {
			t.Fatal(c.piece, "is not found")
		}
		lo, hi := one.Bounds()
		if !near(lo[2], c.lo) || !near(hi[2], c.hi) {
			t.Errorf("%s reaches from %v to %v, not %v to %v", c.piece, lo[2], hi[2], c.lo, c.hi)
		}
		drilled := one.next(one.Last, one.Key.With(1))
		at := solid.Vec{15, 10, (c.lo + c.hi) / 2}
		drilled.Piece = one.Piece.Cut(solid.Removal{Take: solid.Cylinder(solid.Vec{15, 10, c.lo}, solid.Vec{15, 10, c.hi}, 2)})
		whole := drilled.together(s, one, goneFace(s, one))
		if whole.Piece.Holds(at) {
			t.Errorf("the hole in %s is not in the whole", c.piece)
		}
		if other := 16 - at[2]; !whole.Piece.Holds(solid.Vec{15, 10, other}) {
			t.Errorf("the other piece is gone from the whole after work on %s", c.piece)
		}
	}
	if _, ok := p.alone(s, &Work{SetUp: &model.SetUp{Piece: model.Sure([]string{"base", "cap"})}}); ok {
		t.Error("both together are taken for one")
	}
}
