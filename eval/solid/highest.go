package solid

// top gives the height of the highest metal; false where there is none.
func (p *Piece) top() (float64, bool) {
	if p.lumps != nil {
		return p.topJoined()
	}
	if p.blank.kind == empty {
		return 0, false
	}
	s := scenes.Get().(*scene)
	defer scenes.Put(s)
	s.body = nil
	s.near(p, p.blank.lo, p.blank.hi)
	s.levels = s.levels[:0]
	s.addLevels(p.blank.lo[2], p.blank.hi[2])
	for i := len(s.levels) - 1; i > 0; i-- {
		if z, ok := s.highest(band{s.levels[i-1], s.levels[i]}, 0); ok {
			return z, true
		}
	}
	return 0, false
}

// highest gives the top of the highest part of a band that holds metal.
func (s *scene) highest(b band, deep int) (float64, bool) {
	n := coarse << min(deep, 5)
	s.outlines(b, n, true)
	if _, ok := s.uncovered(s.region(), s.opens); !ok {
		return 0, false
	}
	if s.constant(b) {
		return b.hi, true
	}
	if b.height() <= Grain/2 {
		s.outlines(band{b.mid(), b.mid()}, n, false)
		_, ok := s.uncovered(s.region(), s.opens)
		return b.hi, ok
	}
	if z, ok := s.highest(band{b.mid(), b.hi}, deep+1); ok {
		return z, true
	}
	return s.highest(band{b.lo, b.mid()}, deep+1)
}
