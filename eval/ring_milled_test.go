package eval

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Law: a groove milled in a face takes a ring, whatever the face and wherever its middle; the cutter
// stands a radius within either wall all the way round, but for the chords of its circle.
func TestRingMilled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		face := model.Faces[rapid.IntRange(0, 5).Draw(t, "face")]
		outer, wide, deep, x, y := figure("outer", 10, 16), figure("wide", 3, 8), figure("deep", 0.5, 10), figure("x", 17, 23), figure("y", 17, 23)
		r := wide / 2 * figure("cutter", 0.4, 1)
		g := &model.Feature{Item: &model.Item{Kind: "groove", Label: "ring"}}
		g.On, g.At = model.Sure([]model.Ref{{Face: face}}), model.Sure([]model.Position{{Short: []drawing.Size{{Nominal: x}, {Nominal: y}}}})
		g.Outer, g.Width, g.Depth = size(2*outer), size(wide), model.Sure(model.Depth{Size: drawing.Size{Nominal: deep}})
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "cube"}, Length: size(40), Width: size(40), Height: size(40), Features: []*model.Feature{g}}
		p := Ready(&model.Build{Parts: []*model.Part{m}}, m)
		p.blank(nil)
		f := p.Forms[0]
		if f.Wrong != "" || len(f.Lacks) > 0 {
			t.Fatal(f.Wrong, f.Lacks)
		}
		back := model.FaceOn((face.Axis()+1)%3, 1)
		h := &Holding{Part: p, Hi: solid.Vec{40, 40, 40}, Pose: solid.Attitude(Normal(face), Normal(back))}
		h.Work = &Work{Steps: []*Step{{Makes: []Target{{Form: f}}}}}
		h.Choice.Divided = &Divided{Table: &model.RotaryTable{}, Upright: true}
		k := &Cut{Part: p, Before: p.start(), Hold: h, Step: &Step{}}
		k.After = k.Before.next(k.Spot, k.Key)
		k.Stack.Diameter = model.Sure(2 * r)
		k.ringMilled(Target{Form: f})
		w := k.Works[0]
		if w.Wrong != "" || !w.Facing || !w.Final {
			t.Fatal(w.Wrong)
		}
		inner := outer - wide
		want := math.Pi * (outer*outer - inner*inner) * deep
		if got := k.Before.Piece.Volume() - k.After.Piece.Volume(); math.Abs(got-want) > 1e-4*want {
			t.Errorf("takes %v mm³, %v by the formula", got, want)
		}
		mid := h.Pose.Point(f.About.At)
		for _, v := range w.Moves {
			d := math.Hypot(v.To[0]-mid[0], v.To[1]-mid[1])
			if math.Abs(d-(outer-r)) > 1e-9 && math.Abs(d-(inner+r)) > 1e-9 {
				t.Fatalf("the cutter stands %v mm from the middle", d)
			}
			half := v.From.Add(v.To).Times(0.5)
			if v.From[2] == v.To[2] && d-math.Hypot(half[0]-mid[0], half[1]-mid[1]) > solid.Within+1e-9 {
				t.Fatal("a chord leaves more than is told")
			}
		}
	})
}
