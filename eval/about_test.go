package eval

import (
	"math"
	"testing"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// blockWith is a block from which nothing is over, with features.
func blockWith(l, w, h float64, fs ...*model.Feature) *Part {
	m := &model.Part{Item: &model.Item{Kind: "part", Label: "block"}, Length: size(l), Width: size(w), Height: size(h), Features: fs}
	p := Ready(&model.Build{Parts: []*model.Part{m}}, m)
	p.blank(nil)
	return p
}

// Law: about any line, no metal of a block lies farther out than its half section says, all within
// its core is metal, and a place along the line is the same figure in both frames.
func TestHalfSectionOfBlock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		p := blockWith(figure("l", 20, 80), figure("w", 20, 80), figure("h", 20, 80))
		along := rapid.IntRange(0, 2).Draw(t, "along")
		a := AxisAt(along, solid.Vec{figure("x", 1, 19), figure("y", 1, 19), figure("z", 1, 19)})
		s := p.start()
		section := p.HalfSection(s, a)
		seen := s.Piece.Placed(a.Pose())
		at, turn := figure("at", 0.02, 0.98)*p.Size[along], figure("turn", 0, 2*math.Pi)
		z := section.At(at)
		if z == nil {
			t.Fatalf("no zone at %v", at)
		}
		sin, cos := math.Sincos(turn)
		ray := func(r float64) solid.Vec { return solid.Vec{at, r * cos, r * sin} }
		if seen.Holds(ray(z.Most() + 0.01)) {
			t.Errorf("metal at %v beyond %v", turn, z.Most())
		}
		if !seen.Holds(ray(z.Whole() - 0.01)) {
			t.Errorf("no metal at %v within %v", turn, z.Whole())
		}
		point := a.At
		point[along] = at
		if got := a.Pose().Point(point); got.Sub(solid.Vec{at, 0, 0}).Len() > 1e-9 {
			t.Errorf("%v comes to %v", point, got)
		}
	})
}

// Law: a bar set over sweeps its radius and the way it is set over, and is whole round the line
// up to the one less the other.
func TestHalfSectionSetOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, e := rapid.Float64Range(5, 50).Draw(t, "r"), 0.0
		e = rapid.Float64Range(0.1, 4.5).Draw(t, "e")
		own := Profile{{X0: 0, X1: 60, Out0: r, Out1: r, In0: r / 3, In1: r / 3}}
		z := own.beside(e)[0]
		turn := rapid.Float64Range(0, 2*math.Pi).Draw(t, "turn")
		// A place on the outside, as seen from the line: between the two.
		d := math.Hypot(r*math.Cos(turn)-e, r*math.Sin(turn))
		if d > z.Most()+1e-9 || d < z.Whole()-1e-9 {
			t.Errorf("%v is not within %v to %v", d, z.Whole(), z.Most())
		}
		if in := math.Hypot(r/3*math.Cos(turn)-e, r/3*math.Sin(turn)); in < z.In0-1e-9 {
			t.Errorf("the bore comes to %v, and is clear to %v", in, z.In0)
		}
	})
}

// Law: no metal of a block with a step lies farther from a line than its half section about that
// line says, and the step makes it sweep no more than before.
func TestHalfSectionOfMilledBlock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		step := &model.Feature{Item: &model.Item{Kind: "step", Label: "a"}}
		step.Into, step.Side = model.Sure(model.Ref{Face: model.Top}), model.Sure(model.Ref{Face: rapid.SampledFrom([]model.Face{model.Left, model.Front, model.Back}).Draw(t, "side")})
		step.Width = size(figure("width", 2, 18))
		step.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: figure("deep", 2, 18)}})
		p := blockWith(figure("l", 20, 80), figure("w", 20, 80), figure("h", 20, 80), step)
		along := rapid.IntRange(0, 2).Draw(t, "along")
		a := AxisAt(along, solid.Vec{figure("x", 1, 19), figure("y", 1, 19), figure("z", 1, 19)})
		s := p.start()
		s = s.next(s.Last, s.Key)
		whole := p.HalfSection(s, a)
		s.Features[0] = &FeatureState{Begun: true, Finished: true}
		s.Piece = s.Piece.Cut(p.Forms[0].removal(1, 0)...)
		section := p.HalfSection(s, a)
		seen := s.Piece.Placed(a.Pose())
		at, turn := figure("at", 0.02, 0.98)*p.Size[along], figure("turn", 0, 2*math.Pi)
		z := section.At(at)
		if z == nil {
			t.Fatalf("no zone at %v", at)
		}
		sin, cos := math.Sincos(turn)
		for _, r := range []float64{z.Most() + 0.01, z.Most() * 1.2} {
			if seen.Holds(solid.Vec{at, r * cos, r * sin}) {
				t.Errorf("metal at %v beyond %v", turn, z.Most())
			}
		}
		if z.Most() > whole.At(at).Most()+1e-9 {
			t.Errorf("the step makes it sweep %v, and %v before", z.Most(), whole.At(at).Most())
		}
	})
}
