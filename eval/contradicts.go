package eval

import (
	"math"

	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Contradicts says why the sizes of a feature do not go together, or not with the part; "" if they do. Each is
// possible by itself, and shaped as it is written.
func (p *Part) Contradicts(f *Form) string {
	if p.Flat != nil || p.Folded != nil || p.Bent != nil {
		return ""
	}
	switch f.Feature.Kind {
	case "hole":
		return f.holeContradicts()
	case "slot", "pocket", "step", "slit":
		return p.roomContradicts(f)
	case "split":
		return p.splitContradicts(f)
	case "chamfer", "radius":
		return p.edgeContradicts(f)
	}
	return ""
}

func (f *Form) holeContradicts() string {
	m, d := f.Feature, f.Diameter.Or(0)
	length := func(x float64) string { return model.Figure(round3(x)) + " mm" }
	if b, ok := m.Counterbore.Diameter.Get(); ok && b.Nominal < d+model.Grain {
		return "its counterbore of " + length(b.Nominal) + " is no wider than the hole of " + length(d)
	}
	if deep, ok := m.Counterbore.Depth.Get(); ok && f.Depth.Is() && !m.Counterbore.On.Is() && deep.Nominal > f.Depth.V-model.Grain {
		return "its counterbore is " + length(deep.Nominal) + " deep, and the whole hole " + length(f.Depth.V)
	}
	if c, ok := m.Countersink.Diameter.Get(); ok && c.Nominal < d+model.Grain {
		return "its countersink of " + length(c.Nominal) + " is no wider than the hole of " + length(d)
	}
	if a, ok := m.Countersink.Angle.Get(); ok && (a <= 0 || a >= 180) {
		return "the sides of a countersink enclose more than nought and less than 180 degrees, and these " + model.Figure(a)
	}
	if t, ok := m.Thread.Size.Get(); ok && m.Diameter.Is() && !m.Thread.From.Is() {
		if full, ok := handbook.FillThread(t); ok {
			t = full
		}
		if t.Diameter > 0 && d > t.Diameter-model.Grain {
			return "a hole of " + length(d) + " leaves no metal for a thread of " + length(t.Diameter)
		}
	}
	if apart, ok := f.nearest(); ok && apart < d-model.Grain {
		return "its holes run into one another: they lie " + length(apart) + " apart, and each is " + length(d) + " wide"
	}
	return ""
}

// nearest is how far the two nearest holes of a feature lie apart, axis to axis, mm; false where there are not two
// that go in the same way, or too many to ask.
func (f *Form) nearest() (float64, bool) {
	if len(f.Mouths) < 2 || len(f.Mouths) > 500 || len(f.Dirs) > 0 || len(f.Spins) > 0 || f.tilted() {
		return 0, false
	}
	best := math.Inf(1)
	for i, a := range f.Mouths {
		for _, b := range f.Mouths[:i] {
			best = math.Min(best, a.Sub(b).Len())
		}
	}
	return best, true
}

// roomContradicts says whether a straight feature takes a whole face away, or leaves two pieces.
func (p *Part) roomContradicts(f *Form) string {
	if p.Round || f.Skew != nil || f.Into.Face == model.NoFace || len(f.Copies) > 0 {
		return ""
	}
	open := func(axis int) int {
		n := 0
		for _, sign := range [2]float64{-1, 1} {
			if f.Open[model.FaceOn(axis, sign)] {
				n++
			}
		}
		return n
	}
	switch across, along := open(f.Across), open(f.Along); {
	case across == 2 && along == 2:
		return "it takes the whole " + f.Into.Face.String() + " face away; make the part lower by that"
	case f.Through && along == 2 && across == 0:
		return "it goes right through from end to end, and leaves two pieces: a split is written for that"
	}
	return ""
}

func (p *Part) splitContradicts(f *Form) string {
	if n, ok := f.Feature.Pieces.Get(); ok && len(n) != 2 {
		return "it makes two pieces, and names " + model.Figure(float64(len(n)))
	}
	if at := (f.Lo[f.Across] + f.Hi[f.Across]) / 2; at < p.Low[f.Across]+model.Grain || at > p.High()[f.Across]-model.Grain {
		return "its joint lies outside the part"
	}
	return ""
}

// edgeContradicts holds a bevel or a round against the faces that it lies between.
func (p *Part) edgeContradicts(f *Form) string {
	angle := f.Feature.Angle.Or(45)
	if f.Feature.Kind == "chamfer" && (angle <= 0 || angle >= 90) {
		return "a bevel leans by more than nought and less than 90 degrees, and this by " + model.Figure(angle)
	}
	if p.Round || f.Edge[0].Face == model.NoFace || f.Edge[1].Face == model.NoFace {
		return ""
	}
	legs := [2]float64{f.Size, f.Size}
	if f.Feature.Kind == "chamfer" {
		legs[1] *= math.Tan(angle * math.Pi / 180)
	}
	for i, leg := range legs {
		if on := p.Size[f.Edge[1-i].Face.Axis()]; leg > on+model.Grain {
			return "it takes " + model.Figure(round3(leg)) + " mm of the " + f.Edge[i].Name + " face, which is " + model.Figure(round3(on)) + " mm there"
		}
	}
	return ""
}
