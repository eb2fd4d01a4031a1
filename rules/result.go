package rules

import (
	"sort"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

// Result is what a check has to say about one build.
type Result struct {
	Trace     *eval.Trace
	Findings  []finding.Finding // merged by cause, in the order of the work
	Excused   int               // findings that concessions took away
	Tightest  []Tight           // clear verdicts with the least to spare, tightest first
	Unknown   []Wanted          // missing facts, by how many checks each would settle
	Asked     []Count           // what each rule said, by name; rules of no concern are left out
	Questions []Question        // dangers that could not be decided
	Unplayed  []Unplayed        // what was not made on paper, and why
	Accepted  []Accepted        // where concessions took findings away, and why
}

// Tight is a clear verdict with its margin.
type Tight struct {
	Rule   string
	Spot   finding.Spot
	Margin finding.Margin
	What   string
}

// Wanted is a missing fact, and how many verdicts it keeps open.
type Wanted struct {
	Fact    string
	At      text.Place
	Settles int
}

// Count is how often a rule was clear, in trouble or open.
type Count struct {
	Rule                 string
	Clear, Trouble, Open int
}

// Question is to be put at the machine, since no fact decides it.
type Question struct {
	Rule string
	Spot finding.Spot
	Asks string
	For  []string // the facts that would decide it
}

// Unplayed is a part, set-up or step that was not made on paper.
type Unplayed struct {
	Spot finding.Spot
	Why  string
}

// Judge turns verdicts into what is reported: concessions act on each spot, then findings
// merge by rule and cause. on is the day of the check, year-month-day; "" not said.
func Judge(t *eval.Trace, vs []Verdict, on string) *Result {
	r := &Result{Trace: t}
	ex := newExcuses(t.Build, on)
	index := map[[2]string]int{}
	twins := newHands(t.Build)
	seen := spots{}
	for _, v := range vs {
		for _, f := range v.Found {
			if ex.covers(&f) {
				r.Excused++
				continue
			}
			key := [2]string{f.Rule, f.Cause}
			i, ok := index[key]
			if !ok {
				i, ok = twins.place(&f, len(r.Findings))
			}
			if ok {
				r.Findings[i].Spots = seen.add(i, r.Findings[i].Spots, f.Spots)
				continue
			}
			i = len(r.Findings)
			index[key] = i
			seen.add(i, nil, f.Spots)
			r.Findings = append(r.Findings, f)
		}
	}
	if t.Build.Recipe.Unit == drawing.Inch {
		bothUnits(r.Findings)
	}
	r.Findings = append(r.Findings, ex.leftOver()...)
	r.Accepted = ex.took
	r.tally(vs)
	r.unplayed(t)
	return r
}

// spots remembers which spots a finding, by its place in the list, has already: one cause may
// show at ten thousand of them.
type spots map[spotOf]bool

type spotOf struct {
	finding int
	spot    finding.Spot
}

func (seen spots) add(of int, to, more []finding.Spot) []finding.Spot {
	for _, s := range more {
		if key := (spotOf{of, s}); !seen[key] {
			seen[key] = true
			to = append(to, s)
		}
	}
	return to
}

func (r *Result) tally(vs []Verdict) {
	counts := map[string]*Count{}
	wanted := map[string]*Wanted{}
	for _, v := range vs {
		if v.Kind == NoConcern {
			continue
		}
		c := counts[v.Rule.Name]
		if c == nil {
			c = &Count{Rule: v.Rule.Name}
			counts[v.Rule.Name] = c
		}
		switch v.Kind {
		case Clear:
			c.Clear++
			if v.Margin.Unit != "" {
				r.Tightest = append(r.Tightest, Tight{v.Rule.Name, v.Spot, v.Margin, v.What})
			}
		case Trouble:
			c.Trouble++
		case Open:
			c.Open++
			note(wanted, v)
			if v.Asks != "" && v.Rule.Level == finding.Danger {
				r.Questions = append(r.Questions, Question{v.Rule.Name, v.Spot, v.Asks, facts(v.Lacks)})
			}
		}
	}
	for _, c := range counts {
		r.Asked = append(r.Asked, *c)
	}
	sort.Slice(r.Asked, func(i, j int) bool { return r.Asked[i].Rule < r.Asked[j].Rule })
	for _, w := range wanted {
		r.Unknown = append(r.Unknown, *w)
	}
	sort.Slice(r.Unknown, func(i, j int) bool {
		a, b := r.Unknown[i], r.Unknown[j]
		if a.Settles != b.Settles {
			return a.Settles > b.Settles
		}
		return a.Fact < b.Fact
	})
	r.tightest()
}

// note counts a verdict for every fact that it lacks, once each.
func note(wanted map[string]*Wanted, v Verdict) {
	for _, f := range facts(v.Lacks) {
		if wanted[f] == nil {
			wanted[f] = &Wanted{Fact: f}
			for _, l := range v.Lacks {
				if l.Fact == f {
					wanted[f].At = l.At
				}
			}
		}
		wanted[f].Settles++
	}
}

func facts(ls []model.Lack) []string {
	var out []string
	seen := map[string]bool{}
	for _, l := range ls {
		if !seen[l.Fact] {
			seen[l.Fact] = true
			out = append(out, l.Fact)
		}
	}
	return out
}

const howManyTight = 5

// tightest keeps the five least margins, one for each rule and thing.
func (r *Result) tightest() {
	sort.SliceStable(r.Tightest, func(i, j int) bool {
		a, b := r.Tightest[i], r.Tightest[j]
		if x, y := a.Margin.Share(), b.Margin.Share(); x != y {
			return x < y
		}
		if a.Rule != b.Rule {
			return a.Rule < b.Rule
		}
		return a.What < b.What
	})
	var out []Tight
	seen := map[[2]string]bool{}
	for _, t := range r.Tightest {
		key := [2]string{t.Rule, t.What}
		if !seen[key] && len(out) < howManyTight {
			seen[key] = true
			out = append(out, t)
		}
	}
	r.Tightest = out
}

// unplayed lists what the dry run passed over, so that silence is never taken for a pass.
func (r *Result) unplayed(t *eval.Trace) {
	for _, j := range t.Joints {
		if j.Unplayed != "" {
			r.Unplayed = append(r.Unplayed, Unplayed{j.Spot, j.Unplayed})
		}
		if j.Assembly == nil {
			continue
		}
		for _, w := range j.Assembly.Spelt {
			if w.Why != "" {
				spot := finding.Spot{SetUp: j.Spot.SetUp, Step: w.SetUp.Kind + " " + w.SetUp.Label}
				r.Unplayed = append(r.Unplayed, Unplayed{spot, w.Why})
			}
		}
	}
	for _, p := range t.Makings() {
		spot := finding.Spot{Part: p.Part.Label}
		if p.Part.OnlyBought() {
			continue // there is nothing to make
		}
		if p.Part.Unplayed != "" {
			r.Unplayed = append(r.Unplayed, Unplayed{spot, p.Part.Unplayed})
			continue
		}
		for _, f := range p.Part.Forms {
			if p.Part.Joined() {
				break // told of with its own part
			}
			if f.Later && !(f.Feature.Kind == "bend" && p.Part.Flat != nil) {
				r.Unplayed = append(r.Unplayed, Unplayed{finding.Spot{Part: p.Part.Label, SetUp: f.Name()}, f.Wrong})
			}
			if f.Wrong == "" && len(f.Lacks) > 0 {
				r.Unplayed = append(r.Unplayed, Unplayed{finding.Spot{Part: p.Part.Label, SetUp: f.Name()},
					"not known: " + f.Lacks[0].Fact})
			}
		}
		for _, w := range p.Part.Work {
			if w.Unplayed != "" && !p.Part.Joined() {
				r.Unplayed = append(r.Unplayed, Unplayed{w.Spot, w.Unplayed})
			}
		}
		for _, m := range p.Moments {
			switch {
			case m.Hold != nil && m.Hold.Unplayed != "" && m.Hold.Work.Unplayed == "":
				r.Unplayed = append(r.Unplayed, Unplayed{m.Hold.Spot, m.Hold.Unplayed})
			case m.Cut != nil && m.Cut.Unplayed != "" && m.Cut.Hold.Unplayed == "":
				r.Unplayed = append(r.Unplayed, Unplayed{m.Cut.Spot, m.Cut.Unplayed})
			case m.Chuck != nil && m.Chuck.Unplayed != "" && m.Chuck.Work.Unplayed == "":
				r.Unplayed = append(r.Unplayed, Unplayed{m.Chuck.Spot, m.Chuck.Unplayed})
			case m.Turn != nil && m.Turn.Unplayed != "" && m.Turn.Hold.Unplayed == "":
				r.Unplayed = append(r.Unplayed, Unplayed{m.Turn.Spot, m.Turn.Unplayed})
			case m.Measure != nil && m.Measure.Wrong != "":
				r.Unplayed = append(r.Unplayed, Unplayed{m.Measure.Spot, m.Measure.Wrong})
			}
		}
	}
}
