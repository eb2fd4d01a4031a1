package choose

import (
	"math"
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// Source takes the furnace or torch that is written, else the first that is here and
// certainly gets hot enough, else the first that might, else the hottest.
func (c *chooser) Source(h *eval.Heating) *model.HeatSource {
	if r, ok := h.SetUp.Source.Get(); ok {
		s, _ := model.Find(c.build.Shop.Heats, r.Item)
		return s
	}
	var open, hottest *model.HeatSource
	for _, s := range c.build.Shop.Heats {
		if !s.AtHand() {
			continue
		}
		t, known := s.Hottest.Get()
		switch {
		case known && h.Least > 0 && t >= h.Least:
			return s
		case !known && open == nil:
			open = s
		case known && (hottest == nil || t > hottest.Hottest.V):
			hottest = s
		}
	}
	if open != nil {
		return open
	}
	return hottest
}

// heatChoices lists what a heat left open: its source, and heat and quench by the handbook.
func heatChoices(h *eval.Heating) []Choice {
	var out []Choice
	if h.Source != nil && !h.Pinned {
		out = append(out, Choice{Spot: h.Spot, What: "source of heat", Item: h.Source.Path(), Why: "the first that gets hot enough"})
	}
	s := h.SetUp
	if !s.Temperature.Is() && !s.Colour.Is() && h.Least > 0 && len(h.Lacks) == 0 {
		why := "handbook, by metal; the maker's sheet goes before it"
		if h.Solder.Name != "" {
			why = "handbook, by filler; the maker's sheet goes before it"
		}
		out = append(out, Choice{Spot: h.Spot, What: "heat", Item: model.Figure(h.Least) + " to " + model.Figure(h.Most) + " °C", Why: why})
	}
	if s.Does.V == "harden" && !s.Quench.Is() && h.Part != nil {
		if m, ok := h.Part.Metal(); ok && len(m.Suits) > 0 {
			out = append(out, Choice{Spot: h.Spot, What: "quench", Item: strings.Join(m.Suits, " or "), Why: "handbook, by metal"})
		}
	}
	if k, ok := h.Soak(); ok && !k.Said.Is() && !k.Colour {
		out = append(out, Choice{Spot: h.Spot, What: "soak", Item: model.Figure(math.Round(k.Least)) + " to " + model.Figure(math.Round(k.Most)) + " min",
			Why: "usual for its thickness; the maker's sheet goes before it"})
	}
	if most, ok := h.Build.Thumbs[strings.ReplaceAll(h.Does, " solder", "")+"_gap_most"]; ok && !s.Gap.Is() && len(h.Gaps()) == 0 {
		least := h.Build.Thumbs["solder_gap_least"]
		out = append(out, Choice{Spot: h.Spot, What: "gap", Item: model.Figure(least.V) + " to " + model.Figure(most.V) + " mm on one side",
			Why: "usual for " + h.Does})
	}
	return out
}
