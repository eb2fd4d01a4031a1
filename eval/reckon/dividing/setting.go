package dividing

import (
	"cmp"
	"slices"
)

// Method is a way of dividing. Their order is the order of preference: a circle of holes on the
// plate has its error shrunk by the worm, and one count a move; the direct plate is quicker and
// has its own error in full; compound indexing asks for two counts a move on one plate; a
// differential train asks for wheels, a level spindle and the plate's lock withdrawn.
type Method uint8

const (
	Plain Method = iota + 1
	Direct
	Compound
	Differential
)

// String writes a method for a sentence, "no method" for 0.
func (m Method) String() string {
	return [...]string{"no method", "plain", "direct", "compound", "differential"}[min(m, Differential)*min(1, m)]
}

// Count is a way of a pin: whole turns, and holes more in a circle. Holes are spaces: the
// arms of the sector stand with one hole more between them, the pin's own counted.
type Count struct {
	Turns  int64
	Holes  int // 0 to Circle - 1
	Circle int // any circle does where Holes is 0; then the one named is the largest there
}

// Part gives the way in turns, exactly; whole turns where there is no circle.
func (c Count) Part() Fraction {
	if c.Circle == 0 {
		return Of(c.Turns, 1)
	}
	return Of(c.Turns, 1).Plus(Of(int64(c.Holes), int64(c.Circle)))
}

// Span is how many holes the arms of the sector take in, both ends counted; 0 where the move is
// whole turns and no arms are wanted.
func (c Count) Span() int {
	if c.Holes == 0 {
		return 0
	}
	return c.Holes + 1
}

// Setting is one way to make the moves of a job.
type Setting struct {
	Method Method
	Crank  Count  // of the crank; of the direct plate where Method is Direct
	Plate  string // name of the plate; "" where none is wanted, or for the direct plate
	Face   int    // of the plate, from 1; 0 where the faces are not told apart

	// Back is the second pin of compound indexing: holes that the plate itself is moved, below 0
	// against the crank. Its Turns are 0.
	Back      Count
	Against   bool // the plate goes against the crank
	OneSide   bool // both circles are known to be on one face; false: look, and use it only if they are
	Train     Train
	PerSpace  Fraction // what one move turns the work by less what is wanted, part of the circle
	AtClosing Fraction // the same after the moves that come back to the first place; no number for an angle
}

// Exact says that the moves are without error of arithmetic; false also where the error is no
// number.
func (s Setting) Exact() bool { return s.PerSpace.Valid() && s.PerSpace.Num == 0 }

// Holes is how many holes are counted at a move, on both pins.
func (s Setting) Holes() int { return s.Crank.Holes + s.Back.Holes }

// turn is the crank's way over the fixed parts of the head, in turns, the train left out.
func (s Setting) turn() Fraction {
	if s.Against {
		return s.Crank.Part().Minus(s.Back.Part())
	}
	return s.Crank.Part().Plus(s.Back.Part())
}

// Moves gives what one move of a setting turns the work by, part of the circle; no number where the
// head has no ratio and the setting is not direct.
func (h Head) Moves(s Setting) Fraction {
	switch s.Method {
	case Direct:
		return s.Crank.Part()
	case Differential:
		return s.turn().Over(h.Ratio.Minus(s.Train.Ratio()))
	}
	return s.turn().Over(h.Ratio)
}

// judged fills in the error of a setting for a job.
func (h Head) judged(s Setting, j Job) Setting {
	s.PerSpace = h.Moves(s).Minus(j.Step)
	if j.Whole {
		s.AtClosing = s.PerSpace.Times(Of(int64(j.Places), 1))
	}
	return s
}

// Turns gives the turns of the crank for one move: the ratio times the way, by the equation above.
// An error names the figure of head or job that is outside the ranges.
func Turns(h Head, j Job) (Fraction, error) {
	if err := h.check(); err != nil {
		return Fraction{}, err
	}
	if err := j.check(); err != nil {
		return Fraction{}, err
	}
	return h.Ratio.Times(j.Step), nil
}

// Settings gives every exact setting without a train, in order of preference: plain, direct,
// compound. Within plain the larger circle comes first (common practice: the pin stands farther
// out, so that the same error of a hole is a smaller angle); a move of whole turns is one setting,
// in whatever circle. Within compound the fewest holes counted in all come first, each being a
// chance of a slip, then the smaller way of the plate, then the larger circle. A circle that
// stands on two plates makes two settings, in the order of the plates. An error for a head or job
// outside the ranges; no setting is no error.
func Settings(h Head, j Job) ([]Setting, error) {
	t, err := Turns(h, j)
	if err != nil {
		return nil, err
	}
	all := slices.Concat(h.plain(t), h.direct(j), h.compound(t))
	for i := range all {
		all[i] = h.judged(all[i], j)
	}
	return all, nil
}

// seat is a circle and where it is.
type seat struct {
	circle int
	plate  string
	face   int
}

// seats gives the circles of all plates, largest first, a circle once a plate face.
func (h Head) seats() (all []seat) {
	for _, p := range h.Plates {
		for n, face := range p.Faces {
			at := n + 1
			if p.Mixed {
				at = 0
			}
			for _, c := range once(face) {
				all = append(all, seat{c, p.Name, at})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b seat) int { return cmp.Compare(b.circle, a.circle) })
	return all
}

// once gives the members of a list without those said twice, in falling order.
func once(list []int) []int {
	l := slices.Clone(list)
	slices.Sort(l)
	slices.Reverse(l)
	return slices.Compact(l)
}

func (h Head) plain(t Fraction) (out []Setting) {
	whole, rest := t.Whole()
	if rest.Num == 0 {
		s := Setting{Method: Plain, Crank: Count{Turns: whole}}
		if all := h.seats(); len(all) > 0 {
			s.Crank.Circle, s.Plate, s.Face = all[0].circle, all[0].plate, all[0].face
		}
		return []Setting{s}
	}
	for _, at := range h.seats() {
		if holes := rest.Times(Of(int64(at.circle), 1)); holes.Den == 1 {
			out = append(out, Setting{Method: Plain, Crank: Count{whole, int(holes.Num), at.circle}, Plate: at.plate, Face: at.face})
		}
	}
	return out
}

// direct: the larger circle first, for the same reason.
func (h Head) direct(j Job) (out []Setting) {
	for _, c := range once(h.Direct) {
		if holes := j.Step.Times(Of(int64(c), 1)); holes.Den == 1 {
			out = append(out, Setting{Method: Direct,
				Crank: Count{holes.Num / int64(c), int(holes.Num % int64(c)), c}})
		}
	}
	return out
}

// Service says which circles of holes would serve plain indexing.
type Service struct {
	Turns  Fraction // of the crank for one move
	Least  int64    // holes of the least circle that serves: every multiple of it does; 1: whole turns, no plate is wanted
	Sizes  []int    // all that serve up to the bound asked for
	Direct int64    // holes of the least direct plate that serves, every multiple of it too
}

// Serve says which circles would serve, up to a bound of holes, 2 to MostHoles. An error for a
// bound outside that, and for a head or job outside the ranges.
func Serve(h Head, j Job, bound int) (Service, error) {
	t, err := Turns(h, j)
	if err != nil {
		return Service{}, err
	}
	if err := circles([]int{bound}, "a bound"); err != nil {
		return Service{}, err
	}
	s := Service{Turns: t, Least: t.Den, Direct: j.Step.Den}
	for c := t.Den; c <= int64(bound); c += t.Den {
		if c > 1 {
			s.Sizes = append(s.Sizes, int(c))
		}
	}
	return s, nil
}

// Blocks gives the least few numbers of spaces, from 2 up, that may be taken at once of n places, at
// most so many of them as most says. None for n below 3 or above MostPlaces, or most below 1.
func Blocks(n, most int) (out []int) {
	for k := 2; k < n && n <= MostPlaces && len(out) < most; k++ {
		if gcd(int64(n), int64(k)) == 1 {
			out = append(out, k)
		}
	}
	return out
}

// Rounds says how block indexing goes round: moves until the work has passed its first place or
// come to it, and how many rounds of the work all its moves make; 0 and 0 for what is no job.
func (j Job) Rounds() (firstRound, rounds int) {
	if j.check() != nil {
		return 0, 0
	}
	return (j.Places + j.Spaces - 1) / j.Spaces, j.Spaces
}
