package eval

import (
	"math"

	"fettle/schema/model"
)

// Gauged is a size that is tried with slip gauges. In a gap the stack of its least goes and that of its most does not; an
// outside or a depth is compared with both, under an indicator or a straight edge.
type Gauged struct {
	Set         *model.SlipGauges
	Least, Most GaugeStack // that come nearest to the limits; without limits both to the size as drawn
	Made        bool       // the set makes both
	Bore        bool       // nothing flat lies against the size
}

// Gauged says how a measurement with slip gauges is made; false where it names none, or what it measures is not known.
func (m *Measurement) Gauged() (g Gauged, ok bool) {
	if len(m.Step.Step.With.V) == 0 || m.Wrong != "" || m.Tried || m.Runs {
		return g, false
	}
	for _, r := range m.Step.Step.With.V {
		if g.Set, ok = model.Find(m.Part.Build.Shop.SlipGauges, r.Item); ok {
			break
		}
	}
	if !ok {
		return g, false
	}
	g.Bore = m.Inside && m.Form != nil && (m.Form.Feature.Kind == "hole" || m.Form.Feature.Kind == "bore")
	lo, hi := m.Size.Nominal, m.Size.Nominal
	if l, known := m.Limits.Get(); known {
		lo, hi = l.Lo, l.Hi
	}
	var most bool
	g.Least, g.Made = stackOf(g.Set, lo)
	g.Most, most = stackOf(g.Set, hi)
	g.Made = g.Made && most
	return g, true
}

// Off is how far the worse of the two stacks is off, mm.
func (g *Gauged) Off() float64 { return max(math.Abs(g.Least.Off), math.Abs(g.Most.Off)) }
