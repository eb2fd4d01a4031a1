package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "die-has-no-holder",
	Title: "no die holder takes a die of that outside",
	Why: `A round die sits in a holder of its own outside diameter; in a larger one it lies aslant and cuts a drunken thread. A ring turned
to go between, or the next holder, does it.`,
	Rows:      []string{"B17"},
	Source:    []string{"look-up: outside of the die and the holders that the shop declares"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Deaf:      Holding,
	Trips:     exampleDie("20"),
	Sound:     exampleDie("20, 25"),
	OnTurn:    dieHasNoHolder,
})

// exampleDie cuts M8 with a die of the examples, which is 25 mm outside, in a holder for dies of such sizes.
func exampleDie(dies string) string {
	return exampleTurned(`
  outside "end" {
    from     = 40
    diameter = 8
  }

  thread "end" {
    on   = outside.end
    size = "M8"
    from = 45
    to   = 60
  }
`, inThree, `
    operation {
      makes = outside.end
    }
    operation {
      makes = thread.end
      tool  = die.metric["M8"]
    }`) + `
die_holder "own" {
  dies = [` + dies + `]
}
`
}

// dieSame is how near a holder must be to the outside of the die, mm: nominal sizes, in inches or not.
const dieSame = 0.5

func dieHasNoHolder(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "die" || k.Unplayed != "" {
		return
	}
	var holders []*model.Holder
	for _, h := range k.Part.Build.Shop.Holders {
		if h.Kind == "die_holder" && h.Here() {
			holders = append(holders, h)
		}
	}
	if len(holders) == 0 {
		return // the drawer of holders is not written down
	}
	outside, ok := Need(a, c.Outside)
	if !ok {
		return
	}
	var lacks []model.Lack
	best, of := 0.0, (*model.Holder)(nil)
	for _, h := range holders {
		if !h.Dies.Is() {
			lacks = append(lacks, h.Dies.Missing()...)
		}
		if near, ok := h.Dies.V.Nearest(outside); ok && (of == nil || abs(near-outside) < abs(best-outside)) {
			best, of = near, h
		}
	}
	switch {
	case of != nil && abs(best-outside) <= dieSame:
		a.Clear(finding.Margin{}, "")
	case len(lacks) > 0 || of == nil:
		a.Lack(lacks...)
	default:
		f := a.Say(c.Path()+".outside", k.Place("tool", "holder"), "%s is %s outside, and the nearest that a die holder takes is %s, by %s", c.Path(), mm(outside), mm(best), of.Path())
		f.Also = []finding.Note{{Place: c.Outside.At, Says: "its outside"}, {Place: of.Dies.At, Says: "what the holder takes"}}
	}
}
