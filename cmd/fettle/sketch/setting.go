package sketch

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"fettle/eval/solid"
)

// Thing is what stands beside the piece: a jaw, a parallel, one round piece of the tool.
type Thing struct {
	Name  string // "" is drawn and not named
	Shape solid.Shape
	Tool  bool
	In    []int // the views that show it; none: all
}

// Gauge is a size between two places of the machine's frame, seen in a view. Out is the side of
// the view that it stands on, as in Dimension: to the left or below.
type Gauge struct {
	From, To solid.Vec
	Out      Point
	Words    string
}

// Way is a way of the tool. Number stands at its beginning where there is one; a way along the
// line of sight is a cross.
type Way struct {
	From, To solid.Vec
	Number   string
	Plain    bool // a mark without an arrow
}

// Passage is the least room between two things, from one to the other, and its figure. Where they
// meet A is the place, and it is ringed.
type Passage struct {
	A, B  solid.Vec
	Words string
	Meets bool
}

// Tag points to a place, with words beside the view.
type Tag struct {
	At    solid.Vec
	Words string
	Dot   bool // it means what lies about the place, not the line there
}

// Pane is one view of a setting.
type Pane struct {
	View   View
	Says   string    // what it shows
	Lo, Hi solid.Vec // bounds of what is drawn, in the machine's frame; both null: the setting's
	Swept  bool      // Lo and Hi are those of the piece, or of what it sweeps as it turns
	Cut    bool      // it is a section through At
	At     solid.Vec
	Axis   []solid.Vec // two places on the line that the work turns about
	Zero   []solid.Vec // the place that all is measured from
	Ways   []Way
	Gauges []Gauge
	Passes []Passage
	Tags   []Tag
}

// Setting is one set-up at one moment: the piece as it is, and what stands beside it, all in the
// machine's frame (x along the table, y towards the column, z up).
type Setting struct {
	Name   string
	Piece  *solid.Piece
	Lo, Hi solid.Vec // bounds of views that have none of their own
	Swept  bool      // Lo and Hi are those of the piece, or of what it sweeps as it turns
	Things []Thing
	Panes  []Pane
	Foot   []string // lines beneath the views
	High   float64  // how high the sheet may be at 1:1 and larger, mm; nought: 135
}

// The room for a setting on its sheet, in mm on the paper: as wide as the text of an A4 page with
// 12 mm margins, so that it is printed true to scale.
const (
	settingWide   = 180.0
	settingNarrow = 114.0 // so that words go beside it
	settingHigh   = 135.0 // at 1:1 and larger
	settingMost   = 185.0 // before it is drawn at 1:5
	settingUnder  = 148.0 // the same below its words, so that head, words and drawing go on one leaf
	aside         = 4.0   // around a view
	sizesBeside   = 6.5   // for one row of dimensions to the left
	sizesBelow    = 7.5   // and below
	letters       = 2.5   // height of capitals, as that of the words around a drawing
	line          = 4.2   // between the foot lines of two lines of text
	caption       = 5.0
	tagWide       = 30.0
	footWide      = 96.0
)

// Set draws a set-up in its views at one scale, and beneath each what it is. Things beside the piece
// are drawn with narrow lines of long dashes and two dots, the piece with wide ones, and hatched
// where a view cuts it. Names and figures stand in columns beside the views.
func Set(s Setting) (*Drawing, error) {
	if len(s.Panes) == 0 || s.Piece == nil {
		return nil, errors.New("there is nothing to draw")
	}
	var ps []*pane
	for i := range s.Panes {
		k := &s.Panes[i]
		if k.Lo == k.Hi {
			k.Lo, k.Hi = s.Lo, s.Hi
		}
		if !finite(k.Lo[0], k.Lo[1], k.Lo[2], k.Hi[0], k.Hi[1], k.Hi[2]) {
			return nil, errors.New("there is nothing to draw")
		}
		ps = append(ps, &pane{Pane: k, s: &s, number: i})
	}
	for i := range ps {
		ps[i].collect(ps[:i])
	}
	foot := s.feet("Scale 1:1000, in mm.")
	strip, least := line*float64(len(foot)-1)+3, 60.0
	for _, words := range foot {
		least = max(least, Room(words, letters)+8)
	}
	for _, c := range scales {
		f := float64(c[0]) / float64(c[1])
		wide, high, ok := flow(ps, f, strip, least, settingNarrow)
		if !ok || high > settingHigh {
			wide, high, ok = flow(ps, f, strip, least, settingWide)
			ok = ok && (wide <= settingNarrow || high <= settingUnder)
		}
		ok = ok && (s.High == 0 || f < 1 || high <= s.High)
		if !ok {
			continue
		}
		d := &Drawing{Width: wide, Height: high, Title: s.Name}
		foot = s.feet(fmt.Sprintf("Scale %d:%d, in mm.", c[0], c[1]))
		for i, words := range foot {
			d.Texts = append(d.Texts, Text{At: Point{4, 2.5 + line*float64(len(foot)-1-i)}, Words: words, Height: letters})
		}
		for _, p := range ps {
			p.d = d
			if err := p.draw(); err != nil {
				return nil, err
			}
		}
		return d, nil
	}
	return nil, errors.New("the set-up does not go on the sheet at 1:1000")
}

// feet are the lines beneath the views; the scale stands in the last one where it has room.
func (s *Setting) feet(scale string) (out []string) {
	for _, words := range s.Foot {
		out = append(out, wrapped(words, footWide)...)
	}
	if len(out) > 5 {
		out = out[:5]
	}
	if n := len(out); n > 0 && Room(out[n-1]+" "+scale, letters) <= footWide {
		out[n-1] += " " + scale
		return out
	}
	return append(out, scale)
}

// flow lays the views out at a scale, in rows from the top, as many in a row as go into a room; it says how
// wide (at least so much) and high the sheet becomes. False where they do not go on it.
func flow(ps []*pane, scale, strip, least, room float64) (wide, high float64, ok bool) {
	var rows [][]*pane
	x := 0.0
	for _, p := range ps {
		p.size(scale)
		if p.wide > room {
			return 0, 0, false
		}
		if len(rows) == 0 || x+p.wide > room {
			rows, x = append(rows, nil), 0
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], p)
		x += p.wide
		least = max(least, x+4)
	}
	wide = min(least, room)
	y := strip + line
	for i := len(rows) - 1; i >= 0; i-- {
		most, sum := 0.0, 0.0
		for _, p := range rows[i] {
			most, sum = max(most, p.high), sum+p.wide
		}
		x, between := 0.0, (wide-sum)/float64(len(rows[i]))
		for _, p := range rows[i] {
			p.corner = Point{x + between/2, y}
			x += p.wide + between
		}
		y += most
	}
	most := settingHigh
	if scale < 1 {
		most = settingMost
	}
	return wide, y + 2, y <= most
}

// span is how wide and high the bounds of a setting are in a view.
func (s *Setting) span(v View) (w, h float64) {
	lo, hi := v.bounds(s.Lo, s.Hi)
	return hi.X - lo.X, hi.Y - lo.Y
}

// bounds gives the room of a box in a view, before scale.
func (v View) bounds(from, to solid.Vec) (lo, hi Point) {
	lo, hi = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for i := range 8 {
		c := from
		for a := range 3 {
			if i>>a&1 == 1 {
				c[a] = to[a]
			}
		}
		q := v.flat(c)
		lo = Point{min(lo.X, q.X), min(lo.Y, q.Y)}
		hi = Point{max(hi.X, q.X), max(hi.Y, q.Y)}
	}
	return lo, hi
}

func (p *pane) flatBounds() (lo, hi Point) { return p.View.bounds(p.Lo, p.Hi) }

// size works out how much of the sheet a view takes up at a scale, with its columns of words.
func (p *pane) size(scale float64) {
	p.scale = scale
	lo, hi := p.flatBounds()
	w, h := (hi.X-lo.X)*scale, (hi.Y-lo.Y)*scale
	left, below := aside, caption
	over := aside
	n := [2]int{}
	for _, g := range p.Gauges {
		if g.Out.X >= 0 {
			n[1] = min(n[1]+1, rows)
			below = caption + sizesBelow + level*float64(n[1]-1)
			continue
		}
		n[0]++
		left = max(left, sizesBeside+level*float64(min(n[0], 2)-1))
		if w := Room(g.Words, letters); w > g.To.Sub(g.From).Len()*scale-0.4 {
			left = max(left, w+6)
		}
		// The arrows of a short size stand above and below the view.
		below, over = max(below, caption+3), aside+3
	}
	wide := [2]float64{}
	for side := range 2 {
		for _, t := range p.column[side] {
			wide[side] = max(wide[side], t.wide)
		}
	}
	view := max(h, p.columnHigh(0), p.columnHigh(1))
	p.frameAt = Point{wide[0] + left, below + (view-h)/2}
	p.wide = wide[0] + left + w + aside + wide[1]
	p.high = below + view + over
	// What stands beneath the view is not hidden by its caption.
	p.captioned = wrapped(p.Says, max(p.wide-4, 60))
	if n := len(p.captioned); n > 2 {
		p.captioned = []string{p.captioned[0], shorten(strings.Join(p.captioned[1:], " "), letters, max(p.wide-4, 60))}
	}
	for _, words := range p.captioned {
		p.wide = max(p.wide, Room(words, letters)+6)
	}
	p.high += line * float64(len(p.captioned)-1)
	p.frameAt.Y += line * float64(len(p.captioned)-1)
}
