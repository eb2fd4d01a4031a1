package gear

import (
	"math"
	"strings"
	"testing"

	"fettle/schema/printed"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

// answers gives what we say for a row of gear.tsv.
func answers(t *testing.T, what string, x []float64) []float64 {
	t.Helper()
	switch head, rest, _ := strings.Cut(what, " "); {
	case head == "cutter":
		return cutterRow(t, rest, x[0])
	case head == "worm" || what == "gash":
		return wormRow(t, rest, x)
	case strings.HasSuffix(what, "pair shifted"):
		return pairRow(t, head, x)
	}
	switch what {
	case "equal error":
		return list(EqualError(int(x[0]), int(x[1]), x[2], x[3]))
	case "from blank inch":
		p := must(FromTip(x[0]*25.4, int(x[1]), 1))(t)[0]
		w := must(Wheel{Teeth: int(x[1]), Module: p.Module, Pressure: 14.5}.Blank())(t)
		return []float64{w.Reference / 25.4, 25.4 / p.Module, w.Whole / 25.4}
	case "diametral pitch":
		return []float64{Module(x[1] * 25.4 / x[0])}
	case "undercut":
		return []float64{math.Ceil(must(Wheel{Teeth: 10, Module: 1, Pressure: x[0]}.Blank())(t).LeastTeeth)}
	case "pair for centre":
		c := must(PairsFor(x[0], x[1], x[2], 20))(t)[0]
		return []float64{float64(c.Teeth[0]), float64(c.Teeth[1]), one(c.Undercut)}
	case "bevel long and short", "bevel":
		return bevelRow(t, what, x)
	case "crown":
		pitch, shaft, err := Crown(int(x[0]), int(x[1]))
		if err != nil {
			t.Fatal(err)
		}
		return []float64{pitch, shaft}
	case "helical cutter":
		v := VirtualTeeth(x[0], x[1])
		n, _, _ := AllSeries()[0].Number(Whole(v))
		return []float64{v, n}
	case "involute":
		return []float64{Involute(rad(x[0]))}
	case "span":
		s := must(wheel(x[0], x[1], x[2], x[3], x[4]).Span(int(x[5])))(t)
		if k := must(wheel(x[0], x[1], x[2], x[3], x[4]).SpanTeeth())(t); k != s.Teeth {
			t.Errorf("span of %v teeth: printed over %d, we take %d", x[2], s.Teeth, k)
		}
		return []float64{s.Measure}
	case "chord":
		c := must(wheel(x[0], x[1], x[2], x[3], x[4]).Chord())(t)
		return []float64{c.Height, c.Thickness}
	}
	t.Fatalf("no check for %q", what)
	return nil
}

func wheel(module, pressure, teeth, helix, shift float64) Wheel {
	return Wheel{Teeth: int(teeth), Module: module, Pressure: pressure, Helix: helix, Shift: shift}
}

func must[T any](v T, err error) func(rapid.TB) T {
	return func(t rapid.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func list(x float64, err error) []float64 {
	if err != nil {
		return nil
	}
	return []float64{x}
}

func one(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func cutterRow(t *testing.T, series string, number float64) []float64 {
	for _, s := range AllSeries() {
		if s.Name != series {
			continue
		}
		r, ok := s.Range(number)
		if !ok {
			return nil
		}
		if n, _, _ := s.Number(r.Least); n != number {
			t.Errorf("%s: %d teeth are number %v, not %v", series, r.Least, n, number)
		}
		return []float64{float64(r.Least), float64(r.Most)}
	}
	t.Fatalf("no series %q", series)
	return nil
}

func wormRow(t *testing.T, what string, x []float64) []float64 {
	d := must(Worm{Starts: int(x[1]), Teeth: int(x[2]), Module: x[0], Diameter: x[3], Pressure: 20}.Drive())(t)
	return map[string][]float64{"lead angle": {d.LeadAngle}, "": {d.LeadAngle}, "normal module": {d.NormalModule},
		"centre distance": {d.Centre}, "throat radius": {d.ThroatRadius}, "diameter factor q": {d.Factor},
		"worm root dia": {d.WormRoot}, "wheel root dia": {d.WheelRoot}}[what]
}

func pairRow(t *testing.T, kind string, x []float64) []float64 {
	helix, x := 0.0, append([]float64(nil), x...)
	if kind == "helical" {
		helix = x[2]
		x = append(x[:2], x[3:]...)
	}
	a, b := wheel(x[0], x[1], x[2], helix, x[4]), wheel(x[0], x[1], x[3], helix, x[5])
	b.Internal = kind == "internal"
	m := must(Pair(a, b, 0))(t)
	return []float64{m.Centre, m.Pressure, m.Tip[0], m.Tip[1], must(a.Blank())(t).Root, must(b.Blank())(t).Root}
}

func bevelRow(t *testing.T, what string, x []float64) []float64 {
	b := Bevel{Teeth: [2]int{int(x[0]), int(x[1])}, Module: x[2], Pressure: 20, Shaft: 90, Long: what != "bevel"}
	p := must(b.Pair())(t)
	c := p.Cone
	if b.Long {
		return []float64{c[0].Addendum, c[1].Addendum, c[0].Dedendum, c[1].Dedendum, c[0].Tip, c[1].Tip}
	}
	return []float64{c[0].Pitch, c[1].Pitch, p.Distance, c[0].Tip, c[1].Tip, c[0].Apex}
}

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "gear.tsv", 5) {
		head, _, _ := strings.Cut(f[0], " ")
		counts[head]++
		got, want, within := answers(t, f[0], printed.Figures(t, f[1])), printed.Figures(t, f[2]), printed.Figure(t, f[3])
		if len(got) != len(want) {
			t.Errorf("%s %s: %v, printed %s", f[0], f[1], got, f[2])
			continue
		}
		for i := range got {
			g := got[i]
			if f[0] == "equal error" { // the book drops the fraction
				g = math.Floor(g + 1e-9)
				within = 0
			}
			if math.Abs(g-want[i]) > within {
				t.Errorf("%s %s: %v, printed %s in %s", f[0], f[1], got, f[2], f[4])
				break
			}
		}
	}
	for head, n := range map[string]int{"cutter": 22, "equal": 10, "worm": 7, "gash": 2, "pair": 4, "bevel": 2, "span": 5, "helical": 4} {
		if counts[head] != n {
			t.Errorf("%d rows of %q, want %d", counts[head], head, n)
		}
	}
}
