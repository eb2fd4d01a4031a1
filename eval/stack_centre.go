package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// CentreBody gives the diameter of the body of a centre drill, and how high above its tip it begins: behind
// the pilot comes a cone of 60 degrees. As written, else of ISO 866; false of other tools, and of a pilot
// that the standard does not have and of which nothing is written.
func CentreBody(t Pick) (body, pilot, begins float64, ok bool) {
	c := t.Cutter
	if c == nil || c.Kind != "centre_drill" || !(t.Size > 0) {
		return 0, 0, 0, false
	}
	of, length, found := handbook.CentreDrill(t.Size)
	switch {
	case c.BodyDiameter.Is():
		of = c.BodyDiameter.V
	case c.Shank.Is() && c.Shank.V.Diameter > 0:
		of = c.Shank.V.Diameter
	case !found:
		return 0, 0, 0, false
	}
	if !found {
		length = 1.3 * t.Size // as those of the standard have it
	}
	if of < t.Size {
		return 0, 0, 0, false
	}
	return of, length, length + (of-t.Size)/2/math.Tan(math.Pi/6), true
}

// centreDrill builds a centre drill up to the face of what holds it; false of other tools.
func (s *Stack) centreDrill(t Pick, out float64) bool {
	body, pilot, begins, ok := CentreBody(t)
	if !ok {
		return false
	}
	d, item := s.Diameter, t.Cutter.Item
	s.round("the pilot of "+t.Path(), item, 0, min(pilot, out), d, true)
	if pilot < out {
		cone := solid.Turned{Z0: pilot, Z1: min(begins, out), R0: d.V / 2, R1: body / 2, Name: "the cone of " + t.Path()}
		s.Bodies = append(s.Bodies, Body{Name: cone.Name, Item: item, Cuts: true, Least: cone, Most: cone})
	}
	if begins < out {
		s.round("the body of "+t.Path(), item, begins, out, model.Sure(body), false)
	}
	return true
}
