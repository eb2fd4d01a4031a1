package choose_test

import (
	"fmt"
	"math/rand"
	"regexp"
	"slices"
	"strings"
	"testing"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/finding"
	"fettle/schema/text"
)

// Laws over generated recipes: whole builds of milled blocks, posts and pins in the club's shop.

var (
	lengthsOf = regexp.MustCompile(`\b(length|width|height|edges|diameter|depth|to|from|leaves|grip|stick_out|down_to|size|left|right|front|back|top|bottom) = (-?[0-9.]+)`)
	classesOf = regexp.MustCompile(`"([0-9.]+) ([A-Za-z]+[0-9]+)"`)
)

// inInches writes a generated file for a folder that counts in inches: each length with its unit.
func inInches(mm []byte) []byte {
	s := strings.Replace(string(mm), `units = "mm"`, `units = "in"`, 1)
	s = lengthsOf.ReplaceAllString(s, "$1 = mm($2)")
	return []byte(classesOf.ReplaceAllString(s, `"$1 mm $2"`))
}

// Law: whichever unit its folder counts in, a build has the same findings with the same margins.
func TestUnitsAlikeGenerated(t *testing.T) {
	n := 0
	for seed := range int64(3) {
		files, _ := generated(seed+20, 52)
		inch := text.Archive{}
		for name, b := range files {
			inch[name] = inInches(b)
		}
		a, b := withMargins(t, files), withMargins(t, inch)
		if !slices.Equal(a, b) {
			t.Errorf("seed %d, in mm:\n%s\nin inches:\n%s", seed, strings.Join(a, "\n"), strings.Join(b, "\n"))
		}
		n += len(a)
	}
	if n == 0 {
		t.Error("nothing is found in any of them: the law was not tried")
	}
}

func checked(t *testing.T, files text.Archive) []finding.Finding {
	t.Helper()
	b, slips, err := schema.Load(withClub(t, files), "r", "recipes/shops/club")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips)
	}
	tr, vs, _ := choose.Choose(b, choose.Effort)
	return rules.Judge(tr, vs, "").Findings
}

// withMargins is what is found, without the words, which show both units in an inch folder.
func withMargins(t *testing.T, files text.Archive) (out []string) {
	for _, f := range checked(t, files) {
		out = append(out, fmt.Sprintf("%s | %s | %v | %.3f %.3f %s", f.Rule, f.Cause, f.Spots, f.Margin.Has, f.Margin.Wants, f.Margin.Unit))
	}
	slices.Sort(out)
	return out
}

var fromLeft = regexp.MustCompile(`at = \{ left = `)

// Law: milled blocks mirrored left to right have the same findings, but for what turns one way
// only: threads, and the sense of the spindle.
func TestMirroredAlikeGenerated(t *testing.T) {
	n := 0
	for seed := range int64(4) {
		w := &writer{r: rand.New(rand.NewSource(seed + 40))}
		w.milled("block")
		head := []byte("recipe \"made up\" {\n  units = \"mm\"\n  general = \"ISO 2768-m\"\n}\n")
		as := text.Archive{"r/head.hcl": head, "r/a.hcl": []byte(w.String())}
		other := text.Archive{"r/head.hcl": head, "r/a.hcl": fromLeft.ReplaceAll([]byte(w.String()), []byte("at = { right = "))}
		hands := func(rule string) bool { return rule != "nut-unwinds" && rule != "cutter-turns-backwards" }
		one, two := checked(t, as), checked(t, other)
		if a, b := told(one, hands), told(two, hands); a != b {
			t.Errorf("seed %d, as it is:\n%s\nmirrored:\n%s", seed, a, b)
		}
		n += len(one)
	}
	if n == 0 {
		t.Error("nothing is found in any of them: the law was not tried")
	}
}

// Law: what is chosen for one stretch of work, from the same piece, has no more dangers and stops
// against it with one more thing in the shop, as long as the effort is not spent: the choice is
// the least over a list that the thing makes longer. For a whole build that is no theorem, since
// a better choice may leave another piece behind; here it is tried on whole builds, part by part.
func TestMoreToolsNeverStopGenerated(t *testing.T) {
	more := map[string]string{
		"drills":     "drill \"aaa\" {\n  diameter = series(1, 13, 0.1)\n  series = \"stub\"\n  of = \"HSS\"\n}\n",
		"saw":        "slitting_saw \"aaa\" {\n  diameter = 80\n  width = 0.8\n  bore = 16\n  of = \"HSS\"\n}\n",
		"parallels":  "parallels \"aaa\" {\n  heights = series(2, 38, 1)\n  thickness = 3\n}\n",
		"vise":       "vise \"aaa\" {\n  jaw_width = 100\n  jaw_depth = 30\n  jaw_thickness = 15\n  opening = 100\n  bed = 40\n}\n",
		"tap":        "tap \"aaa\" {\n  threads = [\"M3\", \"M4\", \"M5\"]\n  leads = [\"bottoming\"]\n}\n",
		"bare tap":   "tap \"aaa\" {\n  threads = [\"M3\", \"M4\", \"M5\"]\n}\n",
		"mill":       "mill \"aaa\" {\n  taper = \"MT3\"\n  speeds = [200, 400, 800]\n}\n",
		"chuck":      "chuck \"aaa\" {\n  jaws = 3\n}\n",
		"lathe tool": "turning_tool \"aaa\" {\n}\n",
		"parting":    "parting_tool \"aaa\" {\n  width = 2\n}\n",
		"instrument": "micrometer \"aaa\" {\n  range = [0, 25]\n}\n",
		"reamer":     "reamer \"aaa\" {\n  diameter = [3, 4, 5, 6]\n}\n",
	}
	stops := func(fs []finding.Finding) map[string]int {
		out := map[string]int{}
		for _, f := range fs {
			if f.Level >= finding.Stop {
				for _, s := range f.Spots {
					out[s.Part]++
				}
			}
		}
		return out
	}
	files, _ := generated(60, 32)
	before := stops(checked(t, files))
	for name, block := range more {
		files["recipes/shops/club/aaa.hcl"] = []byte(block)
		for part, n := range stops(checked(t, files)) {
			if n > before[part] {
				t.Errorf("one more thing (%s), and %s has %d stops, before %d", name, part, n, before[part])
			}
		}
	}
}
