package choose

import (
	"math"
	"slices"
	"strings"

	"fettle/eval"
	"fettle/rules"
	"fettle/schema/model"
)

// Chuck tries the ways to hold a piece on a lathe, each with the whole of its work, and takes
// the first that gives no trouble and leaves no question. False where the work is none for a
// lathe.
func (c *chooser) Chuck(p *eval.Part, before *eval.State, w *eval.Work) (eval.ChuckChoice, bool) {
	if !c.latheWork(p, w) {
		return eval.ChuckChoice{}, false
	}
	all, why := c.chuckings(p, before, w)
	if why != "" {
		return eval.ChuckChoice{NotPlayed: why}, true
	}
	return held(c, w, all, func(h *eval.ChuckChoice) *model.Machine { return h.Machine }, func(hc eval.ChuckChoice, bound score, left remaining) score {
		h := c.player.Chuck(p, before, w, hc)
		return inTurn(w, before, rate(c.runner.AtChuck(h)), bound, left, func(s *eval.State, st *eval.Step) ([]rules.Verdict, score, *eval.State) {
			if st.Kind == "shift" {
				h = c.player.ShiftChuck(h, s, st)
				return c.runner.AtChuck(h), score{}, s
			}
			t := c.turn(h, s, st)
			k := c.player.Turn(h, s, st, t.best)
			return c.runner.AtTurn(k), t.least, k.Left
		})
	}), true
}

// latheWork says whether a stretch of work is done on a lathe: as its machine or its holding
// says; left open, work on a turned part that goes round its axis.
func (c *chooser) latheWork(p *eval.Part, w *eval.Work) bool {
	s := w.SetUp
	if r, ok := s.Machine.Get(); ok && r.Item != nil {
		return r.Item.Kind == "lathe"
	}
	lathe := false
	for _, r := range s.Hold.V {
		if r.Item == nil {
			kind, _, _ := strings.Cut(r.Text, ".")
			lathe = lathe || r.Text == "centres" && !c.dividedBetween(p, w) || p.GoesRound(w) && oneOf(kind, "chuck", "collets", "mandrel", "faceplate")
			continue
		}
		switch r.Item.Kind {
		case "dividing_head", "rotary_table", "vise", "clamps":
			return false
		case "chuck", "collets", "mandrel", "faceplate", "collet_chuck":
			lathe = true
		}
	}
	if s.Hold.Is() {
		return lathe
	}
	return p.GoesRound(w) && (p.Round || w.Bossed())
}

// dividedBetween says whether work between centres is milled on a dividing head: it does not go round,
// no lathe is named or asked for by a process, and such a head is here.
func (c *chooser) dividedBetween(p *eval.Part, w *eval.Work) bool {
	for _, st := range w.Steps {
		if st.Step != nil && oneOf(st.Step.By.V, "planing", "engraving", "scribing") {
			return false
		}
		for _, t := range st.Makes {
			if t.Form != nil && (t.Form.Scale != nil || t.Form.KeyBore != nil) {
				return false
			}
		}
	}
	return len(w.Steps) > 0 && !p.GoesRound(w) && len(c.centred()) > 0
}

// lathes lists the lathes for a stretch of work: as written, else those that are here.
func (c *chooser) lathes(w *eval.Work) ([]*model.Machine, string) {
	if r, ok := w.SetUp.Machine.Get(); ok {
		m, found := model.Find(c.build.Shop.Machines, r.Item)
		if !found {
			return nil, r.Text + " is in no shop that was named"
		}
		return []*model.Machine{m}, ""
	}
	var out []*model.Machine
	for _, m := range c.shelf.machines {
		if m.Kind == "lathe" {
			out = append(out, m)
		}
	}
	switch {
	case len(out) > 0:
		return out, ""
	case c.build.Shop.Label == "" && len(c.build.Shop.All) == 0:
		return nil, "no shop was named, so no machine is known"
	}
	return nil, eval.NoMachineHere
}

// chuckings lists the ways a piece could be held, in the order they are tried.
func (c *chooser) chuckings(p *eval.Part, before *eval.State, w *eval.Work) ([]eval.ChuckChoice, string) {
	lathes, why := c.lathes(w)
	if why != "" {
		return nil, why
	}
	grips, why := c.chuckGrips(p, before, w)
	if why != "" {
		return nil, why
	}
	var out []eval.ChuckChoice
	for _, m := range lathes {
		for _, g := range grips {
			for _, end := range heldEnds(p, w) {
				h := g
				h.Machine, h.End = m, end
				deeper := c.placed(p, before, w, &h)
				out = append(out, h)
				if deeper > 0 {
					h.Out, h.Deeper = deeper, true
					out = append(out, h)
				}
				if len(out) >= mostHolds {
					return out[:mostHolds], ""
				}
			}
		}
	}
	return out, ""
}

// chuckGrips lists what could hold the piece: as written; else every chuck that is here.
func (c *chooser) chuckGrips(p *eval.Part, before *eval.State, w *eval.Work) ([]eval.ChuckChoice, string) {
	s := w.SetUp
	base := eval.ChuckChoice{Reversed: s.JawsReversed.V, Soft: s.Soft.Said, Bored: s.Soft.Bored.V.Nominal}
	c.between(s, &base)
	base.On = gripOn(p, s)
	base.Support = p.SupportOf(s.Support)
	if !s.Hold.Is() {
		var out []eval.ChuckChoice
		for _, k := range c.shelf.chucks {
			if k.AtHand() {
				h := base
				h.Chuck = k
				out = append(out, h)
			}
		}
		out = jawsTurned(s, out)
		if p.Round {
			out = append(out, c.inCollets(before, base)...)
		}
		if !p.Round && base.Support == nil && clearOfClamps(w) {
			out = append(out, c.faceplates(base)...)
		}
		if len(out) == 0 {
			return nil, "nothing is known to hold it in"
		}
		return out, ""
	}
	for _, r := range s.Hold.V {
		if why := c.heldBy(r, before, &base); why != "" {
			return nil, why
		}
	}
	if why := viseOnLathe(s, &base); why != "" {
		return nil, why
	}
	if base.Holder() == nil && !base.Centres && base.AnglePlate == nil {
		return nil, "work held in " + s.Hold.V[len(s.Hold.V)-1].Path() + " is not made on paper yet"
	}
	return jawsTurned(s, []eval.ChuckChoice{base}), ""
}

// jawsTurned adds, where the set-up does not say how the jaws stand, every chuck once more with its
// jaws turned round, after all the others.
func jawsTurned(s *model.SetUp, all []eval.ChuckChoice) []eval.ChuckChoice {
	if s.JawsReversed.Is() {
		return all
	}
	for _, h := range all[:len(all):len(all)] {
		if h.Chuck != nil && (h.Chuck.Reversed.Grips.Is() || h.Chuck.Reversed.GripsInside.Is()) {
			h.Reversed = true
			all = append(all, h)
		}
	}
	return all
}

// heldBy reads one thing of a written holding.
func (c *chooser) heldBy(r model.Ref, before *eval.State, h *eval.ChuckChoice) string {
	shop := &c.build.Shop
	if r.Item == nil {
		if r.Text == "centres" {
			h.Centres = true
			return ""
		}
		return r.Text + " is in no shop that was named"
	}
	switch r.Item.Kind {
	case "chuck":
		h.Chuck, _ = model.Find(shop.Chucks, r.Item)
	case "mandrel":
		h.Mandrel, _ = model.Find(shop.Mandrels, r.Item)
	case "faceplate":
		h.Faceplate, _ = model.Find(shop.Faceplates, r.Item)
	case "angle_plate":
		h.AnglePlate, _ = model.Find(shop.AnglePlates, r.Item)
	case "split_bush":
		h.Bush, _ = model.Find(shop.SplitBushes, r.Item)
	case "nut":
		h.Nut, _ = model.Find(shop.Nuts, r.Item)
	case "collets":
		co, _ := model.Find(shop.Collets, r.Item)
		h.Collets = co
		if h.Collet = r.Size; co != nil && !r.Has {
			h.Collet, _ = c.nominal(co, model.Sure(closedOn(before, h)))
		}
	case "soft_jaws":
		h.Soft = true
	}
	return ""
}

// between reads what lies between jaws and work.
func (c *chooser) between(s *model.SetUp, h *eval.ChuckChoice) {
	r, ok := s.Between.Get()
	switch {
	case !ok:
	case r.Item == nil:
		h.Between = r.Text
	case r.Item.Kind == "split_bush":
		h.Bush, _ = model.Find(c.build.Shop.SplitBushes, r.Item)
	case r.Item.Kind == "nut":
		h.Nut, _ = model.Find(c.build.Shop.Nuts, r.Item)
	}
}

// heldEnds lists the ends that may be held: as written; else the one that no step of the
// holding makes, the left one first; a parted end is the held one.
func heldEnds(p *eval.Part, w *eval.Work) []model.Face {
	if r, ok := w.SetUp.End.Get(); ok {
		return []model.Face{r.Face}
	}
	if r, ok := w.SetUp.Up.Get(); ok && r.Face != model.NoFace { // on a faceplate: what looks away from it
		return []model.Face{r.Face.Opposite()}
	}
	made := map[model.Face]bool{}
	least, most := p.TurnsAbout(w).Ends()
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			switch {
			case t.Form == nil && t.Face != model.NoFace:
				if st.Step != nil && st.Step.By.V == "parting" {
					return []model.Face{t.Face}
				}
				made[t.Face] = true
			case t.Form != nil && (t.Form.Lathe == nil || t.Form.Feature.Kind == "bore" || !p.Round && t.Form.Feature.Kind == "outside"):
				made[t.Form.Into.Face] = true
			}
		}
	}
	switch {
	case made[least] && !made[most]:
		return []model.Face{most}
	case made[most] && !made[least]:
		return []model.Face{least}
	}
	return []model.Face{least, most}
}

// gripOn is the surface that a set-up says it grips; nil where it says none.
func gripOn(p *eval.Part, s *model.SetUp) *eval.Form {
	if on, ok := s.GripOn.Get(); ok {
		return p.FormOf(on.Item)
	}
	return nil
}

// closedOn is the diameter, mm, that a collet is to close on: that of the surface that is to be gripped, else the largest.
func closedOn(before *eval.State, h *eval.ChuckChoice) float64 {
	if l := h.On.Outer(); l != nil {
		return 2 * math.Max(l.R0, l.R1)
	}
	return 2 * before.Profile.Most()
}

// thumb is a limit of judgement.
func (c *chooser) thumb(name string) float64 { return c.build.Thumbs[name].V }

// post is the tool post of a step: as written, else the first that is here.
func (c *chooser) post(st *eval.Step) *model.Holder {
	if st.Step != nil {
		for _, r := range append(append([]model.Ref{}, st.Step.Holder.V...), st.Work.SetUp.Holder.V...) {
			if h, ok := model.Find(c.build.Shop.Holders, r.Item); ok && h.Kind == "tool_post" {
				return h
			}
		}
	}
	// Else one in front of the axis, where an edge upwards cuts forward; with the spindle written to run in
	// reverse, one behind it.
	var other *model.Holder
	behind := st.Step != nil && st.Step.Spindle.V == "reverse"
	for _, h := range c.holders("tool_post") {
		if (h.Place.V == "rear") == behind {
			return h
		}
		if other == nil {
			other = h
		}
	}
	return other
}

// inCollets are the collets that are here and close on the bar as it now is, after every chuck. Whether
// they go in the spindle a rule asks.
func (c *chooser) inCollets(before *eval.State, base eval.ChuckChoice) []eval.ChuckChoice {
	var out []eval.ChuckChoice
	for _, z := range before.Profile {
		if z.Flats > 0 {
			return nil
		}
	}
	for _, co := range c.build.Shop.Collets {
		n, ok := c.nominal(co, model.Sure(closedOn(before, &base)))
		if !co.AtHand() || !ok {
			continue
		}
		h := base
		h.Collets, h.Collet = co, n
		out = append(out, h)
	}
	return out
}

func oneOf(s string, all ...string) bool { return slices.Contains(all, s) }
