package reckon

import (
	"fmt"
	"strings"

	"fettle/eval/reckon/chain"
	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
)

var _ = enter(Subject{
	Name:  "chain",
	Title: "dimensions in a row, or found from cuts: sums, shares, loops, cures",
	Words: []Want{{Name: "LINKS", Kind: Text, Rest: true,
		Says: `dimensions with their limits, parted by commas, with a minus where one takes away: "40 ±0.1, -12 -0.05/0, -?"; the ? is to be found`}},
	Flags: []Want{
		{Name: "wants", Kind: Text, Says: `what they must close to: "0.1..0.3"`},
		{Name: "general", Kind: Length, Least: 0, Most: 10, Says: "half tolerance of dimensions that say none (left out: they must say it)"},
		{Name: "cuts", Kind: Text, Says: `cuts in order, parted by semicolons, each from the face it is measured from to the face it makes, a minus to the left: "1: D to A -60.8 ±0.1, metal right; 2: A to B 20.3 ±0.05"; metal right or left of the face where it is cut again, "least 0.05" the least to come off`},
		{Name: "drawing", Kind: Text, Says: `what must come out: "BC: B to C 25 ±0.12; A to D 60 ±0.05"; alone: is anything said twice`},
		{Name: "blank", Kind: Text, Says: `faces of the blank: "A to D 62 ±0.5"`},
		{Name: "finest", Kind: Length, Least: 0, Most: 10, Says: "half tolerance that no cut can be held finer than, for the tightening (left out: any)"},
	},
	Examples: [][]string{{"40 ±0.1, -12 ±0.05, -27.8 ±0.05", "--wants", "0..0.4"}, {"40 ±0.1, -12 ±0.05, -?", "--wants", "0.1..0.5"},
		{"--blank", "A to D 62 ±0.5", "--cuts", "1: D to A -60.5 ±0.1, metal right; 2: A to D 60 ±0.05, metal left", "--drawing", "AD: A to D 60 ±0.1"}},
	No:     "the chain does not hold what is wanted, a cut may find no metal, or a drawing asked for alone says something twice",
	Answer: answerChain,
})

// linked is a chain as it was asked for.
type linked struct {
	reply
	links   []chain.Link
	named   []string
	unknown float64 // ratio of the link to be found; 0 none
	wants   bool
	lo, hi  float64
}

func answerChain(a Ask) (Answer, error) {
	q := linked{reply: reply{Ask: a}}
	if a.Text("cuts") != "" || a.Text("drawing") != "" || a.Text("blank") != "" {
		return q.answerChart()
	}
	if a.Text("LINKS") == "" {
		return Answer{}, fmt.Errorf("LINKS are wanted, such as \"40 ±0.1, -12 ±0.05\", or --cuts and --drawing")
	}
	if err := cmpErr(q.read(), q.wanted()); err != nil {
		return Answer{}, err
	}
	q.out.Sources = []string{"worst case: sum of all tolerances; likely: root of the sum of their squares, for many pieces with independent dimensions; the published examples are in the tests of the arithmetic"}
	if q.unknown != 0 {
		return q.solve()
	}
	return q.close()
}

func (q *linked) read() error {
	list, err := items(q.Text("LINKS"), ",", "dimension")
	if err != nil {
		return err
	}
	for _, it := range list {
		ratio, rest := 1.0, it
		if r, ok := strings.CutPrefix(it, "-"); ok {
			ratio, rest = -1, strings.TrimSpace(r)
		} else if r, ok := strings.CutPrefix(it, "+"); ok {
			rest = strings.TrimSpace(r)
		}
		if rest == "?" {
			if q.unknown != 0 {
				return fmt.Errorf("two dimensions are to be found, and one chain gives one")
			}
			q.unknown = ratio
			continue
		}
		l, err := q.link(rest, ratio)
		if err != nil {
			return err
		}
		q.links, q.named = append(q.links, l), append(q.named, it)
	}
	return nil
}

// link reads one dimension with its limits.
func (q *linked) link(words string, ratio float64) (chain.Link, error) {
	s, err := drawing.ParseSize(words, q.Units)
	if err != nil {
		return chain.Link{}, fmt.Errorf("%s is no dimension: %w", quoted(words), err)
	}
	l := chain.Link{Name: words, Ratio: ratio, Size: s.Nominal}
	switch s.Tol.Kind {
	case drawing.Deviations:
		l.Lower, l.Upper = s.Tol.Lo, s.Tol.Hi
	case drawing.Class:
		lo, hi, err := fit.Limits(handbook.ISO286(), s.Nominal, s.Tol.Letters)
		if err != nil {
			return l, fmt.Errorf("%s: %w", quoted(words), err)
		}
		l.Lower, l.Upper = lo, hi
	default:
		half, ok := q.Length("general")
		if !ok {
			return l, fmt.Errorf("%s has no limits: write them, such as %s ±0.1, or say --general", quoted(words), words)
		}
		l.Lower, l.Upper = -half, half
	}
	return l, nil
}

func (q *linked) wanted() error {
	words := q.Text("wants")
	if words == "" {
		if q.unknown != 0 {
			return fmt.Errorf("to find a dimension, say with --wants what the chain must close to")
		}
		return nil
	}
	s, err := drawing.ParseSize(words, q.Units)
	if err != nil || s.Tol.Kind != drawing.Deviations {
		return fmt.Errorf("%s is nothing to close to: write two limits, such as 0.1..0.3", quoted(words))
	}
	q.wants, q.lo, q.hi = true, s.Nominal+s.Tol.Lo, s.Nominal+s.Tol.Hi
	return nil
}

func (q *linked) close() (Answer, error) {
	sum, err := chain.Close(q.links)
	if err != nil {
		return Answer{}, err
	}
	q.say("The chain closes to %s.", q.Span(sum.Least, sum.Most))
	q.say("Of many pieces nearly all lie within %s, if the dimensions lie about their middles and do not hang together.", q.Span(sum.Mean-sum.Statistical, sum.Mean+sum.Statistical))
	if q.wants {
		q.judge(sum)
	}
	t := Table{Title: "Dimensions", Head: []Column{left("dimension"), right("from mm"), right("to mm"), right("share %")}, Most: 30}
	for i, l := range q.links {
		t.Rows = append(t.Rows, []string{q.named[i], millimetres(l.Size + l.Lower), millimetres(l.Size + l.Upper), round(100*sum.Shares[i], 1)})
	}
	q.out.Tables = append(q.out.Tables, t)
	q.step("Sizes as written: %s mm; middle of the limits: %s mm.", millimetres(sum.Nominal), millimetres(sum.Mean))
	q.step("Worst case: half of all tolerances together, %s mm either way.", millimetres(sum.Worst))
	q.step("Likely: root of the sum of the squares of the halves, %s mm either way.", millimetres(sum.Statistical))
	q.value("least", sum.Least, "mm", "worked out")
	q.value("most", sum.Most, "mm", "worked out")
	q.value("likely either way", sum.Statistical, "mm", "worked out")
	return q.out, nil
}

func (q *linked) judge(sum chain.Sum) {
	within := sum.Least >= q.lo-1e-9 && sum.Most <= q.hi+1e-9
	if within {
		q.say("That is within the %s wanted.", q.Span(q.lo, q.hi))
		return
	}
	q.out.No = true
	q.say("That is not within the %s wanted: it can be %s.", q.Span(q.lo, q.hi), q.misses(sum))
	if room := (q.hi - q.lo) / 2; room < sum.Worst-1e-9 {
		q.say("Whatever the sizes, the tolerances together take %s and %s are allowed: they must shrink to %s %% of what they are.",
			q.Says(2*sum.Worst), q.Says(2*room), round(100*room/sum.Worst, 1))
	} else {
		q.say("The tolerances would do: the middle must move by %s mm.", signed((q.lo+q.hi)/2-sum.Mean))
	}
}

// misses says by how much the chain can miss.
func (q *linked) misses(sum chain.Sum) string {
	var parts []string
	if sum.Least < q.lo {
		parts = append(parts, q.Says(q.lo-sum.Least)+" too small")
	}
	if sum.Most > q.hi {
		parts = append(parts, q.Says(sum.Most-q.hi)+" too large")
	}
	return strings.Join(parts, " or ")
}

func (q *linked) solve() (Answer, error) {
	lo, hi, err := chain.Solve(q.lo, q.hi, q.links, q.unknown)
	if err != nil {
		q.out.No = true
		q.say("No limits of the dimension to be found do it: %s.", err)
		return q.out, nil
	}
	q.say("The dimension to be found must lie from %s.", q.Span(lo, hi))
	sum, err := chain.Close(q.links)
	if err != nil {
		return Answer{}, err
	}
	q.step("The others together close to %s to %s mm.", millimetres(sum.Least), millimetres(sum.Most))
	q.step("Wanted are %s to %s mm; what is left of that tolerance is %s mm.", millimetres(q.lo), millimetres(q.hi), millimetres(hi-lo))
	q.value("least", lo, "mm", "worked out")
	q.value("most", hi, "mm", "worked out")
	return q.out, nil
}
