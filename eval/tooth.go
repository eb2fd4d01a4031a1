package eval

import (
	"math"

	"fettle/eval/reckon/gear"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// Teeth are shaped by their envelope: at each gap a notch with parallel sides, as deep as the
// tooth and as wide as the gap on the reference circle, looking to the top and noted with its
// angle (Spins). A disc cutter stands beside the blank on an upright spindle: its plane is level,
// the middle of its width at the height of the axis, and it goes along the axis at full depth. All
// gaps are alike, so one is played and the others are turned from it.

// Toothing is what the teeth of a form come to. Lengths are mm.
type Toothing struct {
	Count    int
	Deep     float64 // outside to the floor of a gap, on the radius
	Root     float64 // radius of the floor
	Involute bool
	Wheel    gear.Wheel // of involute teeth
	Blank    gear.Blank // of involute teeth
}

// teethWheel is the wheel that involute teeth make; lacks says what is not known. Teeth for a worm
// take its axial module, and its lead angle as the lean of the gash.
func teethWheel(b *model.Build, m *model.Feature) (w gear.Wheel, lacks []model.Lack) {
	w = gear.Wheel{Teeth: m.Count.V, Pressure: m.PressureAngle.Or(20), Shift: m.Shifted.V, Thinning: m.Thinned.V, Helix: m.Helix.V}
	lacks = m.Count.Missing()
	switch {
	case m.Module.Is():
		w.Module = m.Module.V
	case m.DiametralPitch.Is() && m.DiametralPitch.V > 0:
		w.Module = gear.Module(m.DiametralPitch.V)
	case m.Worm.Is():
		worm := featureOf(b, m.Worm.V.Item)
		if worm == nil {
			return w, append(lacks, m.Module.Missing()...)
		}
		k := worm.AxialModule()
		w.Module = k.V
		if !m.PressureAngle.Is() {
			w.Pressure = worm.PressureAngle.Or(20)
		}
		lacks = append(lacks, k.Missing()...)
	default:
		lacks = append(lacks, m.Module.Missing()...)
	}
	return w, lacks
}

// featureOf finds a feature by its block in any part.
func featureOf(b *model.Build, i *model.Item) *model.Feature {
	for _, p := range b.Parts {
		for _, f := range p.Features {
			if i != nil && f.Item == i {
				return f
			}
		}
	}
	return nil
}

// toothedDiameter is the diameter of a part that says none: over the tips of the teeth that
// lie on its own outside.
func (p *Part) toothedDiameter() (d float64, ok bool) {
	for _, m := range p.Part.Features {
		if m.Kind != "teeth" || len(m.On.V) > 0 && !isOutside(m.On.V[0]) || !involute(m) {
			continue
		}
		w, lacks := teethWheel(p.Build, m)
		if b, err := w.Blank(); err == nil && len(lacks) == 0 && b.Tip > d {
			d, ok = b.Tip, true
		}
	}
	return d, ok
}

func involute(m *model.Feature) bool {
	return m.Form.Or("involute") == "involute" && !m.Notch.Said
}

// hasTeeth says whether a part has teeth, which may give its diameter.
func hasTeeth(m *model.Part) bool {
	for _, f := range m.Features {
		if f.Kind == "teeth" {
			return true
		}
	}
	return false
}

// teethShape shapes the gaps of teeth.
func (p *Part) teethShape(f *Form) {
	m := f.Feature
	if m.Helix.V != 0 || m.HandOf.V == "left" && involute(m) && !m.Worm.Is() || m.HandOf.V == "right" && involute(m) && !m.Worm.Is() {
		f.later("helical teeth are not made on paper yet")
		return
	}
	if m.Throated.V || m.Form.V == "cycloidal" {
		f.later("throated and cycloidal teeth are not made on paper yet")
		return
	}
	g, ok := p.surface(f, m.On.V, false)
	if !ok {
		if f.Wrong == "" {
			f.Wrong = "they do not lie on a turned surface of this part"
		}
		return
	}
	on := p.reach(g)
	if on.Inside {
		f.later("inside teeth are not made on paper yet")
		return
	}
	x0, x1, ok := p.stretch(f, on.X0, on.X1)
	if !ok || !p.toothSize(f, on.R0) {
		return
	}
	t := f.Tooth
	if t.Root <= 0 || t.Deep <= 0 {
		f.Wrong = "nothing is left inside the teeth: they are " + model.Figure(t.Deep) + " mm deep on a radius of " + model.Figure(on.R0) + " mm"
		return
	}
	w := f.Width
	f.box(p, x0, x1, -w/2, w/2, t.Root, on.R0)
	f.spread(t.Count, m.Start.Or(0), 360)
	f.On = g
}

// toothSize settles count, depth and width of the gaps on a surface of radius r.
func (p *Part) toothSize(f *Form, r float64) bool {
	m := f.Feature
	if !m.Count.Is() {
		f.lack(m.Count.Missing())
		return false
	}
	if m.Count.V < 1 || m.Count.V > 10000 {
		f.Wrong = "teeth run from 1 to 10000"
		return false
	}
	t := Toothing{Count: m.Count.V}
	if !involute(m) {
		if !m.Notch.Depth.Is() {
			f.lack(m.Notch.Depth.Missing())
			return false
		}
		t.Deep = m.Notch.Depth.V.Nominal
		f.Width = m.Notch.Width.V.Nominal
		if !m.Notch.Width.Is() {
			f.Width = 2 * math.Pi * r / float64(t.Count)
		}
	} else {
		w, lacks := teethWheel(p.Build, m)
		if len(lacks) > 0 {
			f.lack(lacks)
			return false
		}
		b, err := w.Blank()
		if err != nil {
			f.Wrong = err.Error()
			return false
		}
		t.Involute, t.Wheel, t.Blank = true, w, b
		t.Deep = b.Whole + b.Deeper
		f.Width = math.Pi*w.Module - b.Thickness
	}
	t.Root = r - t.Deep
	f.Tooth = &t
	return true
}

// disc says whether the tool of the cut is a disc that turns level.
func (k *Cut) disc() bool {
	c := k.Choice.Tool.Cutter
	if c == nil {
		return false
	}
	switch c.Kind {
	case "gear_cutter", "slitting_saw", "side_and_face_cutter", "fly_cutter":
		return true
	case "angle_cutter":
		return c.Bore.Is()
	}
	return false
}

// toothed cuts the gaps of teeth with a disc, the piece turned on between; false where the tool
// is no disc, or the piece does not stand on what divides.
func (k *Cut) toothed(t Target) bool {
	f, d := t.Form, k.Hold.Choice.Divided
	if k.Choice.NoTool != "" || k.Hold.Carried == nil && k.Hold.Unplayed != "" {
		// Played as if done: what is missing is told of, and no more follows from it.
		fs := k.Part.change(k.After, f)
		fs.Begun, fs.Finished, fs.ByProcess, fs.By, fs.Turns = true, true, k.Choice.By, k.Spot, len(f.Spins)
		return true
	}
	if d == nil || k.Hold.Carried == nil || !k.disc() {
		return false
	}
	w := Working{Target: t, Entry: f.Into, Level: true, Depth: f.Tooth.Deep, Facing: !d.Upright}
	w.Run = (f.Hi[0] - f.Lo[0]) * float64(f.Tooth.Count)
	if d.Upright {
		w.Wrong = "a disc on an upright spindle cuts along an axis that lies level, and this one stands upright"
	}
	down := f.Tooth.Deep
	if st := k.Step.Step; st != nil {
		switch {
		case st.DownTo.Depth.Is():
			down = min(down, st.DownTo.Depth.V)
		case st.Leaves.Is():
			down = max(0, down-st.Leaves.V)
		}
	}
	w.Depth = down
	g := *f
	g.Lo[2] = f.Hi[2] - down
	one := g.removal(k.Part.outward(), 0)[0]
	for _, s := range f.Spins {
		w.Took = append(w.Took, turnedBack(one, towards(s).Inverse()))
	}
	if w.Facing && k.Choice.Tool.Size > 0 {
		w.Moves = k.discMoves(f, down)
		side := 270.0 // the machine's front
		switch {
		case k.level:
			side = 0 // the disc stands over the piece
		case k.Hold.Carried.Sign < 0:
			side = 90
		}
		turn := towards(f.Spins[0] - side)
		w.Turn = &turn
	}
	fs := k.Part.change(k.After, f)
	fs.Twice = fs.Twice || fs.Finished
	fs.Begun, fs.Depth, fs.ByProcess, fs.By, fs.Turns = true, down, k.Choice.By, k.Spot, len(f.Spins)
	fs.Finished = down >= f.Tooth.Deep-model.Grain
	w.Final = fs.Finished
	k.took(w)
	return true
}

// discMoves is the way of the disc's lower face in the machine's frame: in at the free end of the
// teeth, and along to their held end. The disc stands in front of the piece, on a level spindle over it.
func (k *Cut) discMoves(f *Form, down float64) []solid.Move {
	r := k.Choice.Tool.Size / 2
	a, b := k.Hold.Pose.Point(solid.Vec{f.Hi[0], 0, 0}), k.Hold.Pose.Point(solid.Vec{f.Lo[0], 0, 0})
	if a[0] < b[0] {
		a, b = b, a
	}
	half := k.Choice.Tool.Cutter.Width.V / 2
	y := -(f.Hi[2] - down + r)
	a[1], b[1] = a[1]+y, b[1]+y
	a[2], b[2] = a[2]-half, b[2]-half
	out := a
	out[1] -= down + k.Part.outward()
	return []solid.Move{{From: out, To: a}, {From: a, To: b}}
}

// RunOut is how a disc cutter stands to metal beside the teeth: how far it cuts along the axis past
// the end of full depth where there is metal of that radius, and how far away that metal is.
type RunOut struct {
	Wants, Has float64
	Radius     float64 // of the metal
	Right      bool    // beyond the right end of the teeth
	Thing      string  // what it is: "the jaws of chuck.three"; "" the piece
	Item       *model.Item
}

// beyondMiddle is sqrt(h (D - h)): how far a disc of a diameter D cuts beyond its middle at a height h
// above its deepest place; half of D from there on.
func beyondMiddle(d, h float64) float64 {
	if h <= 0 {
		return 0
	}
	if h >= d/2 {
		return d / 2
	}
	return math.Sqrt(h * (d - h))
}

// RunOuts lists what stands beside teeth that a disc cuts: shoulders and hubs of the piece higher
// than the floor of the gaps, and the jaws that it is held in. Metal of the surface that the teeth
// lie on does not count: there they run out as they must.
func (k *Cut) RunOuts(w *Working) (out []RunOut, lacks []model.Lack) {
	f := w.Target.Form
	d := k.Choice.Tool.Size
	if f == nil || f.Tooth == nil || !k.disc() || k.Hold.Carried == nil {
		return nil, nil
	}
	if d <= 0 {
		return nil, k.Choice.Tool.Cutter.Diameter.Missing()
	}
	on := k.Part.reach(f.On)
	root := f.Hi[2] - w.Depth
	x0, x1 := f.Lo[0], f.Hi[0]
	for _, z := range k.besideTeeth(f, on, x0, x1) {
		out = append(out, aside(d, root, x0, x1, z.X0, z.X1, z.Most()))
	}
	c := k.Hold.Carried
	if ch := c.Choice.Chuck; ch != nil {
		s, ok := c.Sweeps().Get()
		if !ok {
			lacks = append(lacks, c.Sweeps().Missing()...)
			s = c.Gripped
		}
		j := aside(d, root, x0, x1, c.Jaw, c.Jaw, s/2)
		j.Has = (math.Min(x0*c.Sign, x1*c.Sign) - c.Jaw*c.Sign)
		j.Right, j.Thing, j.Item = c.Sign < 0, "the jaws of "+ch.Path(), ch.Item
		if ok {
			out = append(out, j)
		} else if j.Has < d/2 {
			if j.Has < j.Wants-model.Grain {
				out = append(out, j) // even jaws no wider than what they grip are met
			}
		} else {
			lacks = nil // beyond the whole of the cutter: clear whatever the jaws sweep
		}
	}
	return out, lacks
}

// besideTeeth is the metal of the finished part left and right of the surface that teeth lie on, as
// it now is, and no thicker than it will be: what is turned away later may be cut into.
func (k *Cut) besideTeeth(f *Form, on Lathe, x0, x1 float64) (out Profile) {
	p, low, high := k.Before.Profile, k.Part.Low[0], k.Part.High()[0]
	if f.On == nil {
		on.X0, on.X1 = x0, x1
	}
	both := append(p.Between(low, math.Min(x0, on.X0)), p.Between(math.Max(x1, on.X1), high)...)
	for _, g := range k.Part.Forms {
		if g.Feature.Kind == "outside" && g.Lathe != nil {
			l := *g.Lathe
			e := g.About.Aside()
			both = both.turned(l.X0, l.X1, l.R0+e, l.R1+e, Zone{})
		}
	}
	for _, z := range both {
		if f.On != nil || z.Most() < on.R0-model.Grain {
			out = append(out, z)
		}
	}
	return out
}

func aside(d, root, x0, x1, z0, z1, r float64) RunOut {
	o := RunOut{Radius: r, Wants: beyondMiddle(d, r-root), Has: z0 - x1, Right: true}
	if z1 <= x0+model.Grain {
		o.Right, o.Has = false, x0-z1
	}
	return o
}

// Served says whether a cutter cuts these teeth, as it is printed on it, and why. A worm wheel's
// straight gash, like a helical tooth, is cut with the cutter for its virtual number of teeth.
func (t *Toothing) Served(c *model.Cutter) (fit gear.Fit, why string) {
	g := gear.Cutter{Pressure: c.PressureAngle.V, Form: c.ToothForm.V, Module: c.Module.V}
	if c.DiametralPitch.Is() && c.DiametralPitch.V > 0 {
		g.Module = gear.Module(c.DiametralPitch.V)
	}
	if r := c.ForTeeth.V; len(r) == 2 {
		g.Teeth = gear.Range{Least: int(r[0]), Most: int(r[1])}
	}
	return g.Serves(t.Wheel.Module, t.Wheel.Pressure, gear.Whole(t.Blank.Virtual))
}
