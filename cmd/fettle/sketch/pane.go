package sketch

import (
	"fmt"
	"math"
	"slices"

	"fettle/eval/solid"
)

// pane is one view of a setting as it lies on the sheet.
type pane struct {
	*Pane
	s      *Setting
	d      *Drawing
	number int
	scale  float64

	corner     Point // lower left of all that belongs to it
	wide, high float64
	frameAt    Point // from there to the lower left of the view itself
	captioned  []string
	origin     Point // of the machine's frame
	frame      box
	used       []stretch    // by dimension lines
	column     [2][]*tagged // to the left and to the right, from the top down
}

func (p *pane) put(v solid.Vec) Point { return p.origin.add(p.View.flat(v).times(p.scale)) }

func (p *pane) shows(t *Thing) bool { return len(t.In) == 0 || slices.Contains(t.In, p.number) }

func (p *pane) draw() error {
	lo, hi := p.flatBounds()
	at := p.corner.add(p.frameAt)
	p.origin = at.sub(lo.times(p.scale))
	p.frame = box{at, at.add(hi.sub(lo).times(p.scale))}
	if err := p.piece(); err != nil {
		return err
	}
	if err := p.things(); err != nil {
		return err
	}
	if len(p.Axis) == 2 {
		a, b := p.put(p.Axis[0]), p.put(p.Axis[1])
		if b.sub(a).len() < 1 { // seen along it: a cross
			r := Point{8, 0}
			p.centreLine(a.sub(r), a.add(r))
			p.centreLine(a.sub(r.left()), a.add(r.left()))
		} else {
			p.centreLine(a, b)
		}
	}
	p.ways()
	p.zero()
	for i := range p.Passes {
		p.passage(&p.Passes[i])
	}
	for i, words := range p.captioned {
		p.d.Texts = append(p.d.Texts, Text{At: Point{p.corner.X + 3, p.corner.Y + 1.5 + line*float64(len(p.captioned)-1-i)}, Words: words, Height: letters})
	}
	p.words()
	p.gauges()
	p.leaders()
	p.numbers()
	return nil
}

func (p *pane) centreLine(a, b Point) {
	p.d.Strokes = append(p.d.Strokes, Stroke{Pen: Centre, Points: []Point{a, b}}.within(p.frame)...)
}

// piece draws what is cut and what is seen of the piece.
func (p *pane) piece() error {
	piece := p.s.Piece
	if p.Cut {
		lines, hatch, err := p.View.Section(piece, p.At, p.origin, p.scale)
		if err != nil {
			return err
		}
		p.add(lines)
		apart := 2.5
		if w := p.frame.hi.sub(p.frame.lo); w.X*w.Y < 400 {
			apart = 1.5
		}
		if err := p.d.Hatch(hatch, apart); err != nil {
			return err
		}
		piece = piece.Cut(before(p.View.Towards, p.At))
	}
	seen, err := p.View.Lines(piece, p.origin, p.scale, false)
	if err != nil {
		return err
	}
	p.add(once(seen, p.d.Strokes))
	return nil
}

func (p *pane) add(ss []Stroke) {
	for _, s := range ss {
		p.d.Strokes = append(p.d.Strokes, s.within(p.frame.grown(0.01))...)
	}
}

func (p *pane) things() error {
	var beside []Stroke
	for i := range p.s.Things {
		t := &p.s.Things[i]
		if !p.shows(t) {
			continue
		}
		ss, err := p.View.Lines(solid.Raw(t.Shape), p.origin, p.scale, false)
		if err != nil {
			return fmt.Errorf("%s: %w", t.Name, err)
		}
		for _, s := range ss {
			s.Pen = Beside
			beside = append(beside, s.within(p.frame)...)
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

// ways draws the tool's ways, each with an arrowhead at its end, or a cross where it is seen from
// its end.
func (p *pane) ways() {
	var done [][2]Point
	for _, w := range p.Ways {
		a, b := p.put(w.From), p.put(w.To)
		if slices.ContainsFunc(done, func(o [2]Point) bool { return o[0].sub(a).len() < 0.05 && o[1].sub(b).len() < 0.05 }) {
			continue
		}
		done = append(done, [2]Point{a, b})
		if b.sub(a).len() < 0.5 {
			r := Point{2, 0}
			p.d.Strokes = append(p.d.Strokes, Stroke{Pen: Narrow, Points: []Point{a.sub(r), a.add(r)}},
				Stroke{Pen: Narrow, Points: []Point{a.sub(r.left()), a.add(r.left())}})
			continue
		}
		if w.Plain {
			p.d.Line(Narrow, a, b)
			continue
		}
		p.d.Line(Centre, a, b)
		p.d.Heads = append(p.d.Heads, Head{b, b.sub(a).unit()})
	}
}

// numbers writes the numbers of ways at their beginnings, each where there is room near by; the
// table beside the drawing has them all.
func (p *pane) numbers() {
	for _, w := range p.Ways {
		if w.Number == "" {
			continue
		}
		a := p.put(w.From)
		t := Text{Words: w.Number, Height: 2}
		wide := Room(t.Words, t.Height)
	search:
		for _, r := range []float64{1.2, 2.5, 4, 6} {
			for k := range 8 {
				sin, cos := math.Sincos(float64(2*k+1) * math.Pi / 8)
				m := a.add(Point{cos * (r + wide/2), sin * (r + 1.2)})
				t.At = Point{m.X - wide/2, m.Y - 1}
				if p.d.free(t) {
					p.d.Texts = append(p.d.Texts, t)
					break search
				}
			}
		}
	}
}

// zero draws the sign of the place that all is measured from: a ring with a cross.
func (p *pane) zero() {
	for _, v := range p.Zero {
		a := p.put(v)
		p.d.Circle(Narrow, a, 2)
		for _, r := range []Point{{3.5, 0}, {0, 3.5}} {
			p.d.Line(Narrow, a.sub(r), a.add(r))
		}
	}
}

// passage draws the least room between two things as a size, or rings the place where they meet.
func (p *pane) passage(w *Passage) {
	a, b := p.put(w.A), p.put(w.B)
	if w.Meets {
		p.d.Circle(Wide, a, 3.5)
		return
	}
	l := b.sub(a).len()
	if l < 0.8 {
		p.d.Circle(Narrow, a.add(b).times(0.5), 1.8)
		return
	}
	u := b.sub(a).times(1 / l)
	if l > 2.5*headLong {
		p.d.Line(Narrow, a, b)
		p.d.Heads = append(p.d.Heads, Head{a, u.times(-1)}, Head{b, u})
		return
	}
	p.d.Line(Narrow, a.sub(u.times(2*headLong)), b.add(u.times(2*headLong)))
	p.d.Heads = append(p.d.Heads, Head{a, u}, Head{b, u.times(-1)})
}
