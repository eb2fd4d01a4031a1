package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Turned parts: the axis is x, the origin on the axis at the left end; angle 0 looks to the
// top and grows towards the back.

// Lathe is the shape of a turned feature in half section: a straight line from (X0, R0) to
// (X1, R1), of the outside or of a bore.
type Lathe struct {
	X0, X1 float64
	R0, R1 float64
	Inside bool
	End    model.Face // of a groove in an end, a centre hole: that end
	On     *Form      // the surface it lies on; nil the part's own outside
	Hollow bool       // of a chamfer or radius: in a hollow corner, where its metal is left standing
}

// turnedEnvelope settles the outer sizes of a turned part: false where it is not one.
func (p *Part) turnedEnvelope() bool {
	m := p.Part
	across, corners := m.Diameter, 1.0
	switch {
	case m.Diameter.Is():
	case m.Hexagon.Is():
		across, corners = m.Hexagon, 2/math.Sqrt(3)
	case m.Square.Is():
		across, corners = m.Square, math.Sqrt2
	case hasTeeth(m) && !m.Height.Is() && !m.Thickness.Is():
		d, ok := p.toothedDiameter()
		if !ok {
			p.Unplayed = "its diameter is not known"
		}
		across = model.Sure(drawing.Size{Nominal: d})
	default:
		return false
	}
	p.Round = true
	d := across.V.Nominal
	switch {
	case p.Unplayed != "":
	case !m.Length.Is():
		p.Unplayed = "its length is not known"
	case !(m.Length.V.Nominal > 0) || !(d > 0):
		p.Unplayed = "one of its outer sizes is not above nought"
	}
	// A flat looks towards the top: across the flats stands upright, over the corners lies level.
	p.Sized = [3]drawing.Size{m.Length.V, across.V, across.V}
	p.Size = solid.Vec{m.Length.V.Nominal, d * corners, d}
	if m.Square.Is() {
		p.Size[1] = d
	}
	p.Low = solid.Vec{0, -p.Size[1] / 2, -p.Size[2] / 2}
	p.Across = d
	return true
}

// acrossSize is the size across the axis that a turned part is named by.
func (p *Part) acrossSize(attr string) (drawing.Size, bool) {
	m := p.Part
	for name, k := range map[string]model.Known[drawing.Size]{"diameter": m.Diameter, "hexagon": m.Hexagon, "square": m.Square} {
		if name == attr && k.Is() {
			return k.V, p.Round
		}
	}
	return drawing.Size{}, false
}

// Radius is the finished radius of the part's own outside; over the corners of bar that is
// not round.
func (p *Part) Radius() float64 {
	switch {
	case p.Part.Hexagon.Is():
		return p.Across / math.Sqrt(3)
	case p.Part.Square.Is():
		return p.Across / math.Sqrt2
	}
	return p.Across / 2
}

// Flats is how many flats the finished section of a turned part has: 6 of hexagon, 4 of square
// bar, 0 of round.
func (p *Part) Flats() int { return p.flats() }

func (p *Part) flats() int {
	switch {
	case p.Part.Hexagon.Is():
		return 6
	case p.Part.Square.Is():
		return 4
	}
	return 0
}

// turnedBlank makes the raw piece of a turned part: a length of bar on the part's axis, and
// where it is still one with the bar the rest of the longest piece behind it.
func (p *Part) turnedBlank() {
	b := &p.Blank
	r, flats := p.rawRadius()
	b.Round = flats == 0
	if b.Model != nil && b.Model.Bar.V {
		p.barBehind()
	}
	b.Lo[1], b.Hi[1], b.Lo[2], b.Hi[2] = -r, r, -r, r
	b.Shape = barShape(b.Lo[0], b.Hi[0], r, flats)
	hole := p.rawBore()
	b.Profile = Profile{{X0: b.Lo[0], X1: b.Hi[0], Out0: r, Out1: r, In0: hole, In1: hole, Flats: flats, Skin: p.outsideSkin()}}
}

// barShape is a length of bar along x; r is its radius over the corners, a flat looks up.
func barShape(x0, x1, r float64, flats int) solid.Shape {
	from, to := solid.Vec{x0, 0, 0}, solid.Vec{x1, 0, 0}
	if flats == 0 {
		return solid.Cylinder(from, to, r)
	}
	halves := []solid.Half{{N: solid.Vec{1, 0, 0}, C: x1}, {N: solid.Vec{-1, 0, 0}, C: -x0}}
	in := r * math.Cos(math.Pi/float64(flats))
	for i := range flats {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(flats))
		halves = append(halves, solid.Half{N: solid.Vec{0, sin, cos}, C: in})
	}
	return solid.Prism(halves...)
}

// rawRadius is the radius of the bar over its corners, and how many flats it has.
func (p *Part) rawRadius() (r float64, flats int) {
	b := &p.Blank
	if s := b.Stock; s != nil {
		switch {
		case s.Round.Is():
			return s.Round.V.Nominal / 2, 0
		case s.Hexagon.Is():
			return s.Hexagon.V.Nominal / math.Sqrt(3), 6
		case s.Square.Is():
			return s.Square.V.Nominal / math.Sqrt2, 4
		case s.Tube.Outside.Is():
			return s.Tube.Outside.V.Nominal / 2, 0
		}
	}
	over := 0.0
	switch {
	case b.Model != nil && b.Model.Over.Outside.Is():
		over = b.Model.Over.Outside.V
	case b.Stock == nil && p.makesOutside():
		over = p.Build.Thumbs["clean_up_drawn"].V
		b.Chosen = append(b.Chosen, model.Figure(over)+" mm over the outside")
	}
	return p.Radius() + over, p.flats()
}

// rawBore is the radius of the bore of tube; 0 of bar.
func (p *Part) rawBore() float64 {
	if s := p.Blank.Stock; s != nil && s.Tube.Outside.Is() && s.Tube.Wall.Is() {
		return math.Max(0, s.Tube.Outside.V.Nominal/2-s.Tube.Wall.V.Nominal)
	}
	return 0
}

func (p *Part) outsideSkin() string {
	b := &p.Blank
	switch {
	case b.Model != nil && b.Model.Skin.Outside.Is():
		return b.Model.Skin.Outside.V
	case b.Stock != nil && b.Stock.Skin.Is():
		return b.Stock.Skin.V
	}
	return "raw"
}

// makesOutside says whether any step turns the part's own outside.
func (p *Part) makesOutside() bool {
	for _, w := range p.Work {
		for _, st := range w.Steps {
			for _, t := range st.Makes {
				if t.Outside && !st.polishes() {
					return true
				}
			}
		}
	}
	return false
}

// barBehind lets the bar go on beyond the end that is parted or sawn off; beyond the left end
// where none is.
func (p *Part) barBehind() {
	b := &p.Blank
	b.Bar = p.partedEnd()
	longest := 0.0
	if b.Stock != nil {
		for _, l := range b.Stock.Lengths.V {
			longest = max(longest, l)
		}
	}
	more := longest - (b.Hi[0] - b.Lo[0])
	if longest == 0 {
		more, b.BarOpen = p.barWanted(), b.Model.Stock.Missing()
		if b.Stock != nil {
			b.BarOpen = b.Stock.Lengths.Missing()
		}
	}
	if more <= 0 {
		return
	}
	if b.Bar == model.Right {
		b.Hi[0] += more
	} else {
		b.Lo[0] -= more
	}
}

// barBeyond is how much longer than what stands out a bar of unknown length is played, mm: more than any
// jaw is long.
const barBeyond = 120

// barWanted is how far a bar of unknown length is played to go on, mm: as far as its holdings want it, and
// what lies in the jaws.
func (p *Part) barWanted() float64 {
	out := 0.0
	for _, s := range p.Part.Work {
		out = math.Max(out, s.StickOut.V)
	}
	return out + barBeyond
}

// partedEnd is the end that the piece is cut from the bar at.
func (p *Part) partedEnd() model.Face {
	for _, w := range p.Work {
		for _, st := range w.Steps {
			if st.Step == nil || st.Step.By.V != "parting" && st.Step.By.V != "sawing" {
				continue
			}
			for _, t := range st.Makes {
				if t.Form == nil && t.Face != model.NoFace && t.Face.Axis() == 0 {
					return t.Face
				}
			}
		}
	}
	return model.Left
}

// axial resolves a place along the axis: counted from the left end, or from the datum named.
func (p *Part) axial(pos model.Position) (x float64, ok bool) { return p.placeOn(pos, 0) }

// placeOn is the same along any axis of the part.
func (p *Part) placeOn(pos model.Position, along int) (x float64, ok bool) {
	if len(pos.Short) > 0 {
		return pos.Short[0].Nominal, true
	}
	for _, c := range pos.Coords {
		if c.Datum.Face == model.NoFace && c.Datum.Sub == "" {
			continue
		}
		if axis, at, ok := p.coordinate(c, -1); ok && axis == along {
			return at, true
		}
	}
	return 0, false
}

// stretch sets the two ends of a turned feature: as written, else as given.
func (p *Part) stretch(f *Form, lo, hi float64) (x0, x1 float64, ok bool) {
	m := f.Feature
	along := f.About.Along
	x0, x1 = lo, hi
	if m.From.Is() {
		if x0, ok = p.placeOn(m.From.V, along); !ok {
			f.Wrong = "the place of its first end does not lie along the axis"
			return 0, 0, false
		}
	}
	if m.To.Is() {
		if x1, ok = p.placeOn(m.To.V, along); !ok {
			f.Wrong = "the place of its second end does not lie along the axis"
			return 0, 0, false
		}
	}
	if x1 < x0 {
		x0, x1 = x1, x0
	}
	if x1-x0 < model.Grain {
		f.Wrong = "its two ends are the same place"
		return 0, 0, false
	}
	if x0 < p.Low[along]-model.Grain || x1 > p.High()[along]+model.Grain {
		f.Wrong = "it runs beyond the end of the finished part: from " + model.Figure(x0) + " to " + model.Figure(x1) + " mm, the part being " + model.Figure(p.Size[along]) + " mm long"
		return 0, 0, false
	}
	return x0, x1, true
}

// isOutside says that a reference names the part's own outside.
func isOutside(r model.Ref) bool {
	return r.Item == nil && r.Face == model.NoFace && (r.Text == "outside" || r.Text == "face.outside")
}

// reach is the stretch and radius of a surface; the part's own outside for nil.
func (p *Part) reach(g *Form) Lathe {
	if l, ok := g.walled(); ok {
		return l
	}
	if g == nil || g.Lathe == nil {
		r := p.Radius()
		return Lathe{X0: p.Low[0], X1: p.High()[0], R0: r, R1: r}
	}
	return *g.Lathe
}

// about is the line that a surface lies round; the part's own axis for nil.
func (f *Form) about() Axis {
	if f == nil {
		return Axis{}
	}
	if _, ok := f.walled(); ok {
		return AxisAt(f.Into.Face.Axis(), f.Mouths[0])
	}
	return f.About
}

// walled is the wall of one round hole that goes straight into an end or a face, as a bore of a lathe
// has it: grooves and tapers can lie in it.
func (f *Form) walled() (Lathe, bool) {
	if f == nil || f.Feature.Kind != "hole" || f.Wrong != "" || len(f.Mouths) != 1 || f.Into.Face == model.NoFace || !f.Depth.Is() || !f.Diameter.Is() {
		return Lathe{}, false
	}
	along, r := f.Into.Face.Axis(), f.Diameter.V/2
	if math.Abs(math.Abs(f.Dir[along])-1) > model.Same {
		return Lathe{}, false // tilted
	}
	a, b := f.Mouths[0][along], f.Mouths[0][along]+f.Dir[along]*f.Depth.V
	return Lathe{X0: math.Min(a, b), X1: math.Max(a, b), R0: r, R1: r, Inside: true}, true
}
