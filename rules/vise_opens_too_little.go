package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:      "vise-opens-too-little",
	Title:     "the piece, with what is packed beside it, is wider than the vise opens",
	Why:       `The jaws open only so far. Turning the piece, another vise, or the jaw plates on their outer steps may do; so may clamps on the table.`,
	Rows:      []string{"A14"},
	Source:    []string{"arithmetic"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     wideBlock(70),
	Sound:     wideBlock(50),
	OnHold:    viseOpensTooLittle,
})

func viseOpensTooLittle(h *eval.Holding, a *Ask) {
	v := h.Choice.Vise
	if v == nil {
		return
	}
	need, ok := Need(a, h.Opening)
	if !ok {
		return
	}
	most, ok := Need(a, v.Opening)
	if !ok {
		return
	}
	how := ""
	for _, s := range v.Steps.V {
		if s > most {
			most, how = s, " with its plates on the outer step"
		}
	}
	if need <= most+0.0005 {
		a.Clear(Bound(need, most, "mm"), "the opening of "+v.Path())
		return
	}
	beside := ""
	if h.Choice.RoundBar > 0 {
		beside = " with the round bar beside it"
	}
	what := "the piece is"
	switch {
	case h.Vee != nil && h.Vee.Blocked:
		what = h.Vee.Block.Path() + " is"
	case h.Vee != nil && h.Vee.Against:
		what = "the piece and " + h.Vee.Block.Path() + " are"
	}
	f := a.Say(v.Path()+".opening", h.Place("jaws", "hold"), "%s %s across the jaws%s; %s opens to %s%s",
		what, mm(need), beside, v.Path(), mm(most), how)
	f.Margin = Bound(need, most, "mm")
}
