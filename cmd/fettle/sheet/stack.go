package sheet

import (
	"math"
	"strconv"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// stack stands the tool where it comes nearest to something, as deep as it goes there, and cuts
// the piece there.
func (m *milled) stack() {
	k := m.k
	at, ok := deepest(k)
	if !ok {
		m.s.Panes[elevation].Cut = false
		return
	}
	if len(m.near) > 0 && (m.near[0].mm < 0 || m.near[0].tool[2] < at[2]+1e-6) {
		at = m.near[0].tool
	}
	m.tool = at
	m.s.Panes[elevation].At = at
	if p := &m.s.Panes[elevation]; !m.through(p.View, at) {
		p.Cut, p.At = false, solid.Vec{}
	}
	up, _ := upright(m.h, k)
	along := up.Inverse().Dir(solid.Vec{0, 0, 1})
	for i := range k.Stack.Bodies {
		b := &k.Stack.Bodies[i]
		m.lack(b.Lacks)
		t := b.Least
		if !(t.Z1 > t.Z0) || max(t.R0, t.R1) < model.Grain*2 {
			continue
		}
		from, to := at.Add(along.Times(t.Z0)), at.Add(along.Times(t.Z1))
		thing := sketch.Thing{Name: short(b.Name), Tool: true, Shape: solid.Cone(from, to, t.R0, t.R1), In: []int{elevation}}
		if b.Name == "the cutter" {
			thing.Name = k.Choice.Tool.Path()
		}
		if h := k.Stack.Holder; h != nil && b.Item == h.Item && h.Kind != "arbor" && k.Stack.OutKnown() {
			thing.Name += ", tool " + model.Figure(k.Stack.Out.V) + " out"
		}
		if t.Z1-t.Z0 <= 2*model.Grain {
			thing.Name = "" // a collar of which no height is known
		}
		if b.Cuts || t.Z0 < 0 {
			thing.In = []int{elevation, plan}
		}
		m.s.Things = append(m.s.Things, thing)
		m.showTool(along, from, to, max(t.R0, t.R1), b.Cuts)
	}
	for i := range m.near {
		m.pass(&m.near[i])
	}
}

// through says whether a plane of section through a place goes through the piece.
func (m *milled) through(v sketch.View, at solid.Vec) bool {
	for a := range 3 {
		if math.Abs(v.Towards[a]) > 0.5 && (at[a] < m.s.Lo[a]+model.Grain || at[a] > m.s.Hi[a]-model.Grain) {
			return false
		}
	}
	return true
}

// showTool takes one piece of the stack into the views, as far as it is near the work.
func (m *milled) showTool(along, from, to solid.Vec, r float64, cuts bool) {
	over := m.s.Hi[2]
	if along[1] > 0.5 {
		over = m.s.Hi[1]
	}
	top := over + toolShown
	if f := from.Dot(along); !cuts && f > top-6 && f < over+holderShown {
		top = f + 6
	}
	if from.Dot(along) > top {
		return
	}
	l := to.Sub(from).Dot(along)
	end := from.Add(along.Times(min(l, max(top-from.Dot(along), 7))))
	for i := range m.s.Panes {
		if i != elevation && !cuts {
			continue
		}
		p := &m.s.Panes[i]
		shown := min(r, max(30, 1.2*(m.s.Hi[1]-m.s.Lo[1])))
		for _, v := range []solid.Vec{from, end} {
			for a := range 3 {
				if math.Abs(along[a]) < 0.5 {
					lo, hi := v, v
					lo[a] -= shown
					hi[a] += shown
					reach(p, lo)
					reach(p, hi)
				} else if i == elevation {
					reach(p, v)
				}
			}
		}
	}
}

// ways draws the ways of the tool's middle in the view that shows them, in order.
func (m *milled) ways() {
	k := m.k
	pane := plan
	if len(m.s.Panes) > fromEnd {
		m.turned()
	}
	places := m.places()
	for i, pl := range places {
		w := sketch.Way{From: pl.from, To: pl.to}
		if len(places) > 1 && (!isRuled(pl.work) || i == 0 || i == len(places)-1) {
			w.Number = strconv.Itoa(i + 1)
		}
		m.s.Panes[pane].Ways = append(m.s.Panes[pane].Ways, w)
	}
	for _, w := range k.Works {
		for _, v := range w.Moves {
			for _, q := range []solid.Vec{v.From, v.To} {
				q[2] = min(max(q[2], m.s.Lo[2]), m.s.Hi[2])
				reach(&m.s.Panes[plan], q)
			}
		}
	}
}

// turned draws on the end of a piece on a dividing head where each place that it is turned to lies.
func (m *milled) turned() {
	k := m.k
	if len(k.Works) < 2 || m.turn == nil {
		m.divided()
		return
	}
	p := &m.s.Panes[fromEnd]
	n := 0
	for i := range k.Works {
		w := &k.Works[i]
		if w.Turn == nil || len(w.Moves) == 0 {
			continue
		}
		n++
		on := func(v solid.Vec) solid.Vec {
			return m.h.Pose.Point(m.turn.Point(w.Turn.Inverse().Point(m.h.Pose.Inverse().Point(v))))
		}
		v := w.Moves[len(w.Moves)-1]
		a, b := on(v.From), on(v.To)
		if math.Abs(a[1]-b[1])+math.Abs(a[2]-b[2]) < 0.5 { // along the axis: a mark where the tool is
			a = b
		}
		p.Ways = append(p.Ways, sketch.Way{From: a, To: b, Number: strconv.Itoa(n)})
		reach(p, a)
		reach(p, b)
	}
}

// mostDivided is how many places round a piece are drawn at most.
const mostDivided = 72

// divided draws the places that one working makes all round, from where the tool stands: short lines
// outside of the piece. Which way it is turned on is for the running table and the one who turns.
func (m *milled) divided() {
	d, ok := m.h.Divider()
	if !ok {
		return
	}
	p := &m.s.Panes[fromEnd]
	for _, s := range eval.Settings(d, m.k.Step) {
		n := int(s.Division.Count)
		if n < 2 || n > mostDivided {
			continue
		}
		axis, _ := m.h.Line()
		r := max(m.s.Hi[1]-axis[1], m.s.Hi[2]-axis[2]) + 1.5
		start := math.Atan2(m.tool[2]-axis[2], m.tool[1]-axis[1])
		switch {
		case len(m.k.Works) > 0 && len(m.k.Works[0].Moves) == 0 && !m.k.LevelSpindle(): // a leaning cutter, in front
			start = math.Pi
		case len(m.k.Works) > 0 && len(m.k.Works[0].Moves) == 0, math.Hypot(m.tool[2]-axis[2], m.tool[1]-axis[1]) < 0.5:
			start = math.Pi / 2
		}
		for i := range n {
			sin, cos := math.Sincos(start + 2*math.Pi*float64(i)/float64(n))
			at := func(r float64) solid.Vec { return solid.Vec{m.s.Hi[0], axis[1] + r*cos, axis[2] + r*sin} }
			w := sketch.Way{From: at(r + 4), To: at(r), Plain: i > 0}
			if i == 0 {
				w.Number = "1"
			}
			p.Ways = append(p.Ways, w)
			reach(p, at(r+4))
		}
		p.Says += ", " + strconv.Itoa(n) + " places"
		return
	}
}
