package dividing

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Gearing is what gears the spindle to the plate.
type Gearing struct {
	Wheels []int // teeth of the wheels that are there, doubles written twice
	Idlers Idlers
	Axis   Axis
}

// Axis says how the spindle stands.
type Axis uint8

const (
	AxisUnknown Axis = iota
	Level
	Tilted // or upright: the train does not reach
)

// Idlers is how many idlers a head takes between spindle and plate. It is a property of the
// head, since the bevel wheels behind the plate turn it the one way or the other. The zero value
// is taken as Classic.
type Idlers struct {
	SimpleWith, SimpleAgainst     int // one pair; the plate turns with the crank, or against it
	CompoundWith, CompoundAgainst int // two pairs
}

// Classic is the rule of the heads that the handbooks' tables are for (from memory; the 57
// classic rows of testdata/published/dividing_index.tsv, from memory too, agree with it).
// Reversed is that of a head whose plate goes the other way.
var (
	Classic  = Idlers{SimpleWith: 1, SimpleAgainst: 2, CompoundWith: 0, CompoundAgainst: 1}
	Reversed = Idlers{SimpleWith: 2, SimpleAgainst: 1, CompoundWith: 1, CompoundAgainst: 0}
)

// Train is the gearing from spindle to plate. The spindle wheel drives; with two pairs it
// meshes with StudIn, and StudOut, on the same stud, with the plate wheel. Wheels that drive may
// be changed over with each other, and so may wheels that are driven.
type Train struct {
	Pairs           int // 1 or 2; 0 where there is no train
	Spindle, Plate  int // teeth
	StudIn, StudOut int // of two pairs
	Idlers          int
	Against         bool // the plate turns against the crank
}

// Meshes is how many times teeth mesh between spindle and plate.
func (t Train) Meshes() int { return t.Pairs + t.Idlers }

// Ratio is the turns of the plate for one of the spindle, below 0 against the crank; 0 without a
// train, no number where a driven wheel has no teeth.
func (t Train) Ratio() Fraction {
	r := Of(0, 1)
	switch t.Pairs {
	case 1:
		r = Of(int64(t.Spindle), int64(t.Plate))
	case 2:
		r = Of(int64(t.Spindle), int64(t.StudIn)).Times(Of(int64(t.StudOut), int64(t.Plate)))
	}
	if t.Against {
		return Fraction{-r.Num, r.Den}
	}
	return r
}

// check refuses wheels outside the range, and rules of idlers that are no rule: one idler more
// turns the plate the other way, so with and against differ by an odd number, and a second
// pair is one mesh more.
func (g Gearing) check() error {
	if len(g.Wheels) > MostWheels {
		return fmt.Errorf("%d change wheels: at most %d are taken", len(g.Wheels), MostWheels)
	}
	for _, w := range g.Wheels {
		if w < 10 || w > MostTeeth {
			return fmt.Errorf("a change wheel of %d teeth: they run from 10 to %d", w, MostTeeth)
		}
	}
	i := g.rule()
	for _, n := range []int{i.SimpleWith, i.SimpleAgainst, i.CompoundWith, i.CompoundAgainst} {
		if n < 0 || n > 3 {
			return fmt.Errorf("%d idlers: they run from 0 to 3", n)
		}
	}
	if (i.SimpleWith+i.SimpleAgainst)%2 == 0 || (i.CompoundWith+i.CompoundAgainst)%2 == 0 || (i.SimpleWith+i.CompoundWith)%2 == 0 {
		return fmt.Errorf("idlers %d and %d with one pair, %d and %d with two: an idler turns the plate the other way, and so does a second pair",
			i.SimpleWith, i.SimpleAgainst, i.CompoundWith, i.CompoundAgainst)
	}
	return nil
}

func (g Gearing) rule() Idlers {
	if g.Idlers == (Idlers{}) {
		return Classic
	}
	return g.Idlers
}

// rack is the change wheels made ready for looking trains up.
type rack struct {
	have    map[int]int // wheels of that many teeth
	sizes   []int
	pairs   [][2]int        // larger first
	product map[int64][]int // pairs by product of their teeth
	count   int
	rule    Idlers
}

func (g Gearing) rack() rack {
	r := rack{have: map[int]int{}, product: map[int64][]int{}, count: len(g.Wheels), rule: g.rule(), sizes: once(g.Wheels)}
	for _, w := range g.Wheels {
		r.have[w]++
	}
	for i, a := range r.sizes {
		for _, b := range r.sizes[i:] {
			if a != b || r.have[a] > 1 {
				r.product[int64(a)*int64(b)] = append(r.product[int64(a)*int64(b)], len(r.pairs))
				r.pairs = append(r.pairs, [2]int{a, b})
			}
		}
	}
	return r
}

// trains gives every train of a ratio, idlers from the wheels left over.
func (r rack) trains(e Fraction) (out []Train) {
	size, against := e.Abs(), e.Sign() < 0
	for _, w := range r.sizes {
		p := size.Times(Of(int64(w), 1))
		if p.Den == 1 && r.there(int(p.Num), w) {
			out = append(out, Train{Pairs: 1, Spindle: int(p.Num), Plate: w, Against: against})
		}
	}
	for _, driven := range r.pairs {
		p := int64(driven[0]) * int64(driven[1])
		if p%size.Den != 0 {
			continue
		}
		for _, n := range r.product[p/size.Den*size.Num] {
			drive := r.pairs[n]
			if r.there(drive[0], drive[1], driven[0], driven[1]) {
				out = append(out, Train{Pairs: 2, Spindle: drive[0], StudOut: drive[1], StudIn: driven[1], Plate: driven[0], Against: against})
			}
		}
	}
	for i := range out {
		out[i].Idlers = r.idlers(out[i])
	}
	return slices.DeleteFunc(out, func(t Train) bool { return 2*t.Pairs+t.Idlers > r.count })
}

// there says whether the wheels can all be on at once.
func (r rack) there(wheels ...int) bool {
	for i, w := range wheels {
		same := 0
		for _, v := range wheels[:i+1] {
			if v == w {
				same++
			}
		}
		if r.have[w] < same {
			return false
		}
	}
	return true
}

func (r rack) idlers(t Train) int {
	switch {
	case t.Pairs == 1 && t.Against:
		return r.rule.SimpleAgainst
	case t.Pairs == 1:
		return r.rule.SimpleWith
	case t.Against:
		return r.rule.CompoundAgainst
	}
	return r.rule.CompoundWith
}

// Allowed says whether differential indexing may be used at all.
type Allowed uint8

const (
	IfLevel Allowed = iota // how the spindle stands is not known: only if it is level
	Yes
	NoWheels // no change wheels, or no circles of holes
	StandsUp // the spindle is not level, and the train does not reach
)

// Geared is the answer of the differential.
type Geared struct {
	Allowed  Allowed
	Within   float64 // turns of the plate for one of the spindle up to which trains were looked for
	Settings []Setting
}

// trials is how many ways of the crank are looked at, and enough how many settings are.
const (
	trials = 4000
	enough = 1000
)

// Gears gives every setting with a train between spindle and plate, in order of preference: fewest
// wheels with idlers counted, then one pair before two, then the slower plate, then the larger
// circle, then the smaller wheels. Wheels that drive, and wheels that are driven, are given with
// the larger one on spindle and plate; changed over they are not listed again. Left out are plates
// that would turn faster than one pair of these wheels can turn them, and, where there would be
// more than 4,000 ways of the crank or 1,000 settings (few divisions, many circles), the fastest;
// Within says how far it went. No setting is given where the spindle is not level. An error for a
// head or job outside the ranges.
func Gears(h Head, j Job) (Geared, error) {
	if _, err := Turns(h, j); err != nil {
		return Geared{}, err
	}
	seats := h.seats()
	switch {
	case h.Gear.Axis == Tilted:
		return Geared{Allowed: StandsUp}, nil
	case len(h.Gear.Wheels) < 2 || len(seats) == 0:
		return Geared{Allowed: NoWheels}, nil
	}
	g := Geared{Allowed: IfLevel, Within: h.reach(j, seats)}
	if h.Gear.Axis == Level {
		g.Allowed = Yes
	}
	r, known := h.Gear.rack(), map[Fraction][]Train{}
	for _, w := range h.ways(j, seats, g.Within) {
		if len(g.Settings) >= enough && w.fast > g.Within+grain {
			break
		}
		g.fill(h, j, w, r.look(known, h, j, w))
		if len(g.Settings) >= enough {
			g.Within = w.fast
		}
	}
	slices.SortStableFunc(g.Settings, lighter)
	return g, nil
}

// look gives the trains of a way, which are the same for the same turn in every circle.
func (r rack) look(known map[Fraction][]Train, h Head, j Job, w way) []Train {
	n := Of(w.holes, int64(w.at.circle))
	trains, ok := known[n]
	if !ok {
		if e := h.Ratio.Minus(n.Over(j.Step)); e.Valid() && e.Num != 0 {
			trains = r.trains(e)
		}
		known[n] = trains
	}
	return trains
}

// fill enters the settings of one way. They are exact: the train's ratio is what the way asks for.
func (g *Geared) fill(h Head, j Job, w way, trains []Train) {
	for _, t := range trains {
		s := Setting{Method: Differential, Plate: w.at.plate, Face: w.at.face, Train: t, PerSpace: Of(0, 1),
			Crank: Count{w.holes / int64(w.at.circle), int(w.holes % int64(w.at.circle)), w.at.circle}}
		if j.Whole {
			s.AtClosing = Of(0, 1)
		}
		g.Settings = append(g.Settings, s)
	}
}

func lighter(a, b Setting) int {
	return cmp.Or(cmp.Compare(a.Train.Pairs*2+a.Train.Idlers, b.Train.Pairs*2+b.Train.Idlers),
		cmp.Compare(a.Train.Pairs, b.Train.Pairs), a.Train.slower(b.Train), cmp.Compare(b.Crank.Circle, a.Crank.Circle),
		cmp.Compare(a.Train.teeth(), b.Train.teeth()), cmp.Compare(b.Train.Spindle, a.Train.Spindle))
}

// slower compares the turns of two plates by crosswise products, which stay below 300 to the fourth.
func (t Train) slower(u Train) int {
	return cmp.Compare(t.Spindle*max(1, t.StudOut)*u.Plate*max(1, u.StudIn), u.Spindle*max(1, u.StudOut)*t.Plate*max(1, t.StudIn))
}

func (t Train) teeth() int { return t.Spindle + t.StudIn + t.StudOut + t.Plate }

// reach is how fast a plate is looked at, in turns of it for one of the spindle.
func (h Head) reach(j Job, seats []seat) float64 {
	wheels := once(h.Gear.Wheels)
	most := float64(wheels[0]) / float64(wheels[len(wheels)-1])
	holes := 0
	for _, at := range seats {
		holes += at.circle
	}
	return min(most, trials/(2*j.Step.Float()*float64(holes)))
}

// way is a way of the crank in a circle, and how fast the plate must turn with it.
type way struct {
	holes int64
	at    seat
	fast  float64 // turns of the plate for one of the spindle, without sign
}

// grain is what a plate's turns are compared to.
const grain = 1e-9

// ways gives the ways of the crank for which the plate turns no faster than within, both in;
// the slowest plates first.
func (h Head) ways(j Job, seats []seat, within float64) (out []way) {
	r := h.Ratio.Float()
	for _, at := range seats {
		s := j.Step.Float() * float64(at.circle)
		for n := max(1, int64((r-within)*s)); float64(n) <= (r+within+grain)*s; n++ {
			if fast := math.Abs(r - float64(n)/s); fast <= within+grain {
				out = append(out, way{n, at, fast})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b way) int { return cmp.Compare(a.fast, b.fast) })
	return out
}
