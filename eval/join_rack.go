package eval

import (
	"fettle/eval/reckon/gear"
	"fettle/schema/model"
)

// A rack has no axis: what `centres` says of a wheel on a rack is how far the wheel's axis stands from the
// rack's pitch line, which lies a module below the face that carries its teeth.

// rack is the rack that a set of teeth makes; nil where it makes none, or none that can be.
func (o *Toothed) rack() *Rack {
	if f := o.Part.FormOf(o.Feature.Item); f != nil {
		return f.Rack
	}
	return nil
}

// isRack says whether a set of teeth lies on a flat. A bought wheel is not shaped: its part is a rack where it has a
// width.
func (o *Toothed) isRack() bool {
	return o.rack() != nil || !o.Part.Round && !o.Inside && o.Part.Part.Width.Is()
}

// onRack works out how far a wheel stands from its rack, and how they run at the distance written.
func (o *MeshJoint) onRack() {
	wheel, r := &o.Wheel, o.Pinion.rack()
	if r == nil {
		wheel, r = &o.Pinion, o.Wheel.rack()
	}
	if r == nil || !r.Involute || wheel.Form != "involute" || wheel.rack() != nil {
		return
	}
	run := func(distance float64) model.Known[gear.RackMesh] {
		w := wheel.wheel()
		if !w.Is() {
			return model.Lacking[gear.RackMesh](w.Missing())
		}
		m, err := gear.RackPair(w.V, r.Gear, distance)
		if err != nil {
			return model.Known[gear.RackMesh]{}
		}
		m.Clearance[0] += r.Deep - r.Size.Whole - r.Size.Deeper // as deep as it is drawn
		return model.Sure(m)
	}
	own := run(0)
	if !own.Is() {
		return
	}
	o.Standard, o.Addendum = model.Sure(own.V.Standard), r.Size.Addendum
	if o.At.Is() {
		o.RackClose, o.RackFar = run(o.At.V.Lo), run(o.At.V.Hi)
	}
}
