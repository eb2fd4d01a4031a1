package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "cut-after-hardening",
	Title: "a hardened piece is to be cut with high-speed steel or a file",
	Why: `Hardened tool steel is as hard as a file: a drill of high-speed steel squeals and burns, a tap breaks off in
its hole, a file slides. What is to be drilled, tapped, milled or filed is done before hardening, or where
it was left soft; afterwards there is grinding and lapping.`,
	Rows: []string{"F8"},
	Source: []string{"high-speed steel and files cut up to some 45 HRC: common practice",
		"hardness as quenched, and what is left of it up to a temper of 400 °C: handbook, from memory"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleCutHard("hole.second"),
	Sound:     replaced(exampleCutHard("hole.second"), "    does = \"harden\"", "    does = \"harden\"\n    zone = [hole.pin]"),
	OnCut: func(k *eval.Cut, a *Ask) {
		cutAfterHardening(k.Part, k.Before, k.Step, k.Choice.By, k.Choice.Tool, k.Place("makes"), a)
	},
	OnTurn: func(k *eval.Turn, a *Ask) {
		cutAfterHardening(k.Part, k.Before, k.Step, k.Choice.By, k.Choice.Tool, k.Place("makes"), a)
	},
})

// exampleCutHard drills a second hole after the heat.
func exampleCutHard(makes string) string {
	return replaced(exampleBlock("silver steel", exampleHeats("    does = \"harden\"\n")+`
  setup "again" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 10

    operation {
      makes = `+makes+`
    }
  }
`), `  setup "drill"`, `  hole "second" {
    into     = "top"
    at       = { left = 8, front = 15 }
    diameter = 5
  }

  setup "drill"`)
}

// worksHard says whether a process or an edge cuts hardened steel.
func worksHard(by string, edge string) bool {
	switch by {
	case "grinding", "lapping", "polishing", "honing", "stoning":
		return true
	}
	switch edge {
	case "carbide", "diamond", "CBN", "ceramic":
		return true
	}
	return false
}

func cutAfterHardening(p *eval.Part, before *eval.State, st *eval.Step, by string, tool eval.Pick, at text.Place, a *Ask) {
	if st.Kind != "operation" {
		return
	}
	heated := false
	for _, t := range before.Treated {
		heated = heated || t.Does == "harden"
	}
	if !heated {
		return
	}
	for _, g := range st.Makes {
		hard := p.Hard(before, g)
		if hard == nil {
			if !p.Part.Material.Is() {
				a.Lack(p.Part.Material.Missing()...)
			} else {
				a.Clear(finding.Margin{}, "")
			}
			continue
		}
		if worksHard(by, "") {
			a.Clear(finding.Margin{}, "")
			continue
		}
		if tool.Cutter == nil && !byHandTool(by) {
			continue // that there is no tool is told by another rule
		}
		if tool.Cutter != nil && worksHard(by, tool.Cutter.Of.V) {
			a.Clear(finding.Margin{}, "")
			continue
		}
		if tool.Cutter != nil {
			if _, ok := Need(a, tool.Cutter.Of); !ok {
				continue
			}
		}
		m, _ := p.Metal()
		with := by
		if tool.Cutter != nil {
			with += " with " + tool.Path() + " of " + tool.Cutter.Of.V
		}
		f := a.Say(p.Part.Item.Path()+"+"+hard.Spot.SetUp, at,
			"%s is to be made by %s after it was hardened: quenched, %s has about %s HRC, and %s cuts up to about 45 HRC",
			g.Name(), with, p.Part.Material.V.Name, figure(m.HRC), cuts(tool.Cutter))
		f.Also = []finding.Note{{Place: hard.At, Says: "hardened here"}}
	}
}

func byHandTool(by string) bool { return by == "filing" || by == "scraping" || by == "sawing" }

func cuts(c *model.Cutter) string {
	if c == nil {
		return "a file or hand tool"
	}
	return c.Of.V
}
