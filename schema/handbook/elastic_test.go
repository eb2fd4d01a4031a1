package handbook

import (
	"strings"
	"testing"
)

// What no solid can be is refused in every row: a stiffness outside that of soft plastics and
// carbide, a Poisson's ratio of one half, an expansion below that of no metal here.
func TestElastic(t *testing.T) {
	families := map[string]int{}
	for _, e := range elastics() {
		families[e.Family]++
		for what, b := range map[string]struct {
			got    Band
			lo, hi float64
		}{
			"young": {e.Young, 300, 220e3}, "poisson": {e.Poisson, 0.2, 0.47}, "yield": {e.Yield, 10, 1300},
			"breaks": {e.Breaks, 40, 300}, "expansion": {e.Expansion, 8e-6, 205e-6},
		} {
			if b.got.Known() && (b.got.Lo < b.lo || b.got.Hi > b.hi) {
				t.Errorf("%s: %s is %v", e.Name, what, b.got)
			}
		}
		if e.Yield.Known() && e.Breaks.Known() {
			t.Errorf("%s both yields and breaks without yielding", e.Name)
		}
		if len(e.Source) < 10 || strings.Contains(e.Source, "://") {
			t.Errorf("%s: source %q", e.Name, e.Source)
		}
		if !e.Expansion.Known() || (e.Young.Known() != (e.Name != "sintered bronze")) {
			t.Errorf("%s: %+v", e.Name, e)
		}
	}
	if len(elastics()) != len(materials()) || families["steel"] < 10 || families["aluminium"] < 8 || families["copper alloy"] < 10 {
		t.Errorf("%d rows, families %v", len(elastics()), families)
	}
}

// A grade lies within the general word it is a grade of, where both are known: who says
// "aluminium" gets a band that holds 6082.
func TestElasticOfFamilies(t *testing.T) {
	for _, m := range materials() {
		if m.kind != "aluminium" && m.kind != "bronze" && m.kind != "stainless steel" {
			continue
		}
		grade, _ := ElasticOf(m.name)
		word, ok := ElasticOf(m.kind)
		for _, b := range [][2]Band{{grade.Young, word.Young}, {grade.Poisson, word.Poisson}, {grade.Expansion, word.Expansion}} {
			if !ok || b[0].Lo < b[1].Lo || b[0].Hi > b[1].Hi {
				t.Errorf("%s %v is not within %s %v", m.name, b[0], m.kind, b[1])
			}
		}
	}
}

func TestElasticOf(t *testing.T) {
	if e, ok := ElasticOf("CZ121"); !ok || e.Name != "brass" || e.Young != (Band{96500, 100000}) || e.Density != 8470 {
		t.Errorf("%+v %v", e, ok)
	}
	if e, ok := ElasticOf("unobtainium"); ok {
		t.Errorf("%+v", e)
	}
	if e, ok := ToolMetal("hss"); !ok || !(e.Young.Lo <= 210e3 && 210e3 <= e.Young.Hi) {
		t.Errorf("%+v %v", e, ok)
	}
	if _, ok := ToolMetal("cheese"); ok {
		t.Error("a bar of cheese")
	}
}

func TestPressFriction(t *testing.T) {
	there, _, ok := PressFriction("steel", "copper alloy", "dry")
	back, source, ok2 := PressFriction("copper alloy", "steel", "dry")
	if !ok || !ok2 || there != back || there != (Band{0.05, 0.14}) || source == "" {
		t.Errorf("%v %v", there, back)
	}
	if mu, _, ok := PressFriction("plastic", "steel", "dry"); ok {
		t.Errorf("plastic: %v", mu)
	}
	for _, r := range pressFrictions() {
		if lo, hi := r.number("low"), r.number("high"); !(lo >= 0.04 && lo <= hi && hi <= 0.25) {
			t.Errorf("%v", r.cells)
		}
		families := map[string]bool{}
		for _, e := range elastics() {
			families[e.Family] = true
		}
		if !families[r.text("one")] || !families[r.text("other")] {
			t.Errorf("no metal of %v", r.cells)
		}
	}
}

func TestBand(t *testing.T) {
	if (Band{1, 2}).Times(-2) != (Band{-4, -2}) || (Band{}).Known() || !One(3).Known() {
		t.Error("a band turned over")
	}
}
