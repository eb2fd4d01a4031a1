package eval

import (
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"

	"pgregory.net/rapid"
)

// anyTurn is one of the 24 ways that axes lie on axes, shifted by whole and half millimetres.
func anyTurn(r *rapid.T) solid.Pose {
	up := model.Faces[rapid.IntRange(0, 5).Draw(r, "up")]
	back := model.Faces[rapid.IntRange(0, 5).Draw(r, "back")]
	if up.Axis() == back.Axis() {
		back = model.FaceOn((up.Axis()+1)%3, 1)
	}
	var by solid.Vec
	for i := range by {
		by[i] = float64(rapid.IntRange(-80, 80).Draw(r, "shift")) / 2
	}
	return solid.Attitude(Normal(up), Normal(back)).Shifted(by)
}

func sized(x float64) drawing.Size { return drawing.Size{Nominal: x} }

// block is 40 × 30 × 20 with a hole, a slot, a pocket and a step.
func blockOf(label string) *Part {
	feature := func(kind, name string, into model.Face) *model.Feature {
		f := &model.Feature{Item: &model.Item{Kind: kind, Label: name}}
		f.Into = model.Sure(model.Ref{Face: into})
		return f
	}
	at := func(f *model.Feature, xs ...float64) {
		p := model.Position{}
		for _, x := range xs {
			p.Short = append(p.Short, sized(x))
		}
		f.At = model.Sure([]model.Position{p})
	}
	deep := func(f *model.Feature, d float64) { f.Depth = model.Sure(model.Depth{Size: sized(d)}) }
	hole := feature("hole", "h", model.Front)
	hole.Diameter = model.Sure(sized(6))
	at(hole, 10, 8)
	deep(hole, 11)
	slot := feature("slot", "s", model.Top)
	slot.Width = model.Sure(sized(4))
	slot.At = model.Sure([]model.Position{{Coords: []model.Coordinate{{Datum: model.Ref{Face: model.Left}, Size: sized(12)}}}})
	deep(slot, 3)
	step := feature("step", "e", model.Top)
	step.Side = model.Sure(model.Ref{Face: model.Right})
	step.Width = model.Sure(sized(5))
	deep(step, 6)
	m := &model.Part{Item: &model.Item{Kind: "part", Label: label}, Features: []*model.Feature{hole, slot, step}}
	m.Length, m.Width, m.Height = model.Sure(sized(40)), model.Sure(sized(30)), model.Sure(sized(20))
	return Ready(&model.Build{}, m)
}

// Law: laid where its part sits, a form is where its part's pose carries it: its room, its mouth and
// the way in, the face that it goes into, its floor, and the walls that look each its way.
func TestFormsPlaced(t *testing.T) {
	p := blockOf("b")
	for _, f := range p.Forms {
		if f.Wrong != "" || len(f.Lacks) > 0 {
			t.Fatal(f.Name(), f.Wrong, f.Lacks)
		}
	}
	rapid.Check(t, func(r *rapid.T) {
		q := anyTurn(r)
		m := Member{Part: p, Pose: q}
		for i, g := range m.forms(p) {
			f := p.Forms[i]
			if g.Owner != p || g.Own != f || g.Name() != "part.b."+f.Name() {
				r.Fatalf("%s is not known as its part's own", g.Name())
			}
			a, b := q.Point(f.Lo), q.Point(f.Hi)
			for n := range 3 {
				if !near(min(a[n], b[n]), g.Lo[n]) || !near(max(a[n], b[n]), g.Hi[n]) {
					r.Fatalf("%s takes the room %v to %v", g.Name(), g.Lo, g.Hi)
				}
			}
			for n := range f.Mouths {
				if q.Point(f.Mouths[n]).Sub(g.Mouths[n]).Len() > model.Grain || q.Dir(f.Dir).Sub(g.Dir).Len() > 1e-9 {
					r.Fatalf("its mouth lies at %v", g.Mouths[n])
				}
			}
			for _, sub := range []string{"floor", "left", "right", "front", "back", "bottom", "top"} {
				from, ok := f.face(sub)
				to := sub
				if face, is := model.ParseFace(sub); is {
					to = placedFace(q, face).String()
				}
				got, ok2 := g.face(to)
				if want := placedPlane(q, from); ok != ok2 || ok && (got.Face != want.Face || !near(got.At, want.At)) {
					r.Fatalf("the %s of %s lies at %v, want %v (%v, %v)", to, g.Name(), got, want, ok, ok2)
				}
			}
		}
	})
}

// Law: where two shafts that are not in one line and a face that is touched say where a part sits, it
// is found there, whichever way it is turned; two lines alone leave open how far it goes in.
func TestPlacesFollow(t *testing.T) {
	tr := &Trace{Build: &model.Build{}}
	rapid.Check(t, func(r *rapid.T) {
		q := anyTurn(r)
		line := func(at solid.Vec) anchor {
			dir := solid.Vec{0, 0, 1}
			return anchor{own: at, ownDir: dir, other: q.Point(at).Add(q.Dir(dir).Times(7)), otherDir: q.Dir(dir), facing: true, line: true}
		}
		one := solid.Vec{3, 4, 0}
		two := one.Add(solid.Vec{float64(rapid.IntRange(1, 9).Draw(r, "x")), float64(rapid.IntRange(10, 19).Draw(r, "y")), 0})
		touch := anchor{own: solid.Vec{0, 0, 5}, ownDir: solid.Vec{0, 0, -1}, other: q.Point(solid.Vec{0, 0, 5}), otherDir: q.Dir(solid.Vec{0, 0, -1}), facing: true, deep: true}
		found := 0
		for _, turn := range tr.turns(nil, nil) {
			if _, whole, ok := solve(turn, []anchor{line(one), line(two)}, nil, nil); ok && whole {
				r.Fatal("how far it goes in is known from lines alone")
			}
			got, whole, ok := solve(turn, []anchor{line(one), line(two), touch}, nil, nil)
			if !ok || !whole {
				continue
			}
			found++
			for _, v := range []solid.Vec{{}, {1, 0, 0}, {0, 1, 0}, {0, 0, 1}} {
				if got.Point(v).Sub(q.Point(v)).Len() > 0.01 {
					r.Fatalf("%v lies at %v, want %v", v, got.Point(v), q.Point(v))
				}
			}
		}
		if found != 1 {
			r.Fatalf("it may sit in %d ways", found)
		}
	})
}
