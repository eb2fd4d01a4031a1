package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"

	"pgregory.net/rapid"
)

// Law: leaning holes round a circle lean alike. Each makes the same angle with the face, and the same with
// the line from the middle of the circle to its own mouth.
func TestFanLeansAlike(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		face := model.Faces[rapid.IntRange(0, 5).Draw(r, "face")]
		beside := model.Faces[rapid.IntRange(0, 5).Draw(r, "towards")]
		if beside.Axis() == face.Axis() {
			r.Skip("it leans towards a face beside")
		}
		m := &model.Feature{}
		m.At = model.Sure([]model.Position{{}})
		n := rapid.IntRange(2, 12).Draw(r, "count")
		m.Around.Said, m.Around.Count = true, model.Sure(n)
		m.Around.Pcd = model.Sure(drawing.Size{Nominal: rapid.Float64Range(5, 50).Draw(r, "pcd")})
		m.Around.Start = model.Sure(rapid.Float64Range(0, 360).Draw(r, "start"))
		m.Around.Over = model.Sure(rapid.SampledFrom([]float64{90, 180, 270, 360}).Draw(r, "over"))
		lean := rapid.Float64Range(1, 60).Draw(r, "lean") * math.Pi / 180
		f := &Form{Feature: m, Into: Plane{Face: face}, Mouths: []solid.Vec{{}}}
		f.Dir = Normal(face).Times(-math.Cos(lean)).Add(Normal(beside).Times(math.Sin(lean)))
		a, b := across(face)
		f.around(a, b)
		(&Part{}).fan(f)
		if len(f.Dirs) != n {
			r.Fatalf("%d directions of %d holes", len(f.Dirs), n)
		}
		if f.Dirs[0].Sub(f.Dir).Len() > 1e-9 {
			r.Errorf("the first goes in along %v, not %v", f.Dirs[0], f.Dir)
		}
		in, out := f.Dir.Dot(Normal(face)), f.Dir.Dot(f.Mouths[0].Unit())
		side := f.Dir.Dot(Normal(face).Cross(f.Mouths[0].Unit()))
		for i, d := range f.Dirs {
			u := f.Mouths[i].Unit()
			if math.Abs(d.Dot(Normal(face))-in) > 1e-9 || math.Abs(d.Dot(u)-out) > 1e-9 || math.Abs(d.Dot(Normal(face).Cross(u))-side) > 1e-9 {
				r.Errorf("hole %d goes in along %v at %v", i, d, f.Mouths[i])
			}
		}
	})
}
