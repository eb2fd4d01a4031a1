package sheet

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fettle/cmd/fettle/sketch"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/text"
)

// The examples of all rules hold set-ups of every kind, many of them wrong: level spindles, pieces that
// lean, rotary tables, faceplates, centres, steadies. Law: each is drawn, no text overlaps a text or a
// line, all lies on the sheet, and all sizes find their places.
func TestSetUpsOfEveryRuleAreDrawn(t *testing.T) {
	shop, err := os.ReadFile(filepath.Join(root, "rules", "example.hcl"))
	if err != nil {
		t.Fatal(err)
	}
	drawn, sizes := 0, 0
	for _, r := range rules.Catalogue() {
		for i, src := range []string{r.Trips, r.Sound} {
			b, _, err := schema.Load(text.Archive{"example/recipe.hcl": []byte(src), "shop/shop.hcl": shop}, "example", "shop")
			if err != nil || b.Unread {
				continue
			}
			tr, _, _ := choose.Choose(b, choose.Effort)
			for _, p := range tr.Parts {
				if p.End == nil {
					continue
				}
				for _, g := range settings(p) {
					for k := range 1 + len(g.cuts) + len(g.turns) {
						if g.unplayed(k) != "" {
							continue
						}
						s := g.setting(k)
						name := r.Name + " " + strconv.Itoa(i) + " " + s.Name + " " + strconv.Itoa(k)
						d, err := sketch.Set(s)
						if err != nil {
							t.Errorf("%s: %v", name, err)
							continue
						}
						drawn++
						for _, o := range d.Overlaps() {
							t.Errorf("%s: %s", name, o)
						}
						for _, o := range d.Struck() {
							t.Errorf("%s: %s", name, o)
						}
						outside(t, name, d)
						for _, v := range s.Panes {
							for _, x := range v.Gauges {
								sizes++
								if !strings.Contains(" "+joined(d)+" ", " "+x.Words+" ") {
									t.Errorf("%s: no room for %s", name, x.Words)
								}
							}
						}
					}
				}
			}
		}
	}
	if drawn < 800 || sizes < 2000 {
		t.Errorf("only %d drawings with %d sizes", drawn, sizes)
	}
}

func outside(t *testing.T, name string, d *sketch.Drawing) {
	t.Helper()
	for i := range d.Strokes {
		for _, p := range d.Strokes[i].Points {
			if !(p.X >= 0 && p.X <= d.Width && p.Y >= 0 && p.Y <= d.Height) {
				t.Errorf("%s: a line lies beside the sheet, at %v", name, p)
				return
			}
		}
	}
}
