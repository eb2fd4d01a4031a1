package solid

import (
	"math"
	"math/rand"
	"slices"
	"testing"
)

func TestFarthest(t *testing.T) {
	p := Raw(Box(Vec{}, Vec{60, 40, 20}))
	near(t, "corner", p.Farthest(Vec{1, 1, 0}), 100/math.Sqrt2, 1e-9)
	cut := p.Cut(Removal{Take: Prism(Half{Vec{-1, -1, 0}, -90}, Half{Vec{0, 0, 1}, 30}, Half{Vec{0, 0, -1}, 10})}) // chamfered
	near(t, "chamfered", cut.Farthest(Vec{1, 1, 0}), 90/math.Sqrt2, Grain)
	near(t, "chamfered, back", cut.Farthest(Vec{-1, -1, -1}), 0, Grain)
	b := Raw(Ball(Vec{1, 2, 3}, 5))
	d := Vec{1, 2, 2}
	near(t, "ball", b.Farthest(d), (1+4+6)/3.0+5, Grain)
	if x := p.Farthest(Vec{}); !math.IsNaN(x) {
		t.Errorf("along nothing: %v", x)
	}
}

func TestReach(t *testing.T) {
	p := Raw(Box(Vec{}, Vec{60, 40, 20})).Cut(
		Removal{Take: Cylinder(Vec{20, 20, 6}, Vec{20, 20, 21}, 5), By: "hole"},
		Removal{Take: Cylinder(Vec{20, -1, 9}, Vec{20, 16, 9}, 2), By: "cross"})
	floor, up := Vec{20, 20, 6}, Vec{0, 0, 1}
	for _, c := range []struct {
		what  string
		to    Vec
		side  Vec
		rod   Rod
		ok    bool
		needs float64
	}{
		{"long enough", floor, up, Rod{8, 14, 0}, true, 14},
		{"too short", floor, up, Rod{8, 13.9, 0}, false, 14},
		{"holder goes in", floor, up, Rod{4, 1, 9.9}, true, 0},
		{"holder does not", floor, up, Rod{4, 13, 10.1}, false, 14},
		{"too thick", floor, up, Rod{10.1, 50, 0}, false, math.Inf(1)},
		{"from below", floor, up.Times(-1), Rod{1, 50, 0}, false, math.Inf(1)},
		{"through the cross hole", Vec{20, 18, 9}, Vec{0, -1, 0}, Rod{3.9, 18, 0}, true, 18},
		{"the cross hole is too tight", Vec{20, 18, 9}, Vec{0, -1, 0}, Rod{4.1, 18, 0}, false, math.Inf(1)},
		{"aslant into the hole", Vec{20, 20, 8}, Vec{0.2, 0, 1}, Rod{3, 40, 0}, true, (20-8)/math.Sqrt(1.04) + 0.2*40/math.Sqrt(1.04)},
	} {
		r := p.Reach(c.to, c.side, c.rod)
		if r.OK != c.ok || r.Needs != c.needs && !(math.Abs(r.Needs-c.needs) <= 3*Grain) {
			t.Errorf("%s: %+v, want %v needing %g", c.what, r, c.ok, c.needs)
		}
	}
}

// The least moves that clear, against what plane geometry says.
func TestAway(t *testing.T) {
	p := Raw(Box(Vec{}, Vec{60, 40, 20}))
	stack := []Turned{{0, 10, 3, 3, "cutter"}, {10, 40, 12, 12, "holder"}}
	way := Move{Vec{-2, 20, 5}, Vec{-2, 30, 5}}
	a := p.Away(stack[1:], way) // the holder stands 10 in and 5 below the top
	near(t, "up", a.Mm, 5, 3*Grain)
	a = p.Away(stack, way) // the cutter stands 15 below the top
	near(t, "both", a.Mm, 10, 3*Grain)
	a = p.Away(stack[:1], Move{Vec{-2, 15, 5}, Vec{-2, 25, 5}})
	near(t, "aside", a.Mm, 1, 3*Grain)
	if a.By[0] > -0.9 {
		t.Errorf("aside: %v", a.By)
	}
	if a = p.Away(stack, Move{Vec{-20, 0, 5}, Vec{-20, 30, 5}}); a.Meets {
		t.Errorf("clear: %+v", a)
	}
	r := rand.New(rand.NewSource(3))
	n := 0
	for range 150 {
		p := randomPiece(r, 8)
		tool, m := randomTool(r)
		a := p.Away([]Turned{tool}, m)
		if !a.Meets {
			continue
		}
		n++
		if hit, ok := p.Meets(tool, Move{m.From.Add(a.By), m.To.Add(a.By)}); ok {
			t.Errorf("still meets at %v after %+v", hit.At, a)
		}
		short := a.By.Times((a.Mm - 5*Grain) / a.Mm)
		if _, ok := p.Meets(tool, Move{m.From.Add(short), m.To.Add(short)}); !ok && a.Mm > 10*Grain {
			t.Errorf("clear already before the whole of %+v", a)
		}
	}
	if n < 50 {
		t.Errorf("only %d meet", n)
	}
}

// A turning way against many short straight ones: what either meets, the other does, but for a
// margin of the bow between chord and arc.
func TestTurningWays(t *testing.T) {
	r := rand.New(rand.NewSource(23))
	meet, clear := 0, 0
	for i := range 1500 {
		p := randomPiece(r, 12)
		if i%4 == 0 {
			p = randomMixed(r, 6)
		}
		tool, m := randomTool(r)
		w := Turning{From: m.From, Middle: [2]float64{m.From[0] + spread(r, -15, 15), m.From[1] + spread(r, -15, 15)}, Angle: spread(r, -7, 7)}
		if i%2 == 0 { // in its own slot
			f := On(Vec{w.Middle[0], w.Middle[1], w.From[2]}, Vec{1, 0, 0}, Vec{0, 0, 1})
			d := Vec{w.From[0] - w.Middle[0], w.From[1] - w.Middle[1], 0}
			a := math.Atan2(d[1], d[0])
			p = p.Cut(f.ArcSlot(d.Len(), 2*max(tool.R0, tool.R1), 0, 60, min(a, a+w.Angle), max(a, a+w.Angle), "slot")...)
			if hit, ok := p.MeetsTurning(tool, w); ok {
				t.Fatalf("scene %d: meets its own slot at %v", i, hit.At)
			}
			clear++
			continue
		}
		hit, ok := p.MeetsTurning(tool, w)
		chords := false
		const n = 300
		at := func(k int) Vec {
			sin, cos := math.Sincos(w.Angle * float64(k) / n)
			d := Vec{w.From[0] - w.Middle[0], w.From[1] - w.Middle[1], 0}
			return Vec{w.Middle[0] + d[0]*cos - d[1]*sin, w.Middle[1] + d[0]*sin + d[1]*cos, w.From[2]}
		}
		for k := range n {
			if _, ok := p.meets(tool, Move{at(k), at(k + 1)}, -3*Grain); ok {
				chords = true
				break
			}
		}
		if chords && !ok {
			t.Errorf("scene %d: clear on its turning way, but not on chords", i)
		}
		if ok {
			meet++
			if !p.Holds(hit.At) {
				t.Errorf("scene %d: no metal at %v", i, hit.At)
			}
		} else {
			clear++
		}
	}
	if meet < 100 || clear < 100 {
		t.Errorf("%d meet, %d clear", meet, clear)
	}
}

// Jaws: areas by plane geometry.
func TestGrip(t *testing.T) {
	bar := Bar(0, 60, 30)
	waist := Raw(bar).Cut(Axle{}.Outside(bar, 20, 60, 10, "waist"))
	three := Jaws{Count: 3, Width: 8, From: 0, To: 12}
	line := 2 * math.Sqrt(2*15*Grain-Grain*Grain)
	g := waist.Grip(three)
	near(t, "three jaws", g.Area, 3*12*line, 3e-3)
	if g.Touching != 3 {
		t.Errorf("three jaws: %d touch", g.Touching)
	}
	near(t, "behind", g.Behind, 30, 3*Grain)
	near(t, "length", g.Least, 12, Grain)
	g = waist.Grip(Jaws{Count: 3, Width: 8, From: 15, To: 30})
	near(t, "over the shoulder", g.Least, 5, Grain)
	hex := Raw(Hexagon(0, 60, 24))
	g = hex.Grip(Jaws{Count: 3, Width: 6, From: 5, To: 25})
	near(t, "hexagon, on flats", g.Area, 3*6*20, 0.1)
	if g = hex.Grip(Jaws{Count: 4, Width: 6, From: 5, To: 25}); g.Touching != 2 {
		t.Errorf("hexagon in four jaws that move together: %d touch", g.Touching)
	}
	if g = hex.Grip(Jaws{Count: 4, Width: 6, From: 5, To: 25, Independent: true}); g.Touching != 4 {
		t.Errorf("hexagon in four independent jaws: %d touch", g.Touching)
	}
	collet := Jaws{Count: 1, From: 25, To: 45, Bored: true}
	g = waist.Grip(collet)
	near(t, "collet", g.Area, 2*math.Pi*10*20, 0.05)
	near(t, "collet's radius", g.Jaws[0].Radius, 10, Grain)
	near(t, "behind in a collet", g.Behind, 20, 5*Grain)
	if !slices.Equal(g.Jaws[0].On, []string{"waist"}) {
		t.Errorf("collet on %q", g.Jaws[0].On)
	}
	cross := waist.Cut(Axle{}.CrossHole(bar, 35, 0.3, 3, Axle{}.Through(bar), "cross"))
	hole := 0.0 // the mouth of a cross hole of 3 on a cylinder of 10: ∫ 2·√(9 − 100·sin²t)·10 dt
	for i := range 20000 {
		a := math.Asin(0.3) * (float64(i)*2/20000 - 1 + 1.0/20000)
		hole += 20 * math.Sqrt(max(0, 9-100*math.Sin(a)*math.Sin(a))) * 2 * math.Asin(0.3) / 20000
	}
	g = cross.Grip(collet)
	near(t, "collet over a cross hole", g.Area, 400*math.Pi-2*hole, 0.3)
	tube := Tube(0, 60, 30, 4).Cut(Removal{Take: Box(Vec{-1, -0.2, 0}, Vec{61, 0.2, 20}), By: "slit"})
	g = tube.Grip(Jaws{Count: 1, From: 10, To: 20, Bored: true})
	near(t, "tube with a slit", g.Area, 10*15*(2*math.Pi-2*math.Asin(0.2/15)), 0.05)
	near(t, "wall behind", Tube(0, 60, 30, 4).Grip(Jaws{Count: 1, From: 10, To: 20, Bored: true}).Behind, 4, 5*Grain)
	g = tube.Grip(Jaws{Count: 3, Width: 10, From: 10, To: 20, Inside: true, Start: 0.5})
	near(t, "inside jaws", g.Area, 3*10*10, 0.1)
	near(t, "inside jaws' radius", g.Jaws[0].Radius, 11, 2*Grain)
	near(t, "wall outside them", g.Behind, 4, 5*Grain)
	if g = waist.Grip(Jaws{Count: 3, Width: 8, From: 70, To: 80}); g.Touching != 0 {
		t.Errorf("beyond the bar: %+v", g)
	}
}

func TestOnCentre(t *testing.T) {
	bar := Bar(0, 60, 30)
	p := Raw(bar).Cut(Axle{}.CentreHole(60, -1, 3, 8, math.Pi/3, 7, "centre")...)
	c := p.OnCentre(Axle{}, -1, math.Pi/3, 12)
	near(t, "area", c.Area, math.Pi*(16-2.25)/math.Sin(math.Pi/6), 0.2)
	near(t, "tip", c.Tip, 60-4/math.Tan(math.Pi/6), 2*Grain)
	if !slices.Equal(c.On, []string{"centre"}) {
		t.Errorf("on %q", c.On)
	}
	tube := Tube(0, 60, 30, 4)
	c = tube.OnCentre(Axle{}, 1, math.Pi/3, 40) // on the sharp edge of its bore
	near(t, "tip in a tube", c.Tip, 11/math.Tan(math.Pi/6), 4*Grain)
	if !c.Touches || c.Area > 2 {
		t.Errorf("on an edge: %+v", c.Jaw)
	}
	if c = tube.OnCentre(Axle{}, 1, math.Pi/3, 20); c.Touches {
		t.Errorf("falls in: %+v", c)
	}
}

func TestContactDisc(t *testing.T) {
	p := Raw(Box(Vec{}, Vec{60, 40, 20})).Cut(Removal{Take: Cylinder(Vec{30, 20, 12}, Vec{30, 20, 21}, 2), By: "hole"})
	near(t, "anvil over a hole", p.ContactDisc(2, 1, 20, [2]float64{30, 20}, 6.5).Area, math.Pi*(3.25*3.25-4), 1e-3)
	near(t, "anvil over the edge", p.ContactDisc(2, 1, 20, [2]float64{60, 20}, 6.5).Area, math.Pi*3.25*3.25/2, 1e-3)
}

// What a cut leaves.
func TestRest(t *testing.T) {
	bar := Bar(0, 60, 30)
	parted := Raw(bar).Cut(Axle{}.Bore(-1, 61, 5, "bore"), Removal{Take: Cylinder(Vec{20, 0, 0}, Vec{23, 0, 0}, 16), By: "parting"})
	all := parted.Rest(0)
	if len(all) != 2 || !all[0].Exact || !all[1].Exact {
		t.Fatalf("parted: %+v", all)
	}
	near(t, "the longer", all[0].Volume, math.Pi*200*37, 1)
	near(t, "the shorter", all[1].Volume, math.Pi*200*20, 1)
	n := Vec{1, 0.4, 0}.Unit()
	saw := On(n.Times(25), Vec{0, 0, 1}, n.Times(-1))
	sawn := Raw(Box(Vec{}, Vec{60, 40, 20})).Cut(Removal{Take: saw.Block(Vec{-50, -90, 0}, Vec{50, 90, 0.2}), By: "saw"})
	if all = sawn.Rest(0); len(all) != 2 || !all[1].Exact {
		t.Errorf("sawn aslant by a thin saw: %d pieces", len(all))
	}
	not := Raw(Box(Vec{}, Vec{60, 40, 20})).Cut(Removal{Take: Box(Vec{30, -1, 0.2}, Vec{31, 41, 21}), By: "saw"})
	if all = not.Rest(0); len(all) != 1 || all[0].Piece != not {
		t.Errorf("a web of 0.2 holds it: %d pieces", len(all))
	}
	plate := Raw(Box(Vec{}, Vec{60, 40, 6}))
	f := Frame{Vec{30, 20, 6}, Vec{1, 0, 0}, Vec{0, 1, 0}}
	trepan := plate.Cut(f.Ring(8, 9, 6.5, 1, "trepan"))
	if all = trepan.Rest(0.5); len(all) != 2 || all[1].Exact || math.Abs(all[1].Volume-math.Pi*64*6) > 40 {
		t.Errorf("trepanned: %+v", all)
	}
	if all = plate.Cut(f.Ring(8, 9, 5.9, 1, "trepan")).Rest(0.5); len(all) != 1 {
		t.Errorf("a floor holds the slug: %d pieces", len(all))
	}
	if all = plate.Cut(f.ArcSlot(8.5, 1, 6.5, 1, 0, 6, "arc")...).Rest(0.5); len(all) != 1 {
		t.Errorf("a neck holds the slug: %d pieces", len(all))
	}
	if all = plate.Cut(Removal{Take: Box(Vec{-1, -1, -1}, Vec{61, 41, 7})}).Rest(0); len(all) != 0 {
		t.Errorf("nothing left: %+v", all)
	}
}

// Walls beside balls, in hexagon bar and in joined pieces.
func TestFormWalls(t *testing.T) {
	plate := Raw(Box(Vec{}, Vec{60, 40, 20}))
	cup := Removal{Take: Ball(Vec{30, 20, 20}, 8), By: "cup"}
	hex := Hexagon(0, 60, 24)
	for _, c := range []struct {
		what string
		p    *Piece
		r    Removal
		want float64
		and  string
	}{
		{"ball over the floor", plate, cup, 12, ""},
		{"ball over a cross hole", plate.Cut(Removal{Take: Cylinder(Vec{-1, 20, 7}, Vec{61, 20, 7}, 4), By: "cross"}), cup, 1, "cross"},
		{"ball aslant of a hole", plate.Cut(Removal{Take: Cylinder(Vec{39, 32, -1}, Vec{39, 32, 21}, 4), By: "hole"}), cup, 3, "hole"},
		{"ball beside a ball", plate.Cut(Removal{Take: Ball(Vec{33, 24, 6}, 5), By: "other"}), cup, math.Sqrt(9+16+196) - 13, "other"},
		{"bore in hexagon", Raw(hex), Axle{}.Bore(-1, 61, 10, "bore"), 2, ""},
		{"bore under a taper", Raw(hex).Cut(Axle{}.Taper(hex, 30, 60, 11, 6, "taper")), Axle{}.Bore(-1, 61, 5, "bore"),
			1, "taper"}, // at the end of the bar the ring is 1 mm straight out
		{"across a joint", Joined(plate, Raw(Box(Vec{0, 0, 20}, Vec{60, 40, 25}))), Removal{Take: Cylinder(Vec{30, 20, 3}, Vec{30, 20, 22}, 5), By: "hole"}, 3, ""},
	} {
		w := c.p.Wall(c.r)
		// Straight out of a bore a taper is never nearer than square to it: up to 1/cos of its slope.
		if !w.Known || w.Thick < c.want*0.985-2*Grain || w.Thick > c.want+2*Grain || w.And != c.and {
			t.Errorf("%s: %+v, want %g to %q", c.what, w, c.want, c.and)
		}
	}
	if on := plate.Cut(Removal{Take: Box(Vec{-1, -1, 15}, Vec{20, 41, 21}), By: "step"}).Contact(2, 1, 15, rect(0, 0, 18, 40)).On; !slices.Equal(on, []string{"step"}) {
		t.Errorf("contact on %q", on)
	}
}
