package schema

import (
	"fmt"
	"strings"

	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

// What holds for a whole folder: the limits of judgement and the general tolerance; and
// what can only be found once the values are in their places.

// bindThumbs gives every limit of judgement: the table's figure, the shop's instead where
// it has one, the recipe's instead of both.
func bindThumbs(w written) map[string]model.Known[float64] {
	out := map[string]model.Known[float64]{}
	k := theTable().byName["rules_of_thumb"]
	for _, a := range k.Attrs {
		v, from := standing(a)
		n, _ := asNumber(&v)
		out[a.Name] = model.Known[float64]{V: n, From: from, Attr: a.Name}
	}
	for _, items := range [][]*model.Item{w.ShopItems, w.RecipeItems} {
		for _, i := range sorted(items, "rules_of_thumb") {
			for n := range i.Attrs {
				v := &i.Attrs[n].Value
				if x, ok := asNumber(v); ok {
					out[i.Attrs[n].Name] = model.Known[float64]{V: x, From: model.Written, At: v.At, Of: i, Attr: i.Attrs[n].Name}
				}
			}
		}
	}
	return out
}

// thumbsGivenTwice finds limits that two blocks of one folder give: the order of files
// must not settle which of them holds.
func thumbsGivenTwice(w written) []finding.Finding {
	var out []finding.Finding
	for _, items := range [][]*model.Item{w.ShopItems, w.RecipeItems} {
		first := map[string]*model.Attr{}
		for _, i := range sorted(items, "rules_of_thumb") {
			for n := range i.Attrs {
				a := &i.Attrs[n]
				before := first[a.Name]
				if before == nil {
					first[a.Name] = a
					continue
				}
				f := slip(slipGivenTwice, i, a, a.At, fmt.Sprintf("%s is given in another rules_of_thumb block as well; one of the two must go", a.Word))
				f.Also = []finding.Note{{Place: before.At, Says: "the other one"}}
				out = append(out, f)
			}
		}
	}
	return out
}

// speedsTheWrongWay finds stepless speeds whose lowest is above their highest. Such speeds
// are not known: which of the two figures is the slip, nobody can tell.
func speedsTheWrongWay(machines []*model.Machine) []finding.Finding {
	var out []finding.Finding
	for _, m := range machines {
		a := m.Attr("speeds")
		if a == nil || a.Value.Kind != model.Object {
			continue
		}
		from, okFrom := member(&a.Value, "from", asNumber)
		to, okTo := member(&a.Value, "to", asNumber)
		if okFrom && okTo && from > to {
			out = append(out, slip(slipWrongValue, m.Item, a, a.Value.At,
				fmt.Sprintf("speeds from %s to %s rev/min: the lowest comes first, and is above the highest here", model.Figure(from), model.Figure(to))))
		}
	}
	return out
}

// slip makes a finding of an attribute's value.
func slip(rule string, i *model.Item, a *model.Attr, at text.Place, says string) finding.Finding {
	return finding.Finding{
		Rule: rule, Level: slipLevel(rule), Judgement: finding.Fact,
		Cause: i.Path() + "." + a.Name, Place: at, Says: says,
	}
}

// generalTolerance reads a general tolerance: a class of ISO 2768-1 ("ISO 2768-m"), half a
// width ("±0.005"), or half widths by decimal places. It gives a sentence where it cannot.
func generalTolerance(v *model.Value, unit drawing.Unit) (model.General, string) {
	const wants = `the general tolerance is written "ISO 2768-m" (f, m, c or v), "±0.1", or by decimal places { ".xx" = 0.01 }`
	g := model.General{At: v.At}
	switch v.Kind {
	case model.NoValue:
		return g, "" // said already
	case model.Text:
		s := strings.TrimSpace(v.Text)
		if class, ok := class2768(s); ok {
			g.From, g.Class = model.Written, class
			return g, ""
		}
		for _, sign := range []string{"±", "+/-"} {
			if rest, ok := strings.CutPrefix(s, sign); ok {
				mm, err := drawing.ParseLength(rest, unit)
				if err != nil || mm < 0 {
					return g, wants
				}
				g.From, g.Either = model.Written, mm
				return g, ""
			}
		}
	case model.Object:
		for n := range v.Object {
			places, ok := decimalPlaces(v.Object[n].Name)
			half, figure := asNumber(&v.Object[n].Value)
			if !ok {
				return g, wants
			}
			if !figure {
				continue
			}
			for len(g.Places) <= places {
				g.Places = append(g.Places, 0)
			}
			g.From, g.Places[places] = model.Written, half
		}
		return g, ""
	}
	return g, wants
}

// class2768 reads a class of linear sizes of ISO 2768-1. A second letter, of ISO 2768-2
// ("ISO 2768-mK"), is of form and is passed over.
func class2768(s string) (string, bool) {
	s, ok := strings.CutPrefix(strings.TrimPrefix(s, "DIN "), "ISO 2768")
	if !ok {
		return "", false
	}
	s = strings.TrimLeft(strings.TrimPrefix(s, "-1"), " -")
	if len(s) == 2 && strings.ContainsAny(s[1:], "HKL") {
		s = s[:1]
	}
	return s, len(s) == 1 && strings.ContainsAny(s, "fmcv")
}

// decimalPlaces counts the places of ".xx": 2. At most six are of use.
func decimalPlaces(name string) (int, bool) {
	x := name[strings.LastIndexByte(name, '.')+1:]
	return len(x), strings.HasSuffix(name, "."+x) && strings.Trim(x, "x") == "" && len(x) <= 6
}
