package sheet

import (
	"math"
	"strings"
	"testing"

	"fettle/schema/text"

	"pgregory.net/rapid"
)

func TestDialReadings(t *testing.T) {
	metric, inch := dial{turn: 4, line: 0.02}, dial{turn: 2.54, line: 0.0254, inch: true}
	for _, c := range []struct {
		d    dial
		way  float64
		want string
	}{
		{metric, 16, "4 turns"},
		{metric, 15.999999, "4 turns"}, // worked out by hand: 16/4
		{metric, 0.5, "25 lines"},
		{metric, 4.02, "1 turn + 1 line"},
		{metric, -10.35, "2 turns + 117.5 lines"},
		{metric, 3.9996, "1 turn"}, // to a tenth of a line it is the whole turn
		{inch, 12.7, "5 turns"},    // half an inch, a tenth of an inch a turn
		{inch, 25.4/8 + 2.54/2, "1 turn + 75 lines"},
		{metric, 0, "0 lines"},
	} {
		if got := c.d.reads(c.way); got != c.want {
			t.Errorf("%g mm reads %q, want %q", c.way, got, c.want)
		}
	}
	if s := inch.size(inch.line); s != "0.001 in" {
		t.Error(s)
	}
}

// Law: turns and lines make up the way, to a twentieth of a line; lines are fewer than a turn has.
func TestTurnsAndLinesMakeUpTheWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := float64(rapid.IntRange(1, 100).Draw(t, "line")) / 1000
		d := dial{line: line, turn: line * float64(rapid.IntRange(1, 400).Draw(t, "lines"))}
		way := rapid.Float64Range(-500, 500).Draw(t, "way")
		turns, lines := d.count(way)
		if e := math.Abs(turns*d.turn + lines*d.line - math.Abs(way)); e > d.line*0.0501 {
			t.Fatalf("%g is %g turns and %g lines: %g off", way, turns, lines, e)
		}
		if turns < 0 || lines < 0 || lines > d.turn/d.line-0.05 {
			t.Fatalf("%g is %g turns and %g lines", way, turns, lines)
		}
	})
}

// A dial is in the unit that its line is written in, whatever the rest of the shop is in.
func TestUnitOfADial(t *testing.T) {
	src := &text.Sources{}
	raw := `a = "0.001 in" b = 0.02 c = "0.05 mm"`
	src.Add("s.hcl", []byte(raw))
	at := func(w string) text.Place {
		i := strings.Index(raw, w)
		return text.Place{File: "s.hcl", From: i, To: i + len(w)}
	}
	for w, want := range map[string][2]bool{`"0.001 in"`: {true, true}, `0.02`: {false, true}, `"0.05 mm"`: {false, false}} {
		for i, others := range []bool{false, true} {
			if got := inInches(src, at(w), others); got != want[i] {
				t.Errorf("%s in a shop of inches %v: %v", w, others, got)
			}
		}
	}
	if inInches(src, text.Place{File: "s.hcl", From: 5, To: 4000}, true) != true {
		t.Error("a place beyond the file")
	}
}
