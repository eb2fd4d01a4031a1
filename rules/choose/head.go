package choose

import (
	"fettle/eval"
	"fettle/schema/model"
)

// divided is a dividing head or rotary table; nil where the item is none.
func (c *chooser) divided(i *model.Item) *eval.Divided {
	if i == nil {
		return nil
	}
	if h, ok := model.Find(c.build.Shop.Heads, i); ok {
		return &eval.Divided{Head: h}
	}
	if t, ok := model.Find(c.build.Shop.Tables, i); ok {
		return &eval.Divided{Table: t, Upright: true}
	}
	return nil
}

// onHeads lists the ways a piece could stand on a dividing head or rotary table: carried as
// written, else by each chuck that is here; held by either end.
func (c *chooser) onHeads(p *eval.Part, before *eval.State, w *eval.Work, h eval.HoldChoice, d *eval.Divided) []eval.HoldChoice {
	s := w.SetUp
	if !p.Round {
		return c.onRotary(p, before, w, h, d)
	}
	upright := d.Upright
	switch {
	case s.AxisWord.V == "upright" || s.AxisAngle.Is() && s.AxisAngle.V == 90:
		upright = true
	case s.AxisWord.V == "level" || s.AxisAngle.Is() && s.AxisAngle.V == 0:
		upright = false
	case s.AxisAngle.Is():
		h.NotPlayed = "an axis that leans is not made on paper yet"
		return []eval.HoldChoice{h}
	}
	var out []eval.HoldChoice
	for _, k := range c.carried(p, before, w) {
		for _, end := range heldEnds(p, w) {
			one := *d
			one.Upright, one.Blocks = upright, s.Blocks.Or(0)
			one.Foot = !upright && footstock(s, d)
			one.Carries = k
			one.Carries.End = end
			c.placed(p, before, w, &one.Carries)
			a := h
			a.Divided, a.Up, a.Back = &one, model.Top, model.Back
			if upright {
				a.Up = end.Opposite()
			}
			out = append(out, a)
		}
	}
	if len(out) == 0 {
		h.NotPlayed = "nothing is known to hold it on " + d.Item().Path()
		out = append(out, h)
	}
	return out
}

// footstock says whether the free end is held by the footstock of a head: the head itself is named
// as what supports, or a centre, which nothing else beside a head carries.
func footstock(s *model.SetUp, d *eval.Divided) bool {
	i := s.Support.By.V.Item
	return d.Head != nil && i != nil && (i == d.Head.Item || i.Kind == "centre")
}

// carried lists what could hold the piece on a head: as written, else every chuck here.
func (c *chooser) carried(p *eval.Part, before *eval.State, w *eval.Work) []eval.ChuckChoice {
	s := w.SetUp
	base := eval.ChuckChoice{Reversed: s.JawsReversed.V, Soft: s.Soft.Said}
	c.between(s, &base)
	base.Support = p.SupportOf(s.Support)
	refs := s.Carries.V
	if len(refs) == 0 {
		for _, r := range s.Hold.V { // a list from the work outwards: the chuck stands before the head
			if r.Item != nil && c.divided(r.Item) == nil {
				refs = append(refs, r)
			}
		}
	}
	if len(refs) > 0 {
		for _, r := range refs {
			if c.heldBy(r, before, &base) != "" {
				return nil
			}
		}
		if base.Holder() == nil {
			return nil
		}
		return []eval.ChuckChoice{base}
	}
	var out []eval.ChuckChoice
	for _, k := range c.shelf.chucks {
		if k.AtHand() {
			h := base
			h.Chuck = k
			out = append(out, h)
		}
	}
	return out
}

// onRotary lists the ways a part that is not turned could be held on a rotary table lying flat: clamped
// down, or in a vise.
func (c *chooser) onRotary(p *eval.Part, before *eval.State, w *eval.Work, h eval.HoldChoice, d *eval.Divided) []eval.HoldChoice {
	s := w.SetUp
	level := s.AxisWord.V == "level" || s.AxisAngle.Is() && s.AxisAngle.V != 90
	if d.Table == nil || level {
		h.NotPlayed = "a part that is not turned is made on paper on a rotary table lying flat, and on no other thing that divides yet"
		return []eval.HoldChoice{h}
	}
	for _, r := range append(append([]model.Ref{}, s.Carries.V...), s.Hold.V...) {
		if v, ok := model.Find(c.build.Shop.Clamps, r.Item); ok {
			h.Clamps = v
		}
		if v, ok := model.Find(c.build.Shop.Vises, r.Item); ok {
			h.Vise = v
		}
	}
	for _, v := range c.build.Shop.Clamps {
		if h.Clamps == nil && h.Vise == nil && v.AtHand() {
			h.Clamps = v
		}
	}
	if h.Clamps == nil && h.Vise == nil {
		h.NotPlayed = "nothing is known to hold it down on " + d.Item().Path()
		return []eval.HoldChoice{h}
	}
	one := *d
	one.Upright, one.Blocks = true, s.Blocks.Or(0)
	h.Divided = &one
	return c.attitudes(p, before, w, h)
}
