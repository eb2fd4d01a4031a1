package sketch

import (
	"errors"
	"fmt"
	"math"

	"fettle/eval/solid"
)

// Thing is what stands beside the piece: a jaw, a parallel, one round piece of the tool.
type Thing struct {
	Name  string
	Shape solid.Shape
	Tool  bool
}

// Gauge is a size between two places of the machine's frame, seen in one of the two views.
type Gauge struct {
	From, To solid.Vec
	Out      Point // the side of the view that the dimension stands on, as in Dimension
	Second   bool  // it stands at the second view
	Words    string
}

// Setting is one set-up at one moment: the piece as it is, and what stands beside it, all in the
// machine's frame (x along the table, y towards the column, z up).
type Setting struct {
	Name  string
	Piece *solid.Piece
	// Lo and Hi bound what is drawn of it and of the things; they hold the piece.
	Lo, Hi solid.Vec
	Things []Thing
	// Along is the view of the elevation: it looks at the piece from where Along.Towards points.
	Along View
	Cut   bool      // the elevation is a section through At
	At    solid.Vec // the tool at its deepest
	// Ways are those of the tool, drawn in the second view, or in the first where WaysAlong.
	Ways      [][2]solid.Vec
	WaysAlong bool
	// Other is the second view, and Says names both: "seen along the jaws; from above".
	Other  View
	Says   string
	Gauges []Gauge
}

// The room for a setting on its sheet, in mm on the paper.
const (
	settingWide = 277.0
	settingHigh = 150.0
	strip       = 12.0
)

// Set draws a set-up in two views side by side at one scale, and beneath them what they are. Things beside the piece are drawn with narrow lines of long dashes
// and two dots, the piece with wide ones, and hatched where the elevation cuts it.
func Set(s Setting) (*Drawing, error) {
	if !finite(s.Lo[0], s.Lo[1], s.Lo[2], s.Hi[0], s.Hi[1], s.Hi[2]) {
		return nil, errors.New("there is nothing to draw")
	}
	w1, h1 := s.span(s.Along)
	w2, h2 := s.span(s.Other)
	scale, ok := [2]int{}, false
	for _, c := range scales {
		f := float64(c[0]) / float64(c[1])
		if (w1+w2)*f <= settingWide-3*room && max(h1, h2)*f <= settingHigh-strip-2*room {
			scale, ok = c, true
			break
		}
	}
	if !ok {
		return nil, errors.New("the set-up does not go on the sheet at 1:1000")
	}
	f := float64(scale[0]) / float64(scale[1])
	high := max(h1, h2)*f + 2*room + strip
	d := &Drawing{Width: settingWide, Height: high, Title: s.Name}
	left := (settingWide - (w1+w2)*f) / 3
	one := pane{&s, d, s.Along, Point{left, strip + room}, Point{}, f}
	two := pane{&s, d, s.Other, Point{2*left + w1*f, strip + room}, Point{}, f}
	if err := one.draw(s.Cut); err != nil {
		return nil, err
	}
	if err := two.draw(false); err != nil {
		return nil, err
	}
	if s.WaysAlong {
		one.ways()
	} else {
		two.ways()
	}
	foot := fmt.Sprintf("%s. Scale %d:%d, sizes in mm", s.Says, scale[0], scale[1])
	if err := d.Write(Point{6, 4}, shorten(foot, lettering, settingWide-12), lettering); err != nil {
		return nil, err
	}
	for _, g := range s.Gauges {
		p := &one
		if g.Second {
			p = &two
		}
		// A size that finds no room stands in the list of figures beside the drawing.
		_ = d.Dimension(Dimension{p.put(g.From), p.put(g.To), g.Out, g.Words})
	}
	one.names()
	d.trim(strip)
	return d, nil
}

// trim takes the empty paper off a drawing: above all that is drawn, and between that and a strip
// at its foot.
func (d *Drawing) trim(foot float64) {
	const margin = 4.0
	lo, hi := math.Inf(1), math.Inf(-1)
	span := func(a, b float64) {
		if b > foot {
			lo, hi = min(lo, a), max(hi, b)
		}
	}
	for i := range d.Strokes {
		for _, p := range d.Strokes[i].Points {
			span(p.Y, p.Y)
		}
	}
	for _, t := range d.Texts {
		b := t.box()
		span(b.lo.Y, b.hi.Y)
	}
	down := lo - foot - margin
	if !finite(down) || down < 0 {
		down = 0
	}
	move := func(p *Point) {
		if p.Y > foot {
			p.Y -= down
		}
	}
	for i := range d.Strokes {
		s := &d.Strokes[i]
		s.Points = append([]Point{}, s.Points...)
		for k := range s.Points {
			move(&s.Points[k])
		}
		if s.Arc {
			move(&s.Middle)
		}
	}
	for i := range d.Texts {
		move(&d.Texts[i].At)
	}
	for i := range d.Heads {
		move(&d.Heads[i].At)
	}
	d.Height = min(d.Height, hi-down+margin)
}

// span is how wide and high the bounds are in a view.
func (s *Setting) span(v View) (w, h float64) {
	lo, hi := s.flat(v)
	return hi.X - lo.X, hi.Y - lo.Y
}

func (s *Setting) flat(v View) (lo, hi Point) {
	lo, hi = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for i := range 8 {
		c := s.Lo
		for a := range 3 {
			if i>>a&1 == 1 {
				c[a] = s.Hi[a]
			}
		}
		q := v.flat(c)
		lo = Point{min(lo.X, q.X), min(lo.Y, q.Y)}
		hi = Point{max(hi.X, q.X), max(hi.Y, q.Y)}
	}
	return lo, hi
}

// pane is one view of a setting on the sheet, its lower left corner at a place.
type pane struct {
	s      *Setting
	d      *Drawing
	view   View
	corner Point
	origin Point
	scale  float64
}

func (p *pane) put(v solid.Vec) Point { return p.origin.add(p.view.flat(v).times(p.scale)) }

func (p *pane) draw(cut bool) error {
	lo, hi := p.s.flat(p.view)
	p.origin = p.corner.sub(lo.times(p.scale))
	frame := box{p.corner, p.corner.add(hi.sub(lo).times(p.scale))}
	piece := p.s.Piece
	if cut {
		lines, hatch, err := p.view.Section(piece, p.s.At, p.origin, p.scale)
		if err != nil {
			return err
		}
		p.d.Strokes = append(p.d.Strokes, lines...)
		if err := p.d.Hatch(hatch, 2.5); err != nil {
			return err
		}
		piece = piece.Cut(before(p.view.Towards, p.s.At))
	}
	seen, err := p.view.Lines(piece, p.origin, p.scale, false)
	if err != nil {
		return err
	}
	p.d.Strokes = append(p.d.Strokes, once(seen, p.d.Strokes)...)
	var beside []Stroke
	for _, t := range p.s.Things {
		ss, err := p.view.Lines(solid.Raw(t.Shape), p.origin, p.scale, false)
		if err != nil {
			return fmt.Errorf("%s: %w", t.Name, err)
		}
		for _, s := range ss {
			s.Pen = Beside
			beside = append(beside, s.within(frame)...)
		}
	}
	p.d.Strokes = append(p.d.Strokes, once(beside, p.d.Strokes)...)
	return nil
}

// before takes what of a piece stands between a plane through a place and the viewer.
func before(towards, at solid.Vec) solid.Removal {
	const all = 1e4
	lo, hi := solid.Vec{-all, -all, -all}, solid.Vec{all, all, all}
	for a := range 3 {
		switch {
		case towards[a] > 0.5:
			lo[a] = at[a]
		case towards[a] < -0.5:
			hi[a] = at[a]
		}
	}
	return solid.Removal{Take: solid.Box(lo, hi), By: "section"}
}

// within gives the parts of a line that lie in a frame. What is cut loses its form as an arc.
func (s Stroke) within(f box) (out []Stroke) {
	inside := func(p Point) bool {
		return p.X >= f.lo.X-1e-9 && p.X <= f.hi.X+1e-9 && p.Y >= f.lo.Y-1e-9 && p.Y <= f.hi.Y+1e-9
	}
	whole := true
	for _, p := range s.Points {
		whole = whole && inside(p)
	}
	if whole {
		return []Stroke{s}
	}
	var run []Point
	end := func() {
		if len(run) > 1 {
			out = append(out, Stroke{Pen: s.Pen, Points: run})
		}
		run = nil
	}
	for i := range s.Points[1:] {
		a, b, ok := f.clip(s.Points[i], s.Points[i+1])
		if !ok {
			end()
			continue
		}
		if len(run) == 0 || run[len(run)-1] != a {
			end()
			run = []Point{a}
		}
		run = append(run, b)
		if b != s.Points[i+1] {
			end()
		}
	}
	end()
	return out
}

// clip gives the part of a straight line within the box.
func (f box) clip(a, b Point) (p, q Point, ok bool) {
	d := b.sub(a)
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{{-d.X, a.X - f.lo.X}, {d.X, f.hi.X - a.X}, {-d.Y, a.Y - f.lo.Y}, {d.Y, f.hi.Y - a.Y}} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return a, b, false
		case e[0] < 0:
			t0 = max(t0, e[1]/e[0])
		case e[0] > 0:
			t1 = min(t1, e[1]/e[0])
		}
	}
	if t1-t0 < 1e-12 {
		return a, b, false
	}
	p, q = a, b
	if t0 > 0 {
		p = a.add(d.times(t0))
	}
	if t1 < 1 {
		q = a.add(d.times(t1))
	}
	return p, q, true
}

// ways draws the tool's ways in a view, each with an arrowhead at its end.
func (p *pane) ways() {
	for _, w := range p.s.Ways {
		a, b := p.put(w[0]), p.put(w[1])
		if b.sub(a).len() < 0.5 {
			continue
		}
		p.d.Line(Centre, a, b)
		p.d.Heads = append(p.d.Heads, Head{b, b.sub(a).unit()})
	}
}

// names writes what stands beside the piece at leaders, as far as there is room; each name
// once.
func (p *pane) names() {
	said := map[string]bool{}
	frame := box{p.corner, p.corner}
	lo, hi := p.s.flat(p.view)
	frame.hi = p.corner.add(hi.sub(lo).times(p.scale))
	for _, t := range p.s.Things {
		if said[t.Name] || t.Name == "" {
			continue
		}
		said[t.Name] = true
		ss, err := p.view.Lines(solid.Raw(t.Shape), p.origin, p.scale, false)
		if err != nil {
			continue
		}
		at, ok := upmost(ss, frame)
		if ok {
			_ = p.d.Leader(at, t.Name)
		}
	}
}

// upmost gives a place on the highest line within a frame: the middle of it.
func upmost(ss []Stroke, frame box) (at Point, ok bool) {
	for _, s := range ss {
		for _, c := range s.within(frame) {
			for i := range c.Points[1:] {
				m := c.Points[i].add(c.Points[i+1]).times(0.5)
				if !ok || m.Y > at.Y+1e-9 {
					at, ok = m, true
				}
			}
		}
	}
	return at, ok
}
