package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "stock-of-other-metal",
	Title:     "the bar that is named is not of the metal that the part is to be of",
	Why:       `Part and bar both say what they are of. Where they disagree one of them is wrong, and speeds, reaming and fits hang on which.`,
	Rows:      []string{"G8"},
	Source:    []string{"look-up: names, designations and their families"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleStock(23, 1), `material = "brass"`, `material = "mild steel"`),
	Sound:     exampleStock(23, 1),
	OnPart:    stockOfOtherMetal,
})

func stockOfOtherMetal(p *eval.PartTrace, a *Ask) {
	b := p.Part.Part.Blank
	s := p.Part.Blank.Stock
	if b == nil || s == nil || !b.Stock.Said() {
		return
	}
	asked, ok := Need(a, p.Part.Material)
	there, ok2 := Need(a, s.Material)
	switch {
	case !ok || !ok2 || asked.Unsure || there.Unsure || asked.Name == "" || there.Name == "":
	case oneFamily(asked, there):
		a.Clear(finding.Margin{}, "")
	default:
		f := a.Say(s.Path()+"+"+p.Part.Label+".material", b.Stock.At, "%s is to be of %s, and %s is %s", p.Part.Label, asked.Written, s.Path(), there.Written)
		f.Also = []finding.Note{{Place: p.Part.Material.At, Says: "the part's metal"}, {Place: s.Material.At, Says: "the bar's metal"}}
	}
}

// oneFamily says whether two metals are the same or grades of the same: whether one grade
// does for another is the maker's to say.
func oneFamily(a, b model.Material) bool {
	if handbook.Serves(a, b) || handbook.Serves(b, a) || strings.HasPrefix(a.Name, b.Name+" ") || strings.HasPrefix(b.Name, a.Name+" ") {
		return true
	}
	for _, kind := range handbook.MaterialNames() {
		m := model.Material{Name: kind}
		if handbook.Serves(m, a) && handbook.Serves(m, b) {
			return true
		}
	}
	return false
}
