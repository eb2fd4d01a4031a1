package sheet

import (
	"os"
	"slices"
	"strings"
	"testing"

	"fettle/rules"
	"fettle/schema/text"
)

// What is bought is laid out with the tools: each thing once, with the joint that it is for, pins by the length that is
// taken, and marked where it is not here. A sheet of one part has what goes into that part alone.
func TestTrayHasWhatIsBought(t *testing.T) {
	b, err := os.ReadFile("../../../testdata/recipes/bought/bought.hcl")
	if err != nil {
		t.Fatal(err)
	}
	all := string(b)
	rows := func(recipe, part string) (out []string) {
		files := text.Archive{"recipe/recipe.hcl": []byte(recipe), "shop/shop.hcl": []byte(rules.ExampleShop)}
		c := checked(t, files, "recipe", "shop")
		page, err := Make(c, Wanted{Part: part})
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range tableAfter(page, "tray").Rows {
			if strings.HasPrefix(r[2], "bought, for ") {
				out = append(out, r[1]+" | "+strings.TrimPrefix(r[2], "bought, for ")+" | "+r[4])
			}
		}
		return out
	}
	race, pins, screw := "bearings.small | part.race | ", "pins.dowels[4], 16 mm long | fit.pins in the base | ", "M4x16 cap screw | screw.cap | "
	inCap := strings.ReplaceAll(pins, "base", "cap")
	for _, c := range []struct {
		recipe, part string
		want         []string
	}{
		{all, "", []string{race, pins, screw}},
		{all, "cap", []string{inCap, screw}},
		{all, "shaft", []string{"bearings.small | fit.inner ring | "}},
		{strings.ReplaceAll(all, `code = "608-2RS"`, "code = \"608-2RS\"\n  state = \"on order\""), "", []string{race + "MISSING", pins, screw}},
		{strings.ReplaceAll(all, "[10, 12, 16, 20, 24]", "[10, 12]"), "cap", []string{strings.ReplaceAll(inCap, "16", "12"), screw}},
		{all + "\nscrews \"box\" {\n  thread = \"M4\"\n  head = \"cap\"\n  lengths = [12, 16]\n}\n", "cap", []string{inCap, "M4x16 cap screw, of screws.box | screw.cap | "}},
		{all + "\nscrews \"box\" {\n  thread = \"M4\"\n  head = \"cap\"\n  lengths = [12, 20]\n}\n", "cap", []string{inCap, screw + "MISSING"}},
	} {
		if got := rows(c.recipe, c.part); !slices.Equal(got, c.want) {
			t.Errorf("of %q: %q, want %q", c.part, got, c.want)
		}
	}
}
