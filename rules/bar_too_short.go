package rules

import (
	"fmt"
	"slices"
	"sort"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "bar-too-short",
	Title: "the pieces of all parts do not come out of the lengths that are there",
	Why: `Each piece is spoken for by one part only, and every cut turns its kerf to chips. Two parts that each fit the
same offcut do not both fit it.`,
	Rows:      []string{"G5", "G6"},
	Source:    []string{"arithmetic, every way of laying the pieces tried; a parted piece costs the width of the parting tool, a sawn one the saw's kerf, that of a hand hacksaw where no saw is declared: common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBars(4),
	Sound:     exampleBars(3),
	OnBuild:   barTooShort,
})

// exampleBars wants so many pieces of 100 mm from bars of 310 and 95 mm.
func exampleBars(quantity float64) string {
	return replaced(replaced(exampleStock(23, 1), "length   = 40", "length   = 100\n  quantity = "+figure(quantity)), "left = 20,", "left = 50,")
}

// mostPieces bounds how many pieces of one stock are laid; beyond it nothing is said.
const mostPieces = 14

func barTooShort(t *eval.Trace, a *Ask) {
	need := map[*model.Stock][]sawn{}
	first := map[*model.Stock]text.Place{}
	var order []*model.Stock
	for _, p := range t.Parts {
		s := p.Part.Blank.Stock
		if p.Start == nil || s == nil || !s.Here() {
			continue
		}
		piece := sawn{long: p.Part.RawLength()}
		piece.kerf, piece.parted = p.Severs()
		if need[s] == nil {
			order = append(order, s)
			first[s] = p.Part.At
			if b := p.Part.Part.Blank; b != nil && b.Stock.Said() {
				first[s] = b.Stock.At
			}
		}
		for range min(p.Part.Quantity.Or(1), mostPieces+1) {
			need[s] = append(need[s], piece)
		}
	}
	for _, s := range order {
		lengths, ok := Need(a, s.Lengths)
		if !ok || len(need[s]) < 2 {
			continue // one piece alone: stock-too-small speaks of it
		}
		layOut(a, s, first[s], need[s], lengths)
	}
}

func layOut(a *Ask, s *model.Stock, at text.Place, pieces []sawn, bars []float64) {
	if len(pieces) > mostPieces {
		total := 0.0
		for _, p := range pieces {
			total += p.long
		}
		for _, b := range bars {
			total -= b
		}
		if total <= 0 {
			return // too many to lay out here, and not plainly impossible
		}
	} else if fits(pieces, bars) {
		a.Clear(finding.Margin{}, "")
		return
	}
	sum, have := 0.0, 0.0
	for _, p := range pieces {
		sum += p.long
	}
	for _, b := range bars {
		have += b
	}
	f := a.Say(s.Path()+".lengths", at, "the build wants %d pieces of %s, %s mm in all with %s, and they do not come out of the %s that are there (%s mm in all)",
		len(pieces), s.Path(), tenth(sum), kerfs(pieces), listOf(bars), tenth(have))
	f.Also = []finding.Note{{Place: s.Lengths.At, Says: "the lengths that are there"}}
}

func listOf(bars []float64) string {
	s := ""
	for i, b := range bars {
		if i > 0 {
			s += ", "
		}
		if i == 4 {
			return s + fmt.Sprintf("and %d more", len(bars)-4)
		}
		s += mm(b)
	}
	return s
}

// sawn is one piece of a bar: how long, and what its cut turns to chips, in mm.
type sawn struct {
	long, kerf float64
	parted     bool
}

// kerfs says what the cuts turn to chips.
func kerfs(pieces []sawn) string {
	saw, blade := 0.0, 0.0
	for _, p := range pieces {
		if p.parted {
			blade = max(blade, p.kerf)
		} else {
			saw = p.kerf
		}
	}
	switch {
	case blade == 0:
		return "a kerf of " + mm(saw) + " at each cut"
	case saw == 0:
		return mm(blade) + " for the parting tool at each"
	}
	return "a kerf of " + mm(saw) + " at each that is sawn and " + mm(blade) + " at each that is parted off"
}

// rest is what is left of a bar with the cuts of all its pieces taken, and the widest of these: the
// piece with that one may lie last, and wants no cut where it uses the bar up to its end.
type rest struct{ left, last float64 }

// fits tries every way of cutting the pieces from the bars, the longest piece first; bars of which as
// much is left are tried once.
func fits(pieces []sawn, bars []float64) bool {
	ps := append([]sawn(nil), pieces...)
	sort.SliceStable(ps, func(i, j int) bool { return ps[i].long > ps[j].long })
	var left []rest
	for _, b := range bars {
		left = append(left, rest{b, 0})
	}
	var lay func(i int) bool
	lay = func(i int) bool {
		if i == len(ps) {
			return true
		}
		for b, was := range left {
			now := rest{was.left - ps[i].long - ps[i].kerf, max(was.last, ps[i].kerf)}
			if slices.Contains(left[:b], was) || now.left+now.last < -model.Grain {
				continue
			}
			left[b] = now
			if lay(i + 1) {
				return true
			}
			left[b] = was
		}
		return false
	}
	return lay(0)
}
