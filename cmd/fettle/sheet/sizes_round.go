package sheet

import (
	"fmt"
	"strings"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// roundSize is a size of a feature of turned work under the attribute that gives it.
type roundSize struct {
	attr string
	size model.Known[drawing.Size]
}

// roundSizes are the sizes that features of turned work have besides a diameter and a width.
func roundSizes(f *eval.Form) (out []roundSize) {
	m := f.Feature
	add := func(attr string, s model.Known[drawing.Size]) {
		if s.Is() {
			out = append(out, roundSize{attr, s})
		}
	}
	add("outer", m.Outer)
	if (f.Lathe != nil || f.EndRing != nil || f.KeyBore != nil) && len(f.Mouths) == 0 && m.Depth.Is() {
		add("depth", model.Sure(m.Depth.V.Size))
	}
	add("small", m.Small)
	add("large", m.Large)
	add("across", m.Across)
	add("to_axis", m.ToAxis)
	add("over", m.OverRound)
	add("eccentric.by", m.Eccentric.By)
	add("pitch_diameter", m.PitchDiameter)
	return out
}

// threadWords is a thread as a drawing has it, with its class and the number of its starts: "M30x1.5-6g".
func threadWords(m *model.Feature) string {
	words := m.ThreadSize.V.Written
	if m.Class.Is() && m.Class.V != "" {
		words += "-" + m.Class.V
	}
	if n := m.Starts.Or(1); n > 1 {
		words += fmt.Sprintf(", %d starts", n)
	}
	return words
}

// grooveWords are the sizes of a groove as they are given: across its floor, or how deep it is.
func grooveWords(m *model.Feature, g model.General) string {
	var words []string
	switch {
	case m.Form.V == "vee" && m.Angle.Is():
		words = append(words, "vee "+model.Figure(m.Angle.V)+"°")
	case m.Form.V == "round":
		words = append(words, "round groove")
	case !m.Diameter.Is():
		words = append(words, "groove")
	}
	if m.Width.Is() && (m.Form.V != "vee" || m.Width.From != model.Chosen) {
		words = append(words, toleranced(m.Width.V, g, m.Item, "width")+" wide")
	}
	size := ""
	switch {
	case m.Diameter.Is():
		size = "Ø" + toleranced(m.Diameter.V, g, m.Item, "diameter")
		if len(words) > 0 {
			return size + " × " + strings.Join(words, " ")
		}
		return size
	case m.Depth.Is():
		size = " × " + toleranced(m.Depth.V.Size, g, m.Item, "depth") + " deep"
	}
	return strings.Join(words, " ") + size
}
