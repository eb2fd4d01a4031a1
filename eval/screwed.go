package eval

import (
	"math"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Screwed is a screw that joins parts: what it passes, what it goes into, and how far.
type Screwed struct {
	Model  *model.ScrewJoint
	Thread model.Known[drawing.Thread]
	Length float64              // as sold: under the head, of countersunk heads over all; 0 not said
	Passes []Passed             // clearance holes, the head's first
	Stack  model.Known[float64] // what it passes before its thread, washer and all
	Into   *model.Feature       // the threaded hole; nil for a nut
	Part   *Part                // the part of that hole
	Has    model.Known[float64] // full thread in that hole
	Blind  bool
	Takes  drawing.Thread // thread of that hole
	// Pattern are all screws between the same two parts, on the first joint of them only.
	Pattern *Pattern
	into    *Form
}

// Passed is a clearance hole that a screw goes through.
type Passed struct {
	Hole     *model.Feature       // nil where it is no hole
	Thick    model.Known[float64] // metal that the screw passes there
	Part     *Part
	Form     *Form
	Diameter model.Known[Limits]
}

func (t *Trace) screw(s *model.ScrewJoint) *Screwed {
	out := &Screwed{Model: s}
	out.read(s.Size)
	lacks := []model.Lack{}
	total := s.Washer.V
	if s.Named.Is() && !s.Washer.Is() {
		lacks = append(lacks, model.Known[float64]{Of: s.Item, Attr: "washer (its thickness)", At: s.Item.At}.Missing()...)
	}
	for _, r := range s.Through.V {
		p := t.passed(r, len(out.Passes) == 0)
		if r.Item != nil && r.Item == s.Into.V.Item && p.Form != nil {
			p.Thick = p.Part.smooth(p.Form) // a clamp: the same hole, threaded from its joint on
		}
		out.Passes = append(out.Passes, p)
		if thick, ok := p.Thick.Get(); ok {
			total += thick
		} else {
			lacks = append(lacks, p.Thick.Missing()...)
		}
	}
	if out.sprung() {
		thick, ok := springWashers[math.Round(out.Thread.V.Diameter*10)/10]
		if !ok || out.Thread.V.Series != "M" {
			lacks = append(lacks, model.Known[float64]{Of: s.Item, Attr: "washer (thickness of its spring washer)", At: s.Locked.At}.Missing()...)
		}
		total += thick
	}
	t.screwedInto(out, s.Into.V)
	if out.into != nil && !out.own() {
		deep, ok := out.Part.smooth(out.into).Get()
		if _, far := out.Part.Recess(out.into); ok && !far {
			total += deep
		}
	}
	out.Stack = model.Sure(total)
	if len(lacks) > 0 {
		out.Stack = model.Lacking[float64](lacks)
	}
	return out
}

// springWashers are the thicknesses of spring washers, flat, mm, by the diameter of a metric screw
// (DIN 127 B, from memory).
var springWashers = map[float64]float64{2: 0.5, 2.5: 0.6, 3: 0.8, 3.5: 0.8, 4: 0.9, 5: 1.2, 6: 1.6, 8: 2, 10: 2.2, 12: 2.5, 14: 3, 16: 3.5, 20: 4}

// sprung says whether a spring washer lies under the head.
func (s *Screwed) sprung() bool {
	return s.Thread.Is() && strings.Contains(strings.ToLower(s.Model.Locked.V), "spring washer")
}

// own says whether one of the holes that a screw passes is the one that it ends in.
func (s *Screwed) own() bool {
	for _, p := range s.Passes {
		if p.Form == s.into {
			return true
		}
	}
	return false
}

// read takes "M5x25" and "2 BA x 1/2 in" apart. A metric screw's length is in mm whatever the
// recipe's units are.
func (s *Screwed) read(size model.Known[string]) {
	s.Thread = model.Known[drawing.Thread]{Of: size.Of, Attr: size.Attr, At: size.At}
	unit := s.Model.Item.Unit
	if strings.HasPrefix(strings.ToUpper(strings.TrimSpace(size.V)), "M") {
		unit = drawing.Millimetre
	}
	if th, l, ok := ParseScrew(size.V, unit); ok {
		s.Thread, s.Length = model.Sure(th), l.Or(0)
	}
}

// screwedInto finds the threaded hole that a screw ends in.
func (t *Trace) screwedInto(s *Screwed, r model.Ref) {
	s.Has = model.Known[float64]{Of: r.Item, Attr: "thread.depth", At: r.At}
	for _, p := range t.Parts {
		for _, f := range p.Part.Forms {
			if f.Feature.Item != r.Item || !f.Feature.Thread.Said {
				continue
			}
			s.Into, s.Part, s.into = f.Feature, p.Part, f
			s.Blind = !f.Through
			s.Takes = f.Feature.Thread.Size.V
			if full, ok := handbook.FillThread(s.Takes); ok {
				s.Takes = full
			}
			switch th := f.Feature.Thread; {
			case th.Depth.Is():
				s.Has = th.Depth
			case f.Through && f.Depth.Is():
				depth, _ := p.Part.tapped(f)
				s.Has = model.Sure(depth)
			default:
				s.Has = model.Lacking[float64](th.Depth.Missing())
			}
		}
	}
}

// UnderHead says whether a screw's length counts from a head that stops it.
func (s *Screwed) UnderHead() bool {
	switch s.Model.Head.V {
	case "set", "grub", "stud":
		return false
	}
	return true
}

// Stands is how far the screw goes in beyond what it passes, mm.
func (s *Screwed) Stands() model.Known[float64] {
	if s.Length == 0 {
		return model.Known[float64]{Of: s.Model.Item, Attr: "size (its length)", At: s.Model.Item.At}
	}
	return model.Map(s.Stack, func(t float64) float64 { return s.Length - t })
}

// Engaged is the length of thread in use: worked out, else as the recipe says.
func (s *Screwed) Engaged() model.Known[float64] {
	in := model.Both(s.Stands(), s.Has, func(a, b float64) float64 { return math.Max(0, math.Min(a, b)) })
	if e, ok := s.Model.Engaged.Get(); ok && !in.Is() {
		return model.Known[float64]{V: e.Nominal, From: model.Written, At: s.Model.Engaged.At}
	}
	return in
}

// Wanted is the least length of thread in use that the recipe asks for, mm: the lower limit that it
// writes, else the length itself. False where it asks for none.
func (s *Screwed) Wanted() (float64, bool) {
	e, ok := s.Model.Engaged.Get()
	if !ok {
		return 0, false
	}
	if l, ok := LimitsOf(e, model.General{}, s.Model.Item, "engaged").Get(); ok {
		return l.Lo, true
	}
	return e.Nominal, true
}

// Enters names the threaded hole, by the part that it was named through.
func (s *Screwed) Enters() string {
	r := s.Model.Into.V
	return model.Ref{Item: s.Into.Item, In: r.In}.Path()
}
