package reckon

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"fettle/eval/reckon/chain"
)

// A chart of cuts as it is written: "NAME: FROM to MAKES SIZE, metal right, least 0.05", items
// parted by semicolons. A minus before the size says that MAKES lies to the left of FROM; limits
// are then those of the distance, as a rule shows it.

// charted is a chart as it was asked for.
type charted struct {
	linked
	chart  chain.Chart
	finest float64 // half tolerance, mm; 0 none
}

// answerChart answers of cuts, or of a drawing alone.
func (q linked) answerChart() (Answer, error) {
	c := charted{linked: q}
	if c.Text("LINKS") != "" || c.Text("wants") != "" {
		return Answer{}, fmt.Errorf("LINKS and --wants are of one chain written out; with --cuts, --drawing and --blank the chains are found")
	}
	if c.Text("drawing") == "" {
		return Answer{}, fmt.Errorf("say with --drawing what must come out of the cuts")
	}
	var err error
	if c.chart.Raw, err = c.dims("blank"); err != nil {
		return Answer{}, err
	}
	if c.chart.Drawing, err = c.dims("drawing"); err != nil {
		return Answer{}, err
	}
	if err := c.cuts(); err != nil {
		return Answer{}, err
	}
	c.finest, _ = c.Length("finest")
	c.out.Sources = []string{"operation chains: the tolerance of a dimension that no cut makes directly is the sum of the tolerances of all cuts in its chain; the published charts are in the tests of the arithmetic"}
	return c.answer()
}

// tied is one item taken apart.
type tied struct {
	name, from, to string
	link           chain.Link
	more           []string // what stands behind commas
}

// items of a flag, taken apart; names that are not written are numbers.
func (q *charted) ties(flag string) (out []tied, err error) {
	if q.Text(flag) == "" {
		return nil, nil
	}
	list, err := items(q.Text(flag), ";", "dimension")
	if err != nil {
		return nil, err
	}
	for _, it := range list {
		t, err := q.tie(it)
		if err != nil {
			return nil, fmt.Errorf("--%s: %w", flag, err)
		}
		if slices.ContainsFunc(out, func(o tied) bool { return o.name == t.name && t.name != "" }) {
			return nil, fmt.Errorf("--%s: there are two called %s", flag, quoted(t.name))
		}
		out = append(out, t)
	}
	return out, nil
}

func (q *charted) tie(item string) (t tied, err error) {
	parts := strings.Split(item, ",")
	for _, m := range parts[1:] {
		t.more = append(t.more, strings.TrimSpace(m))
	}
	rest := parts[0]
	if name, after, ok := strings.Cut(rest, ":"); ok {
		t.name, rest = strings.TrimSpace(name), after
	}
	words := strings.Fields(rest)
	if len(words) < 4 || words[1] != "to" {
		return t, fmt.Errorf("%s does not say from which face to which, and how far: write BC: B to C 25 ±0.1", quoted(item))
	}
	t.from, t.to = words[0], words[2]
	size, left := strings.CutPrefix(strings.Join(words[3:], " "), "-")
	if t.link, err = q.link(size, 1); err != nil {
		return t, err
	}
	if left {
		l := &t.link
		l.Size, l.Lower, l.Upper = -l.Size, -l.Upper, -l.Lower
	}
	return t, nil
}

func (q *charted) dims(flag string) (out []chain.Dim, err error) {
	list, err := q.ties(flag)
	if err != nil {
		return nil, err
	}
	for _, t := range list {
		if len(t.more) > 0 {
			return nil, fmt.Errorf("--%s: %s is said of cuts only", flag, quoted(t.more[0]))
		}
		if t.name == "" {
			t.name = t.from + " to " + t.to
		}
		out = append(out, chain.Dim{Name: t.name, From: t.from, To: t.to, Size: t.link.Size, Lower: t.link.Lower, Upper: t.link.Upper})
	}
	return out, nil
}

func (q *charted) cuts() error {
	list, err := q.ties("cuts")
	if err != nil {
		return err
	}
	for i, t := range list {
		if t.name == "" {
			t.name = strconv.Itoa(i + 1)
		}
		k := chain.Cut{Name: t.name, From: t.from, Makes: t.to, Size: t.link.Size, Lower: t.link.Lower, Upper: t.link.Upper}
		for _, m := range t.more {
			switch rest, least := strings.CutPrefix(m, "least "); {
			case m == "metal right":
				k.Metal = chain.Right
			case m == "metal left":
				k.Metal = chain.Left
			case least:
				if k.Stock, err = length(rest, "least stock", q.Units); err != nil {
					return err
				}
			default:
				return fmt.Errorf("--cuts: %s is not understood behind a cut: metal right, metal left or least 0.05", quoted(m))
			}
		}
		q.chart.Cuts = append(q.chart.Cuts, k)
	}
	return nil
}

func (q *charted) answer() (Answer, error) {
	loops, err := chain.Loops(q.chart.Drawing)
	if err != nil {
		return Answer{}, err
	}
	if len(q.chart.Cuts) > 0 {
		r, err := chain.Read(q.chart)
		if err != nil {
			return Answer{}, err
		}
		q.verdict(r)
		q.faults(r.Faults)
		q.results(r)
		if err := q.rooms(); err != nil {
			return Answer{}, err
		}
		if err := q.cures(r); err != nil {
			return Answer{}, err
		}
	}
	q.loops(loops)
	return q.out, nil
}

func (q *charted) verdict(r chain.Reading) {
	if r.Holds() {
		q.say("Cut so, every dimension of the drawing holds and every cut finds metal, in the worst case.")
		return
	}
	q.out.No = true
	for _, x := range r.Results {
		if x.Holds {
			continue
		}
		if x.Stock {
			q.say("Cut %s may find no metal: what it takes off runs from %s, and %s is the least wanted.", x.Name, q.Span(x.Sum.Least, x.Sum.Most), q.Says(x.Least))
		} else {
			q.say("%s comes to %s, and %s is wanted.", x.Name, q.Span(x.Sum.Least, x.Sum.Most), q.Span(x.Least, x.Most))
		}
		q.say("Its tolerance is made by %s.", shares(x))
	}
}

// shares says which cuts make a tolerance, the largest first.
func shares(x chain.Result) string {
	type part struct {
		name  string
		share float64
	}
	var parts []part
	for i, t := range x.Terms {
		name := "cut " + t.Name
		if t.Raw {
			name = "the blank's " + t.Name
		}
		parts = append(parts, part{name, x.Sum.Shares[i]})
	}
	slices.SortStableFunc(parts, func(a, b part) int {
		switch {
		case a.share > b.share:
			return -1
		case a.share < b.share:
			return 1
		}
		return 0
	})
	var out []string
	for _, p := range parts {
		out = append(out, fmt.Sprintf("%s with %s %%", p.name, round(100*p.share, 1)))
	}
	return strings.Join(out, ", ")
}

func (q *charted) faults(list []chain.Fault) {
	for _, f := range list {
		switch f.Kind {
		case chain.NotMade:
			q.say("%s is never produced: no cut makes %s, and it is no face of the blank.", f.Name, f.Surface)
		case chain.NoChain:
			q.say("%s is never produced: no chain of cuts ties its two faces together.", f.Name)
		case chain.NotYet:
			q.say("Cut %s is measured from %s, which is not there yet at that time.", f.Name, f.Surface)
		case chain.Itself:
			q.say("Cut %s is measured from %s, the face that it cuts.", f.Name, f.Surface)
		case chain.NoSide:
			q.say("Cut %s goes over %s again and does not say on which side the metal is: add metal right or metal left.", f.Name, f.Surface)
		}
	}
}

func (q *charted) results(r chain.Reading) {
	t := Table{Title: "What comes out", Head: []Column{left("dimension"), left("chain"), right("from mm"), right("to mm"), right("likely ±"), right("wanted mm"), left("")}, Most: 40}
	for _, x := range r.Results {
		name, want, holds := x.Name, millimetres(x.Least)+" to "+millimetres(x.Most), "holds"
		if x.Stock {
			name, want = "stock of cut "+x.Name, millimetres(x.Least)+" and up"
		}
		if !x.Holds {
			holds = "FAILS"
		}
		t.Rows = append(t.Rows, []string{name, signs(x.Terms), millimetres(x.Sum.Least), millimetres(x.Sum.Most), millimetres(x.Sum.Statistical), want, holds})
		q.step("%s: %s = %s mm, give or take %s mm.", name, summed(x.Terms), millimetres(x.Sum.Mean), millimetres(x.Sum.Worst))
		q.value(name+", least", x.Sum.Least, "mm", "worked out")
		q.value(name+", most", x.Sum.Most, "mm", "worked out")
	}
	if len(t.Rows) > 0 {
		q.out.Tables = append(q.out.Tables, t)
	}
}

// signs writes a chain by the names in it, what adds first: "5 - 6 - 4". A name stands for a
// length, which has no sign.
func signs(terms []chain.Term) string {
	return chained(terms, func(t chain.Term) string { return t.Name })
}

// summed writes a chain with the middle of each.
func summed(terms []chain.Term) string {
	return chained(terms, func(t chain.Term) string { return millimetres(math.Abs(t.Size + (t.Lower+t.Upper)/2)) })
}

func chained(terms []chain.Term, says func(chain.Term) string) string {
	var add, take string
	for _, t := range terms {
		if (t.Sign < 0) != (t.Size < 0) {
			take += " - " + says(t)
		} else {
			add += " + " + says(t)
		}
	}
	return strings.TrimSpace(strings.TrimPrefix(add+take, " +"))
}

func (q *charted) rooms() error {
	rooms, err := chain.Rooms(q.chart)
	if err != nil || len(rooms) == 0 {
		return err
	}
	q.step("The tolerances of all cuts, times one factor, could grow to %s of what they are; %s is the first to stop them.", round(rooms[0].Factor, 4), roomOf(rooms[0]))
	q.value("common factor", rooms[0].Factor, "", "worked out")
	return nil
}

func roomOf(r chain.Room) string {
	if r.Stock {
		return "the stock of cut " + r.Name
	}
	return r.Name
}

// cures says what would put it right: one size moved, or the smallest tightening.
func (q *charted) cures(r chain.Reading) error {
	if r.Holds() || len(r.Faults) > 0 {
		return nil
	}
	shifts, err := chain.Shifts(q.chart)
	if err != nil {
		return err
	}
	if len(shifts) > 0 {
		s := shifts[0]
		to := q.size(s.Cut) + s.By
		q.say("One size alone would cure it: cut %s at %s%s, in place of %s mm.", s.Cut, q.Says(math.Abs(to)), bound(s), millimetres(math.Abs(q.size(s.Cut))))
	}
	finest := map[string]float64{}
	for _, k := range q.chart.Cuts {
		finest[k.Name] = q.finest
	}
	tight, err := chain.Tighten(q.chart, finest)
	if err != nil {
		q.say("No tightening of the cuts does it: %s.", err)
		return nil
	}
	var parts []string
	for _, t := range tight {
		parts = append(parts, fmt.Sprintf("cut %s from ±%s to ±%s mm", t.Cut, millimetres(t.From), millimetres(t.To)))
		q.value("half tolerance of cut "+t.Cut, t.To, "mm", "worked out")
	}
	q.say("The smallest tightening that holds: %s.", strings.Join(parts, ", "))
	q.say("To measure a cut from another face, or to cut in another order, may be the better cure.")
	return nil
}

func bound(s chain.Shift) string {
	lo, hi := s.Least, s.Most
	switch {
	case s.BoundBelow && s.BoundAbove:
		if lo < 0 {
			lo, hi = -hi, -lo
		}
		return " (from " + millimetres(lo) + " to " + millimetres(hi) + " does)"
	case s.BoundBelow && lo < 0, s.BoundAbove && hi >= 0:
		return " or less"
	}
	return " or more"
}

func (q *charted) size(cut string) float64 {
	i := slices.IndexFunc(q.chart.Cuts, func(k chain.Cut) bool { return k.Name == cut })
	return q.chart.Cuts[i].Size
}

func (q *charted) loops(list []chain.Loop) {
	for _, l := range list {
		last := len(l.Dims) - 1
		how := "their sizes add up"
		if math.Abs(l.Off) > 1e-9 {
			how = "their sizes miss each other by " + q.Says(math.Abs(l.Off))
		}
		q.say("The drawing says something twice: %s follows from %s (%s). Leave one without limits, or it must be judged by all.", l.Dims[last], strings.Join(l.Dims[:last], ", "), how)
	}
	switch {
	case len(list) > 0 && len(q.chart.Cuts) == 0:
		q.out.No = true
	case len(q.chart.Cuts) == 0:
		q.say("No dimension of the drawing follows from others: there is no loop.")
	}
	q.value("loops", float64(len(list)), "", "worked out")
}
