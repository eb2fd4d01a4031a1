package sheet

import (
	"regexp"
	"strings"
	"testing"

	"fettle/schema/text"
)

// pin is a part with every kind of work, and with a note wherever the language prints one.
const pin = `recipe "pin" {
  units = "mm"
  note  = "note of the recipe"
}

part "pin" {
  material = "silver steel"
  length   = 40
  width    = 20
  height   = 12
  note     = "note of the part"

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
    note = "note of the blank"
  }

  hole "one" {
    into     = "top"
    at       = { left = 10, front = 10 }
    diameter = 4
    note     = "note of the feature"
  }

  bench "set out" {
    note = "note of the bench"
    mark {
      out     = [hole.one]
      from    = [face.left, face.front]
      punched = true
      note    = "note of the marking"
    }
  }

  setup "drill" {
    hold    = vise.small
    machine = mill.own
    up      = "top"
    jaws    = "back"
    note    = "note of the set-up"
    operation {
      makes = hole.one
      by    = "spotting"
      tool  = drill.own
    }
    operation {
      makes = hole.one
      tool  = drill.own
      note  = "note of the operation"
    }
    deburr {
      edges = [face.top]
      note  = "note of the burrs"
    }
    measure {
      size = hole.one.diameter
      note = "note of the measuring"
    }
  }

  heat "hard" {
    does        = "harden"
    temperature = 790
    soak        = 6
    quench      = "water"
    zone        = [hole.one]
    note        = "note of the heat"
  }

  bench "polish" {
    deburr {}
  }
}
`

func pinSheet(t *testing.T, pictures bool) *Page {
	t.Helper()
	files := text.Archive{"r/pin.hcl": []byte(pin), "s/shop.hcl": own("0.02", "4")}
	return made(t, checked(t, files, "r", "s"), pictures)
}

// The contract has a note of each of these printed on the sheet, where it belongs.
func TestEveryNoteIsPrinted(t *testing.T) {
	page := pinSheet(t, false).Markdown()
	for _, of := range []string{"recipe", "part", "blank", "feature", "bench", "marking", "set-up", "operation", "burrs", "measuring", "heat"} {
		if n := strings.Count(page, "note of the "+of); n == 0 {
			t.Errorf("the note of the %s is not on the sheet", of)
		}
	}
}

// Hand work and heat stand where they are done, not behind the set-ups.
func TestWorkStandsInItsOrder(t *testing.T) {
	page := pinSheet(t, false).Markdown()
	last := 0
	for _, want := range []string{"bench set out", "Mark out hole.one", "lines from: face.left, face.front", "then: punch the centres", "setup drill", "edges: face.top",
		"heat hard", "790 °C", "at heat for: 6 min, as written", "quench: water", "only: hole.one", "Hot metal looks like cold metal", "bench polish", "Take the burrs off"} {
		i := strings.Index(page[last:], want)
		if i < 0 {
			t.Fatalf("no %q after what comes before it", want)
		}
		last += i
	}
}

// Spotting and drilling of one hole have one drawing, and the other operation says where it is.
func TestOneHoleIsDrawnOnce(t *testing.T) {
	page := pinSheet(t, true)
	drawn, ticks := 0, 0
	for i, b := range page.Blocks {
		if b.Kind == Picture && b.True && page.Blocks[i-1].Kind == Tick {
			drawn++
		}
		for _, r := range b.Rows {
			if b.Kind == Tick && r[0] == "drawing" {
				ticks++
				if r[1] != "that of 2" {
					t.Errorf("its drawing is %s", r[1])
				}
			}
		}
	}
	if drawn != 1 || ticks != 1 {
		t.Errorf("%d drawings, and %d operations that are drawn with another", drawn, ticks)
	}
}

// Whatever stands in a note shows as text.
func TestHostileNotes(t *testing.T) {
	hostile := `</div></dl><script>alert(1)</script> [a](b) \u202e ` + strings.Repeat("W", 300)
	files := text.Archive{"r/pin.hcl": []byte(strings.ReplaceAll(pin, `"note of the `, `"`+hostile)), "s/shop.hcl": own("0.02", "4")}
	p := made(t, checked(t, files, "r", "s"), true)
	page := p.HTML()
	for _, bad := range []string{"<script", "</div></dl>", "\u202e"} {
		if strings.Contains(page, bad) || strings.Contains(p.Markdown(), bad) {
			t.Errorf("%q came through", bad)
		}
	}
	if n := strings.Count(page, "&lt;script&gt;"); n < 11 {
		t.Errorf("%d of the notes are on the page", n)
	}
	wellFormed(t, page)
}

// What is opened in a page is closed, in its order.
func TestPageNests(t *testing.T) {
	for _, r := range recipes {
		recipe, shop := "recipes/"+r[0], "recipes/shops/"+r[1]
		page := made(t, checked(t, archive(t, recipe, shop), recipe, shop), true).HTML()
		var open []string
		for _, m := range regexp.MustCompile(`<(/?)(div|section|dl|dd|dt|figure|table|thead|tr|ul|li|p|label|span|details|svg|g)\b[^>]*?(/?)>`).FindAllStringSubmatch(page, -1) {
			switch {
			case m[3] == "/":
			case m[1] == "":
				open = append(open, m[2])
			case len(open) == 0 || open[len(open)-1] != m[2]:
				t.Fatalf("%s in %s: </%s> closes %v", r[0], r[1], m[2], open)
			default:
				open = open[:len(open)-1]
			}
		}
		if len(open) > 0 {
			t.Errorf("%s in %s: left open are %v", r[0], r[1], open)
		}
	}
}
