package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "hardness-not-reached",
	Title: "the work does not bring a part to the hardness that is asked of it",
	Why: `Steel is hard because it was heated and quenched, and only as hard as its kind becomes; a temper or a later heat takes
some of it back. Where the drawing asks for a hardness, a heat must give it and nothing after that may take it away.`,
	Rows: []string{"G8", "F11"},
	Source: []string{"hardness as quenched: handbook, from memory; it is known to some 2 HRC",
		"carbon tool steel tempered at 400 °C has some 50 HRC: from memory",
		"bar is sold up to some 30 HRC, 300 HB, 320 HV: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleHardness(""),
	Sound:     exampleHardness(exampleHeats("    does = \"harden\"\n", "    does        = \"temper\"\n    temperature = 180\n")),
	OnPart:    hardnessNotReached,
})

// exampleHardness is a block of silver steel that is to be hard, with some work after its drilling.
func exampleHardness(work string) string {
	return replaced(exampleBlock("silver steel", work), "  length   = 40", "  hardness = \"58..60 HRC\"\n  length   = 40")
}

// What bar has at most as it is sold, by scale.
var asSold = map[string]float64{"HRC": 30, "HB": 300, "HV": 320}

const (
	aboutHRC     = 2.0   // how far the hardness as quenched is known
	temperedAt   = 400.0 // degrees Celsius
	temperedHas  = 50.0  // HRC of carbon tool steel tempered there
	carbonLevels = 60.0  // as quenched, HRC: from here on it is a carbon tool steel
)

func hardnessNotReached(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	wants, at, ok := hardWanted(p.Part)
	if !ok {
		return
	}
	m, known := p.Part.Metal()
	if !known {
		if _, said := Need(a, p.Part.Material); !said {
			return
		}
	}
	quenched, back := -1, -1
	for i, t := range p.End.Treated {
		if quenched >= 0 && eval.Apart(p.End.Treated[quenched].Zone, t.Zone) {
			continue
		}
		switch t.Does {
		case "harden":
			quenched, back = i, -1
		case "anneal":
			back = i
		case "temper", "stress relieve", "blue", "silver solder":
			if quenched >= 0 && t.Least >= temperedAt && m.HRC >= carbonLevels && wants.Scale == "HRC" && wants.Lo > temperedHas {
				back = i
			}
		}
	}
	said := wants.Scale != "" && wants.Lo > 0
	switch {
	case quenched < 0 && (known && !m.Hardens() && !said || soldHard(p.Part)):
	case quenched < 0:
		a.Say(p.Part.Item.Path()+".hardness", at, "%s is to be %s, and no heat hardens it", p.Part.Label, hardWords(p.Part))
	case back >= 0:
		t := p.End.Treated[back]
		a.Say(p.Part.Item.Path()+".hardness+"+t.Spot.SetUp, t.At, "%s is to be %s, and %s (%s) takes its hardness away again", p.Part.Label, hardWords(p.Part), t.Spot.SetUp, t.Does)
	case known && said && wants.Scale == "HRC" && m.HRC > 0 && wants.Lo > m.HRC+aboutHRC:
		f := a.Say(p.Part.Item.Path()+".hardness+"+m.Name, at, "%s is to be %s, and %s has about %s HRC as it comes out of the quench", p.Part.Label, hardWords(p.Part), m.Name, figure(m.HRC))
		f.Margin = finding.Margin{Has: m.HRC, Wants: wants.Lo, Unit: "HRC"}
	default:
		a.Clear(finding.Margin{}, "")
	}
}

// hardWanted is the hardness that only a heat gives: as figures, or in the words of the part's condition.
func hardWanted(p *eval.Part) (h drawing.Hardness, at text.Place, ok bool) {
	if h, ok = drawing.ParseHardness(p.Hardness.V); ok && p.Hardness.Is() {
		return h, p.Hardness.At, h.Lo > asSold[h.Scale]
	}
	c := strings.ToLower(p.Condition.V)
	return drawing.Hardness{}, p.Condition.At, strings.Contains(c, "hardened") && !strings.Contains(c, "unhardened") && !strings.Contains(c, "work")
}

func hardWords(p *eval.Part) string {
	if _, ok := drawing.ParseHardness(p.Hardness.V); ok {
		return p.Hardness.V
	}
	return p.Condition.V
}

// soldHard says whether the raw piece is bought hard.
func soldHard(p *eval.Part) bool {
	var c string
	if b := p.Part.Blank; b != nil && b.Condition.Is() {
		c = b.Condition.V
	} else if s := p.Blank.Stock; s != nil {
		c = s.Condition.V
	}
	return strings.Contains(strings.ToLower(c), "harden")
}
