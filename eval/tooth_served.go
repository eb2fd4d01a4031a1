package eval

import (
	"math"

	"fettle/eval/reckon/gear"
	"fettle/schema/model"
)

// Served says whether a cutter cuts the teeth of a form, a wheel's or a rack's, as it is printed on it, and why.
func (f *Form) Served(c *model.Cutter) (fit gear.Fit, why string) {
	if f.Rack != nil {
		return f.Rack.Served(c)
	}
	return f.Tooth.Served(c)
}

// Module is the module of teeth for which cutters are made: involute ones, and those of clockwork; else 0.
func (f *Form) Module() float64 {
	switch {
	case f == nil:
	case f.Tooth != nil:
		return f.Tooth.Module
	case f.Rack != nil:
		return f.Rack.Gear.Module
	}
	return 0
}

// printed is what is printed on a gear cutter.
func printed(c *model.Cutter) gear.Cutter {
	g := gear.Cutter{Pressure: c.PressureAngle.V, Form: c.ToothForm.V, Module: c.Module.V}
	if c.DiametralPitch.Is() && c.DiametralPitch.V > 0 {
		g.Module = gear.Module(c.DiametralPitch.V)
	}
	switch r := c.ForTeeth.V; len(r) {
	case 1:
		g.Teeth = gear.Range{Least: int(r[0])} // to the rack
	case 2:
		g.Teeth = gear.Range{Least: int(r[0]), Most: int(r[1])}
	}
	return g
}

// Served says whether a cutter cuts this rack, as it is printed on it, and why: the one whose range goes on to the
// rack.
func (r *Rack) Served(c *model.Cutter) (fit gear.Fit, why string) {
	if IsHob(c) {
		return gear.No, "it is a hob, and cuts right only while the work moves on with it"
	}
	return printed(c).ServesRack(r.Gear.Module, r.Gear.Pressure)
}

// Virtual is the count of teeth that a cutter is chosen by: of helical teeth, and of a gash that leans,
// z / cos^3 of the lean (any gear text).
func (t *Toothing) Virtual() int {
	return gear.Whole(gear.VirtualTeeth(float64(t.Count), math.Abs(t.Lean)))
}

// Served says whether a cutter cuts these teeth, as it is printed on it, and why. A worm wheel's
// straight gash, like a helical tooth, is cut with the cutter for its virtual number of teeth. A hob is
// for any number.
func (t *Toothing) Served(c *model.Cutter) (fit gear.Fit, why string) {
	g := printed(c)
	if IsHob(c) {
		if t.Throat == nil {
			return gear.No, "it is a hob, and cuts right only while the wheel turns with it"
		}
		g.Teeth = gear.Range{Least: 1}
	}
	if t.Form == "cycloidal" {
		return g.ServesCycloidal(t.Module, t.Count)
	}
	return g.Serves(t.Wheel.Module, t.Wheel.Pressure, t.Virtual())
}
