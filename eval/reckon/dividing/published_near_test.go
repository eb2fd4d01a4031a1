package dividing

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"fettle/schema/printed"
)

func TestDecimals(t *testing.T) {
	checked := 0
	for _, f := range printed.Rows(t, "dividing_decimal.tsv", 7) {
		turns := Of(int64(math.Round(printed.Figure(t, f[1])*10000)), 10000)
		for i, h := range map[int]Head{2: {Ratio: Of(40, 1), Plates: three}, 4: {Ratio: Of(40, 1), Plates: sided}} {
			if f[i] == "" {
				continue
			}
			checked++
			j := angle(t, turns.Times(Of(9, 1)))
			s := pins(t, f[i])
			if got := s.turn().Minus(turns).Float(); math.Abs(got-printed.Figure(t, f[i+1])) > 0.6e-6 {
				t.Errorf("%s %s: error %v turns, printed %s", f[0], f[i], got, f[i+1])
			}
			if !oneFace(h, s) {
				t.Errorf("%s: no face has the circles of %s", f[0], f[i])
			}
			near, err := Near(h, j)
			if err != nil {
				t.Fatal(err)
			}
			ours := near.Single
			if s.Method == Compound {
				ours = near.Compound
			}
			if ours.PerSpace.Abs().Cmp(h.judged(s, j).PerSpace.Abs()) > 0 {
				t.Errorf("%s: ours, %s, misses by more than the printed %s", f[0], written(ours), f[i])
			}
		}
	}
	if checked < 70 {
		t.Errorf("%d rows checked", checked)
	}
}

// pins reads "8/41", "17/39-12/49" and "1 + 7/39 + 29/41".
func pins(t testing.TB, s string) Setting {
	t.Helper()
	f := strings.Fields(onto(s))
	part := func(s string) Count {
		h, c, _ := strings.Cut(s, "/")
		return Count{0, int(whole(t, h)), int(whole(t, c))}
	}
	out := Setting{Method: Plain, Crank: part(f[2])}
	out.Crank.Turns = whole(t, f[0])
	if len(f) > 3 {
		out.Method, out.Back, out.Against = Compound, part(f[4]), f[3] == "-"
	}
	return out
}

func oneFace(h Head, s Setting) bool {
	for _, p := range h.Plates {
		for _, face := range p.Faces {
			if slices.Contains(face, s.Crank.Circle) && (s.Method == Plain || slices.Contains(face, s.Back.Circle)) {
				return true
			}
		}
	}
	return false
}

func TestBlocks(t *testing.T) {
	rows := printed.Rows(t, "dividing_block.tsv", 6)
	for _, f := range rows {
		n, k := int(whole(t, f[0])), int(whole(t, f[1]))
		j, err := Block(n, k)
		if err != nil {
			t.Fatal(err)
		}
		got := of(t, Head{Ratio: Of(40, 1), Plates: three}, j, Plain)
		first, rounds := j.Rounds()
		if len(got) == 0 || got[len(got)-1] != f[2] || fmt.Sprint(first) != f[3] || fmt.Sprint(rounds) != f[4] {
			t.Errorf("%d by %d: %v, %d moves in the first of %d rounds, printed %s, %s, %s", n, k, got, first, rounds, f[2], f[3], f[4])
		}
		if !slices.Contains(Blocks(n, 5), k) {
			t.Errorf("%d: %d at once is not among %v", n, k, Blocks(n, 5))
		}
	}
	if len(rows) != 31 {
		t.Errorf("%d rows checked", len(rows))
	}
}

func TestNearest(t *testing.T) {
	rows := printed.Rows(t, "dividing_near.tsv", 7)
	for _, f := range rows {
		n := int(whole(t, f[0]))
		near, err := Near(head(t, "40", f[1]), divisions(t, n))
		if err != nil {
			t.Fatal(err)
		}
		s := near.Single
		arc := Arc(s.PerSpace.Times(Of(int64(n-1), 1)), 50)
		if s.Crank.Part().Cmp(pins(t, strings.TrimPrefix(f[2], "0 + ")).turn()) != 0 ||
			math.Abs(Seconds(s.PerSpace)-printed.Figure(t, f[3])) > 0.0051 ||
			math.Abs(Seconds(s.AtClosing)-printed.Figure(t, f[4])) > 0.051 ||
			math.Abs(arc-printed.Figure(t, f[5])) > 0.0000051 {
			t.Errorf("%d %s: %s %.2f %.1f %.5f, printed %s", n, f[1], written(s), Seconds(s.PerSpace), Seconds(s.AtClosing), arc, f[2:6])
		}
	}
	if len(rows) != 20 {
		t.Errorf("%d rows checked", len(rows))
	}
}

func TestRotary(t *testing.T) {
	rows := printed.Rows(t, "dividing_rotary.tsv", 8)
	for _, f := range rows {
		line := map[string]Fraction{"1 min": Of(1, 60), "10 sec": Of(10, 3600)}[f[4]]
		r, err := Lined(ratio(t, f[0]), line)
		if err != nil {
			t.Fatal(err)
		}
		s, err := r.Step(divisions(t, int(whole(t, f[2]))))
		if err != nil {
			t.Fatal(err)
		}
		var turns, d, m int
		var sec float64
		if _, err := fmt.Sscanf(f[3], "%d turns + %dd %dm %fs", &turns, &d, &m, &sec); err != nil {
			t.Fatal(err)
		}
		// The exact turns: a reading rounded up to a full turn is not in these rows.
		if int(s.Turns) != turns || math.Abs(Degrees(s.Exact)-(float64(d)+float64(m)/60+sec/3600)) > 0.0051/3600 ||
			math.Abs(Seconds(s.AtMost)-printed.Figure(t, f[5])) > 0.00051 ||
			math.Abs(math.Abs(Seconds(s.AtClosing))-printed.Figure(t, f[6])) > 0.051 ||
			math.Abs(Degrees(Of(1, 1).Over(r.Ratio))-printed.Figure(t, f[1])) > 1e-12 {
			t.Errorf("%v: %d turns + %v deg, at most %.3f, closing %.1f", f, s.Turns, Degrees(s.Exact), Seconds(s.AtMost), Seconds(s.AtClosing))
		}
	}
	if len(rows) != 168 {
		t.Errorf("%d rows checked", len(rows))
	}
}
