package solid

import "sync"

// While a piece is held in one way it is cut and cut again, and after each cut it is looked at as
// it stands in the machine. Only what the last cut took has to be placed then: the rest stands
// where it stood.

// mostBack is how many cuts back a view is looked for before all is placed anew.
const mostBack = 8

// Standing gives what Placed gives, and remembers it: of a piece cut from one that was asked for
// in the same pose only what is new is placed.
func (p *Piece) Standing(q Pose) *Piece {
	if v := p.seen.in(q); v != nil {
		return v
	}
	v := p.standing(q)
	p.seen.note(v)
	return v
}

// view keeps one other look at a piece.
type view struct {
	mu  sync.Mutex
	way *Piece
}

// in gives the look that is kept if it is in the pose.
func (s *view) in(q Pose) *Piece {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.way != nil && s.way.pose == q {
		return s.way
	}
	return nil
}

func (s *view) note(p *Piece) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.way = p
}

func (p *Piece) standing(q Pose) *Piece {
	if p.lumps != nil {
		return p.Placed(q)
	}
	old := p
	for range mostBack {
		if old = old.past; old == nil || old.lumps != nil {
			break
		}
		v := old.seen.in(q)
		if v == nil {
			continue
		}
		own := make([]Removal, len(p.cuts)-len(old.cuts))
		more := make([]*Removal, len(own))
		for i, r := range p.cuts[len(old.cuts):] {
			own[i] = r.placed(q)
			more[i] = &own[i]
		}
		c := &Piece{blank: v.blank, same: p, pose: q}
		c.cuts, c.shelf = v.with(more)
		return c
	}
	return p.Placed(q)
}
