package choose

import (
	"math"
	"sort"

	"fettle/eval"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// exactly is how far a tool may differ from the size that is wanted and still be of that size, in
// mm: a tenth of what the tolerance of a small drill leaves open.
const exactly = 0.005

// drills lists the drills of just the size that is wanted. Where none is here it lists those that
// serve as well, the nearest first: inch drills for a metric hole, a number drill for a tap.
func (c *chooser) drills(k *asked) []eval.Pick {
	want := k.drillSize()
	out := c.sized(k, []string{"drill"}, want)
	if len(out) > 0 {
		return out
	}
	lo, hi, ok := k.drillServes()
	if !ok {
		return nil
	}
	for _, cu := range c.here([]string{"drill"}) {
		for _, d := range cu.Diameter.V.Within(lo, hi, mostSizes) {
			out = append(out, c.pick(k, cu, d))
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		return math.Abs(out[i].Size-want) < math.Abs(out[j].Size-want)-model.Same
	})
	return out[:min(len(out), mostSizes)]
}

// nearDrill is the member of a set of drills that is nearest to the size wanted, if it serves.
func (k *asked) nearDrill(cu *model.Cutter, want float64) (float64, bool) {
	d, ok := cu.Diameter.V.Nearest(want)
	if !ok {
		return 0, false
	}
	lo, hi, ok := k.drillServes()
	return d, ok && d >= lo-model.Same && d <= hi+model.Same
}

// drillServes gives the sizes of drill, both ends in, that do for the step: before a reamer what
// leaves its allowance; for a size on the way there, `to` or `leaves`, its limits; else the limits
// of the hole or of the thread's minor diameter. False where nothing sets limits.
func (k *asked) drillServes() (lo, hi float64, ok bool) {
	f := k.target.Form
	if f == nil || !f.Diameter.Is() {
		return 0, 0, false
	}
	s := k.step.Step
	between := s != nil && (s.To.Is() || s.Leaves.Is())
	if kind, later := k.reamedLater(); later {
		least, most, _, ok := handbook.ReamAllowance(kind, f.Diameter.V, material(k.part))
		return f.Diameter.V - most, f.Diameter.V - least, ok
	}
	if !between {
		lim, ok := k.part.HoleLimits(f)
		return lim.Lo, lim.Hi, ok
	}
	if !s.To.Is() {
		return 0, 0, false
	}
	lim, ok := eval.LimitsOf(s.To.V.Size, k.c.build.Recipe.General, nil, "to").Get()
	return lim.Lo, min(lim.Hi, f.Diameter.V), ok
}
