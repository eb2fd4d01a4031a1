package choose

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// standardChoices tells which sizes of a keyway or of a circlip's groove were taken from the standard.
func standardChoices(spot finding.Spot, f *eval.Form) (out []Choice) {
	m := f.Feature
	why := map[string]string{"keyway": "parallel keys of DIN 6885-1 (from memory)", "groove": "circlips of DIN 471 and 472 (from memory)"}[m.Kind]
	if why == "" {
		return nil
	}
	add := func(what string, chosen bool, size float64) {
		if chosen {
			out = append(out, Choice{Spot: spot, What: what, Item: f.Name() + " " + model.Figure(size) + " mm", Why: why})
		}
	}
	add("width", m.Width.From == model.Chosen, m.Width.V.Nominal)
	add("depth", m.Depth.From == model.Chosen, m.Depth.V.Size.Nominal)
	add("diameter", m.Diameter.From == model.Chosen, m.Diameter.V.Nominal)
	return out
}
