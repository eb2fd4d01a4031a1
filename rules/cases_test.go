package rules_test

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/finding"
	"fettle/schema/mark"
	"fettle/schema/model"
	"fettle/schema/text"
)

// A rule's cases stand in testdata/rules/NAME.txtar: one small recipe a file, played in
// the shop of the examples, or in FILE.shop where the archive has one. Marks under a line
// give the exact place and sentence of the rule's findings; a recipe without marks must be
// silent. What other rules say of it does not count.
//
// A first line "# open FACT, FACT" says that the rule must come to no verdict, and for
// want of these facts. A line "# border NAME LO HI WANT: how WANT was worked out" makes a
// case whose border is looked for: every "{{NAME}}" in it is replaced by a figure, and
// halving between LO and HI must find the change from trouble to none within 0.001 of WANT.

var renew = flag.Bool("renew", false, "write the marks of the cases anew")

const casesFolder = "../testdata/rules"

// played is what one rule said of a recipe.
type played struct {
	build  *model.Build
	found  []finding.Finding
	kinds  map[rules.Kind]int
	lacks  map[string]bool
	slips  []finding.Finding
	result *rules.Result
}

func play(t *testing.T, rule string, recipe, shop string) played {
	t.Helper()
	files := text.Archive{"recipe/recipe.hcl": []byte(recipe), "shop/shop.hcl": []byte(shop)}
	b, slips, err := schema.Load(files, "recipe", "shop")
	if err != nil {
		t.Fatalf("%v", err)
	}
	p := played{build: b, slips: slips, kinds: map[rules.Kind]int{}, lacks: map[string]bool{}}
	trace, vs, _ := choose.Choose(b, choose.Effort)
	p.result = rules.Judge(trace, vs, "2026-11-25")
	for _, f := range p.result.Findings {
		if f.Rule == rule {
			p.found = append(p.found, f)
		}
		if f.Rule == rules.Fault {
			t.Errorf("%s", f.Says)
		}
	}
	for _, v := range vs {
		if v.Rule.Name == rule {
			p.kinds[v.Kind]++
			if v.Kind == rules.Open {
				for _, l := range v.Lacks {
					p.lacks[l.Fact] = true
				}
			}
		}
	}
	return p
}

// Every rule's smallest recipe trips it, and the same put right does not; both are read
// without a slip, and the second is asked.
func TestExamples(t *testing.T) {
	for _, r := range rules.Catalogue() {
		t.Run(r.Name, func(t *testing.T) {
			trips := play(t, r.Name, r.Trips, rules.ExampleShop)
			sound := play(t, r.Name, r.Sound, rules.ExampleShop)
			for _, f := range append(trips.slips, sound.slips...) {
				t.Errorf("the example does not read: %s", f.Says)
			}
			if len(trips.found) == 0 {
				t.Errorf("the smallest recipe does not trip it: %v", trips.kinds)
			}
			for _, f := range sound.found {
				t.Errorf("the recipe put right trips it: %s", f.Says)
			}
			if sound.kinds[rules.Clear] == 0 && r.OnBuild == nil && r.OnPart == nil && r.OnShop == nil {
				t.Errorf("the recipe put right is not found clear: %v %v", sound.kinds, sound.lacks)
			}
		})
	}
}

// The catalogue keeps its own promises.
func TestCatalogue(t *testing.T) {
	word := regexp.MustCompile(`^[a-z]+(-[a-z]+){1,4}$`)
	rows := regexp.MustCompile(`^[A-J][0-9]{1,2}$`)
	seen := map[string]bool{}
	for _, r := range rules.Catalogue() {
		on := 0
		for _, set := range []bool{r.OnShop != nil, r.OnPart != nil, r.OnHold != nil, r.OnCut != nil, r.OnMeasure != nil, r.OnJoint != nil, r.OnBuild != nil, r.OnHeat != nil, r.OnChuck != nil && r.OnHold == nil && r.OnCut == nil, r.OnTurn != nil && r.OnCut == nil} {
			if set {
				on++
			}
		}
		switch {
		case on != 1:
			t.Errorf("%s has %d checks; one is wanted", r.Name, on)
		case !word.MatchString(r.Name) || seen[r.Name]:
			t.Errorf("%q is no name, or there twice", r.Name)
		case r.Title == "" || r.Why == "" || len(r.Source) == 0 || r.Trips == "" || r.Sound == "":
			t.Errorf("%s lacks its title, why, source or example", r.Name)
		case r.Level < finding.Advice || r.Level > finding.Danger || r.Judgement == 0:
			t.Errorf("%s has no level or judgement", r.Name)
		case r.Judgement == finding.Thumb && len(r.Limits) == 0:
			t.Errorf("%s is a rule of thumb and names no limit", r.Name)
		case r.Level == finding.Danger && r.Caution == "":
			t.Errorf("%s is a danger and carries no caution", r.Name)
		}
		for _, row := range r.Rows {
			if !rows.MatchString(row) {
				t.Errorf("%s covers %q, which is no row", r.Name, row)
			}
		}
		seen[r.Name] = true
		if _, err := os.Stat(filepath.Join(casesFolder, r.Name+".txtar")); err != nil {
			t.Errorf("%s has no cases", r.Name)
		}
	}
}

func TestCases(t *testing.T) {
	files, err := filepath.Glob(casesFolder + "/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatal("no cases", err)
	}
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".txtar")
		t.Run(name, func(t *testing.T) {
			if rules.Find(name) == nil {
				t.Fatalf("no rule is called %s", name)
			}
			archive(t, file, name)
		})
	}
}

func archive(t *testing.T, file, rule string) {
	ar, err := txtar.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	shops := map[string]string{}
	for _, f := range ar.Files {
		if s, ok := strings.CutSuffix(f.Name, ".shop"); ok {
			shops[s] = string(f.Data)
		}
	}
	tripped, silent := 0, 0
	for i, f := range ar.Files {
		if strings.HasSuffix(f.Name, ".shop") {
			continue
		}
		shop, own := shops[f.Name]
		if !own {
			shop = rules.ExampleShop
		}
		t.Run(f.Name, func(t *testing.T) {
			if border(t, rule, f, shop) {
				tripped++
				silent++
				return
			}
			clean, want, err := mark.Read("recipe/recipe.hcl", f.Data)
			if err != nil {
				t.Fatal(err)
			}
			p := play(t, rule, string(clean), shop)
			for _, s := range p.slips {
				t.Errorf("the case does not read: %s", s.Says)
			}
			got := mark.Of(p.build.Sources, p.found)
			if *renew {
				ar.Files[i].Data = mark.Write(clean, got)
			} else {
				for _, d := range mark.Compare(want, got) {
					t.Error(d)
				}
			}
			open(t, p, f)
			if len(got) > 0 {
				tripped++
			} else {
				silent++
			}
		})
	}
	if tripped == 0 || silent == 0 {
		t.Errorf("%d cases trip the rule and %d do not; both are wanted", tripped, silent)
	}
	if *renew {
		if err := os.WriteFile(file, txtar.Format(ar), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

// open checks a case that is said to come to no verdict.
func open(t *testing.T, p played, f txtar.File) {
	line, _, _ := strings.Cut(string(f.Data), "\n")
	want, ok := strings.CutPrefix(line, "# open ")
	if !ok {
		if p.kinds[rules.Open] > 0 && p.kinds[rules.Trouble] == 0 {
			t.Errorf("the rule stays open for want of %v; say so in a first line \"# open …\"", p.lacks)
		}
		return
	}
	if p.kinds[rules.Open] == 0 {
		t.Errorf("the rule is not open: %v", p.kinds)
	}
	for _, fact := range strings.Split(want, ", ") {
		if !p.lacks[fact] {
			t.Errorf("the rule does not ask for %s, but for %v", fact, p.lacks)
		}
	}
}

var borderLine = regexp.MustCompile(`(?m)^# border (\w+) (\S+) (\S+) (\S+): (.+)$`)

// border looks for the border of a case by halving; false where the case has none.
func border(t *testing.T, rule string, f txtar.File, shop string) bool {
	m := borderLine.FindStringSubmatch(string(f.Data))
	if m == nil {
		return false
	}
	var n [3]float64
	for i := range n {
		x, err := strconv.ParseFloat(m[2+i], 64)
		if err != nil {
			t.Fatal(err)
		}
		n[i] = x
	}
	lo, hi, want := n[0], n[1], n[2]
	trouble := func(x float64) bool {
		fill := func(s string) string { return strings.ReplaceAll(s, "{{"+m[1]+"}}", fmt.Sprintf("%.6f", x)) }
		p := play(t, rule, fill(string(f.Data)), fill(shop))
		for _, s := range p.slips {
			t.Fatalf("the case does not read at %v: %s", x, s.Says)
		}
		return len(p.found) > 0
	}
	first := trouble(lo)
	if trouble(hi) == first {
		t.Fatalf("no border between %v and %v: trouble at both is %v", lo, hi, first)
	}
	for hi-lo > 0.0002 {
		mid := (lo + hi) / 2
		if trouble(mid) == first {
			lo = mid
		} else {
			hi = mid
		}
	}
	if got := (lo + hi) / 2; math.Abs(got-want) > 0.001 {
		t.Errorf("the border lies at %.4f, and was worked out as %.4f: %s", got, want, m[5])
	}
	return true
}
