package eval

import (
	"math"

	"fettle/eval/reckon/gear"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// A rack lies on a flat face of a part that is not turned, on its own or on the floor of a slot or a step. It
// runs along the longer side of that face, and its gaps go straight across. `count` counts the gaps: each
// takes a pitch, half a tooth on either side of it, so that a stretch begins and ends in the middle of a
// tooth and two racks whose stretches meet go on. Gear teeth have flanks at the pressure angle and a pitch of
// pi modules; the face is their tips, and the pitch line lies the addendum (a module) below it. Notches and
// ratchet teeth share out the stretch. `from` and `to` along the rack are the ends of the stretch, across it
// the ends of the gaps; gear teeth whose stretch begins nowhere said lie in the middle of the face.

// Rack is what the teeth of a rack come to. Lengths are mm, places the part's own.
type Rack struct {
	Count    int // of gaps
	Form     string
	Involute bool
	Gear     gear.Rack
	Size     gear.RackSize // of involute teeth
	Deep     float64       // from the face to the floor of a gap
	Pitch    float64
	First    float64 // middle of the first gap
	Run      int     // axis that the rack runs along
	Lie      int     // axis that its gaps lie along
	Section  GapSection
	Walls    [2]float64 // where its floor ends at a wall along the rack, below and above; else endless
	Middle   bool       // nothing says where it begins: it lies in the middle of the face
}

// At is the middle of a gap along the rack, the first being 0.
func (r *Rack) At(gap int) float64 { return r.First + r.Pitch*float64(gap) }

// PitchLine is how far the pitch line lies below the face; 0 of teeth that have none.
func (r *Rack) PitchLine() float64 { return r.Size.Addendum }

// turnedOver is a section with its sides changed over.
func (s *GapSection) turnedOver() GapSection {
	o := *s
	for i := range 2 {
		o.Foot[i], o.Mouth[i] = s.Foot[1-i], s.Mouth[1-i]
		o.Foot[i][0], o.Mouth[i][0] = -o.Foot[i][0], -o.Mouth[i][0]
	}
	return o
}

// leans says whether the sides of its gaps are not upright.
func (r *Rack) leans() bool {
	return math.Abs(r.Section.lean(0)) > 1e-6 || math.Abs(r.Section.lean(1)) > 1e-6
}

// rackShape shapes the teeth of a rack.
func (p *Part) rackShape(f *Form) {
	m := f.Feature
	if len(m.On.V) == 0 {
		f.lack([]model.Lack{{Fact: m.Path() + ".on", At: m.Item.At}})
		return
	}
	f.lack(m.Count.Missing())
	pl, ok := p.PlaneOf(m.On.V[0])
	switch c := p.FormOf(m.On.V[0].Item); {
	case len(f.Lacks) > 0:
		return
	case c != nil && c.Feature.Kind == "taper":
		p.onCone(f)
		return
	case !ok && c != nil && c.Lathe != nil:
		f.later("teeth round a boss of a part that is not turned are not made on paper")
		return
	case !ok:
		f.Wrong = "what carries them is no flat face of this part, no floor and no bore"
		return
	case m.Count.V < 1 || m.Count.V > 2000:
		f.Wrong = "a rack has from 1 to 2000 gaps"
		return
	case m.Worm.Is() || m.Throated.V:
		f.Wrong = "a rack meshes with no worm, and has no throat"
		return
	case m.Helix.V != 0:
		f.later("a rack whose teeth lean is not made on paper")
		return
	}
	lo, hi, open := p.faceRoom(pl, m.On.V[0])
	r := Rack{Count: m.Count.V, Form: m.Form.Or("involute"), Lie: (pl.Face.Axis() + 1) % 3, Run: (pl.Face.Axis() + 2) % 3}
	if a, b := hi[r.Lie]-lo[r.Lie], hi[r.Run]-lo[r.Run]; a > b+model.Grain || math.Abs(a-b) <= model.Grain && r.Lie < r.Run {
		r.Lie, r.Run = r.Run, r.Lie
	}
	r.Walls = [2]float64{math.Inf(-1), math.Inf(1)}
	if !open[model.FaceOn(r.Run, -1)] {
		r.Walls[0] = lo[r.Run]
	}
	if !open[model.FaceOn(r.Run, 1)] {
		r.Walls[1] = hi[r.Run]
	}
	if !p.rackGaps(f, &r, &lo, &hi, &open) {
		return
	}
	if r.Deep >= p.far(pl)-model.Grain {
		f.Wrong = "its gaps are " + model.Figure(round3(r.Deep)) + " mm deep, and the part is " + model.Figure(p.far(pl)) + " mm thick there"
		return
	}
	n := pl.Face.Axis()
	f.Into, f.Dir, f.Depth, f.Width = pl, Normal(pl.Face).Times(-1), model.Sure(r.Deep), r.Section.Opening()
	f.Lo, f.Hi, f.Along, f.Across, f.Open = lo, hi, r.Lie, r.Run, open
	f.Lo[n], f.Hi[n] = pl.At, pl.At
	if pl.Face.Sign() > 0 {
		f.Lo[n] -= r.Deep
	} else {
		f.Hi[n] += r.Deep
	}
	f.Open[pl.Face] = true
	f.Rack = &r
}

// faceRoom is the room of a flat face, and the sides at which it ends in the open.
func (p *Part) faceRoom(pl Plane, on model.Ref) (lo, hi solid.Vec, open [7]bool) {
	lo, hi = p.Low, p.High()
	if g := p.FormOf(on.Item); g != nil && on.Sub != "" {
		lo, hi, open = g.Lo, g.Hi, g.Open
	}
	for _, f := range model.Faces {
		if f.Axis() != pl.Face.Axis() {
			open[f] = open[f] || f.Sign() < 0 && near(lo[f.Axis()], p.Low[f.Axis()]) || f.Sign() > 0 && near(hi[f.Axis()], p.High()[f.Axis()])
		}
	}
	return lo, hi, open
}

// rackGaps settles the gaps of a rack and the stretch that they take; false where there are none, and then f
// says why.
func (p *Part) rackGaps(f *Form, r *Rack, lo, hi *solid.Vec, open *[7]bool) bool {
	var said [2]bool // an end along the rack
	for i, k := range [2]model.Known[model.Position]{f.Feature.From, f.Feature.To} {
		if !k.Is() {
			continue
		}
		axis := r.Run
		at, ok := p.placeOn(k.V, axis)
		if !ok || len(k.V.Short) > 0 {
			if at, ok = p.placeOn(k.V, r.Lie); ok && len(k.V.Short) == 0 {
				axis = r.Lie
			} else if at, ok = p.placeOn(k.V, r.Run); !ok {
				f.Wrong = "one of its ends lies neither along the rack nor across it"
				return false
			}
		}
		end, sign := &lo[axis], -1.0
		if i == 1 {
			end, sign = &hi[axis], 1
		}
		if (at-*end)*sign > model.Grain {
			f.Wrong = "it runs beyond its face, which ends at " + model.Figure(*end) + " mm, to " + model.Figure(at) + " mm"
			return false
		}
		said[i] = said[i] || axis == r.Run
		if open[model.FaceOn(axis, sign)] = open[model.FaceOn(axis, sign)] && near(at, *end); true {
			*end = at
		}
	}
	if hi[r.Run]-lo[r.Run] < model.Grain || hi[r.Lie]-lo[r.Lie] < model.Grain {
		f.Wrong = "its two ends are the same place"
		return false
	}
	if involute(f.Feature) {
		return p.gearRack(f, r, lo, hi, said)
	}
	return p.notchRack(f, r, lo, hi)
}

// gearRack settles the gaps of a rack for a wheel.
func (p *Part) gearRack(f *Form, r *Rack, lo, hi *solid.Vec, said [2]bool) bool {
	m := f.Feature
	w, lacks := teethWheel(p.Build, m)
	if len(lacks) > 0 {
		f.lack(lacks)
		return false
	}
	if m.Shifted.V != 0 {
		f.Wrong = "a rack has no profile shift: its pitch line lies a module below the face that carries it"
		return false
	}
	r.Gear = gear.Rack{Module: w.Module, Pressure: w.Pressure, Thinning: w.Thinning}
	s, err := r.Gear.Size()
	if err != nil {
		f.Wrong = err.Error()
		return false
	}
	r.Involute, r.Size, r.Pitch, r.Deep = true, s, s.Pitch, s.Whole+s.Deeper
	if m.Depth.Is() {
		r.Deep = m.Depth.V.Size.Nominal
	}
	lean := math.Tan(w.Pressure * math.Pi / 180)
	mouth := s.Mouth / 2
	floor := mouth - r.Deep*lean
	if floor < 0 || r.Deep <= 0 {
		f.Wrong = "at a depth of " + model.Figure(r.Deep) + " mm its gaps have no floor: their flanks meet at " + model.Figure(round3(mouth/lean)) + " mm"
		return false
	}
	r.Section = GapSection{Mouth: [2][2]float64{{-mouth, 0}, {mouth, 0}}, Foot: [2][2]float64{{-floor, -r.Deep}, {floor, -r.Deep}}}
	takes, has := s.Pitch*float64(r.Count), hi[r.Run]-lo[r.Run]
	switch {
	case takes > has+asWritten:
		f.Wrong = "its " + model.Figure(float64(r.Count)) + " gaps take " + model.Figure(round3(takes)) + " mm, pi modules each, and there are " + model.Figure(round3(has)) + " mm"
		return false
	case said[0] && said[1] && takes < has-asWritten:
		f.Wrong = "its " + model.Figure(float64(r.Count)) + " gaps take " + model.Figure(round3(takes)) + " mm, pi modules each, and between its ends are " + model.Figure(round3(has)) + " mm: write one end, or another count"
		return false
	case said[1] && !said[0]:
		lo[r.Run] = hi[r.Run] - takes
	case !said[0]:
		r.Middle = true
		lo[r.Run] += (has - takes) / 2
	}
	hi[r.Run] = lo[r.Run] + takes
	r.First = lo[r.Run] + s.Pitch/2
	return true
}

// asWritten is how far a length that is written may be off what pi modules come to, mm: to two places.
const asWritten = 0.005

// notchRack settles the gaps of a rack of notches or ratchet teeth.
func (p *Part) notchRack(f *Form, r *Rack, lo, hi *solid.Vec) bool {
	m := f.Feature
	if r.Form = m.Form.Or("notch"); r.Form == "cycloidal" {
		f.Wrong = "cycloidal teeth are those of clockwork: no cutter is made for a rack of them; a rack for a wheel is involute, and the rack of a striking work has ratchet teeth"
		return false
	}
	if !m.Notch.Depth.Is() {
		f.lack(m.Notch.Depth.Missing())
		return false
	}
	r.Pitch = (hi[r.Run] - lo[r.Run]) / float64(r.Count)
	r.First = lo[r.Run] + r.Pitch/2
	r.Deep = m.Notch.Depth.V.Nominal
	f.Width = r.Pitch
	if m.Notch.Width.Is() {
		f.Width = m.Notch.Width.V.Nominal
	}
	f.Tooth = &Toothing{Form: r.Form, Count: r.Count, Deep: r.Deep}
	ok := r.Deep > 0 && p.notchSection(f, 0)
	s := f.Tooth.Section
	f.Tooth = nil
	if s == nil {
		half := f.Width / 2
		s = &GapSection{Mouth: [2][2]float64{{-half, 0}, {half, 0}}, Foot: [2][2]float64{{-half, -r.Deep}, {half, -r.Deep}}}
	}
	r.Section = *s
	switch {
	case !ok:
		if f.Wrong == "" && len(f.Lacks) == 0 {
			f.Wrong = "its gaps have no depth"
		}
		return false
	case f.Width > r.Pitch+asWritten || f.Width >= r.Pitch-model.Grain && !r.leans(), s.Foot[1][0]-s.Foot[0][0] >= r.Pitch-model.Grain,
		s.Ratchet && math.Abs(s.Foot[0][0]) > math.Abs(s.Mouth[0][0])+r.Pitch-f.Width && p.noRackTooth(s, r.Pitch):
		f.Wrong = "its gaps run into each other: they stand " + model.Figure(round3(r.Pitch)) + " mm apart and are " + model.Figure(round3(f.Width)) + " mm wide"
		return false
	}
	return true
}

// noRackTooth says whether the foot of an undercut ratchet tooth comes through its back.
func (p *Part) noRackTooth(s *GapSection, pitch float64) bool {
	steep := 0
	if s.Foot[0][0] > 0 {
		steep = 1
	}
	back := 1 - steep
	sign := math.Copysign(1, s.Mouth[back][0])
	// The back of the tooth before it at the height of the foot: its own foot, a pitch away.
	return sign*(s.Foot[steep][0]-(s.Foot[back][0]-sign*pitch)) <= model.Grain
}

// gapAt is what one gap of a rack takes, so deep, past open sides by over.
func (f *Form) gapAt(gap int, down, over float64) []solid.Removal {
	r := f.Rack
	var along, at solid.Vec
	var run solid.Vec
	run[r.Run] = 1
	out := Normal(f.Into.Face)
	along = run.Cross(out) // so that W x U is the way that places grow
	at[r.Run], at[f.Into.Face.Axis()] = r.At(gap), f.Into.At
	at[r.Lie] = (f.Lo[r.Lie] + f.Hi[r.Lie]) / 2
	half := (f.Hi[r.Lie] - f.Lo[r.Lie]) / 2
	ends := [2]float64{half, half} // towards lower and higher places
	for i, sign := range [2]float64{-1, 1} {
		if f.Open[model.FaceOn(r.Lie, sign)] {
			ends[i] += over
		}
	}
	if along[r.Lie] < 0 {
		ends[0], ends[1] = ends[1], ends[0]
	}
	s, err := r.Section.column(solid.On(at, along, out), -ends[0], ends[1], r.Deep-down, over)
	return one(s, err, f.Name())
}
