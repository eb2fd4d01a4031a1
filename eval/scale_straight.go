package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A straight scale lies on a flat face of a part that is not turned. Its lines begin at one edge of the
// face and run from there inwards; the scale runs along that edge. Held so that this edge is the lower
// one, as its figures are read, right is where the figures grow unless `runs` says left. The first line
// stands at `zero_at`; left out, at the end of a face that is just as long as the scale.

// Ruled is a straight scale. Lengths are mm, places the part's own.
type Ruled struct {
	Spacing float64
	First   float64 // place of the first line along the axis that the scale runs along
	Way     float64 // +1: places grow from line to line; -1: they fall
	Runs    int     // axis that the scale runs along
	Lines   int     // axis that its lines lie along
	Long    float64 // of the face, along the scale
	Wide    float64 // of the face, along the lines; of an outside all the way round
	Round   *AlongRound
}

// At is the place of a line along the scale, the first being 0.
func (r *Ruled) At(line int) float64 { return r.First + r.Way*r.Spacing*float64(line) }

// LengthOf is how long a line is, the first being 0.
func (s *Scale) LengthOf(line int) float64 {
	l := 0.0
	for _, x := range s.Lines {
		if line%x.Every == 0 {
			l = math.Max(l, x.Length)
		}
	}
	return l
}

// straightScale shapes a straight scale.
func (p *Part) straightScale(f *Form) {
	m := f.Feature
	for _, lack := range [][]model.Lack{m.Count.Missing(), m.On.Missing(), m.Spacing.Missing(), m.FromFace.Missing()} {
		f.lack(lack)
	}
	if len(f.Lacks) > 0 || len(m.On.V) == 0 {
		return
	}
	pl, ok := p.PlaneOf(m.On.V[0])
	edge, ok2 := p.PlaneOf(m.FromFace.V)
	switch {
	case !ok:
		f.Wrong = "what carries the lines is no flat face of this part"
		return
	case !ok2 || edge.Face.Axis() == pl.Face.Axis():
		f.Wrong = "the edge that its lines begin at is no edge of that face"
		return
	case m.Count.V < 1 || m.Count.V > 10000 || !(m.Spacing.V.Nominal > 0):
		f.Wrong = "a straight scale has from 1 to 10000 divisions, each longer than nought"
		return
	}
	lo, hi := p.Low, p.High()
	if g := p.FormOf(m.On.V[0].Item); g != nil && m.On.V[0].Sub != "" {
		lo, hi = g.Lo, g.Hi
	}
	r := Ruled{Spacing: m.Spacing.V.Nominal, Lines: edge.Face.Axis(), Runs: 3 - pl.Face.Axis() - edge.Face.Axis(), Way: 1}
	r.Long, r.Wide = hi[r.Runs]-lo[r.Runs], hi[r.Lines]-lo[r.Lines]
	s := Scale{Count: m.Count.V, Lines: scaleLines(m), Ruled: &r, Edge: edge.At, Inward: 1}
	switch {
	case near(edge.At, lo[r.Lines]):
	case near(edge.At, hi[r.Lines]):
		s.Inward = -1
	default:
		f.Wrong = "its lines begin at " + model.Figure(edge.At) + " mm, and the face reaches from " + model.Figure(lo[r.Lines]) + " to " + model.Figure(hi[r.Lines]) + " mm"
		return
	}
	// Right is up × towards the reader, up being from the edge inwards.
	var up, right solid.Vec
	up[r.Lines] = s.Inward
	right = up.Cross(Normal(pl.Face))
	r.Way = right[r.Runs]
	if m.Runs.V == "left" {
		r.Way = -r.Way
	}
	f.Into, f.Dir = pl, Normal(pl.Face).Times(-1)
	p.ruled(f, &s, lo, hi)
}

// ruled settles where the first line stands, and holds the scale against its face.
func (p *Part) ruled(f *Form, s *Scale, lo, hi solid.Vec) {
	m, r := f.Feature, s.Ruled
	span := r.Spacing * float64(s.Count)
	at, ok := p.placeOn(m.ZeroPlace.V, r.Runs)
	switch {
	case ok:
		r.First = at
	case m.ZeroAt.Is():
		f.Wrong = "a bare zero_at is an angle: the first line of a straight scale is so far from a face, as in zero_at = { " + model.FaceOn(r.Runs, -1).String() + " = 3 }"
		return
	case m.ZeroPlace.Is():
		f.Wrong = "the place of its first line does not lie along the edge that its lines begin at"
		return
	case near(span, r.Long):
		if r.First = lo[r.Runs]; r.Way < 0 {
			r.First = hi[r.Runs]
		}
	default:
		f.lack(m.ZeroPlace.Missing())
		return
	}
	a, b := math.Min(r.First, r.At(s.Count)), math.Max(r.First, r.At(s.Count))
	switch l := s.Longest(); {
	case a < lo[r.Runs]-model.Grain || b > hi[r.Runs]+model.Grain:
		f.Wrong = "its " + model.Figure(float64(s.Count)) + " divisions of " + model.Figure(r.Spacing) + " mm reach from " + model.Figure(round3(a)) + " to " + model.Figure(round3(b)) +
			" mm, and the face from " + model.Figure(lo[r.Runs]) + " to " + model.Figure(hi[r.Runs]) + " mm"
		return
	case l > r.Wide+model.Grain:
		f.Wrong = "its longest lines are " + model.Figure(l) + " mm, and the face is " + model.Figure(r.Wide) + " mm wide"
		return
	}
	f.Lo, f.Hi = lo, hi
	f.Lo[r.Runs], f.Hi[r.Runs] = a, b
	end := s.Edge + s.Inward*s.Longest()
	f.Lo[r.Lines], f.Hi[r.Lines] = math.Min(s.Edge, end), math.Max(s.Edge, end)
	n := f.Into.Face.Axis()
	f.Lo[n], f.Hi[n] = f.Into.At, f.Into.At
	f.Along, f.Across = r.Runs, r.Lines
	f.Scale = s
}

// Of the lines of a straight scale the longest and the last are moved along on paper, and so many of the
// others that the tool passes at least every rulingStep, mm: nothing that holds a piece is as narrow (our own
// choice). Beyond mostRuled lines it is fewer.
const (
	rulingStep = 4.0
	mostRuled  = 400
)

// ruled engraves a straight scale: a pointed tool that does not turn is drawn along each line, the table
// set to it by its dial.
func (k *Cut) ruled(t Target) {
	f, s := t.Form, t.Form.Scale
	r := s.Ruled
	fs := k.Part.change(k.After, f)
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Finished, fs.ByProcess, fs.By, fs.Turns = true, true, k.Choice.By, k.Spot, s.Count+1
	if k.Step.Work.Kind == "bench" {
		return // scribed by hand, or with a height gauge
	}
	w := Working{Target: t, Entry: f.Into, Final: true, Depth: f.Feature.Deep.V}
	w.Facing = k.Hold.Pose.Dir(Normal(f.Into.Face))[2] > 0.5
	for i := range s.Count + 1 {
		w.Run += s.LengthOf(i)
	}
	if k.ruledAxis(f) < 0 {
		w.Facing, w.Wrong = false, "its lines lie along neither way of the table"
	}
	switch {
	case w.Wrong != "":
	case r.Round != nil:
		k.ruledRound(&w)
	case w.Facing:
		for _, i := range s.passed() {
			var a solid.Vec
			a[r.Runs], a[f.Into.Face.Axis()] = r.At(i), f.Into.At-f.Into.Face.Sign()*f.Feature.Deep.V
			b := a
			a[r.Lines], b[r.Lines] = s.Edge-s.Inward*beyond, s.Edge+s.Inward*s.LengthOf(i)
			w.Moves = append(w.Moves, solid.Move{From: k.Hold.Pose.Point(a), To: k.Hold.Pose.Point(b)})
		}
	}
	k.Works = append(k.Works, w)
}

// ruledAxis is the axis of the machine, 0 along the table and 1 across it, that a straight scale runs
// along as the piece is held; -1 where neither.
func (k *Cut) ruledAxis(f *Form) int {
	return k.machineAxis(f.Scale.Ruled.Runs, 2)
}

// Ruling is how a straight scale, or a rack, comes out where each place is set to the nearest line of a dial, or step of
// a readout, counted from the first line: nothing adds up. Lengths are mm.
type Ruling struct {
	Axis   int     // of the machine: 0 along the table, 1 across it, 2 up
	Line   float64 // what a line of the dial, or a step of the readout, stands for
	Off    float64 // most that a line is off its place
	Step   float64 // most that a spacing is off
	At     int     // the line after that spacing
	Adds   float64 // what would gather at the last line if the rounded spacing were added each time
	Lacks  []model.Lack
	Readby string // "the x dial of mill.bench", "the readout of mill.bench"
}

// Ruling works it out; false where the operation makes no straight scale and no rack on a machine.
func (k *Cut) Ruling(f *Form) (o Ruling, ok bool) {
	m := k.Hold.Choice.Machine
	if f == nil || m == nil || k.Step.Work.Kind == "bench" || k.Hold.Unplayed != "" {
		return o, false
	}
	var s float64
	var spaces int
	switch {
	case f.Scale != nil && f.Scale.Ruled != nil:
		o.Axis, s, spaces = k.ruledAxis(f), f.Scale.Ruled.Spacing, f.Scale.Count
	case f.Rack != nil:
		o.Axis, s, spaces = k.SetBy(f), f.Rack.Pitch, f.Rack.Count-1
	default:
		return o, false
	}
	if o.Axis < 0 {
		return o, false
	}
	d := [3]model.Dial{m.Dials.X, m.Dials.Y, m.Dials.Z}[o.Axis]
	name := "xyz"[o.Axis : o.Axis+1]
	switch {
	case m.Readout.Is() && m.Readout.V > 0:
		o.Line, o.Readby = m.Readout.V, "the readout of "+m.Path()
	case d.Division.Is() && d.Division.V > 0:
		o.Line, o.Readby = d.Division.V, "the "+name+" dial of "+m.Path()
	default:
		o.Lacks = []model.Lack{{Fact: m.Path() + ".dials." + name + ".division", At: m.At}}
		return o, true
	}
	o.fall(s, spaces)
	return o, true
}

// fall works out how far places that stand evenly apart come off where each is set to the nearest line of a dial.
func (o *Ruling) fall(s float64, spaces int) {
	was := 0.0
	for i := range spaces + 1 {
		at := s * float64(i)
		off := math.Round(at/o.Line+1e-9)*o.Line - at
		o.Off = math.Max(o.Off, math.Abs(off))
		if step := math.Abs(off - was); i > 0 && step > o.Step+1e-9 {
			o.Step, o.At = step, i
		}
		was = off
	}
	o.Adds = math.Abs(math.Round(s/o.Line+1e-9)*o.Line-s) * float64(spaces)
}

// passed lists the lines that are moved along on paper, the first being 0.
func (s *Scale) passed() (out []int) {
	every := max(1, int(rulingStep/s.Ruled.Spacing), s.Count/mostRuled)
	for i := 0; i <= s.Count; i++ {
		longest := s.Count <= mostRuled && s.LengthOf(i) > s.Longest()-model.Grain
		if i%every == 0 || i == s.Count || longest {
			out = append(out, i)
		}
	}
	return out
}
