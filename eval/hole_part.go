package eval

import (
	"math"

	"fettle/eval/reckon/thread"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Thread, counterbore and countersink of a hole: where each begins, and how wide the hole is that a
// thread of a class is cut in.

// BeginsAt is the face that a part of a hole is cut from and counts from: as it is written (a floor, the
// far face, a joint), else the face that the hole goes into. Of a hole that leans it is always that.
func (p *Part) BeginsAt(f *Form, sub string) Plane {
	m := f.Feature
	on := map[string]model.Known[model.Ref]{"thread": m.Thread.From, "counterbore": m.Counterbore.On, "countersink": m.Countersink.On}[sub]
	r, ok := on.Get()
	if !ok || f.tilted() || f.Into.Face == model.NoFace || f.Owner != nil {
		return f.Into
	}
	if p.Part.MirrorOf.Is() {
		r.Face = turned(r.Face)
	}
	pl, ok := p.PlaneOf(r)
	if !ok || pl.Face.Axis() != f.Into.Face.Axis() {
		return f.Into
	}
	return pl
}

// Recess is how deep below the face a hole goes into its thread begins, mm; far says that it begins at
// the other end and comes back from there.
func (p *Part) Recess(f *Form) (deep float64, far bool) {
	pl := p.BeginsAt(f, "thread")
	return math.Abs(f.Into.At - pl.At), pl.Face != f.Into.Face
}

// smooth is how much of a hole a screw goes through before it comes to the thread, mm, from the face the
// hole goes into. Not known where the thread begins at the other end and nobody says how long it is.
func (p *Part) smooth(f *Form) model.Known[float64] {
	deep, far := p.Recess(f)
	if !far {
		return model.Sure(deep)
	}
	return model.Map(f.Feature.Thread.Depth, func(d float64) float64 { return math.Max(0, f.Depth.V-d) })
}

// tapped is how far a hole on one of its ways is threaded, from where its thread begins: as written,
// else all that is left of the hole.
func (p *Part) tapped(f *Form) (depth float64, whole bool) {
	deep, far := p.Recess(f)
	left := f.Depth.V - deep
	if far {
		left = deep
	}
	if d, ok := f.Feature.Thread.Depth.Get(); ok && (!f.Depth.Is() || d < left-model.Grain) {
		return d, false
	}
	return left, true
}

// tapRoom is how far a hole may lie off the size for a percentage of thread, in pitches: a tenth of a
// pitch is some eight percent. Common practice.
const tapRoom = 0.1

// TapLimits are the sizes, both ends in, that a hole may have before it is tapped: those of the nut's
// minor diameter in the class that the drawing gives, else in the usual one. False where no table says.
func TapLimits(t drawing.Thread, class model.Known[string]) (Limits, bool) {
	if full, ok := handbook.FillThread(t); ok {
		t = full
	}
	if c, ok := class.Get(); ok {
		if percent, ok := drawing.ParseEngagement(c); ok {
			d, ok := thread.Hole(t, percent)
			return Limits{d - tapRoom*t.Pitch, d + tapRoom*t.Pitch}, ok
		}
		if l, err := thread.LimitsOf(t, c); err == nil && l.Inside {
			return Limits{l.MinorLo, l.MinorHi}, true
		}
	}
	lo, hi, ok := handbook.MinorLimits(t)
	return Limits{lo, hi}, ok
}

// tapHole is the hole that is drilled for a thread: that of the tables, or, where the drawing asks for
// another class and that size is not right for it, the middle of what is.
func tapHole(th *model.HoleThread) (float64, bool) {
	t := th.Size.V
	d, _, tabled := handbook.TappingDrill(t)
	if !th.Class.Is() {
		return d, tabled
	}
	l, ok := TapLimits(t, th.Class)
	if !ok || tabled && d >= l.Lo-model.Grain && d <= l.Hi+model.Grain && !isPercent(th.Class.V) {
		return d, tabled
	}
	return round3((l.Lo + l.Hi) / 2), true
}

func isPercent(class string) bool { _, ok := drawing.ParseEngagement(class); return ok }
