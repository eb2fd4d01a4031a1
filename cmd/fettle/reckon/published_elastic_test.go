package reckon

import (
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"fettle/schema/printed"
	"fettle/schema/text"
)

// rowed asks one question for a printed row and compares values by their names, to the error
// that the row gives for each, or as a part of it where there are several.
func rowed(t *testing.T, r []string, scale float64, args []string, names ...string) {
	t.Helper()
	d := asked(t, text.Archive{}, args...)
	want := printed.Figures(t, r[2])
	for n, name := range names {
		off := math.Abs(d.valued(t, name)/scale - want[n])
		if len(names) > 1 {
			off /= want[n]
		}
		if !(off <= printed.Figure(t, r[3])) {
			t.Errorf("%s %s: %s is %v, printed %v in %s", r[0], r[1], name, d.valued(t, name)/scale, want[n], r[4])
		}
	}
}

// The worked press fits, pressures and closing bores come out of the command.
func TestPublishedPress(t *testing.T) {
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "press.tsv", 5) {
		w := strings.Fields(r[1])
		metals := func(hub, shaft int) []string {
			return []string{"--hub-young", w[hub], "--hub-poisson", w[hub+1], "--shaft-young", w[shaft], "--shaft-poisson", w[shaft+1]}
		}
		args := []string{"press"}
		switch r[0] {
		case "fit":
			args = append(args, "--bore", w[0], "--diameter", w[1], "--outside", w[2], "--length", w[3], "--interference", w[4], "--friction", w[9])
			rowed(t, r, 1, append(args, metals(5, 7)...), "pressure, least", "hoop of the hub, most", "force, least", "torque, most")
		case "pressure", "closes":
			args = append(args, "--bore", w[0], "--diameter", w[1], "--outside", w[2], "--interference", w[3])
			rowed(t, r, 1, append(args, metals(4, 6)...), map[string]string{"pressure": "pressure, most", "closes": "bore closes, least"}[r[0]])
		default:
			continue
		}
		counts[r[0]]++
	}
	if counts["fit"] != 5 || counts["pressure"] != 3 || counts["closes"] != 2 {
		t.Errorf("rows checked: %v", counts)
	}
}

// The growth, misreading and shrinking that the rows work out come out of the command; the
// printed rise of one row is wrong by what the row says.
func TestPublishedHeat(t *testing.T) {
	checked := 0
	for _, r := range printed.Rows(t, "heat.tsv", 5) {
		w := strings.Fields(r[1])
		switch r[0] {
		case "growth":
			rowed(t, r, 1, []string{"heat", "--length", w[0], "--expansion", w[1], "--from", w[2], "--at", w[3]}, "growth, least")
		case "misread":
			rowed(t, r, 1, []string{"heat", "--length", w[0], "--expansion", w[1], "--instrument-expansion", w[2], "--at", w[3], "--instrument-at", w[3]}, "misreading, most")
		case "hub at":
			d := asked(t, text.Archive{}, "heat", "--diameter", w[0], "--interference", w[1], "--gap", w[2], "--hub-expansion", w[3], "--shaft-expansion", w[3])
			if off := d.valued(t, "hub at, most") - 20 - printed.Figure(t, r[2]); math.Abs(off-printed.Figure(t, r[3])) > 0.01 {
				t.Errorf("%s: off by %v", r[1], off)
			}
		default:
			continue
		}
		checked++
	}
	if checked != 7 {
		t.Errorf("%d rows checked", checked)
	}
}

func TestPublishedBalance(t *testing.T) {
	checked := 0
	for _, r := range printed.Rows(t, "balance.tsv", 5) {
		w := strings.Fields(r[1])
		switch r[0] {
		case "force":
			rowed(t, r, 1, []string{"balance", "--masses", w[0] + " " + w[1], "--revs", w[2]}, "pull")
		case "speed":
			share := fmt.Sprint(100 * printed.Figure(t, w[3]))
			rowed(t, r, 1, []string{"balance", "--masses", w[0] + " " + w[1], "--lathe", w[2], "--share", share}, "speed at that share")
		case "sway":
			rowed(t, r, 1, []string{"balance", "--masses", "1 " + w[0], "--turning", "1", "--revs", w[1]}, "sway")
		default:
			continue
		}
		checked++
	}
	if checked != 6 {
		t.Errorf("%d rows checked", checked)
	}
}

func TestPublishedRigid(t *testing.T) {
	checked := 0
	for _, r := range printed.Rows(t, "rigid.tsv", 5) {
		w := strings.Fields(r[1])
		switch r[0] {
		case "bar":
			rowed(t, r, 1000, []string{"rigid", w[0], "--diameter", w[1], "--length", w[2], "--at", w[3], "--force", w[4], "--young", w[5]}, "gives, least")
		case "end mill":
			rowed(t, r, 1000, []string{"rigid", "mill", "--diameter", w[0], "--flutes", w[1], "--shank", w[2], "--length", w[3], "--force", w[4], "--young", w[5]}, "gives, most")
		case "whirl":
			d := asked(t, text.Archive{}, "rigid", "whirl", "--diameter", w[0], "--length", w[1], "--material", strings.Join(w[2:], " "))
			mid := (d.valued(t, "first whirl, least") + d.valued(t, "first whirl, most")) / 2
			if want := printed.Figure(t, r[2]); math.Abs(mid-want) > want*printed.Figure(t, r[3]) {
				t.Errorf("%s: %v, printed %v in %s", r[1], mid, want, r[4])
			}
		default:
			continue
		}
		checked++
	}
	if checked != 10 {
		t.Errorf("%d rows checked", checked)
	}
}

// An answer of each of these subjects, read and printed.
func BenchmarkElastic(b *testing.B) {
	for _, name := range []string{"press", "heat", "balance", "rigid"} {
		args := append([]string{name}, find(name).Examples[1]...)
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if status, err := Run(args, text.Archive{}, io.Discard); status != 0 || err != nil {
					b.Fatal(status, err)
				}
			}
		})
	}
}
