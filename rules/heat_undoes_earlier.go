package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "heat-undoes-earlier",
	Title: "a later heat opens a joint, or softens what was made hard before it",
	Why: `A solder joint opens when the piece gets as hot again as it was when the joint was made: solders come in falling
order of melting, soft solder last. A temper is lost above the heat that gave it, glue chars long before solder
flows, and drawn or rolled springiness goes where the metal anneals.`,
	Rows: []string{"F11"},
	Source: []string{"solidus and liquidus of the filler: handbook, ISO 9453 and ISO 17672, from memory", "a temper holds up to the heat that gave it: common practice",
		"up to what heat glue holds: handbook, makers' sheets, from memory"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleBlock("brass", exampleHeats(exampleSolder("soft", "60/40"), exampleSolder("silver", "Ag155"))),
	Sound:     exampleBlock("brass", exampleHeats(exampleSolder("silver", "Ag155"), exampleSolder("soft", "60/40"))),
	OnHeat:    heatUndoesEarlier,
})

func exampleSolder(kind, filler string) string {
	return "    does   = \"" + kind + " solder\"\n    joins  = [hole.pin]\n    filler = \"" + filler + "\"\n"
}

func heatUndoesEarlier(h *eval.Heating, a *Ask) {
	for i := range h.Earlier {
		e := &h.Earlier[i]
		if e.High == 0 || eval.Apart(e.Zone, h.SetUp.Zone.V) || meant(h, i) {
			continue
		}
		undone := h.Least >= e.High
		if e.Does == "temper" {
			undone = h.Least > e.High // as hot again draws no more
		}
		switch {
		case h.Least == 0:
			a.Lack(h.Lacks...)
		case undone:
			says := "%s heats to %s at least, and %s " + gives(e) + " %s"
			f := a.Say(e.Name, h.Place("temperature", "filler", "does"), says, heatName(h), figure(h.Least)+" °C", e.Name, latest(e))
			f.Margin = finding.Margin{Has: h.Least, Wants: e.High, Unit: "°C", Less: true}
			f.Also = []finding.Note{{Place: e.At, Says: "made here"}}
		case h.Most > 0 && h.Most < e.Low || len(h.Lacks) == 0 && h.Least < e.Low || e.Does == "temper" && len(h.Lacks) == 0 && h.Least <= e.Low:
			a.Clear(finding.Margin{Has: h.Least, Wants: e.Low, Unit: "°C", Less: true}, e.Name)
		default:
			a.Lack(h.Lacks...)
			a.Lack(e.Lacks...)
			if len(h.Lacks) == 0 && len(e.Lacks) == 0 {
				a.Lack(model.Lack{Fact: "up to what heat " + e.Name + " holds", At: e.At})
			}
		}
	}
}

// latest is from where on a state is certainly undone.
func latest(e *eval.Treatment) string {
	if e.High-e.Low < 0.5 || e.Does == "temper" || e.Does == "harden" {
		return figure(e.High) + " °C"
	}
	return figure(e.High) + " °C at the latest"
}

func gives(e *eval.Treatment) string {
	switch {
	case e.Does == "temper" || e.Does == "harden":
		return "is lost above"
	case e.Does == "cold work":
		return "is lost from"
	case e.Does == "soft solder" || e.Does == "silver solder":
		return "melts from"
	}
	return "lets go from"
}

// meant says whether an earlier state is undone on purpose, or was undone before: hardness is
// made anew by hardening, tempering and annealing, and a temper takes the place of the bare
// hardness.
func meant(h *eval.Heating, i int) bool {
	e := &h.Earlier[i]
	if e.Joint() {
		return false
	}
	switch h.Does {
	case "harden", "temper", "anneal":
		return true
	}
	for _, later := range h.Earlier[i+1:] {
		switch later.Does {
		case "harden", "temper", "anneal":
			if !eval.Apart(e.Zone, later.Zone) && later.Part == e.Part {
				return true
			}
		}
	}
	return false
}
