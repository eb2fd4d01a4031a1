package eval

import (
	"slices"

	"fettle/schema/model"
)

// Opening is a joint that is opened at a bench: a fit, a screw, or whatever else is joined.
type Opening struct {
	Bench  *model.SetUp
	Ref    model.Ref
	Joined bool // it was joined at a bench or by heat before
	Later  bool // it is joined afterwards
}

// Openings lists the joints that are opened, in the order of the work.
func (t *Trace) Openings() (out []Opening) {
	all := t.benches()
	for i, s := range all {
		for _, r := range s.Opens.V {
			joins := func(b *model.SetUp) bool { return joinsIt(b, r) }
			out = append(out, Opening{s, r, slices.ContainsFunc(all[:i], joins), slices.ContainsFunc(all[i:], joins)})
		}
	}
	return out
}

func joinsIt(s *model.SetUp, r model.Ref) bool {
	return r.Item != nil && slices.ContainsFunc(s.Joins.V, func(j model.Ref) bool { return j.Item == r.Item })
}

// apartAgain drops what was brought about by a joint that a bench opens: pressed, glued or shrunk, it holds
// nothing any more that heat could undo.
func apartAgain(was []Treatment, w *model.SetUp) []Treatment {
	if len(w.Opens.V) == 0 {
		return was
	}
	return slices.DeleteFunc(slices.Clone(was), func(t Treatment) bool {
		return t.Joint() && len(t.Joins) > 0 && slices.ContainsFunc(t.Joins, func(j model.Ref) bool {
			return slices.ContainsFunc(w.Opens.V, func(o model.Ref) bool { return o.Item != nil && o.Item == j.Item })
		})
	})
}
