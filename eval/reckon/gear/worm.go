package gear

import (
	"errors"
	"fmt"
	"math"
)

// Worm is a worm and its wheel, shafts at right angles. What lies outside the ranges below is an
// error of its methods, which names the figure.
type Worm struct {
	Starts   int     // 1 to 20
	Teeth    int     // of the wheel, 10 to 10000
	Module   float64 // axial, of the worm, and in the wheel's own plane: pitch / pi, mm, 0.05 to 100
	Diameter float64 // pitch diameter of the worm, mm, 3 to 50 modules
	Pressure float64 // in the axial section, degrees, 10 to 35: the angle of the tool that cuts the worm
	Face     float64 // width of the wheel's rim, mm; 0: not asked
	Depth    Depth   // the zero Depth: UsualDepth
}

// Drive is what a worm and wheel come to. Lengths and diameters are mm, angles degrees.
type Drive struct {
	Pitch, Lead    float64 // axial, mm
	LeadAngle      float64 // degrees: the gash is set over by it
	NormalModule   float64
	NormalPressure float64 // degrees
	Factor         float64 // worm diameter / module
	Centre         float64
	WormTip        float64 // diameters
	WormRoot       float64
	Wheel          float64 // pitch diameter
	Throat         float64 // over the teeth in the middle
	WheelRoot      float64
	ThroatRadius   float64 // of the hollow: worm pitch radius less the addendum
	Corner         float64 // diameter over the corners of a rim of the width asked; 0 where none was
	Face           float64 // width of rim that a worm fills: 2 m sqrt(q + 1)
	Whole          float64 // depth of tooth
	Virtual        float64 // teeth that a form cutter for a straight gash is chosen for: z / cos^3(lead angle)
	LeastTeeth     float64 // fewest teeth of the wheel that are not undercut
	Undercut       bool
}

// Check says what is out of range. Whether anything is left inside the thread is asked by Drive.
func (w Worm) Check() error {
	switch {
	case w.Starts < 1 || w.Starts > 20:
		return fmt.Errorf("a worm of %d starts: from 1 to 20", w.Starts)
	case w.Teeth < 10 || w.Teeth > 10000:
		return fmt.Errorf("a worm wheel of %d teeth: from 10 to 10000", w.Teeth)
	}
	return first(within("a module of", w.Module, 0.05, 100, " mm"),
		within("a worm's pitch diameter of", w.Diameter, 3*w.Module, 50*w.Module, " mm"),
		within("a pressure angle of", w.Pressure, 10, 35, " degrees"),
		within("a rim's width of", w.Face, 0, w.Diameter, " mm"), w.Depth.or(w.Pressure).check())
}

// Drive gives the sizes, mm and degrees. Formulas: the metric worm formula sheets, pitch pi m,
// lead = starts x pitch, tan(lead angle) = lead/(pi d1), centre distance (d1 + m z2)/2; width of
// rim from memory; diameter over the corners is the circle of the throat, drawn out to the rim's
// edge. Errors: what Check refuses, a worm of which nothing is left inside the thread, a rim wider
// than the hollow.
func (w Worm) Drive() (Drive, error) {
	if err := w.Check(); err != nil {
		return Drive{}, err
	}
	d := w.Depth.or(w.Pressure)
	m, up := w.Module, d.Addendum*w.Module
	down := (d.Whole-d.Addendum)*m + d.Extra
	o := Drive{Pitch: math.Pi * m, Wheel: m * float64(w.Teeth), Factor: w.Diameter / m, Whole: up + down}
	o.Lead = o.Pitch * float64(w.Starts)
	lead := math.Atan(o.Lead / (math.Pi * w.Diameter))
	o.LeadAngle, o.NormalModule = deg(lead), m*math.Cos(lead)
	o.NormalPressure = deg(math.Atan(math.Tan(rad(w.Pressure)) * math.Cos(lead)))
	o.Centre = (w.Diameter + o.Wheel) / 2
	o.WormTip, o.WormRoot = w.Diameter+2*up, w.Diameter-2*down
	o.Throat, o.WheelRoot = o.Wheel+2*up, o.Wheel-2*down
	o.ThroatRadius = w.Diameter/2 - up
	o.Face = 2 * m * math.Sqrt(o.Factor+1)
	if o.WormRoot <= 0 || o.ThroatRadius <= 0 {
		return Drive{}, errors.New("nothing is left inside the worm's thread: its pitch diameter is too small")
	}
	if w.Face > 0 {
		if w.Face >= 2*o.ThroatRadius {
			return Drive{}, fmt.Errorf("a rim %v mm wide: the worm's root side fills only %.3f mm", w.Face, 2*o.ThroatRadius)
		}
		o.Corner = 2 * (o.Centre - math.Sqrt(o.ThroatRadius*o.ThroatRadius-w.Face*w.Face/4))
	}
	o.Virtual = VirtualTeeth(float64(w.Teeth), o.LeadAngle)
	s := math.Sin(rad(w.Pressure))
	o.LeastTeeth = 2 * d.Addendum / (s * s)
	o.Undercut = float64(w.Teeth) < o.LeastTeeth-1e-9
	return o, nil
}
