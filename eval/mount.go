package eval

import (
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// links records every joint from the spindle down to the tool, and the drawbar.
func (s *Stack) links(m *model.Machine, c *CutChoice) {
	if m == nil {
		return
	}
	upper, socket := m.Item, m.Taper
	open := model.Yes // a drawbar passes
	var openLacks []model.Lack
	for i, mt := range c.Mounts {
		switch {
		case mt.Sleeve != nil:
			sl := mt.Sleeve
			s.Links = append(s.Links, taperLink(upper, socket, sl.Item, asShank(sl.Outside)))
			upper, socket = sl.Item, sl.Inside
			switch {
			case !sl.Open.Is():
				open, openLacks = model.NotKnown, sl.Open.Missing()
			case !sl.Open.V:
				open = model.No
			}
		case mt.Holder != nil:
			h := mt.Holder
			if i == 0 && h.Mounts.Is() && socket.Is() && h.Mounts.V.Same(socket.V) {
				// A chuck that sits on the spindle's own nose, as on many drill presses: no
				// shank and no drawbar come into it.
				s.Links = append(s.Links, Link{Kind: "taper", Upper: upper, Lower: h.Item, Fits: model.Yes,
					Takes: socket.V.String(), Has: h.Mounts.V.String()})
			} else if i == 0 || c.Mounts[i-1].Sleeve != nil {
				s.Links = append(s.Links, taperLink(upper, socket, h.Item, h.Shank))
				s.drawbar(m, c, h.Item, h.Tail, open, openLacks)
			}
			upper = h.Item
		case mt.Collets != nil:
			s.collet(m, c, mt, upper, i)
			upper = mt.Collets.Item
		}
	}
	s.toolLink(m, c, upper, socket)
}

func asShank(t model.Known[drawing.Taper]) model.Known[model.Shank] {
	return model.Known[model.Shank]{V: model.Shank{Taper: t.V}, From: t.From, At: t.At, Of: t.Of, Attr: t.Attr}
}

// drawbar joins a holder's tail to a bar of the machine.
func (s *Stack) drawbar(m *model.Machine, c *CutChoice, item *model.Item, tail model.Known[model.Tail], open model.Answer, openLacks []model.Lack) {
	l := Link{Kind: "drawbar", Upper: m.Item, Lower: item}
	switch {
	case !tail.Is():
		l.Lacks = tail.Missing()
	case tail.V.Word != "":
		l.Has, l.Fits = tail.V.Word, model.No
		l.Why = "it is held by its taper alone"
	case open == model.No:
		l.Has, l.Fits = tail.V.Thread.String(), model.No
		l.Why = "the sleeve above it lets no drawbar through"
	case open == model.NotKnown:
		l.Lacks = openLacks
	case !m.Drawbars.Is():
		l.Has, l.Lacks = tail.V.Thread.String(), m.Drawbars.Missing()
	default:
		l.Has, l.Fits = tail.V.Thread.String(), model.No
		for i, d := range m.Drawbars.V {
			if d.Same(tail.V.Thread) {
				l.Fits = model.Yes
			}
			if i > 0 {
				l.Takes += ", "
			}
			l.Takes += d.String()
		}
	}
	s.Links = append(s.Links, l)
}

// collet joins a collet to its chuck, or to the spindle it goes straight into.
func (s *Stack) collet(m *model.Machine, c *CutChoice, mt Mount, upper *model.Item, i int) {
	co := mt.Collets
	if i == 0 {
		l := Link{Kind: "taper", Upper: upper, Lower: co.Item}
		if !m.Taper.Is() || !co.System.Is() {
			l.Lacks = append(m.Taper.Missing(), co.System.Missing()...)
		} else {
			l.Takes, l.Has = m.Taper.V.String(), co.System.V
			t, err := drawing.ParseTaper(co.System.V)
			l.Fits = answer(err == nil && t.Same(m.Taper.V))
		}
		s.Links = append(s.Links, l)
		s.drawbar(m, c, co.Item, model.Known[model.Tail]{V: model.Tail{Thread: co.Tail.V}, From: co.Tail.From,
			At: co.Tail.At, Of: co.Item, Attr: "tail"}, model.Yes, nil)
		return
	}
	h := c.Mounts[i-1].Holder
	if h == nil {
		return
	}
	l := Link{Kind: "collet", Upper: upper, Lower: co.Item}
	if !h.System.Is() || !co.System.Is() {
		l.Lacks = append(h.System.Missing(), co.System.Missing()...)
	} else {
		l.Takes, l.Has = h.System.V, co.System.V
		l.Fits = answer(h.System.V == co.System.V)
	}
	s.Links = append(s.Links, l)
}

// toolLink joins the tool's shank to what holds it.
func (s *Stack) toolLink(m *model.Machine, c *CutChoice, upper *model.Item, socket model.Known[drawing.Taper]) {
	t := c.Tool
	if t.Cutter == nil || len(c.Mounts) == 0 {
		if t.Cutter != nil {
			s.Links = append(s.Links, s.bare(upper, socket, t))
		}
		return
	}
	last := c.Mounts[len(c.Mounts)-1]
	l := Link{Kind: "shank", Upper: upper, Lower: t.Cutter.Item}
	switch {
	case last.Holder != nil && last.Holder.Kind == "arbor":
		return
	case last.Sleeve != nil:
		s.Links = append(s.Links, taperLink(upper, socket, t.Cutter.Item, t.Cutter.Shank))
		return
	case last.Collets != nil:
		l = s.inCollet(l, t, last)
	case last.Holder != nil && last.Holder.Kind == "drill_chuck":
		l = s.inChuck(l, t, last.Holder)
	default:
		return
	}
	s.Links = append(s.Links, l)
}

// bare joins a tool to the spindle itself: a tapered shank in its socket; a plain one is
// held by nothing.
func (s *Stack) bare(upper *model.Item, socket model.Known[drawing.Taper], t Pick) Link {
	if !s.Shank.Is() || t.Cutter.Shank.Is() && t.Cutter.Shank.V.Taper.Written != "" {
		return taperLink(upper, socket, t.Cutter.Item, t.Cutter.Shank)
	}
	takes := "nothing that is known"
	if socket.Is() {
		takes = socket.V.String()
	}
	return Link{Kind: "taper", Upper: upper, Lower: t.Cutter.Item, Fits: model.No, Takes: takes,
		Has: "a plain shank of " + model.Figure(s.Shank.V) + " mm", Why: "no chuck or collet holds it"}
}

// inCollet says whether a shank goes into a collet: never above its nominal size, and
// below it only as far as it closes.
func (s *Stack) inCollet(l Link, t Pick, mt Mount) Link {
	closes, ok := ColletCloses(mt.Collets, mt.Collet)
	if l.tapered(t) {
		return l
	}
	if !s.Shank.Is() || !ok {
		l.Lacks = s.Shank.Missing()
		if !ok {
			l.Lacks = append(l.Lacks, mt.Collets.Range.Missing()...)
		}
		return l
	}
	l.Takes = model.Figure(mt.Collet-closes) + " to " + model.Figure(mt.Collet) + " mm"
	l.Has = "a shank of " + model.Figure(s.Shank.V) + " mm"
	l.Fits = answer(s.Shank.V <= mt.Collet+model.Grain && s.Shank.V >= mt.Collet-closes-model.Grain)
	return l
}

// tapered says of a tool whose shank is a taper that no plain hole holds it.
func (l *Link) tapered(t Pick) bool {
	sh, ok := t.Cutter.Shank.Get()
	if !ok || sh.Diameter > 0 || sh.Taper.Written == "" && sh.Taper.Series == "" {
		return false
	}
	l.Takes, l.Has, l.Fits = "a plain shank", "a shank of "+sh.Taper.String(), model.No
	return true
}

func (s *Stack) inChuck(l Link, t Pick, h *model.Holder) Link {
	if l.tapered(t) {
		return l
	}
	r, ok := h.Range.Get()
	if !s.Shank.Is() || !ok || len(r) != 2 {
		l.Lacks = append(s.Shank.Missing(), h.Range.Missing()...)
		return l
	}
	l.Takes = model.Figure(r[0]) + " to " + model.Figure(r[1]) + " mm"
	l.Has = "a shank of " + model.Figure(s.Shank.V) + " mm"
	l.Fits = answer(s.Shank.V >= r[0]-model.Grain && s.Shank.V <= r[1]+model.Grain)
	return l
}

// ColletCloses is how far a collet of a set closes below its nominal size: as written,
// else by its system.
func ColletCloses(c *model.Collets, nominal float64) (float64, bool) {
	if r, ok := c.Range.Get(); ok && c.Range.Said() {
		return r, true
	}
	if row, ok := handbook.ColletSystem(c.System.V); ok {
		return row.Closes(nominal), true
	}
	return c.Range.Get()
}

// ColletSizes are the nominal sizes of a set: as written, else the full set of its system.
func ColletSizes(c *model.Collets) model.Sizes {
	if c.Sizes.Is() {
		return c.Sizes.V
	}
	row, _ := handbook.ColletSystem(c.System.V)
	return row.Full
}
