package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "pin-longer-than-holes",
	Title: "a pin is longer than the two blind holes that it goes into",
	Why: `Between two blind holes the pin has no way out: the parts do not close on each other by what it is too long. Take a shorter
pin, drill deeper, or let one of the holes through.`,
	Rows:      []string{"F16"},
	Source:    []string{"length of the pin, as written or as sold, against the depths of both holes"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleShutPin("[20, 24]"),
	Sound:     exampleShutPin("[16, 20]"),
	OnBuild:   pinLongerThanHoles,
})

// exampleShutPin is a pin of 4 mm between two blind holes, 8 and 10 mm deep.
func exampleShutPin(lengths string) string {
	part := func(name, depth string) string {
		return `
part "` + name + `" {
  material = "mild steel"
  length   = 40
  width    = 30
  height   = 16

  hole "pin" {
    into     = "top"
    at       = { left = 20, front = 15 }
    diameter = "4 H7"
    depth    = ` + depth + `
  }
}

fit "` + name + `" {
  hole  = part.` + name + `.hole.pin.diameter
  shaft = pins.dowels[4]
  wants = "H7/m6"
}
`
	}
	return `recipe "example" {
  units = "mm"
}
` + part("base", "8") + part("lid", "10") + `
pins "dowels" {
  kind     = "parallel"
  limits   = "m6"
  diameter = [3, 4, 5]
  lengths  = ` + lengths + `
}
`
}

func pinLongerThanHoles(t *eval.Trace, a *Ask) {
	for _, l := range t.PinLengths() {
		if !l.Shut {
			continue
		}
		long, ok := Need(a, l.Length)
		if !ok {
			continue
		}
		if long <= l.Room+0.0005 {
			a.Clear(Bound(round(long), round(l.Room), "mm"), "the length of "+l.Named())
			continue
		}
		says := "is " + mm(round(long)) + " long"
		if l.Chosen {
			says = "is " + mm(round(long)) + " long at least, of those here"
		}
		f := a.Say(l.Named()+"+"+l.One.Hole.Path+"+"+l.Two.Hole.Path, l.One.Model.Item.At, "%s %s, and its two blind holes, %s and %s, are %s deep together: the parts do not close",
			l.Named(), says, plainHole(l.One), plainHole(l.Two), mm(round(l.Room)))
		f.Margin = Bound(round(long), round(l.Room), "mm")
		f.Spots = []finding.Spot{l.OneJoint.Spot}
	}
}
