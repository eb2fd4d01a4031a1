package sheet

import (
	"strings"
	"testing"

	"fettle/rules"
	"fettle/schema/text"
)

// sheetOf is the sheet of an example of a rule in the shop of the examples, with words replaced.
func sheetOf(t *testing.T, recipe string, pairs ...string) string {
	t.Helper()
	for i := 0; i+1 < len(pairs); i += 2 {
		if !strings.Contains(recipe, pairs[i]) {
			t.Fatalf("%q is not in the example", pairs[i])
		}
		recipe = strings.Replace(recipe, pairs[i], pairs[i+1], 1)
	}
	files := text.Archive{"r/a.hcl": []byte(recipe), "s/a.hcl": []byte(rules.ExampleShop)}
	return made(t, checked(t, files, "r", "s"), false).Markdown()
}

func says(t *testing.T, page string, lines ...string) {
	t.Helper()
	for _, l := range lines {
		if !strings.Contains(page, l) {
			t.Errorf("the sheet does not say %q:\n%s", l, page)
		}
	}
}

// Feed, passes, fluid and the side that a cut begins at stand with the operation: as written, else as
// printed or usual. A drill of 6 mm in brass is fed 0.051 to 0.2 mm a turn by what is printed; at 1800
// turns a minute 0.1 mm makes 180 mm.
func TestFeedCutAndOil(t *testing.T) {
	hole := rules.Find("feed-too-coarse").Sound
	says(t, sheetOf(t, hole), "feed: 0.1 mm/rev, as written: 180 mm/min; printed are 0.051 to 0.2 mm/rev", "cutting fluid: dry")
	says(t, sheetOf(t, hole, `feed = "0.1 mm/rev"`, `oil = "paraffin"`), "feed: by hand, 0.051 to 0.2 mm/rev: 92 to 360 mm/min", "cutting fluid: paraffin")
	says(t, sheetOf(t, hole, `feed = "0.1 mm/rev"`, "", "hold      = vise.small", "hold      = vise.small\n    feed      = \"0.15 mm/rev\""), "feed: 0.15 mm/rev, as written: 270 mm/min")
	slot := rules.Find("pass-too-deep").Sound
	says(t, sheetOf(t, slot), "cut: 2 passes of 2 mm at most, for 4 mm in all, as written")
	says(t, sheetOf(t, slot, "cut   = 2", ""), "cut: 2 passes of 3 mm at most, for 4 mm in all")
	says(t, sheetOf(t, rules.Find("bore-does-not-fit").Sound), "cutting fluid: dry")
	ledge := rules.Find("down-to-no-floor").Sound
	says(t, sheetOf(t, ledge), "begins at: left, fed against the teeth")
	thread := rules.Find("wheels-cut-other-lead").Sound
	says(t, sheetOf(t, thread), "change wheels: 40/60 (drivers over driven), exact")
	says(t, sheetOf(t, thread, "[40, 60]", "[30, 60]"), "change wheels: 30/60 (drivers over driven): cuts 1.5 mm, 250000 parts in a million off")
}
