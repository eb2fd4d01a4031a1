package gear

import (
	"fmt"
	"math"
)

// Chord is what a gear-tooth calliper is set to and reads.
type Chord struct {
	Height    float64 // tip down to the chord, mm
	Thickness float64 // chord across the tooth on the reference circle, normal to it, mm
}

// Chord gives the chordal addendum and thickness, mm, of an outside wheel; a helical tooth is
// measured square to it, on the reference circle of its virtual wheel. A tip diameter that was
// turned too small by e lowers the height by e/2. An error for what Check refuses, and for an
// internal wheel.
func (w Wheel) Chord() (Chord, error) {
	g, err := w.geometry()
	if err != nil {
		return Chord{}, err
	}
	if w.Internal {
		return Chord{}, fmt.Errorf("an internal wheel's teeth are not measured with a calliper: use pins")
	}
	d := VirtualTeeth(float64(w.Teeth), w.Helix) * w.Module
	half := g.sn / d
	return Chord{Height: g.addendum + d/2*(1-math.Cos(half)), Thickness: d * math.Sin(half)}, nil
}

// Span is a measurement across several teeth with flat anvils.
type Span struct {
	Teeth   int
	Measure float64 // mm
	Touches float64 // diameter at which both anvils touch, mm
	On      bool    // they touch on the involute, inside the tip
	Face    float64 // least width of a helical wheel that can be so measured, mm; 0 for spur wheels
}

// baseTooth is the thickness of the tooth on the base cylinder, square to it: the span over one.
func (g geometry) baseTooth() float64 {
	return g.db * (g.st/g.d + Involute(g.at)) * math.Cos(g.bb)
}

// Span gives the measurement over k teeth, 1 to all of them, of an outside wheel, mm (ISO 21771).
// An error for other k, for an internal wheel, and for what Check refuses.
//
// Law: the span over k teeth less that over k-1 is the base pitch, pi m cos(an); thinning takes
// thinning x cos(an) off it.
func (w Wheel) Span(k int) (Span, error) {
	g, err := w.geometry()
	if err != nil {
		return Span{}, err
	}
	switch {
	case w.Internal:
		return Span{}, fmt.Errorf("an internal wheel is measured between pins, not over teeth")
	case k < 1 || k > w.Teeth:
		return Span{}, fmt.Errorf("a span over %d teeth: the wheel has 1 to %d", k, w.Teeth)
	}
	s := Span{Teeth: k, Measure: g.baseTooth() + float64(k-1)*math.Pi*w.Module*math.Cos(g.an)}
	s.Touches = math.Hypot(g.db, s.Measure*math.Cos(g.bb))
	s.On = s.Touches < g.tipDiameter()
	s.Face = s.Measure * math.Sin(g.bb)
	return s, nil
}

// SpanTeeth is the number of teeth whose span touches nearest to the middle of the depth, on the
// circle d + 2xm; at least 1, at most all. It is the handbooks' z K + 0.5 rounded. An error for
// what Check refuses.
func (w Wheel) SpanTeeth() (int, error) {
	g, err := w.geometry()
	if err != nil {
		return 0, err
	}
	mid := math.Max(g.d+2*w.Shift*w.Module, g.db)
	want := math.Sqrt(mid*mid-g.db*g.db) / math.Cos(g.bb)
	k := 1 + math.Round((want-g.baseTooth())/(math.Pi*w.Module*math.Cos(g.an)))
	return int(math.Max(1, math.Min(k, float64(w.Teeth)))), nil
}

// ThinningBySpan is how much thinner than the unthinned wheel a tooth is, normal to it on the
// reference circle, by a span measured over k teeth, mm; below 0 it is still too thick. The span
// lies within half of that of the unthinned wheel; others are an error, as is what Span refuses.
func (w Wheel) ThinningBySpan(k int, measured float64) (float64, error) {
	w.Thinning = 0
	s, err := w.Span(k)
	if err != nil {
		return 0, err
	}
	if err := within("a span of", measured, 0.5*s.Measure, 1.5*s.Measure, " mm"); err != nil {
		return 0, err
	}
	return (s.Measure - measured) / math.Cos(rad(w.Pressure)), nil
}
