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

// Of a tilt that a sine bar sets the sheet says how high it stands, what is wrung together for that and how
// far the angle may be off, and bar and gauges lie on the tray. At 20 degrees 100 sin 20 is 34.20201 mm;
// 0.005 mm of the centres times tan 20 over 100 mm are 3.75 seconds of arc, 0.002 mm of height over 100 mm
// times cos 20 are 4.4. At 60 degrees 86.60254 mm are 3.40955 in, of which 3.4095 in are made: 5.1 seconds,
// and 17.9 of the centres.
func TestSheetSaysWhatStandsUnderASineBar(t *testing.T) {
	sound := strings.ReplaceAll(rules.Find("sine-bar-not-close-enough").Sound, "by = 30", "by = 20")
	for _, c := range []struct{ name, recipe, wants string }{
		{"all is here", strings.Replace(sound, `"M47"`, `"M88"`, 1), `tilted: 20 degrees about y of the machine, anticlockwise looking against that axis
tilt set with: sine_bar.hundred, 34.202 mm under one roller
under the roller: 30 + 2 + 1.2 + 1.002 of slip_gauges.box
angle off by: 4 seconds of arc at most, by the stack and the error of the bar
tray: sine_bar.hundred
tray: slip_gauges.box
`},
		{"nothing says what the bar is off", strings.Replace(sound, "  error   = 0.005\n", "", 1), `tilted: 20 degrees about y of the machine, anticlockwise looking against that axis
tilt set with: sine_bar.hundred, 34.202 mm under one roller
under the roller: 25 + 8 + 1.2 of slip_gauges.box, 0.002 mm low
angle off by: 5 seconds of arc by the stack, besides what the bar is off, which nothing says
tray: sine_bar.hundred
tray: slip_gauges.box
`},
		{"of inch blocks", strings.Replace(strings.ReplaceAll(sound, "by = 20", "by = 60"), "M47", "E81", 1), `tilted: 60 degrees about y of the machine, anticlockwise looking against that axis
tilt set with: sine_bar.hundred, 86.603 mm under one roller
under the roller: 3 + 0.2 + 0.109 + 0.1005 in of slip_gauges.box, 0.0012 mm low
angle off by: 23 seconds of arc at most, by the stack and the error of the bar
tray: sine_bar.hundred
tray: slip_gauges.box
`},
		{"no gauges", strings.Replace(sound, `  set = "M47"`, "  set = \"M47\"\n  state = \"lent out\"", 1), `tilted: 20 degrees about y of the machine, anticlockwise looking against that axis
tilt set with: sine_bar.hundred, 34.202 mm under one roller
under the roller: NO SLIP GAUGES ARE HERE: something measured of that height
tray: sine_bar.hundred
tray: slip gauges for 34.202 mm MISSING
`},
		{"of a protractor", strings.Replace(sound, "sine_bar.hundred", "protractor.vernier", 1) + "\nprotractor \"vernier\" {\n  reads_to = 0.1\n}\n",
			`tilted: 20 degrees about y of the machine, anticlockwise looking against that axis
tilt set with: protractor.vernier
`},
	} {
		files := text.Archive{"recipe/recipe.hcl": []byte(c.recipe), "shop/shop.hcl": []byte(rules.ExampleShop)}
		page, err := Make(checked(t, files, "recipe", "shop"), Wanted{})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, b := range page.Blocks {
			for _, r := range b.Rows {
				if slices.Contains([]string{"tilted", "tilt set with", "under the roller", "angle off by"}, r[0]) {
					got += r[0] + ": " + r[1] + "\n"
				}
			}
		}
		for _, r := range tableAfter(page, "tray").Rows {
			if r[2] == "sets the tilt" || r[2] == "under the sine bar" {
				got += strings.TrimSpace("tray: "+r[1]+" "+r[4]) + "\n"
			}
		}
		if got != c.wants {
			t.Errorf("%s:\n%swant\n%s", c.name, got, c.wants)
		}
	}
}

// A size that is tried with slip gauges has its two stacks on the sheet, worked out by hand, and the set on the tray.
func TestSheetSaysWhatIsWrungTogether(t *testing.T) {
	height := strings.Replace(rules.Find("instrument-too-coarse").Sound, "micrometer.first", "slip_gauges.box", 1)
	box := func(recipe, state string) string {
		return recipe + "\nslip_gauges \"box\" {\n  set = \"M88\"\n  state = \"" + state + "\"\n}\n"
	}
	cut := strings.Index(height, "  hole \"pin\"")
	slot := height[:cut] + "  slot \"key\" {\n    into  = \"top\"\n    at    = { front = 3 }\n    width = \"6 +0.012/0\"\n    depth = 4\n  }\n\n  bench \"try\" {\n    measure {\n" +
		"      size = slot.key.width\n      with = slip_gauges.box\n    }\n  }\n}\n"
	for _, c := range []struct{ recipe, wants string }{
		{box(height, "here"), "gauges for the least: 10 + 8.5 + 1.48 of slip_gauges.box\ngauges for the most: 10 + 9 + 1.02 of slip_gauges.box\ntray: slip_gauges.box\n"},
		{box(slot, "lent out"), "goes in: 6 of slip_gauges.box\ndoes not go in: 4 + 1.01 + 1.002 of slip_gauges.box\ntray: slip_gauges.box MISSING\n"},
	} {
		files := text.Archive{"recipe/recipe.hcl": []byte(c.recipe), "shop/shop.hcl": []byte(rules.ExampleShop)}
		page, err := Make(checked(t, files, "recipe", "shop"), Wanted{})
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		for _, b := range page.Blocks {
			for _, r := range b.Rows {
				if slices.Contains([]string{"gauges for the least", "gauges for the most", "goes in", "does not go in"}, r[0]) {
					got += r[0] + ": " + r[1] + "\n"
				}
			}
		}
		for _, r := range tableAfter(page, "tray").Rows {
			if r[2] == "measuring" {
				got += strings.TrimSpace("tray: "+r[1]+" "+r[4]) + "\n"
			}
		}
		if got != c.wants {
			t.Errorf("\n%swant\n%s", got, c.wants)
		}
	}
}

// What hand work is held in is laid out too.
func TestTrayOfHandWork(t *testing.T) {
	for _, c := range []struct {
		hold string
		laid bool
	}{{"    hold = vise.small\n", true}, {"    hold = \"hand\"\n", false}} {
		recipe := `recipe "example" {
  units = "mm"
}

part "block" {
  material = "brass"
  length   = 40
  width    = 30
  height   = 20

  hole "a" {
    into     = "top"
    at       = [20, 15]
    diameter = 3
    depth    = 8
  }

  bench "hand work" {
` + c.hold + `    operation {
      makes = hole.a
      by    = "drilling"
    }
  }
}
`
		if got := strings.Contains(plain(sheetIn(t, recipe, rules.ExampleShop)), "| ☐ | vise.small | holds the work |"); got != c.laid {
			t.Errorf("%s: laid out %v", c.hold, got)
		}
	}
}

// Lines whose depth nobody says are not told to be nought deep.
func TestLinesOfUnknownDepth(t *testing.T) {
	scale := func(deep string) string {
		return strings.Replace(rules.Find("lines-fall-between").Sound, "spacing =", deep+"spacing =", 1)
	}
	const says = "how deep they are is not said"
	if s := plain(sheetIn(t, scale(""), rules.ExampleShop)); !strings.Contains(s, says) {
		t.Error("a depth that is not written")
	}
	if s := plain(sheetIn(t, scale("deep = 0.1\n    "), rules.ExampleShop)); strings.Contains(s, says) || !strings.Contains(s, "0.1 mm from") {
		t.Error("a depth that is written")
	}
}
