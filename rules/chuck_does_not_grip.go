package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "chuck-does-not-grip",
	Title: "what holds the work does not close, or does not open, to its diameter",
	Why: `The jaws of a chuck take a range of diameters, with the jaws turned round another; a collet holds its nominal
size and little below it, and nothing above it.`,
	Rows:      []string{"A14", "B11"},
	Source:    []string{"look-up: the ranges declared in the shop, of collets those of their system (handbook table of collets)"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(exampleWaist(inThree+"\n    jaws_reversed = false", ""), "outside = 1", "outside = 21"),
	Sound:     exampleWaist(inThree, ""),
	OnChuck:   chuckDoesNotGrip,
})

func chuckDoesNotGrip(h *eval.Chucking, a *Ask) {
	c := &h.Choice
	d := round(h.Gripped)
	if h.Inside {
		opensInside(h, a, d)
		return
	}
	if d == 0 {
		return
	}
	if h.Misses() {
		t := h.Touches
		a.Say(c.HeldBy()+".on+"+h.Part.Label, h.Place("on", "stick_out", "grip", "hold"), "%s is to close on %s, which lies from %s to %s mm along the axis, and touches %s mm from %s to %s mm instead",
			c.HeldBy(), c.On.Name(), figure(round(c.On.Lathe.X0)), figure(round(c.On.Lathe.X1)), figure(d), figure(round(t[0].X0)), figure(round(t[len(t)-1].X1)))
		return
	}
	if b := c.Bush; b != nil && c.Chuck != nil {
		out, ok := Need(a, b.Outside)
		if !ok {
			return
		}
		d = out
	}
	if n := c.Nut; n != nil && c.Chuck != nil {
		across, ok := Need(a, n.Across)
		if !ok {
			return
		}
		d = across
	}
	switch {
	case c.Collets != nil:
		inCollet(h, a, d)
	case c.Chuck != nil:
		inChuck(h, a, d)
	}
}

func inChuck(h *eval.Chucking, a *Ask, d float64) {
	c := h.Choice.Chuck
	grips, word := c.Grips, "its jaws as usual"
	if h.Choice.Reversed {
		grips, word = c.Reversed.Grips, "its jaws turned round"
	}
	g, ok := Need(a, grips)
	if !ok || len(g) != 2 {
		return
	}
	if n := len(h.JawsAt); n > 0 {
		setOver(h, a, grips, word)
		return
	}
	if d >= g[0]-0.0005 && d <= g[1]+0.0005 {
		a.Clear(Bound(d, g[1], "mm"), "the work in "+c.Path())
		return
	}
	f := a.Say(c.Path()+".grips+"+h.Part.Label, h.Place("hold"), "%s grips %s to %s mm with %s, and the work is %s mm there",
		c.Path(), figure(g[0]), figure(g[1]), word, figure(d))
	if r, ok := c.Reversed.Grips.Get(); ok && !h.Choice.Reversed && len(r) == 2 && d >= r[0] && d <= r[1] {
		f.Says += "; with the jaws turned round it would"
	}
	f.Also = []finding.Note{{Place: grips.At, Says: "what it grips"}}
}

func inCollet(h *eval.Chucking, a *Ask, d float64) {
	co, n := h.Choice.Collets, h.Choice.Collet
	closes, ok := eval.ColletCloses(co, n)
	if !ok {
		a.Lack(co.System.Missing()...)
		a.Lack(model.Lack{Fact: "how far " + co.Path() + " closes"})
		return
	}
	if d <= n+0.0005 && d >= n-closes-0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(co.Path()+"+"+h.Part.Label, h.Place("hold"), "%s holds %s to %s mm, and the work is %s mm there", h.Choice.HeldBy(), figure(round(n-closes)), figure(n), figure(d))
}

// setOver compares the jaws of a chuck one by one with what it grips: work that is set over, or a
// block, has each of them at another distance.
func setOver(h *eval.Chucking, a *Ask, grips model.Known[[]float64], word string) {
	c, g := h.Choice.Chuck, grips.V
	least, most := round(2*h.JawsAt[0]), round(2*h.JawsAt[len(h.JawsAt)-1])
	bad := most
	switch {
	case most > g[1]+0.0005:
	case least < g[0]-0.0005:
		bad = least
	default:
		a.Clear(Bound(most, g[1], "mm"), "the work in "+c.Path())
		return
	}
	f := a.Say(c.Path()+".grips+"+h.Part.Label, h.Place("hold"), "%s grips %s to %s mm with %s, and as %s is set over one jaw stands %s mm from the axis, as for work of %s mm",
		c.Path(), figure(g[0]), figure(g[1]), word, h.Part.Label, figure(round(bad/2)), figure(bad))
	f.Also = []finding.Note{{Place: grips.At, Says: "what it grips"}}
}

// opensInside asks whether the jaws open to the bore that they are to hold by.
func opensInside(h *eval.Chucking, a *Ask, d float64) {
	c := h.Choice.Chuck
	if d == 0 {
		a.Say(c.Path()+".inside+"+h.Part.Label, h.Place("on", "hold"), "%s is to open in %s, and there is no bore where its jaws are", c.Path(), h.Choice.On.Name())
		return
	}
	grips, word := c.GripsInside, "its jaws as usual"
	if h.Choice.Reversed {
		grips, word = c.Reversed.GripsInside, "its jaws turned round"
	}
	g, ok := Need(a, grips)
	if !ok || len(g) != 2 {
		return
	}
	if d >= g[0]-0.0005 && d <= g[1]+0.0005 {
		a.Clear(Room(d, g[0]), "the bore of "+h.Part.Label+" on "+c.Path())
		return
	}
	f := a.Say(c.Path()+".grips_inside+"+h.Part.Label, h.Place("on", "hold"), "%s holds bores of %s to %s mm with %s, and the bore is %s mm there", c.Path(), figure(g[0]), figure(g[1]), word, figure(d))
	f.Also = []finding.Note{{Place: grips.At, Says: "what it holds from inside"}}
}
