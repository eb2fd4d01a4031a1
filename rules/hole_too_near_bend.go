package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "hole-too-near-bend",
	Title: "a hole is made before a bend that lies so near that it draws the hole out of round",
	Why: `Metal flows towards a bend. A hole whose edge lies within about two thicknesses of where the bend begins becomes a
tear or an egg. It goes farther off, or is drilled after bending.`,
	Rows:      []string{"F2"},
	Source:    []string{"two thicknesses and the radius: common practice"},
	Limits:    []string{"bend_room"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     replaced(exampleBend("annealed", "    inside_radius = 1\n"), "left = 10, front", "left = 16, front"),
	Sound:     exampleBend("annealed", "    inside_radius = 1\n"),
	OnPart:    holeTooNearBend,
})

func holeTooNearBend(p *eval.PartTrace, a *Ask) {
	for _, b := range p.Part.Forms {
		if b.Feature.Kind != "bend" || len(b.Feature.At.V) == 0 {
			continue
		}
		axis, at, ok := p.Part.PlaceOf(b.Feature.At.V[0])
		t, ok2 := Need(a, p.Part.Part.Thickness)
		if !ok || !ok2 {
			continue
		}
		for _, h := range p.Part.Forms {
			if len(h.Mouths) == 0 || h.Into.Face.Axis() != 2 || !h.Diameter.Is() || !madeBefore(p.Part, h, b) {
				continue
			}
			r, ok := Need(a, b.Feature.InsideRadius)
			if !ok {
				continue
			}
			for _, mouth := range h.Mouths {
				// The leg stands on the far side of its outside; the bend begins a radius and a
				// thickness before it.
				edge := math.Abs(mouth[axis]-at) - h.Diameter.V/2 - r.Nominal - t.Nominal
				wants := a.Limit("bend_room") * t.Nominal
				if edge >= wants-1e-6 {
					a.Clear(Room(round(edge), wants), h.Name()+" from bend."+b.Feature.Label)
					continue
				}
				f := a.Say(h.Name()+"+bend."+b.Feature.Label, h.Feature.Item.At, "the edge of %s lies %s from where bend.%s begins, and is made before it; usually at least %s are left, or the hole is drawn out of round",
					h.Name(), mm(round(edge)), b.Feature.Label, mm(round(wants)))
				f.Margin = Room(round(edge), wants)
				f.Also = []finding.Note{{Place: b.Feature.Item.At, Says: "the bend"}}
			}
		}
	}
}

// madeBefore says whether a step makes one form and a later one the other.
func madeBefore(p *eval.Part, first, then *eval.Form) bool {
	made := false
	for _, w := range p.Work {
		for _, st := range w.Steps {
			for _, t := range st.Makes {
				if t.Form == first {
					made = true
				}
				if t.Form == then && made {
					return true
				}
			}
		}
	}
	return false
}
