package hold

import (
	"math"
	"math/rand/v2"
	"testing"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

// drawn gives a figure to 0.001, as drawings do.
func drawn(t *rapid.T, name string, lo, hi float64) float64 {
	return math.Round(rapid.Float64Range(lo, hi).Draw(t, name)*1000) / 1000
}

// cut draws a load on top of the block.
func cut(t *rapid.T) Load {
	return Load{Force: Vector{drawn(t, "fx", -900, 900), drawn(t, "fy", -900, 900), drawn(t, "fz", -400, 400)},
		At: Vector{drawn(t, "x", -30, 30), drawn(t, "y", -20, 20), 30}}
}

func least(t *rapid.T, cs []Contact, ls []Load, sides int) Grip {
	g, err := Least(cs, ls, sides)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// The forces that come out lie within the round cones, balance the load, and the clamps' normal
// forces add up to the answer.
func TestForcesBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cs, l := block(), cut(t)
		g := least(t, cs, []Load{l, weight}, 16)
		if !g.Held {
			t.Fatalf("a block in a vise is always held: %+v", l)
		}
		force := l.Force.plus(weight.Force)
		moment := l.At.cross(l.Force).plus(weight.At.cross(weight.Force))
		clamps := 0.0
		for i, p := range g.Pushes {
			n := p.dot(cs[i].Normal)
			side := p.plus(cs[i].Normal.times(-n)).Length()
			if n < -1e-6 || side > cs[i].Friction*n+1e-6*(1+n) {
				t.Fatalf("contact %d pushes %v", i, p)
			}
			force, moment = force.plus(p), moment.plus(cs[i].At.cross(p))
			if cs[i].Clamp {
				clamps += n
			}
		}
		if force.Length() > 1e-4 || moment.Length() > 1e-2 || math.Abs(clamps-g.Force) > 1e-4*(1+g.Force) {
			t.Fatalf("out of balance by %v and %v; clamps %v of %v", force, moment, clamps, g.Force)
		}
	})
}

// More friction and more sides never want more force (of sides that contain one another: 4, 8,
// 16), and the floor of few sides lies below the answer of many.
func TestFrictionHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cs, l := block(), []Load{cut(t), weight}
		four, eight, sixteen := least(t, cs, l, 4), least(t, cs, l, 8), least(t, cs, l, 16)
		slack := 1e-5 * (1 + four.Force)
		if eight.Force > four.Force+slack || sixteen.Force > eight.Force+slack || four.Floor > sixteen.Force+slack || sixteen.Floor > sixteen.Force {
			t.Fatalf("%v %v %v; floors %v %v", four.Force, eight.Force, sixteen.Force, four.Floor, sixteen.Floor)
		}
		more := block()
		for i := range more {
			more[i].Friction *= 1 + drawn(t, "more", 0, 1)
		}
		if g := least(t, more, l, 8); g.Force > eight.Force+slack {
			t.Fatalf("with more friction %v after %v", g.Force, eight.Force)
		}
	})
}

// Twice the load wants twice the force, in inches of another frame too: shifting the frame
// and turning it by a quarter changes nothing.
func TestScaleAndFrame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cs, l := block(), cut(t)
		k, shift := drawn(t, "times", 0.01, 50), Vector{drawn(t, "dx", -500, 500), drawn(t, "dy", -500, 500), 7}
		plain := least(t, cs, []Load{l}, 8)
		quarter := func(v Vector) Vector { return Vector{-v[1], v[0], v[2]} }
		for i := range cs {
			cs[i].At, cs[i].Normal = quarter(cs[i].At).plus(shift), quarter(cs[i].Normal)
		}
		l = Load{Force: quarter(l.Force).times(k), At: quarter(l.At).plus(shift)}
		if g := least(t, cs, []Load{l}, 8); math.Abs(g.Force-k*plain.Force) > 1e-5*(1+k*plain.Force) {
			t.Fatalf("%v times %v is %v", plain.Force, k, g.Force)
		}
	})
}

// The moment sum of jaws alone is a bound: friction of both jaws must carry what runs along
// them, so the least is never below the rule of thumb, and a pure lift meets it.
func TestRuleOfThumbIsBelow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fx := drawn(t, "fx", 1, 2000)
		cs := block()
		cs = append(cs[:4:4], cs[6:10]...) // jaws alone
		g := least(t, cs, []Load{{Force: Vector{fx, 0, 0}, At: Vector{0, 0, drawn(t, "height", 0, 30)}}}, 16)
		rule, err := Jaws(fx, 0.2, 1)
		if err != nil || g.Force < rule*(1-1e-6) {
			t.Fatalf("%v N along the jaws: %v, rule %v (%v)", fx, g.Force, rule, err)
		}
	})
	lift, err := Least(block(), []Load{{Force: Vector{0, 0, 400}, At: Vector{0, 0, 30}}}, 16)
	if rule, _ := Jaws(400, 0.2, 1); err != nil || math.Abs(lift.Force-rule) > 1e-6 {
		t.Errorf("pure lift %v, rule %v (%v)", lift.Force, rule, err)
	}
}

// A load that nothing stops is not held, and the way it goes is the way of the load: work on
// a bare table under a lift goes up, a bar between jaws without friction goes along them.
func TestGives(t *testing.T) {
	bare := block()[4:6]
	g, err := Least(bare, []Load{{Force: Vector{0, 0, 50}, At: Vector{-25, 0, 10}}}, 8)
	if err != nil || g.Held || g.Gives[0].Slide[2] <= 0 {
		t.Errorf("%+v (%v)", g, err)
	}
	slippery := block()
	for i := range slippery {
		slippery[i].Friction = 0
	}
	g, err = Least(slippery, []Load{{Force: Vector{100, 0, 0}, At: Vector{0, 0, 6}}}, 8)
	if err != nil || g.Held || g.Gives[0].Slide[0] <= 0 {
		t.Errorf("%+v (%v)", g, err)
	}
}

// Clamped with the least force the load may not grow; with more it may, and never less for
// more force. Without a load that moves anything there is no end.
func TestMargin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cs, l := block(), cut(t)
		g := least(t, cs, []Load{l, weight}, 8)
		forces := []float64{}
		for i, c := range cs {
			if c.Clamp {
				forces = append(forces, g.Pushes[i].dot(c.Normal))
			}
		}
		at, err := Margin(cs, forces, []Load{l}, []Load{weight}, 8)
		if err != nil || at < 1-1e-4 {
			t.Fatalf("the load may grow to %v (%v)", at, err)
		}
		for i := range forces {
			forces[i] *= 1.5
		}
		more, err := Margin(cs, forces, []Load{l}, []Load{weight}, 8)
		if err != nil || more < at-1e-4*at {
			t.Fatalf("with more force the load may grow to %v after %v (%v)", more, at, err)
		}
	})
	// onto the parallels, without friction anywhere: no end
	flat := block()[4:6]
	flat = append(flat, block()[10:]...)
	if got, err := Margin(flat, nil, []Load{{Force: Vector{0, 0, -100}, At: Vector{0, 0, 10}}}, nil, 8); err != nil || !math.IsInf(got, 1) {
		t.Errorf("pressing down may grow to %v (%v)", got, err)
	}
	if got, err := Margin(block(), []float64{0, 0, 0, 0}, []Load{{Force: Vector{0, 0, 100}}}, nil, 8); err != nil || got != 0 {
		t.Errorf("a loose vise holds %v of a lift (%v)", got, err)
	}
}

// The ring: lobes fall with the number of jaws, inward and outward move by the same sum of
// squares as a fine sum of cosines says; the published slot and packing laws hold.
func TestRingAgainstSum(t *testing.T) {
	for jaws := 2; jaws <= 12; jaws++ {
		inward, outward, err := Lobes(jaws)
		if err != nil {
			t.Fatal(err)
		}
		// n equal forces are a sum of cosines m = n, 2n, ...; a thin ring without stretch gives
		// W R^3/(E I) n/pi / (m^2-1)^2 to each (Timoshenko, from memory), with + at a jaw
		at, between := 0.0, 0.0
		for k := 1; k < 4000; k++ {
			m := float64(k * jaws)
			part := float64(jaws) / math.Pi / ((m*m - 1) * (m*m - 1))
			at += part
			if k%2 == 1 {
				between += part
			} else {
				between -= part
			}
		}
		if math.Abs(inward-at) > 1e-9 || math.Abs(outward-between) > 1e-9 {
			t.Errorf("%d jaws: %v and %v, sum %v and %v", jaws, inward, outward, at, between)
		}
	}
	six, _, _ := Lobes(6)
	three, _, _ := Lobes(3)
	if r := three / six; math.Abs(r-9.5) > 0.5 { // "nine-fold"
		t.Errorf("three jaws against six: %v", r)
	}
}

func TestClosing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, d := drawn(t, "force", 1, 5000), drawn(t, "depth", 2, 40)
		a := d * drawn(t, "share", 0.1, 1)
		th, l := drawn(t, "thick", 3, 20), drawn(t, "length", 10, 100)
		c, err := Slot(f, a, d, th, l, 207000)
		// at the mouth: the end of a beam loaded at a, F a^2 (3 L - a)/(6 E I)
		i := l * th * th * th / 12
		if want := f * a * a * (3*d - a) / (6 * 207000 * i); err != nil || math.Abs(c.Mouth-want) > 1e-9*(1+want) {
			t.Fatalf("%+v, want %v (%v)", c, want, err)
		}
		back, err := SlotForce(c.Width, a, d, th, l, 207000)
		if err != nil || math.Abs(back-f) > 1e-6*f {
			t.Fatalf("force %v comes back as %v (%v)", f, back, err)
		}
		w, p, err := Packed(f, a, d)
		if err != nil || math.Abs(w*a-p*d) > 1e-6*(1+f*d) || math.Abs(w+p-f) > 1e-9*f {
			t.Fatalf("%v and %v of %v (%v)", w, p, f, err)
		}
		on, heel, err := Strap(f, a, d)
		if err != nil || math.Abs(on*a-heel*d) > 1e-6*(1+f*d) {
			t.Fatalf("strap %v and %v (%v)", on, heel, err)
		}
		r, err := Rack(f, a, d, 0.15, 0.05)
		if err != nil || r.Work > f || math.Abs(r.Work+2*0.15*r.Guide-f) > 1e-6*f || math.Abs(r.Guide*d-r.Work*a) > 1e-6*(1+f*d) {
			t.Fatalf("racked %+v of %v (%v)", r, f, err)
		}
	})
	if yaw, err := Mismatch(20.05, 20, 30, 20); err != nil || math.Abs(yaw-0.001) > 1e-12 {
		t.Errorf("yaw %v (%v)", yaw, err)
	}
}

// A deeper dent for more force and for softer metal; the three marks come in order; Hertz and
// the hardness test agree where the ball first marks: the mean pressure there, two thirds of the greatest, is
// 1.1 times the yield strength (Johnson, from memory).
func TestDents(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ball, hb := drawn(t, "ball", 1, 40), drawn(t, "hardness", 20, 400)
		f := math.Exp(drawn(t, "log force", 0, 10))
		one, err := UnderBall(f, ball, hb, 207000, 207000)
		more, err2 := UnderBall(f*1.5, ball, hb, 207000, 207000)
		softer, err3 := UnderBall(f, ball, hb/1.5, 207000, 207000)
		if err != nil || err2 != nil || err3 != nil || more.Depth < one.Depth || softer.Depth < one.Depth || more.Mark < one.Mark || softer.Mark < one.Mark || one.FirstAt > one.FullFrom {
			t.Fatalf("%+v %+v %+v", one, more, softer)
		}
		stiff := 207000 / (2 * (1 - 0.09))
		a := math.Cbrt(3 * one.FirstAt * ball / 2 / (4 * stiff))
		if mean, y := one.FirstAt/(math.Pi*a*a), hb/0.102/3; math.Abs(mean-1.6*2/3*y) > 1e-6*y {
			t.Fatalf("mean pressure at first yield %v, yield %v", mean, y)
		}
	})
	for _, c := range []struct {
		force float64
		m     Mark
	}{{30000, NoDent}, {60000, MayMark}, {120000, FullDent}} { // 120 HB is 1176 MPa; a third 392
		if p, m, err := UnderFlat(c.force, 100, 120); m != c.m || err != nil {
			t.Errorf("%v N on 100 mm2: %v MPa %v (%v)", c.force, p, m, err)
		}
	}
}

func TestRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	good := block()
	for name, change := range map[string]func(c *Contact){
		"place": func(c *Contact) { c.At[1] = nan }, "far": func(c *Contact) { c.At[0] = 1e6 }, "no normal": func(c *Contact) { c.Normal = Vector{} },
		"endless normal": func(c *Contact) { c.Normal[2] = inf }, "friction": func(c *Contact) { c.Friction = -0.1 }, "much friction": func(c *Contact) { c.Friction = 3 },
		"friction nan": func(c *Contact) { c.Friction = nan }, "against itself": func(c *Contact) { c.Against = 1 }, "bodies": func(c *Contact) { c.Body = 9 },
	} {
		cs := append([]Contact(nil), good...)
		change(&cs[3])
		if g, err := Least(cs, []Load{weight}, 8); err == nil {
			t.Errorf("%s: %+v", name, g)
		}
	}
	for _, sides := range []int{0, 3, 5, 66, -4} {
		if _, err := Least(good, []Load{weight}, sides); err == nil {
			t.Errorf("%d sides", sides)
		}
	}
	for _, l := range []Load{{Force: Vector{nan, 0, 0}}, {Force: Vector{inf, 0, 0}}, {At: Vector{0, nan, 0}}, {Body: 40}, {Force: Vector{1e9, 0, 0}}} {
		if _, err := Least(good, []Load{l}, 8); err == nil {
			t.Errorf("%+v", l)
		}
	}
	if _, err := Least(append(block(), Contact{Normal: Vector{1, 0, 0}, Body: 8}), []Load{weight}, 64); err == nil {
		t.Error("more work than a page may take")
	}
	if _, err := Least(nil, []Load{weight}, 8); err == nil {
		t.Error("no contacts")
	}
	if _, err := Least(good, nil, 8); err == nil {
		t.Error("no loads")
	}
	for _, forces := range [][]float64{nil, {1}, {1, 1, 1, nan}, {1, 1, 1, 1, 1}, {1, 1, 1, -1}} {
		if _, err := Margin(good, forces, []Load{weight}, nil, 8); err == nil {
			t.Errorf("forces %v", forces)
		}
	}
	refuse := map[string]error{}
	_, refuse["screw"] = Screw(1, 0, 0.2)
	_, refuse["rack"] = Rack(1, nan, 90, 0.1, 0)
	_, _, refuse["packed"] = Packed(1, 0, 0)
	_, refuse["mismatch"] = Mismatch(1, 1, 0, 0)
	_, refuse["jaws"] = Jaws(1, 0, 2)
	_, _, refuse["strap"] = Strap(1, 0, 0)
	_, _, refuse["strap nan"] = Strap(nan, 1, 1)
	_, refuse["resist"] = Resist(1, 0.1, 0, false)
	_, _, refuse["ring"] = Ring(3, 1, 10, 10, 5, 2e5)
	_, _, refuse["jaws of a ring"] = Ring(1, 1, 10, 8, 5, 2e5)
	_, refuse["ring force"] = RingForce(3, -1, 10, 8, 5, 2e5)
	_, refuse["slot"] = Slot(1, 6, 5, 1, 1, 2e5)
	_, refuse["slot force"] = SlotForce(1, 0, 5, 1, 1, 2e5)
	_, refuse["ball"] = UnderBall(1, 0, 100, 2e5, 2e5)
	_, _, refuse["flat"] = UnderFlat(1, 0, 100)
	for name, err := range refuse {
		if err == nil {
			t.Errorf("%s is not refused", name)
		}
	}
	// no load at all is held by nothing
	if g, err := Least(good, []Load{{}}, 8); err != nil || !g.Held || g.Force != 0 {
		t.Errorf("no load: %+v (%v)", g, err)
	}
	if got, err := Resist(1000, 0.15, 4, true); err != nil || math.Abs(got-1200) > 1e-9 {
		t.Errorf("%v (%v)", got, err)
	}
}

func BenchmarkLeast(b *testing.B) {
	cs, l := block(), []Load{{Force: Vector{900, 0, -200}, At: Vector{0, 0, 30}}, weight}
	for b.Loop() {
		if _, err := Least(cs, l, 16); err != nil {
			b.Fatal(err)
		}
	}
}

// Any contacts and loads come to an answer or to an error that says so, never to a panic: points
// anywhere, in a plane, in a line, on one spot, with and without friction, one piece or three.
func TestAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		anything := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-50, 50), rapid.SampledFrom([]float64{0, 0, 10, -10, 1e-9, 1e5}))
		vector := func(name string) Vector {
			return Vector{anything.Draw(t, name), anything.Draw(t, name), anything.Draw(t, name)}
		}
		var cs []Contact
		for range rapid.IntRange(1, 12).Draw(t, "contacts") {
			cs = append(cs, Contact{At: vector("at"), Normal: vector("normal"), Friction: rapid.Float64Range(0, 2).Draw(t, "friction"), Clamp: rapid.Bool().Draw(t, "clamp"),
				Body: rapid.IntRange(0, 3).Draw(t, "body"), Against: rapid.IntRange(0, 3).Draw(t, "against")})
		}
		ls := []Load{{Force: vector("force"), At: vector("load"), Body: rapid.IntRange(0, 3).Draw(t, "body")}}
		g, err := Least(cs, ls, rapid.SampledFrom([]int{4, 6, 16}).Draw(t, "sides"))
		if err == nil && g.Held && !(g.Force >= 0 && g.Floor <= g.Force) {
			t.Fatalf("%+v", g)
		}
	})
}

// Scenes of ordinary figures are never left undecided: many of them from a fixed seed, with
// normals on and off the axes, one piece to three.
func TestDecided(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	figure := func() float64 {
		if r.IntN(3) == 0 {
			return []float64{0, 0, 0, 10, -10, 30}[r.IntN(6)]
		}
		return math.Round((r.Float64()*100-50)*100) / 100
	}
	vector := func() Vector { return Vector{figure(), figure(), figure()} }
	asked, held := 0, 0
	for range 6000 {
		bodies := r.IntN(3) + 1
		var cs []Contact
		for range r.IntN(12) + 1 {
			c := Contact{At: vector(), Normal: vector(), Friction: []float64{0, .1, .2, .5, 1}[r.IntN(5)], Clamp: r.IntN(2) == 0, Body: r.IntN(bodies) + 1, Against: r.IntN(bodies + 1)}
			if c.Normal.Length() > 1e-9 && c.Against != c.Body {
				cs = append(cs, c)
			}
		}
		if len(cs) == 0 {
			continue
		}
		var ls []Load
		for b := range bodies {
			ls = append(ls, Load{vector(), vector(), b + 1})
		}
		g, err := Least(cs, ls, []int{4, 6, 16}[r.IntN(3)])
		if err != nil || len(g.Gives) != bodies {
			t.Fatalf("%+v %+v: %+v (%v)", cs, ls, g, err)
		}
		if asked++; g.Held {
			held++
		}
	}
	if held < 200 || held > asked-200 {
		t.Errorf("%d of %d held", held, asked)
	}
}
