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
		if !strings.Contains(page, l) && !strings.Contains(page, "| "+strings.Replace(l, ": ", " | ", 1)) { // at the head of a set-up
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

// What only the hands can see to stands at the head of the set-up and beside the steps.
func TestWrittenByHand(t *testing.T) {
	hole := rules.Find("zero-lost").Sound
	said := func(attrs string, lines ...string) {
		says(t, sheetOf(t, hole, "    parallels = 10\n", "    parallels = 10\n    "+attrs+"\n"), lines...)
	}
	said("note = \"mind the scribed side\"", "note: mind the scribed side")
	said("zero = \"kept\"", "zero: kept from the set-up before")
	said("stuck_by = \"double-sided tape\"", "stuck by: double-sided tape")
	said("moved = true", "moved: the holding has been moved")
	said("true_to = face.back\n    within = 0.01", "set true by: face.back", "set true: to 0.01 mm")
	said("on_table = [250, 80]", "on the table: its middle 250 mm from the left end of the table and 80 mm from its front")
	said("packing = { above = 6 }", "on top: 6 mm of metal or wood, to be cut into")
	says(t, sheetOf(t, hole, "    parallels = 10\n", "    soft = { step = 6 }\n"), "soft jaws: with a step 6 mm above the bed")
	says(t, sheetOf(t, hole, "    operation {\n      makes = hole.pin\n", "    mark {\n      out = [hole.pin]\n      punched = true\n      from = [face.left]\n      note = \"thin lines\"\n    }\n    operation {\n      note  = \"slowly\"\n      makes = hole.pin\n"),
		"Mark out hole.pin", "punch the centres", "from: face.left", "note: thin lines", "note: slowly")
	clamps := rules.Find("clamp-over-nothing").Sound
	says(t, sheetOf(t, clamps, "    clamps = [", "    beside = \"the fence\"\n    clamps = ["), "clamp: 35 mm from the left end, 10 mm from the back", "lies against: the fence")
	says(t, sheetOf(t, clamps, "    operation {\n      makes = hole.pin", "    shift \"over\" {\n      clamps = [{ at = { left = 50, back = 12 }, tip = 8 }]\n    }\n    operation {\n      makes = hole.pin"), "setup drill, after shift over", "clamp: 50 mm from the left end, 12 mm from the back")
	says(t, sheetOf(t, rules.Find("soft-jaws-do-not-fit").Sound), "soft jaws: bored to ⌀20 under load, with a step 20 mm behind their face")
	heat := rules.Find("soaked-too-short").Sound
	says(t, sheetOf(t, heat), "at heat for: 20 min, as written")
	says(t, sheetOf(t, heat, "    soak = 20\n", "    quench = \"water\"\n"), "at heat for: 16 to 20 min, usual for 20 mm of thickness", "quench: water")
}

// Where work stands against an angle plate, and how the jaws press, stands at the head of the set-up.
func TestPutUpAgainst(t *testing.T) {
	plate := rules.Find("angle-plate-not-reached").Sound
	says(t, sheetOf(t, plate), "against: angle\\_plate.own", "against angle\\_plate.own: bottom on its upright, 35 mm in from its left end", "its foot: down on the table")
	says(t, sheetOf(t, plate, "    back    = \"bottom\"\n", "    back    = \"bottom\"\n    along   = -10\n    packing = { under = 10 }\n"), "10 mm out beyond its left end", "its foot: on packing of 10 mm")
	says(t, sheetOf(t, plate, "    back    = \"bottom\"\n", "    back    = \"bottom\"\n    free    = 12\n"), "its foot: 12 mm above the foot of the plate with nothing under it")
	hole := rules.Find("zero-lost").Sound
	if page := sheetOf(t, hole); strings.Contains(page, "pressing with") {
		t.Error("the sheet says how the jaws press, which nobody declared")
	}
	says(t, sheetOf(t, hole+"vise \"own\" {\n  jaw_width = 60\n  jaw_depth = 20\n  opening = 60\n  bed = 35\n  force = 9000\n}\n", "vise.small", "vise.own"), "vise.own | holds the work, pressing with 9000 N at your usual pull")
}

// Where one operation makes several holes each depth and size says of which; a length that is worked out in a
// recipe of inches is in inches.
func TestOfWhichAndInches(t *testing.T) {
	two := blockOf(holeOf("3", "8")+strings.Replace(strings.Replace(holeOf("3", "5"), `"a"`, `"b"`, 1), "left = 20", "left = 30", 1),
		operation("makes = [hole.a, hole.b]"))
	files := func(recipe string) string { return sheetIn(t, recipe, rules.ExampleShop) }
	says(t, files(two), "down, hole.a: 8.9", "down, hole.b: 5.9", "finished ⌀, hole.b: 3")
	if one := files(blockOf(holeOf("3", "8"), operation("makes = hole.a"))); strings.Contains(one, "down, hole") {
		t.Error("one hole is named though there is no other")
	}
	inches := files(`recipe "r" {
  units = "in"
}
part "p" {
  material = "brass"
  length   = inch(1) + 0.5
  width    = 1
  height   = 0.5
}
`)
	if !strings.Contains(inches, "| length | 1.5 in |") {
		t.Errorf("the length is not in inches:\n%s", inches)
	}
}
