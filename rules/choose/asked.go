package choose

import (
	"slices"

	"fettle/eval"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// asked is one operation that a tool is wanted for.
type asked struct {
	c      *chooser
	part   *eval.Part
	hold   *eval.Holding
	chuck  *eval.Chucking // on a lathe, in place of hold
	before *eval.State
	step   *eval.Step
	target eval.Target
	by     string
	byHand bool
}

func (c *chooser) asked(h *eval.Holding, before *eval.State, st *eval.Step) *asked {
	k := &asked{c: c, part: h.Part, hold: h, before: before, step: st}
	if len(st.Makes) > 0 {
		k.target = st.Makes[0]
	}
	k.by = k.process()
	if s := st.Step; s != nil {
		switch s.TurnedBy.V {
		case "hand", "hand under the spindle":
			k.byHand = true
		}
		if !s.TurnedBy.Is() && slices.ContainsFunc(k.pinnedHolders(), func(r model.Ref) bool { return r.Item != nil && r.Item.Kind == "tap_wrench" }) {
			k.byHand = true
		}
	}
	return k
}

func (k *asked) setup() *model.SetUp { return k.step.Work.SetUp }

func (k *asked) pinnedTools() []model.Ref {
	if s := k.step.Step; s != nil && s.Tool.Is() {
		return s.Tool.V
	}
	return k.setup().Tool.V
}

func (k *asked) pinnedHolders() []model.Ref {
	if s := k.step.Step; s != nil && s.Holder.Is() {
		return s.Holder.V
	}
	return k.setup().Holder.V
}

var processOf = map[string]string{
	"drill": "drilling", "reamer": "reaming", "tap": "tapping", "countersink": "countersinking",
	"counterbore": "counterboring", "centre_drill": "spotting", "slitting_saw": "sawing",
	"end_mill": "milling", "slot_drill": "milling", "face_mill": "milling", "fly_cutter": "milling",
	"side_and_face_cutter": "milling", "angle_cutter": "milling", "file": "filing", "scraper": "scraping",
	"piercing_saw": "sawing", "gear_cutter": "milling", "turning_tool": "engraving", "threading_tool": "engraving",
	"boring_bar": "boring",
}

// process is how the target is made: as written, else as the tool that is written works,
// else as its kind calls for. A hole that was drilled before and wants a close tolerance is
// reamed; a boring head stands aside until it is named.
func (k *asked) process() string {
	if s := k.step.Step; s != nil && s.By.Is() {
		return s.By.V
	}
	if k.step.Work.Kind == "bench" && k.setup().By.V != "" {
		return k.setup().By.V
	}
	f := k.target.Form
	if k.headNamed() {
		return "boring"
	}
	for _, r := range k.pinnedTools() {
		if r.Item == nil {
			continue
		}
		by := processOf[r.Item.Kind]
		if by == "milling" && f != nil && !k.faces() && (f.Feature.Kind == "slit" || f.Feature.Kind == "split") {
			by = "sawing"
		}
		if by != "" {
			return by
		}
	}
	if f == nil || k.faces() {
		if k.step.Work.Kind == "bench" {
			return "filing"
		}
		return "milling"
	}
	switch k.target.Sub {
	case "thread":
		return "tapping"
	case "counterbore":
		return "counterboring"
	case "countersink":
		return "countersinking"
	}
	switch f.Kind() {
	case "hole":
		return k.holeProcess()
	case "bore":
		return "boring"
	case "centre_hole":
		return "centring"
	case "thread":
		return "threading"
	case "graduations":
		if k.step.Work.Kind == "bench" {
			return "scribing"
		}
		return "engraving"
	case "slit", "split":
		return "sawing"
	case "chamfer", "radius":
		if len(f.Rims) > 0 && f.Feature.Kind == "chamfer" && len(k.c.countersinks(k)) > 0 {
			return "countersinking"
		}
		if k.setup().Tilt.Said && k.step.Work.Kind == "setup" {
			return "milling"
		}
		return "filing"
	}
	if k.step.Work.Kind == "bench" {
		return "filing"
	}
	return "milling"
}

// holeProcess is how a plain hole is made: one that was begun before is reamed, if its drawing sets limits
// to it or no more is left than a reamer takes; else it is drilled.
func (k *asked) holeProcess() string {
	f := k.target.Form
	fs := k.part.Feature(k.before, f)
	final := k.wanted() >= f.Diameter.V-model.Grain
	if fs.Begun && final && fs.Diameter < f.Diameter.V-model.Grain {
		for _, cu := range k.c.here([]string{"reamer"}) {
			_, most, _, ok := handbook.ReamAllowance(cu.ReamerKind.V, f.Diameter.V, material(k.part))
			if cu.Diameter.V.Has(f.Diameter.V) && (f.Feature.Diameter.V.Tol.Own() || !ok || f.Diameter.V-fs.Diameter <= most+model.Same) {
				return "reaming"
			}
		}
	}
	return "drilling"
}

// wanted is the diameter that the step asks for: `to`, the finished size less `leaves`, or
// the finished size.
func (k *asked) wanted() float64 {
	f := k.target.Form
	if f == nil {
		return 0
	}
	if s := k.step.Step; s != nil {
		if s.To.Is() {
			return s.To.V.Size.Nominal
		}
		if s.Leaves.Is() {
			return f.Diameter.V - s.Leaves.V
		}
	}
	return f.Diameter.V
}

// drillSize is what a drill is wanted for: the size asked for, or where a reamer of the
// finished size comes later in the work, one within its allowance.
func (k *asked) drillSize() float64 {
	f := k.target.Form
	if f == nil {
		return 0
	}
	if s := k.step.Step; s != nil && (s.To.Is() || s.Leaves.Is()) {
		return k.wanted()
	}
	kind, later := k.reamedLater()
	if !later {
		return k.wanted()
	}
	lo, hi, _, ok := handbook.ReamAllowance(kind, f.Diameter.V, material(k.part.Makes(k.step)))
	if !ok {
		return k.wanted()
	}
	for _, cu := range k.c.here([]string{"drill"}) {
		if d, ok := under(cu.Diameter.V, f.Diameter.V-lo); ok && d >= f.Diameter.V-hi-model.Same {
			return d
		}
	}
	return f.Diameter.V - hi
}

// reamedLater says whether a later step of the part reams the same hole, and with what kind
// of reamer.
func (k *asked) reamedLater() (string, bool) {
	past := false
	for _, w := range k.part.Work {
		for _, st := range w.Steps {
			if st == k.step {
				past = true
				continue
			}
			if !past || st.Step == nil {
				continue
			}
			for _, t := range st.Makes {
				if t.Form != k.target.Form || t.Sub != "" {
					continue
				}
				if st.Step.By.V == "reaming" {
					return "machine", true
				}
				for _, r := range st.Step.Tool.V {
					if r.Item != nil && r.Item.Kind == "reamer" {
						if cu, ok := model.Find(k.c.build.Shop.Cutters, r.Item); ok && cu.ReamerKind.Is() {
							return cu.ReamerKind.V, true
						}
						return "machine", true
					}
				}
			}
		}
	}
	return "", false
}

// widest is the widest cutter that goes into what is made.
func (k *asked) widest() float64 {
	f := k.target.Form
	if f == nil || k.faces() {
		return 1000
	}
	switch f.Kind() {
	case "hole":
		return k.wanted()
	case "step", "chamfer", "radius", "outside":
		return 1000
	case "outline":
		if f.Way != nil {
			if r, ok := f.Hollow(); ok {
				return 2 * r
			}
		}
		return 1000
	case "keyway":
		if f.Seat != nil {
			return 1000
		}
	}
	if f.Under != nil && f.Under.Tongue {
		return 1000
	}
	w := f.Width
	if c, ok := f.Feature.Corner.Get(); ok && f.Feature.Kind == "pocket" && c > 0 {
		w = min(w, 2*c)
	}
	return w
}

// faces says whether a flat face is made: one of the part's own, or that of a joint.
func (k *asked) faces() bool {
	return k.target.Form == nil || jointFace(k.part, k.target) != model.NoFace
}

// jointFace is the direction in which the face of a joint looks; NoFace where the target is none.
func jointFace(p *eval.Part, t eval.Target) model.Face {
	f, _ := p.JointFace(t)
	return f
}

// side says whether the tool is pushed sideways.
func (k *asked) side() bool {
	switch k.by {
	case "milling", "plunging", "sawing":
		return true
	}
	return false
}
