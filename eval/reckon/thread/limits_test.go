package thread

import (
	"math"
	"strings"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func limits(t *testing.T, th drawing.Thread, class string) Limits {
	t.Helper()
	l, err := LimitsOf(th, class)
	if err != nil {
		t.Errorf("%s %s: %v", th, class, err)
	}
	return l
}

func TestPublishedLimits(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "thread_limits.tsv", 6) {
		counts[f[0]]++
		th := filled(t, f[1])
		want, within := printed.Figures(t, f[3]), printed.Figure(t, f[4])
		var got []float64
		switch f[0] {
		case "metric":
			nut, screw, _ := strings.Cut(f[2], "/")
			n, s := limits(t, th, nut), limits(t, th, screw)
			got = []float64{n.MinorLo, n.MinorHi, n.PitchLo, n.PitchHi, s.MajorHi, s.MajorLo, s.PitchHi, s.PitchLo, s.MinorHi}
			if usualScrew, usualNut := UsualClasses(th); usualScrew != screw || usualNut != nut {
				t.Errorf("%s: usual classes %s and %s, printed %s", f[1], usualNut, usualScrew, f[2])
			}
		case "unified nut":
			n := limits(t, th, "2B")
			got = []float64{n.MinorLo / 25.4, n.MinorHi / 25.4}
		case "ba nut":
			n := limits(t, th, "normal nut")
			got = []float64{n.MinorLo, n.MinorHi}
		default:
			t.Fatalf("no check for %q", f[0])
		}
		for k, x := range got {
			if math.Abs(x-want[k]) > within+1e-9 {
				t.Errorf("%s %s %s, figure %d: %.4f, printed %v: %s", f[0], f[1], f[2], k+1, x, want[k], f[5])
			}
		}
	}
	if counts["metric"] != 81 || counts["unified nut"] != 20 || counts["ba nut"] != 11 {
		t.Errorf("rows checked: %v", counts)
	}
}

// The formulas of ISO 965-1, rounded to R40, are within a step of R40 (6 %) of every printed
// tolerance: 20 pitches and 30 diameters with pitches.
func TestFormulasAgainstTables(t *testing.T) {
	rows := 0
	for _, p := range []float64{0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4} {
		r, ok := handbook.Tolerances(p)
		if !ok {
			t.Errorf("no row for pitch %v", p)
		}
		rows++
		minor := 230 * math.Pow(p, 0.7)
		if p <= 0.8 {
			minor = 433*p - 190*math.Pow(p, 1.22)
		}
		for _, c := range []struct{ table, formula float64 }{{r.G, 15 + 11*p}, {r.Nut6, minor}, {r.Nut5, 0.8 * minor}, {r.Major6, 180*math.Pow(p, 2.0/3) - 3.15/math.Sqrt(p)}} {
			if c.table != 0 && math.Abs(c.table-c.formula) > 0.062*c.formula {
				t.Errorf("pitch %v: %v in the table, %v by the formula", p, c.table, c.formula)
			}
		}
	}
	pairs := 0
	for _, d := range []float64{1.2, 2, 4, 8, 16, 30} {
		for _, p := range []float64{0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3, 3.5, 4} {
			screw, nut := handbook.PitchTolerance(d, p)
			if screw == 0 {
				continue
			}
			pairs++
			want := 90 * math.Pow(p, 0.4) * math.Pow(meanDiameter(d), 0.1)
			if math.Abs(screw-want) > 0.045*want || nut != 0 && math.Abs(nut-1.32*want) > 0.06*1.32*want {
				t.Errorf("%v x %v: %v and %v in the table, %v by the formula", d, p, screw, nut, want)
			}
		}
	}
	if rows != 20 || pairs != 30 {
		t.Errorf("%d rows and %d pairs", rows, pairs)
	}
}

// Limits as handbooks print them, all from memory: 1/4-20 UNC 2A and 2B and 1/2-13 UNC 2A
// (ASME B1.1, inches), Tr10x2 7e and 7H (ISO 2903), M10 4h (ISO 965-2), M8 6H.
func TestLimitsFromMemory(t *testing.T) {
	for _, c := range []struct {
		thread, class string
		unit          float64
		figures       []float64 // major least most, pitch least most, minor least most; 0 not compared
	}{
		{"1/4-20 UNC", "2A", 25.4, []float64{0.2408, 0.2489, 0.2127, 0.2164, 0, 0}},
		{"1/4-20 UNC", "2B", 25.4, []float64{0.25, 0, 0.2175, 0.2224, 0.1959, 0.2074}},
		{"1/2-13 UNC", "2A", 25.4, []float64{0.4876, 0.4985, 0.4435, 0.4485, 0, 0}},
		{"Tr10x2", "7e", 1, []float64{9.82, 10, 8.739, 8.929, 0, 7.5}},
		{"Tr10x2", "7H", 1, []float64{10.5, 0, 9, 9.25, 8, 8.236}},
		{"M10", "4h", 1, []float64{9.850, 10, 8.941, 9.026, 0, 0}},
		{"M8", "6H", 1, []float64{8, 0, 7.188, 7.348, 6.647, 6.912}},
		{"0 BA", "normal bolt", 1, []float64{5.775, 5.975, 5.25, 5.375, 0, 4.775}}, // BS 93, by its rules
	} {
		l := limits(t, filled(t, c.thread), c.class)
		for k, x := range []float64{l.MajorLo, l.MajorHi, l.PitchLo, l.PitchHi, l.MinorLo, l.MinorHi} {
			if want := c.figures[k]; want != 0 && math.Abs(x/c.unit-want) > 0.0011/math.Sqrt(c.unit) {
				t.Errorf("%s %s, figure %d: %.4f, from memory %v", c.thread, c.class, k+1, x/c.unit, want)
			}
		}
	}
}

// Laws: a screw of every class goes into a nut of every class of its series; limits run upward;
// coarser grades are wider.
func TestLimitsLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom(handbook.Threads()).Draw(t, "row")
		th := drawing.Thread{Series: r.Series, Size: r.Size, Diameter: r.Diameter, Pitch: r.Pitch}
		var nuts, screws []Limits
		for _, class := range Classes(r.Series) {
			l, err := LimitsOf(th, class)
			if err != nil {
				t.Fatalf("%s %s: %v", th, class, err)
			}
			if l.PitchHi <= l.PitchLo || l.Inside && l.MinorHi <= l.MinorLo || !l.Inside && l.MajorHi <= l.MajorLo || l.Source == "" {
				t.Fatalf("%s: %+v", th, l)
			}
			if l.Inside {
				nuts = append(nuts, l)
			} else {
				screws = append(screws, l)
			}
		}
		for _, n := range nuts {
			for _, s := range screws {
				if n.PitchLo < s.PitchHi-1e-9 || n.MajorLo < s.MajorHi-1e-9 || n.MinorLo < s.MinorHi-1e-9 {
					t.Fatalf("%s: %+v does not take %+v", th, n, s)
				}
			}
		}
		if r.Series == "M" {
			six, _ := LimitsOf(th, "6h")
			eight, _ := LimitsOf(th, "8h")
			four, _ := LimitsOf(th, "4h")
			if four.PitchLo < six.PitchLo || six.PitchLo < eight.PitchLo {
				t.Fatalf("%s: 4h %v, 6h %v, 8h %v", th, four.PitchLo, six.PitchLo, eight.PitchLo)
			}
		}
	})
	for _, class := range []string{"", "6", "6g6", "5g6h", "2g", "9H", "2A", "normal nut", "6G6G6G", "\x00"} {
		if l, err := LimitsOf(filled(t, "M6"), class); err == nil {
			t.Errorf("M6 %q: %+v", class, l)
		}
	}
	if l, err := LimitsOf(filled(t, "M6"), "5g6g"); err != nil || math.Abs(l.MajorHi-l.MajorLo-0.18) > 1e-9 || math.Abs(l.PitchHi-l.PitchLo-0.09) > 1e-9 {
		t.Errorf("M6 5g6g: %+v (%v)", l, err) // grade 5 of 112 is 90 (ISO 965-1, from memory)
	}
	for _, other := range []string{"2A", "6H"} {
		if _, err := LimitsOf(drawing.Thread{Series: "BSP", Diameter: 13, Pitch: 1.3}, other); err == nil {
			t.Error("limits of a pipe thread")
		}
	}
}

// Three wires: rows of the reference tables, worked out from the handbook formula.
func TestWires(t *testing.T) {
	for _, c := range []struct {
		thread                string
		effective, best, over float64
	}{{"M8", 7.1881, 0.7217, 8.2706}, {"M16", 14.7010, 1.1547, 16.4330}, {"M20", 18.3762, 1.4434, 20.5413}, {"M10x1", 9.3505, 0.5774, 10.2165}, {"1/2-13 UNC", 11.4309, 1.1281, 13.1230}, {"1/2 BSW", 11.3446, 1.1931, 13.0887}} {
		th := filled(t, c.thread)
		effective, _, _, _ := Diameters(th)
		w, err := WiresFor(th)
		over, slope, err2 := Over(th, effective, w.Best)
		if err != nil || err2 != nil || math.Abs(effective-c.effective) > 6e-5 || math.Abs(w.Best-c.best) > 6e-5 || math.Abs(over-c.over) > 1.1e-4 || slope <= 0 || slope > 0.004 {
			t.Errorf("%s: %.5f %.5f %.5f %.5f (%v %v)", c.thread, effective, w.Best, over, slope, err, err2)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom(handbook.Threads()).Draw(t, "row")
		th := drawing.Thread{Series: r.Series, Size: r.Size, Diameter: r.Diameter, Pitch: r.Pitch}
		effective, _, _, _ := Diameters(th)
		w, err := WiresFor(th)
		if err != nil || !(w.Least < w.Best && w.Best < w.Most) {
			t.Fatalf("%s: %+v (%v)", th, w, err)
		}
		k := rapid.Float64Range(0, 1).Draw(t, "share")
		wire := w.Least + (w.Most-w.Least)*k
		over, _, err := Over(th, effective, wire)
		back, err2 := EffectiveFrom(th, over, wire)
		if err != nil || err2 != nil || math.Abs(back-effective) > 1e-9 || over < r.Diameter-1e-6 {
			t.Fatalf("%s over %v wires %v, back %v of %v (%v %v)", th, wire, over, back, effective, err, err2)
		}
		// with the best wire an angle that is a little off changes nothing: the derivative by the half angle is 0
		half := angle(r.Series) / 2 * math.Pi / 180
		at := func(h float64) float64 { return w.Best*(1+1/math.Sin(h)) - r.Pitch/(2*math.Tan(h)) }
		if slope := (at(half+1e-5) - at(half-1e-5)) / 2e-5; math.Abs(slope) > 1e-4*r.Pitch {
			t.Fatalf("%s: the best wire feels the angle by %v", th, slope)
		}
	})
	if _, _, err := Over(filled(t, "M8"), 7.188, 0.3); err == nil {
		t.Error("wires that fall below the crests")
	}
}

// Stress areas of ISO 898-1 (M3 to M20) and ASME B1.1 (square inches), from memory.
func TestStressArea(t *testing.T) {
	for name, want := range map[string]float64{"M3": 5.03, "M4": 8.78, "M5": 14.2, "M6": 20.1, "M8": 36.6, "M10": 58.0, "M12": 84.3, "M16": 157, "M20": 245} {
		if a, ok := StressArea(filled(t, name)); !ok || math.Abs(a-want) > 0.005*want {
			t.Errorf("%s: %v, table %v", name, a, want)
		}
	}
	for name, want := range map[string]float64{"1/4-20 UNC": 0.0318, "1/2-13 UNC": 0.1419, "#10-32 UNF": 0.0200} {
		if a, ok := StressArea(filled(t, name)); !ok || math.Abs(a/645.16-want) > 0.0001 {
			t.Errorf("%s: %v, table %v", name, a/645.16, want)
		}
	}
}

// Laws of strength: twice the length holds twice; a larger hole never holds more of the screw's
// thread; at LengthToBreak the weaker thread holds what the screw does; that is 0.4 to 0.8 diameters in metal
// as strong, within the rule of one diameter; weaker nuts need more.
func TestStrengthLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom(handbook.Threads()).Filter(func(r handbook.ThreadRow) bool { return r.Series == "M" && r.Coarse }).Draw(t, "row")
		th := drawing.Thread{Series: r.Series, Size: r.Size, Diameter: r.Diameter, Pitch: r.Pitch}
		weak := rapid.Float64Range(0.2, 1).Draw(t, "nut against screw")
		l, err := LengthToBreak(th, 0, 500, 500*weak)
		screw, nut, err2 := Strips(th, l, 0, 500, 500*weak)
		breaks, ok := Breaks(th, 500)
		if err != nil || err2 != nil || !ok || math.Abs(math.Min(screw, nut)-breaks) > 1e-6*breaks {
			t.Fatalf("%s: %v mm, %v %v of %v (%v %v)", th, l, screw, nut, breaks, err, err2)
		}
		even, _ := LengthToBreak(th, 0, 500, 500)
		if even < 0.4*r.Diameter || even > 0.8*r.Diameter || l < even-1e-9 {
			t.Fatalf("%s: %v mm even, %v with a nut of %v", th, even, l, weak)
		}
		big, err := LengthToBreak(th, r.Drill, 500, 500*weak)
		if err != nil || big < l-1e-9 && r.Drill > r.MinorLeast {
			t.Fatalf("%s: %v mm at the drill, %v basic (%v)", th, big, l, err)
		}
	})
	m6 := filled(t, "M6")
	for _, bad := range []struct{ length, hole, a, b float64 }{{-1, 0, 1, 1}, {math.NaN(), 0, 1, 1}, {1, 6, 1, 1}, {1, 0, 0, 1}, {1, 0, 1, math.Inf(1)}} {
		if _, _, err := Strips(m6, bad.length, bad.hole, bad.a, bad.b); err == nil {
			t.Errorf("%+v", bad)
		}
	}
}

// E49 and E50 of the reference tables: 1/4-20 with 0.375 in of thread and 2 threads of chamfer 0.525 in; M6 with 9 mm
// and 1.5 pitches 11.5 mm. With chips one diameter more, with a centre half.
func TestBlindWith(t *testing.T) {
	for _, c := range []struct {
		thread     string
		full, lead float64
		room       Room
		want       float64
	}{{"1/4-20 UNC", 0.375 * 25.4, 2, Room{Pitches: 1}, 0.525 * 25.4}, {"M6", 9, 1.5, Room{Pitches: 1}, 11.5}, {"M6", 9, 1.5, Room{Pitches: 1, Chips: true}, 17.5}, {"M6", 9, 1.5, Room{Pitches: 3, Centre: true}, 16.5}} {
		if got, err := BlindWith(filled(t, c.thread), c.full, c.lead, c.room); err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %v (%v)", c, got, err)
		}
	}
	if _, err := BlindWith(filled(t, "M6"), math.NaN(), 1, Room{}); err == nil {
		t.Error("no length of thread")
	}
}

// Threads that are taken for one another in every workshop: 1/4 UNC and 1/4 BSW (both 20 an inch, 60
// and 55 degrees), 1/2 UNC 13 and 1/2 BSW 12, 2 BA and 3/16 of 32, 0 BA and M6 (both 1 mm pitch).
func TestLookAlikes(t *testing.T) {
	for _, c := range []struct {
		thread, other string
		angle         float64
		binds         bool
	}{{"1/4-20 UNC", "1/4-20 BSW", 55, false}, {"0 BA", "M6", 60, false}, {"M6", "0 BA", 47.5, false}, {"M5", "3/16-32 BSF", 55, true}, {"#10-32 UNF", "M5", 60, true}, {"2 BA", "3/16-32 BSF", 55, true}} {
		found := false
		for _, l := range LookAlikes(filled(t, c.thread), 0.35, 0.06) {
			if l.Thread.Same(filled(t, c.other)) {
				found = l.Angle == c.angle && (l.Enters > 0) == c.binds
			}
			if l.Thread.Same(filled(t, c.thread)) {
				t.Errorf("%s looks like itself", c.thread)
			}
		}
		if !found {
			t.Errorf("%s is not found beside %s", c.other, c.thread)
		}
	}
	// a screw of 5.92 mm with a pitch of 1: M6 or 0 BA
	var got []string
	for _, l := range Guess(5.92, 1, 0.25, 0.02) {
		got = append(got, l.Thread.Series)
	}
	if !strings.Contains(strings.Join(got, " "), "M") || !strings.Contains(strings.Join(got, " "), "BA") {
		t.Errorf("5.92 x 1 is %v", got)
	}
	if Guess(math.NaN(), 1, 1, 1) != nil || Guess(6, 0, 1, 1) != nil {
		t.Error("a guess out of nothing")
	}
}

func BenchmarkLimits(b *testing.B) {
	th, _ := handbook.FillThread(drawing.Thread{Series: "M", Diameter: 8})
	for b.Loop() {
		if _, err := LimitsOf(th, "6g"); err != nil {
			b.Fatal(err)
		}
	}
}

// Every tapping drill of the reference tables is the handbook's own, with its percent on either
// basis and the root of the screw.
func TestPublishedDrills(t *testing.T) {
	rows := 0
	for _, f := range printed.Rows(t, "thread_drill.tsv", 8) {
		rows++
		f = f[1:]
		th, within := filled(t, f[0]), printed.Figure(t, f[5])
		drill := printed.Figure(t, f[2])
		if mm, _, ok := handbook.TappingDrill(th); !ok || math.Abs(mm-drill) > 0.006 {
			t.Errorf("%s: drill %v, printed %s: %s", f[0], mm, f[2], f[6])
		}
		p, _, _ := Percent(th, drill)
		if math.Abs(p-printed.Figure(t, f[3])) > within {
			t.Errorf("%s: %v percent, printed %s: %s", f[0], p, f[3], f[6])
		}
		if f[4] != "" {
			other := p * 1.299038 / 1.082532
			_, _, root, _ := Diameters(th)
			if math.Abs(other-printed.Figure(t, f[4])) > within || math.Abs(root-printed.Figure(t, f[1])) > 0.0006 {
				t.Errorf("%s: %v percent of 1.0825 P, root %v; printed %s and %s", f[0], other, root, f[4], f[1])
			}
		}
	}
	if rows != 145 {
		t.Errorf("%d rows", rows)
	}
}
