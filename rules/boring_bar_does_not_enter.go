package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "boring-bar-does-not-enter",
	Title: "the hole is too small for the boring bar, or too deep for it",
	Why: `A boring bar wants a hole to begin with that its edge and its back go into, and reaches no deeper than it stands out of its
holder.`,
	Rows:      []string{"A18"},
	Source:    []string{"geometry; look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBored("9"),
	Sound:     exampleBored("11"),
	OnCut:     barInHeadDoesNotEnter,
	OnTurn:    boringBarDoesNotEnter,
})

// exampleBore drills a hole and bores it out to 14 mm.
func exampleBored(drilled string) string {
	return exampleTurned(`
  bore "seat" {
    into     = "right"
    from     = 40
    diameter = 14
  }

  hole "pilot" {
    into     = "right"
    diameter = `+drilled+`
    depth    = 20
  }
`, inThree, `
    operation {
      makes = hole.pilot
    }
    operation {
      makes = bore.seat
      tool  = boring_bar.slim
    }`)
}

func boringBarDoesNotEnter(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if !oneOf(k.Choice.By, "boring", "planing") || c == nil || c.Kind != "boring_bar" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong != "" {
			continue
		}
		barEnters(a, k.Choice.Tool, w.Target, k.Opened(&w), w.X1-w.X0, k.Place("tool", "makes"))
	}
}

// barInHeadDoesNotEnter asks the same of a bar in a boring head, which goes beyond the far side of a
// through bore.
func barInHeadDoesNotEnter(k *eval.Cut, a *Ask) {
	if !k.BoresWithHead() || k.Hold.Unplayed != "" || k.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong != "" || !w.Facing {
			continue
		}
		barEnters(a, k.Choice.Tool, w.Target, w.Had/2, w.Depth+w.Below, k.Place("tool", "makes"))
	}
}

// barEnters asks whether a bar goes into a hole of a radius, and reaches so deep.
func barEnters(a *Ask, t eval.Pick, made eval.Target, radius, depth float64, at text.Place) {
	c := t.Cutter
	if least, ok := Need(a, c.LeastBore); ok {
		had := round(2 * radius)
		if had >= least-0.0005 {
			a.Clear(Room(had, least), "the hole for "+c.Path())
		} else {
			f := a.Say(c.Path()+".least_bore+"+made.Name(), at, "%s goes into a hole of %s or more, and %s begins with %s", c.Path(), mm(least), made.Name(), hole(had))
			f.Margin = Room(had, least)
		}
	}
	deep := round(depth)
	reach, ok := Need(a, c.Reach)
	switch {
	case !ok:
	case reach >= deep-0.0005:
		a.Clear(Room(reach, deep), "the reach of "+c.Path())
	default:
		f := a.Say(c.Path()+".reach+"+made.Name(), at, "%s reaches %s, and %s goes %s mm deep", c.Path(), mm(reach), made.Name(), figure(deep))
		f.Margin = Room(reach, deep)
	}
}

func hole(d float64) string {
	if d == 0 {
		return "no hole at all"
	}
	return "one of " + mm(d)
}
