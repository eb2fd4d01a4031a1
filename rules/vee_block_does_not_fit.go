package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "vee-block-does-not-fit",
	Title: "the round work is thinner or thicker than the vee block takes",
	Why: `Work that is too thin lies on the relief at the bottom of the vee, or below its edges where no clamp gets at it; too thick it
rides on the edges. Either way it rolls under the first cut.`,
	Rows:      []string{"A14", "D10"},
	Source:    []string{"look-up: the diameters that the shop declares for its block"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleInVee("[15, 50]"),
	Sound:     exampleInVee("[5, 50]"),
	OnHold:    veeBlockDoesNotFit,
})

// exampleInVee drills across a pin of 12 mm that lies in a vee block of its own.
func exampleInVee(bars string) string {
	return `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "mild steel"
  diameter = 12
  length   = 60

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  outside "body" {
    diameter = 12
  }

  hole "cross" {
    into     = outside.body
    at       = [50, 0]
    diameter = 2
  }

  setup "drill" {
    machine = mill.bench
    hold    = [v_block.own, vise.small]
    up      = "top"

    operation {
      makes = hole.cross
    }
  }
}

v_block "own" {
  bars = ` + bars + `
}
`
}

// veeBlockDoesNotFit asks for a diameter of the piece that the block takes; which one lies in it the recipe does
// not say, so one is enough.
func veeBlockDoesNotFit(h *eval.Holding, a *Ask) {
	for _, r := range h.Work.SetUp.Hold.V {
		v, ok := model.Find(h.Part.Build.Shop.VBlocks, r.Item)
		if !ok || !h.Part.Round || h.Before == nil || len(h.Before.Profile) == 0 {
			continue
		}
		bars, ok := Need(a, v.Bars)
		if !ok || len(bars) != 2 {
			continue
		}
		thin, thick := round(2*h.Before.Profile.Least()), round(2*h.Before.Profile.Most())
		var f *finding.Finding
		switch {
		case thick < bars[0]-0.0005:
			f = a.Say(v.Path()+"+"+h.Part.Label, r.At, "%s takes work of %s mm at least, and %s is %s mm at its thickest", v.Path(), figure(bars[0]), h.Part.Label, figure(thick))
			f.Margin = Room(thick, bars[0])
		case thin > bars[1]+0.0005:
			f = a.Say(v.Path()+"+"+h.Part.Label, r.At, "%s takes work of %s mm at most, and %s is %s mm at its thinnest", v.Path(), figure(bars[1]), h.Part.Label, figure(thin))
			f.Margin = Bound(thin, bars[1], "mm")
		default:
			a.Clear(finding.Margin{}, "")
			continue
		}
		f.Also = []finding.Note{{Place: v.Bars.At, Says: "the diameters that it takes"}}
	}
}
