package solid

import (
	"math"
	"slices"
	"sync"
)

// Removal is what one operation took away: everything in Take that is in none of Less. A ring
// that turning takes is a cylinder less a cylinder; a fillet left standing is a Less too.
type Removal struct {
	Take Shape
	Less []Shape
	By   string // what took it or what it makes, as "hole.pillar"
}

// Piece is a blank and what has been taken from it. It never changes: Cut gives another.
type Piece struct {
	blank Shape
	cuts  []*Removal // the first of those on the shelf; they never change
	shelf *shelf     // shared with what was cut from it first

	lumps []lump // of a joined piece what it consists of; blank is then the box round them

	past *Piece // what it was cut from
	same *Piece // what it is another view of
	pose Pose   // how it stands there

	seen view // as it was last asked for standing in the machine

	once  sync.Once
	metal moment
}

// Raw gives a piece from which nothing has been taken.
func Raw(blank Shape) *Piece { return &Piece{blank: blank} }

// Blank gives what the piece was at first; of a joined piece the least box round what it was
// joined from.
func (p *Piece) Blank() Shape { return p.blank }

// shelf holds the removals of a piece and of those that were cut from it, one from the other, so
// that a long line of pieces takes no more memory than its last. A piece sees the first of them,
// as many as it had; only what comes behind all of them is ever written.
type shelf struct {
	mu  sync.Mutex
	all []*Removal
}

// with gives the removals of a piece and some more. Where another piece was cut from the same one
// before, they move to a shelf of their own.
func (p *Piece) with(more []*Removal) ([]*Removal, *shelf) {
	s := p.shelf
	if s != nil {
		s.mu.Lock()
		defer s.mu.Unlock()
	}
	if s == nil || len(s.all) != len(p.cuts) {
		s = &shelf{all: slices.Clone(p.cuts)}
	}
	s.all = append(s.all, more...)
	n := len(s.all)
	return s.all[:n:n], s
}

// Cut gives the piece after some removals.
func (p *Piece) Cut(rs ...Removal) *Piece {
	var more []*Removal
	for _, r := range rs {
		if r.Take.kind != empty {
			c := r
			c.Less = append([]Shape(nil), r.Less...)
			more = append(more, &c)
		}
	}
	q := &Piece{blank: p.blank, past: p}
	q.cuts, q.shelf = p.with(more)
	if p.lumps != nil {
		q.cutJoined(p.lumps, len(p.cuts))
	}
	return q
}

// Placed gives the same piece as it stands in the machine.
func (p *Piece) Placed(q Pose) *Piece {
	own := make([]Removal, len(p.cuts))
	cuts := make([]*Removal, len(p.cuts))
	for i, r := range p.cuts {
		own[i] = r.placed(q)
		cuts[i] = &own[i]
	}
	c := &Piece{blank: p.blank.Placed(q), cuts: cuts, same: p, pose: q}
	if p.lumps != nil {
		c.lumps = p.placeJoined(q)
		c.bound()
	}
	return c
}

func (r *Removal) placed(q Pose) Removal {
	c := Removal{Take: r.Take.Placed(q), By: r.By}
	for _, l := range r.Less {
		c.Less = append(c.Less, l.Placed(q))
	}
	return c
}

// Removals lists what was taken, in order.
func (p *Piece) Removals() []Removal {
	out := make([]Removal, len(p.cuts))
	for i, r := range p.cuts {
		out[i] = *r
	}
	return out
}

// Holds says whether there is metal at a place. A place on a surface counts as metal.
func (p *Piece) Holds(v Vec) bool {
	if p.lumps != nil {
		return slices.ContainsFunc(p.lumps, func(l lump) bool { return l.piece.Holds(v) })
	}
	if p.blank.depth(v) < 0 {
		return false
	}
	for _, r := range p.cuts {
		if r.takes(v, 0) {
			return false
		}
	}
	return true
}

// takes says whether a removal takes away the place and margin round it; a place on its
// border is not taken where margin is 0.
func (r *Removal) takes(v Vec, margin float64) bool {
	if !(r.Take.depth(v) > margin) {
		return false
	}
	for i := range r.Less {
		if r.Less[i].depth(v) >= -margin {
			return false
		}
	}
	return true
}

// shapes calls see for every shape that bounds the piece: blanks, what was taken, what was left
// standing.
func (p *Piece) shapes(see func(*Shape)) {
	if p.lumps == nil {
		see(&p.blank)
	}
	for i := range p.lumps {
		see(&p.lumps[i].piece.blank)
	}
	for _, c := range p.cuts {
		see(&c.Take)
		for i := range c.Less {
			see(&c.Less[i])
		}
	}
}

// name gives the name of a removal by its number; -1 is the blank's own surface, "".
func (p *Piece) name(i int) string {
	if i < 0 || i >= len(p.cuts) {
		return ""
	}
	return p.cuts[i].By
}

// overlap says whether two boxes have more than a touch in common.
func overlap(alo, ahi, blo, bhi Vec) bool {
	for i := range 3 {
		if alo[i] >= bhi[i] || blo[i] >= ahi[i] {
			return false
		}
	}
	return true
}

// Extent gives the outermost metal along an axis (0 to 2) in the direction of sign: a
// co-ordinate on that axis, exact for boxes and for cylinders along an axis, to a Grain
// otherwise. It is NaN where no metal is left.
func (p *Piece) Extent(axis int, sign float64) float64 {
	q := p.Placed(facing(axis, sign))
	top, ok := q.top()
	if !ok {
		return math.NaN()
	}
	if sign < 0 {
		return 0 - top // no minus before nought
	}
	return top
}
