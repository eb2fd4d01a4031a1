package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "tolerance-too-fine",
	Title: "the limits are finer than what the process usually holds",
	Why: `Every process has a grade that it holds with care, and no finer. A drilled hole comes out large and
wandering; where the limits are finer, bore or ream after drilling, fit it to its mate, or ask for less.`,
	Rows: []string{"E1"},
	Source: []string{"grades by process: reaming 6 to 10, boring 8 to 13, milling and drilling 10 to 13: the table of a printed handbook, from memory; counts of grades seen",
		"milling 8: common practice on small manual mills with measuring between cuts, 9 to 11 by the dials alone; the printed table begins at 10",
		"grades of ISO 286"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting,
	Trips:     replaced(exampleHole(), "diameter = 6", `diameter = "6 H7"`),
	Sound:     replaced(exampleHole(), "diameter = 6", `diameter = "6 H11"`),
	OnCut:     toleranceTooFine,
	OnTurn:    asCut(toleranceTooFine),
})

// bestGrade is the finest IT grade that a process usually holds.
var bestGrade = map[string]int{
	"drilling": 10, "milling": 8, "reaming": 6, "boring": 8, "sawing": 10, "counterboring": 10, "plunging": 10,
	"turning": 7,
}

func toleranceTooFine(k *eval.Cut, a *Ask) {
	if k.Choice.Tool.Cutter == nil || k.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		by := k.Choice.By
		if w.By != "" {
			by = w.By
		}
		best, ok := bestGrade[by]
		if !ok || !w.Final {
			continue
		}
		size, of, attr := finalSize(k, &w)
		if of == nil || size.Nominal <= 0 {
			continue
		}
		lim, ok := eval.LimitsOf(size, k.Part.Build.Recipe.General, of, attr).Get()
		if !ok {
			continue // no limits are asked for
		}
		um, ok := handbook.ISO286().Grade(size.Nominal, best)
		if !ok {
			continue
		}
		least := um / 1000
		if lim.Width() >= least-0.0005 {
			a.Clear(Room(round(lim.Width()), least), "the limits of "+w.Target.Name()+" by "+by)
			continue
		}
		asked := "a width of " + mm(round(lim.Width()))
		if g, ok := fit.Grade(handbook.ISO286(), size.Nominal, lim.Width()); ok {
			asked += fmt.Sprintf(" (grade %d)", g)
		}
		f := a.Say(w.Target.Name()+"."+attr+"+"+by, k.Place("by", "tool", "makes"), "the limits of %s leave %s; %s usually holds %s at best on this size (grade %d)",
			w.Target.Name(), asked, by, mm(least), best)
		f.Margin = Room(round(lim.Width()), least)
	}
}

// finalSize is the dimension that a cut brings to its finished size.
func finalSize(k *eval.Cut, w *eval.Working) (drawing.Size, *model.Item, string) {
	f := w.Target.Form
	switch {
	case f == nil && w.Target.Outside:
		return k.Part.Diameter.V, k.Part.Item, "diameter"
	case f == nil && w.Target.Face != model.NoFace:
		other := w.Target.Face.Opposite()
		if b := k.Before.Faces[other]; !b.Done && abs(b.At-k.Part.FaceAt(other)) > 0.001 {
			return drawing.Size{}, nil, "" // the other face is still to come
		}
		size, attr := k.Part.FaceSize(w.Target.Face)
		return size, k.Part.Item, attr
	case f != nil && f.Feature.Kind == "outline" && f.Feature.EdgeLimits.Is():
		d := k.Part.Size // an edge goes round the part
		size, _ := eval.WithLimits(drawing.Size{Nominal: max(d[0], d[1], d[2]), Unit: k.Part.Build.Recipe.Unit}, f.Feature.EdgeLimits.V)
		return size, f.Feature.Item, "limits"
	case f == nil, w.Target.Sub != "":
		return drawing.Size{}, nil, ""
	case f.Lathe != nil && (f.Feature.Kind == "outside" || f.Feature.Kind == "bore"):
		return f.Feature.Diameter.V, f.Feature.Item, "diameter"
	case f.Lathe != nil:
		return drawing.Size{}, nil, ""
	case len(f.Mouths) > 0:
		if !f.Feature.Diameter.Is() || f.Feature.Thread.Said {
			return drawing.Size{}, nil, ""
		}
		return f.Feature.Diameter.V, f.Feature.Item, "diameter"
	case f.Feature.Width.Is():
		return f.Feature.Width.V, f.Feature.Item, "width"
	}
	return drawing.Size{}, nil, ""
}
