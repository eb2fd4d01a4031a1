package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "unknown-metal",
	Title: "metal that nobody knows is to be hardened, tempered, annealed or soldered",
	Why: `A bar out of the bin may be mild steel, which does not harden, or leaded, which cracks under the torch; brass
and bronze look alike and do not bend alike. A piece sawn off the same bar and tried first costs a quarter of an hour.`,
	Rows:      []string{"G7"},
	Source:    []string{"common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleHeat("unknown", "harden"),
	Sound:     exampleHeat("silver steel", "harden"),
	OnPart:    unknownMetal,
})

// exampleHeat drills a block of some metal and then heats it for something.
func exampleHeat(metal, does string) string {
	return replaced(replaced(exampleHole(), `material = "brass"`, `material = "`+metal+`"`), `      makes = hole.pin
    }
  }
}`, `      makes = hole.pin
    }
  }

  heat "treat" {
    does = "`+does+`"
  }
}`)
}

// heatWords say in a sentence what a heat does.
var heatWords = map[string]string{
	"harden": "hardened", "temper": "tempered", "anneal": "annealed", "stress relieve": "stress relieved",
	"soft solder": "soft-soldered", "silver solder": "silver-soldered", "shrink on": "shrunk on", "blue": "blued", "bend": "bent",
}

// heats lists the heats of a part: what each does, and where it says so.
func heats(p *eval.Part) (does []string, at []text.Place) {
	for _, w := range p.Work {
		if w.Kind != "heat" {
			continue
		}
		if d := w.SetUp.Item.Attr("does"); d != nil && d.Value.Kind == model.Text {
			does, at = append(does, d.Value.Text), append(at, d.Value.At)
		}
	}
	return does, at
}

// bends lists the bends of a sheet as heats lists heats.
func bends(p *eval.Part) (does []string, at []text.Place) {
	for _, f := range p.Features {
		if f.Kind == "bend" {
			does, at = append(does, "bend"), append(at, f.Item.At)
		}
	}
	return does, at
}

func unknownMetal(p *eval.PartTrace, a *Ask) {
	does, at := heats(p.Part)
	if len(does) == 0 {
		does, at = bends(p.Part)
	}
	if len(does) == 0 {
		return
	}
	metal, named := p.Part.Material, p.Part.Label
	if s := p.Part.Blank.Stock; s != nil && s.Material.Is() && s.Material.V.Unsure {
		metal, named = s.Material, s.Path()
	}
	m, ok := Need(a, metal)
	switch {
	case !ok:
	case !m.Unsure:
		a.Clear(finding.Margin{}, "")
	default:
		f := a.Say(named+".material", at[0], "nobody knows what metal %s is, and it is to be %s: try a piece sawn off the same bar first, or take a bar that is known",
			named, heatWords[does[0]])
		f.Also = []finding.Note{{Place: metal.At, Says: "its metal"}}
	}
}
