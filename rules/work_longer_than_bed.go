package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "work-longer-than-bed",
	Title: "the work is too long for the lathe",
	Why: `Between its centres a lathe takes what its bed is long. Work in a chuck with a centre to it has less: chuck and jaws take their
share. The bar may go into the spindle, or a steady hold the end instead of the tailstock.`,
	Rows: []string{"A11"},
	Source: []string{"distance between centres, and from nose to tailstock, as declared, and how far the centre stands out of the quill",
		"no centre stands out more than 120 mm: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Shifted:   true,
	Trips:     exampleLongWork("600"),
	Sound:     exampleLongWork("400"),
	OnChuck:   workLongerThanBed,
})

// exampleLongWork turns a piece so long with a centre to it.
func exampleLongWork(length string) string {
	return replaced(exampleTurned(`
  centre_hole "seat" {
    into = "right"
  }
`, inThree+"\n    support = { by = centre.live, at = \"right\" }", `
    operation {
      makes   = centre_hole.seat
      support = "withdrawn"
    }
    operation {
      makes = face.outside
    }`), "length   = 60", "length   = "+length)
}

// longestCentre is as far as any centre stands out of its quill, mm.
const longestCentre = 120

func workLongerThanBed(h *eval.Chucking, a *Ask) {
	m := h.Choice.Machine
	if m == nil || !h.CentreStands() {
		return
	}
	long, room, what := round(h.Length()), m.BetweenCentres, "between its centres"
	point, sure := 0.0, true
	if !h.Choice.Centres {
		if h.Choice.Chuck == nil {
			return
		}
		reach, ok := Need(a, h.FromNose(h.Free))
		if !ok {
			return
		}
		if s := h.Choice.Support; s != nil && s.Centre != nil {
			point, sure = s.Centre.Out.V, s.Centre.Out.Is()
		}
		long, room, what = round(reach+point), m.NoseToTailstock, "from its nose to the tailstock"
	}
	most, ok := Need(a, room)
	if !ok {
		return
	}
	if long <= most+0.0005 && !sure && long+longestCentre > most {
		Need(a, h.Choice.Support.Centre.Out)
		return
	}
	if long <= most+0.0005 {
		a.Clear(Bound(long, most, "mm"), "the work on the bed of "+m.Path())
		return
	}
	says := "%s is %s mm long, and %s has %s mm %s"
	if !h.Choice.Centres {
		says = "%s ends %s mm from the nose, chuck and jaws counted, and %s has %s mm %s"
		if point > 0 {
			says = "%s ends %s mm from the nose, chuck, jaws and centre counted, and %s has %s mm %s"
		}
	}
	f := a.Say(m.Path()+".bed+"+h.Part.Label, h.Place("hold", "support"), says, h.Part.Label, figure(long), m.Path(), figure(most), what)
	f.Margin = Bound(long, most, "mm")
	f.Also = []finding.Note{{Place: room.At, Says: "the room on its bed"}}
}
