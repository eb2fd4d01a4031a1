package eval

import (
	"math"

	"fettle/schema/model"
	"fettle/schema/text"
)

// Gash is how the teeth of a worm wheel lean against the lead of the worm: degrees.
type Gash struct {
	Lead model.Known[float64] // of the worm at its pitch circle: its tangent is starts × module over pitch diameter
	At   float64              // as the teeth lean, or as they are set up to be cut
	Of   string               // which of the two: "its helix", "the tilt of setup teeth"
	Over float64              // how much of the wheel's width the worm touches at most, mm
	Play float64              // backlash, mm
	Said text.Place
}

// usualBacklash is the play of a pair whose backlash is not written, in modules: common practice.
const usualBacklash = 0.04

// Gashes lists what is written of the lean of the wheel's teeth, where it meshes with a worm: their helix,
// and the lean of the set-up that cuts them. A wheel that is gashed straight runs with a worm whose axis is
// turned instead, and nothing is said of it.
func (j *Joint) Gashes() (out []Gash) {
	o := j.Mesh
	if o == nil || !o.IsWorm || j.Unplayed != "" {
		return nil
	}
	d := o.pitchDiameter()
	mod := o.Pinion.Module
	g := Gash{Play: usualBacklash * mod.V}
	g.Lead = model.Both(d, mod, func(d, m float64) float64 {
		return math.Atan(float64(o.Pinion.Count.Or(1))*m/d) * 180 / math.Pi
	})
	if o.Play.Is() {
		g.Play = o.Play.V.Lo
	}
	// The worm's outside, one module beyond its pitch circle, stands over a chord of that length.
	g.Over = o.Wheel.Part.Size[0]
	if d.Is() && mod.Is() {
		g.Over = min(g.Over, 2*math.Sqrt(max(0, mod.V*(d.V+mod.V))))
	}
	add := func(at float64, of string, said text.Place) {
		if at != 0 {
			h := g
			h.At, h.Of, h.Said = math.Abs(at), of, said
			out = append(out, h)
		}
	}
	if h := o.Wheel.Feature.Helix; h.Said() {
		add(h.V, "the helix of "+o.Wheel.Name, h.At)
	}
	for _, s := range j.Trace.work(o.Wheel.Part) {
		if !s.Tilt.Said || !s.Tilt.By.Is() {
			continue
		}
		for _, r := range makesOf(s) {
			if r.Item == o.Wheel.Feature.Item {
				add(s.Tilt.By.V, "the tilt of "+s.Path(), s.Tilt.By.At)
				break
			}
		}
	}
	return out
}

// Off is how far a tooth runs off the worm's thread over what they touch, mm.
func (g *Gash) Off(lead float64) float64 {
	return g.Over * math.Abs(math.Tan(g.At*math.Pi/180)-math.Tan(lead*math.Pi/180))
}
