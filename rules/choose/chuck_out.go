package choose

import (
	"math"

	"fettle/eval"
	"fettle/schema/model"
)

// placed settles how far the piece stands out: as written, else the least at which all the
// work of the holding can be reached, with room for the parting tool and the tool's holder. Where
// the room for the holder would leave too little to grip by, it says what to try next: a longer
// grip, at which the holder must stand clear of the jaws by standing farther out. 0: nothing.
func (c *chooser) placed(p *eval.Part, before *eval.State, w *eval.Work, h *eval.ChuckChoice) float64 {
	s := w.SetUp
	h.On = gripOn(p, s)
	switch {
	case s.StickOut.Is():
		h.Out = s.StickOut.V
		return 0
	case s.Grip.Is():
		h.Grip, h.Gripped = s.Grip.V, true
		return 0
	case s.Soft.Depth.Is() && s.Soft.Depth.V > 0: // it goes against the step of the bored jaws
		h.Grip, h.Gripped = s.Soft.Depth.V, true
		return 0
	}
	along := p.TurnsAbout(w).Along
	if h.End != model.NoFace {
		along = h.End.Axis()
	}
	lo, hi := p.MetalAlong(before, along)
	free, sign := hi, 1.0
	if h.End.Sign() > 0 {
		free, sign = lo, -1
	}
	need, bare := 0.0, 0.0                                                          // with the room for holder and blade, and for the cut alone
	if x, ok := h.On.NearerEnd(h.End); ok && (h.Chuck != nil || h.Collets != nil) { // what stands before the surface that is gripped stays out of it
		need, bare = (free-x)*sign, (free-x)*sign
	}
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			x, ok := p.Deepest(t, h.End)
			if !ok {
				continue
			}
			more, beside := c.thumb("jaw_to_holder"), 0.0
			if st.Step != nil && st.Step.By.V == "parting" {
				more = c.thumb("parting_room") + c.widestParting(st)
			} else if post := c.post(st); post != nil {
				beside = math.Max(0, post.LeftOfEdge.Or(0))
			}
			need = math.Max(need, (free-x)*sign+more+beside)
			bare = math.Max(bare, (free-x)*sign+more)
		}
	}
	h.Out = math.Min(math.Ceil(need), hi-lo)
	if h.Mandrel != nil { // it goes on as far as it can
		h.Out = math.Max(0, hi-lo-h.Mandrel.Length.Or(hi-lo))
		return 0
	}
	if !p.Round && h.Chuck != nil { // a block goes in as far as the jaws are long
		h.Out = math.Max(h.Out, hi-lo-h.Chuck.JawLength.Or(hi-lo))
	}
	if s.End.Is() && need == 0 {
		h.Out = (hi - lo) / 2
	}
	grip := c.gripWanted(before, h)
	if deeper := math.Max(math.Ceil(bare), math.Floor(hi-lo-grip)); deeper < h.Out-model.Grain {
		return deeper
	}
	return 0
}

// gripWanted is the length of work that a chuck usually holds at least, as the rule about it asks.
func (c *chooser) gripWanted(before *eval.State, h *eval.ChuckChoice) float64 {
	grip := 2 * before.Profile.Most() * c.thumb("chuck_grip_share")
	if h.Chuck != nil {
		grip = math.Max(grip, h.Chuck.JawLength.Or(0)*c.thumb("jaw_grip_share"))
	}
	return math.Max(grip, h.Out/c.thumb("stick_out_share"))
}

// widestParting is the width of the parting tool that a step names, else of the widest that
// is here.
func (c *chooser) widestParting(st *eval.Step) float64 {
	for _, r := range st.Step.Tool.V {
		if cu, ok := model.Find(c.build.Shop.Cutters, r.Item); ok {
			return cu.Width.V
		}
	}
	w := 0.0
	for _, cu := range c.here([]string{"parting_tool"}) {
		w = math.Max(w, cu.Width.V)
	}
	return w
}
