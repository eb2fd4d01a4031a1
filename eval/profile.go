package eval

import (
	"math"
	"sort"

	"fettle/schema/finding"
	"fettle/schema/model"
)

// Profile is a turned piece in half section: zones along its axis from left to right, without
// overlap and, as long as it is one piece, without gap. It is never changed: every cut gives
// another. What is milled or drilled off the axis is in the solid alone.
type Profile []Zone

// Zone is a stretch of the axis over which outside and bore are straight lines. All in mm.
type Zone struct {
	X0, X1     float64
	Out0, Out1 float64 // radius of the outside at X0 and X1; over the corners where it is not round
	In0, In1   float64 // radius of the bore; 0 none
	Flats      int     // 0 round, 4 square, 6 hexagon bar not turned yet
	Skin       string  // of the outside: "drawn", "black", …; "" once machined
	Form       *Form   // the feature whose outside this is, at its finished size
	Spoilt     string  // "threaded", "knurled", "toothed", "grooved": why it is poor to grip or to run on
	By         finding.Spot
	// Uneven: it does not run round the line that it turns about, as a block does or an eccentric;
	// Core is then the radius of the largest circle about that line that lies within the metal.
	Uneven bool
	Core   float64
}

// Straight says that the outside is a cylinder over the whole zone.
func (z *Zone) Straight() bool { return near(z.Out0, z.Out1) }

// Most is the largest radius of the outside.
func (z *Zone) Most() float64 { return math.Max(z.Out0, z.Out1) }

// Least is the smallest radius of the outside.
func (z *Zone) Least() float64 { return math.Min(z.Out0, z.Out1) }

func (z *Zone) outAt(x float64) float64 { return line(z.X0, z.X1, z.Out0, z.Out1, x) }
func (z *Zone) inAt(x float64) float64  { return line(z.X0, z.X1, z.In0, z.In1, x) }

// coreAt is the radius of the largest circle about the axis that lies within the outside.
func (z *Zone) coreAt(x float64) float64 {
	switch {
	case z.Uneven:
		return z.Core
	case z.Flats > 0:
		return z.outAt(x) * math.Cos(math.Pi/float64(z.Flats))
	}
	return z.outAt(x)
}

// Whole is the radius of the largest circle about the axis that lies within the outside all along
// the zone.
func (z *Zone) Whole() float64 { return math.Min(z.coreAt(z.X0), z.coreAt(z.X1)) }

// line is the straight line through two places.
func line(x0, x1, y0, y1, x float64) float64 {
	if !(x1 > x0) {
		return y0
	}
	return y0 + (y1-y0)*(x-x0)/(x1-x0)
}

// Ends are the outermost places of the metal along the axis; false where there is none.
func (p Profile) Ends() (lo, hi float64, ok bool) {
	if len(p) == 0 {
		return 0, 0, false
	}
	return p[0].X0, p[len(p)-1].X1, true
}

// At gives the zone that holds a place; at a border the one to its right. Nil beyond the ends.
func (p Profile) At(x float64) *Zone {
	for i := range p {
		if x >= p[i].X0-model.Grain && x < p[i].X1-model.Grain {
			return &p[i]
		}
	}
	return nil
}

// Between gives what of the piece lies between two places.
func (p Profile) Between(x0, x1 float64) Profile {
	var out Profile
	for _, z := range p {
		a, b := math.Max(z.X0, x0), math.Min(z.X1, x1)
		if b-a < model.Grain {
			continue
		}
		c := z
		c.X0, c.X1 = a, b
		c.Out0, c.Out1 = z.outAt(a), z.outAt(b)
		c.In0, c.In1 = z.inAt(a), z.inAt(b)
		out = append(out, c)
	}
	return out
}

// Most is the largest radius of the outside; 0 where there is no metal.
func (p Profile) Most() float64 {
	r := 0.0
	for i := range p {
		r = math.Max(r, p[i].Most())
	}
	return r
}

// Least is the smallest radius of the outside; 0 where there is no metal.
func (p Profile) Least() float64 {
	if len(p) == 0 {
		return 0
	}
	r := p[0].Least()
	for i := range p {
		r = math.Min(r, p[i].Least())
	}
	return r
}

// Hollow is the largest radius of the bore.
func (p Profile) Hollow() float64 {
	r := 0.0
	for i := range p {
		r = math.Max(r, math.Max(p[i].In0, p[i].In1))
	}
	return r
}

// turned gives the piece after its outside was brought to the straight line from r0 at x0 to
// r1 at x1; metal that is smaller already stays as it is. mark is what the new surface is.
func (p Profile) turned(x0, x1, r0, r1 float64, mark Zone) Profile {
	at := func(x float64) float64 { return line(x0, x1, r0, r1, x) }
	return p.eachWithin(x0, x1, func(z Zone) []float64 {
		return crossings(z.X0, z.X1, z.Out0-at(z.X0), z.Out1-at(z.X1))
	}, func(z *Zone) {
		if z.outAt((z.X0+z.X1)/2) <= at((z.X0+z.X1)/2)+model.Same {
			return
		}
		z.Out0, z.Out1 = math.Min(z.Out0, at(z.X0)), math.Min(z.Out1, at(z.X1))
		z.Flats, z.Skin, z.Form, z.Spoilt, z.By, z.Uneven, z.Core = 0, "", mark.Form, mark.Spoilt, mark.By, false, 0
	})
}

// bored is the same for the bore.
func (p Profile) bored(x0, x1, r0, r1 float64) Profile {
	at := func(x float64) float64 { return line(x0, x1, r0, r1, x) }
	return p.eachWithin(x0, x1, func(z Zone) []float64 {
		return crossings(z.X0, z.X1, z.In0-at(z.X0), z.In1-at(z.X1))
	}, func(z *Zone) {
		if z.inAt((z.X0+z.X1)/2) < at((z.X0+z.X1)/2) {
			z.In0, z.In1 = math.Max(z.In0, at(z.X0)), math.Max(z.In1, at(z.X1))
		}
	})
}

// marked changes what a surface is without taking metal.
func (p Profile) marked(x0, x1 float64, change func(*Zone)) Profile {
	return p.eachWithin(x0, x1, func(Zone) []float64 { return nil }, change)
}

// eachWithin cuts the zones at x0, x1 and at the places that more names, and changes those
// that lie between x0 and x1.
func (p Profile) eachWithin(x0, x1 float64, more func(Zone) []float64, change func(*Zone)) Profile {
	var out Profile
	for _, z := range p {
		cuts := append([]float64{z.X0, z.X1, x0, x1}, more(z)...)
		sort.Float64s(cuts)
		from := z.X0
		for _, x := range cuts {
			if x-from < model.Grain/2 || x > z.X1+model.Same {
				continue
			}
			c := z
			c.X0, c.X1 = from, x
			c.Out0, c.Out1, c.In0, c.In1 = z.outAt(from), z.outAt(x), z.inAt(from), z.inAt(x)
			if mid := (from + x) / 2; mid > x0 && mid < x1 {
				change(&c)
			}
			out = append(out, c)
			from = x
		}
	}
	return out
}

// crossings gives where a straight difference changes its sign within a stretch.
func crossings(x0, x1, d0, d1 float64) []float64 {
	if d0*d1 >= 0 {
		return nil
	}
	return []float64{x0 + (x1-x0)*d0/(d0-d1)}
}

// faced gives what is left after everything beyond a place is gone: right of it where sign is
// above 0, else left of it.
func (p Profile) faced(x, sign float64) Profile {
	if sign > 0 {
		return p.Between(math.Inf(-1), x)
	}
	return p.Between(x, math.Inf(1))
}
