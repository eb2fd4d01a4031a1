package sheet

import (
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// asWritten says what a set-up is written with that only the hands can see to. h is nil on a lathe.
func asWritten(u *model.SetUp, h *eval.Holding, put func(a, b string)) {
	if at, ok := u.OnTable.Get(); ok && len(at) == 2 && h != nil {
		put("on the table", "its middle "+length(at[0])+" from the left end of the table and "+length(at[1])+" from its front")
	}
	if u.Moved.V {
		put("moved", "the holding has been moved on the table: find the zero again")
	}
	if u.Zero.Kept.Is() {
		put("zero", "kept from the set-up before; leave the dials as they are")
	}
	if b, ok := u.Beside.Get(); ok {
		put("lies against", b.Path())
	}
	put("stuck by", u.StuckBy.V)
	if t, ok := u.TrueTo.Get(); ok {
		put("set true by", t.Path())
	}
	if h != nil {
		clamped(h, put)
		if t := h.Above(); t > 0 {
			put("on top", length(t)+" of metal or wood, to be cut into")
		}
	}
	soft(u, put)
}

// clamped says where the tips of the clamps press, from the left end and the back of the piece as it lies.
func clamped(h *eval.Holding, put func(a, b string)) {
	for i, b := range h.Bearings() {
		what := "clamp"
		if i > 0 {
			what = "and"
		}
		if b.Against {
			put(what, length(tidy(b.At[0]-h.Lo[0]))+" from the left end, "+length(tidy(b.At[2]-h.Lo[2]))+" above the foot of the piece")
			continue
		}
		put(what, length(tidy(b.At[0]-h.Lo[0]))+" from the left end, "+length(tidy(h.Hi[1]-b.At[1]))+" from the back")
	}
}

// soft says how soft jaws are cut for the piece.
func soft(u *model.SetUp, put func(a, b string)) {
	s := u.Soft
	var words []string
	if of := s.Named(); of.Is() {
		words = append(words, of.V.Path())
	}
	if s.Bored.Is() {
		words = append(words, "bored to ⌀"+written(s.Bored.V)+" under load")
	}
	if s.Depth.Is() {
		words = append(words, "with a step "+length(s.Depth.V)+" behind their face")
	}
	if s.Step.Is() && s.Step.V > 0 {
		words = append(words, "with a step "+length(s.Step.V)+" above the bed, that the piece sits on")
	}
	put("soft jaws", strings.Join(words, ", "))
}

// stop says where a work stop stands.
func stop(st *model.Stop, put func(a, b string)) {
	if !st.Said || !st.Against.Is() {
		return
	}
	s := "against " + st.Against.V.Path() + ", touching it with the piece down on what it stands on; every other piece goes against it alike"
	switch {
	case st.ClearOfTool.Is() && st.ClearOfTool.V:
		s += "; it stands clear of the tool"
	case st.ClearOfTool.Is():
		s += "; IT STANDS IN THE TOOL'S WAY: take it away before cutting"
	default:
		s += "; whether the tool clears it is not known: turn by hand along the whole cut"
	}
	put("stop", s)
}
