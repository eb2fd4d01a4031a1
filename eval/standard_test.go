package eval

import (
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// A keyway of which nothing is written but where it lies takes its sizes from the shaft, one of which the
// width is written its depth from that, and one that is written stays as it is. DIN 6885-1 (from memory): over
// 17 to 22 mm 6 wide, 3.5 deep in the shaft and 2.8 in the bore; 5 wide 3 deep.
func TestKeywayByStandard(t *testing.T) {
	for _, c := range []struct {
		kind       string
		width      float64
		depth      float64
		wide, deep float64
		chosen     bool
	}{
		{"outside", 0, 0, 6, 3.5, true},
		{"outside", 5, 0, 5, 3, true},
		{"outside", 5, 2, 5, 2, false},
		{"bore", 0, 0, 6, 2.8, true},
	} {
		on := &model.Feature{Item: &model.Item{Kind: c.kind, Label: "seat"}}
		on.Diameter = model.Sure(sized(20))
		if c.kind == "bore" {
			on.Into = model.Sure(model.Ref{Face: model.Right})
		}
		key := &model.Feature{Item: &model.Item{Kind: "keyway", Label: "k"}}
		key.Into = model.Sure(model.Ref{Item: on.Item})
		if c.width > 0 {
			key.Width = model.Sure(drawing.Size{Nominal: c.width})
		}
		if c.depth > 0 {
			key.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: c.depth}})
		}
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "p"}, Features: []*model.Feature{on, key}}
		m.Diameter, m.Length = model.Sure(sized(30)), model.Sure(sized(40))
		p := Ready(&model.Build{}, m)
		f := p.Forms[1]
		if f.Wrong != "" || len(f.Lacks) > 0 || !near(f.Width, c.wide) || !near(f.Feature.Depth.V.Size.Nominal, c.deep) || (f.Feature.Depth.From == model.Chosen) != c.chosen {
			t.Errorf("%+v: %v wide, %v deep, %s %v", c, f.Width, f.Feature.Depth.V.Size.Nominal, f.Wrong, f.Lacks)
		}
		if key.Width.Is() != (c.width > 0) {
			t.Error("the recipe's own feature was changed")
		}
	}
}
