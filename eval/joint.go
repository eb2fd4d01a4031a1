package eval

import (
	"math"

	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// What joins the parts of a build is worked out from the drawing alone: no step need be
// played for it. A size that was measured takes the place of its limits.

// Joint is one fit, mesh, stack, screw or measured size of a build: exactly one field is set.
type Joint struct {
	Spot  finding.Spot
	Item  *model.Item
	Fit   *FitJoint
	Stack *StackJoint
	Screw *Screwed
	Made  *MadeSize
}

// Dimension is a size of a part with its limits.
type Dimension struct {
	Path   string // "part.clamp.hole.pillar.diameter"
	Of     *model.Item
	Attr   string
	Size   drawing.Size
	Limits model.Known[Limits]
	Made   *model.Made // the size found, where one was measured; then Limits are its own
	Known  bool        // the reference names a size
}

// FitJoint is a shaft in a hole.
type FitJoint struct {
	Model       *model.Fit
	Hole, Shaft Dimension
	Play        model.Known[Limits] // clearance on diameter, mm; below nought interference
	Wants       model.Known[Limits]
	Class       string // "H7/g6"; "" where a clearance is written
}

// StackJoint is a chain of dimensions: the first spans what the others fill.
type StackJoint struct {
	Model *model.Stack
	Links []Dimension
	Wants model.Known[Limits]
}

// MadeSize is a size that was measured.
type MadeSize struct {
	Model   *model.Made
	Of      Dimension // with the limits of the drawing
	Reading model.Known[float64]
}

// Joints works out every joint of a build, in the order of their kinds and labels.
func Joints(b *model.Build, parts []*PartTrace) []*Joint {
	j := joiner{build: b, parts: parts}
	var out []*Joint
	add := func(i *model.Item, one Joint) {
		one.Item, one.Spot = i, finding.Spot{SetUp: name(i)}
		out = append(out, &one)
	}
	for _, f := range b.Fits {
		add(f.Item, Joint{Fit: j.fit(f)})
	}
	for _, s := range b.Stacks {
		add(s.Item, Joint{Stack: j.stack(s)})
	}
	for _, s := range b.Screwed {
		add(s.Item, Joint{Screw: j.screw(s)})
	}
	for _, m := range b.Made {
		d := j.drawn(m.Of.V)
		add(m.Item, Joint{Made: &MadeSize{Model: m, Of: d, Reading: m.Size}})
	}
	return out
}

type joiner struct {
	build *model.Build
	parts []*PartTrace
}

// dimension is a size as it counts for joints: as measured, else as drawn.
func (j *joiner) dimension(r model.Ref) Dimension {
	d := j.drawn(r)
	for _, m := range j.build.Made {
		if m.Of.V.Path() != d.Path || !m.Size.Is() {
			continue
		}
		// What it was measured with may be off; where that is not known the reading counts.
		off := 0.0
		if a := m.Item.Attr("with"); a != nil && a.Value.Kind == model.RefTo {
			if i, ok := model.Find(j.build.Shop.Instruments, a.Value.Ref.Item); ok {
				off = instrumentError(i)
			}
		}
		d.Made, d.Limits = m, model.Sure(Limits{m.Size.V - off, m.Size.V + off})
	}
	return d
}

func instrumentError(i *model.Instrument) float64 {
	if e, ok := i.Error.Get(); ok {
		return e
	}
	lo, hi := 0.0, 0.0
	if r := i.Range.V; len(r) == 2 {
		lo, hi = r[0], r[1]
	}
	e, _ := handbook.InstrumentError(i.Kind, lo, hi, i.ReadsTo.V)
	return e
}

// drawn is a size with the limits of the drawing.
func (j *joiner) drawn(r model.Ref) Dimension {
	d := Dimension{Path: r.Path(), Of: r.Item, Attr: r.Sub}
	if r.Item == nil {
		return d
	}
	for _, p := range j.build.Parts {
		if p.Item == r.Item {
			d.Size, d.Known = partSize(p, r.Sub)
		}
		for _, f := range p.Features {
			if f.Item == r.Item {
				d.Size, d.Known = featureSize(f, r.Sub)
			}
		}
	}
	if d.Known {
		d.Limits = LimitsOf(d.Size, j.build.Recipe.General, d.Of, d.Attr)
	}
	return d
}

func partSize(p *model.Part, attr string) (drawing.Size, bool) {
	k := map[string]model.Known[drawing.Size]{"length": p.Length, "width": p.Width, "height": p.Height, "thickness": p.Thickness,
		"diameter": p.Diameter, "hexagon": p.Hexagon, "square": p.Square}[attr]
	return k.V, k.Is()
}

func featureSize(f *model.Feature, attr string) (drawing.Size, bool) {
	switch attr {
	case "depth":
		return f.Depth.V.Size, f.Depth.Is() && !f.Depth.V.Through
	case "counterbore.diameter":
		return f.Counterbore.Diameter.V, f.Counterbore.Diameter.Is()
	case "counterbore.depth":
		return f.Counterbore.Depth.V, f.Counterbore.Depth.Is()
	}
	k := map[string]model.Known[drawing.Size]{"diameter": f.Diameter, "width": f.Width, "across": f.Across, "size": f.Size,
		"small": f.Small, "large": f.Large, "": f.Diameter}[attr]
	return k.V, k.Is()
}

func (j *joiner) fit(f *model.Fit) *FitJoint {
	out := &FitJoint{Model: f, Hole: j.dimension(f.Hole.V), Shaft: j.dimension(f.Shaft.V)}
	out.Play = model.Both(out.Hole.Limits, out.Shaft.Limits, func(h, s Limits) Limits {
		lo, hi := fit.Play(h.Lo, h.Hi, s.Lo, s.Hi)
		return Limits{lo, hi}
	})
	out.Wants = model.Known[Limits]{Of: f.Item, Attr: "wants", At: f.Item.At}
	if c, ok := f.Class.Get(); ok && out.Hole.Known {
		if lo, hi, err := fit.Pair(handbook.ISO286(), out.Hole.Size.Nominal, c); err == nil {
			out.Class, out.Wants = c, model.Sure(Limits{lo, hi})
			return out
		}
	}
	if s, ok := f.Play.Get(); ok && s.Tol.Kind == drawing.Deviations {
		out.Wants = model.Sure(Limits{s.Nominal + s.Tol.Lo, s.Nominal + s.Tol.Hi})
	}
	return out
}

// Mate gives the limits between which the other part of a fit must lie, where one of the two
// was measured and the other not: of the shaft where the hole was, and the other way round.
func (f *FitJoint) Mate() (of *Dimension, lim Limits, ok bool) {
	w, known := f.Wants.Get()
	switch {
	case !known:
	case f.Hole.Made != nil && f.Shaft.Made == nil && f.Hole.Limits.Is():
		h := f.Hole.Limits.V
		return &f.Shaft, Limits{h.Hi - w.Hi, h.Lo - w.Lo}, true
	case f.Shaft.Made != nil && f.Hole.Made == nil && f.Shaft.Limits.Is():
		s := f.Shaft.Limits.V
		return &f.Hole, Limits{s.Hi + w.Lo, s.Lo + w.Hi}, true
	}
	return nil, Limits{}, false
}

func (j *joiner) stack(s *model.Stack) *StackJoint {
	out := &StackJoint{Model: s, Wants: model.Known[Limits]{Of: s.Item, Attr: "wants", At: s.Item.At}}
	for _, r := range s.Path.V {
		out.Links = append(out.Links, j.dimension(r))
	}
	if w, ok := s.Wants.Get(); ok && w.Tol.Kind == drawing.Deviations {
		out.Wants = model.Sure(Limits{w.Nominal + w.Tol.Lo, w.Nominal + w.Tol.Hi})
	}
	return out
}

// Gap is what the chain leaves: the first dimension less the others. Likely: the root of the
// sum of the squares of the half tolerances about the middles.
func (s *StackJoint) Gap(likely bool) model.Known[Limits] {
	var lacks []model.Lack
	worst := Limits{}
	mid, squares := 0.0, 0.0
	for i, l := range s.Links {
		lim, ok := l.Limits.Get()
		if !ok {
			lacks = append(lacks, l.Limits.Missing()...)
			continue
		}
		sign := -1.0
		if i == 0 {
			sign = 1
		}
		a, b := sign*lim.Lo, sign*lim.Hi
		worst.Lo, worst.Hi = worst.Lo+math.Min(a, b), worst.Hi+math.Max(a, b)
		mid += (a + b) / 2
		squares += lim.Width() * lim.Width() / 4
	}
	switch {
	case len(lacks) > 0:
		return model.Lacking[Limits](lacks)
	case likely:
		return model.Sure(Limits{mid - math.Sqrt(squares), mid + math.Sqrt(squares)})
	}
	return model.Sure(worst)
}
