package rules

import (
	"fmt"
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "helices-do-not-pair",
	Title: "the teeth of two wheels lean so that they do not mesh",
	Why: `On parallel shafts two outside wheels lean by the same angle, one to the right and the other to the left; an inside wheel and its
pinion lean the same way. On shafts that cross at right angles both are of one hand, and their angles make up 90 degrees. Cut
the one again that is easier to cut.`,
	Rows:      []string{"H11"},
	Source:    []string{"hands and angles of helical wheels: any gear text (from memory; geometry of the common tangent)"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleLeaning("right", "right", "20"),
	Sound:     exampleLeaning("right", "left", "20"),
	OnJoint:   helicesDoNotPair,
})

// exampleLeaning is two wheels whose teeth lean by so much, of such hands.
func exampleLeaning(wheel, pinion, helix string) string {
	leans := func(hand string) string { return "\n    hand   = \"" + hand + "\"\n    helix  = " + helix }
	return exampleWheels("count  = 40\n    module = 1"+leans(wheel), "count  = 20\n    module = 1"+leans(pinion), "")
}

func helicesDoNotPair(j *eval.Joint, a *Ask) {
	o := j.Mesh
	if o == nil || o.IsWorm || o.Rack {
		return
	}
	w, p := &o.Wheel, &o.Pinion
	x, y := math.Abs(w.Feature.Helix.V), math.Abs(p.Feature.Helix.V)
	if x == 0 && y == 0 {
		return
	}
	for _, t := range [2]*eval.Toothed{w, p} {
		if t.Feature.Helix.V != 0 && !t.HandSaid {
			a.Lack(model.Lack{Fact: t.Name + ".hand", At: t.Feature.Item.At})
		}
	}
	if a.lacking() {
		return
	}
	same := w.Hand == p.Hand
	const near = 1e-6 // degrees
	parallel := math.Abs(x-y) <= near && same == (w.Inside || p.Inside)
	crossed := same && math.Abs(x+y-90) <= near && !w.Inside && !p.Inside
	if parallel || crossed {
		a.Clear(finding.Margin{}, "")
		return
	}
	at := x + y
	if !same {
		at = math.Abs(x - y)
	}
	f := a.Say(w.Name+"+"+p.Name+"+helix", placeIn(j, "wheel"), "the teeth of %s lean %s and those of %s %s: they mesh neither on parallel shafts nor on shafts at right angles%s",
		w.Name, leanWords(w), p.Name, leanWords(p), map[bool]string{true: fmt.Sprintf(", only on shafts that cross at %s degrees", figure(round(at)))}[!w.Inside && !p.Inside])
	f.Also = []finding.Note{{Place: w.Feature.Item.At, Says: w.Name}, {Place: p.Feature.Item.At, Says: p.Name}}
}

func leanWords(t *eval.Toothed) string {
	if t.Feature.Helix.V == 0 {
		return "not at all"
	}
	return figure(round(math.Abs(t.Feature.Helix.V))) + " degrees to the " + t.Hand
}
