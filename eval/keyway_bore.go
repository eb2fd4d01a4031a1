package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A keyway in a bore is planed on a lathe: the spindle is held still, and a tool as wide as the key,
// in a bar, is pushed through the bore by the saddle again and again. Or it is broached under a press.
// Either way the tool must come out at the other end, into the open or into a recess.

// KeyBore is a keyway in a bore. Places X lie along the line of the bore; lengths are mm.
type KeyBore struct {
	X0, X1 float64
	Bore   *Form   // the bore or hole that it lies in
	Radius float64 // of the bore, finished
	Deep   float64 // from the round surface at the keyway's middle
	Angle  float64 // degrees, from top towards back as the line is seen
}

// keyBoreShape shapes a keyway in a bore; false where what it goes into is none.
func (p *Part) keyBoreShape(f *Form) bool {
	m := f.Feature
	g := p.FormOf(m.Into.V.Item)
	if g == nil || m.Sort.V == "woodruff" {
		return false
	}
	b := KeyBore{Bore: g, Deep: m.Depth.V.Size.Nominal, Angle: m.Direction.Or(0)}
	switch about, ok := p.axisOf(Target{Form: g}); {
	case !ok:
		return false
	case g.Lathe != nil && !g.Lathe.Inside:
		return false
	case g.Lathe != nil:
		f.About, b.X0, b.X1, b.Radius = about, g.Lathe.X0, g.Lathe.X1, g.Lathe.R0
	default:
		f.About = about
		far := g.Into.At - g.Into.Face.Sign()*g.Depth.V
		b.X0, b.X1, b.Radius = math.Min(g.Into.At, far), math.Max(g.Into.At, far), g.Diameter.Or(0)/2
		f.lack(g.Diameter.Missing())
	}
	f.lack(m.Width.Missing())
	f.lack(m.Depth.Missing())
	f.lack(g.Lacks)
	f.Into, f.Dir = g.Into, g.Dir
	bore0, bore1 := b.X0, b.X1
	x0, x1, ok := p.stretch(f, b.X0, b.X1)
	if !ok || len(f.Lacks) > 0 {
		return true
	}
	b.X0, b.X1 = x0, x1
	f.Width = m.Width.V.Nominal
	switch {
	case g.Wrong != "":
		f.Wrong = "the bore that it is cut in has no shape: " + g.Wrong
	case x0 < bore0-model.Grain || x1 > bore1+model.Grain:
		f.Wrong = "it runs beyond its bore, which reaches from " + model.Figure(bore0) + " to " + model.Figure(bore1) + " mm"
	case !(f.Width > 0) || !(b.Deep > 0) || f.Width >= 2*b.Radius:
		f.Wrong = "a keyway has a width below the diameter of its bore and a depth above nought"
	}
	f.KeyBore = &b
	f.Along = f.About.Along
	f.Lo, f.Hi = f.keyRoom()
	return true
}

// KeyEnd is one end of a keyway in a bore.
type KeyEnd struct {
	X      float64
	Out    bool  // the tool comes out there, into the open or into a recess as deep
	Recess *Form // the recess; nil in the open
}

// KeyEnds are the left and the right end of a keyway in a bore, as the drawing has them.
func (p *Part) KeyEnds(f *Form) (left, right KeyEnd) {
	return p.keyEnd(f, f.KeyBore.X0, -1), p.keyEnd(f, f.KeyBore.X1, 1)
}

func (p *Part) keyEnd(f *Form, x, sign float64) KeyEnd {
	return p.comesOut(f.About, f.KeyBore.Bore, x, sign, f.KeyBore.Radius+f.KeyBore.Deep)
}

// comesOut says whether a tool that is pushed along a bore, so far from its line, comes out at a place:
// at an end of the part, or in another bore or recess that is as deep, wherever in it.
func (p *Part) comesOut(about Axis, bore *Form, x, sign, reach float64) KeyEnd {
	along := about.Along
	if sign < 0 && near(x, p.Low[along]) || sign > 0 && near(x, p.High()[along]) {
		return KeyEnd{X: x, Out: true}
	}
	for _, g := range p.Forms {
		l := g.Lathe
		if l != nil && l.Inside && l.End == model.NoFace && g.Wrong == "" && g.About.Same(about) && x > l.X0-model.Grain && x < l.X1+model.Grain &&
			g != bore && math.Min(l.R0, l.R1) >= reach-model.Same {
			return KeyEnd{x, true, g}
		}
	}
	return KeyEnd{X: x}
}

// keyFrame is the frame of the keyway: along the bore, its floor looking back to the line.
func (f *Form) keyFrame() solid.Frame {
	sin, cos := math.Sincos(f.KeyBore.Angle * math.Pi / 180)
	var along, out solid.Vec
	along[f.About.Along] = 1
	out[(f.About.Along+2)%3], out[(f.About.Along+1)%3] = cos, sin
	return solid.On(f.About.At, along, out)
}

// keyTook is what the keyway takes, from the line of its bore out to its floor.
func (f *Form) keyTook(x0, x1, deep float64) solid.Removal {
	return solid.Removal{Take: f.keyFrame().Block(solid.Vec{x0, -f.Width / 2, 0}, solid.Vec{x1, f.Width / 2, f.KeyBore.Radius + deep}), By: f.Name()}
}

// keyRoom is the room of the keyway along the axes of the part.
func (f *Form) keyRoom() (lo, hi solid.Vec) {
	b, fr := f.KeyBore, f.keyFrame()
	first := true
	for _, x := range [2]float64{b.X0, b.X1} {
		for _, y := range [2]float64{-f.Width / 2, f.Width / 2} {
			for _, z := range [2]float64{b.Radius, b.Radius + b.Deep} {
				v := fr.Point(x, y, z)
				for i := range 3 {
					if first || v[i] < lo[i] {
						lo[i] = v[i]
					}
					if first || v[i] > hi[i] {
						hi[i] = v[i]
					}
				}
				first = false
			}
		}
	}
	return lo, hi
}

// keyDeep is how deep the step brings the keyway.
func keyDeep(f *Form, st *model.Step) float64 {
	if st == nil {
		return f.KeyBore.Deep
	}
	deep := f.KeyBore.Deep - st.Leaves.V
	if st.DownTo.Depth.Is() {
		deep = math.Min(deep, st.DownTo.Depth.V)
	}
	return deep
}

// planed planes a keyway in a bore on the lathe, the spindle held.
func (k *Turn) planed(w *Turning) {
	f := w.Target.Form
	b := f.KeyBore
	w.X0, w.X1, w.R0, w.R1, w.Inside = b.X0, b.X1, b.Radius, b.Radius, true
	k.reach(w)
	w.Width, w.Depth = f.Width, b.X1-b.X0
	least, most := f.About.Ends()
	fs := k.Part.change(k.After, f)
	deep := keyDeep(f, k.Step.Step)
	left, right := k.Part.KeyEnds(f)
	switch {
	case !begun(k.Part, k.Before, b.Bore):
		w.Wrong = b.Bore.Name() + ", in which it lies, is not made yet"
	case k.heldEnd() == least && !right.Out, k.heldEnd() == most && !left.Out:
		w.Wrong = "the tool comes in from the free end, and it does not reach that end"
	}
	w.Off, w.Final, w.Done = deep, near(deep, b.Deep), fs.Finished
	took := f.keyTook(k.through(w, b, deep))
	if !k.Part.Own(k.Hold.About) {
		took = turnedBack(took, k.Hold.About.Pose())
	}
	k.After.Piece = k.After.Piece.Cut(took)
	k.done(fs, 2*b.Radius, w.Final)
	fs.Depth = deep
}

// through lets a keyway that comes out at an end of the part go on through the metal over that end.
func (k *Turn) through(w *Turning, b *KeyBore, deep float64) (x0, x1, d float64) {
	x0, x1 = b.X0, b.X1
	lo, hi, ok := k.Before.Profile.Ends()
	along := k.Hold.About.Along
	if ok && near(x0, k.Part.Low[along]) {
		x0 = math.Min(x0, lo)
	}
	if ok && near(x1, k.Part.High()[along]) {
		x1 = math.Max(x1, hi)
	}
	return x0, x1, deep
}

// keyInBore broaches or files a keyway in a bore by hand; under a spindle no cutter comes to it.
func (k *Cut) keyInBore(t Target) {
	f := t.Form
	b := f.KeyBore
	fs := k.Part.change(k.After, f)
	deep := keyDeep(f, k.Step.Step)
	w := Working{Target: t, Entry: f.Into, Depth: deep, Run: b.X1 - b.X0, Took: []solid.Removal{f.keyTook(b.X0, b.X1, deep)}}
	switch {
	case !begun(k.Part, k.Before, b.Bore):
		w.Wrong = b.Bore.Name() + ", in which it lies, is not made yet"
	case k.Step.Work.Kind == "setup" && !k.Choice.ByHand:
		w.Wrong = "it lies within a bore, where no cutter on a spindle comes: it is planed on a lathe with the spindle held, or broached at the bench"
	}
	w.Facing = w.Wrong == ""
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Depth, fs.ByProcess, fs.By = true, deep, k.Choice.By, k.Spot
	fs.Finished = near(deep, b.Deep)
	w.Final = fs.Finished
	k.took(w)
}

// Begun says whether a feature is made as far as a step of it goes.
func (p *Part) Begun(s *State, f *Form) bool { return begun(p, s, f) }

// begun says whether a feature is made as far as a step of it goes.
func begun(p *Part, s *State, f *Form) bool {
	fs := p.Feature(s, p.FormOf(f.Feature.Item))
	return fs != nil && fs.Begun
}
