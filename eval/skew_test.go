package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"

	"pgregory.net/rapid"
)

// Law: a slot with round ends takes its width times its length less one width, and a circle, times its
// depth, whichever way it runs; and the turn that is found lays it along a way of the table.
func TestSkewSlot(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		at := rapid.Float64Range(0, 360).Draw(r, "direction") * math.Pi / 180
		long := rapid.Float64Range(10, 40).Draw(r, "length")
		width := rapid.Float64Range(1, 8).Draw(r, "width")
		deep := rapid.Float64Range(1, 15).Draw(r, "depth")
		sin, cos := math.Sincos(at)
		pos := func(d float64) model.Known[model.Position] {
			return model.Sure(model.Position{Short: []drawing.Size{{Nominal: 50 + d*cos}, {Nominal: 50 + d*sin}}})
		}
		m := &model.Feature{Item: &model.Item{Kind: "slot", Label: "cam"}}
		m.Into, m.From, m.To = model.Sure(model.Ref{Face: model.Top}), pos(-long/2), pos(long/2)
		m.Width, m.Depth = model.Sure(drawing.Size{Nominal: width}), model.Sure(model.Depth{Size: drawing.Size{Nominal: deep}})
		part := &model.Part{Item: &model.Item{Kind: "part", Label: "b"}, Features: []*model.Feature{m}}
		part.Length, part.Width, part.Height = model.Sure(drawing.Size{Nominal: 100}), model.Sure(drawing.Size{Nominal: 100}), model.Sure(drawing.Size{Nominal: 20})
		p := Ready(&model.Build{}, part)
		f := p.Forms[0]
		if f.Wrong != "" || len(f.Lacks) > 0 {
			r.Fatal(f.Wrong, f.Lacks)
		}
		if f.Skew == nil {
			return // it happens to lie along an axis
		}
		piece := solid.Raw(solid.Box(p.Low, p.High()))
		got := piece.Volume() - piece.Cut(f.removal(1, width/2)...).Volume()
		want := ((long-width)*width + math.Pi*width*width/4) * deep
		if math.Abs(got-want) > 1e-3*want {
			r.Errorf("%v mm³ are taken, not %v", got, want)
		}
		turned := Lean{2, offSlides(f.Skew.Along())}.pose().Dir(f.Skew.Along())
		if math.Min(math.Abs(turned[0]), math.Abs(turned[1])) > 1e-9 {
			r.Errorf("turned, it runs along %v", turned)
		}
	})
}
