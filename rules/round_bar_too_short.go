package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "round-bar-too-short",
	Title: "the round bar at the moving jaw is short for the work that it presses",
	Why: `A round bar at the moving jaw presses along one line, so that the work lies flat on the fixed jaw. A bar much shorter than the
work presses in one spot: the work can swing about it, the jaw racks, and the far end is held by nothing.`,
	Rows:      []string{"C1", "C13"},
	Source:    []string{"a bar about as long as the work, half of it at the least: common practice"},
	Limits:    []string{"round_bar_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleOwnBar("15"),
	Sound:     exampleOwnBar("40"),
	OnHold:    roundBarTooShort,
})

// exampleOwnBar squares a block with a bar of the recipe's own.
func exampleOwnBar(long string) string {
	return exampleSquare("    round_bar = round_bar.own") + `
round_bar "own" {
  diameter = 9
  length   = ` + long + `
}
`
}

func roundBarTooShort(h *eval.Holding, a *Ask) {
	d, shop := h.Choice.RoundBar, &h.Part.Build.Shop
	if d <= 0 || h.Choice.Vise == nil {
		return
	}
	alike := func(x float64) bool { return abs(x-d) <= nearBar*d+model.Same }
	named := h.Work.SetUp.RoundBar.Of.V.Item
	var best *model.RoundBar
	others := false // bars of which nobody says how long they are: any rod will do, and one is sawn off as it is wanted
	for _, b := range shop.RoundBars {
		near, ok := b.Diameter.V.Nearest(d)
		switch {
		case !b.Here() || !ok || !alike(near) || named != nil && b.Item != named:
		case !b.Length.Is():
			others = true
		case best == nil || b.Length.V > best.Length.V:
			best = b
		}
	}
	for _, s := range shop.Stock {
		if named == nil && s.Here() && s.Round.Is() && alike(s.Round.V.Nominal) {
			return // a piece is cut off as long as is wanted
		}
	}
	c, ok := Need(a, h.Fixed)
	if !ok || !c.Touches {
		return
	}
	wide := c.Right - c.Left
	want := a.Limit("round_bar_share") * wide
	switch {
	case best != nil && best.Length.V >= want-0.0005:
		a.Clear(Room(best.Length.V, want), "the length of "+best.Path())
		return
	case best == nil || others:
		return
	}
	has := best.Length.V
	f := a.Say(best.Path()+"+"+h.Work.SetUp.Path()+"+length", h.Place("round_bar", "hold"), "%s is %s long, and %s of the work lie between the jaws; usually at least %s mm (%s of it)",
		best.Path(), mm(round(has)), mm(round(wide)), tenthUp(want), hundredth(a.Limit("round_bar_share")))
	f.Margin = Room(has, want)
	f.Also = []finding.Note{{Place: best.Length.At, Says: "how long it is"}}
}
