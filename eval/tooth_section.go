package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// The section of a gap whose sides do not stand upright: an index notch with an angle, a ratchet tooth, a
// gap of a rack. It is drawn square to the gap, as it looks to the top: places across it grow to the back,
// heights count from the surface that the teeth lie on (on the round from its crest, over the middle of the
// gap). A notch is as wide as its block says where its sides meet the surface, and its sides lean by half of
// its angle each. A ratchet's gap is a triangle: a steep side, which lies in the radius through its tip unless
// it leans, and the back of the next tooth from the foot of it up to the next tip. Its hand is the way that
// the steep sides look, seen from the right end: to the right is clockwise there, from top towards back; on a
// rack it is the way that places grow. Not written, it is taken as right, and asked for.

// GapSection is the section of a gap: foot and mouth on the lower side of it, and on the higher. mm
type GapSection struct {
	Foot, Mouth [2][2]float64 // across, height
	Steep       float64       // of a ratchet: degrees that its steep side leans under its tooth; else 0
	Ratchet     bool
}

// Section is the section of the gaps of a form whose sides are not upright; nil where they are, or it has none.
func (f *Form) Section() *GapSection {
	switch {
	case f == nil:
	case f.Tooth != nil:
		return f.Tooth.Section
	case f.Rack != nil && !f.Rack.Involute && f.Rack.leans():
		return &f.Rack.Section
	}
	return nil
}

// Included is the angle between the two sides, degrees: what an angle cutter for the gap has.
func (s *GapSection) Included() float64 {
	return s.lean(0) + s.lean(1)
}

// lean is how far a side leans from upright towards opening the gap, degrees.
func (s *GapSection) lean(side int) float64 {
	out := s.Mouth[side][0] - s.Foot[side][0]
	if side == 0 {
		out = -out
	}
	return math.Atan2(out, math.Abs(s.Mouth[side][1]-s.Foot[side][1])) * 180 / math.Pi
}

// Floor and Opening are the widths of a gap at its floor and at the surface.
func (s *GapSection) Floor() float64   { return s.Foot[1][0] - s.Foot[0][0] }
func (s *GapSection) Opening() float64 { return s.Mouth[1][0] - s.Mouth[0][0] }

// Deep is how far its floor lies below where its sides meet the surface.
func (s *GapSection) Deep() float64 { return math.Abs(s.Mouth[0][1] - s.Foot[0][1]) }

// MouthBy is how wide a gap opens whose sides are left by edges so far apart, degrees, right at its floor: half on
// either side of a notch; the steep side of a ratchet's gap as it is drawn.
func (s *GapSection) MouthBy(angle float64) float64 {
	one := angle / 2
	if s.Ratchet {
		one = min(s.lean(0), s.lean(1))
	}
	rad := math.Pi / 180
	return s.Floor() + s.Deep()*(math.Tan(one*rad)+math.Tan((angle-one)*rad))
}

// Beside is how far beside the middle of the piece the steep side of a ratchet's gap lies, as it stands
// parallel to the middle plane of the cutter.
func (s *GapSection) Beside(r float64) float64 { return r * math.Sin(s.Steep*math.Pi/180) }

// outline is what a gap takes that is so much less deep than drawn, up to a height.
func (s *GapSection) outline(up, top float64) [][2]float64 {
	var out [][2]float64
	for i := range 2 {
		f, m := s.Foot[i], s.Mouth[i]
		f[1], m[1] = f[1]+up, m[1]+up
		at := [2]float64{f[0] + (m[0]-f[0])*(top-f[1])/(m[1]-f[1]), top}
		if i == 0 {
			out = append(out, at, f)
		} else if out = append(out, f, at); s.Floor() < model.Grain {
			out = append(out[:2], out[3:]...)
		}
	}
	return out
}

// column is what a gap takes along a frame (U along it, W outwards, its place on the crest of the surface),
// from a to b, so much less deep than drawn, and up to a height.
func (s *GapSection) column(fr solid.Frame, a, b, up, top float64) (solid.Shape, error) {
	across := solid.Frame{At: fr.Point(a, 0, 0), U: fr.V, V: fr.W()}
	return across.Column(s.outline(up, top), b-a)
}

// notchSection settles the section of the gap of a notch or a ratchet tooth on the round, or, with a radius of
// 0, on a flat. False where there is none, and then f says why; true without one where the sides are
// upright.
func (p *Part) notchSection(f *Form, r float64) bool {
	t, m := f.Tooth, f.Feature
	angle := m.Notch.Angle.V
	switch {
	case t.Form == "ratchet" && t.Inside:
		f.later("ratchet teeth in a bore are not made on paper")
		return false
	case t.Form == "ratchet":
		return p.ratchetSection(f, r)
	case angle == 0:
		return true
	case angle < 0:
		f.later("a gap that is wider at its floor than at its mouth is milled along it by a dovetail cutter, and not made on paper")
		return false
	case angle >= 180:
		f.Wrong = "its sides lean apart by less than 180 degrees together, and this is " + model.Figure(angle) + " degrees"
		return false
	}
	s := GapSection{}
	tan := math.Tan(angle / 2 * math.Pi / 180)
	at, sign := 0.0, 1.0 // where the sides meet the surface, and which way the gap goes from there
	if r > 0 {
		at = math.Sqrt(math.Max(0, r*r-f.Width*f.Width/4)) - r
	}
	if t.Inside {
		sign = -1
	}
	floor := f.Width/2 - (t.Deep+sign*at)*tan
	if floor < -model.Grain {
		f.Wrong = "its sides, " + model.Figure(angle) + " degrees together and " + model.Figure(round3(f.Width)) + " mm apart at the surface, meet " +
			model.Figure(round3(f.Width/2/tan-sign*at)) + " mm below it, above its floor at " + model.Figure(t.Deep) + " mm"
		return false
	}
	floor = math.Max(0, floor)
	s.Mouth = [2][2]float64{{-f.Width / 2, at}, {f.Width / 2, at}}
	s.Foot = [2][2]float64{{-floor, -sign * t.Deep}, {floor, -sign * t.Deep}}
	t.Section = &s
	return true
}

// steepest is the most that the steep side of a ratchet tooth leans under its tooth or away from it, degrees:
// beyond that it is none.
const steepest = 45

// ratchetSection settles the triangle of a ratchet's gap.
func (p *Part) ratchetSection(f *Form, r float64) bool {
	t, m := f.Tooth, f.Feature
	under := m.Notch.Angle.V
	if math.Abs(under) > steepest {
		f.Wrong = "the steep side of a ratchet tooth leans by no more than " + model.Figure(steepest) + " degrees from the radius, and this is " + model.Figure(under) + " degrees"
		return false
	}
	s := GapSection{Ratchet: true, Steep: under}
	half, crest, own := f.Width/2, 0.0, 0.0 // of the tip from the middle; its height; the angle of its radius
	if r > 0 {
		own = math.Asin(math.Min(1, half/r))
		crest = r*math.Cos(own) - r
	}
	// Down the steep side from the tip at -half, leaning towards its own tooth.
	sin, cos := math.Sincos(own - under*math.Pi/180)
	long := (t.Deep + crest) / cos
	if r > 0 { // to where it is as deep as the tooth, measured along the radius
		in := r * math.Cos(under*math.Pi/180)
		left := r - t.Deep
		if left <= r*math.Abs(math.Sin(under*math.Pi/180)) {
			f.Wrong = "its steep side leans so far that it comes no deeper than " + model.Figure(round3(r-r*math.Abs(math.Sin(under*math.Pi/180)))) + " mm, and it is to be " + model.Figure(t.Deep) + " mm deep"
			return false
		}
		side := r * math.Sin(under*math.Pi/180)
		long = in - math.Sqrt(left*left-side*side)
	}
	foot := [2]float64{-half + long*sin, crest - long*cos}
	s.Mouth, s.Foot = [2][2]float64{{-half, crest}, {half, crest}}, [2][2]float64{foot, foot}
	if m.HandOf.V == "left" {
		for i := range 2 {
			s.Mouth[i][0], s.Foot[i][0] = -s.Mouth[i][0], -s.Foot[i][0]
		}
		s.Mouth[0], s.Mouth[1] = s.Mouth[1], s.Mouth[0]
	}
	t.Section = &s
	return true
}

// sideSteps is at how many depths the metal between two gaps is looked for.
const sideSteps = 16

// noTooth says at which depth gaps on a radius leave no metal between each other; false where they leave some
// all the way down.
func (t *Toothing) noTooth(r, width float64) (deep float64, none bool) {
	if t.Count < 2 {
		return 0, false
	}
	s := t.Section
	if s == nil {
		at := math.Sqrt(math.Max(0, r*r-width*width/4)) - r
		s = &GapSection{Mouth: [2][2]float64{{-width / 2, at}, {width / 2, at}}, Foot: [2][2]float64{{-width / 2, -t.Deep}, {width / 2, -t.Deep}}}
	}
	for i := 1; i <= sideSteps; i++ {
		deep = t.Deep * float64(i) / sideSteps
		lo, ok := s.angleAt(0, r, r-deep)
		hi, ok2 := s.angleAt(1, r, r-deep)
		if ok && ok2 && hi-lo > 2*math.Pi/float64(t.Count)+1e-9 {
			return deep, true
		}
	}
	return 0, false
}

// angleAt is where a side of a gap on a radius crosses another radius, from the middle of the gap, radians.
func (s *GapSection) angleAt(side int, r, at float64) (float64, bool) {
	f, m := s.Foot[side], s.Mouth[side]
	f[1], m[1] = f[1]+r, m[1]+r
	d := [2]float64{m[0] - f[0], m[1] - f[1]}
	a, b, c := d[0]*d[0]+d[1]*d[1], f[0]*d[0]+f[1]*d[1], f[0]*f[0]+f[1]*f[1]-at*at
	if b*b < a*c {
		return 0, false
	}
	x := (-b + math.Sqrt(b*b-a*c)) / a
	if x < -1e-9 || x > 1+1e-9 {
		return 0, false
	}
	return math.Atan2(f[0]+x*d[0], f[1]+x*d[1]), true
}
