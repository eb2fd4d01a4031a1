package eval

import (
	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// What joins the parts of a build is worked out from the drawing alone: no step need be
// played for it. A size that was measured takes the place of its limits.

// Joint is one fit, mesh, stack, screw, assembly or measured size of a build: exactly one of
// Fit to Made is set.
type Joint struct {
	Spot     finding.Spot
	Item     *model.Item
	Fit      *FitJoint
	Mesh     *MeshJoint
	Stack    *StackJoint
	Screw    *Screwed
	Assembly *Assembled
	Made     *MadeSize
	Trace    *Trace
	// Unplayed says in a sentence why it is not worked out; "" if it is.
	Unplayed string
}

// FitJoint is a shaft in a hole.
type FitJoint struct {
	Model       *model.Fit
	Hole, Shaft Dimension
	Play        model.Known[Limits] // clearance on diameter, mm; below nought interference
	Wants       model.Known[Limits]
	Class       string // "H7/g6"; "" where a clearance is written
}

// MadeSize is a size that was measured.
type MadeSize struct {
	Model   *model.Made
	Of      Dimension // with the limits of the drawing
	Reading model.Known[float64]
}

// join works out every joint of the build, in the order of their kinds and labels.
func (t *Trace) join() {
	b := t.Build
	add := func(i *model.Item) *Joint {
		j := &Joint{Item: i, Spot: finding.Spot{SetUp: name(i)}, Trace: t}
		t.Joints = append(t.Joints, j)
		return j
	}
	for _, f := range b.Fits {
		add(f.Item).Fit = t.fit(f)
	}
	for _, m := range b.Meshes {
		add(m.Item).mesh(m)
	}
	for _, s := range b.Stacks {
		j := add(s.Item)
		j.Stack = t.stack(s)
		j.Unplayed = j.Stack.Why
	}
	for _, s := range b.Screwed {
		add(s.Item).Screw = t.screw(s)
	}
	for _, a := range b.Assemblies {
		add(a.Item).assembly(a)
	}
	for _, m := range b.Made {
		add(m.Item).Made = &MadeSize{Model: m, Of: t.drawn(m.Of.V), Reading: m.Size}
	}
	t.patterns()
}

func (t *Trace) fit(f *model.Fit) *FitJoint {
	out := &FitJoint{Model: f, Hole: t.dimension(ofBearing(f.Hole.V, "bore")), Shaft: t.dimension(ofBearing(f.Shaft.V, "outside"))}
	out.Play = model.Both(out.Hole.Limits, out.Shaft.Limits, func(h, s Limits) Limits {
		lo, hi := fit.Play(h.Lo, h.Hi, s.Lo, s.Hi)
		return Limits{lo, hi}
	})
	out.Wants = model.Known[Limits]{Of: f.Item, Attr: "wants", At: f.Item.At}
	if c, ok := f.Class.Get(); ok && out.Hole.Known {
		if lo, hi, err := fit.Pair(handbook.ISO286(), out.Hole.Size.V.Nominal, c); err == nil {
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
