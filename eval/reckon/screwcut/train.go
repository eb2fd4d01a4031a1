// Package screwcut finds change wheels for cutting threads on a lathe, and says what the half-nuts
// may do and how the starts of a thread are found.
//
// # Trains
//
// The first wheel A sits on the stud that the spindle turns (through the fixed train of the head,
// once for each turn of the spindle where there is none). A turns B; where there is a second pair C
// sits on one stud with B and turns D, and so on; the last wheel sits on the lead screw. Then
//
//	lead cut = head x A/B x C/D x E/F x lead of the screw.
//
// A train of one pair is filled up with any wheel that reaches: an idler changes which way the
// screw turns and nothing else (Jones 1914; Rose). Everything about ratios is exact; a train is
// called exact only where the two whole products agree.
//
// The search makes all sets of drivers and all sets of driven wheels of one size, sorts the former
// by their product and for each of the latter looks up the drivers whose product lies within the
// error allowed: all trains are found, without trying all pairs of sets.
//
// Where a comment names no source, a formula is the definition of its words or follows from that line.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package screwcut

import (
	"cmp"
	"fmt"
	"math"
	"math/big"
	"math/bits"
	"slices"
	"strings"
)

// The ranges taken.
const (
	LeastTeeth = 6
	MostTeeth  = 500
	MostWheels = 60
	MostWithin = 20000 // ppm of error allowed
	MostPairs  = 3
	MostTrains = 5000    // that are listed
	mostHead   = 1000000 // numerator and denominator of the fixed train
)

// Lathe is what a lathe brings to cutting a thread: 2 to MostWheels wheels of LeastTeeth to
// MostTeeth teeth, and a head of whole numbers from 1 to a million.
type Lathe struct {
	Screw  Pitch    // lead of its lead screw
	Head   Fraction // turns of the first wheel's stud for one of the spindle; zero: 1
	Wheels []int    // teeth of the wheels that are there, doubles written twice
	Mesh   Mesh
}

// Wanted is what is to be cut.
type Wanted struct {
	Lead   Pitch   // pitch times starts
	Within float64 // error allowed either way, ppm; 0: exact trains alone
	Pairs  int     // most pairs of wheels, 1 to MostPairs
}

// Train is a train of wheels in its order: Driver[0] on the first stud turns Driven[0], Driver[1]
// sits beside that and turns Driven[1], and the last driven wheel is on the lead screw.
type Train struct {
	Pairs          int
	Driver, Driven [MostPairs]int
	Idler          int      // of a train of one pair, where the banjo is known; 0: any that reaches
	Turn           Fraction // turns of the lead screw for one of the spindle
	Lead           float64  // mm that it cuts
	PPM            float64  // error of that, parts in a million; plus: too long
	Exact          bool
}

// Answer is all that was found, the best first.
type Answer struct {
	Trains  []Train
	Found   int  // trains that are right, each set of drivers and driven wheels once
	Blocked int  // sets that would be right, and cannot be put up in any order
	More    bool // there are more than MostTrains: the best are listed, and both counts fall short
}

// Wheels gives the wheels of the train, driver first: A B C D ...; none where it has no pairs.
func (t Train) Wheels() []int {
	var out []int
	for n := range min(t.Pairs, MostPairs) {
		out = append(out, t.Driver[n], t.Driven[n])
	}
	return out
}

// String says the train: "40/60 x 20/80", drivers above.
func (t Train) String() string {
	var pairs []string
	for n := range min(t.Pairs, MostPairs) {
		pairs = append(pairs, fmt.Sprintf("%d/%d", t.Driver[n], t.Driven[n]))
	}
	return strings.Join(pairs, " x ")
}

// Over gives the error in mm that the train makes over a length of thread, mm; plus: too long. A
// bare formula, which refuses nothing.
func (t Train) Over(length float64) float64 { return length * t.PPM / 1e6 }

// Meshes counts the places where wheels mesh; with an odd number the lead screw turns against the
// first stud. A train of one pair is put up with so many idlers, the others without any. A plain
// sum, which refuses nothing.
func (t Train) Meshes(idlers int) int { return t.Pairs + idlers }

// TooTight is what an error of lead over the length in engagement, mm, takes from the play of a
// thread, in mm on pitch diameter: the error by the cotangent of half the thread's angle in
// degrees, 1.732 times it for 60 degrees, 1.921 for 55 (from memory: handbooks on virtual
// effective diameter). A bare formula: 0 for an angle that is not above 0 and below 180.
func TooTight(over, angle float64) float64 {
	if !(angle > 0 && angle < 180) {
		return 0
	}
	return math.Abs(over) / math.Tan(angle/2*math.Pi/180)
}

// Trains finds every train from the wheels that are there whose error is within what is allowed.
// They are ranked by the error, exact ones first, then by fewer pairs, then by how near each pair
// is to 1:1 (a steep pair strains its wheels), then by fewer teeth in all. No train is no error;
// an error names the figure of lathe, mesh or wish that is out of range or not given.
func Trains(l Lathe, w Wanted) (Answer, error) {
	s, err := begin(l, w)
	if err != nil {
		return Answer{}, err
	}
	for pairs := 1; pairs <= w.Pairs; pairs++ {
		s.pairs(pairs)
	}
	s.More = s.More || len(s.Trains) > MostTrains
	s.sort()
	for n := range s.Trains {
		s.Trains[n].cuts(s.head, s.screw)
	}
	return s.Answer, nil
}

// Ratio gives what the driver products must be over the driven products for a lead: the lead over
// that of the screw and the turns of the head. Where pi is in it, it stands to 40 figures. The
// lathe must have a lead screw; without one the ratio is 0, as it is without a lead. A head
// without a denominator counts as 1.
func Ratio(l Lathe, lead Pitch) *big.Rat {
	by := l.Screw.rat()
	if l.Head.Den > 0 {
		by.Mul(by, big.NewRat(l.Head.Num, l.Head.Den))
	}
	if by.Sign() == 0 {
		return by
	}
	return new(big.Rat).Quo(lead.rat(), by)
}

// search is the work in hand.
type search struct {
	Answer
	mesh     Mesh
	within   float64 // share
	head     Fraction
	screw    float64
	want     float64 // driver products over driven products
	num, den int64   // the same exactly; 0 where it is no fraction of whole numbers below 2^63
	teeth    []int   // each once, growing
	there    []int   // how many of each
}

func begin(l Lathe, w Wanted) (*search, error) {
	if l.Head == (Fraction{}) {
		l.Head = Fraction{1, 1}
	}
	switch {
	case l.Screw.den == 0:
		return nil, fmt.Errorf("no lead of the lead screw is given")
	case w.Lead.den == 0:
		return nil, fmt.Errorf("no pitch to be cut is given")
	case l.Head.Num <= 0 || l.Head.Den <= 0 || l.Head.Num > mostHead || l.Head.Den > mostHead:
		return nil, fmt.Errorf("turns of the first stud for one of the spindle: %s is not a fraction of whole numbers from 1 to %d", l.Head, mostHead)
	case !(w.Within >= 0 && w.Within <= MostWithin):
		return nil, fmt.Errorf("an error of %v ppm is not from 0 to %d", w.Within, MostWithin)
	case w.Pairs < 1 || w.Pairs > MostPairs:
		return nil, fmt.Errorf("%d pairs of wheels are not from 1 to %d", w.Pairs, MostPairs)
	}
	if err := l.Mesh.check(); err != nil {
		return nil, err
	}
	s := &search{mesh: l.Mesh, within: w.Within / 1e6, head: l.Head, screw: l.Screw.MM()}
	ratio := Ratio(l, w.Lead)
	s.want, _ = ratio.Float64()
	if (w.Lead.pi == l.Screw.pi) && ratio.Num().IsInt64() && ratio.Denom().IsInt64() {
		s.num, s.den = ratio.Num().Int64(), ratio.Denom().Int64()
	}
	return s, s.rack(l.Wheels)
}

// rack sorts the wheels that are there.
func (s *search) rack(wheels []int) error {
	if len(wheels) < 2 || len(wheels) > MostWheels {
		return fmt.Errorf("%d wheels are not from 2 to %d", len(wheels), MostWheels)
	}
	for _, z := range slices.Sorted(slices.Values(wheels)) {
		if z < LeastTeeth || z > MostTeeth {
			return fmt.Errorf("a wheel of %d teeth is not from %d to %d", z, LeastTeeth, MostTeeth)
		}
		if n := len(s.teeth); n > 0 && s.teeth[n-1] == z {
			s.there[n-1]++
			continue
		}
		s.teeth, s.there = append(s.teeth, z), append(s.there, 1)
	}
	return nil
}

// set is wheels by their numbers in search.teeth, growing, and the product of their teeth.
type set struct {
	of      [MostPairs]int8
	product int64
}

// sets makes every set of so many wheels that are there, sorted by product, then by wheels.
func (s *search) sets(size int) []set {
	all := []set{{product: 1}}
	for n := range size {
		var more []set
		for _, a := range all {
			from := 0
			if n > 0 {
				from = int(a.of[n-1])
			}
			for i := from; i < len(s.teeth); i++ {
				if b := a; s.uses(a, n, i) < s.there[i] {
					b.of[n], b.product = int8(i), a.product*int64(s.teeth[i])
					more = append(more, b)
				}
			}
		}
		all = more
	}
	slices.SortFunc(all, func(a, b set) int {
		return cmp.Or(cmp.Compare(a.product, b.product), slices.Compare(a.of[:], b.of[:]))
	})
	return all
}

// uses counts how often a wheel is in a set.
func (s *search) uses(a set, size, wheel int) int {
	n := 0
	for _, i := range a.of[:size] {
		if int(i) == wheel {
			n++
		}
	}
	return n
}

// together says whether the wheels of both sets are there at once.
func (s *search) together(a, b set, size int) bool {
	for _, i := range a.of[:size] {
		if n := s.uses(b, size, int(i)); n > 0 && n+s.uses(a, size, int(i)) > s.there[i] {
			return false
		}
	}
	return true
}

// pairs finds the trains of so many pairs.
func (s *search) pairs(size int) {
	all := s.sets(size)
	const hair = 1e-12 // above the error of float64 products
	for _, driven := range all {
		want := s.want * float64(driven.product)
		lo, hi := want*(1-s.within-hair), want*(1+s.within+hair)
		at, _ := slices.BinarySearchFunc(all, lo, func(a set, lo float64) int { return cmp.Compare(float64(a.product), lo) })
		for _, drivers := range all[at:] {
			if float64(drivers.product) > hi {
				break
			}
			if s.together(drivers, driven, size) {
				s.put(drivers, driven, size)
			}
		}
	}
}

// put takes a right set up in its best order.
func (s *search) put(drivers, driven set, size int) {
	t := Train{Pairs: size, PPM: (float64(drivers.product)/float64(driven.product)/s.want - 1) * 1e6}
	if t.Exact = s.exact(drivers.product, driven.product); t.Exact {
		t.PPM = 0
	}
	if !t.Exact && (s.within == 0 || math.Abs(t.PPM) > s.within*1e6*(1+1e-9)) {
		return
	}
	for n := range size {
		t.Driver[n], t.Driven[n] = s.teeth[drivers.of[n]], s.teeth[driven.of[n]]
	}
	t, ok := s.mesh.arrange(t, s.teeth, s.there)
	if !ok {
		s.Blocked++
		return
	}
	s.Found++
	s.Trains = append(s.Trains, t)
	if len(s.Trains) >= 2*MostTrains {
		s.sort() // from here on only a nearer one can come among the best
		s.More, s.within = true, math.Abs(s.Trains[MostTrains-1].PPM)/1e6
	}
}

// exact says whether the whole products give the ratio wanted.
func (s *search) exact(drivers, driven int64) bool {
	if s.den == 0 {
		return false
	}
	h1, l1 := bits.Mul64(uint64(drivers), uint64(s.den))
	h2, l2 := bits.Mul64(uint64(driven), uint64(s.num))
	return h1 == h2 && l1 == l2
}

// sort ranks the trains and keeps the best.
func (s *search) sort() {
	slices.SortFunc(s.Trains, rank)
	s.Trains = s.Trains[:min(len(s.Trains), MostTrains)]
}

func rank(a, b Train) int {
	exact := 0
	if a.Exact != b.Exact {
		exact = 1
		if a.Exact {
			exact = -1
		}
	}
	return cmp.Or(exact, cmp.Compare(math.Abs(a.PPM), math.Abs(b.PPM)), cmp.Compare(a.PPM, b.PPM), cmp.Compare(a.Pairs, b.Pairs),
		cmp.Compare(a.steepest(), b.steepest()), cmp.Compare(a.teeth(), b.teeth()),
		slices.Compare(a.Driver[:], b.Driver[:]), slices.Compare(a.Driven[:], b.Driven[:]))
}

// steepest gives the ratio of the steepest pair, 1 or more.
func (t Train) steepest() float64 {
	most := 1.0
	for n := range t.Pairs {
		a, b := float64(t.Driver[n]), float64(t.Driven[n])
		most = max(most, a/b, b/a)
	}
	return most
}

func (t Train) teeth() int {
	sum := 0
	for n := range t.Pairs {
		sum += t.Driver[n] + t.Driven[n]
	}
	return sum
}

// cuts fills in the turns of the screw and the lead.
func (t *Train) cuts(head Fraction, screw float64) {
	t.Turn = head
	for n := range t.Pairs {
		f := reduced(int64(t.Driver[n]), int64(t.Driven[n]))
		a, b := reduced(t.Turn.Num, f.Den), reduced(f.Num, t.Turn.Den)
		t.Turn = Fraction{a.Num * b.Num, a.Den * b.Den}
	}
	t.Lead = t.Turn.Float() * screw
}
