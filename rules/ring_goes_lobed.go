package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "ring-goes-lobed",
	Title: "a thin ring is squeezed by three jaws while it is turned or bored",
	Why: `Three jaws press a thin ring into a shape with three lobes. It is turned round while it is squeezed, and springs out of
round when it is let go. Bore and turn it while it is one with the bar, or hold it in bored soft jaws, on a mandrel, by its face.`,
	Rows:      []string{"C3"},
	Source:    []string{"diameter over wall above 20: seen in print; rings lobed by a tenth of a millimetre are reported"},
	Limits:    []string{"ring_wall"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleRing("51"),
	Sound:     exampleRing("40"),
	OnTurn:    ringGoesLobed,
})

// exampleRing bores a ring of 56 mm outside in three jaws.
func exampleRing(bore string) string {
	s := exampleTurned(`
  bore "eye" {
    into     = "right"
    diameter = `+bore+`
  }
`, inThree, `
    operation {
      makes = bore.eye
    }`)
	s = replaced(s, "diameter = 20", "diameter = 56")
	s = replaced(s, "length   = 60", "length   = 30")
	return replaced(s, "over = { left = 1, right = 1, outside = 1 }", "stock = stock.own") + `
stock "own" {
  material = "mild steel"
  tube     = { outside = 56, wall = 10 }
  lengths  = [300]
}
`
}

func ringGoesLobed(k *eval.Turn, a *Ask) {
	h := &k.Hold.Choice
	if k.Hold.Unplayed != "" || h.Chuck == nil || h.Soft || h.Bush != nil || !k.OnSlides() {
		return
	}
	made := ""
	for _, w := range k.Works {
		if w.Wrong == "" && (w.Inside || w.U1 > 0) {
			made = w.Target.Name()
			break
		}
	}
	wall, out, ring := k.Hold.RingWall(k.After.Profile)
	if made == "" || !ring || wall <= 0 {
		return
	}
	ratio, most := out/wall, a.Limit("ring_wall")
	if ratio <= most+1e-6 {
		a.Clear(Bound(ratio, most, "walls"), "the ring in "+h.Chuck.Path())
		return
	}
	f := a.Say(k.Hold.Work.SetUp.Path()+".ring", k.Place("makes"), "%s is worked while %s grips a ring of %s mm with a wall of %s mm: %s walls go in its diameter, usually %s at most",
		made, h.Chuck.Path(), figure(round(out)), figure(round(wall)), tenthUp(ratio), figure(most))
	f.Margin = Bound(ratio, most, "walls")
}
