package eval

import (
	"math"

	"fettle/eval/reckon/gear"
	"fettle/schema/model"
)

// wormShape lays a worm on its outside: its thread is an envelope, cut on the lathe like any
// other thread.
func (p *Part) wormShape(f *Form) {
	g, ok := p.surface(f, f.Feature.On.V, false)
	if !ok {
		if f.Wrong == "" {
			f.Wrong = "it does not lie on a turned surface of this part"
		}
		return
	}
	k := f.Feature.AxialModule()
	if !k.Is() {
		f.lack(k.Missing())
		return
	}
	on := p.reach(g)
	x0, x1, ok := p.stretch(f, on.X0, on.X1)
	if !ok {
		return
	}
	f.Lathe = &Lathe{X0: x0, X1: x1, R0: on.R0, R1: on.R1, On: g}
	if down := gear.UsualDepth(f.Feature.PressureAngle.Or(20)).Whole * k.V; down >= math.Min(on.R0, on.R1) {
		f.Wrong = "nothing is left inside its thread, which is " + model.Figure(down) + " mm deep on a radius of " + model.Figure(on.R0) + " mm"
	}
}

// lined engraves a scale on the lathe, the spindle turned on by its dividing wheel and held there
// by a detent: a pointed tool on the slides is drawn along each line.
func (k *Turn) lined(w *Turning) {
	f := w.Target.Form
	s := f.Scale
	w.X0, w.X1, w.R0, w.R1 = f.Lo[0], f.Hi[0], s.Radius, s.Radius
	if s.End {
		w.X0, w.X1 = f.Into.At, f.Into.At
	}
	k.reach(w)
	w.Off, w.Final = 0, true
	fs := k.Part.change(k.After, f)
	w.Done = fs.Finished
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Finished, fs.ByProcess, fs.By, fs.Turns = true, true, k.Choice.By, k.Spot, len(f.Spins)
}
