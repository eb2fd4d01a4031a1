package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "metal-does-not-solder",
	Title: "a metal that the solder does not take to, or that melts first, is to be soldered",
	Why: `Aluminium and magnesium carry a skin that flux for other metals does not lift, and melt where silver solder only
begins to flow; zinc castings and plastics are gone long before. Such parts are screwed, riveted or glued, or
aluminium is joined with a filler of its own.`,
	Rows:      []string{"G8"},
	Source:    []string{"where metals begin to melt, and where fillers flow: handbook, from memory", "aluminium wants fillers and flux of its own: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleBlock("6082", exampleHeats(exampleSolder("silver", "Ag155"))),
	Sound:     exampleBlock("brass", exampleHeats(exampleSolder("silver", "Ag155"))),
	OnHeat:    metalDoesNotSolder,
})

func metalDoesNotSolder(h *eval.Heating, a *Ask) {
	if h.Does != "soft solder" && h.Does != "silver solder" {
		return
	}
	for _, p := range h.Of {
		m, ok := Need(a, p.Part.Material)
		heat, known := p.Metal()
		if !ok || m.Unsure || !known || !touched(h, p) {
			continue
		}
		light := heat.Name == "aluminium" || heat.Name == "cast aluminium" || heat.Name == "magnesium alloy"
		at := h.Place("filler", "does")
		cause := p.Part.Item.Path() + "+" + h.Does
		switch {
		case heat.Melts > 0 && h.Least >= heat.Melts:
			f := a.Say(cause, at, "%s is %s, which begins to melt or go soft at about %s °C; %s wants %s °C at least",
				p.Label, m.Name, figure(heat.Melts), filler(h), figure(h.Least))
			f.Margin = finding.Margin{Has: h.Least, Wants: heat.Melts, Unit: "°C", Less: true}
			f.Also = []finding.Note{{Place: p.Part.Material.At, Says: "its metal"}}
		case light && h.Solder.Name == "":
			a.Lack(model.Lack{Fact: h.SetUp.Path() + ".filler", At: h.SetUp.At})
		case light && h.Solder.Kind != "aluminium":
			a.Say(cause, at, "%s is %s, which %s does not take to; it wants a filler and a flux of its own", p.Label, m.Name, filler(h))
		case len(h.Lacks) > 0:
			a.Lack(h.Lacks...)
		case heat.Melts == 0:
			a.Clear(finding.Margin{}, "")
		default:
			a.Clear(finding.Margin{Has: h.Least, Wants: heat.Melts, Unit: "°C", Less: true}, p.Label+" against melting")
		}
	}
}

// touched says whether a part is joined: it, or a feature of it, or a fit of the two is named,
// or nothing that tells its parts apart.
func touched(h *eval.Heating, p *eval.Part) bool {
	any := false
	for _, r := range h.SetUp.Joins.V {
		if r.Item == nil {
			continue
		}
		if r.Item.Kind == "fit" {
			return true
		}
		if up := r.Item.Up("part"); up != nil {
			any = true
			if up == p.Part.Item {
				return true
			}
		}
	}
	return !any
}

func filler(h *eval.Heating) string {
	if h.Solder.Name != "" {
		return h.Solder.Name
	}
	if _, ok := handbook.SolderNamed(h.SetUp.Filler.V); !ok && h.SetUp.Filler.Is() {
		return h.SetUp.Filler.V
	}
	return h.Does
}
