package choose

import (
	"math"

	"fettle/eval"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// turning sets the speed and the sense of the spindle: as written, else the fastest speed
// of the machine that is not above the handbook's figure, and the hand of the tool. Where
// the slowest is too fast it is taken, for the rules to speak of.
func (c *chooser) turning(k *asked, cc *eval.CutChoice) {
	s := k.step.Step
	set := k.setup()
	cc.Reverse = cc.CutsReverse()
	if s != nil && s.Spindle.Is() {
		cc.Reverse = s.Spindle.V == "reverse"
	}
	switch {
	case s != nil && s.Speed.Is():
		cc.Speed = s.Speed.V
	case set.Speed.Is():
		cc.Speed = set.Speed.V
	default:
		cc.Speed = c.speed(k, cc)
	}
	if (cc.Tool.Cutter.Kind == "tap" || cc.Tool.Cutter.Kind == "reamer" && cc.Tool.Cutter.ReamerKind.V == "hand") &&
		(s == nil || !s.TurnedBy.Is()) {
		cc.ByHand = true
	}
	if cc.ByHand {
		cc.Speed = 0
	}
}

func (c *chooser) speed(k *asked, cc *eval.CutChoice) float64 {
	m := k.hold.Choice.Machine
	if m == nil || !m.Speeds.Is() || cc.Tool.Size <= 0 {
		return 0
	}
	row, ok := handbook.Speed(eval.Process(k.by, cc.Tool.Cutter), cc.Tool.Cutter.Of.Or("HSS"), material(k.part.Makes(k.step)))
	if !ok {
		return 0
	}
	d := cc.Tool.Size
	if k.by == "boring" {
		d = k.wanted()
	}
	if !(d > 0) {
		return 0
	}
	limit := 1000 * row.Pick / (math.Pi * d)
	if most, ok := cc.Tool.Cutter.MaxSpeed.Get(); ok {
		limit = min(limit, most)
	}
	return within(m.Speeds.V, min(limit, c.bearable(k, m, cc.Tool)))
}

// bearable is the speed up to which the motor turns a drill in the solid, rev/min; no limit where
// its power is not known, or a hole is there to be opened out.
func (c *chooser) bearable(k *asked, m *model.Machine, t eval.Pick) float64 {
	if t.Cutter == nil || t.Cutter.Kind != "drill" || !m.Power.Is() {
		return math.Inf(1)
	}
	if f := k.target.Form; f != nil && k.target.Sub == "" {
		if had := k.part.Feature(k.before, f); had != nil && had.Diameter > eval.WebShare*t.Size {
			return math.Inf(1)
		}
	}
	key := borneKey{k.step, t.Cutter, t.Size, m}
	if v, ok := c.borne[key]; ok {
		return v
	}
	v := bearable(k, m, t)
	c.borne[key] = v
	return v
}

// borneKey is what the speed up to which a motor turns a drill hangs on, but for a hole that is there.
type borneKey struct {
	step  *eval.Step
	drill *model.Cutter
	size  float64
	on    *model.Machine
}

func bearable(k *asked, m *model.Machine, t eval.Pick) float64 {
	group := material(k.part.Makes(k.step))
	feed, ok := eval.DrillFeed(k.step.Step, t, group)
	if !ok {
		return math.Inf(1)
	}
	watts, ok := eval.DrillWatts(t, group, feed, 1000)
	if !ok || !(watts > 0) {
		return math.Inf(1)
	}
	return 1000 * m.Power.V / watts
}

// within is the fastest speed of a machine not above a limit; where even its slowest is above, that.
// Of a drive without steps it is written to three figures, downwards: nobody sets it closer.
func within(s model.Speeds, limit float64) float64 {
	v, ok := s.At(limit)
	if !ok {
		v, _ = s.Slowest()
		return v
	}
	if s.Stepless && v < s.To {
		return max(s.From, threeFigures(v))
	}
	return v
}

// threeFigures rounds a figure above nought down to its first three.
func threeFigures(v float64) float64 {
	if !(v > 0) {
		return v
	}
	unit := math.Pow(10, math.Floor(math.Log10(v))-2)
	return math.Floor(v/unit+model.Same) * unit
}
