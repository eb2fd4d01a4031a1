package hold

import (
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fettle/eval/reckon/cutting"
	"fettle/schema/printed"
)

// block is the block of the published loads: 60 x 40 x 30 mm of steel, two points in two
// heights at each end of both jaws (friction 0.2), four on parallels (0.15).
func block() (cs []Contact) {
	for _, x := range []float64{-25, 25} {
		for _, z := range []float64{2, 10} {
			cs = append(cs, Contact{Name: "fixed jaw", At: Vector{x, 20, z}, Normal: Vector{0, -1, 0}, Friction: 0.2},
				Contact{Name: "movable jaw", At: Vector{x, -20, z}, Normal: Vector{0, 1, 0}, Friction: 0.2, Clamp: true})
		}
		for _, y := range []float64{-12, 12} {
			cs = append(cs, Contact{Name: "parallel", At: Vector{x, y, 0}, Normal: Vector{0, 0, 1}, Friction: 0.15})
		}
	}
	return cs
}

var weight = Load{Force: Vector{0, 0, -5.5446}, At: Vector{0, 0, 15}}

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "hold.tsv", 5) {
		counts[f[0]]++
		words := strings.Fields(f[1])
		which := words[len(words)-1]
		if f[0] == "lobes" || f[0] == "ring" {
			words = words[:len(words)-1]
		}
		got, err := reckoned(f[0], printed.Figures(t, strings.Join(words, " ")), which)
		if err != nil || math.Abs(got-printed.Figure(t, f[2])) > printed.Figure(t, f[3])+1e-12 {
			t.Errorf("%s %s: %v (%v), printed %s: %s", f[0], f[1], got, err, f[2], f[4])
		}
	}
	for what, n := range map[string]int{"block": 6, "screw": 1, "rack": 1, "packed": 1, "strap": 9, "pull": 12, "lobes": 10, "ring": 6, "ring force": 1, "drilled": 1, "brinell": 6} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

func reckoned(what string, in []float64, which string) (float64, error) {
	switch what {
	case "block":
		g, err := Least(block(), []Load{{Force: Vector(in[:3]), At: Vector(in[3:])}, weight}, 4)
		return g.Force, err
	case "screw":
		return Screw(in[0], in[1], in[2])
	case "rack":
		r, err := Rack(in[0], in[1], in[2], in[3], 0)
		return r.Work, err
	case "packed":
		w, _, err := Packed(in[0], in[1], in[2])
		return w, err
	case "strap":
		w, _, err := Strap(in[0], in[1], in[2])
		return w, err
	case "pull":
		return cutting.ClampLoad(in[0], in[1], in[2]), nil
	case "drilled":
		return in[0] * 12 / (in[1] * in[2]), nil // K = T/(d F), in lbf and lbf
	case "lobes":
		inward, outward, err := Lobes(int(in[0]))
		if which == "inward" {
			return inward, err
		}
		return outward, err
	case "ring":
		p, _, err := Ring(int(in[0]), in[1], 2*in[2]+in[3], 2*in[2]-in[3], in[4], in[5])
		return map[string]float64{"inward": p.Jaw, "outward": p.Between, "lobing": p.Lobing}[which], err
	case "ring force":
		return RingForce(int(in[0]), in[1], 2*in[2]+in[3], 2*in[2]-in[3], in[4], in[5])
	case "brinell":
		return brinell(in)
	}
	return math.NaN(), nil
}

// brinell finds the hardness at which the ball leaves the dent that the table prints.
func brinell(in []float64) (float64, error) {
	lo, hi := 1.0, 700.0
	for range 60 {
		mid := (lo + hi) / 2
		d, err := UnderBall(in[0]*9.80665, in[1], mid, 2e5, 2e5)
		if err != nil {
			return 0, err
		}
		if d.Across > in[2] {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo, nil
}

// leaning are the two bodies of an example of Lynch and Park, Modern Robotics, 12.11, with the
// figures of its solution pages; friction at the foot of the first body apart from the rest.
func leaning(m1, m2, foot, mu float64) ([]Contact, []Load) {
	return []Contact{
			{At: Vector{60, 60, 0}, Normal: Vector{-1, 0, 0}, Friction: mu, Body: 1, Against: 2},
			{At: Vector{0, 0, 0}, Normal: Vector{0, 1, 0}, Friction: foot, Body: 1},
			{At: Vector{60, 0, 0}, Normal: Vector{0, 1, 0}, Friction: mu, Body: 2},
			{At: Vector{72, 0, 0}, Normal: Vector{0, 1, 0}, Friction: mu, Body: 2},
		}, []Load{
			{Force: Vector{0, -9.81 * m1, 0}, At: Vector{25, 35, 0}, Body: 1},
			{Force: Vector{0, -9.81 * m2, 0}, At: Vector{66, 42, 0}, Body: 2},
		}
}

// Published with the example: masses 2 and 5, friction 0.5 but 0.1 at the foot: collapses;
// masses 2 and 10, 0.5 everywhere: can stand. Worked out by hand for masses 2 and 10: the least
// friction at the foot is 10/31; with 0.5 everywhere the least second mass is 5.
func TestLeaning(t *testing.T) {
	stands := func(m1, m2, foot, mu float64) bool {
		c, l := leaning(m1, m2, foot, mu)
		g, err := Least(c, l, 4)
		if err != nil {
			t.Fatal(err)
		}
		return g.Held
	}
	if stands(2, 5, 0.1, 0.5) || !stands(2, 10, 0.5, 0.5) || stands(2, 10, 0.1, 0.5) {
		t.Error("the published verdicts")
	}
	for _, c := range []struct {
		name   string
		at     func(x float64) bool
		lo, hi float64
		want   float64
	}{
		{"least friction at the foot", func(x float64) bool { return stands(2, 10, x, 0.5) }, 0, 1, 10.0 / 31},
		{"least second mass", func(x float64) bool { return stands(2, x, 0.5, 0.5) }, 1, 20, 5},
	} {
		lo, hi := c.lo, c.hi
		for range 40 {
			if mid := (lo + hi) / 2; c.at(mid) {
				hi = mid
			} else {
				lo = mid
			}
		}
		if math.Abs(lo-c.want) > 1e-6 {
			t.Errorf("%s: %v, want %v", c.name, lo, c.want)
		}
	}
}

// Values kept from a general solver beside the script that made them (testdata/hold).
func TestKept(t *testing.T) {
	b, err := os.ReadFile(filepath.Join("..", "..", "..", "testdata", "hold", "kept.tsv"))
	if err != nil {
		t.Fatal(err)
	}
	held, none, worst := 0, 0, 0.0
	for n, line := range strings.Split(strings.TrimSpace(string(b)), "\n")[2:] {
		f := strings.Split(line, "\t")
		sides, _ := strconv.Atoi(f[0])
		contacts, loads := keptContacts(t, f[1]), keptLoads(t, f[2])
		g, err := Least(contacts, loads, sides)
		if err != nil {
			t.Errorf("row %d: %v", n, err)
			continue
		}
		if g.Held != (f[3] != "none") {
			t.Errorf("row %d (%s): held %v, kept %s", n, f[4], g.Held, f[3])
			continue
		}
		if !g.Held {
			none++
			continue
		}
		held++
		want := printed.Figure(t, f[3])
		worst = math.Max(worst, math.Abs(g.Force-want)/(1+want))
	}
	if held < 100 || none < 15 {
		t.Errorf("%d held and %d not", held, none)
	}
	if worst > 3e-7 {
		t.Errorf("worst relative difference %v", worst)
	}
	t.Logf("%d held, %d not, worst relative difference %.1e", held, none, worst)
}

func keptContacts(t testing.TB, s string) (out []Contact) {
	for one := range strings.SplitSeq(s, ";") {
		x := printed.Figures(t, one)
		out = append(out, Contact{At: Vector(x[:3]), Normal: Vector(x[3:6]), Friction: x[6], Clamp: x[7] == 1, Body: int(x[8]), Against: int(x[9])})
	}
	return out
}

func keptLoads(t testing.TB, s string) (out []Load) {
	for one := range strings.SplitSeq(s, ";") {
		x := printed.Figures(t, one)
		out = append(out, Load{Force: Vector(x[:3]), At: Vector(x[3:6]), Body: int(x[6])})
	}
	return out
}
