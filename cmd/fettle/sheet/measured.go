package sheet

import (
	"math"
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// gauges says what is wrung together where a size is tried with slip gauges.
func gauges(me *eval.Measurement, put func(a, b string)) {
	g, ok := me.Gauged()
	if !ok || me.With != nil {
		return
	}
	switch {
	case !g.Made || g.Bore:
		put("with", g.Set.Path())
	case !me.Limits.Is():
		put("gauges", g.Least.Words())
	case me.Inside:
		put("goes in", g.Least.Words())
		put("does not go in", g.Most.Words())
	default:
		put("gauges for the least", g.Least.Words())
		put("gauges for the most", g.Most.Words())
	}
}

func (m *maker) measure(me *eval.Measurement) {
	b := Block{Kind: Tick, Words: "Measure " + me.Name}
	if me.Tried {
		b.Words = "Try " + me.Name
	}
	put := putting(&b.Rows)
	if me.Thread.Diameter > 0 {
		put("thread", me.Thread.String())
	}
	if me.With != nil {
		put("with", me.With.Path())
	}
	if me.Size.Written != "" || me.Size.Nominal > 0 {
		put("as drawn", written(me.Size))
	}
	if me.Limits.Is() {
		unit := " mm"
		if me.Angle {
			unit = " degrees"
		}
		put("limits", limits(me.Limits)+unit)
	}
	gauges(me, put)
	if st := me.Step.Step; st != nil {
		if a := st.Attr("at"); a != nil {
			put("where", said(a.Value, me.Spot.Part))
		} else {
			put("where", clear(me))
		}
		if st.TakenOut.Is() && st.TakenOut.V {
			put("first", "take the piece out; the zero is lost")
		}
		put("note", remark(st.Item))
	}
	if !me.Tried {
		b.Box = "as made"
		if me.Angle {
			b.Unit = "degrees"
		}
	}
	m.page.add(b)
	m.mark(me.Spot.String() + " measure")
	m.said(me.Spot, me.Spot.Step)
	for _, q := range m.c.Result.Questions {
		if q.Spot == me.Spot {
			m.page.add(Block{Kind: Caution, Words: sentence(q.Asks)})
		}
	}
}

// clear says where an outside size is taken clear of burrs, where there are some; "" where there are none.
func clear(me *eval.Measurement) string {
	if !me.Clear.Is() || !me.Clear.V.Found || len(me.State.Burrs) == 0 || me.Faces[0] == model.NoFace {
		return ""
	}
	var at []string
	for a, from := range []model.Face{model.Left, model.Front, model.Bottom} {
		if a != me.Faces[0].Axis() {
			at = append(at, model.Figure(math.Round(me.Clear.V.At[a]))+" mm from "+from.String())
		}
	}
	return "at about " + strings.Join(at, " and ") + ", clear of burrs"
}
