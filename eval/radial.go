package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Features on the round of a turned part are shaped as if they looked to the top, and noted
// with the angle that they really look in (Spins). Those at 0, 90, 180 or 270 degrees alone
// are then turned to the face they look in, and are played as on any other face.

// radialShape shapes the features on the round of a turned part; false where it is none.
func (p *Part) radialShape(f *Form) bool {
	m := f.Feature
	switch m.Kind {
	case "hole":
		g, ok := p.roundInto(m.Into.V)
		if !m.Into.Is() || !ok {
			return false
		}
		p.crossHole(f, g)
	case "flat", "flats":
		p.flatShape(f)
	case "keyway":
		p.keywayShape(f)
	case "teeth":
		p.teethShape(f)
		return true
	case "graduations":
		p.scaleShape(f)
		return true
	case "chamfer", "radius":
		return p.turnedEdge(f)
	default:
		return false
	}
	f.face90()
	return true
}

// roundInto says whether a reference names the round surface of an outside; nil for the
// part's own.
func (p *Part) roundInto(r model.Ref) (*Form, bool) {
	if isOutside(r) {
		return nil, true
	}
	g := p.FormOf(r.Item)
	return g, g != nil && g.Lathe != nil && !g.Lathe.Inside && r.Sub == ""
}

// angleOf is the second co-ordinate of a place on a round surface, in degrees from top
// towards back.
func angleOf(pos model.Position) float64 {
	if len(pos.Short) > 1 {
		return pos.Short[1].Nominal
	}
	return 0
}

// crossHole shapes holes square to the axis.
func (p *Part) crossHole(f *Form, g *Form) {
	m := f.Feature
	on := p.reach(g)
	name := "outside"
	if g != nil {
		name = g.Name()
	}
	f.Into, f.Cross = Plane{model.Top, on.R0, name}, true
	if !p.crossDirection(f, on) {
		return
	}
	f.Flat = m.Bottom.V == "flat"
	p.crossDepth(f, math.Max(on.R0, on.R1))
	p.holeDiameter(f)
	if !m.At.Is() || len(m.At.V) == 0 {
		f.lack(m.At.Missing())
		return
	}
	for _, pos := range m.At.V {
		x, ok := p.axial(pos)
		if !ok {
			f.Wrong = "its place does not say how far along the axis it is"
			return
		}
		r := line(on.X0, on.X1, on.R0, on.R1, x)
		if f.Into.At = r; len(f.Mouths) > 0 {
			f.Into.At = f.Mouths[0][2]
		}
		f.Mouths = append(f.Mouths, solid.Vec{x, 0, r})
		f.Spins = append(f.Spins, angleOf(pos))
	}
	if n, ok := m.Around.Count.Get(); ok && m.Around.Said && len(f.Mouths) == 1 {
		f.spread(n, m.Around.Start.Or(f.Spins[0]), m.Around.Over.Or(360))
	}
}

// crossDirection settles which way a hole goes in that starts from a round surface: square to it, which on
// a cone leans from square to the axis, or leaning from there towards an end. False where it does not
// come out.
func (p *Part) crossDirection(f *Form, on Lathe) bool {
	slope := 0.0
	if on.X1 > on.X0 {
		slope = (on.R1 - on.R0) / (on.X1 - on.X0)
	}
	out, along := solid.Vec{-slope, 0, 1}.Unit(), solid.Vec{1, 0, slope}.Unit()
	f.Dir = out.Times(-1)
	t := f.Feature.Tilted
	if !t.Said {
		return true
	}
	by, ok := t.By.Get()
	to, ok2 := t.Towards.Get()
	switch {
	case !ok || !ok2:
		f.lack(t.By.Missing())
		f.lack(t.Towards.Missing())
		return false
	case to.Face != model.Left && to.Face != model.Right:
		f.Wrong = "it is to lean towards a face that does not stand beside the one it goes into: on the round of a turned part those are its ends"
		return false
	case by < 0 || by > 80:
		f.Wrong = "it is to lean " + model.Figure(by) + " degrees, and leans from 0 to 80 degrees are made"
		return false
	}
	sin, cos := sinCos(by)
	f.Dir = out.Times(-cos).Add(along.Times(sin * to.Face.Sign()))
	return true
}

// spread repeats a feature round the axis.
func (f *Form) spread(n int, start, over float64) {
	if n < 1 || n > 10000 {
		f.Wrong = "it is to be made " + model.Figure(float64(n)) + " times, which is out of reason"
		return
	}
	step := over / float64(n)
	if over < 360 && n > 1 {
		step = over / float64(n-1)
	}
	mouths := f.Mouths
	f.Mouths, f.Spins = nil, nil
	for i := range n {
		if len(mouths) > 0 {
			f.Mouths = append(f.Mouths, mouths[0])
		}
		f.Spins = append(f.Spins, math.Mod(start+float64(i)*step, 360))
	}
}

// crossDepth settles how deep a hole across the axis goes.
func (p *Part) crossDepth(f *Form, r float64) {
	d := f.Feature.Depth
	switch {
	case !d.Is() || d.V.Through:
		f.Through, f.Depth = true, model.Sure(2*r)
	case !d.V.From.IsNone():
		f.Wrong = "its depth counts from a face that does not lie square to it"
	default:
		f.Depth = model.Sure(d.V.Size.Nominal)
		f.Through = d.V.Size.Nominal >= 2*r-model.Grain
		f.deeperThan(2 * r)
	}
}

// flatShape shapes one flat or several, evenly spaced.
func (p *Part) flatShape(f *Form) {
	m := f.Feature
	g, ok := p.surface(f, m.On.V, false)
	if !ok {
		if f.Wrong == "" {
			f.Wrong = "it does not lie on a turned surface of this part"
		}
		return
	}
	on := p.reach(g)
	x0, x1, ok := p.stretch(f, on.X0, on.X1)
	if !ok {
		return
	}
	r := math.Max(on.R0, on.R1)
	var at float64
	switch {
	case m.Kind == "flats" && m.Across.Is():
		at = m.Across.V.Nominal / 2
	case m.Kind == "flats":
		f.lack(m.Across.Missing())
		return
	case m.ToAxis.Is():
		at = m.ToAxis.V.Nominal
	case m.OverRound.Is():
		at = m.OverRound.V.Nominal - r
	case m.Depth.Is():
		at = r - m.Depth.V.Size.Nominal
	default:
		f.lack(m.Depth.Missing())
		return
	}
	if at >= r-model.Grain || at <= -r {
		f.Wrong = "it would take nothing: it lies " + model.Figure(at) + " mm from the axis, and the surface " + model.Figure(r) + " mm"
		return
	}
	f.box(p, x0, x1, -r, r, at, r)
	f.Open[model.Front], f.Open[model.Back] = true, true
	f.Spins = []float64{m.Direction.Or(0)}
	if m.Kind == "flats" {
		f.spread(m.Count.Or(2), m.Start.Or(0), 360)
	}
}

// box is the room of a feature cut in from the top between two heights.
func (f *Form) box(p *Part, x0, x1, y0, y1, z0, z1 float64) {
	f.Into, f.Dir = Plane{model.Top, z1, "outside"}, solid.Vec{0, 0, -1}
	f.Lo, f.Hi = solid.Vec{x0, y0, z0}, solid.Vec{x1, y1, z1}
	f.Depth = model.Sure(z1 - z0)
	f.Along, f.Across, f.Width = 0, 1, y1-y0
	f.Open[model.Top] = true
	f.Open[model.Left] = x0 <= p.Low[0]+model.Grain
	f.Open[model.Right] = x1 >= p.High()[0]-model.Grain
}

// keywayShape shapes a groove for a parallel key in an outside.
func (p *Part) keywayShape(f *Form) {
	m := f.Feature
	if m.Sort.V == "woodruff" {
		p.woodruffShape(f)
		return
	}
	g, ok := p.roundInto(m.Into.V)
	if !m.Into.Is() || !ok {
		if !p.keyBoreShape(f) {
			f.Wrong = "a keyway lies in an outside or in a bore"
		}
		return
	}
	on := p.reach(g)
	x0, x1, ok := p.stretch(f, on.X0, on.X1)
	if !ok {
		return
	}
	if !m.Width.Is() || !m.Depth.Is() {
		f.lack(m.Width.Missing())
		f.lack(m.Depth.Missing())
		return
	}
	w := m.Width.V.Nominal
	f.box(p, x0, x1, -w/2, w/2, on.R0-m.Depth.V.Size.Nominal, on.R0)
	f.Spins = []float64{m.Direction.Or(0)}
}

// face90 turns a feature that looks to the back, the bottom or the front there.
func (f *Form) face90() {
	if len(f.Spins) == 0 || f.Wrong != "" || len(f.Lacks) > 0 {
		return
	}
	spin := math.Mod(f.Spins[0]+360, 360)
	for _, s := range f.Spins {
		if math.Abs(math.Mod(s+360, 360)-spin) > 1e-9 {
			return
		}
	}
	quarter := math.Round(spin / 90)
	if math.Abs(spin-90*quarter) > 1e-9 {
		return
	}
	f.Spins = nil
	for range int(quarter) % 4 {
		f.quarterTurn()
	}
}

// nextFace is where a face of a turned part comes to when it is turned a quarter from top
// towards back.
var nextFace = map[model.Face]model.Face{model.Top: model.Back, model.Back: model.Bottom, model.Bottom: model.Front, model.Front: model.Top,
	model.Left: model.Left, model.Right: model.Right}

func (f *Form) quarterTurn() {
	turn := func(v solid.Vec) solid.Vec { return solid.Vec{v[0], v[2], -v[1]} }
	for i := range f.Mouths {
		f.Mouths[i] = turn(f.Mouths[i])
	}
	a, b := turn(f.Lo), turn(f.Hi)
	for i := range 3 {
		f.Lo[i], f.Hi[i] = math.Min(a[i], b[i]), math.Max(a[i], b[i])
	}
	f.Dir = turn(f.Dir)
	was := f.Open
	for from, to := range nextFace {
		f.Open[to] = was[from]
	}
	f.Into.Face = nextFace[f.Into.Face]
	f.Into.At = math.Abs(f.Into.At) * f.Into.Face.Sign()
	switch f.Across {
	case 1:
		f.Across = 2
	case 2:
		f.Across = 1
	}
}

// shoulder gives the ends of a turned feature as datums: each looks into the feature.
func (f *Form) shoulder(sub string) (Plane, bool) {
	switch sub {
	case "floor":
	default: // the ends of a boss go by the names of the faces of the part that look the same way
		if e, ok := model.ParseFace(sub); ok && e.Axis() == f.About.Along {
			sub = [2]string{"left", "right"}[endIndex(e)]
		}
	}
	switch sub {
	case "left":
		_, most := f.About.Ends()
		return Plane{most, f.Lathe.X0, f.Name() + "." + sub}, true
	case "right":
		least, _ := f.About.Ends()
		return Plane{least, f.Lathe.X1, f.Name() + "." + sub}, true
	case "floor":
		if f.Feature.Kind == "bore" && !f.Through {
			return Plane{f.Into.Face, f.Into.At - f.Into.Face.Sign()*(f.Lathe.X1-f.Lathe.X0), f.Name() + ".floor"}, true
		}
	}
	return Plane{}, false
}

// turnedEdge shapes a chamfer or a radius on the rim of a turned surface and an end or
// shoulder; false where it lies on something else. The half section of a radius is its chord.
func (p *Part) turnedEdge(f *Form) bool {
	m := f.Feature
	if !m.On.Is() || !m.Size.Is() || len(m.On.V) == 0 || len(m.On.V) > 2 {
		return false
	}
	var on *Form
	var at *Plane
	own := false
	for _, r := range m.On.V {
		g, round := p.roundAny(r)
		if round {
			on, own = g, g == nil
			continue
		}
		pl, ok := p.PlaneOf(r)
		if !ok {
			return false
		}
		at = &pl
	}
	if on != nil && on.several() {
		return false // on the rim of each place
	}
	if on == nil && !own || at == nil || own && !p.Round || at.Face.Axis() != on.about().Along {
		return false
	}
	f.About = on.about()
	f.Size = m.Size.V.Nominal
	l := p.reach(on)
	across := f.Size
	if m.Kind == "chamfer" {
		across *= math.Tan(m.Angle.Or(45) * math.Pi / 180)
	}
	f.Lathe = cornerShape(l, *at, f.Size, across, on)
	p.roundRoom(f)
	return true
}

// roundAny is a turned surface, outside or bore, that a reference names.
func (p *Part) roundAny(r model.Ref) (*Form, bool) {
	if isOutside(r) {
		return nil, true
	}
	g := p.FormOf(r.Item)
	return g, g != nil && g.Lathe != nil && r.Sub == ""
}
