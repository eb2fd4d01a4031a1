package eval

import (
	"math"

	"fettle/eval/reckon/gear"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// MeshJoint is two sets of teeth, or a worm and its wheel.
type MeshJoint struct {
	*model.Mesh
	Wheel, Pinion Toothed // of a worm drive the second is the worm
	IsWorm        bool
	Rack          bool
	// Standard is the distance of the axes at which the pitch circles touch, mm; on a rack that of the wheel's axis
	// from the pitch line.
	Standard model.Known[float64]
	// At is the distance as written, with its limits.
	At model.Known[Limits]
	// Close and Far are the pair at the least and at the greatest distance of the axes; of outside
	// and inside spur and helical pairs only.
	Close, Far model.Known[gear.Mesh]
	Play       model.Known[Limits] // backlash that is wanted, where it is written
	// RackClose and RackFar are the same of a wheel on a rack, whose tips lie an addendum over its pitch line, mm.
	RackClose, RackFar model.Known[gear.RackMesh]
	Addendum           float64
}

// Toothed is one of the two: a wheel, a pinion or a worm.
type Toothed struct {
	Part     *Part
	Feature  *model.Feature
	Name     string
	Count    model.Known[int]     // teeth, or the starts of a worm
	Module   model.Known[float64] // normal; of a worm axial, mm
	Size     string               // as it is written: "module 1", "24 DP"
	Pressure float64              // degrees
	Said     bool                 // the pressure angle is written
	Form     string
	Hand     string // "left", "right", "straight"
	HandSaid bool
	Worm     *model.Item // the worm that a wheel names as its mate
	Inside   bool        // teeth in a bore
}

func (j *Joint) mesh(m *model.Mesh) {
	o := &MeshJoint{Mesh: m, IsWorm: m.Worm.Is()}
	j.Mesh = o
	mate := m.Pinion
	if o.IsWorm {
		mate = m.Worm
	}
	if !m.Wheel.Is() || !mate.Is() {
		j.Unplayed = "its wheel or what it meshes with is not known"
		return
	}
	var ok, ok2 bool
	o.Wheel, ok = j.Trace.toothed(m.Wheel.V)
	o.Pinion, ok2 = j.Trace.toothed(mate.V)
	if !ok || !ok2 || o.Wheel.Feature.Kind != "teeth" || (o.Pinion.Feature.Kind == "worm") != o.IsWorm {
		j.Unplayed = "what it names is no wheel, pinion or worm of a part of this build"
		return
	}
	o.Rack = !o.IsWorm && (o.Pinion.isRack() || o.Wheel.isRack())
	if o.Rack && o.Pinion.isRack() && o.Wheel.isRack() {
		j.Unplayed = "both are racks, and one rack does not run on another"
		return
	}
	if m.Centres.Is() {
		o.At = LimitsOf(m.Centres.V, j.Trace.Build.Recipe.General, m.Item, "centres")
	}
	if m.Backlash.Is() {
		o.Play = LimitsOf(m.Backlash.V, model.General{}, m.Item, "backlash")
	}
	o.distances()
}

// toothed finds a set of teeth or a worm by its reference.
func (t *Trace) toothed(r model.Ref) (Toothed, bool) {
	p := t.partOf(r.Part())
	if p == nil {
		return Toothed{}, false
	}
	f := p.feature(r.Item)
	if f == nil || f.Kind != "teeth" && f.Kind != "worm" {
		return Toothed{}, false
	}
	o := Toothed{Part: p, Feature: f, Name: r.Path(), Count: f.Count, Pressure: 20, Form: f.Form.Or("involute")}
	worm := f.Worm.V.Item
	from := f
	if f.Kind == "worm" {
		o.Count, o.Form = model.Known[int]{V: f.Starts.Or(1), From: model.Standing}, "worm"
		worm = nil
	} else if worm != nil {
		o.Worm = worm
		if q := t.partOf(worm.Up("part")); q != nil && q.feature(worm) != nil {
			from = q.feature(worm) // size, hand and angle follow
		}
	}
	o.size(from)
	if k := f.PressureAngle; k.Said() {
		o.Pressure, o.Said = k.V, true
	} else if from.PressureAngle.Said() {
		o.Pressure, o.Said = from.PressureAngle.V, true
	}
	o.hand(f, from)
	for _, on := range f.On.V {
		o.Inside = o.Inside || on.Item != nil && (on.Item.Kind == "bore" || on.Item.Kind == "hole")
	}
	return o, true
}

// size takes the module from module, diametral pitch or axial pitch, whichever is written.
func (o *Toothed) size(f *model.Feature) {
	switch {
	case f.Module.Is():
		o.Module, o.Size = f.Module, "module "+model.Figure(f.Module.V)
	case f.DiametralPitch.Is() && f.DiametralPitch.V > 0:
		o.Module = model.Sure(gear.Module(f.DiametralPitch.V))
		o.Size = model.Figure(f.DiametralPitch.V) + " DP"
	case f.Kind == "worm" && f.Pitch.Is():
		o.Module = model.Sure(f.Pitch.V / math.Pi)
		o.Size = "an axial pitch of " + model.Figure(f.Pitch.V) + " mm"
	default:
		o.Module = model.Known[float64]{Of: f.Item, Attr: "module", At: f.Item.At}
	}
}

// hand takes the hand from the feature, else from the worm that it names, else the standing one.
func (o *Toothed) hand(f, from *model.Feature) {
	o.Hand = "straight"
	if from.Kind == "worm" {
		o.Hand = "right"
	}
	for _, g := range [2]*model.Feature{from, f} {
		if g.HandOf.Said() {
			o.Hand, o.HandSaid = g.HandOf.V, true
		}
	}
}

// feature finds a feature of the part by its block.
func (p *Part) feature(i *model.Item) *model.Feature {
	for _, f := range p.Features {
		if f.Item == i {
			return f
		}
	}
	return nil
}

// wheel is a set of teeth as the arithmetic takes it.
func (o *Toothed) wheel() model.Known[gear.Wheel] {
	return model.Both(o.Count, o.Module, func(n int, m float64) gear.Wheel {
		f := o.Feature
		return gear.Wheel{Teeth: n, Module: m, Pressure: o.Pressure, Helix: f.Helix.Or(0), Shift: f.Shifted.Or(0),
			Thinning: f.Thinned.Or(0), Internal: o.Inside}
	})
}

// distances works out how far apart the axes should be, and the pair at the distance written.
func (o *MeshJoint) distances() {
	if o.Rack {
		o.onRack()
		return
	}
	if o.IsWorm {
		d := o.pitchDiameter()
		wheel := model.Both(o.Wheel.Count, o.Wheel.Module, func(n int, m float64) float64 { return float64(n) * m })
		o.Standard = model.Both(d, wheel, func(a, b float64) float64 { return (a + b) / 2 })
		return
	}
	if o.Wheel.Form != "involute" || o.Pinion.Form != "involute" {
		return
	}
	// The pinion first: of an inside pair the arithmetic wants the inside wheel second.
	pair := func(centre float64) model.Known[gear.Mesh] {
		a, b := o.Pinion.wheel(), o.Wheel.wheel()
		if !a.Is() || !b.Is() {
			return model.Lacking[gear.Mesh](a.Missing(), b.Missing())
		}
		m, err := gear.Pair(a.V, b.V, centre)
		if err != nil {
			return model.Known[gear.Mesh]{}
		}
		return model.Sure(m)
	}
	own := pair(0)
	if !own.Is() {
		return
	}
	o.Standard = model.Sure(own.V.Standard)
	if o.At.Is() {
		o.Close, o.Far = pair(o.At.V.Lo), pair(o.At.V.Hi)
	}
}

// Insides says how the pinion runs in an inside wheel: at the least and the greatest distance of the axes
// that is written, else at their own.
func (o *MeshJoint) Insides() (out []gear.Inside) {
	a, b := o.Pinion.wheel(), o.Wheel.wheel()
	if !a.Is() || !b.Is() || o.Wheel.Form != "involute" || o.Pinion.Form != "involute" {
		return nil
	}
	meshes := []model.Known[gear.Mesh]{o.Close, o.Far}
	if !o.Close.Is() || !o.Far.Is() {
		m, err := gear.Pair(a.V, b.V, 0)
		if err != nil {
			return nil
		}
		meshes = []model.Known[gear.Mesh]{model.Sure(m)}
	}
	for _, m := range meshes {
		if in, err := gear.Interferes(a.V, b.V, m.V); err == nil {
			out = append(out, in)
		}
	}
	return out
}

// pitchDiameter is that of the worm: as written, else its outside less two modules.
func (o *MeshJoint) pitchDiameter() model.Known[float64] {
	f := o.Pinion.Feature
	if f.PitchDiameter.Is() {
		return model.Map(f.PitchDiameter, func(s drawing.Size) float64 { return s.Nominal })
	}
	p := o.Pinion.Part
	d := model.Sure(p.Across)
	if !(p.Across > 0) { // bought
		d = model.Map(p.Part.Diameter, func(s drawing.Size) float64 { return s.Nominal })
	}
	if len(f.On.V) > 0 {
		g := p.FormOf(f.On.V[0].Item)
		if g == nil {
			return model.Known[float64]{Of: f.Item, Attr: "pitch_diameter", At: f.Item.At}
		}
		d = g.Diameter
	}
	return model.Both(d, o.Pinion.Module, func(a, m float64) float64 { return a - 2*m })
}
