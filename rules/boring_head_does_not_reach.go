package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "boring-head-does-not-reach",
	Title: "a boring head does not bore that diameter, or there is none to turn the bar",
	Why: `A boring head sets its bar out from the middle by a slide: its bars and its slide together bore from a least diameter to a
most. Beyond that a rotary table under an end mill, or a faceplate on the lathe, makes the bore. From the hole that is there to the
bore that is wanted one bar goes as far as the slide does; for more it is set over into another seat of the head.`,
	Rows:      []string{"A19"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Holding,
	Trips:     exampleHeadBores("34", ""),
	Sound:     exampleHeadBores("24", ""),
	OnCut:     boringHeadDoesNotReach,
})

// exampleHeadBores drills a hole of 12 mm through a block and bores it so wide with a head that bores
// from 11 to 32 mm.
func exampleHeadBores(wide, more string) string {
	s := replaced(exampleHole("to    = 12", "tool  = drill.jobbers[12]"), "diameter = 6", "diameter = "+wide)
	s = replaced(s, "length   = 40", "length   = 60")
	s = replaced(s, "width    = 30", "width    = 46")
	s = replaced(s, "{ left = 20, front = 15 }", "{ left = 30, front = 23 }")
	return replaced(s, "    }\n  }\n}\n", `    }
    operation {
      makes = hole.pin
      by    = "boring"
    }
  }
}
`) + `
boring_head "small" {
  shank    = "MT3"
  tail     = "M12"
  diameter = 50
  out      = 60
  bores    = [11, 32]
}
` + more
}

func boringHeadDoesNotReach(k *eval.Cut, a *Ask) {
	if !k.BoresWithHead() || k.Hold.Unplayed != "" || k.Unplayed != "" {
		return
	}
	h, c := k.Head(), k.Choice.Tool.Cutter
	for _, w := range k.Works {
		if w.Wrong != "" || !w.Facing {
			continue
		}
		if h == nil {
			a.Say(c.Path()+".head+"+w.Target.Name(), k.Place("holder", "tool", "makes"), "%s turns in a boring head to bore %s, and none holds it here", c.Path(), w.Target.Name())
			return
		}
		a.Asks("does the slide of %s, set out for %s mm, clear piece and vise when it is turned round by hand?", h.Path(), figure(round(w.Diameter)))
		r, ok := Need(a, h.Bores)
		if !ok || len(r) != 2 {
			return
		}
		d := round(w.Diameter)
		if d >= r[0]-0.0005 && d <= r[1]+0.0005 {
			if !slideRunsOut(k, h, &w, a) {
				a.Clear(between(d, r[0], r[1]), h.Path()+" for "+w.Target.Name())
			}
			continue
		}
		f := a.Say(h.Path()+".bores+"+w.Target.Name(), k.Place("holder", "tool", "makes"), "%s bores from %s to %s, and %s is bored to %s mm", h.Path(), figure(r[0]), mm(r[1]), w.Target.Name(), figure(d))
		f.Margin = between(d, r[0], r[1])
		f.Also = []finding.Note{{Place: h.Bores.At, Says: "what it bores"}}
	}
}

// between is the margin of a figure that must lie from a least to a most: towards the nearer of them.
func between(has, least, most float64) finding.Margin {
	if has-least < most-has {
		return Room(has, least)
	}
	return Bound(has, most, "mm")
}

// slideRunsOut says so where one operation takes the bar farther out than the slide of its head goes. Where
// that is not declared nothing is said: most bores are opened by less than any slide.
func slideRunsOut(k *eval.Cut, h *model.Holder, w *eval.Working, a *Ask) bool {
	way := round((w.Diameter - w.Had) / 2)
	slide, ok := h.Slide.Get()
	if !ok || !(w.Had > 0) || way <= slide+0.0005 {
		return false
	}
	f := a.Say(h.Path()+".slide+"+w.Target.Name(), k.Place("holder", "tool", "makes"), "%s is bored from %s mm out to %s, %s of the slide, and that of %s goes %s: the bar has to be set over into another seat on the way",
		w.Target.Name(), figure(round(w.Had)), mm(round(w.Diameter)), mm(way), h.Path(), mm(slide))
	f.Margin = Bound(way, slide, "mm")
	f.Also = []finding.Note{{Place: h.Slide.At, Says: "its slide"}}
	return true
}
