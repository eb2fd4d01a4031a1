package sheet

import (
	"fmt"
	"math"
	"strings"

	"fettle/eval"
	"fettle/eval/reckon/screwcut"
	"fettle/schema/model"
)

// turn puts one operation on a lathe on the page.
func (m *maker) turn(g *group, k *eval.Turn, n, with int) {
	b := Block{Kind: Tick, Words: fmt.Sprintf("%d  %s: %s", n, k.Choice.By, makes(k.Step))}
	put := putting(&b.Rows)
	if m.unplayed(k.Unplayed, &b, k.Spot) {
		return
	}
	letCool(k.Step, put)
	m.tool(k.Choice.Tool, missing(k.Choice.NoTool, k.Choice.By, k.Step), k.Choice.Mounts, put)
	if k.Choice.Post != nil {
		put("in", k.Choice.Post.Path())
	}
	byHand(&m.c.Build.Shop, k.Choice.Tool, k.Choice.ByHand, put)
	put("speed", speed(k.Choice.Speed, k.Choice.Reverse))
	passes, cuts := k.Passes()
	oil, _ := k.Oil()
	feeding(k.Feeding(), passes, cuts, oil, put)
	if at := k.Step.Step.Starts; at.Is() {
		put("begins at", at.V.Path()+", as written")
	}
	if t, ok := k.Train(); ok {
		put("change wheels", trainWords(t))
	}
	slide(k, put)
	put("turned on by", strings.Join(k.Choice.Index, "; "))
	for i := range k.Works {
		turning(k, &k.Works[i], put)
		m.slides(k, &k.Works[i], put)
		if r, ok := roomOf(k, &k.Works[i]); ok && r.Room <= closeMost {
			put("comes nearest", r.line(k))
		}
	}
	tables := m.ruledTurn(k, put)
	threads(k.AsCut().Works, put)
	final := map[*eval.Form]bool{}
	for i := range k.Works {
		final[k.Works[i].Target.Form] = k.Works[i].Final
	}
	m.target(k.Step, final, put, &b)
	m.drawnWith(n, with, put)
	m.notes(k.Step, put)
	for i := range k.Works {
		if w := &k.Works[i]; w.Wrong == "" {
			chips(k.Choice.By, k.MaterialGroup(), w.Depth, 2*w.R0, put)
			break // the others of one operation are alike
		}
	}
	m.page.add(b)
	m.mark(k.Spot.String())
	if n == with {
		m.picture(g, n, "")
	}
	m.page.add(tables...)
	m.said(k.Spot, k.Spot.Step)
}

func turning(k *eval.Turn, w *eval.Turning, put func(a, b string)) {
	if w.Wrong != "" {
		return
	}
	f, by := w.Target.Form, k.Choice.By
	datum, d := k.Hold.Datum()
	along := func(u float64) string { return model.Figure(tidy(u - d)) }
	switch {
	case f != nil && f.EndRing != nil:
		put("sunk into the end", model.Figure(tidy(w.Depth))+" mm deep, from ⌀"+model.Figure(tidy(2*f.EndRing.Inner))+" to ⌀"+model.Figure(tidy(2*f.EndRing.Outer))+" mm")
	case f != nil && f.KeyBore != nil:
		put("along the bore", model.Figure(tidy(w.X1-w.X0))+" mm in strokes of the saddle, the spindle held from turning")
		put("deep", model.Figure(tidy(w.Off))+" mm from the round of the bore, "+model.Figure(tidy(f.Width))+" mm wide")
	case f != nil && f.Tooth != nil:
		planedTeeth(w, put)
	case f != nil && f.Scale != nil:
		put("from "+datum, along(w.U0)+" to "+along(w.U1)+" mm")
	case w.Depth > 0:
		d := model.Figure(w.Depth) + " mm of full diameter from the finished end"
		if w.Point > 0 {
			d += fmt.Sprintf(", and %s mm of its %s below", model.Figure(w.Point), leading(by))
		}
		put("deep", d)
	case by == "facing":
		put("to", along(w.U0)+" mm from "+datum)
		put("comes off", model.Figure(math.Abs(w.U1-w.U0))+" mm of the length")
	case by == "parting":
		at := along(w.U0)
		if u := along(w.U1); u != at {
			at += " to " + u
		}
		put("at", at+" mm from "+datum)
	case math.Abs(w.U1-w.U0) < 1e-9:
		put("at", along(w.U0)+" mm from "+datum)
	default:
		put("from "+datum, along(w.U0)+" to "+along(w.U1)+" mm")
		if w.R0 == w.R1 {
			put("leaves", "⌀"+model.Figure(2*w.R0)+" mm")
		} else {
			put("leaves", "⌀"+model.Figure(2*w.R0)+" to ⌀"+model.Figure(2*w.R1)+" mm")
		}
		if w.Off > 0 {
			put("comes off", model.Figure(w.Off)+" mm on the radius at most")
		}
	}
}

// leading is what the end of a tool below full diameter is called.
func leading(by string) string {
	if by == "drilling" || by == "spotting" {
		return "point"
	}
	return "lead"
}

// trainWords says a train from the spindle to the lead screw, and how far off it is.
func trainWords(t screwcut.Train) string {
	if t.Exact {
		return t.String() + " (drivers over driven), exact"
	}
	return fmt.Sprintf("%s (drivers over driven): cuts %s mm, %s parts in a million off", t, model.Figure(t.Lead), model.Figure(math.Round(math.Abs(t.PPM))))
}
