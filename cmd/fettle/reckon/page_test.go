package reckon

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"
)

func shown(a Answer, all bool) string {
	var b bytes.Buffer
	a.text(&b, all, "")
	return b.String()
}

// A table that is cut shows the rows about the one that counts, and says how many it leaves out.
func TestCut(t *testing.T) {
	table := Table{Head: []Column{right("n")}, Most: 4}
	for n := range 20 {
		table.Rows = append(table.Rows, []string{fmt.Sprint(n)})
	}
	for around, want := range map[int]string{
		0:  "  n\n  0\n  1\n  2\n  3\n  (16 of 20 rows are not shown; --all shows them)\n",
		10: "   n\n   8\n   9\n  10\n  11\n  (16 of 20 rows are not shown; --all shows them)\n",
		19: "   n\n  16\n  17\n  18\n  19\n  (16 of 20 rows are not shown; --all shows them)\n",
	} {
		table.Around = around
		if got := shown(Answer{Tables: []Table{table}}, false); got != want {
			t.Errorf("around %d:\n%s", around, got)
		}
	}
	if got := shown(Answer{Tables: []Table{table}}, true); strings.Count(got, "\n") != 21 {
		t.Errorf("--all:\n%s", got)
	}
}

// A page keeps to 80 columns and prints every sign of what it is given, or escapes it.
func TestWidth(t *testing.T) {
	long, odd := strings.Repeat("x", 300), "a\u202eb\x1b[31m\ue000"
	a := Answer{Says: []string{long + " and then " + odd, strings.Repeat("12.7 mm (0.5 in) ", 30)}, Steps: []string{long}, Sources: []string{long}, Caution: long,
		Tables: []Table{{Title: long, Head: []Column{left(long), right("n"), left(odd)}, Rows: [][]string{{long, "1", odd}, {"short"}, {}}},
			{Head: nil, Rows: [][]string{{}}}}}
	page := shown(a, false)
	if wrong := held(page); wrong != "" {
		t.Error(wrong)
	}
	if strings.Count(page, "x") < 5*300 {
		t.Errorf("something is lost of:\n%s", page)
	}
	for line := range strings.Lines(page) {
		if strings.HasPrefix(line, "in) ") || strings.HasPrefix(line, "mm ") {
			t.Errorf("a unit is parted from its figure: %s", line)
		}
	}
}

// What is no number has none in the JSON form, and does not break it.
func TestNoNumber(t *testing.T) {
	a := Answer{Values: []Value{figure("a", math.NaN(), "mm", ""), figure("b", math.Inf(1), "mm", ""), word("c", "x", ""), figure("d", 0, "", "")}}
	var b bytes.Buffer
	if err := a.json(&b, Ask{of: &Subject{Name: "x"}}, ""); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), `"figure": null`); n != 3 || !strings.Contains(b.String(), `"figure": 0,`) {
		t.Errorf("%d without a number:\n%s", n, b.String())
	}
}
