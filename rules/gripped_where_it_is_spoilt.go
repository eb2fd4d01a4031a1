package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "gripped-where-it-is-spoilt",
	Title: "the jaws grip on a thread, a knurl or a taper",
	Why: `Jaws crush the crests of a thread or knurl and run out by what they crush; on a taper they touch at one end and the
work walks out. Hold by another diameter, by a split nut or bush, or make that surface last.`,
	Rows:      []string{"C10"},
	Source:    []string{"order of work as written; common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     spoilt("knurl"),
	Sound:     spoilt("chamfer"),
	OnChuck:   grippedOnSpoilt,
})

// spoilt knurls the left end, or only breaks its edge, and then holds the piece there.
func spoilt(what string) string {
	feature := `
  knurl "hold" {
    on   = outside.head
    from = 0
    to   = 20
  }`
	if what == "chamfer" {
		feature = `
  chamfer "hold" {
    on   = [outside.head, face.left]
    size = 0.5
  }`
	}
	s := replaced(exampleWaist(inThree, ""), "  outside \"waist\"", "  outside \"head\" {\n    from     = 0\n    to       = 40\n    diameter = 20\n  }\n"+feature+"\n\n  outside \"waist\"")
	return replaced(s, "  setup \"turn\"", `  setup "first" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "right"
    grip    = 25

    operation {
      makes = face.left
    }
    operation {
      makes = face.outside
    }
    operation {
      makes = `+what+`.hold
    }
  }

  setup "turn"`)
}

func grippedOnSpoilt(h *eval.Chucking, a *Ask) {
	c := &h.Choice
	if c.Bush != nil || c.Nut != nil || c.Mandrel != nil || c.Centres || c.Faceplate != nil {
		return
	}
	for _, z := range h.Touches {
		word := z.Spoilt
		if !z.Straight() {
			word = "tapered"
		}
		if word == "" || word == "grooved" {
			continue
		}
		a.Say(h.Work.SetUp.Path()+"+"+word, h.Place("grip", "stick_out", "hold"), "%s grips %s where it is %s, from %s to %s mm along its axis, since %s",
			c.HeldBy(), h.Part.Label, word, figure(round(z.X0)), figure(round(z.X1)), z.By.Step)
		return
	}
	if len(h.Touches) > 0 {
		a.Clear(finding.Margin{}, "")
	}
}
