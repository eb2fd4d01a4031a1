package reckon

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/schema/printed"
	"fettle/schema/text"
)

// chartWords writes the chart of a name in chain.tsv as words of the command.
func chartWords(t *testing.T, name string) []string {
	t.Helper()
	var blank, cuts, wants []string
	for _, r := range printed.Rows(t, "chain.tsv", 5) {
		f := strings.Fields(r[2])
		if r[1] != name {
			continue
		}
		switch r[0] {
		case "raw":
			blank = append(blank, fmt.Sprintf("%s: %s to %s %s %s/+%s", f[0], f[1], f[2], f[3], f[4], f[5]))
		case "drawing":
			wants = append(wants, fmt.Sprintf("%s: %s to %s %s %s/+%s", f[0], f[1], f[2], f[3], f[4], f[5]))
		case "cut":
			c := fmt.Sprintf("%s: %s to %s %s ±%s", f[0], f[1], f[2], f[3], f[4])
			if len(f) > 5 {
				c += ", metal " + f[5]
			}
			cuts = append(cuts, c)
		}
	}
	return []string{"--blank", strings.Join(blank, "; "), "--cuts", strings.Join(cuts, "; "), "--drawing", strings.Join(wants, "; ")}
}

// The published charts come out of the command as they are printed: limits of every dimension
// and of the metal of every cut, and whether all holds.
func TestPublishedCharts(t *testing.T) {
	rows := 0
	fails := map[string]bool{}
	for _, r := range printed.Rows(t, "chain.tsv", 5) {
		if r[0] != "result" {
			continue
		}
		rows++
		want := strings.Fields(r[3])
		d := asked(t, text.Archive{}, append([]string{"chain"}, chartWords(t, r[1])...)...)
		name := r[2]
		if len(name) == 1 {
			name = "stock of cut " + name
		}
		for i, end := range []string{", least", ", most"} {
			if got := d.valued(t, name+end); math.Abs(got-printed.Figure(t, want[i])) > 1e-9 {
				t.Errorf("%s %s%s: %v, printed %s in %s", r[1], name, end, got, want[i], r[4])
			}
		}
		fails[r[1]] = fails[r[1]] || want[len(want)-1] == "fails"
	}
	if rows < 12 || len(fails) != 4 {
		t.Errorf("%d rows of %d charts", rows, len(fails))
	}
	for name, no := range fails {
		if page, status := ran(t, text.Archive{}, append([]string{"chain"}, chartWords(t, name)...)...); (status == No) != no {
			t.Errorf("%s: status %d\n%s", name, status, page)
		}
	}
}

// What the case of the block with a slot expects of a checker: the three cuts with their shares
// and the tightening that its second way shows.
func TestChartCures(t *testing.T) {
	page, _ := ran(t, text.Archive{}, append([]string{"chain"}, chartWords(t, "T1-I")...)...)
	for _, want := range []string{"cut 2 with 71.4 %", "cut 1 with 14.3 %", "cut 3 with 14.3 %", "cut 2 from ±0.01 to ±0.006 mm"} {
		if !strings.Contains(strings.Join(strings.Fields(page), " "), want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
}
