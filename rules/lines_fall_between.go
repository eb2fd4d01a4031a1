package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "lines-fall-between",
	Title: "the lines of a straight scale fall between those of the dial that sets them",
	Why: `A scale of 1/10 in ruled by a dial of 0.05 mm has none of its lines where the dial has one. Each place is set to the nearest line of
the dial, counted from the first: so nothing adds up, but a space comes out too wide or too narrow by up to a line of the dial. A
dial or a readout in the scale's own unit, or one that is finer, is right.`,
	Rows:      []string{"I3", "H13"},
	Source:    []string{"rounding to the lines of a dial: arithmetic", "places are set to the nearest line, and not between: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Mounting | Tool,
	Trips:     exampleRule("\"2.54 ±0.01\"", "0.05", ""),
	Sound:     exampleRule("\"2.5 ±0.01\"", "0.05", ""),
	OnCut:     linesFallBetween,
	OnTurn:    linesOfLathe,
})

// exampleRule is a flat bar with a straight scale of 20 divisions of a size on its top, ruled on a mill of
// which the dial along the table has such lines; more is written into the scale.
func exampleRule(spacing, line, more string) string {
	return `recipe "example" {
  units = "mm"
}

part "rule" {
  material = "brass"
  length   = 58
  width    = 20
  height   = 10

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  graduations "scale" {
    on      = "top"
    from    = "front"
    count   = 20
    spacing = ` + spacing + `
    zero_at = { left = 3 }
    lines   = { "1" = 3, "5" = 4, "10" = 5 }
    ` + more + `
  }

  setup "rule" {
    machine   = mill.own
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 14

    operation {
      makes = graduations.scale
      tool  = threading_tool.point
    }
  }
}

threading_tool "point" {
  angle = 60
  shank = 6
  of    = "HSS"
}

mill "own" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [100, 200, 350, 600, 1000, 1800]
  travel        = [300, 140, 200]
  nose_to_table = [40, 300]
  throat        = 150
  column        = "dovetail"
  quill         = 40
  nose_diameter = 50
  backlash      = 0.15
  dials         = { x = { division = ` + line + `, turn = 5 } }
}
`
}

func linesFallBetween(k *eval.Cut, a *Ask) {
	for _, t := range k.Step.Makes {
		if r, ok := k.Ruling(t.Form); ok && t.Form.Rack == nil { // of a rack the sheet says it
			fallsBetween(&r, t.Form, k.Hold.Choice.Machine.Path(), k.Place("makes"), a)
		}
	}
}

func linesOfLathe(k *eval.Turn, a *Ask) {
	for _, t := range k.Step.Makes {
		if r, ok := k.Ruling(t.Form); ok {
			fallsBetween(&r, t.Form, k.Lathe().Path(), k.Place("makes"), a)
		}
	}
}

func fallsBetween(r *eval.Ruling, form *eval.Form, machine string, at text.Place, a *Ask) {
	a.Lack(r.Lacks...)
	if len(r.Lacks) > 0 {
		return
	}
	if r.Step < 1e-6 {
		a.Clear(finding.Margin{}, "")
		return
	}
	size := form.Feature.Spacing
	lim, ok := eval.LimitsOf(size.V, a.build.Recipe.General, form.Feature.Item, "spacing").Get()
	if !ok {
		a.Lack(model.Lack{Fact: form.Feature.Path() + ".spacing (its limits)", At: size.At})
		return
	}
	room := min(lim.Hi-size.V.Nominal, size.V.Nominal-lim.Lo)
	if r.Step > room+1e-6 {
		f := a.Say(machine+"+"+form.Name()+"+dial", at,
			"a line of %s stands for %s, and the lines of %s stand %s apart: set to the nearest line each, the space before the %s is %s off, and %s is allowed",
			r.Readby, mm(r.Line), form.Name(), mm(size.V.Nominal), nth(r.At+1), mm(round(r.Step)), mm(round(room)))
		f.Margin = Bound(round(r.Step), round(room), "mm")
		f.Also = []finding.Note{{Place: size.At, Says: "the spacing and its limits"}}
		return
	}
	a.Clear(Bound(round(r.Step), round(room), "mm"), "the spaces of "+form.Name())
}
