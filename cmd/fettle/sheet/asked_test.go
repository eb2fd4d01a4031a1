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
