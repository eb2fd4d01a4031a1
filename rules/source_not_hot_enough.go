package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "source-not-hot-enough",
	Title: "furnace or torch does not reach the heat that the work wants",
	Why: `A small torch brings a small piece to a red heat and a large one never: solder balls up, steel stays soft. What
counts is how hot this piece gets, not the flame.`,
	Rows:      []string{"F11", "F10"},
	Source:    []string{"heat by metal or filler: handbook", "a look-up where both are said"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n    with = torch.small\n")),
	Sound:     exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n    with = furnace.kiln\n")),
	OnHeat:    sourceNotHotEnough,
})

func sourceNotHotEnough(h *eval.Heating, a *Ask) {
	if h.Source == nil {
		return
	}
	if h.Least == 0 {
		a.Lack(h.Lacks...)
		return
	}
	t, ok := Need(a, h.Source.Hottest)
	if !ok {
		return
	}
	m := finding.Margin{Has: t, Wants: h.Least, Unit: "°C"}
	if t >= h.Least {
		a.Clear(m, h.Source.Path())
		return
	}
	f := a.Say(h.Source.Path()+"+"+h.Does, h.Place("with", "temperature", "does"),
		"%s gets a piece to %s °C at most, and %s wants %s °C at least", h.Source.Path(), figure(t), heatName(h), figure(h.Least))
	f.Margin = m
	f.Also = []finding.Note{{Place: h.Source.Hottest.At, Says: "how hot it gets"}}
}
