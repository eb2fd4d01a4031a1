package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A vee groove has two flanks that lean alike, and between them a floor where it is wider than its
// flanks reach. A round groove has a floor of half its width's radius, or of its depth's where it is
// shallower. In the half section of an outside a round groove counts as square, which is more metal gone
// than drawn; everywhere else both have their true form, a curve at most solid.Within beside it.

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

// grooveLine is the profile of a groove that is not square, between two places on its line, down to
// a floor, in an outside or a bore of a radius; false where its form does not come out.
func (f *Form) grooveLine(x0, x1, floor, top float64) ([]solid.Station, bool) {
	if f.Feature.Form.V == "vee" {
		st := []solid.Station{{X: x0, R: top}, {X: x0 + f.Flank, R: floor}}
		if x1-x0 > 2*f.Flank+model.Grain {
			st = append(st, solid.Station{X: x1 - f.Flank, R: floor})
		}
		return append(st, solid.Station{X: x1, R: top}), true
	}
	inside := f.Lathe.Inside
	wall := floor + 2*f.Flank // of an outside any radius beyond the rounding does
	if inside {
		wall = 0
	}
	st, err := solid.Rounded(inside, solid.Station{X: x0, R: wall}, solid.Station{X: x0, R: floor, Round: f.Flank},
		solid.Station{X: x1, R: floor, Round: f.Flank}, solid.Station{X: x1, R: wall})
	return st, err == nil
}

// grooveTook is what a vee or round groove takes from the solid; false where its form does not come out.
func (k *Turn) grooveTook(w *Turning) ([]solid.Removal, bool) {
	f, raw := w.Target.Form, k.Before.Piece.Blank()
	if f.Feature.Kind != "groove" {
		return nil, false
	}
	if f.Feature.Form.V == "round" && !w.Inside {
		m, err := solid.Axle{}.Groove(raw, w.X0, w.X1, w.R0, f.Flank, f.Name())
		return []solid.Removal{m}, err == nil
	}
	st, ok := f.grooveLine(w.X0, w.X1, w.R0, k.Part.reach(f.Lathe.On).R0)
	switch {
	case !ok:
		return nil, false
	case w.Inside:
		took, err := solid.Axle{}.BoreProfile(f.Name(), st...)
		return took, err == nil
	}
	m, err := solid.Axle{}.Profile(raw, f.Name(), st...)
	return []solid.Removal{m}, err == nil
}

// grooved is a half section with a groove in it, in an outside or a bore of a radius.
func (f *Form) grooved(p Profile, x0, x1, floor, top float64, mark Zone) Profile {
	inside := f.Lathe.Inside
	square := f.Flank == 0 || f.Feature.Form.V == "round" && !inside
	st := []solid.Station{{X: x0, R: floor}, {X: x1, R: floor}}
	if !square {
		if line, ok := f.grooveLine(x0, x1, floor, top); ok {
			st = line
		}
	}
	for i := 0; i+1 < len(st); i++ {
		a, b := st[i], st[i+1]
		switch {
		case b.X-a.X < model.Same:
		case inside:
			p = p.bored(a.X, b.X, a.R, b.R)
		default:
			p = p.turned(a.X, b.X, a.R, b.R, mark)
		}
	}
	return p
}
