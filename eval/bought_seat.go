package eval

import (
	"strings"

	"fettle/schema/model"
)

// RingSeat is how far a ball bearing sits in its hole, or on its shaft.
type RingSeat struct {
	Thing model.Ref // the bearings
	Width Dimension // of the bearing
	Seat  Dimension // the hole that it sits in, or the shaft that it sits on
	Long  float64   // of that seat along the axis, mm
	On    bool      // it is the shaft
}

// RingSeat finds the seat of a bearing that one of a fit's two sizes is of; false where neither is, where
// both are, or where how long the seat is does not follow from the drawing.
func (f *FitJoint) RingSeat(t *Trace) (s RingSeat, ok bool) {
	in, inRing := f.Shaft.ring()
	on, onRing := f.Hole.ring()
	switch {
	case inRing == onRing:
		return s, false
	case inRing:
		s.Thing, s.Seat = in, f.Hole
		s.Long, ok = s.Seat.holeLength()
	default:
		s.Thing, s.Seat, s.On = on, f.Shaft, true
		if p := s.Seat.Part; p != nil {
			line, _, _, turned := p.shaftLine(s.Seat.Form)
			s.Long, ok = line.long, turned
		}
	}
	s.Width = t.dimension(model.Ref{Item: s.Thing.Item, Sub: "width", At: s.Seat.At})
	return s, ok
}

// ring gives the bearings that a size is of.
func (d *Dimension) ring() (model.Ref, bool) {
	r, _, ok := d.thing()
	return r, ok && r.Item.Kind == "bearings"
}

// holeLength is how far the hole goes, or the counterbore, whose diameter a dimension is.
func (d *Dimension) holeLength() (float64, bool) {
	if d.Part == nil || d.Form == nil {
		return 0, false
	}
	if d.Attr == "counterbore.diameter" {
		deep, ok := d.Form.Feature.Counterbore.Depth.Get()
		return deep.Nominal, ok
	}
	if d.Attr != "diameter" || d.Form.Wrong != "" {
		return 0, false
	}
	if len(d.Form.Mouths) > 0 {
		return d.Form.Depth.Get() // of each, where there are several
	}
	line, ok := d.Part.holeLine(d.Form)
	return line.long, ok
}

// PinFit is a pin of the shop that one fit drives or slides into a hole.
type PinFit struct {
	Pins     *model.Pins
	Diameter float64 // nominal, mm; of a taper pin its small end
}

// Pin finds the pin of the shop that the shaft of a fit is.
func (f *FitJoint) Pin(t *Trace) (p PinFit, ok bool) {
	r, _, ok := f.Shaft.thing()
	if !ok {
		return p, false
	}
	p.Pins, ok = model.Find(t.Build.Shop.Pins, r.Item)
	if !ok || !f.Shaft.Size.Is() {
		return p, false
	}
	p.Diameter = f.Shaft.Size.V.Nominal
	return p, true
}

// PinLength is how long a pin is, or which of the lengths of the shop is taken, that goes through the holes of
// two parts.
type PinLength struct {
	One, Two *FitJoint
	OneJoint *Joint
	Pins     *model.Pins
	Diameter float64
	Room     float64              // both holes together, mm
	Shut     bool                 // both are blind: what is longer holds the parts apart
	Length   model.Known[float64] // as the part says, else the longest here that does not stand out
	Chosen   bool
}

// Named names the pin: "pins.dowels[4]", "part.pin".
func (l *PinLength) Named() string { return strings.TrimSuffix(l.One.Shaft.Path, ".diameter") }

// PinLengths lists the pins of the shop in the holes of two parts each. Of a pin of which only one hole is told
// nothing says how far it shall stand out.
func (t *Trace) PinLengths() (out []PinLength) {
	for i, j := range t.Joints {
		for _, k := range t.Joints[i+1:] {
			x, y := j.Fit, k.Fit
			if x == nil || y == nil || x.Shaft.Of == nil || x.Shaft.Of != y.Shaft.Of || x.Hole.Part == nil || x.Hole.Part == y.Hole.Part {
				continue
			}
			pin, ok := x.Pin(t)
			other, ok2 := y.Pin(t)
			a, ok3 := x.Hole.holeLength()
			b, ok4 := y.Hole.holeLength()
			if !ok || !ok2 || !ok3 || !ok4 || !near(pin.Diameter, other.Diameter) {
				continue
			}
			l := PinLength{One: x, Two: y, OneJoint: j, Pins: pin.Pins, Diameter: pin.Diameter, Room: a + b,
				Shut: !x.Hole.Form.Through && !y.Hole.Form.Through}
			t.pinLength(&l)
			out = append(out, l)
		}
	}
	return out
}

func (t *Trace) pinLength(l *PinLength) {
	if p := l.One.Shaft.Part; p != nil && p.Part.Length.Is() {
		l.Length = model.Sure(p.Part.Length.V.Nominal)
		return
	}
	lengths, ok := l.Pins.Lengths.Get()
	if !ok {
		l.Length = model.Lacking[float64](l.Pins.Lengths.Missing())
		return
	}
	best, ok := lengths.NotAbove(l.Room)
	if !ok {
		best, _, ok = lengths.Range() // the shortest stands out
	}
	if !ok {
		l.Length = model.Lacking[float64]([]model.Lack{{Fact: l.Pins.Path() + ".lengths", At: l.Pins.Item.At}})
		return
	}
	l.Length, l.Chosen = model.Sure(best), true
}
