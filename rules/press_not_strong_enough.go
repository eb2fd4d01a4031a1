package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "press-not-strong-enough",
	Title: "a fit takes more force to press together than the press has",
	Why: `Half way in is the worst place for a pressed part to stop: it comes neither in nor out. The force goes up with
interference, length and the thickness of the hub. Less interference, a shorter land, or warming the hub is the cure.`,
	Rows:      []string{"D22"},
	Source:    []string{"Lamé's thick rings; friction as a band, DIN 7190-1 as tabled in the handbook, from memory"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleArborPress(`"12 s6"`),
	Sound:     exampleArborPress(`"12 p6"`),
	OnBuild:   pressNotStrongEnough,
})

// exampleArborPress presses a pin of some limits into a ring.
func exampleArborPress(shaft string) string {
	return `recipe "example" {
  units = "mm"
}

part "ring" {
  material = "EN8"
  diameter = 40
  length   = 20

  bore "eye" {
    into     = "left"
    diameter = "12 H7"
  }
}

part "pin" {
  material = "EN8"
  diameter = ` + shaft + `
  length   = 40
}

fit "pin" {
  hole    = part.ring.bore.eye.diameter
  shaft   = part.pin.diameter
  wants   = "H7/s6"
  engaged = 20
}

assembly "both" {
  of = [part.ring, part.pin]

  bench "press" {
    joins = [fit.pin]
    tool  = arbor_press.half
    by    = "pressing"
  }
}
`
}

func pressNotStrongEnough(t *eval.Trace, a *Ask) {
	for _, p := range t.Pressings() {
		tooTall(&p, a)
		if p.None {
			continue
		}
		force, ok := Need(a, p.Force)
		has, ok2 := Need(a, p.Press.Force)
		if !ok || !ok2 {
			continue
		}
		of := p.Fit.Model.Item.Path()
		switch {
		case force.Lo > has:
			f := a.Say(of+"+"+p.Press.Path(), p.Bench.Item.Attr("tool").Value.At, "%s takes %s to %s N at full length, by its limits and the spread of friction; %s has %s N",
				of, newtons(force.Lo), newtons(force.Hi), p.Press.Path(), figure(has))
			f.Margin = finding.Margin{Has: math.Round(has), Wants: math.Round(force.Lo), Unit: "N"}
			f.Spots = []finding.Spot{{SetUp: p.Bench.Kind + " " + p.Bench.Label}}
		case force.Hi <= has:
			a.Clear(finding.Margin{Has: math.Round(has), Wants: math.Round(force.Hi), Unit: "N"}, p.Press.Path()+" for "+of)
		default:
			a.Lack(model.Lack{Fact: "how hard " + of + " presses in", At: p.Fit.Model.Item.At})
		}
	}
}

// newtons prints a force to two figures: it is known no better.
func newtons(x float64) string {
	if x <= 0 {
		return "0"
	}
	step := math.Pow(10, math.Floor(math.Log10(x))-1)
	return figure(math.Round(x/step) * step)
}

// lowPress is a height that goes under any press, mm: of taller work its opening is asked for. Our own.
const lowPress = 70.0

// tooTall says so where the shaft, standing on the hub that it is to go into, is taller than the press opens.
func tooTall(p *eval.Pressing, a *Ask) {
	tall, ok := p.Tall.Get()
	if !ok || tall <= lowPress {
		return
	}
	opens, ok := Need(a, p.Press.Opening)
	if !ok || tall <= opens+0.0005 {
		return
	}
	f := a.Say(p.Fit.Model.Item.Path()+"+"+p.Press.Path()+".opening", p.Bench.Item.Attr("tool").Value.At, "before they go together the parts of %s stand %s on each other, and %s opens to %s",
		p.Fit.Model.Item.Path(), mm(round(tall)), p.Press.Path(), mm(opens))
	f.Margin = Bound(round(tall), opens, "mm")
	f.Spots = []finding.Spot{{SetUp: p.Bench.Kind + " " + p.Bench.Label}}
}
