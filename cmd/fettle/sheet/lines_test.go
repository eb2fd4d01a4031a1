package sheet

import (
	"slices"
	"strings"
	"testing"

	"fettle/cmd/fettle/sketch"
)

// Of every set-up of every recipe: no line of any kind runs through a text, every size and every
// figure that the setting has is on the drawing, and so is the name of every thing that a view shows.
func TestAllThatASettingHasIsDrawn(t *testing.T) {
	gauges, passes, tags := 0, 0, 0
	for _, r := range recipes {
		for _, p := range played(t, r[0], r[1]).Parts {
			for _, g := range settings(p) {
				for k := range 1 + len(g.cuts) + len(g.turns) {
					if p.End == nil || g.unplayed(k) != "" {
						continue
					}
					s := g.setting(k)
					d, err := sketch.Set(s)
					if err != nil {
						t.Fatal(err)
					}
					for _, o := range d.Struck() {
						t.Errorf("%s %d: %s", g.name, k, o)
					}
					all := joined(d)
					for _, v := range s.Panes {
						for _, x := range v.Gauges {
							gauges++
							if !slices.ContainsFunc(d.Texts, func(w sketch.Text) bool { return w.Words == x.Words }) {
								t.Errorf("%s in %s, %s: the size %s is not on the drawing", r[0], r[1], s.Name, x.Words)
							}
						}
						for _, x := range v.Passes {
							passes++
							if !strings.Contains(all, x.Words) {
								t.Errorf("%s in %s, %s: %q is not on the drawing", r[0], r[1], s.Name, x.Words)
							}
						}
						for _, x := range v.Tags {
							tags++
							if !strings.Contains(all, x.Words) {
								t.Errorf("%s in %s, %s: %q is not on the drawing", r[0], r[1], s.Name, x.Words)
							}
						}
					}
				}
			}
		}
	}
	if gauges < 200 || passes < 100 || tags < 200 {
		t.Errorf("only %d sizes, %d rooms and %d tags", gauges, passes, tags)
	}
}
