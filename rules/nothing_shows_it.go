package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "nothing-shows-it",
	Title: "no instrument here shows whether a surface is as true as it is to be",
	Why: `Flat, square and true are only as good as what they are held against. Where nothing here shows so little, the part is made
on trust; borrow an indicator, try it on its mate, or ask for less.`,
	Rows: []string{"E10", "E3"},
	Source: []string{"what shows a form or a relation: common practice",
		"four times what the instrument reads to: a habit of the trade, see instrument-too-coarse"},
	Limits:    []string{"reading_share"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     replaced(exampleFlat("0.02"), "face \"top\" {\n    flat = 0.02", "face \"top\" {\n    parallel = { to = face.bottom, within = 0.02 }"),
	Sound:     replaced(exampleFlat("0.05"), "face \"top\" {\n    flat = 0.05", "face \"top\" {\n    parallel = { to = face.bottom, within = 0.05 }"),
	OnPart:    nothingShowsIt,
})

// A flatness that a straight edge or a blued plate shows; it has no figure that it reads to.
var byBlue = map[string][]string{"flat": {"surface_plate", "square"}, "straight": {"surface_plate", "square"}, "square": {"square"}}

// shows are the instruments that show a condition with a figure. A size over two faces shows whether
// they are parallel; the middle of a bore or a slot is found from sizes.
var shows = map[string][]string{
	"flat":  {"dial_indicator", "dial_test_indicator", "height_gauge", "depth_gauge"},
	"round": {"dial_indicator", "dial_test_indicator", "micrometer", "bore_gauge"}, "straight": {"dial_indicator", "dial_test_indicator", "micrometer"},
	"square":     {"dial_indicator", "dial_test_indicator", "protractor"},
	"parallel":   {"dial_indicator", "dial_test_indicator", "micrometer", "height_gauge", "depth_gauge"},
	"concentric": {"dial_indicator", "dial_test_indicator"}, "runout": {"dial_indicator", "dial_test_indicator"},
	"symmetric": {"dial_indicator", "dial_test_indicator", "micrometer", "depth_gauge", "height_gauge", "caliper"},
	"position":  {"dial_indicator", "dial_test_indicator", "micrometer", "height_gauge", "caliper", "depth_gauge", "edge_finder"},
}

func nothingShowsIt(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	for _, c := range p.Part.Conditions() {
		kinds := shows[c.Word]
		best, finest, blued := shownBy(p.Part.Build, kinds, byBlue[c.Word], a)
		share := a.Limit("reading_share")
		switch {
		case blued:
			a.Clear(finding.Margin{}, "")
		case best == nil && !a.lacking():
			a.Say(p.Part.Label+"."+c.Target.Name()+"."+c.Word, c.Within.At, "%s is to be %s within %s, and nothing here shows it; %s would",
				c.Target.Name(), conditionWords(&c, p.Part.Label), mm(c.Within.V), wouldShow(c.Word))
		case best == nil:
		case c.Within.V >= share*finest-0.0005:
			a.Clear(Room(c.Within.V, share*finest), "what shows "+c.Target.Name()+" "+c.Word)
		case !a.lacking():
			f := a.Say(p.Part.Label+"."+c.Target.Name()+"."+c.Word, c.Within.At, "%s is to be %s within %s; the finest here that shows it, %s, reads to %s, and a zone of %s times that is usual",
				c.Target.Name(), conditionWords(&c, p.Part.Label), mm(c.Within.V), best.Path(), mm(finest), figure(share))
			f.Margin = Room(c.Within.V, share*finest)
		}
	}
}

// shownBy is the finest instrument here of some kinds; blued where one of the others is here, which
// shows it without a figure.
func shownBy(b *model.Build, kinds, others []string, a *Ask) (best *model.Instrument, finest float64, blued bool) {
	for _, i := range b.Shop.Instruments {
		switch {
		case !i.Here():
		case oneOf(i.Kind, kinds...):
			step, ok := Need(a, i.ReadsTo)
			if ok && (best == nil || step < finest) {
				best, finest = i, step
			}
		}
	}
	for _, i := range b.Shop.All {
		if oneOf(i.Kind, others...) && isHere(i) {
			return nil, 0, true
		}
	}
	return best, finest, false
}

func conditionWords(c *eval.Condition, own string) string {
	switch c.Word {
	case "flat", "round", "straight":
		return c.Word
	case "runout":
		if c.Whole {
			return "running true to " + c.Datum(own) + " over its whole length"
		}
		return "running true to " + c.Datum(own)
	case "position":
		return "in its place"
	}
	return c.Word + " to " + c.Datum(own)
}

func wouldShow(word string) string {
	switch word {
	case "flat", "straight":
		return "a surface plate or an indicator"
	case "square":
		return "a square"
	}
	return "an indicator"
}

// isHere says whether a thing of a kind that has no struct is here.
func isHere(i *model.Item) bool {
	s := i.Attr("state")
	return s == nil || oneOf(s.Value.Text, "here", "borrowed", "worn")
}
