package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "between-jaws-does-not-fit",
	Title: "the split bush, or the nut, between jaws and work is of another size",
	Why: `A split bush closes by the width of its slit and no more: work that is thinner stays loose in it, thicker work does not go in,
and a square does not lie in a round hole. A nut holds a thread of its own kind only, and one that is not sawn through does
not close on it: the work turns in it under the first cut.`,
	Rows: []string{"A14", "C12"},
	Source: []string{"look-up: bores, sections and threads as the shop declares them",
		"0.1 mm below or above its bore: our own; a split nut closes on its thread: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleInBush("[20]", ""),
	Sound:     exampleInBush("[20, 22]", ""),
	OnChuck:   betweenJawsDoesNotFit,
})

// exampleInBush holds bar of 22 mm in a split bush of its own.
func exampleInBush(bore, more string) string {
	return exampleWaist(inThree+"\n    between = split_bush.own", "") + `
split_bush "own" {
  bore    = ` + bore + `
  outside = 35
` + more + `}
`
}

// bushCloses is by how much the bore of a split bush may differ from the work, mm.
const bushCloses = 0.1

func betweenJawsDoesNotFit(h *eval.Chucking, a *Ask) {
	c := &h.Choice
	switch {
	case c.Chuck == nil || len(h.Touches) == 0:
	case c.Bush != nil:
		inBush(h, c.Bush, a)
	case c.Nut != nil:
		inNut(h, c.Nut, a)
	}
}

func inBush(h *eval.Chucking, b *model.SplitBush, a *Ask) {
	z := h.Touches[0]
	has, d := "round", h.Gripped
	if z.Flats > 0 {
		has = map[int]string{4: "square", 6: "hexagon"}[z.Flats]
		d *= math.Cos(math.Pi / float64(z.Flats))
	}
	if section, ok := Need(a, b.Section); ok && section != has {
		a.Say(b.Path()+".section+"+h.Part.Label, h.Place("between", "hold"), "the hole of %s is %s, and %s is %s where it is held", b.Path(), section, h.Part.Label, has)
		return
	}
	bores, ok := Need(a, b.Bore)
	if !ok {
		return
	}
	near, ok := bores.Nearest(d)
	if !ok {
		return
	}
	if off := round(math.Abs(near - d)); off <= bushCloses+0.0005 {
		a.Clear(Bound(off, bushCloses, "mm"), h.Part.Label+" in "+b.Path())
		return
	}
	f := a.Say(b.Path()+".bore+"+h.Part.Label, h.Place("between", "hold"), "%s takes %s mm at the nearest, and %s is %s mm where it is held", b.Path(), figure(round(near)), h.Part.Label, figure(round(d)))
	f.Also = []finding.Note{{Place: b.Bore.At, Says: "what it takes"}}
}

func inNut(h *eval.Chucking, n *model.Nut, a *Ask) {
	t, on, ok := threadHeld(h)
	if !ok {
		a.Say(n.Path()+"+"+h.Part.Label, h.Place("between", "hold"), "%s is to hold %s by a thread, and there is none where the jaws are", n.Path(), h.Part.Label)
		return
	}
	thread, ok := Need(a, n.Thread)
	switch {
	case !ok:
	case !thread.Same(t):
		f := a.Say(n.Path()+".thread+"+h.Part.Label, h.Place("between", "hold"), "%s is %s, and %s is %s", n.Path(), thread, on, t)
		f.Also = []finding.Note{{Place: n.Thread.At, Says: "its thread"}}
	case !n.Split.V:
		a.Say(n.Path()+".split+"+h.Part.Label, h.Place("between", "hold"), "%s is not sawn through: the jaws close on it and not on the thread, and %s turns in it; split it, or run it up against a shoulder and lock it",
			n.Path(), h.Part.Label)
	default:
		a.Clear(finding.Margin{}, "")
	}
}

// threadHeld is the thread that lies between the jaws, and what it is called.
func threadHeld(h *eval.Chucking) (t drawing.Thread, on string, ok bool) {
	held := h.BetweenJaws(h.Before.Profile)
	for _, f := range h.Part.Forms {
		if f.Feature.Kind != "thread" || f.Lathe == nil || f.Lathe.Inside || !f.Feature.ThreadSize.Is() {
			continue
		}
		if len(held.Between(f.Lathe.X0, f.Lathe.X1)) > 0 && h.Part.Feature(h.Before, f) != nil && h.Part.Feature(h.Before, f).Threaded {
			return f.Feature.ThreadSize.V, f.Name(), true
		}
	}
	return t, "", false
}
