package gear

import (
	"errors"
	"fmt"
	"math"
)

// Rack is a straight rack with flanks at the pressure angle. What lies outside the ranges is an error
// of its methods, which names the figure.
type Rack struct {
	Module   float64 // mm, 0.02 to 100
	Pressure float64 // degrees, 10 to 35
	Thinning float64 // mm taken off each tooth on the pitch line for backlash, from 0
	Depth    Depth   // the zero Depth: UsualDepth
}

// RackSize is what there is to cut, mm.
type RackSize struct {
	Pitch    float64 // along the pitch line: pi modules
	Addendum float64 // face to pitch line
	Whole    float64 // face to floor, without what is fed deeper
	Deeper   float64 // how much deeper a form cutter is fed to thin the teeth: thinning / (2 tan a)
	Tooth    float64 // on the pitch line
	Land     float64 // width of a tooth at its tip
	Mouth    float64 // width of a gap at the face
	Floor    float64 // and at its floor: the width of the cutter's tip
}

func (r Rack) depth() Depth { return r.Depth.or(r.Pressure) }

// Check says what is out of range; also thinning of more than half of a tooth, and teeth that are pointed or
// gaps that have no floor.
func (r Rack) Check() error {
	if err := first(within("a module of", r.Module, 0.02, 100, " mm"), within("a pressure angle of", r.Pressure, 10, 35, " degrees"), r.depth().check(),
		within("a thinning of", r.Thinning, 0, 0.25*math.Pi*r.Module, " mm")); err != nil {
		return err
	}
	if s := r.size(); s.Land <= 0 || s.Floor <= 0 {
		return fmt.Errorf("a whole depth of %v modules at %v degrees: it leaves no land at the tips, or no floor in the gaps", r.depth().Whole, r.Pressure)
	}
	return nil
}

func (r Rack) size() RackSize {
	d, tan := r.depth(), math.Tan(rad(r.Pressure))
	s := RackSize{Pitch: math.Pi * r.Module, Addendum: d.Addendum * r.Module, Whole: d.Whole*r.Module + d.Extra, Deeper: r.Thinning / (2 * tan)}
	s.Tooth = s.Pitch/2 - r.Thinning
	s.Land = s.Tooth - 2*s.Addendum*tan
	s.Mouth = s.Pitch - s.Land
	s.Floor = s.Mouth - 2*(s.Whole+s.Deeper)*tan
	return s
}

// Size gives the sizes of a rack: straight flanks at the pressure angle, tooth and gap alike on the pitch
// line unless thinned (ISO 53, from memory). An error for what Check refuses.
//
// Law: land and mouth are a pitch, and the flanks lean by the pressure angle from mouth to floor.
func (r Rack) Size() (RackSize, error) {
	if err := r.Check(); err != nil {
		return RackSize{}, err
	}
	return r.size(), nil
}

// RackMesh is a straight wheel run on a rack. Lengths are mm, the contact ratio a plain number.
type RackMesh struct {
	Distance     float64    // from the axis of the wheel to the pitch line of the rack
	Standard     float64    // that at which the teeth, as shifted but not thinned, fit without backlash
	Over         float64    // from the axis to the tips of the rack
	Backlash     float64    // along the pitch line; below 0 the teeth jam
	Normal       float64    // square to the flanks
	Clearance    [2]float64 // tip of the wheel to floor of the rack, tip of the rack to root of the wheel
	ContactRatio float64
}

// RackPair runs a wheel on a rack, its axis so far from the rack's pitch line, mm; 0 asks for the distance at
// which the teeth as shifted, but not thinned, fit without backlash: half the reference diameter, and the
// shift. Wheel and rack roll on the reference circle at any distance; moved out by x they gain 2 x tan(a)
// of backlash (any gear text: flanks of a rack are straight). What of the rack's flanks lies beyond the base
// circle's tangent point touches nothing.
//
// Laws: teeth thinned by s1 and s2 have a backlash of s1 + s2 at the distance worked out; a wheel of very many
// teeth in place of the rack does the same.
//
// An error names what the wheel's or the rack's Check refuses, what does not run together, a helix, a wheel
// with inside teeth, or a distance of less than half or more than twice the standard one.
func RackPair(w Wheel, r Rack, distance float64) (RackMesh, error) {
	g, err := w.geometry()
	if err != nil {
		return RackMesh{}, err
	}
	s, err := r.Size()
	switch {
	case err != nil:
		return RackMesh{}, err
	case w.Internal:
		return RackMesh{}, errors.New("a wheel with inside teeth does not run on a rack")
	case w.Helix != 0:
		return RackMesh{}, fmt.Errorf("a helix angle of %v degrees: only straight teeth on a rack are reckoned", w.Helix)
	case math.Abs(w.Module-r.Module) > 1e-9*r.Module:
		return RackMesh{}, fmt.Errorf("modules of %v mm and %v mm do not run together", w.Module, r.Module)
	case math.Abs(w.Pressure-r.Pressure) > 1e-9:
		return RackMesh{}, fmt.Errorf("pressure angles of %v and %v degrees do not run together", w.Pressure, r.Pressure)
	}
	m := RackMesh{Standard: g.d/2 + w.Shift*w.Module, Distance: distance}
	if distance == 0 {
		m.Distance = m.Standard
	}
	if err := within("a distance of", m.Distance, m.Standard/2, 2*m.Standard, " mm"); err != nil {
		return RackMesh{}, err
	}
	sin, cos := math.Sincos(g.at)
	m.Over = m.Distance - s.Addendum
	m.Backlash = w.Thinning + r.Thinning + 2*(m.Distance-m.Standard)*sin/cos
	m.Normal = m.Backlash * cos
	m.Clearance = [2]float64{m.Over + s.Whole + s.Deeper - g.tipDiameter()/2, m.Over - g.rootDiameter()/2}
	ra, rb := g.tipDiameter()/2, g.db/2
	out := math.Sqrt(math.Max(0, ra*ra-rb*rb)) - g.d/2*sin
	in := math.Min((g.d/2-m.Over)/sin, g.d/2*sin)
	m.ContactRatio = math.Max(0, out+in) / (s.Pitch * cos)
	return m, nil
}
