// Package sheet puts on paper what a dry run knows: drawings of parts and set-ups, and the sheet
// to take to the machine. Every figure comes from the dry run and the reckoner.
package sheet

import (
	"math"
	"strconv"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// What is drawn around piece and tool, in mm, and of what has no other size.
const (
	around      = 5.0
	toolShown   = 18.0 // of the tool above the piece
	holderShown = 45.0 // and so far the face of what holds it
	bodyShown   = 8.0  // of a chuck behind its jaws
	jawHalf     = 6.0  // half the width of a chuck's jaw as drawn: shops do not tell it
	jawShown    = 9.0  // of jaws beyond the piece
	stopShown   = 6.0  // half the width of a stop as drawn
)

// The views of a set-up on a mill, by their turn in the setting.
const (
	elevation = 0
	plan      = 1
	fromEnd   = 2
)

// milled draws one set-up on a mill or drill press.
type milled struct {
	h     *eval.Holding
	k     *eval.Cut // nil: as the piece is put up
	s     *sketch.Setting
	pose  solid.Pose  // part's frame to the machine's
	turn  *solid.Pose // how the piece is turned about its axis first; nil where it is not
	tool  solid.Vec   // where the tool is drawn
	near  []close
	lacks []string // what is not known of what is drawn
}

// Milled draws a holding on a mill or drill press as it is before an operation, the tool where it
// comes nearest to something, and so at its deepest; of a holding alone, as the piece is put up.
func Milled(h *eval.Holding, k *eval.Cut) sketch.Setting {
	s := sketch.Setting{Name: h.Spot.String(), Piece: h.Before.Piece.Placed(h.Pose)}
	m := milled{h: h, k: k, s: &s, pose: h.Pose}
	if k != nil {
		s.Name = k.Spot.String()
		m.near = closest(h, k)
		if len(k.Works) > 0 {
			m.turn = k.Works[0].Turn
		}
		if len(m.near) > 0 && m.near[0].turn != nil {
			m.turn = m.near[0].turn
		}
		piece := k.Stood().Piece
		if m.turn != nil {
			piece = piece.Placed(*m.turn)
		}
		s.Piece = piece.Placed(h.Pose)
	}
	m.views()
	if h.Leaning() {
		s.Lo, s.Hi, s.Swept = h.Lo, h.Hi, true
	} else {
		bound(&s)
	}
	for i := range s.Panes {
		s.Panes[i].Lo, s.Panes[i].Hi = s.Lo, s.Hi
	}
	m.holding()
	if k != nil {
		m.stack()
		m.ways()
	}
	if one := &s.Panes[elevation]; one.Cut {
		one.Says = "Section at the tool, f" + one.Says[1:]
	}
	m.packing()
	m.bounds()
	m.heights()
	m.datum()
	s.Foot = append(s.Foot, m.lies())
	s.Foot = append(s.Foot, unknown(m.lacks)...)
	return s
}

func (m *milled) views() {
	one := sketch.Pane{View: sketch.Right, Says: "From the right", Cut: m.k != nil}
	switch d := m.h.Choice.Divided; {
	case d != nil && !d.Upright && m.h.Carried != nil: // its axis lies along the table
		one.View, one.Says = sketch.Front, "From the front"
	}
	m.s.Panes = append(m.s.Panes, one, sketch.Pane{View: sketch.Top, Says: "From above"})
	if m.h.Carried != nil && !m.h.Choice.Divided.Upright {
		m.s.Panes = append(m.s.Panes, sketch.Pane{View: sketch.Right, Says: "From the right"})
	}
}

// bound takes in the piece.
func bound(s *sketch.Setting) {
	for a := range 3 {
		s.Lo[a], s.Hi[a] = s.Piece.Extent(a, -1), s.Piece.Extent(a, 1)
	}
}

// reach takes a place into the bounds of a view.
func reach(p *sketch.Pane, v solid.Vec) {
	for a := range 3 {
		p.Lo[a], p.Hi[a] = min(p.Lo[a], v[a]), max(p.Hi[a], v[a])
	}
}

// holding stands what holds the piece: the least of it, which is certain.
func (m *milled) holding() {
	h := m.h
	before := ""
	for i := range h.Obstacles {
		o := &h.Obstacles[i]
		t := sketch.Thing{Name: m.nameOf(o), Shape: o.Least}
		if o.Name == before && o.Item != nil { // another side of the same thing
			t.Name = ""
		}
		before = o.Name
		if o.Name == "the table" {
			t.In = []int{elevation, fromEnd}
		}
		m.s.Things = append(m.s.Things, t)
		if !o.Same {
			m.lack(o.Lacks)
		}
	}
	m.lack(h.Lacks)
	if d := h.Choice.RoundBar; d > 0 && h.JawTop.Is() {
		z := (max(h.Lo[2], h.Bed.Or(0)) + h.JawTop.V) / 2
		y := h.Lo[1] - d/2
		m.s.Things = append(m.s.Things, sketch.Thing{Name: "round bar ⌀" + model.Figure(d) + ", at half the grip",
			Shape: solid.Cylinder(solid.Vec{h.Lo[0], y, z}, solid.Vec{h.Hi[0], y, z}, d/2)})
	}
	m.stop()
}

// nameOf is what a thing that stands there is called on the drawing, with what lies on it.
func (m *milled) nameOf(o *eval.Obstacle) string {
	h := m.h
	name := short(o.Name)
	held := h.Vee != nil && h.Vee.Blocked
	switch {
	case strings.Contains(o.Name, " jaw of ") && (held || h.Vee != nil && h.Vee.Against && strings.HasPrefix(o.Name, "the fixed") == (h.Vee.Looks == "front")):
		return name + ", on it: " + h.Vee.Block.Path()
	case strings.HasPrefix(o.Name, "the fixed jaw"):
		return name + ", on it: " + h.Choice.Back.String()
	case strings.HasPrefix(o.Name, "the moving jaw"):
		on := h.Choice.Back.Opposite()
		if h.Choice.MovedJaw != model.NoFace {
			on = h.Choice.MovedJaw
		}
		return name + ", on it: " + on.String()
	case strings.HasPrefix(o.Name, "the parallel") && h.Choice.Pair != nil:
		return h.Choice.Pair.Path() + ", " + model.Figure(h.Choice.Height) + " high"
	case strings.HasPrefix(o.Name, "the upright"):
		return name + ", on it: " + h.Choice.Back.String()
	case o.Name == "the table":
		return "table"
	}
	return name
}

// stop stands a work stop at the face that touches it.
func (m *milled) stop() {
	st := &m.h.Work.SetUp.Stop
	f := st.Against.V.Face
	if !st.Said || f == model.NoFace {
		return
	}
	n := m.pose.Dir(eval.Normal(f))
	at, from, to := solid.Vec{}, solid.Vec{}, solid.Vec{}
	for a := range 3 {
		at[a] = (m.s.Lo[a] + m.s.Hi[a]) / 2
		if math.Abs(n[a]) > 0.99 {
			at[a] = m.s.Hi[a]
			if n[a] < 0 {
				at[a] = m.s.Lo[a]
			}
		}
	}
	for a := range 3 {
		from[a], to[a] = at[a]-stopShown/2, at[a]+stopShown/2
		if math.Abs(n[a]) > 0.99 {
			from[a], to[a] = min(at[a], at[a]+n[a]*stopShown), max(at[a], at[a]+n[a]*stopShown)
		}
	}
	m.s.Things = append(m.s.Things, sketch.Thing{Name: "stop, against " + f.String(), Shape: solid.Box(from, to), In: []int{plan}})
}

// packing stands packing under the piece, as wide as it: its own width is not said.
func (m *milled) packing() {
	h := m.h
	if !(h.Choice.Packing > 0) || !h.Seat.Is() {
		return
	}
	lo, hi := h.Lo, h.Hi
	lo[2], hi[2] = h.Lo[2]-h.Choice.Packing, h.Lo[2]
	m.s.Things = append(m.s.Things, sketch.Thing{Name: "packing, " + model.Figure(h.Choice.Packing) + " high", Shape: solid.Box(lo, hi), In: []int{elevation}})
}

// bounds settles how much of everything each view shows.
func (m *milled) bounds() {
	h := m.h
	for i := range m.s.Panes {
		p := &m.s.Panes[i]
		if h.Choice.Vise != nil {
			t := min(h.Choice.Vise.JawThickness.Or(3), jawShown)
			reach(p, solid.Vec{m.s.Lo[0], h.MovingAt - t, h.Bed.Or(h.Lo[2]) - 3})
			reach(p, solid.Vec{m.s.Lo[0], h.FixedAt + t, h.Lo[2]})
			if w, ok := h.Choice.Vise.JawWidth.Get(); ok && i == plan {
				reach(p, solid.Vec{0, h.Lo[1], h.Lo[2]})
				reach(p, solid.Vec{min(w, max(h.Hi[0], 0)+jawShown), h.Lo[1], h.Lo[2]})
			}
		} else if h.Seat.Is() && h.Choice.Divided == nil {
			reach(p, solid.Vec{m.s.Lo[0], m.s.Lo[1], -3})
		}
		if h.Carried != nil && i != fromEnd && !h.Choice.Divided.Upright {
			reach(p, solid.Vec{min(m.s.Lo[0], -bodyShown), m.s.Lo[1] - jawShown/2, m.s.Lo[2] - jawShown/2})
			p.Lo[0] = max(p.Lo[0], -40)
			reach(p, solid.Vec{0, m.s.Hi[1] + jawShown/2, m.s.Hi[2] + jawShown/2})
		}
		for _, o := range h.Obstacles {
			if strings.Contains(o.Name, "clamp") || h.Vee != nil && o.Item == h.Vee.Block.Item || h.Choice.Plate != nil && o.Item == h.Choice.Plate.Item {
				lo, hi, _ := o.Least.Bounds()
				reach(p, lo)
				reach(p, hi)
			}
		}
		for a := range 3 {
			p.Lo[a] -= around
			p.Hi[a] += around
		}
	}
}

// heights gives the sizes that a set-up is put up by: above the jaws, the height of what it
// stands on, and along the jaws.
func (m *milled) heights() {
	h := m.h
	if h.Choice.Vise == nil {
		return
	}
	one := &m.s.Panes[elevation]
	gauge := func(p *sketch.Pane, a, b solid.Vec, out sketch.Point) {
		if d := b.Sub(a).Len(); d > 0.05 {
			p.Gauges = append(p.Gauges, sketch.Gauge{From: a, To: b, Out: out, Words: sketch.Figure(math.Round(d*100) / 100)})
		}
	}
	if y := m.s.Lo[1]; h.JawTop.Is() && one.View == sketch.Right {
		gauge(one, solid.Vec{0, y, h.JawTop.V}, solid.Vec{0, y, m.s.Hi[2]}, sketch.Point{X: -1})
		if h.Bed.Is() {
			gauge(one, solid.Vec{0, y, h.Bed.V}, solid.Vec{0, y, m.s.Lo[2]}, sketch.Point{X: -1})
		}
	}
	if h.Choice.Vise.JawWidth.Is() {
		gauge(&m.s.Panes[plan], solid.Vec{0, m.s.Lo[1], 0}, solid.Vec{m.s.Lo[0], m.s.Lo[1], 0}, sketch.Point{Y: -1})
	}
}

// datum marks the place that the figures of the operations count from.
func (m *milled) datum() {
	z := zeroOf(m.h, m.k, m.s.Piece, m.pose)
	for _, v := range []struct {
		pane  int
		words string
	}{{elevation, "z 0"}, {plan, "x 0, y 0"}} {
		p := &m.s.Panes[v.pane]
		at := z.at
		if v.pane == elevation && p.View != sketch.Right && m.k != nil {
			at[0] = m.tool[0]
		}
		p.Zero = []solid.Vec{at}
		p.Tags = append(p.Tags, sketch.Tag{At: at, Words: v.words})
	}
	if m.h.Carried != nil {
		for i := range m.s.Panes {
			m.s.Panes[i].Axis = m.axis()
		}
	}
}

// axis gives two places on the line that a piece on a dividing head turns about.
func (m *milled) axis() []solid.Vec {
	a, b := m.h.Line()
	u := b.Sub(a).Unit()
	const long = 400.0
	return []solid.Vec{a.Sub(u.Times(long)), b.Add(u.Times(long))}
}

// lies says which faces look where.
func (m *milled) lies() string {
	h := m.h
	words := "Up: " + h.Choice.Up.String() + ". "
	if h.Part.Round || h.Carried != nil {
		if c := h.Carried; c != nil {
			if c.Choice.Centres {
				return "Between centres: the " + c.Choice.End.String() + " end at the head."
			}
			return "In the chuck: " + h.Choice.Divided.Carries.End.String() + " end; it stands out " + length(c.Free) + "."
		}
		return words
	}
	return words + "To the column: " + h.Choice.Back.String() + ". To the left: " + h.FaceTo(solid.Vec{-1, 0, 0}).String() + "."
}

func length(mm float64) string { return sketch.Figure(math.Round(mm*100)/100) + " mm" }

func (m *milled) lack(ls []model.Lack) {
	for _, l := range ls {
		m.lacks = append(m.lacks, l.Fact)
	}
}

// unknown says what is drawn only as far as it is certain, for want of which facts.
func unknown(facts []string) []string {
	var some []string
	said := map[string]bool{}
	for _, f := range facts {
		if f != "" && !said[f] {
			said[f] = true
			some = append(some, f)
		}
	}
	if len(some) == 0 {
		return nil
	}
	more := ""
	if len(some) > 4 {
		more = " and " + strconv.Itoa(len(some)-4) + " more"
		some = some[:4]
	}
	return []string{"Not known, so drawn only as far as it is certain: " + strings.Join(some, ", ") + more + "."}
}

// short is a name without its article, and without the thing's name where its kind says enough:
// "fixed jaw", "collet_chuck.er32".
func short(name string) string {
	name = strings.TrimPrefix(name, "the ")
	if kind, of, ok := strings.Cut(name, " of "); ok {
		switch kind {
		case "cutting part":
			return of
		case "shank", "neck":
			return kind
		case "nut", "screw", "collar", "body":
			if thing, _, ok := strings.Cut(of, "."); ok && (thing == "arbor" || thing == "chuck") {
				return thing + " " + kind
			}
		case "bed":
			return "vise bed"
		case "jaws":
			return "jaws, as they turn"
		}
		return kind
	}
	return name
}
