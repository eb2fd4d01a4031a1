package choose

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// splitChoices tells what a split takes where the drawing leaves it open, and how much deeper
// holes through the joint go while the piece is one.
func splitChoices(p *eval.Part) []Choice {
	if p.Apart == nil {
		return nil
	}
	j := p.Apart.Joint
	spot := finding.Spot{Part: p.Label}
	name := j.Form.Name()
	var out []Choice
	if j.Chosen {
		out = append(out, Choice{Spot: spot, What: "kerf", Item: name + " " + model.Figure(j.Kerf) + " mm", Why: "the width of the saw"})
	}
	if j.Clean > 0 && !j.Form.Feature.CleanUp.Is() {
		out = append(out, Choice{Spot: spot, What: "clean-up", Item: name + " " + model.Figure(j.Clean) + " mm off each face", Why: "none is written"})
	}
	if j.Gap > 0 {
		out = append(out, Choice{Spot: spot, What: "longer until closed", Item: name + " " + model.Figure(j.Gap) + " mm", Why: "what the saw and the cleaning of the joint take"})
	}
	for i, f := range p.Forms {
		if j.Crosses(f) && !f.Through {
			out = append(out, Choice{Spot: spot, What: "depth", Item: f.Name() + " " + model.Figure(p.Apart.Forms[i].Depth.V) + " mm while the piece is one",
				Why: "as deep as drawn once the joint is closed"})
		}
	}
	return out
}
