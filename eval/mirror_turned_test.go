package eval

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Law: a part whose every place counts from the left end is, in the mirror, the part with the same
// figures counted from the right end, what goes into its left end into the right.
func TestMirrorOfTurnedLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		long, shoulder, deep := figure("long", 40, 60), figure("shoulder", 8, 15), figure("deep", 3, 20)
		groove, key, cross, angle := figure("groove", 20, 30), figure("key", 16, 19), figure("cross", 20, 35), figure("angle", 0, 359)
		aside, boss := figure("aside", 1, 4), figure("boss", 5, 8)
		drawn := func(end model.Face) []*model.Feature {
			at := func(x float64) model.Position {
				return model.Position{Coords: []model.Coordinate{{Datum: model.Ref{Face: end}, Size: drawing.Size{Nominal: x}}}}
			}
			named := func(kind, label string) *model.Feature {
				return &model.Feature{Item: &model.Item{Kind: kind, Label: label}}
			}
			small := named("outside", "small")
			small.Diameter, small.From, small.To = size(12), model.Sure(at(0)), model.Sure(at(shoulder))
			bore := named("bore", "hollow")
			bore.Into, bore.Diameter = model.Sure(model.Ref{Face: end}), size(6)
			bore.From, bore.To = model.Sure(at(0)), model.Sure(at(deep))
			ring := named("groove", "ring")
			ring.At, ring.Width, ring.Diameter = model.Sure([]model.Position{at(groove)}), size(2), size(15)
			ring.On = model.Sure([]model.Ref{{Text: "outside"}})
			cone := named("taper", "cone")
			cone.On, cone.From, cone.To = model.Sure([]model.Ref{{Item: small.Item}}), model.Sure(at(0)), model.Sure(at(shoulder/2))
			cone.Small = size(9)
			seat := named("keyway", "seat")
			seat.Into, seat.Width, seat.Depth = model.Sure(model.Ref{Text: "outside"}), size(3), model.Sure(model.Depth{Size: drawing.Size{Nominal: 1.5}})
			seat.From, seat.To, seat.Direction = model.Sure(at(key)), model.Sure(at(key+3)), model.Sure(angle)
			off := named("outside", "off")
			off.Diameter, off.From, off.To = size(2*boss), model.Sure(at(long-5)), model.Sure(at(long))
			off.Eccentric = model.Eccentric{Said: true, By: size(aside), Towards: model.Sure(angle)}
			rim := named("chamfer", "rim")
			rim.On, rim.Size = model.Sure([]model.Ref{{Item: small.Item}, {Face: end}}), size(1)
			return []*model.Feature{small, bore, ring, cone, seat, off, rim, crossHole(at(cross), angle)}
		}
		right := &model.Part{Item: &model.Item{Kind: "part", Label: "right"}, Length: size(long), Diameter: size(30), Features: drawn(model.Left)}
		left := &model.Part{Item: &model.Item{Kind: "part", Label: "left"}, MirrorOf: model.Sure(model.Ref{Item: right.Item})}
		hand := &model.Part{Item: &model.Item{Kind: "part", Label: "by hand"}, Length: size(long), Diameter: size(30), Features: drawn(model.Right)}
		b := &model.Build{Parts: []*model.Part{right, left, hand}}
		p, q := Ready(b, left), Ready(b, hand)
		if p.Unplayed != "" || q.Unplayed != "" {
			t.Fatal(p.Unplayed, q.Unplayed)
		}
		for i, f := range p.Forms {
			if f.Wrong != "" || len(f.Lacks) > 0 {
				t.Fatal(f.Name(), f.Wrong, f.Lacks)
			}
			alike(t, f, q.Forms[i])
		}
	})
}

// crossHole is a hole square to the axis, in the part's own outside.
func crossHole(at model.Position, angle float64) *model.Feature {
	h := &model.Feature{Item: &model.Item{Kind: "hole", Label: "cross"}}
	h.Into, h.Diameter = model.Sure(model.Ref{Text: "outside"}), size(3)
	h.At = model.Sure([]model.Position{at})
	h.Around.Said, h.Around.Count, h.Around.Start = true, model.Sure(2), model.Sure(angle)
	return h
}

// alike says where two forms differ.
func alike(t *rapid.T, f, g *Form) {
	same := func(what string, a, b float64) {
		if math.Abs(a-b) > 1e-9 {
			t.Errorf("%s: %s is %v, drawn by hand %v", f.Name(), what, a, b)
		}
	}
	vec := func(what string, a, b solid.Vec) { same(what, a.Sub(b).Len(), 0) }
	if len(f.Mouths) == 0 {
		vec("low", f.Lo, g.Lo)
		vec("high", f.Hi, g.Hi)
	}
	vec("way in", f.Dir, g.Dir)
	vec("line", f.About.At, g.About.At)
	same("face", float64(f.Into.Face), float64(g.Into.Face))
	same("face at", f.Into.At, g.Into.At)
	if f.Open != g.Open || len(f.Mouths) != len(g.Mouths) || len(f.Spins) != len(g.Spins) || (f.Lathe == nil) != (g.Lathe == nil) {
		t.Fatalf("%s: %+v, drawn by hand %+v", f.Name(), f, g)
	}
	for i := range f.Mouths {
		vec("mouth", f.Mouths[i], g.Mouths[i])
	}
	for i := range f.Spins {
		same("angle", f.Spins[i], g.Spins[i])
	}
	if l, m := f.Lathe, g.Lathe; l != nil {
		same("left", l.X0, m.X0)
		same("right", l.X1, m.X1)
		same("radius left", l.R0, m.R0)
		same("radius right", l.R1, m.R1)
	}
	for _, end := range []string{"left", "right"} {
		a, ok := f.face(end)
		b, ok2 := g.face(end)
		if ok != ok2 || a != b && math.Abs(a.At-b.At) > 1e-9 || a.Face != b.Face {
			t.Errorf("%s.%s: %v, drawn by hand %v", f.Name(), end, a, b)
		}
	}
}
