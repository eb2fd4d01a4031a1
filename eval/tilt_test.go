package eval

import (
	"math"
	"testing"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"

	"pgregory.net/rapid"
)

// Law: the lean that is found turns the direction up, and a lean written for a vise that is
// turned on its table is, seen from the machine, a turn about the machine's own axis.
func TestLeans(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		up := model.Faces[rapid.IntRange(0, 5).Draw(r, "up")]
		back := model.Faces[rapid.IntRange(0, 5).Draw(r, "back")]
		if up.Axis() == back.Axis() {
			return
		}
		by := rapid.Float64Range(1, 79).Draw(r, "by") * math.Pi / 180
		to := model.Faces[rapid.IntRange(0, 5).Draw(r, "towards")]
		if to.Axis() == up.Axis() {
			return
		}
		dir := Normal(up).Times(math.Cos(by)).Add(Normal(to).Times(math.Sin(by)))
		l, ok := ToLookUp(up, back, dir)
		if !ok {
			r.Fatal("no lean is found")
		}
		pose := after(l.pose(), solid.Attitude(Normal(up), Normal(back)))
		if d := pose.Dir(dir); d[2] < 1-1e-9 {
			r.Fatalf("it looks along %v", d)
		}
		if !near(math.Abs(l.By), by*180/math.Pi) {
			r.Errorf("it leans %v degrees, not %v", l.By, by*180/math.Pi)
		}
		turned := float64(90 * rapid.IntRange(0, 3).Draw(r, "turned"))
		if back := l.OnTable(turned).FromTable(turned); back != l {
			r.Errorf("%v comes back as %v", l, back)
		}
		vise := Lean{2, turned}.pose() // from the vise's frame to the machine's
		v := solid.Vec{0.3, -0.5, 0.8}
		a := vise.Dir(l.pose().Dir(v))
		b := l.OnTable(turned).pose().Dir(vise.Dir(v))
		if a.Sub(b).Len() > 1e-9 {
			r.Errorf("in the vise %v, on the table %v", a, b)
		}
	})
}

// A hole of diameter d through a thickness t, leaning by an angle, takes pi d²/4 · t / cos.
func TestTiltedHole(t *testing.T) {
	for _, by := range []float64{0, 5, 30, 60} {
		h := &model.Feature{Item: &model.Item{Kind: "hole", Label: "oil"}}
		h.Into = model.Sure(model.Ref{Face: model.Top})
		h.At = model.Sure([]model.Position{{Short: []drawing.Size{{Nominal: 60}, {Nominal: 20}}}})
		h.Diameter = model.Sure(drawing.Size{Nominal: 4})
		h.Tilted = model.Tilted{Said: true, Towards: model.Sure(model.Ref{Face: model.Right}), By: model.Sure(by)}
		m := &model.Part{Item: &model.Item{Kind: "part", Label: "b"}, Features: []*model.Feature{h}}
		m.Length, m.Width, m.Height = model.Sure(drawing.Size{Nominal: 200}), model.Sure(drawing.Size{Nominal: 40}), model.Sure(drawing.Size{Nominal: 20})
		p := Ready(&model.Build{}, m)
		p.Blank.Lo, p.Blank.Hi = p.Low, p.High()
		p.Blank.Shape = solid.Box(p.Low, p.High())
		s := p.start()
		f := p.Forms[0]
		k := &Cut{Part: p, Before: s, After: s, Choice: CutChoice{By: "boring"}, Step: &Step{Work: &Work{}}, Hold: &Holding{Part: p, Pose: unturned}}
		w := k.holeAt(Target{Form: f}, f.Into, f.Mouths[0], &FeatureState{})
		got := s.Piece.Volume() - s.Piece.Cut(w.Took...).Volume()
		want := math.Pi * 4 * 20 / math.Cos(by*math.Pi/180)
		if math.Abs(got-want) > 1e-3*want {
			t.Errorf("leaning %v degrees it takes %v mm³, not %v", by, got, want)
		}
	}
}
