package eval

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Law: a boss milled on a rotary table leaves what turning it leaves: above its foot a cylinder and
// nothing else. The cutter touches it, and every place beside it comes under the cutter.
func TestBossMilled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		d, x, y, high, cutter := figure("diameter", 6, 20), figure("x", 12, 48), figure("y", 12, 38), figure("high", 1, 15), figure("cutter", 4, 16)
		b := &model.Feature{Item: &model.Item{Kind: "outside", Label: "boss"}}
		b.Into, b.Diameter = model.Sure(model.Ref{Face: model.Top}), size(d)
		b.At = model.Sure([]model.Position{{Short: []drawing.Size{{Nominal: x}, {Nominal: y}}}})
		b.From = model.Sure(model.Position{Short: []drawing.Size{{Nominal: 20 - high}}})
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "plate"}, Length: size(60), Width: size(50), Height: size(20), Features: []*model.Feature{b}}
		p := Ready(&model.Build{Parts: []*model.Part{m}}, m)
		p.blank(nil)
		f := p.Forms[0]
		if f.Wrong != "" || len(f.Lacks) > 0 {
			t.Fatal(f.Wrong, f.Lacks)
		}
		h := &Holding{Part: p, Work: &Work{Kind: "setup", Steps: []*Step{{Makes: []Target{{Form: f}}}}}, Hi: p.Size}
		h.Pose = h.Choice.Lean.pose()
		h.Choice.Divided = &Divided{Table: &model.RotaryTable{}, Upright: true}
		k := &Cut{Part: p, Before: p.start(), Hold: h, Step: &Step{Work: h.Work}, Choice: CutChoice{By: "milling"}}
		k.After = k.Before.next(k.Spot, k.Key)
		k.Stack.Diameter = model.Sure(cutter)
		k.work(Target{Form: f})
		if w := k.Works[0]; w.Wrong != "" || !w.Facing || !w.Final {
			t.Fatal(w.Wrong)
		}
		want := (60*50 - math.Pi*d*d/4) * high
		if got := k.Before.Piece.Volume() - k.After.Piece.Volume(); math.Abs(got-want) > 1e-4*want {
			t.Errorf("takes %v mm³, %v by the formula", got, want)
		}
		near, out, last := math.Inf(1), 0.0, d/2-cutter/2
		for _, v := range k.Works[0].Moves {
			r := math.Hypot(v.To[0]-x, v.To[1]-y)
			if r > last+cutter+1e-9 {
				t.Fatalf("between %v and %v mm metal stays", last, r)
			}
			near, out, last = math.Min(near, r-cutter/2), math.Max(out, r+cutter/2), r
		}
		if math.Abs(near-d/2) > 1e-9 || out < math.Hypot(math.Max(x, 60-x), math.Max(y, 50-y)) {
			t.Errorf("the cutter goes from %v to %v mm", near, out)
		}
	})
}
