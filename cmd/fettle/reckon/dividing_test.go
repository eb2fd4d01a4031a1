package reckon

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"fettle/schema/printed"
	"fettle/schema/text"
)

const threePlates = "15,16,17,18,19,20/21,23,27,29,31,33/37,39,41,43,47,49"

// The printed settings of three plates come out of the command: among its settings is the one of
// the table, and where the table has none its answer is no, or two pins. Sources stand in the rows.
func TestPublishedDividing(t *testing.T) {
	yes, none := 0, 0
	for _, r := range printed.Rows(t, "dividing_index.tsv", 13) {
		for ratio, want := range map[string]string{"40": r[1], "60": r[9], "90": r[10], "5": r[11]} {
			d := asked(t, text.Archive{}, "dividing", r[0], "--ratio", ratio, "--circles", threePlates)
			plain := map[string]bool{}
			for _, table := range d.Tables {
				if !strings.HasPrefix(table.Title, "Settings") {
					continue
				}
				for _, row := range table.Rows {
					for at := range table.Head {
						if row[0] == "plain" && table.Head[at] == "turns" {
							plain[strings.Trim(row[1]+" + "+strings.Join(row[2:min(4, len(row))], "/"), " +/")] = true
						}
					}
				}
			}
			if want == "-" {
				none++
				if len(plain) > 0 {
					t.Errorf("%s at %s: %v, printed none", r[0], ratio, plain)
				}
				continue
			}
			yes++
			if !strings.Contains(want, " + ") && strings.Contains(want, "/") {
				want = "0 + " + want
			}
			if !strings.Contains(want, "/") {
				want = strings.TrimSpace(want)
				if got := d.valued(t, "turns"); fmt.Sprint(got) != want || d.valued(t, "holes") != 0 {
					t.Errorf("%s at %s: %v turns, printed %s", r[0], ratio, got, want)
				}
				continue
			}
			if !plain[want] {
				t.Errorf("%s at %s: %v, printed %s", r[0], ratio, plain, want)
			}
		}
	}
	if yes != 286 || none != 298 {
		t.Errorf("rows checked: %d with a setting, %d without", yes, none)
	}
}

// The printed readings and errors of rotary tables come out of the command.
func TestPublishedRotary(t *testing.T) {
	rows := printed.Rows(t, "dividing_rotary.tsv", 8)
	for _, r := range rows {
		d := asked(t, text.Archive{}, "dividing", r[2], "--ratio", r[0], "--dial", r[4])
		var turns, deg, min, sec float64
		if _, err := fmt.Sscanf(r[3], "%f turns + %fd %fm %fs", &turns, &deg, &min, &sec); err != nil {
			t.Fatal(err)
		}
		closing := printed.Figure(t, r[6])
		if d.valued(t, "dial, turns") != turns || math.Abs(d.valued(t, "dial, reading")-deg-min/60-sec/3600) > 0.0051/3600 ||
			math.Abs(d.valued(t, "dial, off at most")-printed.Figure(t, r[5])) > 0.00051 ||
			closing > 0 && math.Abs(math.Abs(d.valued(t, "dial, off at closing"))-closing) > 0.051 {
			t.Errorf("%v: %v", r, d.Says)
		}
	}
	if len(rows) != 168 {
		t.Errorf("%d rows checked", len(rows))
	}
}

// A whole question, its words read and its page printed.
func BenchmarkDividing(b *testing.B) {
	for _, args := range [][]string{
		{"36", "--ratio", "40", "--circles", threePlates},
		{"127", "--ratio", "40", "--circles", threePlates, "--wheels", "24,24,28,32,40,44,48,56,64,72,86,100", "--all"},
		{"1000", "--ratio", "40", "--circles", threePlates, "--table"},
		{"1000000", "--ratio", "90", "--dial", "10 sec", "--table"},
	} {
		b.Run(args[0], func(b *testing.B) {
			var page bytes.Buffer
			for b.Loop() {
				page.Reset()
				if _, err := Run(append([]string{"dividing"}, args...), text.Archive{}, &page); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
