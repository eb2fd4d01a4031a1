package choose_test

import (
	"math"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/eval"
	"fettle/schema/printed"
)

// cutOf is the last operation of a part, and its first set of teeth.
func cutOf(t *testing.T, p *eval.PartTrace) (*eval.Cut, *eval.Form) {
	t.Helper()
	k := p.Moments[len(p.Moments)-1].Cut
	if k == nil || k.Unplayed != "" {
		t.Fatalf("%+v", k)
	}
	for _, f := range p.Part.Forms {
		if f.Tooth != nil {
			return k, f
		}
	}
	t.Fatal("no teeth")
	return nil, nil
}

// caseOf is the recipe of a case of a rule.
func caseOf(t *testing.T, rule, name string) string {
	t.Helper()
	ar, err := txtar.ParseFile("../../testdata/rules/" + rule + ".txtar")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range ar.Files {
		if f.Name == name {
			return string(f.Data)
		}
	}
	t.Fatalf("%s has no case %s", rule, name)
	return ""
}

// Sixty teeth of module 0.5 at 20 degrees: the reference circle is 60 x 0.5 / cos 20 across, and a tooth
// winds once in pi d / tan 20. The middle of a gap follows that helix from one end of the rim to the
// other: to the right, as a right-hand screw does, from the top towards the front.
func TestHelicalGaps(t *testing.T) {
	for _, hand := range []string{"right", "left"} {
		p, _ := playedRecipe(t, sound(t, "cutter-does-not-lean", "hand   = \"right\"", "hand   = \""+hand+"\"", "length   = 64", "length   = 90"))
		k, f := cutOf(t, p)
		lead := math.Pi * 60 * 0.5 / math.Cos(20*math.Pi/180) / math.Tan(20*math.Pi/180)
		if math.Abs(f.Tooth.Lead-lead) > 1e-9 || len(f.Spins) != 60 || f.Tooth.Virtual() != 72 {
			t.Fatalf("%+v", f.Tooth)
		}
		sign := map[string]float64{"right": -1, "left": 1}[hand]
		piece := k.After.Piece
		for _, x := range []float64{60.2, 64, 70, 75, 80, 86, 89.8} {
			turned := sign * 360 * (x - 75) / lead
			for _, n := range []float64{0, 1, 17, 59} {
				if v := around(x, 15.6, turned+6*n); piece.Holds(v) {
					t.Errorf("%s, gap %v at %v: metal at %v", hand, n, x, v)
				}
				if v := around(x, 15.6, turned+6*n+3); !piece.Holds(v) {
					t.Errorf("%s, tooth %v at %v: none at %v", hand, n, x, v)
				}
			}
		}
	}
}

// Driven over drivers is the lead over 40 times the lead of the screw. The classic case: four threads to
// the inch, 40 to 1, so that equal wheels make ten inches; 27 inches want 72 x 48 driven by 40 x 32
// (old books on milling, from memory).
func TestHelixWheels(t *testing.T) {
	// 27 in at 20 degrees is a reference circle of 27 x tan 20 / pi in; the normal module of 60 teeth follows.
	module := 27 * 25.4 * math.Sin(20*math.Pi/180) / math.Pi / 60
	blank := 60*module/math.Cos(20*math.Pi/180) + 2*module
	p, _ := playedRecipe(t, sound(t, "cutter-does-not-lean", "module = 0.5\n", "module = "+fig(module)+"\n", "module         = 0.5", "module         = "+fig(module),
		"diameter = 32.925", "diameter = "+fig(blank), "turn = 5", "turn = 6.35"))
	k, f := cutOf(t, p)
	h, lacks, wrong, ok := k.Helix(f)
	if !ok || len(lacks) > 0 || wrong != "" || !h.Found || math.Abs(h.PPM) > 1 {
		t.Fatalf("%+v %v %q", h, lacks, wrong)
	}
	driven, drives := 1.0, 1.0
	for i := range h.Drives {
		driven, drives = driven*float64(h.Driven[i]), drives*float64(h.Drives[i])
	}
	if driven/drives != 72.0*48/40/32 {
		t.Errorf("%v driven by %v", h.Driven, h.Drives)
	}
}

func TestVirtualTeethPublished(t *testing.T) {
	n := 0
	for _, r := range printed.Rows(t, "gear.tsv", 5) {
		if r[0] != "helical cutter" {
			continue
		}
		given, want := strings.Fields(r[1]), strings.Fields(r[2])
		tooth := eval.Toothing{Count: int(printed.Figure(t, given[0])), Lean: -printed.Figure(t, given[1])}
		if got := tooth.Virtual(); math.Abs(float64(got)-printed.Figure(t, want[0])) > 0.5 {
			t.Errorf("%s: %d teeth, %s printed", r[1], got, want[0])
		}
		n++
	}
	if n < 3 {
		t.Errorf("%d rows", n)
	}
}

// A wheel of 30 teeth of module 2 for a worm with a pitch circle of 28: over the tips 64 in the middle of
// the rim, its hollow 14 - 2 = 12 about the worm's axis, 44 from its own; the floor of the gaps at
// 60/2 - 1.25 x 2 = 27.5 there.
func TestThroatedGaps(t *testing.T) {
	p, _ := playedRecipe(t, sound(t, "throat-of-other-radius"))
	k, f := cutOf(t, p)
	th := f.Tooth.Throat
	if math.Abs(th.Drive.ThroatRadius-12) > 1e-9 || math.Abs(th.Floor()-27.5) > 1e-9 || math.Abs(th.Reach()-16.5) > 1e-9 {
		t.Fatalf("%+v", th)
	}
	piece := k.After.Piece
	hollow := func(x, r float64) float64 { return 44 - math.Sqrt(r*r-(x-68)*(x-68)) }
	for _, n := range []float64{0, 7, 29} {
		for _, x := range []float64{61, 64, 68, 71, 75} {
			// Straight pieces of a sixth of the rim lie within their sagitta of the arc.
			tip, floor := math.Min(33.25, hollow(x, 12)), hollow(x, 16.5)
			for _, c := range []struct {
				r, at float64
				want  bool
			}{{tip - 0.05, 6, true}, {tip + 0.2, 6, false}, {floor - 0.05, 0, true}, {floor + 0.2, 0, false}} {
				if v := around(x, c.r, 12*n+c.at); piece.Holds(v) != c.want {
					t.Errorf("tooth %v at %v: metal at a radius of %v is %v", n, x, c.r, !c.want)
				}
			}
		}
	}
}

// The sizes of the published wheel, as they are played: module 3, 2 starts, 30 teeth, worm 44 across.
func TestThroatPublished(t *testing.T) {
	p, _ := playedRecipe(t, sound(t, "throat-of-other-radius", "module = 2\n", "module = 3\n    starts = 2\n", "module         = 2\n", "module         = 3\n",
		"diameter = 66.5", "diameter = 98", "diameter = 32", "diameter = 50", "diameter       = 34", "diameter       = 52"))
	_, f := cutOf(t, p)
	th := f.Tooth.Throat
	has := map[string]float64{"worm throat radius": th.Drive.ThroatRadius, "worm centre distance": th.Drive.Centre, "worm wheel root dia": 2 * th.Floor(), "worm lead angle": th.Drive.LeadAngle}
	n := 0
	for _, r := range printed.Rows(t, "gear.tsv", 5) {
		got, ok := has[r[0]]
		if !ok || r[1] != "3 2 30 44" {
			continue
		}
		if math.Abs(got-printed.Figure(t, r[2])) > printed.Figure(t, r[3]) {
			t.Errorf("%s: %v, %s printed", r[0], got, r[2])
		}
		n++
	}
	if n != len(has) {
		t.Errorf("%d rows", n)
	}
}

// Forty teeth of module 1 in a bore of 38: the gaps reach out to 19 + 2.25.
func TestInsideGaps(t *testing.T) {
	p, _ := playedRecipe(t, caseOf(t, "not-made-from-there", "inside-teeth-planed"))
	m := p.Moments[len(p.Moments)-1].Turn
	if m == nil || m.Works[0].Wrong != "" || !m.Works[0].Final || m.Choice.By != "planing" {
		t.Fatalf("%+v", m)
	}
	for n := range 40 {
		at := 9 * float64(n)
		for _, c := range []struct {
			r, at float64
			want  bool
		}{{19.1, 0, false}, {21.2, 0, false}, {21.3, 0, true}, {19.1, 4.5, true}, {18.9, 4.5, false}} {
			if v := around(50, c.r, at+c.at); m.After.Piece.Holds(v) != c.want {
				t.Errorf("gap %d: metal at a radius of %v, %v deg on, is %v", n, c.r, c.at, !c.want)
			}
		}
	}
}
