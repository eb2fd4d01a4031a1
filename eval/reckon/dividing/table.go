package dividing

import "iter"

// Position is one line of the running table.
type Position struct {
	Move  int      // 0 at the first place
	Place int      // number of the place among the divisions, from 1, round the work
	Work  Fraction // where the place is, part of the circle, 0 or more and below 1
	Turns int64    // whole turns of the crank since the first place; direct: of the spindle
	Hole  int      // where the pin stands in its circle, counted from the first hole, 0 to circle - 1
	Back  int      // compound: where the second pin stands, counted the way of the crank
	Error Fraction // the work stands that much farther than it should, part of the circle
}

// Table goes through every place of a job as a setting reaches it, first place first; of equal
// divisions the coming back to the first place is the last line, which shows whether the count
// closes. The setting's error adds up from line to line. It must be a setting that this package
// gave for that job; what is no job has no line.
func Table(j Job, s Setting) iter.Seq[Position] {
	circle := max(1, int64(s.Crank.Circle))
	step := s.Crank.Turns*circle + int64(s.Crank.Holes)
	back, other := int64(s.Back.Holes), max(1, int64(s.Back.Circle))
	if s.Against {
		back = -back
	}
	return j.lines(func(p Position) Position {
		at := step * int64(p.Move)
		p.Turns, p.Hole = at/circle, int(at%circle)
		p.Back = int((back*int64(p.Move)%other + other) % other)
		p.Error = s.PerSpace.Times(Of(int64(p.Move), 1))
		return p
	})
}

// Table goes through every place of a job, each at the hole nearest to it; a place half way
// between two holes takes the farther one. The last line is as in the Table of a setting. What is
// no job has no line, nor has a head outside the ranges.
func (r Rounding) Table(h Head, j Job) iter.Seq[Position] {
	if h.check() != nil {
		j = Job{} // which has no lines
	}
	circle := Of(int64(max(1, r.Circle)), 1)
	t := h.Ratio.Times(j.Step).Times(circle)
	return j.lines(func(p Position) Position {
		wanted := t.Times(Of(int64(p.Move), 1))
		at := wanted.Round()
		p.Turns, p.Hole = at/circle.Num, int(at%circle.Num)
		p.Error = Of(at, 1).Minus(wanted).Over(circle).Over(h.Ratio)
		return p
	})
}

// lines gives the places of a job in the order in which they are reached.
func (j Job) lines(fill func(Position) Position) iter.Seq[Position] {
	return func(yield func(Position) bool) {
		if j.check() != nil {
			return
		}
		last := j.Places
		if !j.Whole {
			last--
		}
		for i := 0; i <= last; i++ {
			_, at := j.Step.Times(Of(int64(i), 1)).Whole()
			p := Position{Move: i, Place: i + 1, Work: at}
			if j.Whole {
				p.Place = int(int64(i)*int64(j.Spaces)%int64(j.Places)) + 1
			}
			if !yield(fill(p)) {
				return
			}
		}
	}
}
