package sheet

import (
	"fmt"
	"math"

	"fettle/eval"
	"fettle/eval/reckon/cutting"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// feeding says how an operation is fed, in how many passes, and what goes on the cut.
func feeding(f eval.Feeding, p eval.Passes, cuts bool, oil string, put func(a, b string)) {
	put("feed", fed(f))
	if cuts {
		put("cut", cutIn(p))
	} else if p.Said.Is() {
		put("cut", model.Figure(p.Said.V)+" mm a pass, as written")
	}
	put("cutting fluid", oil)
}

// fed says the feed: as written, else by hand with what is printed for it; beside either what that is in a
// minute.
func fed(f eval.Feeding) string {
	each, kind := "mm/rev", drawing.PerTurn
	if f.Printed.PerTooth {
		each, kind = "mm/tooth", drawing.PerTooth
	}
	printed := ""
	if !f.Printed.None() {
		printed = figures(f.Printed.Lo, f.Printed.Hi) + " " + each
	}
	said, ok := f.Said.Get()
	switch {
	case f.Lead > 0 && !ok:
		return ""
	case ok && said.Kind != drawing.ByHand:
		s := said.Written + ", as written"
		if v, ok := cutting.PerMinute(said, f.Revs, f.Teeth); ok && said.Kind != drawing.PerMinute {
			s += ": " + model.Figure(math.Round(v)) + " mm/min"
		}
		if printed != "" {
			s += "; printed are " + printed
		}
		return s
	case printed == "":
		if ok {
			return "by hand"
		}
		return ""
	}
	s := "by hand, " + printed
	lo, ok1 := cutting.PerMinute(drawing.Feed{Kind: kind, Rate: f.Printed.Lo}, f.Revs, f.Teeth)
	hi, ok2 := cutting.PerMinute(drawing.Feed{Kind: kind, Rate: f.Printed.Hi}, f.Revs, f.Teeth)
	if ok1 && ok2 {
		s += ": " + figures(math.Round(lo), math.Round(hi)) + " mm/min"
	}
	return s
}

// figures says a band, to a thousandth.
func figures(lo, hi float64) string {
	a, b := model.Figure(math.Round(lo*1000)/1000), model.Figure(math.Round(hi*1000)/1000)
	if a == b {
		return a
	}
	return a + " to " + b
}

// cutIn says how a depth is taken.
func cutIn(p eval.Passes) string {
	n := p.Count()
	if n == 0 {
		return ""
	}
	s := "1 pass"
	if n > 1 {
		s = fmt.Sprintf("%d passes", n)
	}
	s += " of " + figures(math.Min(p.Each(), p.Deep), math.Min(p.Each(), p.Deep)) + " mm"
	if n > 1 {
		s += " at most, for " + figures(p.Deep, p.Deep) + " mm in all"
	}
	if p.Said.Is() {
		s += ", as written"
	}
	return s
}

// begins says at which side the cut begins: as written, else where the work is fed against the teeth.
func begins(k *eval.Cut, put func(a, b string)) {
	side, ok := k.Begins()
	switch at := k.Starts(); {
	case at == model.NoFace && ok && !k.Choice.Climb:
		put("begins at", side.String()+", fed against the teeth")
	case at != model.NoFace && ok && at == side.Opposite():
		put("begins at", at.String()+", as written: FED WITH THE TEETH")
	case at != model.NoFace:
		put("begins at", at.String()+", as written")
	}
}
