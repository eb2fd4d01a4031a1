package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "glue-lets-go",
	Title: "work is glued to a mandrel by too little of its face",
	Why: `Glue holds a disc for light, wet cuts. Heat softens it, which is how the work is taken off again, and a small face of it lets go
under the tool: the disc leaves the lathe at the speed of its rim. A mandrel nearly as wide as the work, a screw through the middle, soft
solder or a centre pressed against it hold better.`,
	Rows:      []string{"C16"},
	Source:    []string{"a quarter of the part's face: own limit; light cuts, wet: common practice"},
	Limits:    []string{"glue_share"},
	Level:     finding.Danger,
	Judgement: finding.Thumb,
	Caution:   "Keep out of the plane in which the work turns, wear eye protection, and take light cuts that stay cool. The manual of the machine comes first.",
	Trips:     exampleGlued("14"),
	Sound:     exampleGlued("40"),
	OnChuck:   glueLetsGo,
})

// exampleGlued faces a disc of 60 mm that is glued to a mandrel so wide.
func exampleGlued(face string) string {
	s := exampleTurned("", `    machine   = lathe.centre
    hold      = mandrel.own
    end       = "left"
    stick_out = 9`, `
    operation {
      makes = face.right
    }`)
	s = replaced(replaced(s, "diameter = 20", "diameter = 60"), "length   = 60", "length   = 8")
	s = replaced(s, "left = 1, right = 1, outside = 1", "left = 0, right = 1, outside = 0")
	return s + `
mandrel "own" {
  kind     = "glue"
  diameter = ` + face + `
  length   = 20
}
`
}

func glueLetsGo(h *eval.Chucking, a *Ask) {
	m := h.Choice.Mandrel
	if m == nil || m.Sort.V != "glue" || len(h.Before.Profile) == 0 {
		return
	}
	a.Asks("is %s glued to %s by at least %s of its face?", h.Part.Label, m.Path(), figure(a.Limit("glue_share")))
	sizes, ok := Need(a, m.Diameter)
	if !ok {
		return
	}
	out, in := endOf(h)
	d, ok := sizes.Nearest(2 * out)
	if !ok || !(out > in) {
		return
	}
	area := func(r float64) float64 { return max(0, math.Pi*(r*r-in*in)) }
	glued := area(math.Min(d/2, out)) / area(out)
	least := a.Limit("glue_share")
	margin := finding.Margin{Has: math.Round(glued*1000) / 1000, Wants: least, Unit: "of its face"}
	if glued >= least-1e-6 {
		a.Clear(margin, "the glued share of the face of "+h.Part.Label)
		return
	}
	f := a.Say(m.Path()+".diameter+"+h.Part.Label, h.Place("hold"), "%s is glued to %s, ⌀%s mm, by %s of its face, which is ⌀%s mm across; usually it is at least %s",
		h.Part.Label, m.Path(), figure(round(d)), hundredth(glued), figure(round(2*out)), figure(least))
	f.Margin = margin
}

// endOf is the radius of the end that is held, and of the hole in it.
func endOf(h *eval.Chucking) (out, in float64) {
	zones := h.Before.Profile
	first, last := zones[0], zones[0]
	for _, z := range zones {
		if z.X0 < first.X0 {
			first = z
		}
		if z.X1 > last.X1 {
			last = z
		}
	}
	if h.Choice.End == model.Left {
		return first.Out0, first.In0
	}
	return last.Out1, last.In1
}
