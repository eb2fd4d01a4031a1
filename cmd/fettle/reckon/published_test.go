package reckon

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"fettle/schema/printed"
	"fettle/schema/text"
)

// The printed fits, limits and sums of plays come out of the command as they come out of the
// arithmetic: to the tenth of a micrometre. Sources stand in the rows.
func TestPublishedFits(t *testing.T) {
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "fit.tsv", 8) {
		var of document
		names := [2]string{"play least", "play most"}
		switch r[0] {
		case "fit":
			of = asked(t, text.Archive{}, "fit", r[1], r[2])
			kind := of.Values[len(of.Values)-1]
			if kind.Name != "kind" || kind.Words != r[5] || !strings.Contains(of.Says[0], " "+r[5]+" fit") {
				t.Errorf("%s %s: %+v, printed %s in %s", r[1], r[2], kind, r[5], r[7])
			}
		case "limits":
			of = asked(t, text.Archive{}, "fit", r[1], r[2])
			side := "shaft"
			if r[2][0] < 'a' {
				side = "hole"
			}
			names = [2]string{side + " least", side + " greatest"}
		default:
			continue
		}
		counts[r[0]]++
		nominal := 0.0
		if r[0] == "limits" {
			nominal = printed.Figure(t, r[1])
		}
		for i, n := range names {
			if got := (of.valued(t, n) - nominal) * 1000; math.Abs(got-printed.Figure(t, r[3+i])) > 0.05 {
				t.Errorf("%s %s: %s %v, printed %s in %s", r[1], r[2], n, got, r[3+i], r[7])
			}
		}
	}
	if counts["fit"] < 11 || counts["limits"] < 355 {
		t.Errorf("rows checked: %v", counts)
	}
}

// The printed shares of thread, diameters and depths of blind holes come out of the command.
func TestPublishedThreads(t *testing.T) {
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "thread.tsv", 7) {
		name, more, value := r[1], []string(nil), ""
		switch r[0] {
		case "percent":
			name, more, value = "#"+r[1], []string{"--hole", r[3]}, "thread left in --hole"
		case "effective":
			value = "effective diameter"
		case "nut":
			value = "inside of the nut, basic"
		case "blind":
			more, value = []string{"--depth", r[3], "--lead", r[2]}, "deep, "+r[2]
		case "blind BS 1936":
			more, value = []string{"--depth", r[3]}, "deep, BS 1936"
		}
		d := asked(t, text.Archive{}, append([]string{"thread", name}, more...)...)
		if got := d.valued(t, value); math.Abs(got-printed.Figure(t, r[4])) > printed.Figure(t, r[5])+1e-9 {
			t.Errorf("%s %s: %v, printed %s in %s", r[0], r[1], got, r[4], r[6])
		}
		counts[r[0]]++
	}
	if counts["percent"] != 11 || counts["effective"] < 80 || counts["nut"] < 80 || counts["blind"] != 2 || counts["blind BS 1936"] != 1 {
		t.Errorf("rows checked: %v", counts)
	}
}

// The mate of a measured part keeps the play that the fit allows: worked by hand. 12 H7/g6 has
// 0.006 to 0.035 mm of play (ISO 286: H7 0/+18, g6 -17/-6 µm), so a hole of 12.008 wants a
// shaft of 11.973 to 12.002, and a shaft of 11.99 a hole of 11.996 to 12.025.
func TestMate(t *testing.T) {
	for _, c := range []struct {
		args   []string
		part   string
		lo, hi float64
		status int
	}{
		{[]string{"12 H7/g6", "--hole", "12.008"}, "shaft", 11.973, 12.002, Answered},
		{[]string{"12 H7/g6", "--shaft", "11.99"}, "hole", 11.996, 12.025, Answered},
		{[]string{"12 H7/g6", "--hole", "12.018"}, "shaft", 11.983, 12.012, Answered}, // the limit itself is in
		{[]string{"12 H7/g6", "--hole", "12.0181"}, "shaft", 11.9831, 12.0121, No},
		{[]string{"12 H7/g6", "--hole", "11.9999"}, "shaft", 11.9649, 11.9939, No},
	} {
		page, status := ran(t, text.Archive{}, append([]string{"fit"}, c.args...)...)
		d := asked(t, text.Archive{}, append([]string{"fit"}, c.args...)...)
		lo, hi := d.valued(t, c.part+" to make, least"), d.valued(t, c.part+" to make, greatest")
		if math.Abs(lo-c.lo) > 1e-9 || math.Abs(hi-c.hi) > 1e-9 || status != c.status {
			t.Errorf("%v: %v to %v, status %d\n%s", c.args, lo, hi, status, page)
		}
	}
	for play, want := range map[string]int{"11.993": Answered, "11.983": Answered, "12.001": No} { // with a hole of 12.008: 0.015, 0.025, 0.007 of play
		if _, status := ran(t, text.Archive{}, "fit", "12 H7/g6", "--hole", "12.008", "--shaft", play); status != want {
			t.Errorf("a shaft of %s: %d", play, status)
		}
	}
}

// Parts that press together carry a caution, and so do measured parts that turn out to.
func TestPressing(t *testing.T) {
	for words, press := range map[string]bool{"12 H7/p6": true, "12 H7/k6": true, "12 H7/g6": false, "12 H7/h6": false,
		"12 h6 --hole 11.98": true, "12 h6 --hole 12.01": false, "12 H7/g6 --hole 11.9 --shaft 12": true, "30 g6": false} {
		d := asked(t, text.Archive{}, append([]string{"fit"}, strings.Fields(words)...)...)
		if strings.Contains(d.Caution, "pressed") != press {
			t.Errorf("%s: %s", words, d.Caution)
		}
	}
}

// What drill serves, from where, and what none is (worked by hand on 1.299 P, ISO 261 sizes).
func TestDrills(t *testing.T) {
	files := recipes(t)
	for _, c := range []struct {
		args   string
		says   string
		status int
	}{
		{"M6", "Drill 5 mm (0.19685 in) for M6: it leaves 77 % of thread", Answered},
		{"M8 --drills 6.5,7", "Drill 7 mm (0.27559 in), from --drills, for M8: it leaves 62 % of thread", Answered}, // (8 - 7) / 1.624
		{"M8 --drills 6.5", "No drill of --drills serves for M8", No},                                               // 92 %
		{"M5 --shop recipes/shops/bench", "from drill.jobbers of recipes/shops/bench, for M5", Answered},
		{"M12 --shop recipes/shops/bench", "No drill of drill.jobbers of recipes/shops/bench serves", No},
		{"M6 --hole 6", "leaves no thread of M6 at all", No},
		{"M6 --hole 5.2", "leaves 62 % of thread, above the standard's most of 5.153 mm", Answered}, // ISO 965-1, 6H
		{"1/4 NPT", "tapered pipe thread", No},
		{"M6 --material EN8", "is not known here", Answered},
		{"M6 --material 6082", "In aluminium 6082 usually 1.5 diameters of thread, 9 mm", Answered},
		{"M5 --shop recipes/shops/bench --depth 8", "The shop's tap for it: tap.metric.", Answered},
		{"2 BA --shop recipes/shops/bench", "The shop has no tap for it.", Answered},
	} {
		page, status := ran(t, files, append([]string{"thread"}, strings.Fields(c.args)...)...)
		if status != c.status || !strings.Contains(strings.Join(strings.Fields(page), " "), c.says) {
			t.Errorf("%s: %d\n%s", c.args, status, page)
		}
	}
	d := asked(t, files, "thread", "M5", "--shop", "recipes/shops/bench", "--depth", "8")
	for lead, deep := range map[string]float64{"taper": 8 + 11*0.8, "second": 8 + 6*0.8, "bottoming": 8 + 2.5*0.8} {
		if got := d.valued(t, "deep, "+lead); math.Abs(got-deep) > 1e-9 {
			t.Errorf("%s: %v, want %v", lead, got, deep)
		}
	}
	if n := len(d.Tables[len(d.Tables)-1].Rows); n != 3 {
		t.Errorf("%s taps are shown, the shop has 3", strconv.Itoa(n))
	}
}

// The published block in a vise and the two bodies that lean on each other come out of the
// command as they come out of the arithmetic (rows of hold.tsv; Lynch and Park, Modern Robotics, 12.11).
func TestPublishedHolding(t *testing.T) {
	var points []string
	for _, x := range []string{"-25", "25"} {
		for _, z := range []string{"2", "10"} {
			points = append(points, x+" 20 "+z+" 0 -1 0 0.2", x+" -20 "+z+" 0 1 0 0.2 clamp")
		}
		for _, y := range []string{"-12", "12"} {
			points = append(points, x+" "+y+" 0 0 0 1 0.15")
		}
	}
	rows := 0
	for _, r := range printed.Rows(t, "hold.tsv", 5) {
		if r[0] != "block" {
			continue
		}
		rows++
		of := asked(t, text.Archive{}, "hold", "contacts", "--contacts", strings.Join(points, ";"), "--load", r[1]+"; 0 0 -5.5446 0 0 15", "--sides", "4", "--safety", "1")
		if got := of.valued(t, "least force"); math.Abs(got-printed.Figure(t, r[2])) > printed.Figure(t, r[3]) {
			t.Errorf("%s: %v, printed %s: %s", r[1], got, r[2], r[4])
		}
	}
	if rows != 6 {
		t.Errorf("%d rows", rows)
	}
	for _, c := range []struct{ foot, second, answer string }{{"0.1", "-49.05", "no"}, {"0.5", "-98.1", "yes"}} {
		of := asked(t, text.Archive{}, "hold", "contacts", "--contacts", "60 60 0 -1 0 0 0.5 of 1 on 2; 0 0 0 0 1 0 "+c.foot+" of 1; 60 0 0 0 1 0 0.5 of 2; 72 0 0 0 1 0 0.5 of 2",
			"--load", "0 -19.62 0 25 35 0 of 1; 0 "+c.second+" 0 66 42 0 of 2", "--sides", "4", "--safety", "1")
		if of.Answer != c.answer {
			t.Errorf("%+v: %s", c, of.Answer)
		}
	}
}
