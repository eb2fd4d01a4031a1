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
	if !p.Round && c.clampedOn(s, d) {
		return c.onRotary(p, before, w, h, d)
	}
	var out []eval.HoldChoice
	upright, slope := axisOf(s, d)
	for _, k := range c.carried(p, before, w) {
		if s.Support.Said || k.Centres {
			c.driven(before, s, &k)
		}
		for _, end := range headEnds(p, w, upright) {
			one := *d
			one.Upright, one.Slope, one.Blocks = upright, slope, s.Blocks.Or(0)
			one.Carries = k
			one.Carries.End = end
			one.Foot = !upright && footstock(s, d) || k.Centres || k.Support != nil && !k.Support.Middle
			c.placed(p, before, w, &one.Carries)
			a := h
			a.Divided = &one
			a.Up, a.Back = model.FaceOn((end.Axis()+2)%3, 1), model.FaceOn((end.Axis()+1)%3, 1)
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

// axisOf is how the axis of a dividing head or rotary table stands: as written, else level, of a
// rotary table upright.
func axisOf(s *model.SetUp, d *eval.Divided) (upright bool, slope float64) {
	switch {
	case s.AxisWord.Is():
		return s.AxisWord.V == "upright", 0
	case s.AxisAngle.Is():
		return s.AxisAngle.V == 90, s.AxisAngle.V
	}
	return d.Upright, 0
}

// clampedOn says whether a part that is not turned lies on a rotary table itself, clamped or in a vise
// on it; else a chuck carries it.
func (c *chooser) clampedOn(s *model.SetUp, d *eval.Divided) bool {
	if upright, _ := axisOf(s, d); d.Table == nil || !upright {
		return false
	}
	for _, r := range append(append([]model.Ref{}, s.Carries.V...), s.Hold.V...) {
		if r.Item != nil && oneOf(r.Item.Kind, "chuck", "collets", "mandrel", "faceplate") {
			return false
		}
	}
	return true
}

// headEnds lists the ends of a piece that may be held on a dividing head: as written; of a turned part
// as on a lathe; with the axis upright those opposite what is entered; else those of the longest of its
// axes of which no end is made.
func headEnds(p *eval.Part, w *eval.Work, upright bool) []model.Face {
	s := w.SetUp
	switch {
	case p.Round || s.End.Is():
		return heldEnds(p, w)
	case upright:
		var out []model.Face
		for _, f := range ups(p, w) {
			out = append(out, f.Opposite())
		}
		return out
	}
	best, longest := -1, 0.0
	for axis := range 3 {
		made := false
		for _, f := range ups(p, w) {
			made = made || f.Axis() == axis
		}
		if size := p.Size[axis]; !made && size > longest+model.Grain {
			best, longest = axis, size
		}
	}
	if best < 0 {
		return heldEnds(p, w)
	}
	return []model.Face{model.FaceOn(best, -1), model.FaceOn(best, 1)}
}

// driven chooses the carrier of work between centres: as written, else the first here that holds it.
func (c *chooser) driven(before *eval.State, s *model.SetUp, k *eval.ChuckChoice) {
	if r, ok := s.Driver.Get(); ok {
		k.Driver, _ = model.Find(c.build.Shop.Carriers, r.Item)
		return
	}
	if !k.Centres && k.Mandrel == nil {
		return
	}
	d := 2 * before.Profile.Least()
	for _, v := range c.build.Shop.Carriers {
		if b, ok := v.Bars.Get(); v.Here() && (!ok || len(b) == 2 && d > b[0]-model.Grain && d < b[1]+model.Grain) {
			k.Driver = v
			return
		}
	}
}

// centred are the dividing heads here with a footstock, for work between centres under a mill.
func (c *chooser) centred() (out []eval.HoldChoice) {
	for _, d := range c.build.Shop.Heads {
		if d.Here() && d.Footstock.Said {
			out = append(out, eval.HoldChoice{Divided: &eval.Divided{Head: d}})
		}
	}
	return out
}

// carried lists what could hold the piece on a head: as written, else every chuck here.
func (c *chooser) carried(p *eval.Part, before *eval.State, w *eval.Work) []eval.ChuckChoice {
	s := w.SetUp
	base := eval.ChuckChoice{Reversed: s.JawsReversed.V, Soft: s.Soft.Said}
	for _, r := range s.Hold.V {
		if r.Item == nil && r.Text == "centres" {
			base.Centres, base.Support = true, p.SupportOf(s.Support)
			return []eval.ChuckChoice{base}
		}
	}
	c.between(s, &base)
	base.On = gripOn(p, s)
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
	if h.Clamps != nil {
		h.Plate = c.anglePlate(s)
	}
	one := *d
	one.Upright, one.Blocks = true, s.Blocks.Or(0)
	h.Divided = &one
	return c.attitudes(p, before, w, h)
}
