package eval

import (
	"math"

	"fettle/eval/reckon/gear"
	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// How a gap of teeth lies, as it looks to the top:
//
//   - Straight: a block along the axis, between two walls.
//   - Helical: the piece turns as the table goes. A gap is laid in chords, each leaning by the helix
//     angle and turned on by what the piece turns in half its length; they are so short that the floor of a
//     chord rises by less than a fiftieth of the depth at its ends. There is never less metal than drawn
//     but where two chords overlap, by less than that.
//   - The straight gash of a worm wheel leans as the worm's thread does and does not turn: one chord.
//   - Throated: the floor lies round the worm's axis, and so does the hollow of the tips: a ring of
//     cones that takes no more than the drawing.
//   - In a bore: a block from the line of the bore out to the floor, in the frame in which that line is x.
//   - Notches and ratchet teeth: the section that is drawn, along the axis or along a helix alike.
//
// A lean to the right goes, seen from the top with the left end at the left, towards the front as x grows.

// mostChords bounds the chords of all gaps of a wheel together.
const mostChords = 400

// toothLean settles how the gaps lean from the axis.
func (p *Part) toothLean(f *Form, r float64) bool {
	m, t := f.Feature, f.Tooth
	hand := m.HandOf.V
	leans := m.Helix.V != 0
	switch {
	case t.Form == "cycloidal":
		if leans {
			f.Wrong = "cycloidal teeth are those of clockwork, which are straight: no cutter is made for any that lean; teeth on a helix are involute"
		}
		return !leans
	case t.Form == "ratchet": // its hand is the way that it drives
		if hand = "right"; m.Helix.V < 0 {
			hand = "left"
		}
	case m.Helix.V < 0:
		f.Wrong = "its helix is below nought, and which way teeth lean is said by their hand; only of a ratchet, whose hand says which way it drives, a helix below nought is a left-hand one"
		return false
	case m.Worm.Is():
		if worm := featureOf(p.Build, m.Worm.V.Item); worm != nil && !m.HandOf.Is() {
			hand = worm.HandOf.Or("right")
		}
	case (hand == "left" || hand == "right") && !leans:
		f.lack([]model.Lack{{Fact: m.Path() + ".helix", At: m.Item.At}})
		return false
	case leans && hand != "left" && hand != "right":
		f.lack([]model.Lack{{Fact: m.Path() + ".hand", At: m.Item.At}})
		return false
	}
	if !leans {
		return true
	}
	t.Lean = math.Abs(m.Helix.V)
	if hand == "left" {
		t.Lean = -t.Lean
	}
	switch {
	case t.Form == "notch" || t.Form == "ratchet":
		if math.Abs(t.Lean) > 75 || t.Inside {
			f.later("gaps that lean by more than 75 degrees, or lie on a helix in a bore, are not made on paper")
			return false
		}
		t.Lead = 2 * math.Pi * r / math.Tan(math.Abs(t.Lean)*math.Pi/180)
	case !m.Worm.Is():
		t.Lead = t.Blank.Lead
	}
	return true
}

// Throat is how the teeth of a worm wheel are hollowed. Lengths are mm.
type Throat struct {
	Drive gear.Drive
	Worm  float64 // pitch diameter of the worm
	Hand  string  // of the worm
}

// Floor is the radius of the floor of the gaps in the middle of the rim.
func (t *Throat) Floor() float64 { return t.Drive.WheelRoot / 2 }

// Reach is the radius, about the worm's axis, of the floor of the gaps.
func (t *Throat) Reach() float64 { return t.Drive.Centre - t.Floor() }

// Deep is how far the floor of the gaps lies beyond the hollow, about the worm's axis: so far the edge of a
// tool that leaves both stands out of what carries it.
func (t *Throat) Deep() float64 { return t.Reach() - t.Drive.ThroatRadius }

// tip is how far from the axis the hollow leaves the tips, so far aside of the middle of the rim.
func (t *Throat) tip(aside float64) float64 {
	r := t.Drive.ThroatRadius
	return t.Drive.Centre - math.Sqrt(math.Max(0, r*r-aside*aside))
}

// throat settles the hollow of a worm wheel whose rim is so wide.
func (p *Part) throat(f *Form, face float64) bool {
	m, t := f.Feature, f.Tooth
	worm := featureOf(p.Build, m.Worm.V.Item)
	switch {
	case !t.Involute || t.Inside:
		f.Wrong = "only the teeth of a worm wheel on an outside are throated"
		return false
	case worm == nil:
		f.lack(m.Worm.Missing())
		if m.Worm.Is() {
			f.lack([]model.Lack{{Fact: m.Path() + ".worm", At: m.Item.At}})
		}
		return false
	}
	d := wormDiameter(p.Build, worm)
	if !d.Is() {
		f.lack(d.Missing())
		return false
	}
	drive, err := gear.Worm{Starts: worm.Starts.Or(1), Teeth: t.Count, Module: t.Module, Diameter: d.V, Pressure: t.Wheel.Pressure, Face: face}.Drive()
	if err != nil {
		f.Wrong = err.Error()
		return false
	}
	t.Throat = &Throat{Drive: drive, Worm: d.V, Hand: worm.HandOf.Or("right")}
	return true
}

// wormDiameter is the pitch diameter of a worm: as written, else its outside less two modules.
func wormDiameter(b *model.Build, worm *model.Feature) model.Known[float64] {
	if worm.PitchDiameter.Is() {
		return model.Map(worm.PitchDiameter, nominal)
	}
	d := model.Known[float64]{Of: worm.Item, Attr: "pitch_diameter", At: worm.Item.At}
	for _, p := range b.Parts {
		for _, f := range p.Features {
			if f.Item != worm.Item {
				continue
			}
			out := p.Diameter
			for _, g := range p.Features {
				if len(worm.On.V) > 0 && g.Item == worm.On.V[0].Item || len(worm.On.V) == 0 && g.Kind == "outside" {
					out = g.Diameter
				}
			}
			d = model.Map(out, func(s drawing.Size) float64 { return s.Nominal })
		}
	}
	return model.Both(d, worm.AxialModule(), func(a, m float64) float64 { return a - 2*m })
}

// gap is what one gap takes, so deep from the surface that the teeth lie on, past open sides by over.
func (f *Form) gap(down, over float64) []solid.Removal {
	t := f.Tooth
	switch {
	case t.Inside:
		return f.insideGap(down, over)
	case t.Throat != nil:
		return f.throated(down)
	case t.Lean != 0:
		return f.leaning(down, over)
	case t.Section != nil:
		a, b := t.X0, t.X1
		if f.Open[model.Left] {
			a -= over
		}
		if f.Open[model.Right] {
			b += over
		}
		s, err := t.Section.column(crest(0, t.On), a, b, t.Deep-down, over)
		return one(s, err, f.Name())
	}
	g := *f
	g.Lo[2] = f.Hi[2] - down
	return g.removal(over, 0)
}

// crest is the frame of a straight gap that looks to the top: U along the axis, W up, its place on the surface
// of a radius.
func crest(x, r float64) solid.Frame {
	return solid.On(solid.Vec{x, 0, r}, solid.Vec{1, 0, 0}, solid.Vec{0, 0, 1})
}

// one is a removal of its own; none where there is no shape.
func one(s solid.Shape, err error, by string) []solid.Removal {
	if err != nil {
		return nil
	}
	return []solid.Removal{{Take: s, By: by}}
}

// insideGap is what one gap in a bore takes, in the frame in which the line of the bore is x.
func (f *Form) insideGap(down, over float64) []solid.Removal {
	t := f.Tooth
	a, b := t.X0, t.X1
	least, most := f.About.Ends()
	if f.Open[least] {
		a -= over
	}
	if f.Open[most] {
		b += over
	}
	if s := t.Section; s != nil {
		shape, err := s.column(crest(0, t.On), a, b, down-t.Deep, s.Mouth[0][1]+down-t.Deep)
		return append(one(shape, err, f.Name()), solid.Removal{Take: solid.Box(solid.Vec{a, s.Mouth[0][0], 0}, solid.Vec{b, s.Mouth[1][0], t.On + s.Mouth[0][1]}), By: f.Name()})
	}
	return []solid.Removal{{Take: solid.Box(solid.Vec{a, -f.Width / 2, 0}, solid.Vec{b, f.Width / 2, t.On + down}), By: f.Name()}}
}

// leanDir is the direction of a gap in the middle of its length.
func (t *Toothing) leanDir() solid.Vec {
	sin, cos := math.Sincos(t.Lean * math.Pi / 180)
	return solid.Vec{cos, -sin, 0}
}

// leaning lays a gap that leans, in chords where the piece turns in the cut.
func (f *Form) leaning(down, over float64) []solid.Removal {
	t := f.Tooth
	lean := math.Abs(t.Lean) * math.Pi / 180
	long := f.Hi[0] - f.Lo[0]
	n := 1
	if t.Lead > 0 {
		rise := t.Root + t.Deep/50
		half := math.Sqrt(rise*rise - t.Root*t.Root)
		n = int(math.Ceil(long * math.Tan(lean) / 2 / half))
		n = max(1, min(n, mostChords/t.Count))
	}
	mid := (f.Lo[0] + f.Hi[0]) / 2
	along := t.leanDir()
	var out []solid.Removal
	for i := range n {
		x := f.Lo[0] + long*(float64(i)+0.5)/float64(n)
		a := long / float64(n) / 2 / math.Cos(lean)
		b := a
		if i == 0 && f.Open[model.Left] {
			a += over + f.Width*math.Tan(lean)
		}
		if i == n-1 && f.Open[model.Right] {
			b += over + f.Width*math.Tan(lean)
		}
		fr := solid.On(solid.Vec{x, 0, 0}, along, solid.Vec{0, 0, 1})
		one := solid.Removal{Take: fr.Block(solid.Vec{-a, -f.Width / 2, f.Hi[2] - down}, solid.Vec{b, f.Width / 2, f.Hi[2] + over}), By: f.Name()}
		if t.Section != nil {
			s, err := t.Section.column(solid.On(solid.Vec{x, 0, t.On}, along, solid.Vec{0, 0, 1}), -a, b, t.Deep-down, over)
			if err != nil {
				return nil
			}
			one.Take = s
		}
		if t.Lead > 0 {
			turn := 360 * (x - mid) / t.Lead
			if t.Lean > 0 {
				turn = -turn // a right-hand gap goes from the top towards the front
			}
			one = turnedBack(one, towards(turn).Inverse())
		}
		out = append(out, one)
	}
	return out
}

// hollowSteps is how many straight pieces stand for the floor of a throated gap, and for the hollow of its
// rim; a gash that is not finished yet has two.
const hollowSteps = 6

// gashShare is how much narrower a gash is than the gap that it becomes: a share of its width, our own.
const gashShare = 0.05

// throated lays a gap round the worm's axis, which stands over the middle of the rim: a column over a
// piece of a disc, so wide as the gap, that leans as the gap does.
func (f *Form) throated(down float64) []solid.Removal {
	t := f.Tooth
	long := (f.Hi[0] - f.Lo[0]) / 2
	r := t.Throat.Reach()
	reach := math.Min(r, long/math.Cos(t.Lean*math.Pi/180)+f.Width)
	centre := t.Throat.Drive.Centre + t.Deep - down
	steps, wide := 2, (1-gashShare)*f.Width
	if down >= t.Deep-model.Grain {
		steps, wide = hollowSteps, f.Width
	}
	var floor [][2]float64
	for i := range steps + 1 {
		u := reach * (2*float64(i)/float64(steps) - 1)
		floor = append(floor, [2]float64{u, centre - math.Sqrt(math.Max(0, r*r-u*u))})
	}
	floor = append(floor, [2]float64{reach, centre}, [2]float64{-reach, centre})
	along := t.leanDir()
	// U along the gap, V from the axis out, so that W lies across the gap.
	fr := solid.Frame{At: solid.Vec{(f.Lo[0] + f.Hi[0]) / 2, 0, 0}, U: along, V: solid.Vec{0, 0, 1}}
	fr.At = fr.At.Sub(fr.W().Times(wide / 2))
	s, err := fr.Column(floor, wide)
	if err != nil {
		return nil
	}
	return []solid.Removal{{Take: s, By: f.Name()}}
}

// hollow is the half section of a throated rim: places along the axis with the radius of the tips.
func (f *Form) hollow() []solid.Station {
	var out []solid.Station
	mid := (f.Lo[0] + f.Hi[0]) / 2
	for i := range hollowSteps + 1 {
		x := f.Lo[0] + (f.Hi[0]-f.Lo[0])*float64(i)/hollowSteps
		out = append(out, solid.Station{X: x, R: math.Min(f.Hi[2], f.Tooth.Throat.tip(x-mid))})
	}
	return out
}
