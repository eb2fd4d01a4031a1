package hold

import (
	"fmt"
	"math"
)

// The least clamping force.
//
// A contact can push along its normal with any force n and drag sideways with at most
// friction times n: its force lies in a cone. Work holds if forces within the cones can
// balance the load, forces and moments. The least sum of the clamps' normal forces for which
// they can is a linear program once each cone is a pyramid.
//
// The pyramid stands inside the cone: its edges touch the cone, so that it claims less
// friction than there is, at worst cos(pi/sides) of it between two edges (0.707 for 4 sides,
// 0.981 for 16). So the force that comes out is never too small for the friction given.
// A second program with the pyramid around the cone gives the floor: with less no forces
// within the round cones balance, however they fall out. The truth for round cones lies
// between the two.
//
// That forces exist which balance is needed and is not enough: rigid bodies with friction
// can settle on other forces than those, and a clamp that is done up slackly or last decides
// which. The first edge points along the axis of the frame that lies most nearly square to
// the normal (x before y before z), made square to it; so walls square to the axes drag along the axes.

// Grip is what a holding needs.
type Grip struct {
	Held   bool
	Force  float64  // least sum of the clamps' normal forces, N; 0 where not held
	Floor  float64  // less than this does not do with round cones either
	Pushes []Vector // force of each contact on its body at Force, N
	Gives  []Motion // the way each body goes first at less, or at any force where it is not held
	Short  float64  // share of friction that the pyramid leaves out at worst
}

// Motion is a small movement of a body: how the point at the origin goes and how it turns, up
// to a common scale. The longer of the two is 1 (turning counted at the farthest contact).
type Motion struct{ Slide, Turn Vector }

// Least gives the least clamping force, N, that holds bodies at contacts against loads, all loads
// acting together; for a cut that moves about, ask once for each of its places. Without any
// contact that is a clamp it says whether the bodies stand by themselves. sides is how many sides
// a friction cone gets, even, 4 to 64; 16 leaves out 2 % of friction at worst. Both bounds are
// proved to 1e-7 of the load.
//
// 1 to 64 contacts and loads, places within 100 m, forces within 1e7 N, friction 0 to 2, up to 8
// bodies, and contacts by sides by bodies up to 4096; an error names what is outside. A load that
// is a proof's breadth from slipping may be an error too: the figures lie too far apart to tell.
func Least(contacts []Contact, loads []Load, sides int) (Grip, error) {
	bodies, err := check(contacts, loads, sides)
	if err != nil {
		return Grip{}, err
	}
	s := newScene(contacts, loads, bodies)
	in, err := s.program(sides, 1).solve()
	if err != nil {
		return Grip{}, err
	}
	g := Grip{Held: in.holds, Gives: s.motions(in.prices), Short: 1 - math.Cos(math.Pi/float64(sides))}
	if !in.holds {
		return g, nil
	}
	g.Force, g.Floor, g.Pushes = in.cost*s.force, in.cost*s.force, s.pushes(in.x, sides)
	around, err := s.program(sides, 1/math.Cos(math.Pi/float64(sides))).solve()
	if err != nil {
		return Grip{}, err
	}
	if around.holds {
		g.Floor = math.Min(around.cost*s.force, g.Force)
	}
	return g, nil
}

// scene is contacts and loads brought to figures about 1: lengths are counted from the middle
// of the contacts in units of the farthest, forces in units of the largest load.
type scene struct {
	contacts      []Contact
	loads         []Load
	bodies        int
	middle        Vector
	length, force float64
}

func newScene(contacts []Contact, loads []Load, bodies int) *scene {
	s := &scene{contacts: contacts, loads: loads, bodies: bodies}
	for _, c := range contacts {
		s.middle = s.middle.plus(c.At.times(1 / float64(len(contacts))))
	}
	for _, c := range contacts {
		s.length = math.Max(s.length, c.At.plus(s.middle.times(-1)).Length())
	}
	for _, l := range loads {
		s.force = math.Max(s.force, l.Force.Length())
	}
	if s.length < 1e-6 {
		s.length = 1
	}
	if s.force == 0 {
		s.force = 1
	}
	return s
}

// wrench is a force and its moment about the middle in the scene's units.
func (s *scene) wrench(force, at Vector) [6]float64 {
	m := at.plus(s.middle.times(-1)).times(1 / s.length).cross(force)
	w := [6]float64{force[0], force[1], force[2], m[0], m[1], m[2]}
	for k, v := range w {
		if math.Abs(v) < tiny {
			w[k] = 0
		}
	}
	return w
}

// program gives each edge of each pyramid a column. widen makes friction larger by a factor.
func (s *scene) program(sides int, widen float64) *program {
	p := &program{b: make([]float64, 6*s.bodies)}
	for range p.b {
		p.a = append(p.a, make([]float64, sides*len(s.contacts)))
	}
	for _, c := range s.contacts {
		for _, edge := range c.edges(sides, widen) {
			w, j := s.wrench(edge, c.At), len(p.cost)
			for k, v := range w {
				p.a[6*body(c.Body)+k][j] += v
				if c.Against > 0 {
					p.a[6*body(c.Against)+k][j] -= v
				}
			}
			cost := 0.0
			if c.Clamp {
				cost = 1
			}
			p.cost = append(p.cost, cost)
		}
	}
	for _, l := range s.loads {
		for k, v := range s.wrench(l.Force.times(1/s.force), l.At) {
			p.b[6*body(l.Body)+k] -= v
		}
	}
	return p
}

func body(n int) int { return max(n, 1) - 1 }

// edges are the forces along the edges of a contact's pyramid, each with a normal force of 1.
func (c Contact) edges(sides int, widen float64) []Vector {
	n := c.Normal.times(1 / c.Normal.Length())
	u, v := across(n)
	out := make([]Vector, sides)
	for k := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(sides))
		if 4*k%sides == 0 { // exactly along the axes
			sin, cos = math.Round(sin), math.Round(cos)
		}
		mu := c.Friction * widen
		out[k] = n.plus(u.times(mu * cos)).plus(v.times(mu * sin))
	}
	return out
}

// across gives two ways square to a normal of length 1 and to each other.
func across(n Vector) (u, v Vector) {
	k := 0
	for i := range n {
		if math.Abs(n[i]) < math.Abs(n[k])-1e-9 {
			k = i
		}
	}
	var axis Vector
	axis[k] = 1
	u = axis.plus(n.times(-axis.dot(n)))
	u = u.times(1 / u.Length())
	return u, n.cross(u)
}

// pushes sums the edges of each contact, N.
func (s *scene) pushes(x []float64, sides int) []Vector {
	out := make([]Vector, len(s.contacts))
	for i, c := range s.contacts {
		for k, edge := range c.edges(sides, 1) {
			out[i] = out[i].plus(edge.times(x[i*sides+k] * s.force))
		}
	}
	return out
}

// motions reads prices as movements: the price of a row is how far the body goes along it
// against the contacts.
func (s *scene) motions(y []float64) []Motion {
	var out []Motion
	most := 0.0
	for b := range s.bodies {
		slide, turn := Vector(y[6*b:6*b+3]).times(-1), Vector(y[6*b+3:6*b+6]).times(-1)
		most = math.Max(most, math.Max(slide.Length(), turn.Length()))
		out = append(out, Motion{slide, turn})
	}
	if most == 0 {
		return out
	}
	for i, m := range out {
		turn := m.Turn.times(1 / (most * s.length))
		slide := m.Slide.times(1 / most).plus(s.middle.cross(turn))
		out[i] = Motion{slide, turn}
	}
	return out
}

// Margin says how many times a load may grow before clamps that press with given forces no longer
// hold. forces belong to the contacts that are clamps, in their order, N, 0 to 1e7. still are
// loads that do not grow, such as weight. Infinite where no growth of the load up to ten thousand
// times ever moves the piece, 0 where even nothing of it is held. The same pyramid is used as in
// Least. Errors as of Least, and where there is not one force for each clamp.
func Margin(contacts []Contact, forces []float64, grows, still []Load, sides int) (times float64, err error) {
	all := append(append([]Load(nil), grows...), still...)
	bodies, err := check(contacts, all, sides)
	if err != nil {
		return 0, err
	}
	s := newScene(contacts, all, bodies)
	p := s.program(sides, 1)
	for k := range p.b {
		p.b[k] = 0
	}
	if err := s.press(p, forces, sides); err != nil {
		return 0, err
	}
	s.grow(p, grows, still)
	got, err := p.solve()
	switch {
	case err != nil:
		return 0, err
	case !got.holds:
		return 0, nil
	case -got.cost > mostMargin-1:
		return math.Inf(1), nil
	}
	return -got.cost, nil
}

// mostMargin is where a margin counts as without end.
const mostMargin = 1e4

// press adds a row for each clamp: its normal force is what is given.
func (s *scene) press(p *program, forces []float64, sides int) error {
	k := 0
	for i, c := range s.contacts {
		if !c.Clamp {
			continue
		}
		if k >= len(forces) || !(forces[k] >= 0 && forces[k] <= mostForce) {
			return fmt.Errorf("%s: a force from 0 to %g N is wanted for each clamp, and %v are given", called("clamp", c.Name, i), mostForce, forces)
		}
		row := make([]float64, len(p.cost))
		for j := range sides {
			row[i*sides+j] = 1
		}
		p.a, p.b = append(p.a, row), append(p.b, forces[k]/s.force)
		k++
	}
	if k != len(forces) {
		return fmt.Errorf("%d forces for %d clamps", len(forces), k)
	}
	return nil
}

// grow adds the column of the growing load, which is bounded by mostMargin, and makes it the aim.
func (s *scene) grow(p *program, grows, still []Load) {
	rows := len(p.b)
	column := make([]float64, rows)
	for _, l := range grows {
		for k, v := range s.wrench(l.Force.times(1/s.force), l.At) {
			column[6*body(l.Body)+k] += v
		}
	}
	for _, l := range still {
		for k, v := range s.wrench(l.Force.times(1/s.force), l.At) {
			p.b[6*body(l.Body)+k] -= v
		}
	}
	for i := range rows {
		p.a[i] = append(p.a[i], column[i], 0)
	}
	for j := range p.cost {
		p.cost[j] = 0
	}
	p.cost = append(p.cost, -1, 0)
	bound := make([]float64, len(p.cost))
	bound[len(bound)-2], bound[len(bound)-1] = 1, 1
	p.a, p.b = append(p.a, bound), append(p.b, mostMargin)
}
