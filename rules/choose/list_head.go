package choose

import (
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// listing adds one choice to a list.
type listing func(what, item, why string)

// named says whether a thing is among those that are written.
func named(refs []model.Ref, i *model.Item) bool {
	return slices.ContainsFunc(refs, func(r model.Ref) bool { return r.Item == i })
}

// dividedChoices tells how a piece stands on a dividing head or rotary table, where the recipe leaves it
// open: which head, what carries the piece on it, what drives it and how it is held.
func dividedChoices(h *eval.Holding, add listing) {
	s, d := h.Work.SetUp, h.Choice.Divided
	if d == nil {
		return
	}
	written := append(append([]model.Ref{}, s.Hold.V...), s.Carries.V...)
	if !named(written, d.Item()) {
		add("head", d.Item().Path(), "the first with a footstock that passes")
	}
	if h.Choice.Clamps != nil && !named(written, h.Choice.Clamps.Item) {
		add("clamps", h.Choice.Clamps.Path(), "the first here")
	}
	k := h.Carried
	if k == nil {
		return
	}
	if i := k.Choice.Holder(); i != nil && !named(written, i) {
		add("carries", k.Choice.HeldBy(), "the first that passes")
	}
	colletChoice(written, &k.Choice, add)
	if v := k.Choice.Driver; v != nil && !s.Driver.Is() {
		add("driver", v.Path(), "the first that goes on the work")
	}
	if !s.End.Is() && !d.Upright {
		add("end held", k.Choice.End.String(), "the first that passes")
	}
	gripChoice(k, add)
}

// colletChoice tells which collet of a set is taken that is written whole.
func colletChoice(written []model.Ref, c *eval.ChuckChoice, add listing) {
	if c.Collets == nil {
		return
	}
	for _, r := range written {
		if r.Item == c.Collets.Item && !r.Has {
			add("collet", c.HeldBy(), "the one that closes on the work")
		}
	}
}

// gripChoice tells how far the piece stands out of what holds it, where that is not written.
func gripChoice(h *eval.Chucking, add listing) {
	s, c := h.Work.SetUp, &h.Choice
	switch {
	case c.Centres, c.Faceplate != nil:
	case c.Mandrel != nil && !s.StickOut.Is() && !c.Gripped:
		add("on the mandrel", model.Figure(h.Held)+" mm", "as far as it goes on")
	case !s.StickOut.Is() && c.Deeper:
		add("stick-out", model.Figure(h.Free)+" mm", "what is left beside the usual grip; the tool's holder must stand clear of the jaws")
	case !s.StickOut.Is() && !c.Gripped:
		add("stick-out", model.Figure(h.Free)+" mm", "the least that all its work needs")
	case !s.StickOut.Is():
		add("stick-out", model.Figure(h.Free)+" mm", "worked out from the grip")
	case h.JawLength.Is():
		add("grip", model.Figure(h.Contact)+" mm", "worked out from the stick-out")
	}
}

// memberChoice tells which member is taken of a set of tools that is written whole, and which tap of a set.
func memberChoice(s *model.Step, set *model.SetUp, t eval.Pick, add listing) {
	refs := s1(s)
	if len(refs) == 0 {
		refs = set.Tool.V
	}
	if t.Cutter == nil {
		return
	}
	for _, r := range refs {
		if r.Item == t.Cutter.Item && !r.Has && t.Path() != r.Path() {
			add("tool", t.Path(), "the member of the set that passes")
		}
	}
	if t.Lead.Word != "" && len(t.Cutter.Leads.V) > 1 {
		if turn := t.TapsInTurn(); len(turn) > 1 {
			add("taps", strings.Join(turn, ", then "), "the longer leads begin the thread, the last goes as deep as it is wanted")
			return
		}
		add("tap", t.Lead.Word, "the first that passes, the longest lead first where it goes through")
	}
}

// pairWritten tells which set of parallels is taken where a height is written and several have it.
func pairWritten(h *eval.Holding, add listing) {
	s, c := h.Work.SetUp, &h.Choice
	if !s.Parallels.Height.Is() || c.Pair == nil {
		return
	}
	have := 0
	for _, p := range h.Part.Build.Shop.Parallels {
		if p.AtHand() && p.Heights.V.Has(c.Height) {
			have++
		}
	}
	if have > 1 {
		add("parallels", c.Pair.Item.Member(c.Height), "the first set with that height")
	}
}

// mountChoice tells which collet goes in a holder that is written without one.
func mountChoice(s *model.Step, set *model.SetUp, mounts []eval.Mount, add listing) {
	refs := set.Holder.V
	if s != nil && s.Holder.Is() {
		refs = s.Holder.V
	}
	for _, m := range mounts {
		whole := func(r model.Ref) bool { return r.Item == m.Item() && r.Has }
		if m.Collets != nil && len(refs) > 0 && !slices.ContainsFunc(refs, whole) {
			add("collet", m.Path(), "the one that closes on the shank")
		}
	}
}
