package solid

import (
	"math"
	"math/rand"
	"testing"
)

// sampledVolume counts metal at random places of the blank's box; its standard error comes with
// it.
func sampledVolume(p *Piece, n int, r *rand.Rand) (v, by float64) {
	lo, hi, _ := p.Blank().Bounds()
	d := hi.Sub(lo)
	in := 0
	for range n {
		if p.Holds(lo.Add(Vec{d[0] * r.Float64(), d[1] * r.Float64(), d[2] * r.Float64()})) {
			in++
		}
	}
	f := float64(in) / float64(n)
	box := d[0] * d[1] * d[2]
	return f * box, box * math.Sqrt(f*(1-f)/float64(n))
}

func fine(t *testing.T) func(m Removal, err error) Removal {
	return func(m Removal, err error) Removal {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
}

// Volumes of the trade's forms by closed forms of plane and solid geometry (Bronshtein and
// Semendyayev, Handbook of Mathematics: frustum, zone of a sphere, segment of a circle, regular
// polygon, and Guldin's rule for what a turning area sweeps).
func TestFormVolumes(t *testing.T) {
	bar := Bar(0, 60, 30)
	raw := Raw(bar)
	whole := math.Pi * 225 * 60
	plate := Raw(Box(Vec{}, Vec{80, 60, 20}))
	top := On(Vec{0, 30, 20}, Vec{1, 0, 0}, Vec{0, 0, 1})
	ok := fine(t)
	oks := func(ms []Removal, err error) []Removal {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return ms
	}
	zone := func(r, a, b float64) float64 { return math.Pi * (r*r*(b-a) - (b*b*b-a*a*a)/3) }
	cone := func(h, r, s float64) float64 { return math.Pi * h / 3 * (r*r + r*s + s*s) }
	tan60 := math.Tan(math.Pi / 3)
	for _, c := range []struct {
		what string
		p    *Piece
		want float64
	}{
		{"hexagon", Raw(Hexagon(0, 40, 17)), 17 * 17 * math.Sqrt(3) / 2 * 40},
		{"square", Raw(Square(-1, 40, 12)), 144 * 41},
		{"tube", Tube(0, 50, 20, 2.5), math.Pi * (100 - 56.25) * 50},
		{"waist", raw.Cut(Axle{}.Outside(bar, 20, 35, 9, "waist")), whole - math.Pi*(225-81)*15},
		{"end", raw.Cut(Axle{}.Facing(bar, 58.5, 1, "right"), Axle{}.Facing(bar, 1.5, -1, "left")), math.Pi * 225 * 57},
		{"taper", raw.Cut(Axle{}.Taper(bar, 10, 50, 14, 9, "taper")), math.Pi*225*20 + cone(40, 14, 9)},
		{"ball", raw.Cut(Axle{}.Ball(bar, 40, 60, 48, 12, "ball")), math.Pi*225*40 + zone(12, -8, 12)},
		{"bored", raw.Cut(Axle{}.Bore(-1, 25, 8, "bore"), Axle{}.BoreTaper(25, 30, 8, 3, "bore")), whole - math.Pi*64*25 - cone(5, 8, 3)},
		{"recess", raw.Cut(Axle{}.Bore(-1, 61, 8, "bore"), Axle{}.Recess(20, 24, 10, "recess")), whole - math.Pi*(64*56+100*4)},
		{"cup", raw.Cut(Axle{}.Cup(62, 10, "cup")), whole - zone(10, -10, -2)},
		{"eccentric", raw.Cut(Axle{}.Eccentric(4, 1).Outside(bar, 40, 60, 8, "pin")), math.Pi * (225*40 + 64*20)},
		{"flat", raw.Cut(Axle{}.FlatOn(bar, 50, 60, 0.7, 9, "flat")), whole - 10*segment(15, 9)},
		{"flats", raw.Cut(Axle{}.Flats(bar, 50, 60, 2, 24, 0.3, "flats")...), whole - 20*segment(15, 12)},
		{"slot", plate.Cut(top.Slot(40, 8, 5, 1, true, true, "slot")...), 96000 - 5*(32*8+math.Pi*16)},
		{"run out", plate.Cut(On(Vec{40, 30, 20}, Vec{1, 0, 0}, Vec{0, 0, 1}).RunOut(10, 6, 4, 1, 60, "slot")...),
			96000 - 6*(40+segment(30, 26))},
		{"keyseat", raw.Cut(On(Vec{30, 0, 15}, Vec{1, 0, 0}, Vec{0, 0, 1}).Keyseat(19, 0.002, 7.5, "seat")), whole - 0.002*segment(9.5, 2)},
		{"tee slot", plate.Cut(top.TeeSlot(80, 8, 14, 15, 6, 1, "tee")...), 96000 - 80*(8*8+15*6)},
		{"dovetail", plate.Cut(oks(top.Dovetail(80, 20, 8, math.Pi/3, 1, "tail"))...), 96000 - 80*8*(20+8/tan60)},
		{"tongue", plate.Cut(oks(top.Tongue(80, 20, 8, math.Pi/3, 40, 1, "tail"))...), 96000 - 80*8*(60-20-8/tan60)},
		{"arc slot", plate.Cut(On(Vec{40, 30, 20}, Vec{1, 0, 0}, Vec{0, 0, 1}).ArcSlot(18, 6, 7, 1, -0.5, 4.1, "arc")...),
			96000 - 7*(4.6*18*6+math.Pi*9)},
		{"ring", plate.Cut(On(Vec{40, 30, 20}, Vec{1, 0, 0}, Vec{0, 0, 1}).ArcSlot(18, 6, 7, 1, 0, 7, "arc")...), 96000 - 7*2*math.Pi*18*6},
		{"teeth", raw.Cut(oks(Axle{}.ToothGaps(20, 0, 10, 30, [][2]float64{{-0.5, 12}, {0.5, 12}, {1, 16}, {-1, 16}}, "teeth"))...),
			whole - 20*20*gap(t, 15)},
		{"centre hole", raw.Cut(Axle{}.CentreHole(60, -1, 3, 8, math.Pi/3, 7, "centre")...),
			whole - cone(2.5/math.Tan(math.Pi/6), 4, 1.5) - math.Pi*2.25*(7-2.5/math.Tan(math.Pi/6))},
	} {
		near(t, c.what, c.p.Volume(), c.want, 1e-5*c.want)
	}
	// What is made of cones or planes is never less metal than drawn, and no more than Within
	// thick over the arc.
	// Guldin: what stands between a corner and its arc of radius 4 has its centroid, seen from
	// either leg, where the moment of the square less that of the quarter disc says.
	area := 16 * (1 - math.Pi/4)
	leg := 4 - (64.0/2-64.0/3)/area
	fillet := 2 * math.Pi * (9 + leg) * area
	p := raw.Cut(ok(Axle{}.Shoulder(bar, 20, 60, 9, 4, 0, "shoulder")))
	want := math.Pi*(225*20+81*40) + fillet
	if v := p.Volume(); v < want || v > want+Within*2*math.Pi*11*2*math.Pi {
		t.Errorf("shoulder with a fillet: %.3f, drawn %.3f", v, want)
	}
	q := raw.Cut(ok(Axle{}.Profile(bar, "nose", Station{40, 15, 0}, Station{60, 15, 4}, Station{60, 5, 0})))
	want = whole - 2*math.Pi*(15-leg)*area
	if v := q.Volume(); v < want || v > want+Within*2*math.Pi*13*2*math.Pi {
		t.Errorf("rounded end: %.3f, drawn %.3f", v, want)
	}
	b := raw.Cut(oks(Axle{}.BoreProfile("bore", Station{-1, 12, 0}, Station{20, 12, 4}, Station{20, 4, 0}, Station{30, 4, 0}))...)
	want = whole - math.Pi*(144*20+16*10) + 2*math.Pi*(12-leg)*area
	if v := b.Volume(); v < want || v > want+Within*2*math.Pi*10*2*math.Pi {
		t.Errorf("bore with a fillet: %.3f, drawn %.3f", v, want)
	}
}

// gap is the area of the gap of the test within a circle of radius r: a trapezium from 12 to
// the circle, by Simpson's rule over its width.
func gap(t *testing.T, r float64) float64 {
	t.Helper()
	sum, n := 0.0, 20000
	for i := range n {
		v := -1 + (float64(i)+0.5)*2/float64(n)
		low := max(12, 12+(math.Abs(v)-0.5)*8)
		sum += max(0, math.Sqrt(r*r-v*v)-low) * 2 / float64(n)
	}
	return sum
}

// Outlines against closed forms.
func TestOutlines(t *testing.T) {
	const h = 3.0
	plate := Box(Vec{}, Vec{60, 40, h})
	f := Frame{Vec{0, 0, h}, Vec{1, 0, 0}, Vec{0, 1, 0}}
	square := [][2]float64{{10, 5}, {50, 5}, {50, 35}, {10, 35}}
	ell := [][2]float64{{0, 0}, {60, 0}, {60, 10}, {20, 10}, {20, 40}, {0, 40}}
	star := [][2]float64{{30, 2}, {34, 14}, {58, 16}, {38, 22}, {44, 38}, {30, 28}, {16, 38}, {22, 22}, {2, 16}, {26, 14}}
	starArea := 0.0
	for i, p := range star {
		q := star[(i+1)%len(star)]
		starArea += (p[0]*q[1] - p[1]*q[0]) / 2
	}
	bow := segment(20, 20*math.Cos(math.Asin(15.0/20))) // over a chord of 30, radius 20
	for _, c := range []struct {
		what   string
		points [][2]float64
		arcs   []OutlineArc
		want   float64
	}{
		{"rectangle", square, nil, 1200},
		{"clockwise", [][2]float64{{10, 5}, {10, 35}, {50, 35}, {50, 5}}, nil, 1200},
		{"angle", ell, nil, 600 + 600},
		{"star", star, nil, starArea},
		{"an end outwards", square, []OutlineArc{{1, 20}}, 1200 + bow},
		{"an end inwards", square, []OutlineArc{{1, -20}}, 1200 - bow},
		{"half circles", [][2]float64{{20, 5}, {55, 5}, {55, 35}, {20, 35}}, []OutlineArc{{3, 15}, {1, -15}}, 1050},
		{"clockwise with an arc", [][2]float64{{10, 5}, {10, 35}, {50, 35}, {50, 5}}, []OutlineArc{{2, 20}}, 1200 + bow},
		{"circle", [][2]float64{{20, 20}, {40, 20}}, []OutlineArc{{0, 10}, {1, 10}}, 100 * math.Pi},
		{"hollow of an angle", ell, []OutlineArc{{2, -40}}, 1200 - segment(40, math.Sqrt(1200))},
	} {
		ms, err := f.Outline(c.points, c.arcs, [2]float64{0, 0}, [2]float64{60, 40}, h, 0, "edge")
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
			continue
		}
		near(t, c.what, Raw(plate).Cut(ms...).Volume(), c.want*h, 1e-5*c.want*h)
		ms, err = f.Opening(c.points, c.arcs, h, 0, "opening")
		if err != nil {
			t.Errorf("opening, %s: %v", c.what, err)
			continue
		}
		near(t, "opening, "+c.what, Raw(plate).Cut(ms...).Volume(), (2400-c.want)*h, 1e-5*c.want*h)
	}
	for what, points := range map[string][][2]float64{
		"crosses itself": {{0, 0}, {60, 40}, {60, 0}, {0, 40}},
		"no area":        {{0, 0}, {10, 0}, {20, 0}},
		"no places":      {{0, 0}, {math.NaN(), 0}, {20, 10}},
	} {
		if _, err := f.Outline(points, nil, [2]float64{0, 0}, [2]float64{60, 40}, h, 0, "edge"); err == nil {
			t.Errorf("%s: no error", what)
		}
	}
}

// Bent sheet: volumes by closed forms, metal where the drawing has it, and one piece throughout.
func TestFolded(t *testing.T) {
	f := Frame{Vec{5, 7, 9}, Vec{1, 0, 0}, Vec{0, 1, 0}}
	const thick, in = 1.5, 2.0
	quarter := math.Pi / 2
	b := Bend{quarter, in, Allowance(quarter, in, thick, 0.4)}
	s, err := f.Folded(30, thick, []float64{20, 15, 10}, []Bend{b, {-quarter / 2, in, 3}}, "bend")
	if err != nil {
		t.Fatal(err)
	}
	arc := (math.Pow(in+thick, 2) - in*in) / 2
	near(t, "volume", s.Piece.Volume(), 30*(45*thick+arc*(quarter+quarter/2)), 1e-5*30*45*thick)
	near(t, "flat pattern", s.Flat, 45+quarter*2.6+3, 1e-12)
	near(t, "setback", Setback(quarter, in, thick), 3.5, 1e-12)
	near(t, "setback over 90 degrees", Setback(1.5*quarter, in, thick), 3.5, 1e-12) // DIN 6935 (from memory): radius and thickness
	l := s.Legs[1].Frame
	if d := l.At.Sub(Vec{28.5, 7, 12.5}); d.Len() > 1e-12 || l.U.Sub(Vec{0, 0, 1}).Len() > 1e-12 || l.W().Sub(Vec{-1, 0, 0}).Len() > 1e-12 {
		t.Errorf("second leg: %+v", l)
	}
	up := s.Piece.Ray(Vec{5.5 + 22, 20, 0}, Vec{0, 0, 1}) // along the second leg, within its thickness
	if len(up) != 1 {
		t.Fatalf("second leg: %v", up)
	}
	near(t, "height", s.Piece.Extent(2, 1), 12.5+15+in*math.Sin(quarter/2)+10*math.Sin(quarter/2)+0*thick, 1.5)
	// Holes through a joined piece are taken from all of it.
	cut := s.Piece.Cut(Removal{Take: Cylinder(Vec{15, 20, 0}, Vec{15, 20, 20}, 2), By: "hole"},
		Removal{Take: Cylinder(Vec{0, 20, 20}, Vec{50, 20, 20}, 3), By: "cross"})
	near(t, "holes", s.Piece.Volume()-cut.Volume(), math.Pi*(4+9)*thick, 1e-4)
	if cut.Holds(Vec{15, 20, 9.5}) || !cut.Holds(Vec{18, 20, 9.5}) {
		t.Error("the hole is not where it was drilled")
	}
	if m, ok := cut.Meets(Turned{0, 30, 1.9, 1.9, "pin"}, Move{Vec{15, 20, 0}, Vec{15, 20, 0}}); ok {
		t.Errorf("a pin in the hole meets at %v", m.At)
	}
	if _, ok := cut.Meets(Turned{0, 30, 2.1, 2.1, "pin"}, Move{Vec{15, 20, 0}, Vec{15, 20, 0}}); !ok {
		t.Error("a pin too thick is clear")
	}
	w := s.Piece.Wall(Removal{Take: Cylinder(Vec{15, 20, 0}, Vec{15, 20, 20}, 2), By: "hole"})
	near(t, "to the edge", w.Thick, 8, Grain)
}

// Joined pieces that overlap: what they share counts once.
func TestJoinedVolume(t *testing.T) {
	r := rand.New(rand.NewSource(12))
	for range 8 {
		a, b, c := randomPiece(r, 4), randomPiece(r, 3), randomPiece(r, 3)
		j := Joined(a, b.Placed(Still().Shifted(Vec{40, 10, 5})), c.Placed(Still().Shifted(Vec{-20, 20, 10})))
		j = j.Cut(randomRemoval(r, "x"))
		want, by := sampledVolume(j, 200000, r)
		near(t, "joined", j.Volume(), want, 4.5*by)
		turned := Joined(j).Placed(Attitude(Vec{1, 0, 0}, Vec{0, 0, 1}))
		near(t, "turned", turned.Volume(), j.Volume(), 1e-4*j.Volume())
		for range 200 { // rays agree with places
			o := Vec{r.Float64()*160 - 30, r.Float64() * 80, r.Float64() * 40}
			d := Vec{r.Float64() - 0.5, r.Float64() - 0.5, r.Float64() - 0.5}
			for _, x := range j.Line(o, d) {
				m := o.Add(d.Unit().Times((x.A + x.B) / 2))
				if !j.Holds(m) && x.Len() > 0.1 {
					// the middle may lie in a gap shorter than a Grain only
					t.Errorf("no metal at the middle of %v", x)
				}
			}
		}
	}
	block := Joined(Raw(Box(Vec{}, Vec{10, 10, 10})), Raw(Box(Vec{10, 0, 0}, Vec{20, 10, 10})), Raw(Box(Vec{5, 0, 0}, Vec{15, 10, 10})))
	near(t, "a block of three", block.Volume(), 2000, 1e-9)
	if s := block.Line(Vec{0, 5, 5}, Vec{1, 0, 0}); len(s) != 1 || math.Abs(s[0].Len()-20) > 1e-9 {
		t.Errorf("through it: %v", s)
	}
	c := block.Contact(2, 1, 10, rect(2, 2, 18, 4))
	if !c.Touches || c.Behind < 9.9 {
		t.Errorf("contact on it: %+v", c)
	}
	low, high := block.Split(Vec{2, 0, 0}, 14, 0.5, "split")
	near(t, "split, below", low.Volume(), 675, 1e-6)
	near(t, "split, above", high.Volume(), 1275, 1e-6)
}

// Centres of mass by closed forms: a half cylinder's lies 4r/3π from its flat, a hemisphere's
// 3r/8 from its own (Bronshtein and Semendyayev).
func TestCentres(t *testing.T) {
	at := func(what string, p *Piece, want Vec) {
		t.Helper()
		got, ok := p.Centre()
		if !ok || got.Sub(want).Len() > 1e-4*30 {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	bar := Bar(0, 60, 30)
	at("bar", Raw(bar), Vec{30, 0, 0})
	at("half a bar", Raw(bar).Cut(Axle{}.FlatOn(bar, 0, 60, 0, 0, "flat")), Vec{30, 0, -4 * 15 / (3 * math.Pi)})
	at("hemisphere", Raw(BallBetween(Vec{1, 2, 3}, Vec{0, 0, 1}, 8, 0, 8)), Vec{1, 2, 6})
	at("cone", Raw(Cone(Vec{0, 0, 0}, Vec{12, 0, 0}, 5, 0)), Vec{3, 0, 0})
	wedge := Prism(Half{Vec{1, 1, 0}, 12}, Half{Vec{-1, 0, 0}, 0}, Half{Vec{0, -1, 0}, 0}, Half{Vec{0, 0, 1}, 7}, Half{Vec{0, 0, -1}, 0})
	at("wedge", Raw(wedge), Vec{4, 4, 3.5})
	plate := Raw(Box(Vec{}, Vec{60, 40, 20})).Cut(Removal{Take: Cylinder(Vec{15, 20, -1}, Vec{15, 20, 21}, 10)})
	hole := math.Pi * 100 * 20
	x := (48000*30 - hole*15) / (48000 - hole)
	at("plate with a hole", plate, Vec{x, 20, 10})
	q := Attitude(Vec{1, 2, 2}, Vec{0, 1, 0}).Shifted(Vec{3, 4, 5})
	at("turned", plate.Placed(q), q.Point(Vec{x, 20, 10}))
	at("joined", Joined(plate, Raw(Box(Vec{0, 0, 20}, Vec{60, 40, 30}))), Vec{(48000*30 - hole*15 + 24000*30) / (72000 - hole), 20,
		((48000-hole)*10 + 24000*25) / (72000 - hole)})
	near(t, "mass", plate.Mass(7850), (48000-hole)*7850e-9, 1e-8)
	if m := plate.Mass(math.NaN()); !math.IsNaN(m) {
		t.Errorf("mass without a density: %v", m)
	}
}
