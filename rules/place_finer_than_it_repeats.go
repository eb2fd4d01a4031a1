package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "place-finer-than-it-repeats",
	Title: "a place is wanted closer than machine and vise come back to it",
	Why: `A place that is found by the dials is off by what the machine's dials are off; in a piece that comes back into the vise
against its stop, by what that is off as well. Both are figures of the owner's. Make all that must agree in one holding, pick the
place up again by an indicator, spot it through its mate, or ask for less.`,
	Rows: []string{"E2", "E6"},
	Source: []string{"what the owner states: repeats of the machine and of the vise; both may fall the same way: their sum",
		"twice the stated error: our own limit, to be set by the shop"},
	Limits:    []string{"repeat_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Together:  true,
	Trips:     examplePlaced("±0.03", "0.04", "0.01"),
	Sound:     examplePlaced("±0.05", "0.04", "0.01"),
	OnPart:    placeFinerThanItRepeats,
})

// examplePlaced drills a hole whose place has limits, on a mill and in a vise that come back so closely.
func examplePlaced(limits, mill, vise string) string {
	s := replaced(replaced(exampleHole(), "left = 20,", `left = "20 `+limits+`",`), "vise.small", "vise.own")
	return replaced(s, "    up        = \"top\"", "    machine   = mill.own\n    up        = \"top\"") + `
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
  repeats       = ` + mill + `
}

vise "own" {
  jaw_width     = 60
  jaw_depth     = 20
  jaw_thickness = 12
  opening       = 60
  bed           = 35
  repeats       = ` + vise + `
}
`
}

// coarsePlace is how far off a place may be that any machine comes back to, mm: of less its owner's
// figure is asked for. Our own.
const coarsePlace = 0.075

func placeFinerThanItRepeats(p *eval.PartTrace, a *Ask) {
	for _, s := range p.Stretches() {
		// Of several pieces each comes against the stop; so does one that was taken out between.
		again := s.Hold.Work.SetUp.Stop.Said && p.Part.Part != nil && p.Part.Quantity.Or(1) > 1
		kept := s.Hold.Work.SetUp.Stop.Said && s.Hold.Work.SetUp.Zero.Kept.Is()
		for _, m := range s.Moments {
			switch {
			case m.Measure != nil:
				again = again || s.Hold.Work.SetUp.Stop.Said && m.Measure.Step.Step.TakenOut.V
			case m.Cut != nil:
				placedBack(m.Cut, again || kept, a)
			}
		}
	}
}

// placedBack compares the places of the holes that a cut begins with what machine and vise come back to.
func placedBack(k *eval.Cut, again bool, a *Ask) {
	m, v := k.Hold.Choice.Machine, k.Hold.Choice.Vise
	if m == nil || m.Kind != "mill" || k.Unplayed != "" || located(k) || byLines(k.Step) {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f == nil || w.Target.Sub != "" || w.Wrong != "" || len(f.Mouths) == 0 {
			continue
		}
		if fs := k.Part.Feature(k.Before, f); fs != nil && (fs.Begun || fs.Spotted) && k.Choice.By != "boring" {
			continue // its place is that of what began it
		}
		allowed, of, ok := finest(f)
		if !ok || allowed >= coarsePlace {
			continue
		}
		off, known := Need(a, m.Repeats)
		by := m.Path() + " comes back by its dials to " + mm(m.Repeats.V)
		if again && v != nil {
			back, knowsToo := Need(a, v.Repeats)
			off, known = off+back, known && knowsToo
			by += ", " + v.Path() + " with its stop to " + mm(back)
		}
		if !known {
			continue
		}
		saysPlace(k, f, allowed, off, of, by, a)
	}
}

func saysPlace(k *eval.Cut, f *eval.Form, allowed, off float64, of, by string, a *Ask) {
	share := a.Limit("repeat_share")
	has, wants := round(2*allowed), round(share*off)
	if has >= wants-0.0005 {
		a.Clear(Room(has, wants), "the place of "+f.Name()+" against what comes back to it")
		return
	}
	says := a.Say(f.Name()+"+place+"+k.Hold.Choice.Machine.Path(), k.Place("makes"), "%s may lie %s off %s to either side, and %s: usually the room for it is at least %s times that (repeat_share)",
		f.Name(), mm(round(allowed)), of, by, figure(share))
	says.Margin, says.Spots[0] = Room(has, wants), k.Spot
	note := func(fact model.Known[float64], words string) {
		if fact.Is() {
			says.Also = append(says.Also, finding.Note{Place: fact.At, Says: words})
		}
	}
	note(k.Hold.Choice.Machine.Repeats, "how closely it comes back")
	if v := k.Hold.Choice.Vise; v != nil && off > k.Hold.Choice.Machine.Repeats.V {
		note(v.Repeats, "how closely a piece comes back in it")
	}
}
