package rules

import (
	"fmt"
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
	Source:    []string{"arithmetic, every way of laying the pieces tried; the kerf of a hand hacksaw where no saw is declared: common practice"},
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
	need := map[*model.Stock][]float64{}
	first := map[*model.Stock]text.Place{}
	var order []*model.Stock
	for _, p := range t.Parts {
		s := p.Part.Blank.Stock
		if p.Start == nil || s == nil || !s.Here() {
			continue
		}
		l := p.Part.RawLength()
		if need[s] == nil {
			order = append(order, s)
			first[s] = p.Part.At
			if b := p.Part.Part.Blank; b != nil && b.Stock.Said() {
				first[s] = b.Stock.At
			}
		}
		for range min(p.Part.Quantity.Or(1), mostPieces+1) {
			need[s] = append(need[s], l)
		}
	}
	kerf := eval.KerfOf(t.Build)
	for _, s := range order {
		lengths, ok := Need(a, s.Lengths)
		if !ok || len(need[s]) < 2 {
			continue // one piece alone: stock-too-small speaks of it
		}
		layOut(a, s, first[s], need[s], lengths, kerf)
	}
}

func layOut(a *Ask, s *model.Stock, at text.Place, pieces, bars []float64, kerf float64) {
	if len(pieces) > mostPieces {
		total := 0.0
		for _, p := range pieces {
			total += p
		}
		for _, b := range bars {
			total -= b
		}
		if total <= 0 {
			return // too many to lay out here, and not plainly impossible
		}
	} else if fits(pieces, bars, kerf) {
		a.Clear(finding.Margin{}, "")
		return
	}
	sum, have := 0.0, 0.0
	for _, p := range pieces {
		sum += p
	}
	for _, b := range bars {
		have += b
	}
	f := a.Say(s.Path()+".lengths", at, "the build wants %d pieces of %s, %s mm in all with a kerf of %s at each cut, and they do not come out of the %s that are there (%s mm in all)",
		len(pieces), s.Path(), tenth(sum), mm(kerf), listOf(bars), tenth(have))
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

// fits tries every way of cutting the pieces from the bars, the longest piece first; equal
// rests are tried once. A piece that uses a bar up to its end wants no last cut.
func fits(pieces, bars []float64, kerf float64) bool {
	ps := append([]float64(nil), pieces...)
	sort.Sort(sort.Reverse(sort.Float64Slice(ps)))
	left := append([]float64(nil), bars...)
	var lay func(i int) bool
	lay = func(i int) bool {
		if i == len(ps) {
			return true
		}
		for b := range left {
			tried := false
			for c := range b {
				tried = tried || left[c] == left[b]
			}
			if tried || left[b] < ps[i]-model.Grain {
				continue
			}
			was := left[b]
			left[b] = max(0, was-ps[i]-kerf)
			if lay(i + 1) {
				return true
			}
			left[b] = was
		}
		return false
	}
	return lay(0)
}
