package sheet

import (
	"strings"
	"testing"

	"fettle/rules"
	"fettle/schema/text"
)

const askedOf = `recipe "true" {
  units = "mm"
}

part "collar" {
  material = "mild steel"
  diameter = 40
  length   = 20
  hardness = "150 HB"
  finish   = "Ra 3.2"
  edges    = 0.2

  blank {
    over = { left = 1, right = 30, outside = 1 }
  }

  face "right" {
    flat   = 0.05
    finish = "Ra 1.6"
  }

  bore "seat" {
    into     = "right"
    diameter = 20
    runout   = { to = face.outside, within = 0.05, over = "whole length" }
  }

  graduations "scale" {
    on         = face.outside
    count      = 50
    from       = face.right
    lines      = { "1" = 3, "5" = 4.5 }
    line_width = 0.15
    deep       = 0.2
    figures    = { every = 10, first = 0, step = 0.5, height = 2, runs = "anticlockwise", seen_from = face.left, feet = face.right }
  }

  setup "turn" {
    machine = lathe.centre
    hold    = chuck.three
    end     = "left"
    grip    = 15

    operation {
      makes = face.right
    }
    operation {
      makes = face.outside
    }
  }
}

concession "feature-never-made" {
  at      = part.collar
  because = "the dial is engraved by a friend"
  by      = "the owner"
  until   = "2030-01-01"
}
`

// What a drawing asks besides its sizes stands on the sheet of the part, with the step that worked each
// surface last; what a concession accepts stands there with its reason.
func TestWhatIsAsked(t *testing.T) {
	c := checked(t, text.Archive{"recipe/a.hcl": []byte(askedOf), "shop/a.hcl": []byte(rules.ExampleShop)}, "recipe", "shop")
	for i := range c.Findings {
		if len(c.Findings[i].Spots) == 0 {
			t.Fatalf("the recipe does not read: %s", c.Findings[i].Says)
		}
	}
	got := made(t, c, false).Markdown()
	for _, want := range []string{
		"hardness 150 HB; finish of all that says no other: Ra 3.2; edges broken 0.2 mm",
		"| face.right | flat | 0.05 |  | facing, setup turn |",
		"| face.right | Ra 1.6 |  |  | facing, setup turn |",
		"| bore.seat | run-out over the whole length | 0.05 | outside |  |",
		"| graduations.scale | lines 0.15 mm wide, 0.2 mm deep |",
		"figures 0, 0.5 and so on, growing anticlockwise, read from face.left; their feet towards face.right",
		"Accepted, feature-never-made: the dial is engraved by a friend (accepted by the owner, until 2030-01-01).",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
	if t.Failed() {
		t.Log(got)
	}
}

const alongOf = `recipe "barrel" {
  units = "mm"
}

part "barrel" {
  material = "mild steel"
  diameter = 20
  length   = 80

  blank {
    over = { left = 0, right = 0, outside = 0 }
  }

  graduations "scale" {
    on      = "outside"
    from    = "back"
    count   = 4
    spacing = "1 ±0.01"
    zero_at = { right = 5 }
    runs    = "left"
    lines   = { "1" = 3, "2" = 4.5 }
  }

  setup "rule" {
    machine   = lathe.centre
    hold      = chuck.three
    end       = "left"
    stick_out = 40

    operation {
      makes = graduations.scale
      tool  = threading_tool.point
    }
  }
}

threading_tool "point" {
  angle = 60
  shank = 6
  of    = "HSS"
}
`

// A scale along a turned part stands on the sheet with the place of its first line, the way of the others, and
// how far the work is turned for each: 3 mm round 10 mm of radius are 17.2 degrees.
func TestScaleAlongOnTheSheet(t *testing.T) {
	mill := strings.NewReplacer("lathe.centre", "mill.bench", "chuck.three\n", "dividing_head.own\n    carries = chuck.three\n").Replace(alongOf) +
		"\ndividing_head \"own\" {\n  ratio         = 40\n  centre_height = 80\n  nose          = \"M39x4\"\n}\n"
	both := []string{
		"each line: the point stands still at its place",
		"| 1 | 0 | 4.5 | 25.8 |", "| 2 | 1 | 3 | 17.2 |", "| 5 | 4 | 4.5 | 25.8 |",
		"to the left, held with the line that its lines begin at, 90 degrees from top towards back, below",
	}
	for _, c := range []struct {
		recipe string
		wants  []string
	}{
		{alongOf, append(both, "first line: 35 mm from the jaw face", "4 more, towards the headstock")},
		{mill, append(both, "first line: x 5, y 0, over the axis", "4 more, in x, to the left")},
	} {
		got := plain(sheetIn(t, c.recipe, rules.ExampleShop))
		for _, want := range c.wants {
			if !strings.Contains(got, want) {
				t.Errorf("the sheet does not say %q: %s", want, got)
			}
		}
	}
}

// Work on an angle plate stands on the sheet with the height of the foot under the axis and with what hangs on the
// nose: 0.942 kg of steel, 0.65 of the plate and 6 of the faceplate.
func TestAnglePlateOnTheSheet(t *testing.T) {
	sound := ""
	for _, r := range rules.Catalogue() {
		if r.Name == "angle-plate-does-not-carry" {
			sound = r.Sound
		}
	}
	shop := strings.Replace(rules.ExampleShop, "faceplate \"plate\" {", "faceplate \"plate\" {\n  mass = 6", 1)
	got := plain(sheetIn(t, sound, shop))
	for _, want := range []string{
		"| towards the plate | left |",
		"| on the angle plate | angle_plate.own, its upright bolted to the faceplate, the bottom face on its foot |",
		"| its foot | 25 mm from the axis",
		"| on the nose | 7.59 kg together",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("the sheet does not say %q: %s", want, got)
		}
	}
}
