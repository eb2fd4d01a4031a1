package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "no-bar-left-to-hold",
	Title: "the last piece parted from a bar leaves nothing for the jaws to hold",
	Why: `Each piece takes its length and the width of the parting tool from the bar, and behind the last one the jaws still need metal:
the room from the cut to their face, and their grip. A bar that is as long as all the pieces together is too short.`,
	Rows:      []string{"G4", "G5", "C11"},
	Source:    []string{"arithmetic: pieces, kerfs of the parting tool, cut to jaws as it is set up, least grip by the usual limits"},
	Limits:    []string{"jaw_grip_share", "chuck_grip_share", "stick_out_share"},
	Level:     finding.Stop,
	Judgement: finding.Thumb,
	Trips:     exampleParted("4", "190"),
	Sound:     exampleParted("3", "190"),
	OnBuild:   noBarLeftToHold,
})

// exampleParted parts several pieces of 40 mm from one bar of a length.
func exampleParted(quantity, bar string) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = 20
  length   = 40
  quantity = ` + quantity + `

  blank {
    stock = stock.own
    over  = { right = 1 }
    bar   = true
  }

  setup "turn" {
    machine   = lathe.centre
    hold      = chuck.three
    end       = "left"
    stick_out = 47

    operation {
      makes = face.right
    }
    operation {
      makes = face.left
      by    = "parting"
    }
  }
}

stock "own" {
  material = "mild steel"
  round    = 20
  lengths  = [` + bar + `]
  skin     = "drawn"
}
`
}

// fromBar is what the pieces of one part want of a bar.
type fromBar struct {
	part  *eval.Part
	at    text.Place
	pitch float64 // piece and kerf
	rest  float64 // cut to jaw face, and grip
	grip  float64
	n     int
}

func noBarLeftToHold(t *eval.Trace, a *Ask) {
	wants := map[*model.Stock][]fromBar{}
	alone := map[*model.Stock]bool{}
	var order []*model.Stock
	for _, p := range t.Parts {
		s := p.Part.Blank.Stock
		if p.Start == nil || s == nil || !s.Here() {
			continue
		}
		w, ok := partedFrom(p, a)
		if !ok {
			alone[s] = true // other pieces could be cut from what is left
			continue
		}
		if wants[s] == nil {
			order = append(order, s)
		}
		wants[s] = append(wants[s], w)
	}
	for _, s := range order {
		lengths, ok := Need(a, s.Lengths)
		if ok && !alone[s] {
			leftOfBars(a, s, wants[s], lengths)
		}
	}
}

// partedFrom finds the parting of a part's pieces from the bar; false where there is none.
func partedFrom(p *eval.PartTrace, a *Ask) (fromBar, bool) {
	if p.Part.Blank.Bar == model.NoFace {
		return fromBar{}, false
	}
	for _, m := range p.Moments {
		k := m.Turn
		if k == nil || k.Choice.By != "parting" || k.Hold.Choice.Chuck == nil || k.Hold.Unplayed != "" {
			continue
		}
		jaw, ok := Need(a, k.Hold.Choice.Chuck.JawLength)
		if !ok {
			return fromBar{}, false
		}
		for _, w := range k.Works {
			if w.Wrong != "" || w.Width <= 0 {
				continue
			}
			grip := leastGrip(k.Hold, a, jaw).want
			return fromBar{part: p.Part, at: p.Part.At, pitch: p.Part.RawLength() + w.Width, rest: math.Max(w.U0, 0) + grip, grip: grip, n: p.Part.Quantity.Or(1)}, true
		}
	}
	return fromBar{}, false
}

// leftOfBars lays the pieces of a stock on its bars, each of which keeps what the jaws need.
func leftOfBars(a *Ask, s *model.Stock, wants []fromBar, bars []float64) {
	var pieces []sawn
	rest, grip := math.Inf(1), 0.0
	for _, w := range wants {
		for range min(w.n, mostPieces+1) {
			pieces = append(pieces, sawn{long: w.pitch})
		}
		if w.rest < rest {
			rest, grip = w.rest, w.grip
		}
	}
	if len(pieces) > mostPieces || len(pieces) < 2 {
		return
	}
	var short []float64
	most := 0.0
	for _, b := range bars {
		short = append(short, b-rest)
		most = math.Max(most, b)
	}
	if fits(pieces, short) {
		a.Clear(finding.Margin{}, "")
		return
	}
	sum := 0.0
	for _, p := range pieces {
		sum += p.long
	}
	f := a.Say(s.Path()+".rest", wants[0].at, "%d pieces take %s mm of %s with the kerfs of the parting tool, and the jaws need %s mm behind the last one (%s mm to the cut, %s mm of grip): they do not come out of the %s that are there",
		len(pieces), tenth(sum), s.Path(), tenthUp(rest), tenth(rest-grip), tenthUp(grip), listOf(bars))
	f.Also = []finding.Note{{Place: s.Lengths.At, Says: "the lengths that are there"}}
}
