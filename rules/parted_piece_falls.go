package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "parted-piece-falls",
	Title: "a parted piece is too large to fall between the ways, and nothing receives it",
	Why: `A piece that comes off drops on the bed or into the turning jaws, and is dented or thrown. What is smaller than the gap between
the ways falls through into the chips. A rod in the tailstock through its bore, a tray, or sawing the last of it by hand keeps it.`,
	Rows:      []string{"C23"},
	Source:    []string{"geometry; common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     examplePartedOff("nothing", "70"),
	Sound:     examplePartedOff("a rod in the tailstock", "70"),
	OnTurn:    partedPieceFalls,
})

// examplePartedOff parts a disc off in the four-jaw chuck.
func examplePartedOff(catcher, d string) string {
	more := ""
	if catcher != "" {
		more = "\n    catcher = \"" + catcher + "\""
	}
	s := exampleTurned("", replaced(inFour, "\n    grip    = 20", "\n    stick_out = 30")+more, `
    operation {
      makes = face.right
    }
    operation {
      makes = face.left
      by    = "parting"
    }`)
	s = replaced(replaced(s, "diameter = 20", "diameter = "+d), "length   = 60", "length   = 15")
	return replaced(s, "left = 1,", "left = 40,")
}

func partedPieceFalls(k *eval.Turn, a *Ask) {
	m := k.Lathe()
	if m == nil || k.Choice.By != "parting" || k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong != "" || w.Target.Form != nil {
			continue
		}
		catcher := k.Hold.Work.SetUp.Catcher
		if catcher.Is() && !oneOf(catcher.V, "nothing", "none") {
			a.Clear(finding.Margin{}, "")
			continue
		}
		d := round(2 * k.After.Profile.Most())
		gap, ok := Need(a, m.BedGap)
		if !ok {
			continue
		}
		if d <= gap+0.0005 {
			a.Clear(Bound(d, gap, "mm"), "the parted piece between the ways of "+m.Path())
			continue
		}
		if _, ok := Need(a, catcher); !ok {
			continue
		}
		f := a.Say(k.Hold.Work.SetUp.Path()+".catcher", catcher.At, "the piece is %s mm thick as it is parted off, the ways of %s stand %s mm apart, and nothing receives it",
			figure(d), m.Path(), figure(gap))
		f.Margin = Bound(d, gap, "mm")
	}
}
