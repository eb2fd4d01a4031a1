package choose

import (
	"math"

	"fettle/eval"
	"fettle/schema/model"
)

// lean is how a piece leans in its holding: as written, else, between the jaws of a vise, as the
// first tilted hole or milled bevel of the set-up wants it. False where it is written and not known.
func (c *chooser) lean(p *eval.Part, w *eval.Work, h *eval.HoldChoice) (eval.Lean, bool) {
	s := w.SetUp
	turned := s.Turned.Or(0)
	if s.Tilt.Said {
		by, ok := s.Tilt.By.Get()
		about, ok2 := s.Tilt.About.Get()
		axis, ok3 := map[string]int{"x": 0, "y": 1, "z": 2}[about]
		return eval.Lean{About: axis, By: by}.FromTable(turned), ok && ok2 && ok3
	}
	for _, by := range p.Turns(w, h.Up, h.Back) {
		if h.Divided == nil && math.Abs(by) > 1e-6 {
			return eval.Lean{About: 2, By: by}, true
		}
	}
	if h.Vise == nil {
		return eval.Lean{}, true
	}
	for _, dir := range p.Leans(w) {
		if l, ok := eval.ToLookUp(h.Up, h.Back, dir); ok && l.About == 1 && math.Abs(l.By) < 80 {
			return l, true
		}
	}
	return eval.Lean{}, true
}

// sineChoice tells what stands under one roller of the sine bar that a tilt is set by.
func sineChoice(h *eval.Holding) (item, why string, ok bool) {
	s, ok := h.SineSet()
	if !ok {
		return "", "", false
	}
	item = model.Figure(s.Wants) + " mm under one roller of " + s.Bar.Path()
	if s.Made {
		item += ": " + s.Stack.Words()
	}
	return item, "centres times the sine of the angle", true
}

// leanChoice tells how the piece leans where no tilt is written.
func leanChoice(h *eval.Holding) (item, why string, ok bool) {
	l := h.Choice.Lean
	if l.By == 0 || h.Work.SetUp.Tilt.Said {
		return "", "", false
	}
	l = l.OnTable(h.Turned)
	why = "what is made looks up then"
	if l.About == 2 {
		why = "what is made runs along a way of the table then"
	}
	return model.Figure(math.Round(l.By*1e4)/1e4) + " deg about " + "xyz"[l.About:l.About+1], why, true
}
