package sketch

import (
	"math"
	"slices"
	"strings"
)

// Names and figures of a view stand in two columns beside it, from the top down, each with a line
// to what it names: so they never lie on each other or on what is drawn, however many there are.

// tagged is one entry of a column. Places are in the view, before scale.
type tagged struct {
	at    Point
	lines []string
	wide  float64
	dot   bool
	ring  bool // the leader ends at the ring round a place where two things meet
	y     float64
}

func (t *tagged) high() float64 { return line*float64(len(t.lines)) + 1 }

func newTag(at Point, words string, dot bool) *tagged {
	t := &tagged{at: at, dot: dot, lines: wrapped(words, tagWide)}
	if len(t.lines) > 4 {
		t.lines = append(t.lines[:3], shorten(strings.Join(t.lines[3:], " "), letters, tagWide))
	}
	for _, l := range t.lines {
		t.wide = max(t.wide, Room(l, letters)+2)
	}
	return t
}

// wrapped breaks words into lines that are at most so wide. A word that is too long by itself is
// shortened.
func wrapped(words string, wide float64) (out []string) {
	const most = 600 // letters that anything on a drawing is read to
	if r := []rune(words); len(r) > most {
		words = string(r[:most])
	}
	now := ""
	for _, w := range pieces(plain(words), wide) {
		joined := now != "" && !strings.HasPrefix(w, "\x00")
		w = strings.TrimPrefix(w, "\x00")
		if !joined && now != "" && Room(now+w, letters) <= wide {
			now += w
			continue
		}
		if !joined && now != "" {
			out, now = append(out, now), w
			continue
		}
		w = shorten(w, letters, wide)
		if now != "" && Room(now+" "+w, letters) > wide {
			out, now = append(out, now), ""
		}
		if now != "" {
			now += " "
		}
		now += w
	}
	return append(out, now)
}

// pieces gives words, and the parts of a word that is too long after its stops; a part that hangs
// on the one before it begins with a null.
func pieces(words string, wide float64) (out []string) {
	for w := range strings.FieldsSeq(words) {
		if Room(w, letters) <= wide {
			out = append(out, w)
			continue
		}
		mark := ""
		name, member, set := strings.Cut(w, "[")
		var parts []string
		for _, part := range strings.SplitAfter(name, ".") {
			if Room(part, letters) > wide {
				parts = append(parts, strings.SplitAfter(part, "_")...)
			} else {
				parts = append(parts, part)
			}
		}
		if set {
			parts = append(parts, "["+member)
		}
		for _, part := range parts {
			if part != "" {
				out = append(out, mark+shorten(part, letters, wide))
				mark = "\x00"
			}
		}
	}
	return out
}

// collect gathers what a view's columns hold: tags, rooms between things, and the names of things
// that no view before it shows.
func (p *pane) collect(earlier []*pane) {
	var all []*tagged
	for _, t := range p.Tags {
		all = append(all, newTag(p.View.flat(t.At), t.Words, t.Dot))
	}
	for _, w := range p.Passes {
		g := newTag(p.View.flat(w.A.Add(w.B).Times(0.5)), w.Words, false)
		g.ring = w.Meets
		all = append(all, g)
	}
	named := map[string]bool{}
	for _, o := range earlier {
		for i := range p.s.Things {
			if t := &p.s.Things[i]; o.shows(t) {
				named[t.Name] = true
			}
		}
	}
	for i := range p.s.Things {
		t := &p.s.Things[i]
		if !p.shows(t) || named[t.Name] || t.Name == "" {
			continue
		}
		if at, ok := p.amid(t); ok {
			named[t.Name] = true
			all = append(all, newTag(at, t.Name, true))
		}
	}
	p.share(all)
}

// share gives each entry to the nearer column, then evens the columns out.
func (p *pane) share(all []*tagged) {
	lo, hi := p.flatBounds()
	mid := (lo.X + hi.X) / 2
	slices.SortStableFunc(all, func(a, b *tagged) int {
		switch {
		case a.at.X < b.at.X:
			return -1
		case a.at.X > b.at.X:
			return 1
		}
		return 0
	})
	sum := 0.0
	for _, t := range all {
		sum += t.high()
	}
	p.column = [2][]*tagged{}
	n, had := 0, 0.0
	for n < len(all) && had+all[n].high()/2 <= sum/2+line && (all[n].at.X < mid || had+all[n].high() <= sum/2) {
		had += all[n].high()
		n++
	}
	p.column = [2][]*tagged{slices.Clone(all[:n]), slices.Clone(all[n:])}
	for _, c := range p.column {
		slices.SortStableFunc(c, func(a, b *tagged) int {
			switch {
			case a.at.Y > b.at.Y:
				return -1
			case a.at.Y < b.at.Y:
				return 1
			}
			return 0
		})
	}
}

func (p *pane) columnHigh(side int) (sum float64) {
	for _, t := range p.column[side] {
		sum += t.high()
	}
	return sum
}

// flatBox gives the room of a thing in a view before scale, as far as the view's bounds go.
func (p *pane) flatBox(t *Thing) (box, bool) {
	lo, hi, ok := t.Shape.Bounds()
	if !ok {
		return box{}, false
	}
	a, b := p.View.bounds(lo, hi)
	flo, fhi := p.flatBounds()
	out := box{Point{max(a.X, flo.X), max(a.Y, flo.Y)}, Point{min(b.X, fhi.X), min(b.Y, fhi.Y)}}
	return out, out.lo.X < out.hi.X && out.lo.Y < out.hi.Y
}

// amid gives a place of a thing in a view that as few others as may be lie about, of those the one
// nearest to its middle. False where the view does not show it.
func (p *pane) amid(t *Thing) (Point, bool) {
	room, ok := p.flatBox(t)
	if !ok {
		return Point{}, false
	}
	var others []box
	for i := range p.s.Things {
		o := &p.s.Things[i]
		if o.Name == t.Name || !p.shows(o) {
			continue
		}
		if b, ok := p.flatBox(o); ok {
			others = append(others, b)
		}
	}
	lo, hi := p.View.bounds(p.s.metal())
	others = append(others, box{lo, hi})
	best, least := Point{}, math.Inf(1)
	size := room.hi.sub(room.lo)
	for i := range 9 {
		for k := range 9 {
			f := Point{float64(i+1)/10 - 0.5, float64(k+1)/10 - 0.5}
			q := Point{room.lo.X + size.X*(f.X+0.5), room.lo.Y + size.Y*(f.Y+0.5)}
			score := math.Hypot(f.X, f.Y)
			for _, o := range others {
				if q.X > o.lo.X-1e-9 && q.X < o.hi.X+1e-9 && q.Y > o.lo.Y-1e-9 && q.Y < o.hi.Y+1e-9 {
					score += 2
				}
			}
			if score < least-1e-9 {
				best, least = q, score
			}
		}
	}
	return best, true
}

// words writes the columns of a view.
func (p *pane) words() {
	for side, c := range p.column {
		top := p.frame.hi.Y + (p.columnRoom()-(p.frame.hi.Y-p.frame.lo.Y))/2
		p.stack(c, top)
		for _, t := range c {
			for i, words := range t.lines {
				at := Point{p.edge(side) + float64(2*side-1), t.y - line*float64(i+1) + 1}
				p.d.Texts = append(p.d.Texts, Text{At: at, Words: words, Height: letters, End: side == 0})
			}
		}
	}
}

// leaders draws the lines from the columns to what they name.
func (p *pane) leaders() {
	for side, c := range p.column {
		for _, t := range c {
			p.leader(t, side)
		}
	}
}

// edge is where a column ends towards the view.
func (p *pane) edge(side int) float64 {
	wide := [2]float64{}
	for s := range 2 {
		for _, o := range p.column[s] {
			wide[s] = max(wide[s], o.wide)
		}
	}
	if side == 0 {
		return p.corner.X + wide[0]
	}
	return p.corner.X + p.frameAt.X + (p.frame.hi.X - p.frame.lo.X) + aside
}

func (p *pane) columnRoom() float64 {
	return max(p.frame.hi.Y-p.frame.lo.Y, p.columnHigh(0), p.columnHigh(1))
}

// stack settles how high each entry of a column stands: beside what it names, as far as those
// above and below leave it.
func (p *pane) stack(c []*tagged, top float64) {
	foot := top - p.columnRoom()
	below := 0.0
	for _, t := range c {
		below += t.high()
	}
	for _, t := range c {
		want := p.origin.Y + t.at.Y*p.scale + t.high()/2
		t.y = min(max(want, foot+below), top)
		top, below = t.y-t.high(), below-t.high()
	}
}

// leader draws the line of one entry.
func (p *pane) leader(t *tagged, side int) {
	to := p.origin.add(t.at.times(p.scale))
	from := Point{p.edge(side), t.y - line + 1 + letters/2}
	knee := p.knee(from, to, side)
	u := to.sub(knee)
	if u.len() > 0.1 {
		u = u.unit()
	}
	if t.ring {
		to = to.sub(u.times(3.5))
	}
	p.d.Path(Narrow, from, knee, to)
	switch {
	case t.dot:
		p.d.Circle(Narrow, to, 0.2)
		p.d.Circle(Narrow, to, 0.4)
	case !t.ring:
		p.d.Heads = append(p.d.Heads, Head{to, u})
	}
}

// knee is where the line of an entry bends: the first place where it goes through no text, else its
// beginning.
func (p *pane) knee(from, to Point, side int) Point {
	for _, y := range []float64{0, 3, -3, 6, -6, 9, -9, 13, -13} {
		for _, x := range []float64{2, 0, 5, 8, 11, 14, 17, 20} {
			knee := from.add(Point{x * float64(1-2*side), y})
			if side == 1 && knee.X < to.X || side == 0 && knee.X > to.X {
				break
			}
			if p.d.untouched(from, knee) && p.d.untouched(knee, to) {
				return knee
			}
		}
	}
	return from
}
