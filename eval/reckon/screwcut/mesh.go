package screwcut

import (
	"fmt"
	"math"
	"slices"
)

// RuleOfThumb is what two wheels that mesh must have more than the wheel beside either of them,
// in teeth, so that this wheel passes the stud of the other (from memory: common practice).
const RuleOfThumb = 15

// Mesh says which wheels can be put up beside each other.
//
// Of the pairs A/B and C/D with B and C on one stud: C must pass the stud of A, and B the end of the
// lead screw. The studs stand half of A+B apart, counted in teeth, and C reaches half of C+2 from
// its own: so A+B must be at least C + 2 + the nut or washer on A's stud over the module, and C+D the
// same beyond B. With a module of 1 mm and a nut of 13 mm that is the remembered 15 teeth.
//
// Where the place of the first stud is known, studs and screw must also come to meet: the distances
// of the meshing pairs must close a figure with the distance from first stud to lead screw, and the
// last stud must lie on the slot of the banjo. What swings past housing and guard is not known here:
// try it by hand.
type Mesh struct {
	Spare  int     // teeth; counts where Module or Boss is not known
	Module float64 // of the wheels, mm; 0: not known
	Boss   float64 // largest of nut, washer and bush that a wheel must pass on a stud, diameter, mm; 0: not known

	Centres      float64 // first stud to lead screw, mm; 0: not known. Wants Module
	Nearest, Far float64 // of the slot: least and greatest distance of a stud from the lead screw, mm; 0: not known
}

// check says what is wrong with the figures.
func (m Mesh) check() error {
	if m.Spare < 0 || m.Spare > 100 {
		return fmt.Errorf("%d teeth to spare are not from 0 to 100", m.Spare)
	}
	for _, f := range []struct {
		name    string
		x, most float64
	}{{"module", m.Module, 10}, {"nut or washer on a stud", m.Boss, 200}, {"first stud to lead screw", m.Centres, 2000}, {"near end of the slot", m.Nearest, 2000}, {"far end of the slot", m.Far, 2000}} {
		if !(f.x >= 0 && f.x <= f.most) {
			return fmt.Errorf("%s: %v mm is not from 0 to %v mm", f.name, f.x, f.most)
		}
	}
	switch {
	case (m.Centres > 0 || m.Far > 0) && m.Module == 0:
		return fmt.Errorf("the banjo cannot be reckoned without the module of the wheels")
	case m.Far > 0 && m.Far < m.Nearest:
		return fmt.Errorf("the slot ends at %v mm, before it begins at %v mm", m.Far, m.Nearest)
	}
	return nil
}

// Measured says whether the real figures of the studs are used rather than the rule of thumb:
// module and boss, both mm, are known.
func (m Mesh) Measured() bool { return m.Module > 0 && m.Boss > 0 }

// spare is what meshing wheels must have beyond the wheel beside them, teeth.
func (m Mesh) spare() float64 {
	if m.Measured() {
		return 2 + m.Boss/m.Module
	}
	return float64(m.Spare)
}

// orders are the orders of one, two and three wheels.
var orders = [MostPairs + 1][][MostPairs]int{
	1: {{0}},
	2: {{0, 1}, {1, 0}},
	3: {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}},
}

// arrange puts the wheels of a train in the order, of those that can stand, whose steepest pair is
// the least steep, and of those whose first wheels are smallest. False where none can stand. Wheels
// and how many there are of each are the whole rack, for the idler.
func (m Mesh) arrange(t Train, rack, there []int) (best Train, ok bool) {
	for _, a := range orders[t.Pairs] {
		for _, b := range orders[t.Pairs] {
			one := t
			for n := range t.Pairs {
				one.Driver[n], one.Driven[n] = t.Driver[a[n]], t.Driven[b[n]]
			}
			if ok && rank(one, best) >= 0 || !m.stands(one) {
				continue
			}
			if t.Pairs == 1 && m.Centres > 0 {
				if one.Idler = m.idler(one, rack, there); one.Idler == 0 {
					continue
				}
			}
			best, ok = one, true
		}
	}
	return best, ok
}

// Stands says whether a train can be put up in the order it has. Of a train of one pair it looks
// at the two wheels alone, not at the idler. False also for what is no train of 1 to MostPairs
// pairs of wheels, and for a mesh out of range: 0 to 100 teeth to spare, module to 10 mm, boss to
// 200 mm, distances to 2000 mm.
func (m Mesh) Stands(t Train) bool {
	if t.Pairs < 1 || t.Pairs > MostPairs || m.check() != nil || slices.Min(t.Wheels()) < 1 {
		return false
	}
	return m.stands(t)
}

func (m Mesh) stands(t Train) bool {
	spare := m.spare()
	for n := range t.Pairs - 1 {
		b, c := float64(t.Driven[n]), float64(t.Driver[n+1])
		if float64(t.Driver[n])+b < c+spare-1e-9 || c+float64(t.Driven[n+1]) < b+spare-1e-9 {
			return false
		}
	}
	return m.closes(t)
}

// closes says whether the studs can be brought to the distances that the pairs want.
func (m Mesh) closes(t Train) bool {
	if m.Module == 0 || t.Pairs == 1 {
		return true
	}
	var apart [MostPairs]float64
	for n := range t.Pairs {
		apart[n] = m.Module * float64(t.Driver[n]+t.Driven[n]) / 2
	}
	if last := apart[t.Pairs-1]; m.Far > 0 && (last < m.Nearest-1e-9 || last > m.Far+1e-9) {
		return false
	}
	if m.Centres == 0 {
		return true
	}
	first, last := float64(t.Driver[0]), float64(t.Driven[t.Pairs-1])
	if reach := (max(first, last)+2)*m.Module/2 + m.Boss/2; reach > m.Centres+1e-9 {
		return false // the first wheel runs into the end of the lead screw, or the last into the first stud
	}
	return figureCloses(m.Centres, apart[:t.Pairs])
}

// figureCloses says whether lengths can be laid end to end between two points so far apart: the
// longest of all may not be longer than the others together.
func figureCloses(across float64, lengths []float64) bool {
	sum, longest := across, across
	for _, l := range lengths {
		sum, longest = sum+l, max(longest, l)
	}
	return longest <= sum-longest+1e-9
}

// idler finds the smallest wheel that is left and meshes with both wheels of a train of one pair at
// the places of first stud and lead screw; 0 where there is none. Both wheels must miss each other.
func (m Mesh) idler(t Train, rack, there []int) int {
	a, b := t.Driver[0], t.Driven[0]
	if m.Centres < m.Module*float64(a+b+4)/2-1e-9 {
		return 0
	}
	for n, z := range rack {
		left := there[n]
		for _, used := range []int{a, b} {
			if used == z {
				left--
			}
		}
		near := m.Module * float64(z+b) / 2
		inSlot := m.Far == 0 || near >= m.Nearest-1e-9 && near <= m.Far+1e-9
		if left > 0 && inSlot && figureCloses(m.Centres, []float64{m.Module * float64(a+z) / 2, near}) {
			return z
		}
	}
	return 0
}

// Apart gives how far the axes of two meshing wheels stand apart, mm: half the module, mm, by all
// teeth. A bare formula: 0 where the module is not above 0, infinite or no number.
func Apart(module float64, a, b int) float64 {
	if !(module > 0) || math.IsInf(module, 0) {
		return 0
	}
	return module * float64(a+b) / 2
}
