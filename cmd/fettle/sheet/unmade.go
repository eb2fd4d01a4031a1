package sheet

import (
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

// pieces says how many are made, and of what.
func pieces(p *eval.Part) string {
	of := ""
	switch {
	case p.Joined() || p.Part.Material.Is():
		of = " of " + material(p)
	case !p.Bought():
		of = " of a metal that is not said"
	}
	if n := quantity(p); n != "1" {
		return n + " pieces" + of + "."
	}
	return "1 piece" + of + "."
}

// endOfWork says what the drawing of a part shows: it finished, or what its own work leaves of it.
func endOfWork(t *eval.PartTrace) string {
	if t.Part.Joined() || t.Lies != nil {
		return "finished part"
	}
	_, unmade := madeOf(t, t.Part.Forms)
	switch {
	case len(unmade) == 0:
		return "finished part"
	case len(t.Part.Work) == 0:
		return "raw piece, of which no work is written"
	}
	var names []string
	for _, f := range unmade {
		names = append(names, f.Name())
	}
	return "part without " + strings.Join(names, ", ") + ", which no work of its own makes"
}

// bought says of a part that is bought what it is, and how it goes together with other parts.
func (m *maker) bought(t *eval.PartTrace) {
	says := "It is bought ready."
	if as, ok := t.Part.Part.Bought.As.Get(); ok {
		says = "It is bought: " + as.Path() + "."
	}
	m.page.para(says)
	m.said(finding.Spot{Part: t.Part.Label}, "")
	m.mates(t)
}

// madeOf parts the features that are there at the end of a part's own work from those that no step of it
// makes; an outside may be that of the bar.
func madeOf(t *eval.PartTrace, all []*eval.Form) (made, unmade []*eval.Form) {
	for _, f := range all {
		i := slices.Index(t.Part.Forms, f)
		if f.Feature.Kind != "outside" && i >= 0 && i < len(t.End.Features) && !t.End.Features[i].Begun {
			unmade = append(unmade, f)
		} else {
			made = append(made, f)
		}
	}
	return made, unmade
}
