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
}

// Passed is a clearance hole that a screw goes through.
type Passed struct {
	Hole  *model.Feature
	Thick model.Known[float64] // metal that the screw passes there
}

func (j *joiner) screw(s *model.ScrewJoint) *Screwed {
	out := &Screwed{Model: s}
	out.read(s.Size)
	lacks := []model.Lack{}
	total := s.Washer.V
	if s.Named.Is() && !s.Washer.Is() {
		lacks = append(lacks, model.Known[float64]{Of: s.Item, Attr: "washer (its thickness)", At: s.Item.At}.Missing()...)
	}
	for _, r := range s.Through.V {
		p := j.passed(r)
		out.Passes = append(out.Passes, p)
		if t, ok := p.Thick.Get(); ok {
			total += t
		} else {
			lacks = append(lacks, p.Thick.Missing()...)
		}
	}
	out.Stack = model.Sure(total)
	if len(lacks) > 0 {
		out.Stack = model.Lacking[float64](lacks)
	}
	j.into(out, s.Into.V)
	return out
}

// read takes "M5x25" and "2 BA x 1/2 in" apart: the last x before a length parts thread and
// length.
func (s *Screwed) read(size model.Known[string]) {
	s.Thread = model.Known[drawing.Thread]{Of: size.Of, Attr: size.Attr, At: size.At}
	words := size.V
	for cut := strings.LastIndexAny(words, "xX×"); cut > 0; cut = strings.LastIndexAny(words[:cut], "xX×") {
		t, err := drawing.ParseThread(strings.TrimSpace(words[:cut]))
		bare := s.Model.Item.Unit
		if t.Series == "M" {
			bare = drawing.Millimetre // M5x25 is 25 mm long in every folder: ISO 4762 and its like
		}
		mm, err2 := drawing.ParseLength(strings.TrimSpace(strings.TrimLeft(words[cut:], "xX×")), bare)
		if err != nil || err2 != nil || !(mm > 0) {
			continue
		}
		if full, ok := handbook.FillThread(t); ok {
			t = full
		}
		s.Thread, s.Length = model.Sure(t), mm
		return
	}
	if t, err := drawing.ParseThread(words); err == nil {
		if full, ok := handbook.FillThread(t); ok {
			t = full
		}
		s.Thread = model.Sure(t)
	}
}

// passed works out how much metal a screw passes at a clearance hole: the part there, less a
// counterbore that its head sinks into.
func (j *joiner) passed(r model.Ref) Passed {
	for _, t := range j.parts {
		for _, f := range t.Part.Forms {
			if f.Feature.Item != r.Item {
				continue
			}
			thick := f.Depth
			if f.Wrong != "" || !f.Through {
				thick = model.Known[float64]{Of: f.Feature.Item, Attr: "depth", At: f.Feature.At.At}
			}
			if c := f.Feature.Counterbore; c.Said {
				thick = model.Both(thick, c.Depth, func(t float64, d drawing.Size) float64 { return t - d.Nominal })
			}
			return Passed{f.Feature, thick}
		}
	}
	return Passed{nil, model.Known[float64]{Of: r.Item, Attr: "thickness where the screw passes", At: r.At}}
}

// into finds the threaded hole that a screw ends in.
func (j *joiner) into(s *Screwed, r model.Ref) {
	s.Has = model.Known[float64]{Of: r.Item, Attr: "thread.depth", At: r.At}
	for _, t := range j.parts {
		for _, f := range t.Part.Forms {
			if f.Feature.Item != r.Item || !f.Feature.Thread.Said {
				continue
			}
			s.Into, s.Part = f.Feature, t.Part
			s.Blind = !f.Through
			s.Takes = f.Feature.Thread.Size.V
			if full, ok := handbook.FillThread(s.Takes); ok {
				s.Takes = full
			}
			switch th := f.Feature.Thread; {
			case th.Depth.Is():
				s.Has = th.Depth
			case f.Through && f.Depth.Is():
				s.Has = f.Depth
			default:
				s.Has = model.Lacking[float64](th.Depth.Missing())
			}
		}
	}
}

// Stands is how far the screw goes in beyond what it passes, mm.
func (s *Screwed) Stands() model.Known[float64] {
	if s.Length == 0 {
		return model.Known[float64]{Of: s.Model.Item, Attr: "size (its length)", At: s.Model.Item.At}
	}
	return model.Map(s.Stack, func(t float64) float64 { return s.Length - t })
}

// Engaged is the length of thread in use.
func (s *Screwed) Engaged() model.Known[float64] {
	return model.Both(s.Stands(), s.Has, func(a, b float64) float64 { return math.Max(0, math.Min(a, b)) })
}
