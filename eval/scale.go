package eval

import (
	"math"
	"sort"
	"strconv"
	"strings"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Graduations take no metal that counts: their lines are places on a round surface or an end, each
// with its angle (Spins), and a pointed tool that does not turn is drawn along each.

// Scale is a scale as shaped. Lengths are mm, angles degrees.
type Scale struct {
	Count  int     // divisions
	Over   float64 // arc; 360 a full circle
	Radius float64 // of the rim that carries the lines
	End    bool    // on an end, not on the round
	Edge   float64 // where all lines begin: along the axis; on an end the radius
	Inward float64 // +1: lines run to the right of the edge, -1 to the left; on an end -1: towards the axis; of a straight scale the way along the axis of its lines
	Lines  []Line  // longest first
	Ruled  *Ruled  // of a straight scale; Over is 0 and Radius and End say nothing
}

// Line is the length of every so-manieth line.
type Line struct {
	Every  int
	Length float64
}

// Longest is the length of the longest line.
func (s *Scale) Longest() float64 {
	if len(s.Lines) == 0 {
		return 0
	}
	return s.Lines[0].Length
}

// Full says whether the scale goes right round.
func (s *Scale) Full() bool { return s.Over > 360-1e-9 }

// Numbers is how many figures stand beside the lines: 0 where there are none.
func (s *Scale) Numbers(m *model.Feature) int {
	every := m.Figures.Every.V
	if !m.Figures.Said || every < 1 {
		return 0
	}
	n := s.Count / every
	if !s.Full() || s.Count%every > 0 {
		n++
	}
	return n
}

// scaleShape shapes graduations on a round surface or an end.
func (p *Part) scaleShape(f *Form) {
	m := f.Feature
	if !p.Round {
		p.straightScale(f)
		return
	}
	if m.Spacing.Is() {
		p.scaleAlong(f)
		return
	}
	if !m.Count.Is() || !m.On.Is() || len(m.On.V) == 0 {
		f.lack(m.Count.Missing())
		f.lack(m.On.Missing())
		return
	}
	s := Scale{Count: m.Count.V, Over: m.Arc.Or(360), Lines: scaleLines(m)}
	if s.Count < 1 || s.Count > 10000 || !(s.Over > 0 && s.Over <= 360) {
		f.Wrong = "a scale has from 1 to 10000 divisions, over more than 0 and at most 360 degrees"
		return
	}
	ref := m.On.V[0]
	if pl, ok := p.PlaneOf(ref); ok && pl.Face.Axis() == 0 {
		s.End, s.Radius, s.Edge, s.Inward = true, p.Radius(), p.Radius(), -1
		f.Into, f.Dir = pl, Normal(pl.Face).Times(-1)
	} else if !p.scaleOnRound(f, &s, ref) {
		return
	}
	f.Scale = &s
	lines := s.Count
	if !s.Full() {
		lines++
	}
	way := 1.0 // clockwise as seen from the right end: from top towards back
	if m.Runs.V == "anticlockwise" {
		way = -1
	}
	if m.SeenFrom.V.Face == model.Left {
		way = -way
	}
	for i := range lines {
		f.Spins = append(f.Spins, math.Mod(m.ZeroAt.V+way*s.Over*float64(i)/float64(s.Count)+720, 360))
	}
}

// scaleOnRound lays the lines on an outside, from the edge that is written.
func (p *Part) scaleOnRound(f *Form, s *Scale, ref model.Ref) bool {
	g, ok := p.roundInto(ref)
	if !ok || g != nil && g.Feature.Kind != "outside" && g.Feature.Kind != "taper" {
		f.Wrong = "what carries the lines is no outside and no end of this part"
		return false
	}
	on := p.reach(g)
	f.On = g
	s.Radius = math.Max(on.R0, on.R1)
	from := f.Feature.FromFace
	if !from.Is() {
		f.lack(from.Missing())
		return false
	}
	pl, ok := p.PlaneOf(from.V)
	switch {
	case !ok || pl.Face.Axis() != 0:
		f.Wrong = "the edge that its lines begin at is not square to the axis"
		return false
	case near(pl.At, on.X0):
		s.Edge, s.Inward = on.X0, 1
	case near(pl.At, on.X1):
		s.Edge, s.Inward = on.X1, -1
	default:
		f.Wrong = "its lines begin at " + model.Figure(pl.At) + " mm along the axis, and the surface reaches from " + model.Figure(on.X0) + " to " + model.Figure(on.X1) + " mm"
		return false
	}
	if l := s.Longest(); l > on.X1-on.X0+model.Grain {
		f.Wrong = "its longest lines are " + model.Figure(l) + " mm, and the surface is " + model.Figure(on.X1-on.X0) + " mm wide"
		return false
	}
	end := s.Edge + s.Inward*s.Longest()
	f.box(p, math.Min(s.Edge, end), math.Max(s.Edge, end), 0, 0, on.R0-f.Feature.Deep.V, on.R0)
	return true
}

// scaleLines reads the lengths of the lines by their turn, longest first.
func scaleLines(m *model.Feature) []Line {
	a := m.Attr("lines")
	if a == nil {
		return nil
	}
	var out []Line
	for _, l := range a.Value.Object {
		name := l.Name[strings.LastIndexByte(l.Name, '.')+1:]
		n, err := strconv.Atoi(strings.Trim(name, `"`))
		if err != nil || n < 1 || l.Value.Kind != model.Number {
			continue
		}
		out = append(out, Line{n, l.Value.Num})
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Length > out[j].Length })
	return out
}

// graduated engraves a scale.
func (k *Cut) graduated(t Target) {
	if t.Form.Scale.Ruled != nil {
		k.ruled(t)
		return
	}
	f, s, d := t.Form, t.Form.Scale, k.Hold.Choice.Divided
	fs := k.Part.change(k.After, f)
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Finished, fs.ByProcess, fs.By, fs.Turns = true, true, k.Choice.By, k.Spot, len(f.Spins)
	w := Working{Target: t, Entry: f.Into, Final: true, Depth: f.Feature.Deep.V, Run: s.Longest() * float64(len(f.Spins))}
	switch {
	case k.Step.Work.Kind == "bench":
		return // scribed by hand, or with a height gauge
	case d == nil:
		w.Wrong = "nothing here turns the piece from line to line"
	case s.End:
		w.Facing = d.Upright && k.Hold.Pose.Dir(Normal(f.Into.Face))[2] > 0.5
	default:
		w.Facing = !d.Upright
	}
	switch {
	case w.Facing || w.Wrong != "":
	case s.End:
		w.Wrong = "the " + f.Into.Name + " end does not look at the spindle"
	default:
		w.Wrong = "its lines do not look at the spindle with the axis upright"
	}
	if w.Facing {
		w.Moves = k.lineMoves(f)
		turn := towards(f.Spins[0])
		w.Turn = &turn
		if s.End {
			w.Turn = nil
		}
	}
	k.Works = append(k.Works, w)
}

// lineMoves is the way of the point along the longest line, in the machine's frame.
func (k *Cut) lineMoves(f *Form) []solid.Move {
	s := f.Scale
	place := func(at float64) solid.Vec {
		if s.End {
			return k.Hold.Pose.Point(solid.Vec{f.Into.At - f.Into.Face.Sign()*f.Feature.Deep.V, 0, at})
		}
		return k.Hold.Pose.Point(solid.Vec{at, 0, 0}).Add(solid.Vec{0, 0, s.Radius - f.Feature.Deep.V})
	}
	a, b := place(s.Edge-s.Inward*beyond), place(s.Edge+s.Inward*s.Longest())
	return []solid.Move{{From: a, To: b}}
}

// SurfaceWidth is how long the surface along the axis is that teeth or lines lie on, mm.
func (p *Part) SurfaceWidth(f *Form) float64 {
	if f.Scale != nil && f.Scale.Ruled != nil {
		return f.Scale.Ruled.Wide
	}
	l := p.reach(f.On)
	return l.X1 - l.X0
}

// Stamp is a step that stamps figures beside the lines of a scale, and whether the surface
// that carries it is worked again afterwards.
type Stamp struct {
	Step  *Step
	Form  *Form
	After bool // skimmed afterwards
}

// Stamps lists them in the order of the work.
func (p *Part) Stamps() (out []Stamp) {
	for _, w := range p.Work {
		for _, st := range w.Steps {
			for i := range out {
				out[i].After = out[i].After || st.remakes(out[i].Form)
			}
			if st.Step == nil || st.Kind != "mark" || !st.Step.StampedFigures.Is() {
				continue
			}
			for _, r := range st.Step.Out.V {
				if f := p.FormOf(r.Item); f != nil && f.Scale != nil {
					out = append(out, Stamp{Step: st, Form: f})
				}
			}
		}
	}
	return out
}

// remakes says whether a step works the surface that carries a scale.
func (st *Step) remakes(f *Form) bool {
	for _, t := range st.Makes {
		switch {
		case st.Kind != "operation":
		case f.Scale.End || f.Scale.Ruled != nil:
			if t.Form == nil && t.Face == f.Into.Face {
				return true
			}
		case f.On == nil && t.Outside, f.On != nil && t.Form == f.On:
			return true
		}
	}
	return false
}
