package eval

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Law: a groove in an end takes the ring between its two radii, as deep as it is drawn; its volume is
// pi (R² - r²) h.
func TestEndGrooveVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		outer, wide, deep := figure("outer", 10, 28), figure("wide", 1, 5), figure("deep", 0.5, 15)
		end := rapid.SampledFrom([]model.Face{model.Left, model.Right}).Draw(t, "end")
		g := &model.Feature{Item: &model.Item{Kind: "groove", Label: "ring"}}
		g.On, g.Outer, g.Width = model.Sure([]model.Ref{{Face: end}}), size(outer), size(wide)
		g.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: deep}})
		k := turnedAlone(t, g)
		k.work(Target{Form: k.Part.Forms[0]})
		want := math.Pi * (outer*outer/4 - math.Pow(outer/2-wide, 2)) * deep
		if got := k.Before.Piece.Volume() - k.After.Piece.Volume(); math.Abs(got-want) > 2e-4*k.Before.Piece.Volume() {
			t.Errorf("takes %v mm³, %v by the formula", got, want)
		}
	})
}

// Law: a keyway in a bore takes its width times its depth along the bore, and besides that the two
// corners between its floor's plane and the round of the bore: the segment of the circle over its width.
func TestBoreKeyVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		d, wide, deep, angle := figure("bore", 8, 16), figure("wide", 2, 5), figure("deep", 0.5, 3), figure("angle", 0, 359)
		bore := &model.Feature{Item: &model.Item{Kind: "bore", Label: "seat"}}
		bore.Into, bore.Diameter = model.Sure(model.Ref{Face: model.Right}), size(d)
		key := &model.Feature{Item: &model.Item{Kind: "keyway", Label: "key"}}
		key.Into, key.Width, key.Direction = model.Sure(model.Ref{Item: bore.Item}), size(wide), model.Sure(angle)
		key.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: deep}})
		k := turnedAlone(t, bore, key)
		k.Before.Piece = k.Before.Piece.Cut(solid.Axle{}.Bore(-1, 41, d/2, "bore"))
		k.Before.Features = append([]*FeatureState{{Begun: true}}, k.Before.Features[1:]...)
		k.After = k.Before.next(k.Spot, k.Key)
		k.work(Target{Form: k.Part.Forms[1]})
		if w := k.Works[0].Wrong; w != "" {
			t.Fatal(w)
		}
		r := d / 2
		half := math.Asin(wide / 2 / r)
		under := r*r*half + wide/2*r*math.Cos(half) // of the circle, over the width and above the axis
		want := (wide*(r+deep) - under) * 40
		if got := k.Before.Piece.Volume() - k.After.Piece.Volume(); math.Abs(got-want) > 2e-4*k.Before.Piece.Volume() {
			t.Errorf("takes %v mm³, %v by the formula", got, want)
		}
	})
}

// Law: a vee groove takes a ring whose section is a trapezium: by Pappus, the middle of that section
// goes round the axis. A round groove as deep as half its width takes half a disc round it.
func TestGrooveFormVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		deep, angle, floor := figure("deep", 0.5, 5), figure("angle", 30, 90), figure("floor", 0.01, 3)
		flank := deep * math.Tan(angle/2*math.Pi/180)
		g := &model.Feature{Item: &model.Item{Kind: "groove", Label: "ring"}}
		g.On, g.At = model.Sure([]model.Ref{{Text: "outside"}}), model.Sure([]model.Position{{Short: []drawing.Size{{Nominal: 20}}}})
		g.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: deep}})
		g.Form, g.Angle, g.Width = model.Sure("vee"), model.Sure(angle), size(2*flank+floor)
		// Two triangles, their middles a third down, and a rectangle.
		want := 2 * math.Pi * (deep*flank*(15-deep/3) + deep*floor*(15-deep/2))
		if rapid.Bool().Draw(t, "round") {
			g.Form, g.Width = model.Sure("round"), size(2*deep)
			want = 2 * math.Pi * math.Pi * deep * deep / 2 * (15 - 4*deep/(3*math.Pi))
		}
		k := turnedAlone(t, g)
		k.work(Target{Form: k.Part.Forms[0]})
		got := k.Before.Piece.Volume() - k.After.Piece.Volume()
		// Of a curve at most solid.Within is left standing over its arc.
		if slack := 2e-4*k.Before.Piece.Volume() + 2*math.Pi*15*math.Pi*deep*solid.Within; math.Abs(got-want) > slack {
			t.Errorf("takes %v mm³, %v by the formula", got, want)
		}
	})
}

// Law: the same in a bore of 16 mm of a bar of 30 mm: from the wall of the bore outwards. The half
// section has the same metal as the solid, but for what chords leave.
func TestBoreGrooveVolume(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		deep, angle, floor := figure("deep", 0.5, 5), figure("angle", 30, 90), figure("floor", 0.01, 3)
		flank := deep * math.Tan(angle/2*math.Pi/180)
		bore := &model.Feature{Item: &model.Item{Kind: "bore", Label: "seat"}}
		bore.Into, bore.Diameter = model.Sure(model.Ref{Face: model.Right}), size(16)
		g := &model.Feature{Item: &model.Item{Kind: "groove", Label: "ring"}}
		g.On, g.At = model.Sure([]model.Ref{{Item: bore.Item}}), model.Sure([]model.Position{{Short: []drawing.Size{{Nominal: 20}}}})
		g.Depth = model.Sure(model.Depth{Size: drawing.Size{Nominal: deep}})
		g.Form, g.Angle, g.Width = model.Sure("vee"), model.Sure(angle), size(2*flank+floor)
		want := 2 * math.Pi * (deep*flank*(8+deep/3) + deep*floor*(8+deep/2))
		if rapid.Bool().Draw(t, "round") {
			g.Form, g.Width = model.Sure("round"), size(2*deep)
			want = 2 * math.Pi * math.Pi * deep * deep / 2 * (8 + 4*deep/(3*math.Pi))
		}
		k := turnedAlone(t, bore, g)
		k.work(Target{Form: k.Part.Forms[0]})
		k.Before = k.After
		k.After = k.Before.next(k.Spot, k.Key)
		k.work(Target{Form: k.Part.Forms[1]})
		got := k.Before.Piece.Volume() - k.After.Piece.Volume()
		slack := 2e-4*k.Before.Piece.Volume() + 2*math.Pi*13*math.Pi*deep*solid.Within
		if math.Abs(got-want) > slack {
			t.Errorf("takes %v mm³, %v by the formula", got, want)
		}
		if half := k.Before.Profile.metal() - k.After.Profile.metal(); math.Abs(half-want) > slack {
			t.Errorf("the half section loses %v mm³, %v by the formula", half, want)
		}
	})
}

// metal is the volume of a turned piece by its half section: each zone a frustum less a frustum.
func (p Profile) metal() float64 {
	sum := 0.0
	for _, z := range p {
		sum += math.Pi / 3 * (z.X1 - z.X0) * (z.Out0*z.Out0 + z.Out0*z.Out1 + z.Out1*z.Out1 - z.In0*z.In0 - z.In0*z.In1 - z.In1*z.In1)
	}
	return sum
}

// turnedAlone is an operation on a bar of 30 mm, 40 mm long, with nothing over, that holds neither end.
func turnedAlone(t *rapid.T, fs ...*model.Feature) *Turn {
	m := &model.Part{Item: &model.Item{Kind: "part", Label: "pin"}, Length: size(40), Diameter: size(30), Features: fs}
	p := Ready(&model.Build{Parts: []*model.Part{m}}, m)
	p.blank(nil)
	for _, f := range p.Forms {
		if f.Wrong != "" || len(f.Lacks) > 0 {
			t.Fatal(f.Name(), f.Wrong, f.Lacks)
		}
	}
	s := p.start()
	h := &Chucking{Part: p, Before: s, Sign: 1, Choice: ChuckChoice{Centres: true}}
	k := &Turn{Hold: h, Part: p, Before: s, Own: s, Step: &Step{}}
	k.After = s.next(k.Spot, k.Key)
	return k
}
