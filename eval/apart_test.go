package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"

	"pgregory.net/rapid"
)

// halved is a block 30 × 20 × high, split at a height counted from the bottom or the top, with a
// bore along the joint and a hole from the top through it.
func halved(high, at, kerf, clean float64, from model.Face) *Part {
	split := &model.Feature{Item: &model.Item{Kind: "split", Label: "joint"}}
	split.Pieces = model.Sure([]string{"one", "two"})
	split.At = model.Sure([]model.Position{{Coords: []model.Coordinate{{Datum: model.Ref{Face: from}, Size: drawing.Size{Nominal: at}}}}})
	split.Kerf = model.Sure(drawing.Size{Nominal: kerf})
	split.CleanUp = model.Sure(clean)
	m := &model.Part{Item: &model.Item{Kind: "part", Label: "b"}, Features: []*model.Feature{split}}
	m.Length, m.Width, m.Height = model.Sure(drawing.Size{Nominal: 30}), model.Sure(drawing.Size{Nominal: 20}), model.Sure(drawing.Size{Nominal: high})
	return Ready(&model.Build{}, m)
}

// Law: sawn, cleaned and put together again, the piece is as high as the drawing has it, with
// the metal of the drawing; before, it is higher by kerf and twice the cleaning, on the side of
// the piece that is not the datum's.
func TestSplitCloses(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		high := rapid.Float64Range(10, 40).Draw(r, "high")
		at := rapid.Float64Range(3, 7).Draw(r, "at")
		kerf := rapid.Float64Range(0.3, 2).Draw(r, "kerf")
		clean := rapid.SampledFrom([]float64{0, 0.2, 0.5}).Draw(r, "clean")
		from := rapid.SampledFrom([]model.Face{model.Bottom, model.Top}).Draw(r, "from")
		p := halved(high, at, kerf, clean, from)
		q := p.Apart
		if q == nil {
			r.Fatal("it does not open")
		}
		gap := kerf + 2*clean
		if !near(q.Size[2], high+gap) || !near(q.FaceAt(from), p.FaceAt(from)) || !near(math.Abs(q.FaceAt(from.Opposite())-p.FaceAt(from.Opposite())), gap) {
			r.Fatalf("apart it is %v high, its far face at %v", q.Size[2], q.FaceAt(from.Opposite()))
		}
		q.Blank.Lo, q.Blank.Hi = q.Low, q.High()
		q.Blank.Shape = solid.Box(q.Blank.Lo, q.Blank.Hi)
		s := q.start()
		s.Piece = s.Piece.Cut(q.Joint.Form.removal(q.outward(), 0)...)
		s.Features[0].Finished = true
		for n := range 2 { // clean both faces, each piece alone
			s.Joint[n] = FaceState{At: q.Joint.sawn(n)}
			w := &Work{SetUp: &model.SetUp{Piece: model.Sure([]string{[]string{"one", "two"}[n]})}}
			one, ok := q.alone(s, w)
			if !ok {
				r.Fatal("a piece is not found")
			}
			lo, hi := one.Bounds()
			want := at
			if n == 1 {
				want = high - at
			}
			if !near(hi[2]-lo[2], want+clean) {
				r.Fatalf("piece %d is %v high as sawn, not %v", n, hi[2]-lo[2], want+clean)
			}
			next := one.next(one.Last, one.Key.With(uint64(n)))
			box := q.half(q.Joint, 1-n, q.Joint.face(n))
			next.Piece = one.Piece.Cut(solid.Removal{Take: box})
			s = next.together(s, one, goneFace(s, one))
		}
		done := q.closeUp(s)
		lo, hi := done.Bounds()
		if !near(lo[2], 0) || !near(hi[2], high) {
			r.Errorf("closed it reaches from %v to %v, not to %v", lo[2], hi[2], high)
		}
		if v := done.Piece.Volume(); math.Abs(v-30*20*high) > 1e-3*v {
			r.Errorf("closed it has %v mm³, not %v", v, 30*20*high)
		}
		again := q.closeUp(q.takeApart(done))
		if v := again.Piece.Volume(); math.Abs(v-30*20*high) > 1e-3*v || !near(again.Faces[from.Opposite()].At, p.FaceAt(from.Opposite())) {
			r.Errorf("opened and closed again it has %v mm³", v)
		}
	})
}
