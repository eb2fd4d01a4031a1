package sheet

import (
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

var renew = flag.Bool("renew", false, "write the expected drawings anew")

const root = "../../.."

// recipes are those whose every set-up is drawn.
var recipes = [][2]string{{"first", "bench"}, {"jack", "club"}, {"dial", "club"}, {"tellurion", "club"}, {"first", "attic"}, {"jack", "attic"}, {"dial", "attic"}}

func archive(t testing.TB, folders ...string) text.Archive {
	t.Helper()
	out := text.Archive{}
	for _, folder := range folders {
		files, err := filepath.Glob(filepath.Join(root, folder, "*.hcl"))
		if err != nil || len(files) == 0 {
			t.Fatal(folder, err)
		}
		for _, f := range files {
			raw, err := os.ReadFile(f)
			if err != nil {
				t.Fatal(err)
			}
			out[folder+"/"+filepath.Base(f)] = raw
		}
	}
	return out
}

func played(t *testing.T, recipe, shop string) *eval.Trace {
	t.Helper()
	recipe, shop = "recipes/"+recipe, "recipes/shops/"+shop
	b, _, err := schema.Load(archive(t, recipe, shop), recipe, shop)
	if err != nil {
		t.Fatal(err)
	}
	trace, _, _ := choose.Choose(b, choose.Effort)
	return trace
}

// every draws all that there is to draw of a recipe in a shop: parts, set-ups, operations.
func every(t *testing.T, tr *eval.Trace, see func(name string, a Asked, d *sketch.Drawing)) {
	t.Helper()
	for _, p := range tr.Parts {
		if p.End == nil {
			continue
		}
		asked := []Asked{{Part: p.Part.Label}, {Part: p.Part.Label, Projection: sketch.ThirdAngle}}
		for _, g := range settings(p) {
			for k := range 1 + len(g.cuts) + len(g.turns) {
				if g.unplayed(k) == "" {
					asked = append(asked, Asked{Part: p.Part.Label, SetUp: g.name, Step: k})
					if g.chuck != nil && k > 0 {
						asked = append(asked, Asked{Part: p.Part.Label, SetUp: g.name, Step: k, Brief: true})
					}
				}
			}
		}
		for _, a := range asked {
			d, err := Draw(tr, a)
			name := fmt.Sprintf("%s %s %d", a.Part, a.SetUp, a.Step)
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			see(name, a, d)
		}
	}
}

// Law: whatever is drawn of a build, no text overlaps a text or a wide line, all of it lies on the
// sheet, and a second drawing has the same bytes.
func TestEverySetUpIsDrawn(t *testing.T) {
	drawn := 0
	for _, r := range recipes {
		tr := played(t, r[0], r[1])
		every(t, tr, func(name string, a Asked, d *sketch.Drawing) {
			drawn++
			for _, o := range d.Overlaps() {
				t.Errorf("%s in %s, %s: %s", r[0], r[1], name, o)
			}
			for i := range d.Strokes {
				for _, p := range d.Strokes[i].Points {
					if !(p.X >= 0 && p.X <= d.Width && p.Y >= 0 && p.Y <= d.Height) {
						t.Errorf("%s in %s, %s: a line lies beside the sheet, at %v", r[0], r[1], name, p)
						break
					}
				}
			}
			if len(d.Strokes) < 4 {
				t.Errorf("%s: only %d lines", name, len(d.Strokes))
			}
			if again, err := Draw(tr, a); err != nil || again.SVG() != d.SVG() {
				t.Errorf("%s: drawn twice it differs (%v)", name, err)
			}
		})
	}
	if drawn < 100 {
		t.Errorf("only %d drawings", drawn)
	}
}

// What the drawing of a vise says of heights is what the dry run says.
func TestHeightsAreThoseOfTheDryRun(t *testing.T) {
	seen := 0
	for _, r := range recipes {
		for _, p := range played(t, r[0], r[1]).Parts {
			for _, g := range settings(p) {
				h := g.hold
				if h == nil || h.Unplayed != "" || h.Choice.Vise == nil || !h.JawTop.Is() {
					continue
				}
				d, err := sketch.Set(Milled(h, nil))
				if err != nil {
					t.Fatal(err)
				}
				want := sketch.Figure(math.Round((h.Hi[2]-h.JawTop.V)*100) / 100)
				found := math.Abs(h.Hi[2]-h.JawTop.V) <= 0.05
				for _, w := range d.Texts {
					found = found || w.Words == want
				}
				if !found {
					t.Errorf("%s: the piece stands %s mm above the jaws, and the drawing does not say so", h.Spot, want)
				}
				seen++
			}
		}
	}
	if seen < 5 {
		t.Errorf("only %d vises seen", seen)
	}
}

func TestExpectedSettings(t *testing.T) {
	for _, c := range []struct {
		file, recipe, shop string
		asked              Asked
	}{
		{"setting-bore", "first", "bench", Asked{Part: "clamp", SetUp: "bore", Step: 1}},
		{"setting-split", "first", "bench", Asked{Part: "clamp", SetUp: "split", Step: 1}},
		{"setting-lathe", "jack", "club", Asked{Part: "screw", SetUp: "from the bar", Step: 1}},
		{"setting-head", "jack", "club", Asked{Part: "screw", SetUp: "cross hole", Step: 1}},
		{"part-screw", "jack", "club", Asked{Part: "screw"}},
	} {
		d, err := Draw(played(t, c.recipe, c.shop), c.asked)
		if err != nil {
			t.Error(err)
			continue
		}
		path := filepath.Join(root, "testdata", "sketch", c.file+".svg")
		if *renew {
			if err := os.WriteFile(path, []byte(d.SVG()), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if d.SVG() != string(want) {
			t.Errorf("%s.svg differs: go test -run Expected -renew, and look at it", c.file)
		}
	}
}

// What is not there is said in a sentence that names what is.
func TestNothingToDraw(t *testing.T) {
	tr := played(t, "jack", "club")
	for want, a := range map[string]Asked{
		"name the part to draw with --part; there are bar, base, cap, screw":                               {},
		`there is no part "x"; there are bar, base, cap, screw`:                                            {Part: "x"},
		`part "screw" has no set-up "x" that is made on paper; there are from the bar, spigot, cross hole`: {Part: "screw", SetUp: "x"},
		"setup spigot has 3 operations; there is no operation 9":                                           {Part: "screw", SetUp: "spigot", Step: 9},
	} {
		_, err := Draw(tr, a)
		if err == nil || err.Error() != want {
			t.Errorf("%v: %v, want %s", a, err, want)
		}
	}
}
