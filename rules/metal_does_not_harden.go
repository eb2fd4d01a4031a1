package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "metal-does-not-harden",
	Title: "a metal that quenching leaves soft is to be hardened",
	Why: `Quenching hardens steel with enough carbon. Mild steel stays soft but for a case, which needs carbon from outside;
brass, bronze and copper are made softer by heat, and stainless of the 300 kind stays as it is.`,
	Rows:      []string{"G8"},
	Source:    []string{"steel below about 0.3 % of carbon does not harden by quenching: common practice", "austenitic stainless is not hardened by heat: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleHeat("mild steel", "harden"),
	Sound:     exampleHeat("silver steel", "harden"),
	OnPart:    metalDoesNotHarden,
})

func metalDoesNotHarden(p *eval.PartTrace, a *Ask) {
	does, at := heats(p.Part)
	for i, d := range does {
		if d != "harden" {
			continue
		}
		m, ok := Need(a, p.Part.Material)
		if !ok || m.Unsure {
			return
		}
		why := softAfterQuench(m)
		if why == "" {
			a.Clear(finding.Margin{}, "")
			continue
		}
		f := a.Say(p.Part.Label+".material+harden", at[i], "%s is %s, and is to be hardened: %s", p.Part.Label, m.Name, why)
		f.Also = []finding.Note{{Place: p.Part.Material.At, Says: "its metal"}}
	}
}

// softAfterQuench says why quenching does not harden a metal; "" where it does, or where that
// is not known.
func softAfterQuench(m model.Material) string {
	is := func(kind string) bool { return handbook.Serves(model.Material{Name: kind}, m) }
	switch {
	case is("mild steel"):
		return "it has too little carbon; case-harden it, or take silver steel or gauge plate"
	case is("brass"), strings.HasPrefix(m.Name, "brass"), is("bronze"), m.Group == "bronze", is("copper"), is("nickel silver"):
		return "heat makes it softer, and no quench hardens it"
	case m.Name == "stainless 303", m.Name == "stainless 304", m.Name == "stainless 316":
		return "stainless of the 300 kind is not hardened by heat"
	case m.Group == "acetal":
		return "it is a plastic"
	}
	return ""
}
