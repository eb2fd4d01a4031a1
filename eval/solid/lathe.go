package solid

import (
	"fmt"
	"math"
	"slices"
)

// What the lathe takes and leaves. Axes of turning run along x; angle 0 looks towards top (z)
// and grows towards back (y). A removal of the outside is everything beyond the finished form
// between two stations: a cylinder that holds the whole blank, less the forms left standing.
//
// Curves that are neither straight nor round about their own middle (fillets and roundings of
// turned corners, which are parts of a torus) become cones, so chosen that they never take more
// than the drawing does: there is never less metal than drawn, and at most Within more.

// Within is how much more metal than drawn may stand at a curve made of cones or planes, mm.
const Within = 0.02

// Axle is an axis of turning, parallel to x at y and z; the zero Axle is the part's own.
type Axle struct{ Y, Z float64 }

// At gives the place on the axis at a station.
func (a Axle) At(x float64) Vec { return Vec{x, a.Y, a.Z} }

// Out gives the direction square to the axis at an angle in radians.
func Out(angle float64) Vec {
	sin, cos := math.Sincos(angle)
	return Vec{0, snapped(sin), snapped(cos)}
}

// snapped takes what only rounding keeps from 0, 1 or -1 to be that, so that a quarter turn is exact.
func snapped(x float64) float64 {
	if r := math.Round(x); math.Abs(x-r) < 1e-15 {
		return r
	}
	return x
}

// Eccentric gives the axis that lies by mm off this one in a direction at an angle in radians.
func (a Axle) Eccentric(by, towards float64) Axle {
	d := Out(towards).Times(by)
	return Axle{a.Y + d[1], a.Z + d[2]}
}

// clear gives a radius about the axis beyond everything of a shape.
func (a Axle) clear(raw Shape) float64 {
	y := max(math.Abs(raw.lo[1]-a.Y), math.Abs(raw.hi[1]-a.Y))
	z := max(math.Abs(raw.lo[2]-a.Z), math.Abs(raw.hi[2]-a.Z))
	return math.Hypot(y, z) + 1
}

// Bar, Hexagon and Square give bar from x = from to x = to: round of a diameter, or of a size
// across flats with one flat towards top. Square bar is a box.
func Bar(from, to, diameter float64) Shape {
	return Cylinder(Vec{from, 0, 0}, Vec{to, 0, 0}, diameter/2)
}

// Hexagon: see Bar.
func Hexagon(from, to, across float64) Shape {
	s, err := regular(from, to, across/2, 6)
	if err != nil {
		return Shape{}
	}
	return s
}

// Square: see Bar.
func Square(from, to, across float64) Shape {
	return Box(Vec{from, -across / 2, -across / 2}, Vec{to, across / 2, across / 2})
}

// regular gives the prism of n sides whose flats lie at a distance from the axis, one towards top.
func regular(from, to, half float64, n int) (Shape, error) {
	r := half / math.Cos(math.Pi/float64(n))
	var out [][2]float64
	for i := range n {
		sin, cos := math.Sincos((2*float64(i) + 1) * math.Pi / float64(n))
		out = append(out, [2]float64{r * sin, r * cos})
	}
	return across(from, 0, 0).Column(out, to-from)
}

// across gives the frame square to x at a station: U is y, V is z, W is x.
func across(x, y, z float64) Frame { return Frame{Vec{x, y, z}, Vec{0, 1, 0}, Vec{0, 0, 1}} }

// Tube gives a piece of tube: a round blank less its bore.
func Tube(from, to, outside, wall float64) *Piece {
	p := Raw(Bar(from, to, outside))
	if bore := outside - 2*wall; bore > 0 {
		p = p.Cut(Axle{}.Bore(from-1, to+1, bore/2, "bore"))
	}
	return p
}

// Outside takes everything beyond radius r between two stations. r may be 0: nothing is left.
func (a Axle) Outside(raw Shape, from, to, r float64, by string) Removal {
	return a.Taper(raw, from, to, r, r, by)
}

// Taper takes everything beyond a cone whose radius is r0 at from and r1 at to.
func (a Axle) Taper(raw Shape, from, to, r0, r1 float64, by string) Removal {
	m := Removal{Take: Cylinder(a.At(from), a.At(to), a.clear(raw)), By: by}
	if s := Cone(a.At(from), a.At(to), r0, r1); s.kind != empty {
		m.Less = []Shape{s}
	}
	return m
}

// Facing takes everything to the left (side below 0) or to the right of a station.
func (a Axle) Facing(raw Shape, x, side float64, by string) Removal {
	if side < 0 {
		return a.Outside(raw, min(x, raw.lo[0])-1, x, 0, by)
	}
	return a.Outside(raw, x, max(x, raw.hi[0])+1, 0, by)
}

// Ball takes everything beyond a ball of radius r with its middle at a station, between two
// others. Beyond the ball's own ends nothing is left.
func (a Axle) Ball(raw Shape, from, to, middle, r float64, by string) Removal {
	m := Removal{Take: Cylinder(a.At(from), a.At(to), a.clear(raw)), By: by}
	if s := BallBetween(a.At(middle), along(0), r, from-middle, to-middle); s.kind != empty {
		m.Less = []Shape{s}
	}
	return m
}

// Bore takes a round hole of radius r along the axis, from one station to the other.
func (a Axle) Bore(from, to, r float64, by string) Removal {
	return Removal{Take: Cylinder(a.At(from), a.At(to), r), By: by}
}

// BoreTaper takes a tapered hole, its radius r0 at from and r1 at to.
func (a Axle) BoreTaper(from, to, r0, r1 float64, by string) Removal {
	return Removal{Take: Cone(a.At(from), a.At(to), r0, r1), By: by}
}

// Cup takes a hollow with the form of a ball.
func (a Axle) Cup(middle, r float64, by string) Removal {
	return Removal{Take: Ball(a.At(middle), r), By: by}
}

// CentreHole takes a centre hole into the face at x; the tool goes in to the right (side 1: the
// left end) or to the left (side -1). The countersink of an included angle in radians has the
// given mouth; the pilot of diameter d goes in to depth from the face, its point beyond it left
// out (it takes less than the drill does, by a cone as wide as the pilot).
func (a Axle) CentreHole(x, side, d, mouth, angle, depth float64, by string) []Removal {
	if side != -1 {
		side = 1
	}
	deep := (mouth - d) / 2 / math.Tan(angle/2)
	return []Removal{
		{Take: Cone(a.At(x), a.At(x+side*deep), mouth/2, d/2), By: by},
		{Take: Cylinder(a.At(x), a.At(x+side*depth), d/2), By: by},
	}
}

// CrossHole takes a round hole of radius r square to the axis at a station and an angle in
// radians; it goes in from beyond the blank to a distance from the axis, counted towards the
// side it comes from: 0 ends on the axis, a negative end beyond it. Through goes all the way.
func (a Axle) CrossHole(raw Shape, x, angle, r, end float64, by string) Removal {
	d := Out(angle)
	return Removal{Take: Cylinder(a.At(x).Add(d.Times(end)), a.At(x).Add(d.Times(a.clear(raw))), r), By: by}
}

// Through is the end of a cross hole that goes all the way.
func (a Axle) Through(raw Shape) float64 { return -a.clear(raw) }

// FlatOn takes a flat between two stations that looks in a direction at an angle in radians and
// lies at a distance from the axis.
func (a Axle) FlatOn(raw Shape, from, to, angle, distance float64, by string) Removal {
	w := Out(angle)
	f := Frame{a.At(0), Vec{1, 0, 0}, w.Cross(Vec{1, 0, 0})} // W is w
	c := a.clear(raw)
	return Removal{Take: f.Block(Vec{from, -c, distance}, Vec{to, c, c}), By: by}
}

// Flats takes count flats evenly round, of a size across, the first at an angle in radians; by
// an odd count the size is twice the distance from the axis.
func (a Axle) Flats(raw Shape, from, to float64, count int, size, start float64, by string) (out []Removal) {
	for i := range min(max(count, 0), most360) {
		out = append(out, a.FlatOn(raw, from, to, start+2*math.Pi*float64(i)/float64(count), size/2, by))
	}
	return out
}

// most360 is the most features round a circle that are played one by one.
const most360 = 720

// Station is a corner of a turned profile: a place along the axis, the radius there, and the
// radius of the fillet or rounding at the corner (0: sharp). Two stations at one place are a
// shoulder.
type Station struct{ X, R, Round float64 }

// Profile takes everything beyond an outside profile, from its first station to its last:
// shoulders with fillets, grooves with rounded corners, chamfers. Stations run to the right. A
// rounding too large for its corner is an error.
func (a Axle) Profile(raw Shape, by string, stations ...Station) (Removal, error) {
	line, err := rounded(stations, true)
	if err != nil {
		return Removal{}, err
	}
	m := Removal{Take: Cylinder(a.At(line[0].x), a.At(line[len(line)-1].x), a.clear(raw)), By: by}
	for i := 0; i+1 < len(line); i++ {
		if s := a.frustum(line[i], line[i+1]); s.kind != empty {
			m.Less = append(m.Less, s)
		}
	}
	return m, nil
}

// BoreProfile takes what lies within an inside profile: stepped bores, recesses, corners with
// fillets.
func (a Axle) BoreProfile(by string, stations ...Station) ([]Removal, error) {
	line, err := rounded(stations, false)
	if err != nil {
		return nil, err
	}
	var out []Removal
	for i := 0; i+1 < len(line); i++ {
		if s := a.frustum(line[i], line[i+1]); s.kind != empty {
			out = append(out, Removal{Take: s, By: by})
		}
	}
	return out, nil
}

// Rounded is a profile with its roundings made of straight lines, as Profile (outside) and BoreProfile
// (inside) cut it. A rounding too large for its corner is an error.
func Rounded(inside bool, stations ...Station) ([]Station, error) {
	line, err := rounded(stations, !inside)
	if err != nil {
		return nil, err
	}
	var out []Station
	for _, p := range line {
		out = append(out, Station{X: p.x, R: p.y})
	}
	return out, nil
}

func (a Axle) frustum(p, q pt) Shape {
	if q.x-p.x < hair {
		return Shape{}
	}
	return Cone(a.At(p.x), a.At(q.x), p.y, q.y)
}

// Shoulder turns down to radius r from a station to another, with a fillet in the corner at
// either end (0: sharp). The fillet stands within the stretch.
func (a Axle) Shoulder(raw Shape, from, to, r, filletFrom, filletTo float64, by string) (Removal, error) {
	c := a.clear(raw)
	st := []Station{{from, r, 0}, {to, r, 0}}
	if filletFrom > 0 {
		st = slices.Insert(st, 0, Station{from, c, 0})
		st[1].Round = filletFrom
	}
	if filletTo > 0 {
		st = append(st, Station{to, c, 0})
		st[len(st)-2].Round = filletTo
	}
	return a.Profile(raw, by, st...)
}

// Groove turns a groove to radius r with the same fillet in both corners of its floor.
func (a Axle) Groove(raw Shape, from, to, r, fillet float64, by string) (Removal, error) {
	return a.Shoulder(raw, from, to, r, fillet, fillet, by)
}

// Recess takes a groove within a bore, out to radius r.
func (a Axle) Recess(from, to, r float64, by string) Removal { return a.Bore(from, to, r, by) }

// rounded gives the line of a profile in x and radius, its rounded corners made of chords and
// tangents that leave metal standing: on an outside, chords in a hollow corner and tangents on
// a full one; in a bore the other way round.
func rounded(stations []Station, outside bool) ([]pt, error) {
	if len(stations) < 2 || len(stations) > 1000 {
		return nil, fmt.Errorf("a profile of %d stations: it has 2 to 1000", len(stations))
	}
	for i, s := range stations {
		if !finite(Vec{s.X, s.R, s.Round}) || s.R < 0 || s.Round < 0 {
			return nil, fmt.Errorf("station %d of a profile: place %g, radius %g, rounding %g", i+1, s.X, s.R, s.Round)
		}
		if i > 0 && s.X < stations[i-1].X {
			return nil, fmt.Errorf("station %d of a profile lies %g mm to the left of the one before", i+1, stations[i-1].X-s.X)
		}
	}
	if stations[len(stations)-1].X-stations[0].X < hair {
		return nil, fmt.Errorf("a profile without length at %g", stations[0].X)
	}
	var out []pt
	for i, s := range stations {
		p := pt{s.X, s.R}
		if s.Round == 0 || i == 0 || i == len(stations)-1 {
			out = append(out, p)
			continue
		}
		before, after := stations[i-1], stations[i+1]
		arc, err := rounding(pt{before.X, before.R}, p, pt{after.X, after.R}, s.Round, outside)
		if err != nil {
			return nil, fmt.Errorf("station %d of a profile: %w", i+1, err)
		}
		out = append(out, arc...)
	}
	for i := 1; i < len(out); i++ {
		if out[i].x < out[i-1].x-hair {
			return nil, fmt.Errorf("the roundings of a profile overlap near %g", out[i].x)
		}
	}
	return out, nil
}

// rounding gives what replaces the corner p between a and b. Its arc touches both legs at
// r·tan(turn/2) from the corner.
func rounding(a, p, b pt, r float64, outside bool) ([]pt, error) {
	u, v := p.sub(a), b.sub(p)
	lu, lv := u.len(), v.len()
	if lu < hair || lv < hair {
		return []pt{p}, nil
	}
	u, v = u.times(1/lu), v.times(1/lv)
	turn := math.Atan2(u.cross(v), u.dot(v))
	if math.Abs(turn) < 1e-9 {
		return []pt{p}, nil
	}
	back := r * math.Tan(math.Abs(turn)/2)
	if back > lu+hair || back > lv+hair {
		return nil, fmt.Errorf("a rounding of %g mm does not fit between legs of %.3f and %.3f mm", r, lu, lv)
	}
	start := p.sub(u.times(back))
	side := math.Copysign(1, turn)
	middle := start.add(pt{-u.y, u.x}.times(r * side))
	at := func(t, r float64) pt { // at a share of the turn
		sin, cos := math.Sincos(turn * t)
		d := start.sub(middle).times(1 / start.sub(middle).len())
		return middle.add(pt{d.x*cos - d.y*sin, d.x*sin + d.y*cos}.times(r))
	}
	chords := (turn > 0) == outside
	n := steps(r, math.Abs(turn), chords)
	out := []pt{start}
	for i := range n {
		if !chords {
			out = append(out, at((float64(i)+0.5)/float64(n), r/math.Cos(turn/float64(2*n))))
		} else if i > 0 {
			out = append(out, at(float64(i)/float64(n), r))
		}
	}
	return append(out, p.add(v.times(back))), nil
}

// steps gives how many chords or tangents keep within Within of an arc.
func steps(r, turn float64, chords bool) int {
	half := math.Pi / 4
	switch {
	case chords && r > Within:
		half = math.Acos(1 - Within/r)
	case !chords:
		half = math.Acos(r / (r + Within))
	}
	return min(max(1, int(math.Ceil(turn/2/min(half, math.Pi/4)-1e-9))), 1000)
}
