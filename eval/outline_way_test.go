package eval

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// leverDrawn is a plate 60 x 40 with one rounded corner, one hollow and one slanting edge, and a slot
// with round ends and an arc within it.
func leverDrawn(t *rapid.T) (edge, room *model.Feature, hollow float64) {
	figure := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	at := func(xs ...float64) []model.Position {
		var out []model.Position
		for i := 0; i < len(xs); i += 2 {
			out = append(out, model.Position{Short: []drawing.Size{{Nominal: xs[i]}, {Nominal: xs[i+1]}}})
		}
		return out
	}
	arc := func(from int, r float64) model.OutlineArc {
		return model.OutlineArc{From: model.Sure(from), Radius: model.Sure(r)}
	}
	round, slant, half := figure("round", 2, 12), figure("slant", 2, 12), figure("half", 3, 6)
	hollow = half * figure("flatter", 1.0, 2)
	edge = &model.Feature{Item: &model.Item{Kind: "outline", Label: "edge"}}
	// From the front left corner, anticlockwise or clockwise: a hollow in the back edge, a slanting corner.
	points := []float64{0, 0, 60 - round, 0, 60, round, 60, 40, 30 + half, 40, 30 - half, 40, slant, 40, 0, 40 - slant}
	arcs := []model.OutlineArc{arc(2, round), arc(5, -hollow)}
	if rapid.Bool().Draw(t, "clockwise") {
		n := len(points) / 2
		var back []float64
		for i := n - 1; i >= 0; i-- {
			back = append(back, points[2*i], points[2*i+1])
		}
		points = back
		arcs = []model.OutlineArc{arc(n-2, round), arc(n-5, -hollow)}
	}
	edge.Points, edge.Arcs = model.Sure(at(points...)), arcs
	room = &model.Feature{Item: &model.Item{Kind: "outline", Label: "room"}}
	w := figure("slot", 4, 6)
	room.Points, room.Opening = model.Sure(at(15, 12, 40, 12, 40, 12+w, 15, 12+w)), model.Sure(true)
	room.Arcs = []model.OutlineArc{arc(2, w/2), arc(4, w/2)}
	for _, f := range []*model.Feature{edge, room} {
		f.Into = model.Sure(model.Ref{Face: model.Top})
	}
	return edge, room, hollow
}

// Law: the cutter that goes round an outline touches what is left and goes into it nowhere by more
// than the chords of its arcs do, and the middle of every edge lies as far from its way as its radius.
func TestOutlineWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge, room, _ := leverDrawn(t)
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "lever"}, Length: size(60), Width: size(40), Thickness: size(5),
			Features: []*model.Feature{edge, room}}
		p := Ready(&model.Build{Parts: []*model.Part{m}}, m)
		for i, f := range p.Forms {
			if f.Wrong != "" || len(f.Lacks) > 0 {
				t.Fatal(f.Wrong, f.Lacks)
			}
			left := solid.Raw(solid.Box(solid.Vec{}, p.Size)).Cut(f.Trim...)
			r := [2]float64{2.5, 1.5}[i]
			s := &State{}
			for _, face := range model.Faces {
				s.Faces[face].At = p.FaceAt(face) + 3*face.Sign()
			}
			h := &Holding{Part: p, Hi: p.Size, Pose: solid.Attitude(solid.Vec{0, 0, 1}, solid.Vec{0, 1, 0})}
			k := &Cut{Part: p, Before: s, Hold: h}
			moves, _, wrong := k.outlineMoves(f, r)
			if wrong != "" {
				t.Fatal(wrong)
			}
			placed := left.Placed(h.Pose)
			near := make([]float64, len(f.Way.Edges))
			for j := range near {
				near[j] = math.Inf(1)
			}
			for _, mv := range moves {
				if slim := r - 0.03; placed.Gap(solid.Turned{Z0: 0, Z1: 20, R0: slim, R1: slim}, mv).Gap < 0 {
					t.Errorf("%s: the cutter goes more than 0.03 mm into what is left, from %v to %v", f.Name(), mv.From, mv.To)
				}
				for j, e := range f.Way.Edges {
					c := e.chords()
					mid := e.A
					if len(c) > 1 {
						mid = c[(len(c)-1)/2]
					} else {
						mid = [2]float64{(e.A[0] + e.B[0]) / 2, (e.A[1] + e.B[1]) / 2}
					}
					v := h.Pose.Point(f.Way.Frame.Point(mid[0], mid[1], 0))
					near[j] = math.Min(near[j], flatGap(v, mv))
				}
			}
			for _, s := range f.Sweeps(r) {
				found := false
				for _, mv := range moves {
					a, b := h.Pose.Inverse().Point(mv.From), h.Pose.Inverse().Point(mv.To)
					mid := a.Add(b).Times(0.5).Sub(s.Middle)
					found = found || math.Abs(math.Hypot(mid[0], mid[1])-s.Tool) < 0.05 && a.Sub(b).Len() > 0
				}
				if !found && s.Tool > 0.1 {
					t.Errorf("%s: nothing of its way lies %v mm from the middle of an arc of %v mm", f.Name(), s.Tool, s.Arc)
				}
			}
			for j, d := range near {
				if math.Abs(d-r) > 0.03 {
					t.Errorf("%s: the way passes edge %d at %v mm, with a radius of %v", f.Name(), j+1, d, r)
				}
			}
		}
	})
}

// flatGap is how far a place lies from a straight way, seen from above.
func flatGap(v solid.Vec, m solid.Move) float64 {
	a, b := m.From, m.To
	v[2], a[2], b[2] = 0, 0, 0
	d := b.Sub(a)
	l := d.Dot(d)
	if l == 0 {
		return v.Sub(a).Len()
	}
	return v.Sub(a.Add(d.Times(math.Max(0, math.Min(1, v.Sub(a).Dot(d)/l))))).Len()
}

// Law: a cutter larger than a hollow of an outline does not go into it, a smaller one does.
func TestOutlineHollow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		edge, _, hollow := leverDrawn(t)
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "lever"}, Length: size(60), Width: size(40), Thickness: size(5), Features: []*model.Feature{edge}}
		f := Ready(&model.Build{Parts: []*model.Part{m}}, m).Forms[0]
		if r, ok := f.Hollow(); !ok || math.Abs(r-hollow) > 1e-9 {
			t.Errorf("its least hollow is %v, drawn %v", r, hollow)
		}
		if f.Sharp() {
			t.Error("it has no sharp hollow corner")
		}
	})
}
