package rules

import (
	"fmt"
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "leg-meets-jaw",
	Title: "sheet that is folded already does not go round the jaws at the next bend",
	Why: `A bend is folded over the edge of a jaw or of a bar. A channel's first leg comes to stand behind it at the second bend,
and the walls of a tray stand beside it at the last ones: what they go round must be no thicker, and no wider, than the room
between them. A bar of that size, named as the tool of the bench, is the cure; a bend folded earlier, while the sheet is still flat
there, may be another.`,
	Rows:      []string{"A14"},
	Source:    []string{"room between two legs, over their outsides less two thicknesses, against the jaw: geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleChannel(12),
	Sound:     exampleChannel(16),
	OnPart:    legMeetsJaw,
})

// exampleChannel folds a channel of so many millimetres over its outsides in the vise of the examples.
func exampleChannel(wide float64) string {
	s := exampleBend("annealed", "    inside_radius = 1\n")
	s = replaced(s, "length    = 40", "length    = "+figure(40+wide))
	s = replaced(s, "  bend \"leg\" {\n", "  bend \"other\" {\n    at      = { left = 20 }\n    towards = \"top\"\n    inside_radius = 1\n  }\n\n  bend \"leg\" {\n")
	return replaced(s, "makes = [bend.leg]\n", "makes = [bend.other, bend.leg]\n    hold  = vise.small\n")
}

func legMeetsJaw(p *eval.PartTrace, a *Ask) {
	for _, o := range p.Part.FoldsOver() {
		if !o.Constrains {
			continue
		}
		var why []string
		var lacks []model.Lack
		clear, open := false, false
		margin := finding.Margin{}
		for _, r := range o.Rooms {
			says, m, lack, fits := foldsIn(&o, &r)
			switch {
			case fits && len(lack) == 0:
				clear, margin = true, m
			case fits:
				open = true
				lacks = append(lacks, lack...)
			case !slices.Contains(why, says):
				why = append(why, says)
			}
		}
		switch {
		case clear:
			a.Clear(margin, o.Form.Name()+" round what it is folded over")
		case open:
			a.Lack(lacks...)
		default:
			on := "what holds it"
			if o.Over != nil {
				on = o.Over.Path()
			}
			f := a.Say(p.Part.Label+"."+o.Form.Name()+"+"+on, o.Bench.Item.At, "%s cannot be folded over %s any more: %s",
				o.Form.Name(), on, strings.Join(why, "; "))
			f.Spots[0].SetUp = o.Bench.Kind + " " + o.Bench.Label
		}
	}
}

// foldsIn says whether a bend is folded with one of its legs held; says why it is not.
func foldsIn(o *eval.FoldOver, r *eval.FoldRoom) (says string, m finding.Margin, lacks []model.Lack, fits bool) {
	if r.Flat != nil {
		return fmt.Sprintf("with one leg held, %s is folded at its other end and does not lie between the jaws", r.Flat.Name()), m, nil, false
	}
	fits = true
	ask := func(room float64, has model.Known[float64], between, is string) {
		x, known := has.Get()
		switch {
		case !known:
			lacks = append(lacks, has.Missing()...)
		case x > room+1e-6 && fits:
			fits = false
			says = fmt.Sprintf("%s there are %s, and it is %s %s", between, mm(round(room)), mm(x), is)
		default:
			m = Bound(x, round(room), "mm")
		}
	}
	if r.Behind != nil {
		ask(r.Thick, o.Thick, "between it and "+r.Behind.Name(), "thick")
	}
	if r.Walls[0] != nil {
		ask(r.Wide, o.Wide, "between "+r.Walls[0].Name()+" and "+r.Walls[1].Name(), "wide")
	}
	return says, m, lacks, fits
}
