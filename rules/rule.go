// Package rules is the catalogue of what can be known beforehand to go wrong, one file a
// rule. A rule compares figures that the dry run recorded, and words what it finds; it does
// no geometry of its own. A figure that it lacks belongs in package eval.
package rules

import (
	"fmt"
	"sort"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

// Rule is one entry of the catalogue. Exactly one of the On fields is set.
type Rule struct {
	Name      string   // two to four words that name the trouble, joined by hyphens
	Title     string   // the trouble in a line
	Why       string   // why it happens and what it does, for `fettle why`
	Rows      []string // rows of the list of traps that it covers
	Source    []string // where figures and facts are from; "common practice" where from none
	Limits    []string // the limits of judgement it asks for
	Level     finding.Level
	Judgement finding.Judgement
	Trips     string // the smallest recipe that trips it, played in the shop of the examples
	Sound     string // the same put right
	Caution   string // the usual words of the trade, where someone can be hurt
	Together  bool   // of a rule about parts that looks at holdings: it is asked of joined parts as well
	Shifted   bool   // of a rule about holdings: it is asked again when clamps, packing or support were moved
	Deaf      Choice // of a rule about cuts: the choices that cannot alter what it says

	OnShop    func(*model.Build, *Ask)
	OnPart    func(*eval.PartTrace, *Ask)
	OnHold    func(*eval.Holding, *Ask)
	OnCut     func(*eval.Cut, *Ask)
	OnChuck   func(*eval.Chucking, *Ask) // a holding on a lathe; may stand beside OnHold
	OnTurn    func(*eval.Turn, *Ask)     // an operation on a lathe; may stand beside OnCut
	OnMeasure func(*eval.Measurement, *Ask)
	OnJoint   func(*eval.Joint, *Ask)   // a fit, stack, screw or measured size
	OnHeat    func(*eval.Heating, *Ask) // heats of parts, and after them those of assemblies
	OnBuild   func(*eval.Trace, *Ask)
}

// Choice is a set of the choices that are made for an operation.
type Choice uint8

const (
	Holding  Choice = 1 << iota // what holds the piece on one machine, and how it lies
	Mounting                    // what holds the tool, and how far it stands out
	Tool                        // the tool, and with it its speed
)

var catalogue []*Rule

// enter puts a rule in the catalogue; every rule's file does so once.
func enter(r Rule) bool {
	catalogue = append(catalogue, &r)
	sort.Slice(catalogue, func(i, j int) bool { return catalogue[i].Name < catalogue[j].Name })
	return true
}

// Catalogue lists every rule by name.
func Catalogue() []*Rule { return catalogue }

// Find gives a rule by its name; nil if there is none.
func Find(name string) *Rule {
	i := sort.Search(len(catalogue), func(i int) bool { return catalogue[i].Name >= name })
	if i < len(catalogue) && catalogue[i].Name == name {
		return catalogue[i]
	}
	return nil
}

// Kind is what a rule says at one moment.
type Kind uint8

const (
	NoConcern Kind = iota
	Clear          // asked, and clear, with a margin where there is a figure
	Trouble
	Open // it asked for a fact that is lacking, and found nothing certain
)

// Verdict is what one rule says at one moment.
type Verdict struct {
	Rule   *Rule
	Spot   finding.Spot
	Kind   Kind
	Found  []finding.Finding
	Lacks  []model.Lack
	Margin finding.Margin
	What   string // of what the margin is: "the nut of arbor.stub to the fixed jaw"
	Asks   string // a question for the machine, where a danger could not be decided
}

// Ask is a rule asking at one moment.
type Ask struct {
	v     Verdict
	build *model.Build
	clear bool
	asks  string
}

// Need asks for a fact; a missing one is noted, and the verdict stays open unless something
// certain is found.
func Need[T any](a *Ask, k model.Known[T]) (T, bool) {
	a.Lack(k.Missing()...)
	return k.Get()
}

// Lack notes facts that are missing.
func (a *Ask) Lack(ls ...model.Lack) { a.v.Lacks = append(a.v.Lacks, ls...) }

// lacking says whether a fact has been found missing so far.
func (a *Ask) lacking() bool { return len(a.v.Lacks) > 0 }

// Limit gives a limit of judgement by name, as the shop has set it. A rule lists the names
// that it asks for.
func (a *Ask) Limit(name string) float64 {
	k, ok := a.build.Thumbs[name]
	if !ok {
		panic("rules: no limit of judgement is called " + name)
	}
	return k.V
}

// Say reports trouble: what is to blame, where in the file, and the sentence.
func (a *Ask) Say(cause string, at text.Place, says string, args ...any) *finding.Finding {
	a.v.Found = append(a.v.Found, finding.Finding{
		Rule: a.v.Rule.Name, Rows: a.v.Rule.Rows, Level: a.v.Rule.Level, Judgement: a.v.Rule.Judgement,
		Cause: inMillimetres(cause), Place: at, Spots: []finding.Spot{a.v.Spot}, Says: fmt.Sprintf(says, args...),
	})
	return &a.v.Found[len(a.v.Found)-1]
}

// Clear notes that what was asked is all right, by how much, and of what the margin is.
// The tightest margin of several counts.
func (a *Ask) Clear(m finding.Margin, what string) {
	if a.clear && a.v.Margin.Unit != "" && (m.Unit == "" || a.v.Margin.Share() <= m.Share()) {
		return
	}
	a.clear, a.v.Margin, a.v.What = true, m, what
}

// Asks is the question to be put at the machine should the verdict stay open.
func (a *Ask) Asks(question string, args ...any) { a.asks = fmt.Sprintf(question, args...) }

// Room is a margin in mm that must be at least what is wanted.
func Room(has, wants float64) finding.Margin {
	return finding.Margin{Has: has, Wants: wants, Unit: "mm"}
}

// Bound is a margin that must be at most what is wanted.
func Bound(has, wants float64, unit string) finding.Margin {
	return finding.Margin{Has: has, Wants: wants, Unit: unit, Less: true}
}

func (a *Ask) settle() Verdict {
	switch {
	case len(a.v.Found) > 0:
		a.v.Kind, a.v.Margin, a.v.What = Trouble, finding.Margin{}, ""
	case len(a.v.Lacks) > 0:
		a.v.Kind, a.v.Margin, a.v.What, a.v.Asks = Open, finding.Margin{}, "", a.asks
	case a.clear:
		a.v.Kind = Clear
	}
	return a.v
}

// mm prints a length in a sentence.
// figure prints a figure.
func figure(x float64) string { return model.Figure(x) }

func mm(x float64) string { return model.Figure(x) + " mm" }

// degrees prints an angle, degrees.
func degrees(x float64) string {
	if x == 1 {
		return "1 degree"
	}
	return model.Figure(x) + " degrees"
}
