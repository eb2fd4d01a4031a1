package eval

import (
	"math"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Three bores of 14 mm through 20 mm on a circle of 24 mm: three cylinders, each 12 mm from the middle.
// On a lathe none of them is made, since each lies round a line of its own.
func TestBoresAtSeveralPlaces(t *testing.T) {
	b := &model.Feature{Item: &model.Item{Kind: "bore", Label: "seats"}}
	b.Into, b.Diameter = model.Sure(model.Ref{Face: model.Top}), size(14)
	b.At = model.Sure([]model.Position{{Short: []drawing.Size{{Nominal: 30}, {Nominal: 25}}}})
	b.Around = model.Around{Said: true, Count: model.Sure(3), Pcd: size(24)}
	m := &model.Part{Item: &model.Item{Kind: "part", Label: "plate"}, Length: size(60), Width: size(50), Height: size(20), Features: []*model.Feature{b}}
	p := Ready(&model.Build{Parts: []*model.Part{m}}, m)
	p.blank(nil)
	f := p.Forms[0]
	if f.Wrong != "" || len(f.Lacks) > 0 || len(f.Mouths) != 3 {
		t.Fatal(f.Wrong, f.Lacks, f.Mouths)
	}
	h := &Holding{Part: p, Work: &Work{Kind: "setup"}}
	h.Pose = h.Choice.Lean.pose()
	k := &Cut{Part: p, Before: p.start(), Hold: h, Step: &Step{Work: h.Work}, Choice: CutChoice{By: "boring"}}
	k.After = k.Before.next(k.Spot, k.Key)
	k.work(Target{Form: f})
	want := 3 * math.Pi * 49 * 20
	if got := k.Before.Piece.Volume() - k.After.Piece.Volume(); math.Abs(got-want) > 1e-4*want {
		t.Errorf("takes %v mm³, %v by the formula", got, want)
	}
	if !p.Feature(k.After, f).Finished || len(k.Works) != 3 {
		t.Error("they are not all made")
	}
	if _, ok := p.axisOf(Target{Form: f}); ok {
		t.Error("they lie round one line")
	}
	// About the first of them the half section is bored, about their middle it is not.
	if z := p.HalfSection(k.After, AxisAt(2, f.Mouths[0])); z.Hollow() != 7 {
		t.Errorf("bored to %v about its own line", z.Hollow())
	}
	if z := p.HalfSection(k.After, AxisAt(2, f.Mouths[0].Add(f.Mouths[1]).Times(0.5))); z.Hollow() != 0 {
		t.Errorf("bored to %v about another line", z.Hollow())
	}
}
