package choose

import (
	"fettle/eval"
	"fettle/schema/model"
)

// clearOfClamps says whether the clamps on a faceplate can stand on the face that looks away from it:
// none of the faces is made.
func clearOfClamps(w *eval.Work) bool {
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			if t.Form == nil && t.Face != model.NoFace {
				return false
			}
		}
	}
	return true
}

// faceplates are those that are here, for a piece that is not round.
func (c *chooser) faceplates(base eval.ChuckChoice) []eval.ChuckChoice {
	var out []eval.ChuckChoice
	for _, f := range c.build.Shop.Faceplates {
		if f.AtHand() && len(c.build.Shop.Clamps) > 0 {
			h := base
			h.Faceplate = f
			out = append(out, h)
		}
	}
	return out
}

// viseOnLathe says why work in a vise is not made on a lathe: by itself none goes on a spindle. One that is bolted
// to a faceplate or an angle plate turns, and work in one that stands on the slides is cut by what the spindle
// turns, but no shop says how either stands there.
func viseOnLathe(s *model.SetUp, h *eval.ChuckChoice) string {
	for _, r := range s.Hold.V {
		switch {
		case r.Item == nil || r.Item.Kind != "vise":
		case h.Faceplate != nil:
			return "work in " + r.Path() + " on " + h.Faceplate.Path() + " is not made on paper: how it is bolted there, and what it weighs, no shop says"
		default:
			return r.Path() + " does not go on the spindle of a lathe, and work on its slides, cut by what the spindle turns, is not made on paper"
		}
	}
	return ""
}
