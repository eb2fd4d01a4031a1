package rules

import (
	"math"
	"sort"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "bolt-holes-out-of-line",
	Title: "the clearance holes of one part may not line up with the tapped holes of the other",
	Why: `Each hole may lie off its place by what its position allows, in both parts. A clearance hole leaves a screw half of its
room to either side; where the two errors come to more, the last screw does not start. Spot the second part through the
first, use the first as a jig, drill them together, or open the holes.`,
	Rows:      []string{"D25"},
	Source:    []string{"one clearance hole and one tapped: (hole - screw)/2 against the sum of both position errors along one axis; the parts may shift against each other, so a pair of holes shares its error"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleBoltHoles("5.3", "±0.1", "±0.1"),
	Sound:     exampleBoltHoles("5.5", "±0.1", "±0.1"),
	OnJoint:   boltHolesOutOfLine,
})

// exampleBoltHoles holds a plate on a block by two M5 screws, whose holes lie so exactly.
func exampleBoltHoles(hole, plate, block string) string {
	at := func(tol string) string {
		return "[{ left = \"10 " + tol + "\", front = \"15 " + tol + "\" }, { left = \"50 " + tol + "\", front = \"15 " + tol + "\" }]"
	}
	s := exampleScrewedDown("M5x20", hole, "10", "16", "12")
	s = replaced(s, "at       = { left = 10, front = 15 }", "at       = "+at(plate))
	return replaced(s, "at     = { left = 10, front = 15 }", "at     = "+at(block))
}

func boltHolesOutOfLine(j *eval.Joint, a *Ask) {
	if j.Screw == nil || j.Screw.Pattern == nil || len(j.Screw.Pattern.Holes) < 2 {
		return
	}
	p := j.Screw.Pattern
	cause := "bolt holes of " + p.Clear.Path() + "+" + p.Tapped.Path()
	least := p.Holes[0].Free
	for _, h := range p.Holes {
		least = math.Min(least, h.Free)
	}
	if least < 0 {
		return // the screw does not pass: another rule speaks
	}
	if x, y := apartMost(p); math.Abs(x-y) > 2*least+model.Same {
		m := a.Say(cause, placeIn(j, "through"), "the holes of %s and %s lie %s apart where the others lie %s: they miss each other by %s, and the holes leave the screws %s",
			p.Clear.Path(), p.Tapped.Path(), mm(round(x)), mm(round(y)), mm(round(math.Abs(x-y))), mm(round(2*least)))
		m.Margin = Bound(round(math.Abs(x-y)), round(2*least), "mm")
		return
	}
	for _, h := range p.Holes {
		if h.Spotted {
			continue
		}
		e1, ok := Need(a, h.Off[0])
		e2, ok2 := Need(a, h.Off[1])
		if !ok || !ok2 {
			continue
		}
		if e1+e2 > h.Free+model.Same {
			m := a.Say(cause, placeIn(j, "through"), "%s of %s may lie %s off its place and %s of %s %s; a hole of %s for %s leaves %s to either side; spot one through the other, or open the hole to %s",
				h.Clear.Name(), p.Clear.Path(), mm(round(e1)), h.Tap.Name(), p.Tapped.Path(), mm(round(e2)),
				mm(round(h.Screw.Thread.V.Diameter+2*h.Free)), h.Screw.Thread.V, mm(round(h.Free)), mm(round(h.Screw.Thread.V.Diameter+2*(e1+e2))))
			m.Margin = Bound(round(e1+e2), round(h.Free), "mm")
			m.Also = []finding.Note{{Place: h.Tap.Feature.Item.At, Says: h.Tap.Name()}}
			return
		}
		a.Clear(Bound(round(e1+e2), round(h.Free), "mm"), "the bolt holes of "+p.Clear.Path()+" and "+p.Tapped.Path())
	}
	if !a.lacking() {
		a.Clear(finding.Margin{}, "")
	}
}

// apartMost are the distances of two holes in either part, taken in order of size, that differ
// most, as drawn. The distances of two patterns that fit are the same, however the parts are
// turned.
func apartMost(p *eval.Pattern) (x, y float64) {
	if len(p.Holes) > 64 {
		return 0, 0
	}
	var a, b []float64
	for i, h := range p.Holes {
		for _, g := range p.Holes[:i] {
			a = append(a, distance(h.A, g.A))
			b = append(b, distance(h.B, g.B))
		}
	}
	sort.Float64s(a)
	sort.Float64s(b)
	for i := range a {
		if math.Abs(a[i]-b[i]) > math.Abs(x-y) {
			x, y = a[i], b[i]
		}
	}
	return x, y
}

func distance(a, b [3]float64) float64 {
	return math.Hypot(math.Hypot(a[0]-b[0], a[1]-b[1]), a[2]-b[2])
}
