package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "parting-tool-too-short",
	Title: "the blade does not reach the middle of the bar",
	Why: `A parting tool cuts as deep as it stands out of its holder. What it leaves in the middle is twisted off, or breaks the
blade. Part from bar with a bore, turn the place down first, or saw the piece off and face it.`,
	Rows:      []string{"B16"},
	Source:    []string{"geometry; a millimetre beyond the middle: common practice"},
	Limits:    []string{"parting_reach"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleParting("    stick_out = 70", 32),
	Sound:     exampleParting("    stick_out = 70", 22),
	OnTurn:    partingToolTooShort,
})

// exampleParting parts a pin off a bar of its own diameter.
func exampleParting(holding string, diameter float64) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = ` + figure(diameter) + `
  length   = 60

  blank {
    stock = stock.own
    bar   = true
  }

  setup "turn" {
    machine = lathe.wide
    hold    = chuck.three
` + holding + `

    operation {
      makes = face.right
    }
    operation {
      makes = face.left
      by    = "parting"
      tool  = parting_tool.blade
    }
  }
}

stock "own" {
  material = "mild steel"
  round    = ` + figure(diameter) + `
  lengths  = [300]
  skin     = "drawn"
}

lathe "wide" {
  swing     = 400
  bore      = 60
  headstock = 400
  nose      = "M39x4"
  speeds    = [60, 100, 160, 260, 420]
  bed_gap   = 20
}
`
}

func partingToolTooShort(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if k.Choice.By != "parting" || c == nil || c.Kind != "parting_tool" {
		return
	}
	for _, w := range k.Works {
		if w.Had == 0 {
			continue
		}
		reach, ok := Need(a, c.Reach)
		if !ok {
			return
		}
		hollow := k.Before.Profile.Between(w.X0, w.X1).Hollow()
		need := w.Had - hollow
		if hollow == 0 {
			need += a.Limit("parting_reach")
		}
		need = round(need)
		if reach >= need-0.0005 {
			a.Clear(Room(reach, need), "the reach of "+c.Path())
			continue
		}
		f := a.Say(c.Path()+".reach+"+w.Target.Name(), k.Place("tool", "makes"), "%s reaches %s, and %s mm are wanted to part %s at a diameter of %s mm",
			c.Path(), mm(reach), figure(need), k.Part.Label, figure(round(2*w.Had)))
		f.Margin = Room(reach, need)
		f.Also = []finding.Note{{Place: c.Reach.At, Says: "its reach"}}
	}
}
