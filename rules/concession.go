package rules

import (
	"fmt"
	"strings"

	"fettle/schema/finding"
	"fettle/schema/model"
)

// excuses are the concessions of a build, and what became of each.
type excuses struct {
	all []*model.Concession
	on  string
	hit []int
	// took is what they took away, each with its reason.
	took []Accepted
}

// Accepted is one place of a finding that a concession takes away.
type Accepted struct {
	Rule    string
	Spot    finding.Spot
	Because string
	By      string // who accepts it; "" not written
	Until   string // last day; "" it does not lapse
}

func newExcuses(b *model.Build, on string) *excuses {
	return &excuses{all: b.Excused, on: on, hit: make([]int, len(b.Excused))}
}

// covers drops the spots of a finding that concessions accept; true where none is left. A
// concession that has lapsed accepts nothing. One whose day cannot be judged, since no day
// was said, still holds: the report says so.
func (e *excuses) covers(f *finding.Finding) bool {
	if len(f.Spots) == 0 {
		return false
	}
	var left []finding.Spot
	for _, s := range f.Spots {
		taken := false
		for i, c := range e.all {
			if c.Label == f.Rule && e.at(c, s, f.Cause) {
				e.hit[i]++
				if !taken && !e.lapsed(c) {
					taken = true
					e.took = append(e.took, acceptedBy(c, f.Rule, s))
				}
			}
		}
		if !taken {
			left = append(left, s)
		}
	}
	f.Spots = left
	return len(left) == 0
}

func acceptedBy(c *model.Concession, rule string, s finding.Spot) Accepted {
	a := Accepted{Rule: rule, Spot: s, Because: c.Because.V, Until: c.Until.V}
	if by := c.Item.Attr("by"); by != nil {
		a.By = by.Value.Text
	}
	return a
}

// Words says why it is accepted, by whom and how long: "light cut, tried on scrap (until 2027-01-31)".
func (a *Accepted) Words() string {
	var more []string
	if a.By != "" {
		more = append(more, "accepted by "+a.By)
	}
	if a.Until != "" {
		more = append(more, "until "+a.Until)
	}
	if len(more) == 0 {
		return a.Because
	}
	return a.Because + " (" + strings.Join(more, ", ") + ")"
}

func (e *excuses) lapsed(c *model.Concession) bool {
	until, ok := c.Until.Get()
	return ok && e.on != "" && e.on > until
}

// at says whether a spot lies where the concession holds: its part, its set-up, its step,
// or a finding whose cause is the thing of the shop that it names.
func (e *excuses) at(c *model.Concession, s finding.Spot, cause string) bool {
	r, ok := c.At.Get()
	if !ok || r.Item == nil {
		return false
	}
	i := r.Item
	part := i.Up("part", "assembly")
	if part == nil {
		for _, w := range strings.FieldsFunc(cause, func(r rune) bool { return r == '+' || r == ' ' }) {
			if w == i.Path() || strings.HasPrefix(w, i.Path()+".") || strings.HasPrefix(w, i.Path()+"[") {
				return true
			}
		}
		return false
	}
	if part.Label != s.Part {
		return false
	}
	if i == part {
		return true
	}
	setup := i.Up("setup", "square_up", "bench", "heat")
	if setup == nil {
		return strings.Contains(cause, i.Kind+"."+i.Label)
	}
	word := setup.Kind
	if setup.Label != "" {
		word += " " + setup.Label
	}
	if word != s.SetUp {
		return false
	}
	return i == setup || i.Name == s.Step
}

// Names of the findings about concessions themselves.
const (
	ConcessionLapsed  = "concession-lapsed"
	ConcessionUnused  = "concession-matches-nothing"
	ConcessionUndated = "concession-not-dated"
)

// leftOver reports concessions that lapsed, that match nothing, or that may have lapsed.
func (e *excuses) leftOver() []finding.Finding {
	var out []finding.Finding
	say := func(c *model.Concession, rule, format string, args ...any) {
		out = append(out, finding.Finding{Rule: rule, Level: finding.Advice, Judgement: finding.Fact,
			Cause: "concession." + c.Label + "@" + c.At.V.Path(), Place: c.Item.At, Says: fmt.Sprintf(format, args...)})
	}
	for i, c := range e.all {
		until, dated := c.Until.Get()
		switch {
		case e.lapsed(c) && e.hit[i] > 0:
			say(c, ConcessionLapsed, "this concession ended on %s; what it accepted is reported again", until)
		case e.hit[i] == 0:
			say(c, ConcessionUnused, "nothing is found here that this concession accepts: is it still wanted?")
		case dated && e.on == "":
			say(c, ConcessionUndated, "whether this concession has ended is not known: it holds until %s, and no day was given to the check", until)
		}
	}
	return out
}
