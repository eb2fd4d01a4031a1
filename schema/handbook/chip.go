package handbook

import (
	"slices"
	"strings"
	"sync"
)

var oils = sync.OnceValue(func() []row { return load("oil").rows })

// Oil gives what is put on the cut by a process ("slitting_saw", "tapping", "threading", "reaming",
// "knurling"; any other word: what serves the rest) in a material's group, and where that is from.
// False where the table does not know the metal.
func Oil(process, group string) (fluid, source string, ok bool) {
	for _, p := range []string{process, "any"} {
		for _, r := range oils() {
			if r.text("process") == p && group != "" && slices.Contains(groups(r), group) {
				return r.text("fluid"), r.text("source"), true
			}
		}
	}
	return "", "", false
}

var passes = sync.OnceValue(func() []row { return load("pass").rows })

// PassDepth gives how deep one pass usually goes, mm on one side, at least and at most: of what cuts
// ("slot", "turning", "face"), what it is made of ("HSS", "carbide"), a material's group, and the
// diameter of the cutter, mm, which only a slot is reckoned by. False where the table has none.
func PassDepth(kind, tool, group string, diameter float64) (least, most float64, source string, ok bool) {
	for _, r := range passes() {
		if r.text("kind") != kind || !strings.EqualFold(r.text("tool"), tool) || group == "" || !slices.Contains(groups(r), group) {
			continue
		}
		k := 1.0
		if r.text("unit") == "x diameter" {
			k = diameter
		}
		return r.number("least") * k, r.number("most") * k, r.text("source"), k > 0
	}
	return 0, 0, "", false
}
