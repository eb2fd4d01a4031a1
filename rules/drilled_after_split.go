package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "drilled-after-split",
	Title: "a hole through both pieces of a split is drilled in each alone",
	Why: `Drilled through both before the saw, or with the two clamped together, the halves of a hole are in line by themselves. Drilled one
after the other they are as far out of line as the two set-ups, and the screws pull the joint sideways. Drilled in one piece
alone and spotted through it into the other they are in line as well.`,
	Rows:      []string{"F4"},
	Source:    []string{"drill and tap before sawing: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     replaced(replaced(exampleHalves("", "saw", "screws", "bore"), "    operation {\n      makes = hole.screws", "    piece = \"cap\"\n\n    operation {\n      makes = hole.screws"), "  setup \"bore\" {", "  setup \"screws below\" {\n    hold  = vise.small\n    up    = \"top\"\n    jaws  = \"back\"\n    piece = \"base\"\n\n    operation {\n      makes = hole.screws\n    }\n  }\n\n  setup \"bore\" {"),
	Sound:     exampleHalves("", "screws", "saw", "bore"),
	OnPart:    drilledAfterSplit,
})

func drilledAfterSplit(p *eval.PartTrace, a *Ask) {
	if p.Part.Apart == nil {
		return
	}
	j := p.Part.Apart.Joint
	for i, f := range p.Part.Forms {
		if j.Crosses(f) {
			drilledApart(p, a, i, f)
		}
	}
}

// drilledApart looks at one hole that goes through the joint.
func drilledApart(p *eval.PartTrace, a *Ask, i int, f *eval.Form) {
	j := p.Part.Apart.Joint
	first := "" // the piece that it was first drilled in, alone
	for _, m := range p.Moments {
		k := m.Cut
		if k == nil || !makesForm(k, f) || k.Choice.By == "spotting" || k.Choice.By == "centring" {
			continue
		}
		alone := k.Before.Alone
		switch {
		case alone == "":
			a.Clear(finding.Margin{}, "") // drilled through both
			return
		case first == "" || first == alone:
			first = alone
		case k.Step.Step != nil && k.Step.Step.Located.V.Item != nil:
			a.Clear(finding.Margin{}, "")
			return
		default:
			a.Say(p.Part.Label+"."+f.Name(), k.Place("located", "makes"), "%s goes through both pieces of %s, and is drilled in %s alone and then in %s alone: the two halves are not in line; drill it through both before the saw or with the two clamped together, or spot it through",
				f.Name(), j.Form.Name(), first, alone)
			return
		}
	}
	if first != "" {
		a.Say(p.Part.Label+"."+f.Name(), f.Feature.Item.At, "%s goes through both pieces of %s, and is drilled in %s alone", f.Name(), j.Form.Name(), first)
	}
}

// makesForm says whether a cut makes a feature itself.
func makesForm(k *eval.Cut, f *eval.Form) bool {
	for _, w := range k.Works {
		if w.Target.Form != nil && w.Target.Form.Feature == f.Feature && w.Target.Sub == "" && w.Wrong == "" {
			return true
		}
	}
	return false
}
