package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A straight scale along a turned part has lines that run round it, each as long as an arc of its outside.
// They begin on a line along the part that `from` names as a direction: top is angle 0, back 90, bottom 180,
// front 270. From there they run towards the angle that grows; held with that line below, right is the part's
// right end, and figures grow that way unless `runs` says left. Under a mill the point stands over the axis of a
// dividing head and the piece is turned by each line's length; on a lathe it stands on the slides and the
// spindle is turned so far by hand.

// AlongRound is what a straight scale along an outside says beside its places.
type AlongRound struct {
	Angle  float64 // degrees, of the line along the part on which its lines begin
	Radius float64
}

// Turns is how far the work is turned for a line so long, degrees.
func (a *AlongRound) Turns(length float64) float64 { return length / a.Radius * 180 / math.Pi }

// roundSides are the directions of a turned part by their angle, degrees from top towards back.
var roundSides = map[model.Face]float64{model.Top: 0, model.Back: 90, model.Bottom: 180, model.Front: 270}

// scaleAlong shapes a straight scale on an outside.
func (p *Part) scaleAlong(f *Form) {
	m := f.Feature
	for _, lack := range [][]model.Lack{m.Count.Missing(), m.On.Missing(), m.FromFace.Missing()} {
		f.lack(lack)
	}
	if len(f.Lacks) > 0 || len(m.On.V) == 0 {
		return
	}
	ref := m.On.V[0]
	if pl, ok := p.PlaneOf(ref); ok && pl.Face.Axis() != 0 { // a flat
		p.straightScale(f)
		return
	}
	g, ok := p.roundInto(ref)
	angle, side := roundSides[m.FromFace.V.Face]
	on := p.reach(g)
	switch {
	case !ok || g != nil && g.Feature.Kind != "outside":
		f.Wrong = "what carries a straight scale is an outside or a flat of this part"
		return
	case !side:
		f.Wrong = "its lines run round the part from a line along it: from is top, back, bottom or front"
		return
	case m.Count.V < 1 || m.Count.V > 10000 || !(m.Spacing.V.Nominal > 0):
		f.Wrong = "a straight scale has from 1 to 10000 divisions, each longer than nought"
		return
	case !p.Own(g.about()):
		f.Wrong = "the outside that carries its lines lies round another line than the part's own axis"
		return
	}
	r := Ruled{Spacing: m.Spacing.V.Nominal, Runs: 0, Lines: 1, Way: 1, Long: on.X1 - on.X0, Wide: 2 * math.Pi * on.R0, Round: &AlongRound{angle, on.R0}}
	if m.Runs.V == "left" {
		r.Way = -1
	}
	s := Scale{Count: m.Count.V, Lines: scaleLines(m), Ruled: &r, Radius: on.R0, Inward: 1}
	f.On, f.Into = g, Plane{model.Top, on.R0, "outside"}
	p.ruled(f, &s, solid.Vec{on.X0, 0, on.R0}, solid.Vec{on.X1, r.Wide, on.R0})
	if f.Wrong != "" || len(f.Lacks) > 0 {
		return
	}
	a, b := math.Min(r.First, r.At(s.Count)), math.Max(r.First, r.At(s.Count))
	f.box(p, a, b, 0, 0, on.R0-m.Deep.V, on.R0)
	f.Spins = []float64{angle}
}

// ruledRound says how an operation rules a scale along an outside, and gives the way of the point: down to
// each line where it begins, the piece turned on under it.
func (k *Cut) ruledRound(w *Working) {
	f := w.Target.Form
	d, r := k.Hold.Choice.Divided, f.Scale.Ruled
	switch {
	case d == nil || k.Hold.Carried == nil:
		w.Facing, w.Wrong = false, "its lines run round the work, and nothing here turns it under the point"
		return
	case d.Upright:
		w.Facing, w.Wrong = false, "its lines do not look at the spindle with the axis upright"
		return
	}
	w.Facing = true
	turn := towards(f.Spins[0])
	w.Turn = &turn
	for _, i := range f.Scale.passed() {
		at := k.Hold.Pose.Point(solid.Vec{r.At(i), 0, 0})
		w.Moves = append(w.Moves, solid.Move{From: at.Add(solid.Vec{0, 0, r.Round.Radius + beyond}), To: at.Add(solid.Vec{0, 0, r.Round.Radius - f.Feature.Deep.V})})
	}
}

// linedAlong rules a scale along an outside on the lathe.
func (k *Turn) linedAlong(w *Turning) {
	f := w.Target.Form
	w.X0, w.X1, w.R0, w.R1 = f.Lo[0], f.Hi[0], f.Scale.Radius, f.Scale.Radius
	k.reach(w)
	w.Off, w.Final = 0, true
	fs := k.Part.change(k.After, f)
	w.Done = fs.Finished
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Finished, fs.ByProcess, fs.By, fs.Turns = true, true, k.Choice.By, k.Spot, f.Scale.Count+1
}

// Ruling works out how the lines of a scale along an outside come by the dial of the lathe's top slide set
// along the axis; false where the operation rules none.
func (k *Turn) Ruling(f *Form) (o Ruling, ok bool) {
	m := k.Lathe()
	if f == nil || f.Scale == nil || f.Scale.Ruled == nil || f.Scale.Ruled.Round == nil || m == nil || k.Hold.Unplayed != "" || k.Unplayed != "" {
		return o, false
	}
	switch line := m.TopSlide.Division; {
	case m.Readout.Is() && m.Readout.V > 0:
		o.Line, o.Readby = m.Readout.V, "the readout of "+m.Path()
	case line.Is() && line.V > 0:
		o.Line, o.Readby = line.V, "the top slide's dial of "+m.Path()
	default:
		o.Lacks = []model.Lack{{Fact: m.Path() + ".top_slide.division", At: m.At}}
		return o, true
	}
	o.fall(f.Scale.Ruled.Spacing, f.Scale.Count)
	return o, true
}
