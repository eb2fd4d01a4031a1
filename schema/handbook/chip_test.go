package handbook

import "testing"

// Every metal of the tables of speeds has a word on what goes on the cut and how deep a pass goes; one
// that is not known has none.
func TestEveryMetalHasOilAndPass(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range speeds() {
		seen[s.Group] = true
	}
	if len(seen) < 11 {
		t.Fatal("groups:", seen)
	}
	for g := range seen {
		for _, p := range []string{"slitting_saw", "tapping", "milling", "turning", "drilling"} {
			if words, from, ok := Oil(p, g); !ok || words == "" || from == "" {
				t.Errorf("nothing goes on %s of %s", p, g)
			}
		}
		for _, kind := range []string{"slot", "turning", "face"} {
			if lo, hi, _, ok := PassDepth(kind, "HSS", g, 10); !ok || !(lo > 0 && lo < hi && hi <= 5) {
				t.Errorf("%s of %s: %v to %v", kind, g, lo, hi)
			}
		}
	}
	if _, _, ok := Oil("milling", ""); ok {
		t.Error("a metal that is not known has its oil")
	}
	// Half the diameter at most, printed for aluminium; of brass a saw runs dry.
	if _, hi, _, _ := PassDepth("slot", "hss", "aluminium", 6); hi != 3 {
		t.Error("a pass of 6 mm in aluminium:", hi)
	}
	if words, _, _ := Oil("slitting_saw", "brass_free_cutting"); words != "dry" {
		t.Error(words)
	}
	if words, _, _ := Oil("slitting_saw", "steel_mild"); words != "cutting oil" {
		t.Error(words)
	}
}
