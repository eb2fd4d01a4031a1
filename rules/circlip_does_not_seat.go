package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "circlip-does-not-seat",
	Title: "a circlip does not go into its groove, or is not here",
	Why: `A groove narrower than the ring does not take it, and one that is too shallow lets it spring off under load. Width and
floor follow from the shaft or bore by the standard: left out they are taken from there. Rings of one size only fit one diameter.`,
	Rows:      []string{"I7", "G11"},
	Source:    []string{"DIN 471 and DIN 472 (from memory): thickness of the ring, diameter at the floor of the groove"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleCirclip("width = 0.9"),
	Sound:     exampleCirclip("width = 1.1"),
	OnPart:    circlipDoesNotSeat,
})

// exampleCirclip is a shaft of 12 mm with a groove for a circlip.
func exampleCirclip(says string) string {
	return `recipe "example" {
  units = "mm"
}

part "shaft" {
  material = "mild steel"
  diameter = 12
  length   = 60

  groove "ring" {
    on   = face.outside
    form = "circlip"
    from = 50
    ` + says + `
  }
}

circlips "shafts" {
  diameter = [8, 12, 20]
}
`
}

func circlipDoesNotSeat(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		if f.Feature.Kind != "groove" || f.Feature.Form.V != "circlip" {
			continue
		}
		c, on, ok := p.Part.CirclipOf(f.Feature)
		if !ok {
			a.Lack(model.Lack{Fact: p.Part.Path() + "." + f.Name() + " (a circlip of its size)", At: f.Feature.Item.At})
			continue
		}
		name := p.Part.Label + "." + f.Name()
		inside := f.Lathe != nil && f.Lathe.Inside
		seat := "a shaft of " + mm(on)
		if inside {
			seat = "a bore of " + mm(on)
		}
		width := f.Width
		switch {
		case f.Lathe == nil:
		case width < c.Ring-0.0005:
			m := a.Say(name+".width", placeOf(f, "width"), "%s is %s wide, and the circlip for %s is %s thick: the standard's groove has %s", f.Name(), mm(round(width)), seat, mm(c.Ring), mm(c.Width))
			m.Margin = Room(round(width), c.Ring)
		case !inside && 2*f.Lathe.R0 > (c.Floor+on)/2 || inside && 2*f.Lathe.R0 < (c.Floor+on)/2:
			said := "diameter"
			if f.Feature.Item.Attr(said) == nil {
				said = "depth"
			}
			m := a.Say(name+".diameter", placeOf(f, said), "the floor of %s is %s across, and the circlip for %s wants %s: it holds in less than half of its groove", f.Name(), mm(round(2*f.Lathe.R0)), seat, mm(c.Floor))
			m.Margin = Room(round(abs(on-2*f.Lathe.R0)/2), round(abs(on-c.Floor)/2))
		default:
			a.Clear(Room(round(width), c.Ring), f.Name()+" for its circlip")
		}
		circlipHere(p, f, on, inside, seat, a)
	}
}

// circlipHere looks for the ring among those of the shop, where it says what it has.
func circlipHere(p *eval.PartTrace, f *eval.Form, on float64, inside bool, seat string, a *Ask) {
	asked := false
	for _, c := range p.Part.Build.Shop.Circlips {
		if c.Inside.Or(false) != inside || !c.Here() {
			continue
		}
		asked = true
		if c.Diameter.V.Has(on) {
			a.Clear(finding.Margin{}, "")
			return
		}
	}
	if asked {
		a.Say(p.Part.Label+"."+f.Name()+".circlip", f.Feature.Item.At, "no circlip for %s is here: buy one, or move the groove to a diameter that there is one for", seat)
	}
}
