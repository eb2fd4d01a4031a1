package sheet

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
)

// The dry run says how near each round piece of the tool comes to each thing on all its way. Here
// the place of the way is found where that happens, and the two places that are so near to each
// other, so that the figure can be drawn.

// close is one such figure with its places.
type close struct {
	body  *eval.Body
	thing string
	mm    float64     // the dry run's figure; below 0 they meet
	tool  solid.Vec   // height 0 of the stack then
	a, b  solid.Vec   // on the tool and on the thing; where they meet both alike
	least bool        // a lower bound
	turn  *solid.Pose // how the piece is turned about its axis then; nil where it is not
}

// The figures that are drawn: as many, and up to so many mm.
const (
	closeShown = 3
	closeMost  = 40.0
	closeToo   = 10.0 // of the second and third
)

// closest lists what comes nearest, at most one figure for each thing that stands there, and all
// meetings. What hangs on facts that lack is left out.
func closest(h *eval.Holding, k *eval.Cut) (out []close) {
	to, ok := upright(h, k)
	if !ok {
		return nil
	}
	near := slices.Clone(k.Near)
	slices.SortStableFunc(near, func(a, b eval.Near) int { return cmp.Compare(a.Sure, b.Sure) })
	seen := map[string]bool{}
	for _, n := range near {
		switch {
		case n.Sure >= 0 && (len(out) >= closeShown || seen[n.Thing] || n.Sure > closeMost || len(out) > 0 && n.Sure > closeToo || n.Worst < n.Sure || n.Piece && n.Sure > 4.9),
			n.Thing == "the table" && n.Sure > 0:
			continue
		}
		c := close{thing: n.Thing, mm: n.Sure, least: n.Piece && n.Sure >= 0}
		if c.body = bodyOf(k, n); c.body == nil || !c.find(h, k, n, to) {
			continue
		}
		seen[n.Thing] = true
		out = append(out, c)
	}
	return out
}

// upright is the pose that stands the spindle upright; false where the holding is turned under a
// level one.
func upright(h *eval.Holding, k *eval.Cut) (solid.Pose, bool) {
	if !k.LevelSpindle() {
		return solid.Still(), true
	}
	return solid.Attitude(solid.Vec{0, 1, 0}, solid.Vec{0, 0, -1}), h.Turned == 0
}

func bodyOf(k *eval.Cut, n eval.Near) *eval.Body {
	for i := range k.Stack.Bodies {
		if b := &k.Stack.Bodies[i]; b.Name == n.Body && b.Item == n.BodyItem {
			return b
		}
	}
	return nil
}

// find looks along all ways for the place where the figure holds.
func (c *close) find(h *eval.Holding, k *eval.Cut, n eval.Near, to solid.Pose) bool {
	best := math.Inf(1)
	for i := range k.Works {
		w := &k.Works[i]
		gap := c.gapTo(h, k, w, n, to)
		if gap == nil {
			return false
		}
		for _, m := range w.Moves {
			at, g := soonest(m, to, gap, shown(k))
			if g.Gap < best-1e-4 || g.Gap < best+1e-4 && at[2] < c.tool[2]-1e-4 {
				best, c.tool, c.turn = min(best, g.Gap), at, w.Turn
				c.a, c.b = c.places(to.Point(at), g)
				back := to.Inverse()
				c.a, c.b = back.Point(c.a), back.Point(c.b)
			}
		}
	}
	return !math.IsInf(best, 1)
}

// gapTo gives the gap of the body, stood at a place, to the thing, in the frame of the spindle.
func (c *close) gapTo(h *eval.Holding, k *eval.Cut, w *eval.Working, n eval.Near, to solid.Pose) func(solid.Vec) solid.Near {
	if n.Piece {
		piece := k.Left().Piece
		if w.Turn != nil && h.Choice.Divided != nil {
			piece = piece.Placed(*w.Turn)
		}
		piece = piece.Placed(h.Pose).Placed(to)
		return func(v solid.Vec) solid.Near { return piece.Gap(c.body.Least, solid.Move{From: v, To: v}) }
	}
	for i := range h.Obstacles {
		if o := &h.Obstacles[i]; o.Name == n.Thing && o.Item == n.ThingItem {
			shape := o.Least.Placed(to)
			return func(v solid.Vec) solid.Near { return solid.Gap(c.body.Least, solid.Move{From: v, To: v}, shape) }
		}
	}
	return nil
}

// soonest gives the place of a way where a gap is least: the distance of two convex bodies is
// convex along it. Of places alike the deeper end counts, of a level way what lies at a share of it.
func soonest(m solid.Move, to solid.Pose, gap func(solid.Vec) solid.Near, alike float64) (solid.Vec, solid.Near) {
	at := func(t float64) solid.Vec { return m.From.Add(m.To.Sub(m.From).Times(t)) }
	f := func(t float64) solid.Near { return gap(to.Point(at(t))) }
	if m.From == m.To {
		return m.From, f(0)
	}
	lo, hi := 0.0, 1.0
	for range 24 {
		a, b := lo+(hi-lo)/3, hi-(hi-lo)/3
		if f(a).Gap < f(b).Gap {
			hi = b
		} else {
			lo = a
		}
	}
	t, g := (lo+hi)/2, f((lo+hi)/2)
	tries := []float64{0.5, 0, 1}
	if m.From[2] != m.To[2] {
		tries = []float64{0.5, 0, 1, float64(map[bool]int{true: 1, false: 0}[m.To[2] < m.From[2]])}
	}
	for _, s := range tries {
		if h := f(s); h.Gap <= g.Gap+1e-4 {
			t, g = s, h
		}
	}
	if m.From[2] == m.To[2] {
		if h := f(alike); h.Gap <= g.Gap+1e-4 {
			t, g = alike, h
		}
	}
	return at(t), g
}

// places gives the two places that are so near: the thing's own, and the body's nearest to it.
func (c *close) places(tool solid.Vec, g solid.Near) (a, b solid.Vec) {
	if g.Meets || c.mm < 0 {
		return g.At, g.At
	}
	return onBody(c.body.Least, tool, g.At), g.At
}

// onBody gives the place of a round piece of the tool that lies nearest to another place: in the
// half plane of its axis, on the nearest of the four sides of its outline.
func onBody(t solid.Turned, tool, v solid.Vec) solid.Vec {
	out := solid.Vec{v[0] - tool[0], v[1] - tool[1], 0}
	r := out.Len()
	if r > 1e-12 {
		out = out.Times(1 / r)
	} else {
		out = solid.Vec{1, 0, 0}
	}
	z := v[2] - tool[2]
	if z > t.Z0 && z < t.Z1 && r < t.R0+(t.R1-t.R0)*(z-t.Z0)/(t.Z1-t.Z0) {
		return v
	}
	corners := [5][2]float64{{0, t.Z0}, {t.R0, t.Z0}, {t.R1, t.Z1}, {0, t.Z1}, {0, t.Z0}}
	best, at := math.Inf(1), [2]float64{}
	for i := range 4 {
		p, q := corners[i], corners[i+1]
		d := [2]float64{q[0] - p[0], q[1] - p[1]}
		l := d[0]*d[0] + d[1]*d[1]
		s := 0.0
		if l > 0 {
			s = min(max(((r-p[0])*d[0]+(z-p[1])*d[1])/l, 0), 1)
		}
		x := [2]float64{p[0] + s*d[0], p[1] + s*d[1]}
		if e := math.Hypot(x[0]-r, x[1]-z); e < best {
			best, at = e, x
		}
	}
	return tool.Add(out.Times(at[0])).Add(solid.Vec{0, 0, at[1]})
}

// pass draws a figure in the view that shows most of it.
func (m *milled) pass(c *close) {
	d := c.b.Sub(c.a)
	pane, most := elevation, -1.0
	for i := range m.s.Panes {
		v := m.s.Panes[i].View
		if l := math.Hypot(d.Dot(v.Right), d.Dot(v.Up)); l > most+1e-6 {
			pane, most = i, l
		}
	}
	if c.mm < 0 {
		pane = elevation
	}
	p := &m.s.Panes[pane]
	p.Passes = append(p.Passes, sketch.Passage{A: c.a, B: c.b, Meets: c.mm < 0, Words: c.words(m.tool)})
	reach(p, c.a)
	reach(p, c.b)
	for i := range m.s.Things {
		if t := &m.s.Things[i]; t.Tool && strings.HasPrefix(t.Name, short(c.body.Name)) && len(t.In) > 0 && !slices.Contains(t.In, pane) {
			t.In = append(t.In, pane)
		}
	}
}

// words are the figure and what it lies between.
func (c *close) words(tool solid.Vec) string {
	if c.mm < 0 {
		return "CLASH by " + tenthUp(-c.mm) + ": " + short(c.body.Name) + " into " + short(c.thing)
	}
	s := sketch.Figure(math.Round(c.mm*100) / 100)
	if c.least {
		s = "at least " + s
	}
	if c.tool.Sub(tool).Len() > 0.05 {
		s += " as it passes"
	}
	return s
}

// tenthUp is a length that must be made up, to a tenth and never too small, as findings say it.
func tenthUp(x float64) string { return sketch.Figure(math.Ceil(x*10-1e-6) / 10) }

// shown is the share of a level way at which the tool is drawn: along the table its middle shows more
// of what is cut than an end does; a saw that goes straight in is drawn where it has come to.
func shown(k *eval.Cut) float64 {
	if k.Choice.By == "sawing" && (k.Step.Step == nil || !k.Step.Step.Along.Is()) {
		return 1
	}
	return 0.5
}

// deepest is the lowest place of the tool's ways; of places as low the first.
func deepest(k *eval.Cut) (at solid.Vec, ok bool) {
	for _, w := range k.Works {
		for _, m := range w.Moves {
			places := []solid.Vec{m.From, m.To}
			if math.Abs(m.From[2]-m.To[2]) < 1e-9 {
				places = []solid.Vec{m.From.Add(m.To.Sub(m.From).Times(shown(k)))}
			}
			for _, v := range places {
				if !ok || v[2] < at[2]-1e-9 {
					at, ok = v, true
				}
			}
		}
	}
	return at, ok
}
