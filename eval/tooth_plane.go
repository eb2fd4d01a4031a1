package eval

import (
	"math"

	"fettle/schema/model"
)

// planedTeeth planes teeth on the lathe, gap by gap, the spindle turned on by what divides it and held
// from turning: in a bore, or along an outside that the tool comes out of at the held end.
func (k *Turn) planedTeeth(w *Turning) {
	f := w.Target.Form
	t := f.Tooth
	w.X0, w.X1, w.Inside = t.X0, t.X1, t.Inside
	w.R0, w.R1 = t.On, t.On
	k.reach(w)
	w.Width = f.Width
	deep := t.Deep
	if st := k.Step.Step; st != nil {
		deep -= st.Leaves.V
		if st.DownTo.Depth.Is() {
			deep = math.Min(deep, st.DownTo.Depth.V)
		}
	}
	w.Wrong = k.notPlaned(f)
	fs := k.Part.change(k.After, f)
	w.Off, w.Done, w.Final = deep, fs.Finished, deep >= t.Deep-model.Grain
	one := f.gap(deep, k.Part.outward())
	for _, s := range f.Spins { // in the frame of the line that turns
		for _, r := range one {
			k.After.Piece = k.After.Piece.Cut(turnedBack(r, towards(s).Inverse()))
		}
	}
	k.After.Profile = k.After.Profile.toothed(f, k.Spot)
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Depth, fs.Finished, fs.ByProcess, fs.By, fs.Turns = true, deep, w.Final, k.Choice.By, k.Spot, len(f.Spins)
}

// notPlaned says why teeth are not planed in this holding; "" if they are.
func (k *Turn) notPlaned(f *Form) string {
	t := f.Tooth
	left, right := k.Part.ToothEnds(f)
	far := left
	if _, most := f.About.Ends(); k.heldEnd() == most {
		far = right
	}
	switch {
	case k.Choice.By != "planing" && t.Inside:
		return "its gaps lie beside the axis that turns: they are planed one by one, the spindle held (by = \"planing\")"
	case k.Choice.By != "planing":
		return "its gaps lie beside the axis that turns: they are planed one by one, the spindle held (by = \"planing\"), or cut on a dividing head"
	case t.Lean != 0 || t.Throat != nil:
		return "its gaps are not straight along the axis, and the saddle goes straight"
	case t.Inside && f.On != nil && !begun(k.Part, k.Own, f.On):
		return f.On.Name() + ", in which they lie, is not made yet"
	case !t.Inside && !far.Out:
		return "the tool does not come out at their held end: metal stands higher than the floor of the gaps there"
	}
	return ""
}

// ToothEnds are the left and the right end of teeth, as the drawing has them: whether a tool that is
// pushed along their gaps comes out there.
func (p *Part) ToothEnds(f *Form) (left, right KeyEnd) {
	t := f.Tooth
	if t.Inside {
		return p.comesOut(f.About, f.On, t.X0, -1, t.Root), p.comesOut(f.About, f.On, t.X1, 1, t.Root)
	}
	end := func(x, sign float64) KeyEnd {
		e := KeyEnd{X: x, Out: sign < 0 && near(x, p.Low[0]) || sign > 0 && near(x, p.High()[0])}
		for _, g := range p.Forms {
			l := g.Lathe
			beside := l != nil && !l.Inside && g.Wrong == "" && g != f.On && (g.Feature.Kind == "outside" || g.Feature.Kind == "groove")
			if beside && (sign < 0 && near(l.X1, x) || sign > 0 && near(l.X0, x)) && math.Max(l.R0, l.R1) <= t.Root+model.Same {
				e.Out, e.Recess = true, g
			}
		}
		return e
	}
	return end(f.Lo[0], -1), end(f.Hi[0], 1)
}
