package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Laid is a distance of the drawing along an axis of a part: an outer size, how deep or wide a
// feature is, or where it lies.
type Laid struct {
	Form     *Form // nil: the part itself
	Of       *model.Item
	Attr     string
	Axis     int
	From, To float64 // places on the part, mm; of a placed one From is the datum
	Placed   bool
	At       solid.Vec // a place at To; of outer sizes nought
	Size     drawing.Size
}

// Laid lists the distances of a part's drawing, as they are written: the outer sizes, then feature
// by feature. Diameters are not among them, nor how deep holes are.
func (p *Part) Laid() []Laid {
	if p.Drawn != nil {
		return p.laidTurned()
	}
	var out []Laid
	for axis := range 3 {
		if p.Round && axis > 0 {
			break
		}
		hi := model.FaceOn(axis, 1)
		if s, attr := p.FaceSize(hi); s.Nominal > 0 {
			out = append(out, Laid{nil, p.Part.Item, attr, axis, p.FaceAt(hi.Opposite()), p.FaceAt(hi), false, solid.Vec{}, s})
		}
	}
	for _, f := range p.Forms {
		if f.Wrong == "" && len(f.Lacks) == 0 {
			out = append(out, p.laidBy(f)...)
		}
	}
	return out
}

func (p *Part) laidBy(f *Form) (out []Laid) {
	m := f.Feature
	put := func(attr string, ls ...Laid) {
		for _, l := range ls {
			l.Form, l.Of, l.Attr = f, m.Item, attr
			if l.At == (solid.Vec{}) && f.Lathe == nil {
				l.At = f.middle()
			}
			out = append(out, l)
		}
	}
	flat := f.Into.Face != model.NoFace
	switch {
	case len(f.Mouths) > 0:
		for i, pos := range m.At.V {
			if flat && (m.Around.Said || i < len(f.Mouths)) {
				put("at", p.legs(f.Into.Face, pos)...)
			}
		}
		return out
	case f.Lathe != nil:
		put("from", p.leg(f, m.From)...)
		put("to", p.leg(f, m.To)...)
		if flat && !p.Round && f.Rounded() { // its place lies on the face that it rises towards, or is sunk in
			for _, pos := range m.At.V {
				put("at", p.legs(f.Into.Face, pos)...)
			}
			return out
		}
		put("at", p.leg(f, model.Map(m.At, func(ps []model.Position) model.Position {
			return append(ps, model.Position{})[0]
		}))...)
		return out
	case !flat || f.Skew != nil || f.Seat != nil || len(f.Copies) > 0 || len(f.Spins) > 0:
		return nil
	}
	if m.Kind == "outline" {
		for _, pos := range m.Points.V {
			put("points", p.legs(f.Into.Face, pos)...)
		}
		return out
	}
	if d := m.Depth; f.Depth.Is() && !f.Through && d.Is() && d.V.Size.Nominal > 0 {
		floor := f.Into.At - f.Into.Face.Sign()*f.Depth.V
		put("depth", Laid{Axis: f.Into.Face.Axis(), From: floor + f.Into.Face.Sign()*d.V.Size.Nominal, To: floor, Size: d.V.Size})
	}
	if m.Width.Is() && f.Width > 0 && near(f.Hi[f.Across]-f.Lo[f.Across], m.Width.V.Nominal) {
		put("width", Laid{Axis: f.Across, From: f.Lo[f.Across], To: f.Hi[f.Across], Size: m.Width.V})
	}
	if len(m.At.V) == 1 {
		put("at", p.legs(f.Into.Face, m.At.V[0])...)
	}
	if m.From.Is() {
		put("from", p.legs(f.Into.Face, m.From.V)...)
	}
	if m.To.Is() {
		put("to", p.legs(f.Into.Face, m.To.V)...)
	}
	return out
}

// legs are the distances by which a position on a face is written.
func (p *Part) legs(f model.Face, pos model.Position) (out []Laid) {
	at, known := p.locate(f, pos)
	a, b := across(f)
	for i, s := range pos.Short {
		axis := [2]int{a, b}[min(i, 1)]
		out = append(out, Laid{Axis: axis, From: at[axis] - s.Nominal, To: at[axis], Placed: true, At: at, Size: s})
	}
	written := [3]bool{}
	var rest []model.Coordinate
	for _, c := range pos.Coords {
		axis, to, ok := p.coordinate(c, -1)
		if !ok {
			rest = append(rest, c)
			continue
		}
		if known[axis] && !written[axis] && near(to, at[axis]) {
			written[axis] = true
			sign := 1.0 // from a face of the part inwards, from one of a feature outwards
			if c.Datum.Face != model.NoFace {
				sign = -c.Datum.Face.Sign()
			} else if pl, ok := p.planeDatum(c.Datum); ok {
				sign = pl.Face.Sign()
			}
			out = append(out, Laid{Axis: axis, From: to - sign*c.Size.Nominal, To: to, Placed: true, At: at, Size: c.Size})
		}
	}
	for _, c := range rest { // from the middle of a feature, along the axis that is left
		for _, axis := range []int{a, b} {
			if g := p.FormOf(c.Datum.Item); g != nil && known[axis] && !written[axis] && near(math.Abs(at[axis]-g.middle()[axis]), math.Abs(c.Size.Nominal)) {
				written[axis] = true
				out = append(out, Laid{Axis: axis, From: g.middle()[axis], To: at[axis], Placed: true, At: at, Size: c.Size})
				break
			}
		}
	}
	return out
}

// leg is the distance along the line of a turned feature by which one of its ends is written.
func (p *Part) leg(f *Form, pos model.Known[model.Position]) []Laid {
	along := f.About.Along
	if !pos.Is() {
		return nil
	}
	to, ok := p.placeOn(pos.V, along)
	if !ok {
		return nil
	}
	if len(pos.V.Short) > 0 {
		s := pos.V.Short[0]
		return []Laid{{Axis: along, From: to - s.Nominal, To: to, Placed: true, Size: s}}
	}
	for _, c := range pos.V.Coords {
		axis, at, ok := p.coordinate(c, -1)
		if !ok || axis != along || !near(at, to) {
			continue
		}
		sign := 1.0
		if c.Datum.Face != model.NoFace {
			sign = -c.Datum.Face.Sign()
		} else if pl, ok := p.planeDatum(c.Datum); ok {
			sign = pl.Face.Sign()
		}
		return []Laid{{Axis: along, From: to - sign*c.Size.Nominal, To: to, Placed: true, Size: c.Size}}
	}
	return nil
}
