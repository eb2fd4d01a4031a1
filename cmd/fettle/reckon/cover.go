package reckon

import (
	"fmt"
	"strconv"
	"strings"

	"fettle/eval/reckon/cover"
)

var _ = enter(Subject{
	Name:  "cover",
	Title: "what to get so that everything can be done; what one thing opens",
	Words: []Want{{Name: "NEEDS", Kind: Text, Needed: true, Rest: true,
		Says: `what is to become possible, parted by semicolons, each with the ways to do it: "bore 20: reamer 20 or boring head + bar; cross hole: drill 5"`}},
	Flags: []Want{
		{Name: "have", Kind: Texts, Says: "things that are there"},
		{Name: "price", Kind: Texts, Says: "what a thing costs, in any one unit: reamer 20=3 (left out: 1)"},
	},
	Examples: [][]string{{"bore: reamer or head + bar; ring: head + hook", "--have", "bar"}, {"hole: drill; thread: tap or die", "--price", "tap=2"}},
	No:       "something has no way at all",
	Answer:   answerCover,
})

func answerCover(a Ask) (Answer, error) {
	q := reply{Ask: a}
	needs, err := readNeeds(a.Text("NEEDS"))
	if err != nil {
		return Answer{}, err
	}
	price, err := readPrices(a.Texts("price"))
	if err != nil {
		return Answer{}, err
	}
	least, err := cover.Least(needs, a.Texts("have"), price)
	if err != nil {
		return Answer{}, err
	}
	switch {
	case len(least.Get) == 0:
		q.say("Nothing is to be got: everything that has a way can be done with what is there.")
	default:
		q.say("Get %s: that makes everything possible that has a way, at a cost of %d.", strings.Join(least.Get, ", "), least.Cost)
	}
	if len(least.Get) > 0 && least.Proved {
		q.say("Nothing cheaper does it.")
	} else if len(least.Get) > 0 {
		q.say("Nothing below %d does it; whether something between does was not settled.", least.Bound)
	}
	if len(least.Never) > 0 {
		q.out.No = true
		q.say("There is no way at all for %s.", strings.Join(least.Never, ", "))
	}
	t := Table{Title: "What one thing opens on its own", Head: []Column{left("thing"), right("opens"), left("")}, Most: 20}
	for _, u := range cover.Unlocks(needs, a.Texts("have")) {
		t.Rows = append(t.Rows, []string{u.Thing, strconv.Itoa(len(u.Needs)), strings.Join(u.Needs, ", ")})
	}
	if len(t.Rows) > 0 {
		q.out.Tables = append(q.out.Tables, t)
	}
	q.step("%s with %s, of which each may take several things together.", counted(len(needs), "need"), counted(ways(needs), "way"))
	q.out.Sources = []string{"least set by exact search with a bound; checked against the published example of the tests and a general solver"}
	q.value("cost", float64(least.Cost), "", "worked out")
	q.out.Values = append(q.out.Values, word("get", strings.Join(least.Get, ", "), "worked out"))
	return q.out, nil
}

func ways(needs []cover.Need) int {
	n := 0
	for _, d := range needs {
		n += len(d.Ways)
	}
	return n
}

// readNeeds reads "NAME: thing + thing or thing; NAME: …". A need of one thing that bears its
// own name may be written alone.
func readNeeds(words string) ([]cover.Need, error) {
	list, err := items(words, ";", "need")
	if err != nil {
		return nil, err
	}
	var out []cover.Need
	for _, it := range list {
		name, rest, ok := strings.Cut(it, ":")
		if !ok {
			rest = name
		}
		n := cover.Need{Name: strings.TrimSpace(name)}
		if n.Name == "" {
			return nil, fmt.Errorf("a need without a name stands in %s", quoted(it))
		}
		for _, way := range strings.Split(rest, " or ") {
			if strings.TrimSpace(way) == "" {
				continue
			}
			things, err := items(way, "+", "thing")
			if err != nil {
				return nil, err
			}
			n.Ways = append(n.Ways, things)
		}
		out = append(out, n)
	}
	return out, nil
}

func readPrices(list []string) (map[string]int64, error) {
	out := map[string]int64{}
	for _, it := range list {
		name, figure, ok := strings.Cut(it, "=")
		n, err := strconv.ParseInt(strings.TrimSpace(figure), 10, 64)
		if !ok || err != nil || n < 0 || n > cover.MostPrice {
			return nil, fmt.Errorf("%s is no price: write a thing, =, and a whole number from 0 to %d", quoted(it), cover.MostPrice)
		}
		out[strings.TrimSpace(name)] = n
	}
	return out, nil
}
