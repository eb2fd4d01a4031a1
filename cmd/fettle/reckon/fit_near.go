package reckon

import (
	"errors"
	"fmt"

	"fettle/eval/reckon/fit"
	"fettle/schema/handbook"
)

// near lists the classes of the other part that come nearest to a wanted play.
func (f *fitted) near() error {
	least, okLeast := f.Number("least-play")
	most, okMost := f.Number("most-play")
	switch {
	case !okLeast && !okMost:
		return nil
	case !okLeast || !okMost:
		return errors.New("--least-play and --most-play go together")
	case f.hole.class != "" && f.shaft.class != "":
		return errors.New("--least-play asks for the mate of one class, as in 12 H7; two are given")
	}
	given, other := f.hole, "shaft"
	if given.class == "" {
		given, other = f.shaft, "hole"
	}
	near, err := fit.Nearest(handbook.ISO286(), f.nominal, given.class, least, most)
	if err != nil {
		return err
	}
	best := near[0]
	words := "some of its parts fall outside of what is wanted"
	if best.Within {
		words = "every one of its parts is within what is wanted"
	}
	say := fmt.Sprintf("For a play of %s the nearest is %s: %s; %s.", f.Span(least, most), best.Pair, f.plays(best.Least, best.Most), words)
	f.out.Says = append([]string{say}, f.out.Says...)
	t := Table{Title: "Classes of the " + other + " by how near they come", Head: []Column{left("pair"), right("least play mm"), right("most play mm"), right("off mm"), left("within")}, Most: 8}
	for _, n := range near {
		yes := ""
		if n.Within {
			yes = "yes"
		}
		t.Rows = append(t.Rows, []string{n.Pair, signed(n.Least), signed(n.Most), millimetres(n.Off), yes})
	}
	f.out.Tables = append(f.out.Tables, t)
	f.step("Grades 5 to 11 of the usual letters were tried with %s; off is how far both ends lie from those wanted, added up.", given.class)
	f.value("nearest, play least", best.Least, "ISO 286-1, "+best.Pair)
	f.value("nearest, play most", best.Most, "ISO 286-1, "+best.Pair)
	f.out.Values = append(f.out.Values, word("nearest", best.Pair, "worked out"))
	return nil
}
