// Package finding holds what a check has to say: one sentence with its figures, at a
// place in the file and at the places in the work that it stops.
package finding

import (
	"fmt"
	"sort"
	"strings"

	"fettle/schema/text"
)

// Level says how bad a thing is. The zero Level is invalid.
type Level uint8

// From mild to grave.
const (
	_      Level = iota
	Advice       // worth knowing
	Scrap        // likely to spoil the part or break the tool
	Stop         // cannot be done as written
	Danger       // someone can be hurt
)

var levelNames = [...]string{Advice: "advice", Scrap: "scrap", Stop: "stop", Danger: "danger"}

func (l Level) String() string {
	if l >= Advice && l <= Danger {
		return levelNames[l]
	}
	return fmt.Sprintf("Level(%d)", uint8(l))
}

// ParseLevel reads the name of a level.
func ParseLevel(s string) (Level, bool) {
	for l := Advice; l <= Danger; l++ {
		if levelNames[l] == s {
			return l, true
		}
	}
	return 0, false
}

// Judgement says what a finding rests on. The zero Judgement is invalid.
type Judgement uint8

const (
	_     Judgement = iota
	Fact            // geometry, arithmetic, look-up or order
	Thumb           // a limit of judgement, which the shop may change
)

func (j Judgement) String() string {
	switch j {
	case Fact:
		return "fact"
	case Thumb:
		return "rule of thumb"
	}
	return fmt.Sprintf("Judgement(%d)", uint8(j))
}

// Spot is a place in the work, by labels and never by lines, so that it is the same
// before and after an edit. Any field may be empty.
type Spot struct {
	Part  string // the label of a part or assembly
	SetUp string // with its kind: "setup split", "square_up"
	Step  string // with its kind: "operation saw the split"
}

func (s Spot) String() string { return strings.Join(s.Words(), " › ") }

// Words gives the spot from the part down, each with its kind: what "at" shows.
func (s Spot) Words() []string {
	var out []string
	if s.Part != "" {
		out = append(out, "part "+s.Part)
	}
	for _, w := range []string{s.SetUp, s.Step} {
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}

// Margin is how far a check was from its border. A zero Unit means that there is no figure.
// Less says that Has must not be more than Wants; otherwise it must not be less.
type Margin struct {
	Has, Wants float64
	Unit       string
	Less       bool
}

// Share is what is left over, as a share of what is wanted: 0 on the border, negative past it.
func (m Margin) Share() float64 {
	left := m.Has - m.Wants
	if m.Less {
		left = -left
	}
	scale := max(abs(m.Wants), abs(m.Has)*1e-9, 1e-9)
	return left / scale
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// Note is a further place with a sentence of its own.
type Note struct {
	Place text.Place
	Says  string
}

// Remedy is a change that was tried in the dry run and cured the finding.
type Remedy struct {
	Title string
	Edits []text.Edit
}

// Finding is one thing that a person should know before metal is cut.
type Finding struct {
	Rule      string
	Rows      []string // rows of the list of traps that the rule covers
	Level     Level
	Judgement Judgement
	Cause     string // what is to blame, as model paths; same rule and cause: one finding
	Place     text.Place
	Spots     []Spot // every moment it stops, first in the order of work first
	Says      string
	Also      []Note
	Margin    Margin
	Remedies  []Remedy
}

// ID is the identity of a finding: its rule, its cause and its labels, never lines.
func (f *Finding) ID() string {
	var b strings.Builder
	b.WriteString(f.Rule)
	b.WriteByte('|')
	b.WriteString(f.Cause)
	for _, s := range f.Spots {
		b.WriteByte('|')
		b.WriteString(s.String())
	}
	return b.String()
}

// Sort puts findings that have no order of work into the order of their places.
func Sort(fs []Finding) {
	sort.SliceStable(fs, func(i, j int) bool {
		a, b := &fs[i], &fs[j]
		if a.Place != b.Place {
			return a.Place.Before(b.Place)
		}
		if a.Rule != b.Rule {
			return a.Rule < b.Rule
		}
		return a.Says < b.Says
	})
}
