package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "porous-bush-reamed",
	Title: "a bush of sintered bronze is reamed",
	Why: `The pores of a sintered bush hold its oil. A reamer smears them shut, and the bush runs dry. Such bushes are
bought to size, pressed in, and brought to their bore with a smooth mandrel or a ball.`,
	Rows:      []string{"D23"},
	Source:    []string{"press, then size with a ball or mandrel, do not ream: KHS, seen as quoted in the tables of hole making"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     replaced(exampleReam("7.8"), `material = "brass"`, `material = "sintered bronze"`),
	Sound:     exampleReam("7.8"),
	OnCut:     porousBushReamed,
	OnTurn:    asCut(porousBushReamed),
})

// porous is the handbook's name of bronze that holds oil in its pores.
const porous = "sintered bronze"

func porousBushReamed(k *eval.Cut, a *Ask) {
	if k.Choice.By != "reaming" || k.Unplayed != "" {
		return
	}
	for i := range k.Works {
		f := k.Works[i].Target.Form
		if f == nil || k.Works[i].Wrong != "" {
			continue
		}
		of := k.Part
		if f.Owner != nil {
			of = f.Owner
		}
		metal, ok := Need(a, of.Material)
		switch {
		case !ok:
		case metal.Unsure:
			a.Lack(model.Lack{Fact: "what metal " + of.Label + " is of", At: of.Material.At})
		case metal.Name != porous:
			a.Clear(finding.Margin{}, "")
		default:
			a.Say(f.Name()+"+porous", k.Place("makes", "by", "tool"), "%s is of %s, whose pores hold its oil, and a reamer closes them: size it with a smooth mandrel or a ball",
				f.Name(), metal.Written)
			return
		}
	}
}
