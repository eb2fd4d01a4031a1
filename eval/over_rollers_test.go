package eval

import (
	"math"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Sizes over and between rollers back to the width at the narrow place. 67.3205 over rollers of 10 on a
// tongue of 40 and 60 degrees, and 12.6795 between them in a slot that is 40 wide at its floor: Machinery's
// Handbook, as two pages on measuring dovetails quote it (testdata/published/taper.tsv). The slot is
// narrower at its mouth by twice its depth over the tangent.
func TestDovetailOverRollers(t *testing.T) {
	for _, c := range []struct {
		kind               string
		size, roller, deep float64
		want               float64
	}{
		{"tongue", 67.3205, 10, 12, 40},
		{"slot", 12.6795, 10, 12, 40 - 2*12/math.Tan(math.Pi/3)},
		{"tongue", 45.4853, 6, 15, 45.4853 - 6*(1+1/math.Tan(math.Pi/6))},
	} {
		p, _ := undercutPart("dovetail", func(m *model.Feature) {
			m.Sort, m.Angle = model.Sure(c.kind), model.Sure(60.0)
			m.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: c.deep}})
			m.OverRollers = model.OverRollers{Said: true, Rollers: model.Sure(c.roller),
				Size: model.Sure(drawing.Size{Nominal: c.size, Tol: drawing.Tolerance{Kind: drawing.Deviations, Lo: -0.02, Hi: 0.01}})}
		})
		f := p.Forms[0]
		if f.Wrong != "" || len(f.Lacks) > 0 {
			t.Fatal(c.kind, f.Wrong, f.Lacks)
		}
		w := f.Feature.Width.V
		if math.Abs(w.Nominal-c.want) > 0.001 || w.Tol.Lo != -0.02 || w.Tol.Hi != 0.01 {
			t.Errorf("%s %v over rollers of %v: %v wide (%v), want %v", c.kind, c.size, c.roller, w.Nominal, w.Tol, c.want)
		}
		if f.Under == nil || p.Part.Features[0].Width.Is() {
			t.Errorf("%s: the form has no shape, or the recipe's own feature was changed", c.kind)
		}
	}
}

// Rollers that touch above the flank measure nothing, and a slot that they leave no mouth is none.
func TestRollersThatMeasureNothing(t *testing.T) {
	for _, c := range []struct{ size, roller, deep float64 }{{67, 10, 4}, {12, 6, 60}} {
		p, _ := undercutPart("dovetail", func(m *model.Feature) {
			m.Sort, m.Angle = model.Sure("slot"), model.Sure(60.0)
			m.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: min(c.deep, 39)}})
			m.OverRollers = model.OverRollers{Said: true, Rollers: model.Sure(c.roller), Size: model.Sure(drawing.Size{Nominal: c.size})}
		})
		if p.Forms[0].Wrong == "" {
			t.Errorf("%+v: is taken, %v wide", c, p.Forms[0].Feature.Width.V.Nominal)
		}
	}
}
