package bar

// How a rack is cut up.
//
// First come quick ways: bars filled as full as they go, one after another. Then a linear
// program over ways of filling a bar (P. C. Gilmore, R. E. Gomory, "A linear programming
// approach to the cutting-stock problem", Operations Research 9, 1961), which gives a lower
// bound for the new bars, and by rounding, again and again, a plan that is mostly as good.
// Last comes a search through all plans (search.go), which at the size of a workshop comes
// to an end and proves the whole list of aims; where it is stopped, what is proved is the
// aims that reach their bounds.

// Plans gives the best plan for a job; how far it is proved the best stands in it. A rack that
// does not give all pieces is an error of type *Short; a piece that is longer than every bar, or a
// figure out of range, is an error that names it. A job without pieces has an empty plan.
func Plans(j Job) (Plan, error) {
	r, err := newRack(j)
	if err != nil {
		return Plan{}, err
	}
	if len(r.sizes) == 0 {
		return Plan{Proved: Touched}, nil
	}
	if by := r.lacking(); by > 0 {
		return Plan{}, &Short{By: mm(by * r.unit), Proved: true}
	}
	best := r.quick()
	least := r.volume()
	if best == nil || r.score(best).fresh > least {
		bound, rounded := r.program()
		least = max(least, bound)
		best = r.better(best, rounded)
	}
	if best == nil || r.score(best).fresh > least {
		found, whole := r.search(best, least, true)
		best = r.better(best, found)
		switch {
		case whole && best == nil:
			return Plan{}, &Short{Proved: true}
		case whole:
			least = r.score(best).fresh
		case best == nil:
			return Plan{}, &Short{}
		}
	}
	settled := r.settled() && r.score(best).fresh == least
	if !settled {
		var found []filling
		found, settled = r.search(best, least, false)
		best = r.better(best, found)
	}
	p := r.plan(best)
	p.LeastNew = least
	p.Proved = r.proved(p, settled)
	return p, nil
}

// settled says that the number of bars settles everything: all are new and of one length,
// and no remainder is kept.
func (r *rack) settled() bool {
	b := r.bars[0] // where its own end is a face a cut may be saved, and scrap depends on the plan
	return len(r.bars) == 1 && b.fresh && r.usable == 0 && b.room <= b.length
}

// proved says how far down a plan is the best. No scrap at all is the least there is, and so
// is no remainder.
func (r *rack) proved(p Plan, settled bool) Level {
	switch {
	case settled:
		return Touched
	case p.NewBars > p.LeastNew:
		return Nothing
	case p.Scrap > 0:
		return NewBars
	case p.Kept > 0:
		return Scrap
	}
	return Kept
}

func (r *rack) better(a, b []filling) []filling {
	if a == nil || b != nil && r.score(b).compare(r.score(a)) < 0 {
		return b
	}
	return a
}

// lacking is by how much the pieces exceed the room of the rack; 0 where they do not.
func (r *rack) lacking() int64 {
	sum := r.used(r.wanted)
	for _, b := range r.bars {
		if sum -= int64(b.count) * b.room; sum <= 0 { // further bars could leave 64 bits
			return 0
		}
	}
	return sum
}

// volume is a least number of new bars: what offcuts cannot hold, by the longest new bar.
func (r *rack) volume() int {
	need, longest := r.used(r.wanted), int64(0)
	for _, b := range r.bars {
		if b.fresh {
			longest = max(longest, b.room)
		} else {
			need -= int64(b.count) * b.room
		}
		if need <= 0 {
			return 0
		}
	}
	if longest == 0 {
		return 0
	}
	return int((need + longest - 1) / longest)
}
