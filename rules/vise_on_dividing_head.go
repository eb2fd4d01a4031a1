package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "vise-on-dividing-head",
	Title: "a vise is to sit on a dividing head, which has nothing that a vise goes on",
	Why: `The nose of a dividing head takes a thread or a taper: a chuck, a collet, a mandrel, a faceplate. A vise has neither, and stands
on a foot with slots for bolts: it goes on a table, on a rotary table, or bolted to a faceplate.`,
	Rows:      []string{"B7"},
	Source:    []string{"common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleViseOn("[vise.small, dividing_head.own]", "end", "right"),
	Sound:     exampleViseOn("[chuck.four, dividing_head.own]", "end", "right"),
	OnPart:    viseOnDividingHead,
})

// exampleViseOn drills across a block that is held so.
func exampleViseOn(hold, attr, face string) string {
	return `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 40
  width    = 20
  height   = 15

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "cross" {
    into     = "top"
    at       = [12, 10]
    diameter = 5
  }

  setup "drill" {
    machine = mill.bench
    hold    = ` + hold + `
    up      = "top"
    ` + attr + ` = "` + face + `"

    operation {
      makes = hole.cross
    }
  }
}

dividing_head "own" {
  ratio         = 40
  direct        = [24]
  centre_height = 80
  nose          = "M39x4"
  stands_up     = true
}

rotary_table "own" {
  ratio    = 90
  height   = 60
  diameter = 150
}
`
}

func viseOnDividingHead(p *eval.PartTrace, a *Ask) {
	shop := &p.Part.Build.Shop
	for _, w := range p.Part.Work {
		s := w.SetUp
		if s == nil {
			continue
		}
		var vise *model.Vise
		var head *model.DividingHead
		between, at := false, s.Hold.At
		if s.Carries.Is() {
			at = s.Carries.At
		}
		for _, r := range append(append([]model.Ref{}, s.Carries.V...), s.Hold.V...) {
			if v, ok := model.Find(shop.Vises, r.Item); ok {
				vise = v
			}
			if d, ok := model.Find(shop.Heads, r.Item); ok {
				head = d
			}
			between = between || r.Item != nil && r.Item.Kind == "faceplate"
		}
		switch {
		case head == nil:
		case vise == nil || between:
			a.Clear(finding.Margin{}, "")
		default:
			a.Say(s.Path()+"+"+vise.Path(), at, "%s has neither thread nor taper that goes on the nose of %s: hold the piece in a chuck, a collet or on a mandrel there, or put the vise on a rotary table", vise.Path(), head.Path())
		}
	}
}
