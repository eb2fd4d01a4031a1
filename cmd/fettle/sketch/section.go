package sketch

import (
	"fettle/eval/solid"

	"fmt"
)

// Section gives the cut face of a part on a plane through a place, seen in a view whose
// Towards is the plane's normal: its outlines as wide lines. hatch has the same outlines as
// places, for Hatch.
func (v View) Section(p *solid.Piece, through solid.Vec, at Point, scale float64) (lines []Stroke, hatch [][]Point, err error) {
	loops, err := p.Section(through, v.Towards)
	if err != nil {
		return nil, nil, fmt.Errorf("section: %w", err)
	}
	for _, l := range loops {
		var ps []Point
		for i := range l.Sides {
			s := &l.Sides[i]
			lines = append(lines, v.stroke(&s.Edge, at, scale, Wide))
			for _, q := range s.Points[:len(s.Points)-1] {
				ps = append(ps, at.add(v.flat(q).times(scale)))
			}
		}
		hatch = append(hatch, ps)
	}
	return once(lines, nil), hatch, nil
}
