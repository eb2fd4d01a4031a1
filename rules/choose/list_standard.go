package choose

import (
	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// standardChoices tells which sizes of a keyway or of a groove were taken from the standard, or worked out.
func standardChoices(spot finding.Spot, f *eval.Form) (out []Choice) {
	m := f.Feature
	if l := f.Lathe; f.Stops && l != nil {
		return []Choice{{Spot: spot, What: "stretch", Item: f.Name() + " from " + model.Figure(l.X0) + " to " + model.Figure(l.X1) + " mm", Why: "2.5 pitches to the shoulder: the usual run-out of DIN 76-1 (from memory)"}}
	}
	kind := m.Kind
	if kind == "groove" {
		kind = m.Form.V
	}
	why := map[string]string{"keyway": "parallel keys of DIN 6885-1 (from memory)", "circlip": "circlips of DIN 471 and 472 (from memory)",
		"thread undercut": "undercuts of metric threads of DIN 76-1 (from memory)", "vee": "twice the depth by the tangent of half the angle",
		"hole": "for the head of its screw: ISO 4762 with DIN 974-1, ISO 10642, ISO 2009 (from memory), or as the shop has it"}[kind]
	if why == "" {
		return nil
	}
	if kind == "hole" {
		return mouthChoices(spot, f, why)
	}
	add := func(what string, chosen bool, size drawing.Size) {
		if chosen {
			out = append(out, Choice{Spot: spot, What: what, Item: f.Name() + " " + size.String() + " mm", Why: why})
		}
	}
	add("width", m.Width.From == model.Chosen, m.Width.V)
	add("depth", m.Depth.From == model.Chosen, m.Depth.V.Size)
	add("diameter", m.Diameter.From == model.Chosen, m.Diameter.V)
	return out
}

// mouthChoices tells which sizes of a counterbore or a countersink follow from the screw.
func mouthChoices(spot finding.Spot, f *eval.Form, why string) (out []Choice) {
	add := func(what string, chosen bool, size string) {
		if chosen {
			out = append(out, Choice{Spot: spot, What: what, Item: f.Name() + " " + size, Why: why})
		}
	}
	b, c := f.Feature.Counterbore, f.Feature.Countersink
	add("counterbore", b.Diameter.From == model.Chosen, b.Diameter.V.String()+" mm wide")
	add("counterbore", b.Depth.From == model.Chosen, b.Depth.V.String()+" mm deep")
	add("countersink", c.Diameter.From == model.Chosen, c.Diameter.V.String()+" mm wide")
	add("countersink", c.Angle.From == model.Chosen, model.Figure(c.Angle.V)+" degrees")
	return out
}
