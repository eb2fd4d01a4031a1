package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A vee groove has two flanks that lean alike, and between them a floor where it is wider than its
// flanks reach. A round groove has a floor of half its width's radius, or of its depth's where it is
// shallower. In a bore both are taken as square, which is more metal gone than drawn.

// grooveForm settles the flanks of a groove that is not square, so deep.
func (f *Form) grooveForm(deep float64) {
	m := f.Feature
	switch m.Form.V {
	case "round":
		f.Flank = math.Min(f.Width/2, deep)
	case "vee":
		if !m.Angle.Is() {
			f.lack(m.Angle.Missing())
			return
		}
		flank := deep * math.Tan(m.Angle.V/2*math.Pi/180)
		if !(m.Angle.V > 0 && m.Angle.V < 180) || flank > f.Width/2+0.005 {
			f.Wrong = "its flanks of " + model.Figure(m.Angle.V) + " degrees together meet above its floor: at a width of " + model.Figure(round3(f.Width)) + " mm it is " +
				model.Figure(round3(f.Width/2/math.Tan(m.Angle.V/2*math.Pi/180))) + " mm deep at most"
			return
		}
		f.Flank = math.Min(flank, f.Width/2)
	}
}

// grooveTook is what a vee or round groove in an outside takes from the solid; false in a bore, and
// where its form does not come out.
func (k *Turn) grooveTook(w *Turning) ([]solid.Removal, bool) {
	f, raw := w.Target.Form, k.Before.Piece.Blank()
	if f.Feature.Kind != "groove" || w.Inside {
		return nil, false
	}
	if f.Feature.Form.V == "round" {
		m, err := solid.Axle{}.Groove(raw, w.X0, w.X1, w.R0, f.Flank, f.Name())
		return []solid.Removal{m}, err == nil
	}
	top := k.Part.reach(f.Lathe.On).R0
	st := []solid.Station{{X: w.X0, R: top}, {X: w.X0 + f.Flank, R: w.R0}}
	if w.X1-w.X0 > 2*f.Flank+model.Grain {
		st = append(st, solid.Station{X: w.X1 - f.Flank, R: w.R0})
	}
	m, err := solid.Axle{}.Profile(raw, f.Name(), append(st, solid.Station{X: w.X1, R: top})...)
	return []solid.Removal{m}, err == nil
}

// veeTurned is the half section after a vee groove in an outside.
func (k *Turn) veeTurned(w *Turning, mark Zone) Profile {
	f := w.Target.Form
	top := k.Part.reach(f.Lathe.On).R0
	p := k.Before.Profile.turned(w.X0, w.X0+f.Flank, top, w.R0, mark)
	if w.X1-w.X0 > 2*f.Flank+model.Grain {
		p = p.turned(w.X0+f.Flank, w.X1-f.Flank, w.R0, w.R0, mark)
	}
	return p.turned(w.X1-f.Flank, w.X1, w.R0, top, mark)
}
