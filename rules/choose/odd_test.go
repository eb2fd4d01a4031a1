package choose_test

import (
	"fmt"
	"maps"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

var oneLine = regexp.MustCompile(`^(\s*[a-z_]+\s*=\s*)(\S.*)$`)

// Each line of a recipe and of its shop in turn with another value: whatever reads without a
// slip is made on paper without a fault, and within the effort of its parts.
func TestOddValuesPlayed(t *testing.T) {
	recipes, every := []string{"first"}, 3
	shop := map[string]string{"first": "bench", "jack": "club", "dial": "club", "tellurion": "club"}
	if os.Getenv("FETTLE_ODD") != "" { // by hand: all of them, each line
		recipes, every = []string{"first", "jack", "dial", "tellurion"}, 1
	}
	played := 0
	for _, recipe := range recipes {
		files := folders(t, "recipes/"+recipe+"/*.hcl", "recipes/shops/"+shop[recipe]+"/*.hcl")
		for name, src := range files {
			lines := strings.Split(string(src), "\n")
			for i, l := range lines {
				m := oneLine.FindStringSubmatch(l)
				if m == nil || strings.HasSuffix(m[2], "{") || i%every != 0 {
					continue
				}
				for _, v := range []string{"0", "-1", "0.001", "99999", "[]", "[1, 1]", "null"} {
					was := lines[i]
					lines[i] = m[1] + v
					odd := maps.Clone(files)
					odd[name] = []byte(strings.Join(lines, "\n"))
					lines[i] = was
					played += playOdd(t, fmt.Sprintf("%s line %d: %s%s", name, i+1, strings.TrimSpace(m[1]), v), odd, "recipes/"+recipe, "recipes/shops/"+shop[recipe])
				}
			}
		}
	}
	t.Log(played, "played")
	if played < 30 {
		t.Errorf("only %d values were played", played)
	}
}

func playOdd(t *testing.T, name string, files text.Archive, recipe, shop string) int {
	t.Helper()
	defer func() {
		if e := recover(); e != nil {
			t.Errorf("%s: %v", name, e)
		}
	}()
	b, slips, err := schema.Load(files, recipe, shop)
	if err != nil || b.Unread || len(slips) > 0 {
		return 0
	}
	const effort = 2000
	t0 := time.Now()
	tr, vs, _ := choose.Choose(b, effort)
	if os.Getenv("FETTLE_ODD") != "" && time.Since(t0) > time.Second {
		t.Log(name, time.Since(t0), tr.Moments)
	}
	if most := len(b.Parts) * (effort + 500); tr.Moments > most {
		t.Errorf("%s: %d moments", name, tr.Moments)
	}
	for _, f := range rules.Judge(tr, vs, "2026-11-25").Findings {
		if f.Rule == rules.Fault {
			t.Errorf("%s: %s", name, f.Says)
		}
		if strings.Contains(f.Says, "NaN") || strings.Contains(f.Says, "Inf") || strings.Contains(f.Says, "e+") || strings.Contains(f.Says, "%!") {
			t.Errorf("%s: %s", name, f.Says)
		}
	}
	return 1
}

// A hole so large that nothing is left of the piece: what would hold it, or turn it on, has nothing to
// say of it.
func TestNothingLeft(t *testing.T) {
	for _, c := range []struct{ recipe, shop, file, was, is string }{
		{"tellurion", "club", "wheel.hcl", `diameter = "12 H7"`, "diameter = 99999"},
		{"tellurion", "club", "wheel.hcl", "to      = 11.8", "to      = 99999"},
		{"first", "bench", "clamp.hcl", `to    = 7.8`, "to    = 99999"},
	} {
		files := folders(t, "recipes/"+c.recipe+"/*.hcl", "recipes/shops/"+c.shop+"/*.hcl")
		name := "recipes/" + c.recipe + "/" + c.file
		src := strings.Replace(string(files[name]), c.was, c.is, 1)
		if src == string(files[name]) {
			t.Fatalf("%s holds no %q", name, c.was)
		}
		files[name] = []byte(src)
		if playOdd(t, name+": "+c.is, files, "recipes/"+c.recipe, "recipes/shops/"+c.shop) == 0 {
			t.Errorf("%s with %s does not read", name, c.is)
		}
	}
}
