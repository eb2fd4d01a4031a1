package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "wall-too-thin-left",
	Title: "hardly any wall is left between outside and bore",
	Why: `A wall of a few tenths bends away from the tool, chatters, tears, or goes out of round in the chuck. Where bore and outside are
drawn so near to each other the drawing wants a second look; else a size has been mistaken.`,
	Rows:      []string{"G12"},
	Source:    []string{"half section, on the thin side where they do not lie about one line; half a millimetre at least: our own, many a good bush has a thinner wall in bearing metal than in steel"},
	Limits:    []string{"thin_wall"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleThinBore("15.4"),
	Sound:     exampleThinBore("12"),
	OnTurn:    wallTooThinLeft,
})

// exampleThinBore turns the end of a piece to 16 mm and bores it.
func exampleThinBore(d string) string {
	return exampleTurned(`
  outside "waist" {
    from     = 40
    diameter = 16
  }

  bore "eye" {
    into     = "right"
    diameter = `+d+`
    from     = 45
  }

  hole "way" {
    into     = "right"
    diameter = 11
    depth    = 14
  }
`, inThree, `
    operation {
      makes = outside.waist
    }
    operation {
      makes = hole.way
    }
    operation {
      makes = bore.eye
    }`)
}

func wallTooThinLeft(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" || k.Choice.By == "parting" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong != "" || w.Target.Face != 0 && w.Target.Form == nil && !w.Target.Outside {
			continue
		}
		wall, at, bored := k.Thinnest(&w)
		if !bored {
			continue
		}
		want := a.Limit("thin_wall")
		if wall >= want-0.0005 {
			a.Clear(Room(round(wall), want), "the wall that "+w.Target.Name()+" leaves")
			continue
		}
		says := "leaves a wall of " + mm(round(wall))
		if wall < 0.0005 {
			says = "leaves no wall at all"
		}
		f := a.Say(k.Spot.Part+"."+w.Target.Name()+".wall", k.Place("makes"), "%s %s between outside and bore, %s mm along the axis; usually %s at least is left",
			w.Target.Name(), says, figure(round(at)), mm(want))
		f.Margin = Room(round(wall), want)
	}
}
