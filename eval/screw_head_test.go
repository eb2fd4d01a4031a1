package eval

import (
	"strings"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// A counterbore or countersink of which nothing is written takes its sizes from the head that stands in it; what is written stays.
// Nothing is taken without a screw, from heads that differ, from the head of a screw that comes to the hole second, under a
// washer, or of a thread that is not metric. M5: ISO 4762 with DIN 974-1, 10 wide and 5.4 deep; ISO 10642, 11.2; ISO 2009, 10.4 (from memory).
func TestMouthByScrew(t *testing.T) {
	own := func(head, driver string, across float64) *model.Screws {
		x := &model.Screws{Head: model.Sure(head), Thread: model.Sure(drawing.Thread{Series: "M", Diameter: 5, Pitch: 0.8})}
		if driver != "" {
			x.Driver = model.Sure(driver)
		}
		if across > 0 {
			x.HeadDiameter = model.Sure(across)
		}
		return x
	}
	for _, c := range []struct {
		name                    string
		screws                  string // "M5x16 cap; M5x20 cap"
		written                 float64
		owns                    []*model.Screws
		bore, deep, sunk, angle float64 // 0 not known
	}{
		{"cap", "M5x16 cap", 0, nil, 10, 5.4, 0, 0},
		{"lengths differ", "M5x16 cap; M5x20 cap", 0, nil, 10, 5.4, 0, 0},
		{"written", "M5x16 cap", 12, nil, 12, 5.4, 12, 0},
		{"sunk", "M5x16 countersunk", 0, nil, 0, 0, 11.2, 90},
		{"sunk, written", "M5x16 countersunk", 12, nil, 12, 0, 12, 90},
		{"raised", "M5x16 raised countersunk", 0, nil, 0, 0, 11.2, 90},
		{"slotted", "M5x16 countersunk", 0, []*model.Screws{own("countersunk", "slot", 0)}, 0, 0, 10.4, 90},
		{"own head", "M5x16 countersunk", 0, []*model.Screws{own("countersunk", "", 9.2)}, 0, 0, 9.2, 90},
		{"own head too wide for the standard", "M5x16 cap", 0, []*model.Screws{own("cap", "", 10.2)}, 0, 0, 0, 0},
		{"own head within", "M5x16 cap", 0, []*model.Screws{own("cap", "", 7.5)}, 10, 5.4, 0, 0},
		{"none", "", 0, nil, 0, 0, 0, 0},
		{"two sizes", "M5x16 cap; M6x16 cap", 0, nil, 0, 0, 0, 0},
		{"two heads", "M5x16 cap; M5x16 countersunk", 0, nil, 0, 0, 0, 0},
		{"second", "M5x16 cap second", 0, nil, 0, 0, 0, 0},
		{"washer", "M5x16 cap washer", 0, nil, 0, 0, 0, 0},
		{"inch", "1/4-20 UNC x 1 in cap", 0, nil, 0, 0, 0, 0},
		{"pan", "M5x16 pan", 0, nil, 0, 0, 0, 0},
		{"no head", "M5x16", 0, nil, 0, 0, 0, 0},
	} {
		up := &model.Item{Kind: "part", Label: "p"}
		h := &model.Feature{Item: &model.Item{Kind: "hole", Label: "h", In: up}}
		h.Into = model.Sure(model.Ref{Face: model.Top})
		h.Diameter = model.Sure(sized(5.5))
		h.Counterbore.Said, h.Countersink.Said = true, true
		if c.written > 0 {
			h.Counterbore.Diameter, h.Countersink.Diameter = model.Sure(sized(c.written)), model.Sure(sized(c.written))
		}
		m := &model.Part{Item: up, Features: []*model.Feature{h}}
		m.Length, m.Width, m.Height = model.Sure(sized(30)), model.Sure(sized(20)), model.Sure(sized(12))
		b := &model.Build{Parts: []*model.Part{m}}
		b.Shop.Screws = c.owns
		for one := range strings.SplitSeq(c.screws, "; ") {
			size, head, _ := strings.Cut(one, " ")
			if strings.Contains(one, "UNC") {
				size, head = "1/4-20 UNC x 1 in", "cap"
			}
			s := &model.ScrewJoint{Item: &model.Item{Kind: "screw"}, Size: model.Sure(size)}
			through := []model.Ref{{Item: h.Item}}
			if strings.HasSuffix(head, " second") {
				through = append([]model.Ref{{Item: &model.Item{Kind: "hole", Label: "other"}}}, through...)
			}
			if strings.HasSuffix(head, " washer") {
				s.Washer = model.Sure(1.0)
			}
			if head = strings.TrimSuffix(strings.TrimSuffix(head, " second"), " washer"); head != "" {
				s.Head = model.Sure(head)
			}
			s.Through = model.Sure(through)
			if size != "" {
				b.Screwed = append(b.Screwed, s)
			}
		}
		f := Ready(b, m).Forms[0].Feature
		got := [4]float64{f.Counterbore.Diameter.V.Nominal, f.Counterbore.Depth.V.Nominal, f.Countersink.Diameter.V.Nominal, f.Countersink.Angle.V}
		if want := [4]float64{c.bore, c.deep, c.sunk, c.angle}; got != want {
			t.Errorf("%s: %v, want %v", c.name, got, want)
		}
		if c.bore == 10 && f.Counterbore.Diameter.From != model.Chosen || c.written > 0 && f.Counterbore.Diameter.From == model.Chosen {
			t.Errorf("%s: from %v", c.name, f.Counterbore.Diameter.From)
		}
		if h.Counterbore.Depth.Is() || h.Countersink.Angle.Is() {
			t.Errorf("%s: the recipe's own feature was changed", c.name)
		}
	}
}
