package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "joint-gap-wrong",
	Title: "the gap at a soldered joint is too close for the solder to enter, or too wide for it to bridge",
	Why: `Solder is drawn into a joint by a narrow gap. A push fit keeps flux and solder out and leaves a joint that is only
a ring at its mouth; a wide gap does not fill. A few centre pops, a scored shaft or a shim make the room.`,
	Rows:      []string{"F12"},
	Source:    []string{"gap of 0.04 to 0.09 mm, handbooks up to 0.13 for silver solder and 0.2 for soft: common practice and from memory"},
	Limits:    []string{"solder_gap_least", "silver_gap_most", "soft_gap_most"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleBlock("brass", exampleHeats(exampleSolder("silver", "Ag155")+"    gap    = 0.01\n")),
	Sound:     exampleBlock("brass", exampleHeats(exampleSolder("silver", "Ag155")+"    gap    = 0.06\n")),
	OnHeat:    jointGapWrong,
})

func jointGapWrong(h *eval.Heating, a *Ask) {
	var most float64
	switch h.Does {
	case "soft solder":
		most = a.Limit("soft_gap_most")
	case "silver solder":
		most = a.Limit("silver_gap_most")
	default:
		return
	}
	least := a.Limit("solder_gap_least")
	for _, g := range h.Gaps() {
		if len(g.Lacks) > 0 {
			a.Lack(g.Lacks...)
			continue
		}
		is := mm(round(g.Lo))
		if g.Hi-g.Lo >= model.Grain/2 {
			is = round3(g.Lo) + " to " + mm(round(g.Hi))
		}
		switch {
		case g.Hi < least-1e-9:
			f := a.Say(g.Of+heatName(h), g.At, "%s is %s on one side, too close for %s to enter; usually at least %s", g.Of, is, h.Does, mm(least))
			f.Margin = Room(g.Hi, least)
		case g.Lo > most+1e-9:
			f := a.Say(g.Of+heatName(h), g.At, "%s is %s on one side, too wide for %s to bridge; usually at most %s", g.Of, is, h.Does, mm(most))
			f.Margin = Bound(g.Lo, most, "mm")
		case g.Lo >= least-1e-9 && g.Hi <= most+1e-9:
			a.Clear(Room(g.Lo, least), g.Of)
		}
	}
}

func round3(x float64) string { return figure(round(x)) }
