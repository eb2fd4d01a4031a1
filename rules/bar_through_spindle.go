package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "bar-through-spindle",
	Title: "the bar is thicker than the bore that it should pass through",
	Why: `Bar that reaches behind the jaws must go through the chuck, and farther back through the spindle. Thicker bar has
to be cut to a length first, which wants a piece of its own from the rack.`,
	Rows:      []string{"A8"},
	Source:    []string{"geometry; the jaws are taken to stand out of the chuck by their gripping length"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     longBar(30, "30"),
	Sound:     longBar(25, "25"),
	OnChuck:   barThroughSpindle,
})

// longBar is a piece still one with a bar of 500 mm.
func longBar(diameter float64, of string) string {
	s := replaced(exampleWaist(replaced(inThree, "grip    = 20", "stick_out = 65"), ""), "over = { left = 1, right = 1, outside = 1 }", "stock = stock.own\n    bar   = true")
	return s + `
stock "own" {
  material = "mild steel"
  round    = ` + of + `
  lengths  = [500]
  skin     = "drawn"
}
`
}

func barThroughSpindle(h *eval.Chucking, a *Ask) {
	c, m := h.Choice.Chuck, h.Choice.Machine
	if c == nil || m == nil {
		return
	}
	jaw, ok := Need(a, c.JawLength)
	if !ok || h.Held <= jaw+0.0005 {
		return
	}
	d := round(2 * h.Within(h.Before.Profile, -h.Held, -jaw).Most())
	open := h.Part.Blank.BarOpen // how far it reaches behind the jaws is not known
	if bore, ok := Need(a, c.Bore); ok && d > bore+0.0005 {
		if open != nil {
			a.Lack(open...)
			return
		}
		tooThick(h, a, c.Path(), d, bore, jaw)
		return
	}
	front, ok := Need(a, h.Front())
	if !ok || open == nil && h.Held <= front+0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	bore, ok := Need(a, m.Bore)
	switch {
	case !ok:
	case d > bore+0.0005 && open != nil:
		a.Lack(open...)
	case d > bore+0.0005:
		tooThick(h, a, m.Path(), d, bore, front)
	default:
		a.Clear(Bound(d, bore, "mm"), "the bar through "+m.Path())
	}
}

func tooThick(h *eval.Chucking, a *Ask, path string, d, bore, room float64) {
	f := a.Say(path+".bore+"+h.Part.Label, h.Place("grip", "stick_out", "hold"), "%s mm of %s reach behind the jaws with a diameter of %s mm, and %s has a bore of %s; there is room for %s mm behind the jaw face: saw the piece off first",
		tenth(h.Held), h.Part.Label, figure(d), path, mm(bore), tenth(room))
	f.Margin = Bound(d, bore, "mm")
}
