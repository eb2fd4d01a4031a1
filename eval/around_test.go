package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Windows round a circle take one window's metal at each place, and stand where the circle has
// them: the first at the angle that is written, the next ones on from the first axis towards the second.
func TestRepeated(t *testing.T) {
	for _, c := range []struct {
		into        model.Face
		start, over float64
		count       int
		u, v        [2]float64 // two of the places, from the middle of the circle

	}{
		{model.Top, 0, 360, 4, [2]float64{18, 0}, [2]float64{0, 18}},
		{model.Bottom, 0, 360, 4, [2]float64{18, 0}, [2]float64{0, 18}},
		{model.Front, 0, 360, 4, [2]float64{18, 0}, [2]float64{0, 18}},
		{model.Right, 90, 180, 3, [2]float64{0, 18}, [2]float64{0, -18}},
	} {
		sin, cos := math.Sincos(c.start * math.Pi / 180)
		pos := func(d float64) model.Known[model.Position] {
			return model.Sure(model.Position{Short: []drawing.Size{{Nominal: 30 + 18*cos + d}, {Nominal: 30 + 18*sin + d}}})
		}
		f := &model.Feature{Item: &model.Item{Kind: "pocket", Label: "window"}}
		f.Into, f.From, f.To = model.Sure(model.Ref{Face: c.into}), pos(-2), pos(2)
		f.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: 5}})
		f.Around.Said, f.Around.Count, f.Around.Pcd = true, model.Sure(c.count), model.Sure(drawing.Size{Nominal: 36})
		f.Around.Start, f.Around.Over = model.Sure(c.start), model.Sure(c.over)
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "b"}, Features: []*model.Feature{f}}
		m.Length, m.Width, m.Height = model.Sure(drawing.Size{Nominal: 60}), model.Sure(drawing.Size{Nominal: 60}), model.Sure(drawing.Size{Nominal: 60})
		p := Ready(&model.Build{}, m)
		g := p.Forms[0]
		if g.Wrong != "" || len(g.Lacks) > 0 || len(g.Copies) != c.count {
			t.Fatal(c.into, g.Wrong, g.Lacks, g.Copies)
		}
		piece := solid.Raw(solid.Box(p.Low, p.High()))
		took := piece.Cut(g.repeated(g.removal(1, 0))...)
		if got, want := piece.Volume()-took.Volume(), float64(c.count)*4*4*5; math.Abs(got-want) > 1e-3*want {
			t.Errorf("%v: %v mm³ are taken, not %v", c.into, got, want)
		}
		a, b := across(c.into)
		for _, at := range [][2]float64{c.u, c.v} {
			var v solid.Vec
			v[a], v[b] = 30+at[0], 30+at[1]
			v[c.into.Axis()] = p.FaceAt(c.into) - 2*c.into.Sign()
			if took.Holds(v) {
				t.Errorf("%v: there is metal at %v", c.into, v)
			}
		}
	}
}
