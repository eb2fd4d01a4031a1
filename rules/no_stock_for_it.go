package rules

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "no-stock-for-it",
	Title: "no piece of the part's metal is here that it comes out of",
	Why: `The first thing a part wants is its metal. Where none of it is here, or every piece of it is smaller than the finished
part, the work waits for an order by post; better to know while the order can still be made together with others.`,
	Rows:      []string{"G1", "G3", "G4"},
	Source:    []string{"look-up in the shop; arithmetic: the finished part against the section and the longest piece of each stock, nothing counted for cleaning up"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(replaced(exampleStock(23, 1), "    stock = stock.brass_flat\n", ""), `"brass"`, `"bronze"`),
	Sound:     replaced(exampleStock(23, 1), "    stock = stock.brass_flat\n", ""),
	OnPart:    noStockForIt,
})

// metalSought is what looking for a part's metal in the shop came to.
type metalSought struct {
	found    bool
	lacks    []model.Lack // what would have to be known of pieces that may do
	nearest  *model.Stock // of its metal, the piece that is least too small
	short    float64      // by how much, in mm
	cousin   *model.Stock // large enough, of another grade of the same
	other    *model.Stock // large enough, of another metal
	metals   []string     // what else is here, as written
	away     *model.Stock // would do, and is not here
	nameless bool         // pieces of which nobody knows what they are, too small as well
}

func noStockForIt(p *eval.PartTrace, a *Ask) {
	if p.Start == nil || p.Part.Joined() {
		return
	}
	if b := p.Part.Part.Blank; b != nil && b.Stock.Said() {
		return // named: other rules look at that piece
	}
	want, ok := Need(a, p.Part.Material)
	if !ok || want.Unsure {
		return // any metal will do, or nobody says which
	}
	if len(p.Part.Build.Shop.Stock) == 0 {
		a.Lack(model.Lack{Fact: "whether " + want.Written + " is here (the shop names no stock)"})
		return
	}
	if want.Name == "" && !ofThatWord(p.Part, want) {
		a.Lack(model.Lack{Fact: "what metal " + want.Written + " is (the handbook has none of that name)", At: p.Part.Material.At})
		return
	}
	s := metalSought{found: p.Part.Blank.Stock != nil || want.Name == ""}
	for _, x := range p.Part.Build.Shop.Stock {
		if !s.found {
			s.look(p.Part, x, want)
		}
	}
	switch {
	case s.found:
		a.Clear(finding.Margin{}, "")
	case len(s.lacks) > 0:
		a.Lack(s.lacks...)
	default:
		f := a.Say("stock+"+p.Part.Label, p.Part.Material.At, "%s", s.says(p.Part, want))
		if s.nearest != nil {
			f.Also = append(f.Also, finding.Note{Place: s.nearest.Item.At, Says: "the nearest of its metal"})
		}
		if s.away != nil {
			f.Also = append(f.Also, finding.Note{Place: s.away.State.At, Says: fmt.Sprintf("%s, its state %q", s.away.Path(), s.away.State.V)})
		}
	}
}

// ofThatWord says whether a piece that is here, of a metal that the handbook does not name, is called as the
// part's is, and the part comes out of it.
func ofThatWord(p *eval.Part, want model.Material) bool {
	for _, x := range p.Build.Shop.Stock {
		short, lacks := p.Shortfall(x)
		if x.Here() && short == 0 && len(lacks) == 0 && strings.EqualFold(x.Material.V.Written, want.Written) {
			return true
		}
	}
	return false
}

// look holds one piece of stock against the part.
func (s *metalSought) look(p *eval.Part, x *model.Stock, want model.Material) {
	short, lacks := p.Shortfall(x)
	there, known := x.Material.Get()
	switch {
	case !x.Here():
		if short == 0 && known && handbook.Serves(want, there) {
			s.away = x
		}
	case !known || there.Unsure || there.Name == "": // it may be the one
		if s.nameless = true; short == 0 {
			s.lacks = append(s.lacks, model.Lack{Fact: x.Path() + ".material", At: x.Item.At})
		}
	case handbook.Serves(want, there) && short == 0:
		s.found = len(lacks) == 0
		s.lacks = append(s.lacks, lacks...)
	case handbook.Serves(want, there):
		if s.nearest == nil || short < s.short {
			s.nearest, s.short = x, short
		}
	case short == 0 && handbook.Serves(there, want): // the general word: its grade is not known
		s.lacks = append(s.lacks, model.Lack{Fact: "the grade of " + x.Path() + " (" + there.Written + ")", At: x.Item.At})
	case short == 0 && oneFamily(want, there):
		if s.cousin == nil {
			s.cousin = x
		}
	default:
		if short == 0 && s.other == nil {
			s.other = x
		}
		if !slices.Contains(s.metals, there.Written) {
			s.metals = append(s.metals, there.Written)
		}
	}
}

// mostMetals is how many metals a sentence lists.
const mostMetals = 5

// says words what is lacking, and what is nearest.
func (s *metalSought) says(p *eval.Part, want model.Material) string {
	size := figure(round(p.Size[0])) + " by " + figure(round(p.Size[1])) + " by " + mm(round(p.Size[2]))
	if p.Round {
		size = "⌀" + figure(round(2*p.Radius())) + " by " + mm(round(p.Size[0]))
	}
	says := fmt.Sprintf("%s (%s finished) is to be of %s, and none is here", p.Label, size, want.Written)
	if s.nameless {
		says = fmt.Sprintf("%s (%s finished) is to be of %s, and no piece that may be of it is large enough", p.Label, size, want.Written)
	}
	if s.nearest != nil {
		says = fmt.Sprintf("%s (%s finished) comes out of no piece of %s that is here; the nearest is %s, %s",
			p.Label, size, want.Written, s.nearest.Path(), eval.StockSize(s.nearest))
		if l := s.nearest.Lengths.V; len(l) > 0 {
			says += " and at most " + mm(slices.Max(l)) + " long"
		}
		switch {
		case s.nearest.Tube.Said:
			says += ", and too small for it or hollow where it is solid"
		case !math.IsInf(s.short, 1):
			says += ": " + tenthUp(s.short) + " mm too small"
		}
	}
	switch {
	case s.cousin != nil:
		says += fmt.Sprintf("; %s is large enough and of %s: whether that grade does is yours to say", s.cousin.Path(), s.cousin.Material.V.Written)
	case s.nearest != nil:
	case s.other != nil:
		says += fmt.Sprintf("; %s is large enough, of %s", s.other.Path(), s.other.Material.V.Written)
	case len(s.metals) > 0:
		says += "; what is here is " + inWords(s.metals[:min(len(s.metals), mostMetals)]) + ", and no piece of it is large enough"
	}
	return says
}
