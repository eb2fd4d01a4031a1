package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// besideShape shapes what a lathe makes on a part that is not turned: bosses and bores with what
// lies on them, and seats for centres. False where the feature is none of them.
func (p *Part) besideShape(f *Form) bool {
	switch f.Feature.Kind {
	case "outside":
		p.bossShape(f)
	case "bore":
		p.boreBeside(f)
	case "centre_hole":
		p.centreShape(f)
	case "keyway":
		if !p.keyBoreShape(f) {
			f.Wrong = "a keyway lies in a bore or a hole of a part that is not turned"
		}
	case "groove", "taper", "thread", "knurl":
		g, ok := p.surface(f, f.Feature.On.V, true)
		switch {
		case f.Feature.Outer.Is():
		case f.Wrong != "":
			return true
		case !ok || g == nil:
			f.Wrong = "it does not lie on a boss or a bore of this part"
			return true
		}
		switch f.Feature.Kind {
		case "groove":
			p.grooveShape(f)
		case "taper":
			p.taperShape(f)
		case "thread":
			p.threadShape(f)
		default:
			p.onSurface(f)
		}
	case "graduations":
		p.scaleShape(f)
		return true
	case "teeth":
		if inBore(f.Feature) {
			p.teethShape(f)
		} else {
			p.rackShape(f)
		}
		return true
	case "chamfer", "radius":
		return p.turnedEdge(f)
	default:
		return false
	}
	f.notRepeated()
	p.roundRoom(f)
	return true
}

// roundRoom is the room of what a lathe makes: a box round it.
func (p *Part) roundRoom(f *Form) {
	l := f.Lathe
	if l == nil {
		return
	}
	r := math.Max(l.R0, l.R1)
	for i := range 3 {
		f.Lo[i], f.Hi[i] = f.About.At[i]-r, f.About.At[i]+r
	}
	f.Lo[f.About.Along], f.Hi[f.About.Along] = l.X0, l.X1
}

// lineInto settles the face that a feature goes into and the line through its place on it; of a bore at
// several places that of the first.
func (p *Part) lineInto(f *Form) bool {
	m := f.Feature
	a, b, ok := p.intoFace(f)
	if !ok {
		return false
	}
	f.Mouths = nil
	for _, pos := range m.At.V {
		v, known := p.locate(f.Into.Face, pos)
		if !known[a] || !known[b] {
			f.Wrong = "its place fixes only one of the two co-ordinates on that face"
			return false
		}
		v[f.Into.Face.Axis()] = f.Into.At
		f.Mouths = append(f.Mouths, v)
	}
	if len(f.Mouths) == 0 { // of a turned part, repeated round its axis
		f.Mouths = []solid.Vec{{f.Into.At, 0, 0}}
	}
	if m.Around.Said && m.Kind == "bore" {
		f.around(a, b)
	}
	f.About = AxisAt(f.Into.Face.Axis(), f.Mouths[0])
	return len(f.Lacks) == 0
}

// intoFace settles the face that a feature goes into, and gives the two axes that it spreads along.
func (p *Part) intoFace(f *Form) (a, b int, ok bool) {
	m := f.Feature
	needs := !p.Round || !m.Around.Said
	if !m.Into.Is() || needs && (!m.At.Is() || len(m.At.V) == 0) {
		f.lack(m.Into.Missing())
		f.lack(m.At.Missing())
		return 0, 0, false
	}
	pl, ok := p.PlaneOf(m.Into.V)
	if !ok {
		f.Wrong = "the face it goes into is not a flat face of this part"
		return 0, 0, false
	}
	f.Into, f.Dir = pl, Normal(pl.Face).Times(-1)
	a, b = across(pl.Face)
	return a, b, true
}

// several says whether a round form lies at several places, each round a line of its own.
func (f *Form) several() bool { return f.Lathe != nil && len(f.Mouths) > 1 }

// roundsLine says whether a form that a lathe makes lies round a line, at one of its places.
func (f *Form) roundsLine(a Axis) bool {
	if !f.several() {
		return f.About.Same(a)
	}
	for _, m := range f.Mouths {
		if AxisAt(f.About.Along, m).Same(a) {
			return true
		}
	}
	return false
}

// notRepeated says of what goes all the way round a line that it stands at one place alone: each of
// several wants a line, and so a holding, of its own.
func (f *Form) notRepeated() {
	if f.Feature.Around.Said && f.Feature.Kind != "bore" && f.Wrong == "" {
		f.Wrong = "it goes all the way round a line, so that it is not repeated: write one " + f.Feature.Kind + " for each place, and a set-up for each"
	}
}

// bossShape shapes a round boss left standing on a face.
func (p *Part) bossShape(f *Form) {
	m := f.Feature
	if !p.lineInto(f) {
		return
	}
	f.Mouths = nil
	if !m.Diameter.Is() || !m.From.Is() && !m.To.Is() {
		f.lack(m.Diameter.Missing())
		if m.Diameter.Is() {
			f.lack(m.From.Missing())
		}
		return
	}
	along := f.About.Along
	lo, hi := p.Low[along], p.High()[along]
	if f.Into.Face.Sign() > 0 {
		hi = f.Into.At
	} else {
		lo = f.Into.At
	}
	x0, x1, ok := p.stretch(f, lo, hi)
	if !ok {
		return
	}
	r := m.Diameter.V.Nominal / 2
	f.Lathe = &Lathe{X0: x0, X1: x1, R0: r, R1: r}
	f.Diameter = model.Map(m.Diameter, nominal)
	for i := range 3 {
		if at := f.About.At[i]; i != along && (at-r < p.Low[i]-model.Grain || at+r > p.High()[i]+model.Grain) {
			f.Wrong = "it reaches beyond the sides of the finished part, so that it does not come out round"
		}
	}
}

// boreBeside shapes a bore of a part that is not turned, or one beside the axis of one that is.
func (p *Part) boreBeside(f *Form) {
	m := f.Feature
	if !m.Diameter.Is() {
		f.lack(m.Diameter.Missing())
		return
	}
	if !p.Round && !p.lineInto(f) {
		return
	}
	along := f.About.Along
	lo, hi := p.Low[along], f.Into.At
	if f.Into.Face.Sign() < 0 {
		lo, hi = f.Into.At, p.High()[along]
	}
	if m.To.Is() && !m.From.Is() && f.Into.Face.Sign() > 0 {
		// From the face that it goes into, as far as it says.
		if to, ok := p.placeOn(m.To.V, along); ok && to < hi-model.Grain {
			lo = hi
		}
	}
	x0, x1, ok := p.stretch(f, lo, hi)
	if !ok {
		return
	}
	r := m.Diameter.V.Nominal / 2
	f.Lathe = &Lathe{X0: x0, X1: x1, R0: r, R1: r, Inside: true}
	f.Through = near(x0, p.Low[along]) && near(x1, p.High()[along])
	f.Depth, f.Flat = model.Sure(x1-x0), m.Bottom.V != "point"
	if len(f.Mouths) < 2 {
		mouth := f.About.At
		mouth[along] = f.Into.At
		f.Mouths = []solid.Vec{mouth}
	}
	f.Diameter = model.Map(m.Diameter, nominal)
}

// setAside gives a feature of a turned part its line beside the axis; false where it lies on the
// axis, or where how far beside it is not known.
func (p *Part) setAside(f *Form) bool {
	e := f.Feature.Eccentric
	if !e.Said {
		return false
	}
	by, ok := e.By.Get()
	if !ok {
		f.lack(e.By.Missing())
		return false
	}
	sin, cos := math.Sincos(e.Towards.Or(0) * math.Pi / 180)
	f.About = AxisAt(0, solid.Vec{0, by.Nominal * sin, by.Nominal * cos})
	return true
}

// outsideBeside checks that an outside beside the axis lies within the part's own.
func (p *Part) outsideBeside(f *Form) {
	if f.Lathe == nil || f.Wrong != "" || p.Own(f.About) {
		return
	}
	if e := f.About.Aside(); e+f.Lathe.R0 > p.Radius()+model.Grain {
		f.Wrong = "it reaches " + model.Figure(math.Round((e+f.Lathe.R0)*1000)/1000) + " mm from the part's own axis, and the part's outside lies at " + model.Figure(p.Radius()) + " mm"
	}
}

// centreShape shapes a 60 degree seat for a centre. Where its size is left out the handbook's
// usual one for the diameter is taken.
func (p *Part) centreShape(f *Form) {
	m := f.Feature
	pl, ok := p.PlaneOf(m.Into.V)
	switch {
	case !m.Into.Is():
		f.lack(m.Into.Missing())
		return
	case !ok || p.Round && pl.Face.Axis() != 0:
		f.Wrong = "it is not drilled in an end"
		return
	case (m.At.Is() || !p.Round) && !p.lineInto(f):
		return
	}
	f.Into, f.Dir = pl, Normal(pl.Face).Times(-1)
	size := m.Size.V.Nominal
	if !m.Size.Is() {
		wide := 2 * p.Radius()
		if a, b := across(pl.Face); !p.Round {
			wide = math.Min(p.Size[a], p.Size[b])
		}
		size = handbook.CentreSize(wide)
	}
	f.Size = size
	mouth := f.About.At
	mouth[f.About.Along] = pl.At
	f.Mouths = []solid.Vec{mouth}
	f.Depth = model.Sure(2.5 * size) // pilot and cone of form A, near enough; common practice
	wide := 2.12 * size / 2          // ISO 866 form A: the cone's mouth is about 2.12 times the pilot
	x1 := pl.At - pl.Face.Sign()*wide*math.Sqrt(3)
	f.Lathe = &Lathe{X0: pl.At, X1: x1, R0: wide, R1: 0, Inside: true, End: pl.Face}
	if x1 < pl.At {
		f.Lathe.X0, f.Lathe.X1, f.Lathe.R0, f.Lathe.R1 = x1, pl.At, 0, wide
	}
	f.Diameter = model.Sure(size)
}
