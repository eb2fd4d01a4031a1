package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "web-too-thin-to-hold",
	Title: "a thin wall stands between the jaw and a hollow behind it",
	Why: `A jaw presses where it touches. If only a thin wall stands behind it, the wall bends or is
crushed, the size is lost, and the piece is held by a spring. Grip across solid metal, fill the
hollow, or leave the wall thick until the end.`,
	Rows: []string{"C2", "G12", "C11"},
	Source: []string{"a wall bends with the cube of its height over its thickness: derived",
		"limits: common practice, to be set by the shop"},
	Limits:    []string{"thin_wall", "plate_bow"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleThinWall(0.4),
	Sound:     exampleThinWall(4),
	OnHold:    webTooThin,
})

// exampleThinWall mills a pocket that leaves a wall at the back, then grips across it.
func exampleThinWall(wall float64) string {
	return `recipe "example" {
  units = "mm"
}

part "tray" {
  material = "brass"
  length   = 60
  width    = 40
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  pocket "room" {
    into  = "top"
    from  = { left = 10, back = ` + model.Figure(wall) + ` }
    to    = { right = 10, front = 15 }
    depth = 15
  }

  hole "pin" {
    into     = "top"
    at       = { left = 5, front = 7 }
    diameter = 3
  }

  setup "mill" {
    hold      = vise.small
    up        = "top"
    jaws      = "right"
    parallels = 6

    operation {
      makes = pocket.room
      tool  = slot_drill.two[8]
    }
  }

  setup "drill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 6

    operation {
      makes = hole.pin
    }
  }
}
`
}

func webTooThin(h *eval.Holding, a *Ask) {
	if h.Jaws() == nil {
		return
	}
	for _, side := range []struct {
		name string
		c    model.Known[eval.Contact]
	}{{"fixed", h.Fixed}, {"moving", h.Moving}} {
		c, ok := Need(a, side.c)
		if !ok || !c.Touches {
			continue
		}
		// A wall counts as standing where less than half the piece's width is behind the jaw
		// and a removal ends it.
		if c.ThinBy == "" || c.Behind > (h.Hi[1]-h.Lo[1])/2 || endsInEdge(h, &c) {
			a.Clear(finding.Margin{}, "")
			continue
		}
		want, why := a.Limit("thin_wall"), "thin_wall"
		high := h.WallHeight(&c)
		if tall := high / a.Limit("plate_bow"); tall > want && !isHole(h, c.ThinBy) {
			want, why = tall, "plate_bow"
		}
		if c.Behind >= want-0.0005 {
			a.Clear(Room(c.Behind, want), "the wall behind the "+side.name+" jaw, up to "+c.ThinBy)
			continue
		}
		says := "the " + side.name + " jaw presses on a wall that is " + mm(round(c.Behind)) + " thick, with " + c.ThinBy +
			" behind it; usually at least " + tenthUp(want) + " mm"
		if why == "plate_bow" {
			says += " for one that stands " + tenth(high) + " mm high between the jaws"
		}
		f := a.Say(h.Work.SetUp.Path()+"+"+c.ThinBy, h.Place("jaws", "hold"), "%s", says)
		f.Margin = Room(c.Behind, want)
	}
}

// endsInEdge says that what thins the metal opens aslant in the very face that is pressed, as a dovetail or a leaning
// hole does: what stands beside it is a wedge with a sharp edge, thick behind it, and no wall.
func endsInEdge(h *eval.Holding, c *eval.Contact) bool {
	for _, f := range h.Part.Forms {
		if f.Name() == c.ThinBy {
			return f.Into.Face == c.Face && (f.Feature.Kind == "dovetail" || f.Slope() > 0)
		}
	}
	return false
}

func isHole(h *eval.Holding, name string) bool {
	for _, f := range h.Part.Forms {
		if f.Name() == name {
			return len(f.Mouths) > 0
		}
	}
	return false
}
