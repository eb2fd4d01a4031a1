package rules

import (
	"math"
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "crossed-out-before-teeth",
	Title: "a wheel is crossed out before its teeth are cut",
	Why: `Between its arms a crossed-out rim springs away under the cutter, and the teeth come out uneven. The teeth are cut while the
wheel is a whole disc; the arms are sawn and filed afterwards.`,
	Rows:      []string{"F14"},
	Source:    []string{"order in use: common practice of clockmakers"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleCrossed("cross", "cut"),
	Sound:     exampleCrossed("cut", "cross"),
	OnPart:    crossedOutBeforeTeeth,
})

// exampleCrossed is the wheel of the examples with four windows, two set-ups in the order given.
func exampleCrossed(first, second string) string {
	setups := map[string]string{"cut": `
  setup "cut" {
    hold    = dividing_head.own
    carries = chuck.three
    end     = "left"
    grip    = 12

    operation {
      makes = teeth.cut
    }
  }
`, "cross": `
  setup "cross" {
    hold    = dividing_head.own
    carries = chuck.three
    axis    = "upright"
    end     = "left"
    grip    = 12

    operation {
      makes = pocket.window
    }
  }
`}
	whole := exampleWheel("", "", "", "")
	head, _, _ := strings.Cut(whole, `  setup "cut" {`)
	_, tail, _ := strings.Cut(whole, `gear_cutter "half" {`)
	return head + `  pocket "window" {
    into   = "right"
    from   = [9, -2]
    to     = [13, 2]
    depth  = 4
    around = { count = 4, pcd = 22 }
  }
` + setups[first] + setups[second] + "}\n\ngear_cutter \"half\" {" + tail
}

func crossedOutBeforeTeeth(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		if f.Tooth == nil {
			continue
		}
		before := map[*eval.Form]*eval.Step{}
		cut := false
		for _, w := range p.Part.Work {
			for _, st := range w.Steps {
				for _, t := range st.Makes {
					switch {
					case t.Form == f:
						cut = true
					case t.Form != nil && !cut && window(t.Form) && before[t.Form] == nil:
						before[t.Form] = st
					}
				}
			}
		}
		if !cut {
			continue
		}
		for _, g := range p.Part.Forms {
			st := before[g]
			if st == nil {
				continue
			}
			m := a.Say(p.Part.Label+"."+g.Name()+"+"+f.Name(), st.Step.Item.At, "%s is made before %s are cut: the rim springs between its arms; cut the teeth first", g.Name(), f.Name())
			m.Spots = []finding.Spot{st.Spot}
			m.Also = []finding.Note{{Place: f.Feature.Item.At, Says: "the teeth"}}
		}
		a.Clear(finding.Margin{}, "")
	}
}

// window says whether a feature is one of several openings between the arms of a wheel. Holes are, where
// the metal between them is less than they take away: a ring of screw holes is not.
func window(f *eval.Form) bool {
	k := f.Feature
	if !k.Around.Said || k.Around.Count.V < 3 {
		return false
	}
	switch k.Kind {
	case "pocket", "outline":
		return true
	case "hole", "bore":
		return f.Diameter.Is() && k.Around.Pcd.Is() && 2*float64(k.Around.Count.V)*f.Diameter.V > math.Pi*k.Around.Pcd.V.Nominal
	}
	return false
}
