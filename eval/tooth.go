package eval

import (
	"math"
	"slices"

	"fettle/eval/reckon/gear"
	"fettle/schema/model"
)

// Teeth are shaped by their envelope: at each gap a notch with parallel sides, as deep as the
// tooth and as wide as the gap on the reference circle, looking to the top and noted with its
// angle (Spins). Notches and ratchet teeth have the section that they are drawn with (tooth_section.go). How gaps of the several forms lie stands at the head of tooth_gap.go, how they
// are cut at that of tooth_cut.go. All gaps are alike, so one is played and the others are turned from it.

// Toothing is what the teeth of a form come to. Lengths are mm.
type Toothing struct {
	Count    int
	Form     string      // "involute", "cycloidal", "notch", "ratchet"
	Deep     float64     // from the surface that they lie on to the floor of a gap, on the radius
	Root     float64     // radius of the floor, of a throated wheel in the middle of its rim
	Inside   bool        // in a bore: the floor lies farther out than the tips
	On       float64     // radius of the surface that they lie on
	X0, X1   float64     // from where to where along the line that they lie round
	Module   float64     // of involute and cycloidal teeth
	Lean     float64     // of a gap from the axis, degrees; right-hand above 0, left-hand below
	Lead     float64     // of helical teeth: the way of the table in which the piece turns once; 0: it does not turn in the cut
	Throat   *Throat     // of a throated worm wheel
	Section  *GapSection // of notches and ratchet teeth whose sides are not upright; else nil
	Involute bool        // Wheel and Blank are set
	Wheel    gear.Wheel  // of a worm wheel without its lean
	Blank    gear.Blank
}

// teethWheel is the wheel that involute teeth make; lacks says what is not known. Teeth for a worm
// take its axial module: in their own plane they are those of a straight wheel, however the gash leans.
func teethWheel(b *model.Build, m *model.Feature) (w gear.Wheel, lacks []model.Lack) {
	w = gear.Wheel{Teeth: m.Count.V, Pressure: m.PressureAngle.Or(20), Shift: m.Shifted.V, Thinning: m.Thinned.V, Helix: m.Helix.V}
	if m.Worm.Is() {
		w.Helix = 0
	}
	w.Internal = inBore(m)
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
		if m.Kind != "teeth" || len(m.On.V) > 0 && !isOutside(m.On.V[0]) || !involute(m) || m.Throated.V {
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

// PinionLeaves is how many leaves the pinion has that cycloidal teeth mesh with, and whether they are those of
// the wheel of the pair; 0 where no mesh names them, and false where they are a pinion's themselves.
func (p *Part) PinionLeaves(f *Form) (n int, wheel bool) {
	pinion := false
	for _, m := range p.Build.Meshes {
		if m.Wheel.V.Item == f.Feature.Item && m.Pinion.Is() {
			if o := featureOf(p.Build, m.Pinion.V.Item); o != nil {
				return o.Count.V, true
			}
		}
		pinion = pinion || m.Pinion.Is() && m.Pinion.V.Item == f.Feature.Item
	}
	return 0, !pinion
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

// inBore says whether teeth are written to lie in a bore or a hole.
func inBore(m *model.Feature) bool {
	return len(m.On.V) > 0 && m.On.V[0].Item != nil && (m.On.V[0].Item.Kind == "bore" || m.On.V[0].Item.Kind == "hole")
}

// teethShape shapes the gaps of teeth.
func (p *Part) teethShape(f *Form) {
	g, on, ok := p.toothedSurface(f)
	if !ok {
		return
	}
	x0, x1, ok := p.stretch(f, on.X0, on.X1)
	if !ok || !p.toothSize(f, on.R0) || !p.toothLean(f, on.R0) || f.Feature.Throated.V && !p.throat(f, x1-x0) {
		return
	}
	t := f.Tooth
	t.On, t.X0, t.X1 = on.R0, x0, x1
	t.Root = on.R0 - t.Deep
	switch {
	case t.Inside:
		t.Root = on.R0 + t.Deep
	case t.Throat != nil:
		t.Root = t.Throat.Floor()
		t.Deep = on.R0 - t.Root
	}
	if f.Wrong = p.toothWrong(f); f.Wrong != "" {
		return
	}
	p.toothRoom(f, g)
	f.spread(t.Count, f.Feature.Start.Or(0), 360)
	f.On = g
}

// toothWrong says why there can be no such teeth; "" if there can.
func (p *Part) toothWrong(f *Form) string {
	t := f.Tooth
	switch {
	case t.Deep <= 0 && t.Throat != nil:
		return "its gaps reach down to " + model.Figure(round3(2*t.Root)) + " mm, and the surface measures " + model.Figure(2*t.On) + " mm"
	case t.Root <= 0 || t.Deep <= 0:
		return "nothing is left inside the teeth: they are " + model.Figure(t.Deep) + " mm deep on a radius of " + model.Figure(t.On) + " mm"
	case t.Inside && p.roomRound(f.About) <= t.Root+model.Grain:
		return "nothing is left outside of the teeth: their gaps reach to a radius of " + model.Figure(round3(t.Root)) + " mm, and the part has " + model.Figure(round3(p.roomRound(f.About))) + " mm"
	case t.Form != "notch" && t.Form != "ratchet" || t.Inside:
	default:
		if deep, none := t.noTooth(t.On, f.Width/math.Cos(t.Lean*math.Pi/180)); none {
			return "its gaps run into each other: " + model.Figure(round3(deep)) + " mm below the surface no tooth is left between them"
		}
	}
	return ""
}

// roomRound is how far the part reaches round a line at least.
func (p *Part) roomRound(a Axis) float64 {
	if p.Round && a.Along == 0 {
		return p.Radius() - a.Aside()
	}
	least := math.Inf(1)
	for i := range 3 {
		if i != a.Along {
			least = math.Min(least, math.Min(a.At[i]-p.Low[i], p.High()[i]-a.At[i]))
		}
	}
	return least
}

// toothRoom settles the room of the first gap, as it looks to the top; of teeth in a bore that lies beside the
// axis of a turned part, or in a part that is not turned, that of all of them.
func (p *Part) toothRoom(f *Form, g *Form) {
	t, w := f.Tooth, f.Width
	if p.Own(f.About) && !t.Inside {
		f.box(p, t.X0, t.X1, -w/2, w/2, t.Root, t.On)
		return
	}
	if f.box(p, t.X0, t.X1, -w/2, w/2, t.On, t.Root); p.Own(f.About) {
		f.Into.Name, f.Open[model.Top], f.Open[model.Bottom] = "bore", false, true
		return
	}
	f.Into, f.Dir, f.Open = g.Into, g.Dir, [7]bool{}
	along := f.About.Along
	for i := range 3 {
		f.Lo[i], f.Hi[i] = f.About.At[i]-t.Root, f.About.At[i]+t.Root
	}
	f.Lo[along], f.Hi[along] = t.X0, t.X1
	f.Along, f.Across = along, (along+1)%3
	least, most := f.About.Ends()
	f.Open[least], f.Open[most] = t.X0 <= p.Low[along]+model.Grain, t.X1 >= p.High()[along]-model.Grain
}

// toothedSurface finds the surface that teeth lie on, and the line that they lie round.
func (p *Part) toothedSurface(f *Form) (g *Form, on Lathe, ok bool) {
	m := f.Feature
	if inBore(m) {
		return p.toothedBore(f)
	}
	if len(m.On.V) > 0 {
		if c := p.FormOf(m.On.V[0].Item); c != nil && c.Feature.Kind == "taper" {
			p.onCone(f)
			return nil, on, false
		}
	}
	if g, ok = p.surface(f, m.On.V, false); !ok {
		if g != nil && g.Lathe == nil && slices.Contains([]string{"flat", "flats", "slot", "step"}, g.Feature.Kind) {
			f.later("a rack on a flat of a turned part is not made on paper")
		} else if f.Wrong == "" {
			f.Wrong = "they do not lie on a turned surface of this part"
		}
		return nil, on, false
	}
	switch {
	case g != nil && g.Lathe.Inside:
		f.Wrong = "they do not lie on an outside or in a bore of this part"
	case g != nil && !g.About.Same(Axis{}):
		f.later("teeth on a surface beside the part's own axis are not made on paper")
	default:
		return g, p.reach(g), true
	}
	return nil, on, false
}

// onCone says of teeth on a cone why they are not made. Those of a wheel narrow to the point of the cone, so
// that no cutter of one form leaves them; the language has no words for the cone distance, the angle of the
// floor or the mate's angle that they want.
func (p *Part) onCone(f *Form) {
	if form := f.Feature.Form.Or("involute"); form == "involute" || form == "cycloidal" {
		f.Wrong = "the surface that they lie on is a cone: teeth there are those of a bevel wheel, whose gaps narrow towards the point of the cone, and a recipe has no words for them; " +
			"fettle reckon gear gives the blank of a bevel wheel"
		return
	}
	f.later("notches on a cone, cut with the head tilted, are not made on paper")
}

// toothedBore finds the bore or hole that teeth lie in.
func (p *Part) toothedBore(f *Form) (g *Form, on Lathe, ok bool) {
	g = p.FormOf(f.Feature.On.V[0].Item)
	if g == nil || g.Wrong != "" {
		f.Wrong = "the bore that they lie in has no shape"
		return nil, on, false
	}
	if len(g.Mouths) > 1 || len(g.Spins) > 1 {
		f.Wrong = "the bore that they lie in stands at several places, each round a line of its own: write one bore and one block of teeth for each"
		return nil, on, false
	}
	about, ok := p.axisOf(Target{Form: g})
	switch {
	case !g.Diameter.Is():
		f.lack(g.Diameter.Missing())
	case !ok || g.tilted():
		f.later("teeth in a hole that leans, or goes in from the round of a turned part, are not made on paper")
	case g.Lathe != nil:
		f.About = about
		return g, *g.Lathe, true
	default:
		f.About = about
		far := g.Into.At - g.Into.Face.Sign()*g.Depth.V
		r := g.Diameter.V / 2
		return g, Lathe{X0: math.Min(g.Into.At, far), X1: math.Max(g.Into.At, far), R0: r, R1: r, Inside: true}, true
	}
	return nil, on, false
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
	t := Toothing{Count: m.Count.V, Form: m.Form.Or("involute"), Inside: inBore(m)}
	f.Tooth = &t
	ok := false
	switch {
	case involute(m):
		ok = p.involuteSize(f)
	case m.Form.V == "cycloidal":
		ok = p.cycloidalSize(f)
	default:
		if !m.Form.Is() {
			t.Form = "notch"
		}
		ok = p.notchSize(f, r)
	}
	if !ok {
		f.Tooth = nil
		return false
	}
	if m.Depth.Is() {
		t.Deep = m.Depth.V.Size.Nominal
	}
	return true
}

// notchSize settles notches and ratchet teeth on a surface of radius r. Left out, a gap is as wide as the pitch:
// the teeth meet in points.
func (p *Part) notchSize(f *Form, r float64) bool {
	m, t := f.Feature, f.Tooth
	if !m.Notch.Depth.Is() {
		f.lack(m.Notch.Depth.Missing())
		return false
	}
	t.Deep = m.Notch.Depth.V.Nominal
	f.Width = m.Notch.Width.V.Nominal
	if !m.Notch.Width.Is() {
		if t.Count < 3 {
			f.Wrong = "fewer than 3 teeth do not meet in points: the width of a gap is wanted"
			return false
		}
		f.Width = 2 * r * math.Sin(math.Pi/float64(t.Count)) * math.Cos(m.Helix.V*math.Pi/180)
	}
	if f.Width > 2*r {
		f.Wrong = "a gap of " + model.Figure(round3(f.Width)) + " mm is wider than the surface of " + model.Figure(round3(2*r)) + " mm that it lies on"
		return false
	}
	if m.Depth.Is() {
		t.Deep = m.Depth.V.Size.Nominal
	}
	return p.notchSection(f, r)
}

func (p *Part) involuteSize(f *Form) bool {
	t := f.Tooth
	w, lacks := teethWheel(p.Build, f.Feature)
	if len(lacks) > 0 {
		f.lack(lacks)
		return false
	}
	b, err := w.Blank()
	if err != nil {
		f.Wrong = err.Error()
		return false
	}
	t.Involute, t.Wheel, t.Blank, t.Module = true, w, b, w.Module
	t.Deep = b.Whole + b.Deeper
	f.Width = math.Pi*w.Module - b.Thickness
	return true
}

// cycloidalSize settles teeth of clockwork: their depth hangs on the table of the cutter and is known
// only as it is written. Tooth and gap of a wheel are alike on the pitch circle, half a pitch each.
func (p *Part) cycloidalSize(f *Form) bool {
	m, t := f.Feature, f.Tooth
	w, lacks := teethWheel(p.Build, m)
	lacks = append(lacks, m.Depth.Missing()...)
	if len(lacks) > 0 {
		f.lack(lacks)
		return false
	}
	t.Module = w.Module
	f.Width = math.Pi * w.Module / 2
	return true
}
