package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// undercutPart is a block of 50 x 40 x 40 with one undercut form along its top, 20 from the front.
func undercutPart(kind string, set func(*model.Feature)) (*Part, *Holding) {
	size := solid.Vec{50, 40, 40}
	m := &model.Feature{Item: &model.Item{Kind: kind, Label: "a"}}
	m.Into = model.Sure(model.Ref{Face: model.Top})
	m.At = model.Sure([]model.Position{{Coords: []model.Coordinate{{Datum: model.Ref{Face: model.Front}, Size: drawing.Size{Nominal: 20}}}}})
	set(m)
	p := &Part{Part: &model.Part{Item: &model.Item{Kind: "part", Label: "p"}, Features: []*model.Feature{m}}, Build: &model.Build{}, Size: size}
	p.forms()
	p.Blank.Hi, p.Blank.Shape = size, solid.Box(solid.Vec{}, size)
	return p, &Holding{Part: p, Pose: solid.Attitude(solid.Vec{0, 0, 1}, solid.Vec{0, 1, 0}), Hi: size, Work: &Work{SetUp: &model.SetUp{Item: &model.Item{}}}}
}

// goes plays the goes of the kinds of cutters named and gives the volume taken.
func goes(t *testing.T, p *Part, h *Holding, kinds ...string) (float64, *State) {
	t.Helper()
	s := p.start()
	was := s.Piece.Volume()
	for _, kind := range kinds {
		k := &Cut{Step: &Step{Work: h.Work}, Hold: h, Part: p, Before: s, Spot: finding.Spot{Step: kind}}
		k.Choice.Tool.Cutter = &model.Cutter{Thing: model.Thing{Item: &model.Item{Kind: kind}}}
		k.Stack.Diameter = model.Sure(10.0)
		k.After = s.next(k.Spot, s.Key)
		k.undercut(Target{Form: p.Forms[0]})
		s = k.After
	}
	return was - s.Piece.Volume(), s
}

func size(x float64) model.Known[drawing.Size] { return model.Sure(drawing.Size{Nominal: x}) }

// A throat of 10 x 17 and a foot of 16 x 7 take 10 x 17 + 6 x 7 = 212 mm² along 50 mm.
func TestTeeSlotIsPlayed(t *testing.T) {
	p, h := undercutPart("tee_slot", func(m *model.Feature) { m.Width = size(10) }) // the rest by ISO 299
	if w := p.Forms[0].Wrong; w != "" || len(p.Forms[0].Lacks) > 0 {
		t.Fatal(w, p.Forms[0].Lacks)
	}
	throat, s := goes(t, p, h, "slot_drill")
	if math.Abs(throat-170*50) > 0.1 || s.Features[0].Finished {
		t.Errorf("the throat takes %v, finished %v", throat, s.Features[0].Finished)
	}
	whole, s := goes(t, p, h, "slot_drill", "tee_slot_cutter")
	if math.Abs(whole-212*50) > 0.1 || !s.Features[0].Finished {
		t.Errorf("both take %v, finished %v", whole, s.Features[0].Finished)
	}
}

// A dovetail of 60 degrees, narrow 20 and 8 deep: (20 + 8/tan 60) x 8 mm² of slot; a tongue
// leaves just that of a layer 40 wide.
func TestDovetailIsPlayed(t *testing.T) {
	area := (20 + 8/math.Tan(math.Pi/3)) * 8
	for _, c := range []struct {
		kind string
		want float64
	}{{"slot", area * 50}, {"tongue", (40*8 - area) * 50}} {
		p, h := undercutPart("dovetail", func(m *model.Feature) {
			m.Width, m.Sort, m.Angle = size(20), model.Sure(c.kind), model.Sure(60.0)
			m.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: 8}})
		})
		if w := p.Forms[0].Wrong; w != "" || len(p.Forms[0].Lacks) > 0 {
			t.Fatal(w, p.Forms[0].Lacks)
		}
		got, s := goes(t, p, h, "end_mill", "dovetail_cutter")
		if math.Abs(got-c.want) > 0.1 || !s.Features[0].Finished {
			t.Errorf("%s: %v taken, %v wanted, finished %v", c.kind, got, c.want, s.Features[0].Finished)
		}
	}
}
