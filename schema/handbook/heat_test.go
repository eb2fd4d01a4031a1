package handbook

import (
	"testing"

	"fettle/schema/model"
)

// Every row of the tables of heat holds together: bands run upwards, a metal that hardens has
// a quench or says that it must be asked for, and hardening lies above tempering.
func TestHeatTable(t *testing.T) {
	for _, m := range Metals() {
		for what, b := range map[string]Degrees{"harden": m.Harden, "temper": m.Temper, "anneal": m.Anneal, "relieve": m.Relieve} {
			if b.Low > b.High || (b.Low == 0) != (b.High == 0) {
				t.Errorf("%s: %s %v", m.Name, what, b)
			}
			if m.Melts > 0 && b.High >= m.Melts {
				t.Errorf("%s: %s reaches %v and it melts at %v", m.Name, what, b.High, m.Melts)
			}
		}
		if m.Hardens() != (m.HRC > 0) || m.Hardens() && m.Temper.High >= m.Harden.Low {
			t.Errorf("%s: hardens %v, %v HRC, tempers %v", m.Name, m.Harden, m.HRC, m.Temper)
		}
		if _, ok := Material(m.Name); !ok {
			t.Errorf("%s is no material of the handbook", m.Name)
		}
	}
	for _, r := range load("solder").rows {
		if s, l := r.number("solidus"), r.number("liquidus"); s > l || (r.text("kind") == "soft") != (l < 450) && r.text("kind") != "aluminium" {
			t.Errorf("%s: %v to %v, %s", r.text("name"), s, l, r.text("kind"))
		}
	}
	seen := map[string]string{}
	for _, r := range load("solder").rows {
		for _, w := range append([]string{r.text("name")}, split(r.text("others"))...) {
			if other, ok := seen[key(w)]; ok && other != r.text("name") {
				t.Errorf("%q names %s and %s", w, other, r.text("name"))
			}
			seen[key(w)] = r.text("name")
		}
	}
}

func TestTemperature(t *testing.T) {
	for _, c := range []struct {
		s    string
		want Degrees
		ok   bool
	}{
		{"780", Degrees{780, 780}, true}, {"230..240", Degrees{230, 240}, true}, {"230 .. 240 C", Degrees{230, 240}, true},
		{"straw", Degrees{220, 235}, true}, {"Cherry Red", Degrees{730, 800}, true}, {"240..230", Degrees{}, false}, {"-5", Degrees{}, false},
		{"NaN", Degrees{}, false}, {"1e9", Degrees{}, false}, {"", Degrees{}, false}, {"warm", Degrees{}, false}, {"230..Inf", Degrees{}, false},
	} {
		if got, ok := Temperature(c.s); got != c.want || ok != c.ok {
			t.Errorf("%q: %v %v", c.s, got, ok)
		}
	}
}

// ISO 9453 gives 183 to 190 for Sn60Pb40, ISO 17672 630 to 660 for Ag 155 (from memory).
func TestSolders(t *testing.T) {
	for _, c := range []struct {
		name     string
		kind     string
		lo, high float64
	}{{"Sn60Pb40", "soft", 183, 190}, {"60/40", "soft", 183, 190}, {"Ag 155", "silver", 630, 660}, {"hard", "silver", 745, 778}} {
		if s, ok := SolderNamed(c.name); !ok || s.Kind != c.kind || s.Solidus != c.lo || s.Liquidus != c.high {
			t.Errorf("%s: %v %v", c.name, s, ok)
		}
	}
	if _, ok := SolderNamed("solder"); ok {
		t.Error("solder alone names no filler")
	}
	sol, liq, ok := SolderKind("soft")
	if !ok || sol != (Degrees{138, 296}) || liq != (Degrees{139, 301}) {
		t.Errorf("soft: %v %v", sol, liq)
	}
	if m, ok := HeatOf(model.Material{Name: "aluminium 6082"}); !ok || m.Name != "aluminium" {
		t.Errorf("6082: %v %v", m, ok)
	}
}

func FuzzTemperature(f *testing.F) {
	for _, s := range []string{"780", "230..240", "straw", "1e999", "..", "NaN..1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if b, ok := Temperature(s); ok && !(b.Low > 0 && b.Low <= b.High && b.High <= hottest) {
			t.Errorf("%q: %v", s, b)
		}
	})
}
