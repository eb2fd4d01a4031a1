package choose_test

import (
	"fmt"
	"math/rand"
	"sort"
	"strings"
	"testing"

	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/finding"
	"fettle/schema/text"
)

// Laws that hold for every recipe, tried on random ones from fixed seeds.

// block is a random milled part. Lengths are mm; sizes are whole multiples of 0.1 mm so that
// a drill is there for each hole.
type block struct {
	size  [3]float64
	holes []hole
	slot  *channel
	saw   *channel
	along float64
	grip  float64
}

type hole struct{ x, y, d, depth float64 }
type channel struct{ at, width, depth float64 }

func random(r *rand.Rand) block {
	tenth := func(lo, hi float64) float64 { return float64(int((lo+r.Float64()*(hi-lo))*10)) / 10 }
	b := block{size: [3]float64{tenth(20, 70), tenth(12, 40), tenth(8, 25)}, along: tenth(-10, 40), grip: tenth(2, 12)}
	for range 1 + r.Intn(3) {
		b.holes = append(b.holes, hole{tenth(2, b.size[0]-2), tenth(2, b.size[1]-2), tenth(1, 10), tenth(2, b.size[2]+4)})
	}
	if r.Intn(2) == 0 {
		b.slot = &channel{tenth(3, b.size[1]-3), []float64{3, 4, 5, 6, 8}[r.Intn(5)], tenth(1, b.size[2])}
	}
	if r.Intn(2) == 0 {
		b.saw = &channel{tenth(3, b.size[1]-3), 0.8, tenth(2, 22)}
	}
	return b
}

// written writes the recipe in a unit, as it is or mirrored left to right. The mirror takes
// the vise along: what overhung at the left overhangs at the right.
func (b block) written(inch, mirror bool) string {
	n := func(x float64) string {
		if inch {
			return fmt.Sprintf("%.10f", x/25.4)
		}
		return fmt.Sprintf("%.10f", x)
	}
	side := "left"
	along := b.along
	if mirror {
		side = "right"
		along = 60 - b.size[0] - b.along
	}
	unit := "mm"
	if inch {
		unit = "in"
	}
	var s strings.Builder
	fmt.Fprintf(&s, "recipe \"random\" {\n  units = %q\n}\n\npart \"block\" {\n  material = \"brass\"\n  length = %s\n  width = %s\n  height = %s\n"+
		"  blank {\n    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }\n  }\n",
		unit, n(b.size[0]), n(b.size[1]), n(b.size[2]))
	for i, h := range b.holes {
		fmt.Fprintf(&s, "  hole \"h%d\" {\n    into = \"top\"\n    at = { %s = %s, front = %s }\n    diameter = %s\n    depth = %s\n  }\n",
			i, side, n(h.x), n(h.y), n(h.d), n(h.depth))
	}
	if b.slot != nil {
		fmt.Fprintf(&s, "  slot \"way\" {\n    into = \"top\"\n    at = { front = %s }\n    width = %s\n    depth = %s\n  }\n", n(b.slot.at), n(b.slot.width), n(b.slot.depth))
	}
	if b.saw != nil {
		fmt.Fprintf(&s, "  slit \"cut\" {\n    into = %q\n    at = { front = %s }\n    width = %s\n    depth = %s\n  }\n", side, n(b.saw.at), n(b.saw.width), n(b.saw.depth))
	}
	fmt.Fprintf(&s, "  setup \"top\" {\n    hold = vise.small\n    up = \"top\"\n    jaws = \"back\"\n    grip = %s\n    along = %s\n", n(b.grip), n(along))
	for i := range b.holes {
		fmt.Fprintf(&s, "    operation {\n      makes = hole.h%d\n    }\n", i)
	}
	if b.slot != nil {
		s.WriteString("    operation {\n      makes = slot.way\n    }\n")
	}
	s.WriteString("  }\n")
	if b.saw != nil {
		fmt.Fprintf(&s, "  setup \"saw\" {\n    hold = vise.small\n    up = \"front\"\n    jaws = %q\n    grip = %s\n    along = %s\n    operation {\n      makes = slit.cut\n      holder = arbor.stub\n    }\n  }\n",
			"top", n(b.grip), n(along))
	}
	s.WriteString("}\n")
	return s.String()
}

func judged(t *testing.T, recipe, shop string) []finding.Finding {
	t.Helper()
	b, slips, err := schema.Load(text.Archive{"r/a.hcl": []byte(recipe), "s/a.hcl": []byte(shop)}, "r", "s")
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range slips {
		t.Fatalf("does not read: %s\n%s", s.Says, recipe)
	}
	tr, vs, _ := choose.Choose(b, choose.Effort)
	fs := rules.Judge(tr, vs, "").Findings
	for _, f := range fs {
		if f.Rule == rules.Fault {
			t.Fatalf("%s\n%s", f.Says, recipe)
		}
	}
	return fs
}

// told reduces findings to what must agree: rule, level and places in the work.
func told(fs []finding.Finding, only func(rule string) bool) string {
	var out []string
	for _, f := range fs {
		if only == nil || only(f.Rule) {
			out = append(out, fmt.Sprint(f.Rule, f.Level, f.Spots))
		}
	}
	sort.Strings(out)
	return strings.Join(out, "\n")
}

const rounds = 60

// Law 1: inches or millimetres, the findings are the same.
func TestInchAndMillimetreAlike(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	found := 0
	for range rounds {
		b := random(r)
		mm, in := judged(t, b.written(false, false), rules.ExampleShop), judged(t, b.written(true, false), rules.ExampleShop)
		if a, c := told(mm, nil), told(in, nil); a != c {
			t.Fatalf("in mm:\n%s\nin inches:\n%s\n%s", a, c, b.written(false, false))
		}
		found += len(mm)
	}
	if found == 0 {
		t.Error("the random recipes trip nothing: the law was not tried")
	}
}

// Law 2: a mirrored part gives mirrored findings for all but threads and the sense of the
// spindle. (The choice of a face for the fixed jaw is written in these recipes.)
func TestMirroredAlike(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	for range rounds {
		b := random(r)
		one, two := judged(t, b.written(false, false), rules.ExampleShop), judged(t, b.written(false, true), rules.ExampleShop)
		hands := func(rule string) bool { return rule != "nut-unwinds" && rule != "cutter-turns-backwards" }
		if a, c := told(one, hands), told(two, hands); a != c {
			t.Fatalf("as it is:\n%s\nmirrored:\n%s\n%s", a, c, b.written(false, false))
		}
	}
}

// Law 3: the order of files and of things in the shop does not matter.
func TestOrderOfFilesAlike(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for range 20 {
		b := random(r)
		recipe := b.written(false, false)
		head, part, _ := strings.Cut(recipe, "\npart ")
		things := strings.Split(rules.ExampleShop, "\n\n")
		r.Shuffle(len(things), func(i, j int) { things[i], things[j] = things[j], things[i] })
		files := text.Archive{"r/b.hcl": []byte(head), "r/a.hcl": []byte("part " + part),
			"s/x.hcl": []byte(strings.Join(things[:10], "\n\n")), "s/a.hcl": []byte(strings.Join(things[10:], "\n\n"))}
		build, _, err := schema.Load(files, "r", "s")
		if err != nil {
			t.Fatal(err)
		}
		tr, vs, _ := choose.Choose(build, choose.Effort)
		a, c := told(judged(t, recipe, rules.ExampleShop), nil), told(rules.Judge(tr, vs, "").Findings, nil)
		if a != c {
			t.Fatalf("in one file:\n%s\nshuffled:\n%s\n%s", a, c, recipe)
		}
	}
}

// Law 4: one more tool in the drawer never makes a choice worse.
func TestMoreToolsNeverWorse(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	more := []string{
		"\nslitting_saw \"great\" {\n  diameter = 80\n  width = 0.8\n  bore = 16\n  of = \"HSS\"\n}\n",
		"\nslot_drill \"ready\" {\n  diameter = series(3, 10, 0.5)\n  of = \"HSS\"\n  shank = 10\n  overall = 80\n  flute_length = 30\n}\n",
		"\nparallels \"all\" {\n  heights = series(2, 18, 1)\n  thickness = 3\n}\n",
		"\ndrill \"stubs\" {\n  diameter = series(1, 13, 0.1)\n  series = \"stub\"\n  of = \"HSS\"\n}\n",
		"\nvise \"large\" {\n  jaw_width = 100\n  jaw_depth = 30\n  jaw_thickness = 15\n  opening = 100\n  bed = 40\n}\n",
	}
	weigh := func(fs []finding.Finding) (n [5]int) {
		for _, f := range fs {
			for range f.Spots {
				n[f.Level]++
			}
		}
		return n
	}
	worse := func(a, b [5]int) bool { // b worse than a
		if x, y := a[finding.Danger]+a[finding.Stop], b[finding.Danger]+b[finding.Stop]; x != y {
			return y > x
		}
		return b[finding.Scrap] > a[finding.Scrap]
	}
	for i := range rounds {
		b := random(r)
		recipe := strings.ReplaceAll(b.written(false, false), "    hold = vise.small\n", "")
		recipe = strings.ReplaceAll(recipe, "      holder = arbor.stub\n", "")
		few, many := weigh(judged(t, recipe, rules.ExampleShop)), weigh(judged(t, recipe, rules.ExampleShop+more[i%len(more)]))
		if worse(few, many) {
			t.Errorf("with %s worse: %v, before %v\n%s", strings.Fields(more[i%len(more)])[0], many, few, recipe)
		}
	}
}
