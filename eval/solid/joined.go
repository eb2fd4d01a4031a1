package solid

import (
	"math"
	"slices"
)

// Joined pieces: what a solder, a weld, a fit or a bend holds together. Metal is where any of
// them has metal. They may touch and may overlap; what is cut after the joining is cut from all.

// lump is one of the pieces that were joined, with the removals made before and after.
type lump struct {
	piece  *Piece
	number []int // of each of its removals in the joined piece
}

// Joined gives one piece of several, in one frame. Its Blank is the least box round all of
// them; its Removals are those of the first, then of the second, and so on, then those made
// afterwards. Without any piece it is nil.
func Joined(ps ...*Piece) *Piece {
	if len(ps) == 0 {
		return nil
	}
	j := &Piece{}
	for _, p := range ps {
		for _, l := range p.each() {
			n := lump{piece: l.piece}
			for i := range l.piece.cuts {
				n.number = append(n.number, len(j.cuts)+l.number[i])
			}
			j.lumps = append(j.lumps, n)
		}
		j.cuts = append(j.cuts, p.cuts...)
	}
	j.bound()
	return j
}

// each gives the lumps of a piece; a piece that was not joined is one of itself.
func (p *Piece) each() []lump {
	if p.lumps != nil {
		return p.lumps
	}
	own := make([]int, len(p.cuts))
	for i := range own {
		own[i] = i
	}
	return []lump{{p, own}}
}

// Lumps gives the pieces that a joined piece consists of, as they are now; a piece that was not
// joined is one of itself.
func (p *Piece) Lumps() []*Piece {
	if p.lumps == nil {
		return []*Piece{p}
	}
	out := make([]*Piece, len(p.lumps))
	for i, l := range p.lumps {
		out[i] = l.piece
	}
	return out
}

// bound works out the box round a joined piece.
func (p *Piece) bound() {
	lo, hi := Vec{math.Inf(1), math.Inf(1), math.Inf(1)}, Vec{math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for _, l := range p.lumps {
		if b := &l.piece.blank; b.kind != empty {
			lo, hi = least(lo, b.lo), most(hi, b.hi)
		}
	}
	p.blank = Box(lo, hi)
}

// cutJoined gives a joined piece after some removals, which are p's last from n on.
func (p *Piece) cutJoined(was []lump, n int) {
	p.lumps = make([]lump, len(was))
	for i, l := range was {
		c := lump{piece: &Piece{blank: l.piece.blank, cuts: slices.Clone(l.piece.cuts), past: l.piece}, number: slices.Clone(l.number)}
		for k := n; k < len(p.cuts); k++ {
			if r := p.cuts[k]; overlap(r.Take.lo, r.Take.hi, c.piece.blank.lo, c.piece.blank.hi) {
				c.piece.cuts, c.number = append(c.piece.cuts, r), append(c.number, k)
			}
		}
		p.lumps[i] = c
	}
}

// placeJoined gives the lumps of p in a pose.
func (p *Piece) placeJoined(q Pose) []lump {
	out := make([]lump, len(p.lumps))
	for i, l := range p.lumps {
		out[i] = lump{l.piece.Placed(q), l.number}
	}
	return out
}

// lineJoined works out the spans of metal of a joined piece on a whole line: those of the lumps
// put together.
func (p *Piece) lineJoined(o, d Vec, s *scan) []Span {
	var all []Span
	for _, l := range p.lumps {
		for _, x := range l.piece.line(o, d, s) {
			x.EnterBy, x.LeaveBy = l.numbered(x.EnterBy), l.numbered(x.LeaveBy)
			all = append(all, x)
		}
	}
	sortSpans(all)
	s.out = s.out[:0]
	for _, x := range all {
		if n := len(s.out); n > 0 && x.A-s.out[n-1].B < Grain {
			if x.B > s.out[n-1].B {
				s.out[n-1].B, s.out[n-1].LeaveBy = x.B, x.LeaveBy
			}
			continue
		}
		s.out = append(s.out, x)
	}
	return s.out
}

func (l *lump) numbered(by int) int {
	if by < 0 {
		return by
	}
	return l.number[by]
}

// measureJoined adds the lumps, and takes off what each has in common with those before it.
func (p *Piece) measureJoined() (sum moment) {
	for i, l := range p.lumps {
		sum = sum.plus(l.piece.moment(), 1)
		var before []*Piece
		for _, k := range p.lumps[:i] {
			lo, hi := most(k.piece.blank.lo, l.piece.blank.lo), least(k.piece.blank.hi, l.piece.blank.hi)
			if thick := hi.Sub(lo); min(thick[0], thick[1], thick[2]) > hair {
				before = append(before, k.piece)
			}
		}
		sum = sum.plus(inCommon(l.piece, before), -1)
	}
	return sum
}

// inCommon gives the metal that a piece shares with any of some others.
func inCommon(p *Piece, others []*Piece) (sum moment) {
	for i, o := range others {
		sum = sum.plus(shared([]*Piece{p, o}, others[:i]), 1)
	}
	return sum
}

// shared gives the metal that all of some pieces have and none of the others has: what all have
// less, for each of the others, what it has too and the others before it have not.
func shared(all, others []*Piece) moment {
	s := &layers{}
	for _, p := range all {
		s.region = append(s.region, p.blank)
		for i, c := range p.cuts {
			s.cuts, s.number = append(s.cuts, c), append(s.number, i)
		}
	}
	sum := s.measure()
	if sum.V < hair {
		return moment{}
	}
	for i, o := range others {
		sum = sum.plus(shared(append(slices.Clone(all), o), others[:i]), -1)
	}
	return sum
}

// topJoined gives the height of the highest metal of a joined piece.
func (p *Piece) topJoined() (top float64, found bool) {
	for _, l := range p.lumps {
		if z, ok := l.piece.top(); ok && (!found || z > top) {
			top, found = z, true
		}
	}
	return top, found
}
