package schema

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

func TestThumbs(t *testing.T) {
	rows := 0
	for _, f := range tableRows(t) {
		if f[0] == "shop" && f[1] == "rules_of_thumb" && f[2] != "" {
			rows++
		}
	}
	w := written{
		ShopItems:   []*model.Item{mkItem("rules_of_thumb", "", mkAttr("room", vNum(2)), mkAttr("burr", vNum(0.1)))},
		RecipeItems: []*model.Item{mkItem("rules_of_thumb", "", mkAttr("room", vNum(3)))},
	}
	got := bindThumbs(w)
	if len(got) != rows || rows < 40 {
		t.Errorf("%d limits of %d", len(got), rows)
	}
	isKnown(t, "room", got["room"], 3, model.Written)
	isKnown(t, "burr", got["burr"], 0.1, model.Written)
	isKnown(t, "thin_wall", got["thin_wall"], 0.5, model.Standing)
	for name, k := range got {
		if !k.Is() || math.IsNaN(k.V) || k.V <= 0 {
			t.Errorf("%s is %v", name, k)
		}
	}
}

// A limit in two blocks of one folder: the order of files must not settle which holds. The
// recipe's instead of the shop's is as it should be.
func TestThumbsGivenTwice(t *testing.T) {
	block := func(file, limit string) *model.Item {
		i := mkItem("rules_of_thumb", "", mkAttr(limit, vNum(2)))
		i.At.File, i.Attrs[0].At.File = file, file
		return i
	}
	w := written{Shop: mkItem("shop", "s"), ShopItems: []*model.Item{block("b.hcl", "room"), block("a.hcl", "room"), block("c.hcl", "burr")},
		RecipeItems: []*model.Item{block("r.hcl", "room")}}
	_, findings := bindBuild(w)
	if len(findings) != 1 || findings[0].Rule != slipGivenTwice || findings[0].Place.File != "b.hcl" || findings[0].Also[0].Place.File != "a.hcl" {
		t.Errorf("%+v", findings)
	}
}

func TestGeneralTolerance(t *testing.T) {
	for _, c := range []struct {
		v     model.Value
		class string
		half  float64
		ok    bool
	}{
		{vWord("ISO 2768-m"), "m", 0, true}, {vWord("ISO 2768-1 f"), "f", 0, true}, {vWord("ISO 2768-mK"), "m", 0, true},
		{vWord("ISO 2768"), "", 0, false}, {vWord("ISO 2768-x"), "", 0, false}, {vWord("ISO 286"), "", 0, false},
		{vWord("±0.005"), "", 0.005, true}, {vWord("+/-0.1"), "", 0.1, true}, {vWord("± 0.2 mm"), "", 0.2, true},
		{vWord("±x"), "", 0, false}, {vWord("0.1"), "", 0, false}, {vNum(0.1), "", 0, false}, {vWord(""), "", 0, false},
	} {
		g, wrong := generalTolerance(&c.v, drawing.Millimetre)
		if g.Class != c.class || math.Abs(g.Either-c.half) > 1e-12 || (wrong == "") != c.ok || (g.From == model.Written) != c.ok {
			t.Errorf("%+v: %+v, %q", c.v, g, wrong)
		}
	}
	v := vWord("±0.005")
	if g, _ := generalTolerance(&v, drawing.Inch); math.Abs(g.Either-0.127) > 1e-12 {
		t.Errorf("in inches: %v mm", g.Either)
	}
	v = vObj(mkAttr("general..xx", vNum(0.01)), mkAttr(".xxx", vNum(0.005)))
	if g, wrong := generalTolerance(&v, drawing.Millimetre); !slices.Equal(g.Places, []float64{0, 0, 0.01, 0.005}) || wrong != "" || g.From != model.Written {
		t.Errorf("by places: %+v, %q", g, wrong)
	}
	v = vObj(mkAttr("general.fine", vNum(0.01)))
	if g, wrong := generalTolerance(&v, drawing.Millimetre); wrong == "" {
		t.Errorf("read as %+v", g)
	}
}

// smallBuild is a recipe and a shop with a few of everything.
func smallBuild() written {
	w := written{Recipe: mkItem("recipe", "r", mkAttr("title", vWord("A thing")), mkAttr("shop", vWord("../shop")), mkAttr("general", vWord("ISO 2768-m"))),
		Shop: mkItem("shop", "attic", mkAttr("title", vWord("The attic")))}
	for n := range 20 {
		label := fmt.Sprintf("t%02d", 19-n)
		w.ShopItems = append(w.ShopItems,
			mkItem("vise", label, mkAttr("jaw_width", vNum(50))), mkItem("drill", label, mkAttr("diameter", vNum(float64(n+1)))), mkItem("end_mill", label, mkAttr("diameter", vNum(6))),
			mkItem("micrometer", label, mkAttr("range", vList(vNum(0), vNum(25)))), mkItem("arbor", label, mkAttr("seat", vNum(16))),
			mkItem("lathe", label), mkItem("mill", label), mkItem("stock", label, mkAttr("round", vNum(20))), mkItem("rotary_table", label))
		p := mkItem("part", label, mkAttr("length", vNum(30)))
		p.Items = []*model.Item{mkItem("hole", "a", mkAttr("into", vWord("top"))), mkItem("setup", "s", mkAttr("up", vWord("top")))}
		w.RecipeItems = append(w.RecipeItems, p)
	}
	w.RecipeItems = append(w.RecipeItems, mkItem("fit", "a"), mkItem("made", ""), mkItem("concession", "grip-too-shallow", mkAttr("because", vWord("tried"))),
		mkItem("house_rule", "h", mkAttr("says", vWord("no"))), mkItem("assembly", "z"), mkItem("nut", "special"))
	return w
}

func TestBindBuildWhateverTheOrder(t *testing.T) {
	w := smallBuild()
	b, findings := bindBuild(w)
	if len(findings) > 0 {
		t.Errorf("%v", findings)
	}
	if len(b.Shop.Cutters) != 40 || len(b.Shop.Machines) != 40 || len(b.Shop.All) != 181 || len(b.Parts) != 20 || len(b.Joints) != 2 {
		t.Errorf("%d cutters, %d machines, %d in all, %d parts, %d joints", len(b.Shop.Cutters), len(b.Shop.Machines), len(b.Shop.All), len(b.Parts), len(b.Joints))
	}
	if b.Recipe.Title != "A thing" || b.Recipe.General.Class != "m" || !slices.Equal(b.Recipe.Shops, []string{"../shop"}) || b.Shop.Label != "attic" {
		t.Errorf("%+v", b.Recipe)
	}
	if b.Parts[0].Label != "t00" || b.Shop.Cutters[0].Label != "t00" || b.Shop.Cutters[0].Kind != "drill" {
		t.Error("not sorted by label")
	}
	if len(b.Made) != 1 || len(b.Excused) != 1 || len(b.House) != 1 || b.House[0].Level.V != "advice" {
		t.Errorf("%d made, %d concessions, %d house rules", len(b.Made), len(b.Excused), len(b.House))
	}
	order := func(b *model.Build) (out []string) {
		for _, i := range b.Shop.All {
			out = append(out, i.Path())
		}
		for _, m := range b.Shop.Machines {
			out = append(out, m.Path())
		}
		for _, p := range b.Parts {
			out = append(out, p.Path())
		}
		for _, j := range b.Joints {
			out = append(out, j.Path())
		}
		return out
	}
	slices.Reverse(w.ShopItems)
	slices.Reverse(w.RecipeItems)
	again, _ := bindBuild(w)
	if !slices.Equal(order(b), order(again)) {
		t.Error("the order of files shows")
	}
	w.Recipe = mkItem("recipe", "r", mkAttr("general", vWord("fine")))
	if _, findings = bindBuild(w); len(findings) != 1 || findings[0].Level != finding.Stop || findings[0].Place != w.Recipe.Attrs[0].Value.At {
		t.Errorf("%+v", findings)
	}
}

func BenchmarkBindBuild(b *testing.B) {
	w := smallBuild()
	for b.Loop() {
		bindBuild(w)
	}
}
