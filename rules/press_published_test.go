package rules_test

import (
	"fmt"
	"math"
	"testing"

	"fettle/eval"
	"fettle/rules"
	"fettle/schema/handbook"
	"fettle/schema/printed"
)

// metalsOf are metals of the handbook, the usual one first, of each kind in the printed rows of press fits. A row has one figure
// of stiffness where the handbook has the spread among sources.
var metalsOf = []struct {
	name           string
	young, poisson float64 // as printed
}{
	{"mild steel", 207000, 0.3}, {"mild steel", 205000, 0.29}, {"mild steel", 200000, 0.3}, {"brass", 97000, 0.31}, {"brass", 105000, 0.34},
	{"phosphor bronze PB1", 110000, 0.34}, {"aluminium 6082", 69000, 0.33}, {"cast iron", 100000, 0.26},
}

// metalOf is the metal of a printed stiffness, and how much stiffer the handbook's is than that at least and at most.
func metalOf(t *testing.T, young, poisson float64) (name string, least, most float64) {
	t.Helper()
	for _, m := range metalsOf {
		if m.young == young && m.poisson == poisson {
			e, ok := handbook.ElasticOf(m.name)
			if !ok {
				t.Fatalf("the handbook has no %s", m.name)
			}
			return m.name, e.Young.Lo / young, e.Young.Hi / young
		}
	}
	t.Fatalf("no metal for %v MPa, %v", young, poisson)
	return "", 0, 0
}

// pressed is a printed press fit as a recipe: bore, common, outside, length, interference, mm.
type pressed struct {
	bore, common, outside, length, over float64
	hub, shaft                          string
	force                               float64 // of the press, N
}

func (p pressed) recipe() string {
	bore := ""
	if p.bore > 0 {
		bore = fmt.Sprintf("\n  bore \"way\" {\n    into     = \"right\"\n    diameter = \"%v..%v\"\n  }\n\n  setup \"turn\" {\n    end = \"left\"\n\n    operation {\n      makes = bore.way\n    }\n  }\n", p.bore, p.bore+0.001)
	}
	return fmt.Sprintf(`recipe "pressed" {
  units = "mm"
}

part "hub" {
  material = "%s"
  diameter = %v
  length   = %v

  bore "eye" {
    into     = "left"
    diameter = "%.7f..%.7f"
  }
}

part "shaft" {
  material = "%s"
  diameter = "%.7f..%.7f"
  length   = %v
%s}

fit "both" {
  hole    = part.hub.bore.eye.diameter
  shaft   = part.shaft.diameter
  wants   = %.7f
  engaged = %v
}

assembly "both" {
  of = [part.hub, part.shaft]

  bench "press" {
    joins = [fit.both]
    tool  = arbor_press.row
    by    = "pressing"
  }
}

arbor_press "row" {
  force   = %.0f
  opening = 2000
}
`, p.hub, p.outside, p.length, p.common, p.common, p.shaft, p.common+p.over, p.common+p.over, p.length, bore, -p.over, p.length, p.force)
}

// play makes such a recipe on paper.
func (p pressed) play(t *testing.T) (eval.Pressing, *eval.Joint, []rules.Verdict) {
	t.Helper()
	trace, vs := madeIn(t, p.recipe(), rules.ExampleShop)
	all := trace.Pressings()
	if len(all) != 1 {
		t.Fatalf("%+v of\n%s", all, p.recipe())
	}
	for _, j := range trace.Joints {
		if j.Fit != nil {
			return all[0], j, vs
		}
	}
	t.Fatal("no fit")
	return eval.Pressing{}, nil, nil
}

// Printed press fits as a recipe writes them. The interference of the joint is the printed one; the pressure, at either end
// of the spread of stiffness, is the printed one times how much stiffer or softer the handbook's metals are than the printed
// (the theory is of first order in the two stiffnesses and rises with both, so that two metals lie between the two shares, and
// one metal has it exactly); hoop, force and torque are to that pressure as they are in print. Of a press a little weaker than the
// least by the printed force the rule says so, of one a little stronger than the most nothing. Poisson's ratios
// of the handbook are bands too, for which two metals get 2 %.
func TestPublishedPressFitsAsJoints(t *testing.T) {
	counts := map[string]int{}
	for _, r := range printed.Rows(t, "press.tsv", 5) {
		if r[0] != "pressure" && r[0] != "interference" && r[0] != "fit" {
			continue
		}
		counts[r[0]]++
		in, want := printed.Figures(t, r[1]), printed.Figures(t, r[2])
		p := pressed{length: 10, force: 1000000}
		var metals []float64
		within := printed.Figure(t, r[3]) / math.Max(1, want[0]) // of the pressure
		switch r[0] {
		case "pressure":
			p.over, metals = in[3], in[4:]
		case "interference": // the row gives the pressure, and prints what makes it
			p.over, metals = want[0], in[4:]
			want, within = []float64{in[3]}, printed.Figure(t, r[3])/want[0]
		case "fit":
			p.length, p.over, metals = in[3], in[4], in[5:]
			within = printed.Figure(t, r[3])
		}
		p.bore, p.common, p.outside = in[0], in[1], in[2]
		var lo, hi [2]float64
		p.hub, lo[0], hi[0] = metalOf(t, metals[0], metals[1])
		p.shaft, lo[1], hi[1] = metalOf(t, metals[2], metals[3])
		if p.hub != p.shaft {
			within += 0.02
		}
		got, j, _ := p.play(t)
		if got.None || !got.Force.Is() {
			t.Errorf("%s: no force", r[1])
			continue
		}
		if play, ok := j.Fit.Play.Get(); !ok || math.Abs(play.Lo+p.over) > 1e-6 || math.Abs(play.Hi+p.over) > 1e-6 {
			t.Errorf("%s: play %+v, interference printed %v in %s", r[1], j.Fit.Play, p.over, r[4])
		}
		least, most := got.Least.Pressure.Lo, got.Most.Pressure.Hi
		if least < want[0]*min(lo[0], lo[1])*(1-within) || least > want[0]*max(lo[0], lo[1])*(1+within) ||
			most < want[0]*min(hi[0], hi[1])*(1-within) || most > want[0]*max(hi[0], hi[1])*(1+within) {
			t.Errorf("%s: pressure %v to %v MPa, printed %v in %s; stiffness %v to %v of the printed", r[1], least, most, want[0], r[4], lo, hi)
		}
		if r[0] == "fit" {
			pressedAsPrinted(t, p, in[9], [2]float64{min(lo[0], lo[1]) * (1 - within), max(hi[0], hi[1]) * (1 + within)}, want, got, r[4])
		}
	}
	for what, n := range map[string]int{"pressure": 3, "interference": 1, "fit": 5} {
		if counts[what] != n {
			t.Errorf("%d rows of %s, want %d", counts[what], what, n)
		}
	}
}

// pressedAsPrinted holds what follows from the pressure, and what the rule says, against printed pressure, hoop, force and torque.
func pressedAsPrinted(t *testing.T, p pressed, friction float64, stiff [2]float64, want []float64, got eval.Pressing, source string) {
	t.Helper()
	hub, _ := handbook.ElasticOf(p.hub)
	shaft, _ := handbook.ElasticOf(p.shaft)
	mu, _, _ := handbook.PressFriction(hub.Family, shaft.Family, "dry")
	if oiled, _, ok := handbook.PressFriction(hub.Family, shaft.Family, "oiled"); ok {
		mu.Lo = min(mu.Lo, oiled.Lo)
	}
	if friction < mu.Lo || friction > mu.Hi {
		t.Fatalf("friction %v is not of %v", friction, mu)
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"hoop of the hub", got.Least.Hub.Hoop.Lo / got.Least.Pressure.Lo, want[1] / want[0]},
		{"least force", got.Force.V.Lo / got.Least.Pressure.Lo / mu.Lo, want[2] / want[0] / friction},
		{"most force", got.Force.V.Hi / got.Most.Pressure.Hi / mu.Hi, want[2] / want[0] / friction},
		{"most torque", got.Most.Torque.Hi / 1000 / got.Most.Pressure.Hi / mu.Hi, want[3] / want[0] / friction},
	} {
		if math.Abs(c.got/c.want-1) > 0.0015 { // torques are printed to 0.01 of 4.23
			t.Errorf("%s in %s: %s is %v of the pressure, printed %v in %s", p.shaft, p.hub, c.what, c.got, c.want, source)
		}
	}
	for _, c := range []struct {
		has  float64
		says rules.Kind
	}{{want[2] * mu.Lo / friction * stiff[0] * 0.99, rules.Trouble}, {want[2], rules.Open}, {want[2] * mu.Hi / friction * stiff[1] * 1.01, rules.Clear}} {
		p.force = math.Round(c.has)
		_, _, vs := p.play(t)
		if says := kinds(vs, "press-not-strong-enough"); len(says) != 1 || says[0] != c.says {
			t.Errorf("%s in %s with a press of %v N: %v, want %v; printed %v N in %s", p.shaft, p.hub, p.force, says, c.says, want[2], source)
		}
	}
}

// How much the bore of a bush closes, by a maker's formula: the bracket that the rule asks holds it, and
// is no wider than the spread of the two stiffnesses of the handbook makes it.
func TestPublishedBushesClose(t *testing.T) {
	n := 0
	for _, r := range printed.Rows(t, "press.tsv", 5) {
		if r[0] != "closes" {
			continue
		}
		n++
		in, want := printed.Figures(t, r[1]), printed.Figure(t, r[2])/1000
		p := pressed{bore: in[0], common: in[1], outside: in[2], length: 10, over: in[3], force: 1000000}
		var spread [2]float64
		for k, name := range []*string{&p.hub, &p.shaft} {
			var lo, hi float64
			*name, lo, hi = metalOf(t, in[4+2*k], in[5+2*k])
			spread[k] = hi / lo
		}
		_, j, _ := p.play(t)
		b, ok := j.Fit.Bushed(j.Trace)
		if !ok || !b.Closes.Is() {
			t.Fatalf("no bush in\n%s", p.recipe())
		}
		off := printed.Figure(t, r[3]) / 1000
		if c := b.Closes.V; c.Lo > want+off || c.Hi < want-off || c.Hi/c.Lo > spread[0]*spread[1] {
			t.Errorf("%s: closes by %+v mm, printed %v in %s", r[1], c, want, r[4])
		}
	}
	if n != 2 {
		t.Errorf("%d rows", n)
	}
}
