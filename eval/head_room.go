package eval

import (
	"math"

	"fettle/schema/drawing"
	"fettle/schema/model"
)

// HeadRoom is the room about the head of a screw on the face that it is screwed down to.
type HeadRoom struct {
	Hole  *Form
	Near  float64 // from its axis to the nearest metal that stands beside it, mm; infinite if none does
	Sweep float64 // half of what it sweeps as it turns, over its corners, mm
	Sunk  bool    // it stands in a counterbore, whose wall is the nearest metal
}

// headHeights are the heights of heads, in diameters of the thread: cap screws ISO 4762, hexagon ISO 4017
// from 0.64 to 0.7 (from memory).
var headHeights = map[string]float64{"cap": 1, "hexagon": 0.64}

// HeadRoom looks about a round or hexagon head on the face that its hole goes into, or in its counterbore.
// Of no concern are those of which the part that they are screwed into could lie on that face, so that
// the head is at the other end of the hole.
func (j *Joint) HeadRoom() (r model.Known[HeadRoom], concerns bool) {
	s := j.Screw
	if s == nil || len(s.Passes) == 0 || s.Passes[0].Form == nil || s.Passes[0].Part == s.Part {
		return r, false
	}
	f, piece := s.Passes[0].Form, s.Passes[0].Part.asDrawn()
	high := headHeights[s.Model.Head.V] * s.Thread.V.Diameter
	if f.Wrong != "" || f.Feature.Countersink.Said || piece == nil || !(high > 0) {
		return r, false
	}
	head := j.Head()
	if !head.Is() {
		return model.Lacking[HeadRoom](head.Missing()), true
	}
	out := HeadRoom{Hole: f, Near: math.Inf(1), Sweep: head.V / 2, Sunk: f.Feature.Counterbore.Said}
	if out.Sunk {
		wide := model.Both(f.Feature.Counterbore.Diameter, f.Feature.Counterbore.Depth, func(d, deep drawing.Size) float64 {
			if deep.Nominal < high/2 {
				return math.Inf(1) // the spanner goes on above it
			}
			return d.Nominal / 2
		})
		out.Near = wide.V
		return model.Map(wide, func(float64) HeadRoom { return out }), true
	}
	for i, m := range f.Mouths {
		up := f.dir(i).Times(-1)
		for _, h := range [3]float64{0.1, high / 2, high} {
			hub := m.Add(up.Times(s.Model.Washer.V + h))
			for _, d := range allRound(up) {
				out.Near = min(out.Near, firstMetal(piece, hub, d))
			}
		}
	}
	return model.Sure(out), math.IsInf(out.Near, 1) || s.reaches() > out.Near+model.Grain
}

// reaches is how far the part that a screw goes into reaches at the least from its axis, on the face with
// the thread, mm; a nut turns like a head, and counts as if it reached everywhere.
func (s *Screwed) reaches() float64 {
	if s.into == nil || s.Part.flats() == 6 {
		return math.Inf(1)
	}
	piece, least := s.Part.asDrawn(), math.Inf(1)
	if piece == nil {
		return 0
	}
	for i, m := range s.into.Mouths {
		in := s.into.dir(i)
		for _, d := range allRound(in) {
			for _, span := range piece.Ray(m.Add(in.Times(0.1)), d) {
				least = min(least, span.B)
				break
			}
		}
	}
	return least
}
