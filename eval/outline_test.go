package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Sheet of 40 x 20 x 2: a triangle with both sides 20 is left, 200 mm² of it, and within
// it a square opening of 5 x 5; drawn on the top, and on the bottom just as well.
func TestOutlineIsPlayed(t *testing.T) {
	at := func(xs ...float64) []model.Position {
		var out []model.Position
		for i := 0; i < len(xs); i += 2 {
			out = append(out, model.Position{Short: []drawing.Size{{Nominal: xs[i]}, {Nominal: xs[i+1]}}})
		}
		return out
	}
	for _, face := range []model.Face{model.Top, model.Bottom} {
		edge := &model.Feature{Item: &model.Item{Kind: "outline", Label: "edge"}}
		edge.Points = model.Sure(at(0, 0, 20, 0, 0, 20))
		room := &model.Feature{Item: &model.Item{Kind: "outline", Label: "room"}}
		room.Points, room.Opening = model.Sure(at(2, 2, 7, 2, 7, 7, 2, 7)), model.Sure(true)
		for _, f := range []*model.Feature{edge, room} {
			f.Into = model.Sure(model.Ref{Face: face})
		}
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "plate"}, Length: size(40), Width: size(20), Thickness: size(2),
			Features: []*model.Feature{edge, room}}
		p := Ready(&model.Build{Parts: []*model.Part{m}}, m)
		left := solid.Raw(solid.Box(solid.Vec{}, p.Size))
		for _, f := range p.Forms {
			if f.Wrong != "" || len(f.Lacks) > 0 {
				t.Fatal(f.Wrong, f.Lacks)
			}
			left = left.Cut(f.Trim...)
		}
		if want := (200.0 - 25) * 2; math.Abs(left.Volume()-want) > 0.05 {
			t.Errorf("on the %v face: %v mm³ are left, %v wanted", face, left.Volume(), want)
		}
	}
}
