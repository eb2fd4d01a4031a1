package sheet

import (
	"strings"
	"testing"

	"fettle/rules"
	"fettle/schema/text"
)

// pinOf is a turned part in the shop of the examples, with features and steps.
func pinOf(metal, features, steps string) string {
	return `recipe "r" {
  units = "mm"
}

part "pin" {
  material = "` + metal + `"
  diameter = 20
  length   = 60

  blank {
    over = { left = 1, right = 1, outside = 1 }
  }
` + features + `
  setup "turn" {
    machine   = lathe.centre
    hold      = chuck.three
    end       = "left"
    stick_out = 50
` + steps + `
  }
}
`
}

// blockOf is a milled part in a shop.
func blockOf(features, steps string) string {
	return `recipe "r" {
  units = "mm"
}

part "block" {
  material = "mild steel"
  length   = 40
  width    = 30
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
    skin = { bottom = "cast" }
  }
` + features + `
  setup "mill" {
    hold      = vise.small
    up        = "top"
    jaws      = "back"
    parallels = 8
` + steps + `
  }
}
`
}

func operation(lines ...string) string {
	return "\n    operation {\n      " + strings.Join(lines, "\n      ") + "\n    }\n"
}

func holeOf(diameter, depth string) string {
	return "\n  hole \"a\" {\n    into     = \"top\"\n    at       = { left = 20, front = 15 }\n    diameter = " + diameter + "\n    depth    = " + depth + "\n  }\n"
}

const waist = "\n  outside \"waist\" {\n    from     = 30\n    diameter = 16\n  }\n"

// sheetOf is the sheet of a recipe in a shop, without pictures.
func sheetIn(t *testing.T, recipe, shop string) string {
	t.Helper()
	files := text.Archive{"r/r.hcl": []byte(recipe), "s/s.hcl": []byte(shop)}
	return made(t, checked(t, files, "r", "s"), false).Markdown()
}

// A question stands on the sheet where it applies, and not where one thing is otherwise.
func TestAsked(t *testing.T) {
	shop := rules.ExampleShop
	inches := shop + "\ndrill \"fractions\" {\n  diameter = [\"1/8 in\", \"1/4 in\", \"3/8 in\"]\n}\n"
	parted := operation("makes = outside.waist") + operation("makes = face.left", `by = "parting"`)
	bar := func(s string) string { return strings.Replace(s, "over = { left = 1,", "bar  = true\n    over = {", 1) }
	for _, c := range []struct{ name, asked, where, elsewhere, shop, otherShop string }{
		{"chips at parting", "does the chip break?", bar(pinOf("mild steel", waist, parted)), bar(pinOf("brass", waist, parted)), shop, shop},
		{"chips out of a deep hole", "do the chips come out of the hole?", blockOf(holeOf("3", "15"), operation("makes = hole.a")),
			blockOf(holeOf("3", "14.9"), operation("makes = hole.a")), shop, shop},
		{"cross slide", "read the radius or the diameter?", pinOf("brass", waist, operation("makes = outside.waist")), pinOf("brass", waist, operation("makes = outside.waist")),
			strings.Replace(shop, `, reads = "diameter"`, "", 1), shop},
		{"casting", "rest on three places", blockOf(holeOf("6", "10"), operation("makes = hole.a")),
			strings.Replace(blockOf(holeOf("6", "10"), operation("makes = hole.a")), `skin = { bottom = "cast" }`, `skin = { top = "cast" }`, 1), shop, shop},
		{"head leans", "is the head square to the table", blockOf(holeOf("3", "15"), operation("makes = hole.a", "to = 2.8")+operation("makes = hole.a", "tool = reamer.machine[3]")),
			blockOf(holeOf("3", "15"), operation("makes = hole.a", "to = 2.8")+operation("makes = hole.a", "tool = reamer.machine[3]")), shop,
			strings.Replace(shop, "largest_drill = 13\n}", "largest_drill = 13\n  tilts         = 0\n}", 1)},
		{"twin in inches", "6.35 mm is here too", blockOf(holeOf("6.3", "10"), operation("makes = hole.a", "tool = drill.jobbers[6.3]")),
			blockOf(holeOf("5.9", "10"), operation("makes = hole.a", "tool = drill.jobbers[5.9]")), inches, inches},
		{"size of a fraction", "measures: 9.525 mm (0.3750 in); drill.jobbers[9.5]", blockOf(holeOf(`"3/8 in"`, "10"), operation("makes = hole.a", `tool = drill.fractions[inch(3/8)]`)),
			blockOf(holeOf("9.5", "10"), operation("makes = hole.a", `tool = drill.jobbers[9.5]`)), inches, inches},
	} {
		if got := plain(sheetIn(t, c.where, c.shop)); strings.Count(got, c.asked) != 1 {
			t.Errorf("%s: it stands %d times on the sheet", c.name, strings.Count(got, c.asked))
		}
		if got := plain(sheetIn(t, c.elsewhere, c.otherShop)); strings.Contains(got, c.asked) {
			t.Errorf("%s: asked where it does not apply", c.name)
		}
	}
}

// What lies at an angle to what another holding made is asked for; what the same holding makes, or the first
// of all, is not.
func TestAskedForTheAngle(t *testing.T) {
	hole := func(name, angle string) string {
		return "\n  hole \"" + name + "\" {\n    into     = \"outside\"\n    at       = [30, " + angle + "]\n    diameter = 4\n    depth    = 6\n  }\n"
	}
	setUp := func(name, up string, makes ...string) string {
		s := "\n  setup \"" + name + "\" {\n    machine = mill.bench\n    hold    = [v_block.pair, vise.small]\n    up      = \"" + up + "\"\n"
		for _, m := range makes {
			s += operation("makes = " + m)
		}
		return s + "  }\n"
	}
	recipe := func(work string) string {
		s := pinOf("brass", hole("a", "0")+hole("b", "180"), "")
		return s[:strings.Index(s, "\n  setup")] + work + "}\n\nv_block \"pair\" {\n  bars   = [5, 50]\n  height = 20\n  length = 40\n}\n"
	}
	const asked = "how does the piece come to lie at the right angle to hole.a"
	if got := sheetIn(t, recipe(setUp("one", "top", "hole.a")+setUp("two", "bottom", "hole.b")), rules.ExampleShop); strings.Count(got, asked) != 1 {
		t.Errorf("it stands %d times on the sheet: %s", strings.Count(got, asked), got)
	}
	for _, work := range []string{setUp("one", "top", "hole.a"), setUp("one", "top", "hole.a") + setUp("two", "bottom")} {
		if strings.Contains(sheetIn(t, recipe(work), rules.ExampleShop), asked) {
			t.Error("it is asked where nothing lies at an angle to it")
		}
	}
}

// plain takes the marks of Markdown off figures and names.
func plain(s string) string { return strings.ReplaceAll(s, `\`, "") }

// dialOf is the demo with a graduated dial, with one thing otherwise.
func dialOf(t *testing.T, old, new string) string {
	files := archive(t, "recipes/dial", "recipes/shops/club")
	if old != "" {
		found := false
		for name, raw := range files {
			if s := string(raw); strings.Contains(s, old) && strings.HasPrefix(name, "recipes/dial") {
				files[name], found = []byte(strings.Replace(s, old, new, 1)), true
			}
		}
		if !found {
			t.Fatalf("the dial does not say %q", old)
		}
	}
	return plain(made(t, checked(t, files, "recipes/dial", "recipes/shops/club"), false).Markdown())
}

// The lines of a scale and the way that it runs are asked for; a scale of one length of line needs no
// stop, and one that says which way it runs is not asked for it.
func TestScaleAsked(t *testing.T) {
	as := dialOf(t, "", "")
	for _, want := range []string{"lines: every 10 lines from the first 6 mm, every 5 lines from the first 4.5 mm, the others 3 mm",
		"runs: clockwise as seen from the right end; the first line looks to the top",
		"is there one stop with 3 settings", "which way are the figures to grow", "which way does the work turn when the crank goes clockwise?"} {
		if strings.Count(as, want) != 1 {
			t.Errorf("%d times on the sheet: %s", strings.Count(as, want), want)
		}
	}
	one := dialOf(t, `lines   = { "1" = 3, "5" = 4.5, "10" = 6 }`, `lines   = { "1" = 3 }`)
	if strings.Contains(one, "is there one stop") || !strings.Contains(one, "lines: every line 3 mm") {
		t.Error("a scale with one length of line is asked for a stop")
	}
	runs := dialOf(t, `lines   = {`, "runs    = \"anticlockwise\"\n    lines   = {")
	if strings.Contains(runs, "which way are the figures to grow") || !strings.Contains(runs, "runs: anticlockwise as seen from the right end") {
		t.Error("a scale that says which way it runs is asked for it")
	}
}
