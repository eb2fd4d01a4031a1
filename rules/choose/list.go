package choose

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// listed tells what was chosen, moment by moment. What is written in the recipe is not
// listed: it was not chosen.
func listed(t *eval.Trace) []Choice {
	var out []Choice
	for _, p := range t.Makings() {
		if p.Part.Unplayed != "" {
			continue
		}
		if p.Part.Joined() {
			out = append(out, seatChoices(p.Part)...)
		} else {
			out = append(out, blankChoices(p.Part)...)
		}
		for _, m := range p.Moments {
			switch {
			case m.Hold != nil && m.Hold.Unplayed == "" && m.Hold.Shifted == nil:
				out = append(out, holdChoices(m.Hold)...)
			case m.Chuck != nil && m.Chuck.Unplayed == "" && m.Chuck.Shifted == nil:
				out = append(out, chuckChoices(m.Chuck)...)
			case m.Turn != nil && m.Turn.Choice.NoTool == "":
				out = append(out, turnChoices(m.Turn)...)
			case m.Cut != nil && m.Cut.Choice.Tool.Cutter != nil:
				out = append(out, cutChoices(m.Cut)...)
			case m.Heat != nil:
				out = append(out, heatChoices(m.Heat)...)
			case m.Measure != nil && m.Measure.With != nil && !m.Measure.Pinned:
				out = append(out, Choice{Spot: m.Measure.Spot, What: "instrument", Item: m.Measure.With.Path(),
					Why: "the first that reaches and reads finely enough"})
			}
		}
	}
	for _, h := range t.Heatings {
		out = append(out, heatChoices(h)...)
	}
	return append(out, mates(t)...)
}

// seatChoices tells where the parts of an assembly sit, where no place block says it.
func seatChoices(p *eval.Part) (out []Choice) {
	for i, m := range p.Members {
		if i > 0 && m.How != "place" && len(p.Work) > 0 {
			out = append(out, Choice{Spot: finding.Spot{Part: p.Label}, What: "place", Item: m.Part.Path() + " by " + m.How, Why: "worked out"})
		}
	}
	return out
}

func blankChoices(p *eval.Part) []Choice {
	spot := finding.Spot{Part: p.Label}
	var out []Choice
	if p.Blank.Stock != nil && (p.Blank.Model == nil || !p.Blank.Model.Stock.Is()) {
		out = append(out, Choice{Spot: spot, What: "stock", Item: p.Blank.Stock.Path(), Why: "the least metal that holds the part"})
	}
	for _, s := range p.Blank.Chosen {
		out = append(out, Choice{Spot: spot, What: "metal over", Item: s, Why: "left open in the blank"})
	}
	out = append(out, splitChoices(p)...)
	out = append(out, flatChoices(p)...)
	for _, f := range p.Forms {
		if involute := f.Tooth != nil && f.Tooth.Involute || f.Rack != nil && f.Rack.Involute; involute && !f.Feature.PressureAngle.Is() && !f.Feature.Worm.Is() {
			out = append(out, Choice{Spot: spot, What: "pressure angle", Item: f.Name() + " 20 deg", Why: "none is written"})
		}
		out = append(out, standardChoices(spot, f)...)
		if f.Through && f.Feature.Kind != "split" && f.Way == nil && !f.Feature.Depth.Is() {
			out = append(out, Choice{Spot: spot, What: "depth", Item: f.Name() + " through", Why: "no depth is written"})
		}
	}
	return out
}

func holdChoices(h *eval.Holding) []Choice {
	s, c := h.Work.SetUp, &h.Choice
	spot := h.Spot
	if h.Work.Facing != model.NoFace {
		spot.Step = "face." + h.Work.Facing.String()
	}
	var out []Choice
	add := func(what, item, why string) {
		out = append(out, Choice{Spot: spot, What: what, Item: item, Why: why})
	}
	if one := h.Before.Alone; one != "" && !s.Piece.Is() {
		add("piece", one, "what is made is a face of it")
	}
	if c.Machine != nil && !s.Machine.Is() {
		add("machine", c.Machine.Path(), "the first that passes")
	}
	if c.Vise != nil && !s.Hold.Is() {
		add("hold", c.Vise.Path(), "the first that passes")
	}
	if c.Clamps != nil && !s.Hold.Is() {
		add("hold", c.Clamps.Path(), "the first that passes")
	}
	dividedChoices(h, add)
	if h.Work.Facing != model.NoFace || !s.Up.Is() {
		add("up", c.Up.String(), "the face that is worked")
	}
	if item, why, ok := leanChoice(h); ok {
		add("tilt", item, why)
	}
	if item, why, ok := sineChoice(h); ok {
		add("slips", item, why)
	}
	if c.Vee != nil {
		for _, words := range c.Vee.Chosen {
			add("vee block", words, "nothing else is written")
		}
	}
	if c.Soft != nil && c.SoftHigh > 0 && !s.Soft.Named().V.Has {
		add("soft jaws", model.Figure(c.SoftHigh)+" mm high", "the first that passes")
	}
	if c.Clamps != nil && c.Plate != nil && !s.Back.Is() {
		add("back", c.Back.String()+" on the upright", "the first that passes")
	}
	if c.Plate != nil && c.Centred {
		add("along", model.Figure(h.Lo[0])+" mm", "middles together")
	}
	if c.Clamps != nil && (c.Vee != nil || c.Plate != nil) && c.Divided == nil && !clampsWritten(s, c.Clamps) {
		add("hold", c.Clamps.Path(), "the first that passes")
	}
	if c.Vise == nil {
		return out
	}
	if h.Work.Facing != model.NoFace || !s.Jaws.Is() {
		add("jaws", c.Back.String()+" on the fixed jaw", "the first that passes")
	}
	if !s.Parallels.Height.Is() && !s.Parallels.Of.Is() && c.Step == 0 {
		if c.Height > 0 {
			add("parallels", c.Pair.Item.Member(c.Height), "the tallest pair that passes")
		} else {
			on := "the piece"
			if h.Vee != nil && (h.Vee.Looks == "up" || h.Vee.Lifts > 0) {
				on = "the vee block"
			}
			add("parallels", "none", on+" sits on the bed")
		}
	}
	pairWritten(h, add)
	if f, ok := h.Fixed.Get(); ok && f.Touches {
		add("grip", model.Figure(f.Grip)+" mm", "worked out from the jaws and what is under the piece")
	}
	if c.Centred {
		add("along", model.Figure(h.Lo[0])+" mm", "middles together")
	}
	if c.RoundBar > 0 && h.Work.Facing != model.NoFace && !s.RoundBar.Diameter.Is() && !s.RoundBar.Of.Is() {
		add("round bar", model.Figure(c.RoundBar)+" mm", "rough metal at the moving jaw")
	}
	return out
}

func cutChoices(k *eval.Cut) []Choice {
	var out []Choice
	c := &k.Choice
	s, set := k.Step.Step, k.Step.Work.SetUp
	add := func(what, item, why string) {
		out = append(out, Choice{Spot: k.Spot, What: what, Item: item, Why: why})
	}
	if !(s != nil && (s.By.Is() || s.Tool.Is()) || set.Tool.Is()) {
		add("by", c.By, "what its kind calls for")
	}
	if !(s != nil && s.Tool.Is() || set.Tool.Is()) {
		add("tool", c.Tool.Path(), "the first that passes")
	}
	memberChoice(s, set, c.Tool, add)
	mountChoice(s, set, c.Mounts, add)
	if !(s != nil && s.Holder.Is() || set.Holder.Is()) && len(c.Mounts) > 0 {
		names := ""
		for i, m := range c.Mounts {
			if i > 0 {
				names += ", "
			}
			names += m.Path()
		}
		add("holder", names, "the first that passes")
	}
	if k.Stack.OutKnown() && c.Out == 0 && !c.ByHand {
		add("tool out", model.Figure(k.Stack.Out.V)+" mm", "the least that clears")
	}
	if c.Speed > 0 && !(s != nil && s.Speed.Is() || set.Speed.Is()) {
		add("speed", model.Figure(c.Speed)+" rev/min", "the fastest of the machine not above the handbook's")
	}
	for _, w := range c.Index {
		add("index", w, indexWhy(w))
	}
	for _, t := range k.Step.Makes {
		if h, _, _, ok := k.Helix(t.Form); ok && h.Found {
			add("wheels", h.Words(), "the nearest train to the lead of the helix")
		}
	}
	if c.Reverse && !(s != nil && s.Spindle.Is()) {
		add("spindle", "reverse", "the hand of the tool")
	}
	if side, ok := k.Begins(); ok && k.Starts() == model.NoFace && !c.Climb {
		add("begins at", side.String(), "the side from which the work is fed against the teeth")
	}
	passes, cuts := k.Passes()
	oil, said := k.Oil()
	return append(out, feedChoices(k.Spot, k.Feeding(), passes, cuts, oil, said)...)
}

// clampsWritten says whether a set-up names the clamps that hold it.
func clampsWritten(s *model.SetUp, c *model.Clamps) bool {
	for _, r := range s.Hold.V {
		if r.Item == c.Item {
			return true
		}
	}
	return false
}

func s1(s *model.Step) []model.Ref {
	if s == nil {
		return nil
	}
	return s.Tool.V
}

// indexWhy says why the piece is turned on so.
func indexWhy(words string) string {
	if strings.Contains(words, ": within ") {
		return "to the nearest line of the dial"
	}
	return "the first exact setting"
}
