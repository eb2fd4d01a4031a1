package eval

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Law: in the mirror every feature takes as much metal, and the piece at x there is the piece
// at length - x here.
func TestMirrorLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		from := func(f model.Face, x float64) model.Coordinate {
			return model.Coordinate{Datum: model.Ref{Face: f}, Size: drawing.Size{Nominal: x}}
		}
		hole := &model.Feature{Item: &model.Item{Kind: "hole", Label: "a"}}
		hole.Into = model.Sure(model.Ref{Face: model.Top})
		hole.Diameter = size(figure("diameter", 2, 8))
		hole.At = model.Sure([]model.Position{{Coords: []model.Coordinate{from(model.Left, figure("x", 6, 50)), from(model.Front, 15)}}})
		step := &model.Feature{Item: &model.Item{Kind: "step", Label: "b"}}
		step.Into, step.Side = model.Sure(model.Ref{Face: model.Top}), model.Sure(model.Ref{Face: model.Left})
		step.Width = size(figure("width", 1, 20))
		step.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: figure("depth", 1, 10)}})
		pocket := &model.Feature{Item: &model.Item{Kind: "pocket", Label: "c"}}
		pocket.Into = model.Sure(model.Ref{Face: model.Right})
		pocket.From = model.Sure(model.Position{Coords: []model.Coordinate{from(model.Front, 4), from(model.Bottom, 3)}})
		pocket.To = model.Sure(model.Position{Coords: []model.Coordinate{from(model.Front, 20), from(model.Bottom, 9)}})
		pocket.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: figure("deep", 1, 9)}})
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "right"}, Length: size(60), Width: size(30), Height: size(20),
			Features: []*model.Feature{hole, step, pocket}}
		o := &model.Part{Item: &model.Item{Kind: "part", Label: "left"}, MirrorOf: model.Sure(model.Ref{Item: m.Item})}
		b := &model.Build{Parts: []*model.Part{m, o}}
		var pieces [2]*solid.Piece
		for i, one := range b.Parts {
			p := Ready(b, one)
			if p.Unplayed != "" {
				t.Fatal(p.Unplayed)
			}
			pieces[i] = solid.Raw(solid.Box(solid.Vec{}, p.Size))
			for _, f := range p.Forms {
				if f.Wrong != "" || len(f.Lacks) > 0 {
					t.Fatal(f.Name(), f.Wrong, f.Lacks)
				}
				if len(f.Mouths) > 0 {
					pieces[i] = pieces[i].Cut(solid.Removal{Take: solid.Cylinder(f.Mouths[0].Add(solid.Vec{0, 0, 1}), solid.Vec{f.Mouths[0][0], f.Mouths[0][1], -1}, f.Diameter.V/2)})
					continue
				}
				pieces[i] = pieces[i].Cut(f.removal(1, 0)...)
			}
		}
		if a, b := pieces[0].Volume(), pieces[1].Volume(); math.Abs(a-b) > 1e-3*a {
			t.Errorf("%v and %v mm³", a, b)
		}
		for range 20 {
			v := solid.Vec{figure("px", 0.01, 59.99), figure("py", 0.01, 29.99), figure("pz", 0.01, 19.99)}
			w := solid.Vec{60 - v[0], v[1], v[2]}
			up := solid.Vec{0, 0, 1}
			a, b := pieces[0].Line(v, up), pieces[1].Line(w, up)
			if len(a) != len(b) {
				t.Errorf("at %v %v, in the mirror %v", v, a, b)
			}
		}
	})
}
