package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "mandrel-rim-chatters",
	Title: "a wide disc is held by a small bore alone",
	Why: `The cut at the rim has many times the leverage of the grip in the bore: the disc slips round on its mandrel, or its rim
chatters. A shoulder or large washers close to the cut, a centre, glue, or a grip by the rim hold it.`,
	Rows:      []string{"C15"},
	Source:    []string{"outside over bore above five: our own limit; large washers as the cure: seen in print"},
	Limits:    []string{"mandrel_rim"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleMandrel("10", "60", ""),
	Sound:     exampleMandrel("10", "40", ""),
	OnChuck:   mandrelRimChatters,
})

func mandrelRimChatters(h *eval.Chucking, a *Ask) {
	m := h.Choice.Mandrel
	if m == nil || h.Gripped == 0 || m.Sort.V == "glue" {
		return
	}
	held := max(h.Gripped, m.Shoulder.Or(0))
	out := 2 * h.Before.Profile.Most()
	ratio, most := out/held, a.Limit("mandrel_rim")
	if ratio <= most+1e-6 {
		a.Clear(Bound(ratio, most, "times"), "the rim on "+m.Path())
		return
	}
	f := a.Say(h.Work.SetUp.Path()+".rim", h.Place("hold"), "%s measures %s mm outside and is held on %s at %s mm: %s times, usually %s at most",
		h.Part.Label, figure(round(out)), m.Path(), figure(round(held)), tenthUp(ratio), figure(most))
	f.Margin = Bound(ratio, most, "times")
}
