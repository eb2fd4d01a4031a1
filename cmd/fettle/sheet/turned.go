package sheet

import (
	"math"
	"slices"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// turned draws one set-up on a lathe, headstock on the left: x along the axis from the jaw face to
// the tailstock, y away from the one who stands there.
type turned struct {
	h     *eval.Chucking
	k     *eval.Turn // nil: as the piece is put up
	s     *sketch.Setting
	shown float64 // how far from the axis is drawn
	lacks []string
	plain []string // what is drawn plain, since its shape is not said
}

// Turned draws a holding on a lathe as it is before an operation, with the ways of the tip.
func Turned(h *eval.Chucking, k *eval.Turn) sketch.Setting {
	s := sketch.Setting{Name: h.Spot.String()}
	piece := h.Before.Piece
	if k != nil {
		s.Name, piece = k.Spot.String(), k.Before.Piece
	}
	s.Piece = shortened(piece.Placed(onLathe(h)), h)
	t := turned{h: h, k: k, s: &s}
	s.Panes = []sketch.Pane{
		{View: sketch.Top, Says: "Section, from above", Cut: true, Axis: []solid.Vec{{-400, 0, 0}, {4000, 0, 0}}},
		{View: sketch.Right, Says: "From the tailstock", Axis: []solid.Vec{{0, 0, 0}, {1, 0, 0}}},
	}
	bound(&s)
	for i := range s.Panes {
		s.Panes[i].Lo, s.Panes[i].Hi = s.Lo, s.Hi
	}
	t.shown = max(s.Hi[1], -s.Lo[1], s.Hi[2], -s.Lo[2])
	t.shown += max(jawShown, t.shown/3)
	t.grip()
	t.support()
	t.standsOut()
	if k != nil {
		t.tool()
		t.tips()
	}
	t.zero()
	t.bounds()
	s.Foot = append(s.Foot, t.lies())
	slices.Sort(t.plain)
	if plain := slices.Compact(t.plain); len(plain) > 0 {
		s.Foot = append(s.Foot, "Shape not known, drawn plain: "+strings.Join(plain, ", ")+".")
	}
	s.Foot = append(s.Foot, unknown(t.lacks)...)
	return s
}

// onLathe is the pose in the lathe's frame: x along the axis from the jaw face to the tailstock.
func onLathe(h *eval.Chucking) solid.Pose {
	if h.Sign < 0 {
		return solid.Attitude(solid.Vec{0, 0, 1}, solid.Vec{0, -1, 0}).Shifted(solid.Vec{h.Jaw, 0, 0})
	}
	return solid.Still().Shifted(solid.Vec{-h.Jaw, 0, 0})
}

// shortened leaves out what of a long bar lies behind the chuck's face.
func shortened(p *solid.Piece, h *eval.Chucking) *solid.Piece {
	behind := -h.JawLength.Or(0) - bodyShown
	if lo := p.Extent(0, -1); lo < behind {
		const wide = 1e4
		return p.Cut(solid.Removal{Take: solid.Box(solid.Vec{lo - 1, -wide, -wide}, solid.Vec{behind, wide, wide}), By: "left out of the drawing"})
	}
	return p
}

// grip stands what holds the piece, as far as its sizes are known.
func (t *turned) grip() {
	h := t.h
	put := func(x sketch.Thing) { t.s.Things = append(t.s.Things, x) }
	switch c := &h.Choice; {
	case c.Faceplate != nil:
		face := -h.Under()
		r := c.Faceplate.Diameter.Or(0) / 2
		t.lack(c.Faceplate.Diameter.Missing())
		if r > 0 {
			put(sketch.Thing{Name: c.Faceplate.Path(), Shape: solid.Cylinder(solid.Vec{face - bodyShown, 0, 0}, solid.Vec{face, 0, 0}, r)})
		}
		t.anglePlate(face)
	case c.Chuck != nil:
		t.chuck()
	case c.Collets != nil && h.Gripped > 0:
		t.plain = append(t.plain, "collet")
		put(sketch.Thing{Name: h.Choice.HeldBy() + ", its face", Shape: solid.Cylinder(solid.Vec{-bodyShown, 0, 0}, solid.Vec{0, 0, 0}, h.Gripped/2+5)})
	case c.Mandrel != nil && h.Gripped > 0:
		t.mandrel()
	case c.Centres:
		put(sketch.Thing{Name: "centre in the headstock", Shape: centrePoint(0, -1)})
		t.plain = append(t.plain, "centre of 60 degrees")
	}
}

// anglePlate stands an angle plate on a faceplate whose face lies at a place: foot and upright, as far as they are
// known.
func (t *turned) anglePlate(face float64) {
	s, ok := t.h.Shelf()
	if !ok {
		return
	}
	a := s.Plate
	t.lack(s.Foot.Missing())
	if !s.Foot.Is() {
		return
	}
	thick, known := a.Thickness.Get()
	if !known {
		t.lack(a.Thickness.Missing())
		thick = 1
	}
	// In the frame of the line that turns x runs along the part; here it runs to the tailstock.
	out := onLathe(t.h).Dir(s.Towards)
	across := solid.Vec{0, -out[2], out[1]}
	leg := func(name string, x0, x1, r0, r1 float64) {
		lo, hi := out.Times(r0).Add(across.Times(-s.Bend.V/2)), out.Times(r1).Add(across.Times(s.Bend.V/2))
		for i := range lo {
			lo[i], hi[i] = min(lo[i], hi[i]), max(lo[i], hi[i])
		}
		lo[0], hi[0] = x0, x1
		t.s.Things = append(t.s.Things, sketch.Thing{Name: name, Shape: solid.Box(lo, hi)})
	}
	t.shown = max(t.shown, s.Off+thick+around, s.Bend.V/2+around)
	leg(a.Path()+", its foot", face, face+s.Foot.V, s.Off, s.Off+thick)
	leg(a.Path()+", its upright", face, face+thick, s.Off, s.Off+s.Upright.V)
}

// mandrel stands a mandrel in the bore, with its shoulder and its nut.
func (t *turned) mandrel() {
	h, m := t.h, t.h.Choice.Mandrel
	put := func(name string, lo, hi, r float64) {
		t.s.Things = append(t.s.Things, sketch.Thing{Name: name, Shape: solid.Cylinder(solid.Vec{lo, 0, 0}, solid.Vec{hi, 0, 0}, r)})
		for i := range t.s.Panes {
			reach(&t.s.Panes[i], solid.Vec{lo, 0, 0})
			reach(&t.s.Panes[i], solid.Vec{hi, 0, 0})
		}
	}
	held, free := t.s.Lo[0], t.s.Hi[0]
	lo, hi := held-15, free+15
	if l, ok := m.Length.Get(); ok {
		mid := (held + free) / 2
		lo, hi = mid-l/2, mid+l/2
	}
	d, shouldered := m.Shoulder.Get()
	shouldered = shouldered && d > h.Gripped
	if shouldered {
		lo, hi = held, max(held+m.Length.Or(0), 0)
		put(m.Path()+", its shoulder", held-shoulderShown, held, d/2)
	}
	if nut := m.Nut.V; h.NutAtEnd() {
		hi = free + 1.2*nut.Diameter
		put("nut "+nut.String(), free, free+0.8*nut.Diameter, 0.85*nut.Diameter) // the proportions of common nuts
		t.plain = append(t.plain, "nut")
	}
	put(m.Path(), lo, hi, h.Gripped/2)
}

// shoulderShown is how much of a mandrel behind its shoulder is drawn, mm.
const shoulderShown = 8.0

// centrePoint is a centre of 60 degrees with its point at a place of the axis, drawn plain.
func centrePoint(x, side float64) solid.Shape {
	const l = 14.0
	return solid.Cone(solid.Vec{x, 0, 0}, solid.Vec{x + side*l, 0, 0}, 0, l*math.Tan(math.Pi/6))
}

// chuck stands jaws and body of a chuck. In the section two jaws are turned into the plane of the
// drawing, whatever their number; seen from the end each stands where it is.
func (t *turned) chuck() {
	h := t.h
	c, l := h.Choice.Chuck, h.JawLength
	if !l.Is() {
		t.lack(l.Missing())
	}
	if !(h.Gripped > 0) {
		return
	}
	long := l.Or(2)
	r := h.Gripped / 2
	outer := max(c.Diameter.Or(0)/2, r+10)
	if h.Inside { // they stand in the bore
		outer, r = r, max(r-10, r/3)
	}
	name := "jaws"
	for _, side := range []float64{-1, 1} {
		a, b := side*r, side*outer
		t.s.Things = append(t.s.Things, sketch.Thing{Name: name, In: []int{elevation},
			Shape: solid.Box(solid.Vec{-long, min(a, b), -jawHalf}, solid.Vec{0, max(a, b), jawHalf})})
	}
	n := c.Jaws.Or(0)
	for i := range min(n, 12) {
		at := r
		if len(h.JawsAt) == n {
			break // each stands at a place of its own, and which is where is not said here
		}
		half := min(jawHalf, 0.8*r)
		turn := turnedBy(2 * math.Pi * float64(i) / float64(n))
		t.s.Things = append(t.s.Things, sketch.Thing{In: []int{plan},
			Shape: solid.Box(solid.Vec{-long, -half, at}, solid.Vec{0, half, outer}).Placed(turn)})
	}
	t.plain = append(t.plain, "jaws")
	if d := c.Diameter; d.Is() {
		t.s.Things = append(t.s.Things, sketch.Thing{Name: c.Path(), In: []int{elevation},
			Shape: solid.Cylinder(solid.Vec{-long - bodyShown, 0, 0}, solid.Vec{-long, 0, 0}, d.V/2)})
	}
	for i := range t.s.Panes {
		reach(&t.s.Panes[i], solid.Vec{-long - bodyShown, 0, 0})
	}
	if !h.Step && h.Contact > 0.05 && h.Contact < long-0.05 && len(h.JawsAt) == 0 {
		t.gauge(-h.Contact, 0)
	}
}

// turnedBy turns about the axis of the lathe.
func turnedBy(angle float64) solid.Pose {
	sin, cos := math.Sincos(angle)
	return solid.Attitude(solid.Vec{0, sin, cos}, solid.Vec{0, cos, -sin})
}

// support stands a centre or a steady.
func (t *turned) support() {
	h := t.h
	if h.CentreStands() && !(t.k != nil && t.k.Choice.Withdrawn) {
		name := "centre in the tailstock"
		if s := h.Choice.Support; s != nil && s.Centre != nil {
			name = s.Centre.Path()
		}
		x := t.s.Hi[0] - 3
		t.s.Things = append(t.s.Things, sketch.Thing{Name: name, Shape: centrePoint(x, 1), In: []int{elevation}})
		t.plain = append(t.plain, "centre of 60 degrees")
		reach(&t.s.Panes[elevation], solid.Vec{x + 16, 0, 0})
	}
	if s := h.Choice.Support; s != nil && s.Steady != nil && s.Middle {
		u, w := h.At(s.At), s.Steady.Width.Or(6)
		z := h.Track()
		if z == nil {
			return
		}
		r := z.Most()
		for _, side := range []float64{-1, 1} {
			a, b := side*r, side*(r+jawShown)
			t.s.Things = append(t.s.Things, sketch.Thing{Name: "fingers of " + s.Steady.Path(), In: []int{elevation},
				Shape: solid.Box(solid.Vec{u - w/2, min(a, b), -3}, solid.Vec{u + w/2, max(a, b), 3})})
		}
		t.plain = append(t.plain, "steady")
		t.gauge(0, u)
	}
}

// gauge puts a length along the axis below the section.
func (t *turned) gauge(from, to float64) {
	if math.Abs(to-from) < 0.05 {
		return
	}
	p := &t.s.Panes[elevation]
	for _, g := range p.Gauges {
		if g.From[0] == from && math.Abs(g.To[0]-to) < 0.005 {
			return
		}
	}
	y := t.s.Lo[1]
	p.Gauges = append(p.Gauges, sketch.Gauge{From: solid.Vec{from, y, 0}, To: solid.Vec{to, y, 0}, Out: sketch.Point{Y: -1},
		Words: sketch.Figure(math.Round(math.Abs(to-from)*100) / 100)})
}

// standsOut dimensions how far the piece stands out.
func (t *turned) standsOut() {
	if h := t.h; !h.Choice.Centres && h.Choice.Faceplate == nil {
		t.gauge(0, t.s.Piece.Extent(0, 1))
	}
}

// zero marks the jaw face, from which all lengths of the set-up count.
func (t *turned) zero() {
	h := t.h
	if h.Choice.Centres || h.Choice.Faceplate != nil {
		return
	}
	p := &t.s.Panes[elevation]
	if h.Choice.Mandrel != nil {
		return
	}
	words := "jaw face, 0"
	if h.Choice.Collets != nil {
		words = "collet face, 0"
	}
	at := solid.Vec{0, t.s.Hi[1], 0}
	reach(p, at)
	p.Zero = append(p.Zero, at)
	p.Tags = append(p.Tags, sketch.Tag{At: at, Words: words})
}

// bounds settles how much the views show.
func (t *turned) bounds() {
	for i := range t.s.Panes {
		p := &t.s.Panes[i]
		for _, a := range []int{1, 2} {
			p.Lo[a], p.Hi[a] = min(-t.shown, p.Lo[a]), max(t.shown, p.Hi[a])
		}
		p.Lo[0] -= around
		p.Hi[0] += around
	}
}

func (t *turned) lies() string {
	h := t.h
	words := "Held end: " + h.Choice.End.String() + "."
	if h.Choice.Reversed {
		words += " The jaws are turned round."
	}
	if on := h.TurnsOn(); on != "" {
		words += " It turns about the line " + on + "."
	}
	if f := t.s.Piece; h.Held > h.JawLength.Or(0)+bodyShown && f != nil && h.Choice.Chuck != nil {
		words += " What lies farther back in the chuck is left out."
	}
	return words
}

func (t *turned) lack(ls []model.Lack) {
	for _, l := range ls {
		t.lacks = append(t.lacks, l.Fact)
	}
}
