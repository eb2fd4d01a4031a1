package chain

import (
	"fmt"
	"math/big"
	"slices"
)

// From cuts to chains.
//
// A chart says from which surface each cut is measured (the seat or stop that it is set
// from) and which surface it makes. All surfaces are square to one axis, and a place lies to
// the right of another where the figure is positive. A surface that is cut again is from
// then on another one: what was measured from it before keeps its distance to the old one.
// So every surface, as it is after each of its cuts, hangs on exactly one other, and the way
// from one surface to another through these is the chain of cuts that makes the distance
// between them. Cuts that both hang on drop out, because they move both alike.
//
// The metal that a cut takes off is the distance between a surface as it was and as it
// becomes, a closing dimension like any other, and one that must stay above nought.

// Side is where the metal is, seen from a surface.
type Side int8

const (
	Right Side = 1
	Left  Side = -1
)

// Dim is a dimension between two surfaces: To lies Size, with its deviations, to the right
// of From, mm; negative to the left. It is used for the raw piece and for the drawing.
type Dim struct {
	Name         string
	From, To     string
	Size         float64
	Lower, Upper float64
}

// Cut is a cut with its working dimension: Makes comes to lie Size to the right of From, as From
// stands then. Deviations are mm.
type Cut struct {
	Name         string
	From, Makes  string
	Size         float64 // mm, negative to the left
	Lower, Upper float64
	Metal        Side    // where the metal stays, seen from Makes; needed only where it is cut again
	Stock        float64 // least metal that must come off so that the cut cleans up, mm; never taken as less than Grain
}

// Grain is the least metal that counts as metal, mm: two places closer than this are the
// same place.
const Grain = 0.001

// Chart is how a piece is made along one axis, by up to MostLinks cuts and dimensions. Sizes and
// deviations are within MostLength mm; a chart with two cuts of one name, a dimension from a
// surface to itself or a figure out of range is an error of all that is asked of it, which names
// it.
type Chart struct {
	Raw     []Dim // of the blank
	Cuts    []Cut // in order
	Drawing []Dim // what must come out at the end
}

// Term is a cut, or a dimension of the blank, in a chain. Figures are mm, negative to the left.
type Term struct {
	Name               string
	Sign               int // 1 or -1: which way the result moves when the place that the cut makes moves right
	Size, Lower, Upper float64
	Raw                bool // of the blank, not of a cut
}

// Result is a dimension that comes out of the cuts.
type Result struct {
	Name        string
	Stock       bool // metal taken off by the cut called Name; otherwise a dimension of the drawing
	Terms       []Term
	Sum         Sum
	Least, Most float64 // what is wanted, mm; stock has no Most and there it is 0
	Holds       bool    // in the worst case; the borders are in
}

// FaultKind is what is wrong with a chart.
type FaultKind uint8

const (
	NotMade FaultKind = iota + 1 // nothing makes a surface that a dimension of the drawing ends on
	NoChain                      // both surfaces are there and nothing ties them together
	NotYet                       // a cut is measured from a surface that is not there at the time
	Itself                       // a cut is measured from the surface it cuts
	NoSide                       // a cut goes over a surface again and does not say where the metal is
)

// Fault is one thing wrong with a chart. Name is the dimension or the cut.
type Fault struct {
	Kind    FaultKind
	Name    string
	Surface string
}

// Reading is what a chart comes to: the drawing first, then the stock of each cut that goes
// over a surface again, in order.
type Reading struct {
	Results []Result
	Faults  []Fault
}

// Holds says that the chart makes what the drawing wants with metal for every cut, as each result
// says.
func (r Reading) Holds() bool {
	return len(r.Faults) == 0 && !slices.ContainsFunc(r.Results, func(r Result) bool { return !r.Holds })
}

// Read follows the cuts of a chart, by the essay above; results in mm. A cut that cannot be done
// as written is a fault and is passed over. An error names a figure that is out of range.
func Read(c Chart) (Reading, error) {
	p, err := follow(c)
	if err != nil {
		return Reading{}, err
	}
	return p.reading, nil
}

// plan is a chart that was followed, with its results in exact figures.
type plan struct {
	reading Reading
	exact   []total
}

// place is a surface after one of its cuts.
type place struct {
	parent int // -1 for a first one
	depth  int
	by     Term
}

type follower struct {
	places []place
	now    map[string]int // which place each surface is at
}

func follow(c Chart) (plan, error) {
	if err := c.check(); err != nil {
		return plan{}, err
	}
	var p plan
	f := follower{now: map[string]int{}}
	f.blank(c.Raw)
	var stock []Result
	for _, cut := range c.Cuts {
		from, there := f.now[cut.From]
		switch {
		case cut.From == cut.Makes:
			p.fault(Itself, cut.Name, cut.From)
			continue
		case !there:
			p.fault(NotYet, cut.Name, cut.From)
			continue
		}
		at := f.put(from, Term{Name: cut.Name, Size: cut.Size, Lower: cut.Lower, Upper: cut.Upper})
		if old, again := f.now[cut.Makes]; again {
			before, after := old, at
			if cut.Metal == Left {
				before, after = at, old
			}
			terms, tied := f.between(before, after)
			switch {
			case cut.Metal != Left && cut.Metal != Right:
				p.fault(NoSide, cut.Name, cut.Makes)
			case tied:
				stock = append(stock, Result{Name: cut.Name, Stock: true, Terms: terms, Least: max(cut.Stock, Grain)})
			}
		}
		f.now[cut.Makes] = at
	}
	p.drawing(c, f)
	return p, p.judge(stock)
}

// drawing finds the chain of each dimension of the drawing.
func (p *plan) drawing(c Chart, f follower) {
	for _, d := range c.Drawing {
		a, okA := f.now[d.From]
		b, okB := f.now[d.To]
		switch {
		case !okA:
			p.fault(NotMade, d.Name, d.From)
			continue
		case !okB:
			p.fault(NotMade, d.Name, d.To)
			continue
		}
		terms, tied := f.between(a, b)
		if !tied {
			p.fault(NoChain, d.Name, d.To)
			continue
		}
		least, most := new(big.Rat).Add(exact(d.Size), exact(d.Lower)), new(big.Rat).Add(exact(d.Size), exact(d.Upper))
		p.reading.Results = append(p.reading.Results, Result{Name: d.Name, Terms: terms, Least: float(least), Most: float(most)})
	}
}

func (p *plan) judge(stock []Result) error {
	p.reading.Results = append(p.reading.Results, stock...)
	for i := range p.reading.Results {
		r := &p.reading.Results[i]
		t, err := addUp(links(r.Terms))
		if err != nil {
			return err
		}
		r.Sum = t.sum()
		r.Holds = r.inside(t.mean, t.half)
		p.exact = append(p.exact, t)
	}
	return nil
}

// inside says whether a result holds with a middle and a half tolerance.
func (r Result) inside(mean, half *big.Rat) bool {
	lo, hi := new(big.Rat).Sub(mean, half), new(big.Rat).Add(mean, half)
	if r.Stock {
		return lo.Cmp(exact(r.Least)) >= 0
	}
	return lo.Cmp(exact(r.Least)) >= 0 && hi.Cmp(exact(r.Most)) <= 0
}

func (p *plan) fault(k FaultKind, name, surface string) {
	p.reading.Faults = append(p.reading.Faults, Fault{k, name, surface})
}

func links(terms []Term) (out []Link) {
	for _, t := range terms {
		out = append(out, Link{Name: t.Name, Ratio: float64(t.Sign), Size: t.Size, Lower: t.Lower, Upper: t.Upper})
	}
	return out
}

// blank puts the dimensions of the blank together, each where a surface of it is there
// already if possible. One that closes a ring is not needed and is passed over; Loops finds
// such.
func (f *follower) blank(dims []Dim) {
	dims = slices.Clone(dims)
	for len(dims) > 0 {
		i := max(0, slices.IndexFunc(dims, func(d Dim) bool {
			_, okF := f.now[d.From]
			_, okT := f.now[d.To]
			return okF || okT
		}))
		f.raw(dims[i])
		dims = slices.Delete(dims, i, i+1)
	}
}

func (f *follower) raw(d Dim) {
	from, okF := f.now[d.From]
	to, okT := f.now[d.To]
	t := Term{Name: d.Name, Size: d.Size, Lower: d.Lower, Upper: d.Upper, Raw: true}
	switch {
	case okF && okT:
		return
	case okT: // hang From on To, to the other side
		t.Size, t.Lower, t.Upper = -d.Size, -d.Upper, -d.Lower
		f.now[d.From] = f.put(to, t)
		return
	case !okF:
		from = f.put(-1, Term{})
		f.now[d.From] = from
	}
	f.now[d.To] = f.put(from, t)
}

func (f *follower) put(parent int, by Term) int {
	p := place{parent: parent, by: by}
	if parent >= 0 {
		p.depth = f.places[parent].depth + 1
	}
	f.places = append(f.places, p)
	return len(f.places) - 1
}

// between gives the chain from one place to another, and whether there is one.
func (f *follower) between(a, b int) (terms []Term, tied bool) {
	var up, down []Term
	for a != b {
		if a < 0 || b < 0 {
			return nil, false
		}
		if f.places[a].depth > f.places[b].depth {
			t := f.places[a].by
			t.Sign = -1
			up, a = append(up, t), f.places[a].parent
			continue
		}
		t := f.places[b].by
		t.Sign = 1
		down, b = append(down, t), f.places[b].parent
	}
	slices.Reverse(down)
	return append(up, down...), a >= 0
}

func (c Chart) check() error {
	if n := len(c.Raw) + len(c.Cuts) + len(c.Drawing); n > MostLinks {
		return fmt.Errorf("%d cuts and dimensions: up to %d are followed", n, MostLinks)
	}
	names := map[string]bool{}
	for _, d := range append(slices.Clone(c.Raw), c.Drawing...) {
		if err := (Link{d.Name, 1, d.Size, d.Lower, d.Upper}).check(); err != nil {
			return err
		}
		if d.From == d.To {
			return fmt.Errorf("%s runs from %s to itself", d.Name, d.From)
		}
	}
	for _, k := range c.Cuts {
		if err := (Link{k.Name, 1, k.Size, k.Lower, k.Upper}).check(); err != nil {
			return err
		}
		if names[k.Name] {
			return fmt.Errorf("there are two cuts called %q", k.Name)
		}
		names[k.Name] = true
		if !(k.Stock >= 0 && k.Stock <= MostLength) {
			return fmt.Errorf("%s: the least stock is %v mm: it runs from 0 to %v mm", k.Name, k.Stock, MostLength)
		}
	}
	return nil
}

// Loop is a ring of dimensions of a drawing, one of which follows from the others.
type Loop struct {
	Dims []string // the one that closes the ring last
	Off  float64  // how far the sizes as written miss each other, mm; 0 where they add up
}

// Loops finds dimensions that say something twice: each that ties surfaces together which the
// dimensions before it tie already, with the fewest of those. Off is exact to 1e-12 mm. An error
// names a figure out of range.
func Loops(drawing []Dim) ([]Loop, error) {
	if err := (Chart{Drawing: drawing}).check(); err != nil {
		return nil, err
	}
	var out []Loop
	for n, d := range drawing {
		path, tied := way(drawing[:n], d.From, d.To)
		if !tied {
			continue
		}
		l, sum := Loop{}, new(big.Rat)
		for _, s := range path {
			l.Dims = append(l.Dims, drawing[s.dim].Name)
			sum.Add(sum, new(big.Rat).Mul(big.NewRat(int64(s.sign), 1), exact(drawing[s.dim].Size)))
		}
		l.Dims = append(l.Dims, d.Name)
		l.Off = float(sum.Sub(exact(d.Size), sum))
		out = append(out, l)
	}
	return out, nil
}

type stride struct{ dim, sign int }

// way gives the fewest dimensions that lead from one surface to another.
func way(dims []Dim, from, to string) (path []stride, tied bool) {
	type mark struct {
		by   stride
		back string
	}
	seen := map[string]mark{from: {}}
	for queue := []string{from}; len(queue) > 0; queue = queue[1:] {
		at := queue[0]
		for i, d := range dims {
			for _, s := range []struct {
				from, to string
				sign     int
			}{{d.From, d.To, 1}, {d.To, d.From, -1}} {
				if _, been := seen[s.to]; s.from == at && !been {
					seen[s.to] = mark{stride{i, s.sign}, at}
					queue = append(queue, s.to)
				}
			}
		}
	}
	if _, tied = seen[to]; !tied {
		return nil, false
	}
	for at := to; at != from; at = seen[at].back {
		path = append(path, seen[at].by)
	}
	slices.Reverse(path)
	return path, true
}
