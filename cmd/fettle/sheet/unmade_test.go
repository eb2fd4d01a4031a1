package sheet

import (
	"strings"
	"testing"

	"fettle/rules"
	"fettle/schema/text"
)

// A feature that no work makes is not pointed at on the drawing of its part, which says so; a part that is
// bought is named as such.
func TestDrawingSaysWhatIsNotMade(t *testing.T) {
	const part = `recipe "example" {
  units = "mm"
}

part "base" {
  material = "brass"
  length   = 60
  width    = 40
  height   = 20

  blank {
    over = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  hole "made" {
    into     = "top"
    at       = [10, 10]
    diameter = 5
    depth    = 8
  }
  hole "other" {
    into     = "top"
    at       = [40, 20]
    diameter = 7
    depth    = 8
  }
`
	const work = `
  bench "hand work" {
    operation {
      makes = hole.made
      by    = "drilling"
    }
  }
`
	const pin = `
part "pin" {
  bought = true
}
`
	for _, c := range []struct{ name, recipe, has, not string }{
		{"one unmade", part + work + "}\n", "The part without hole.other, which no work of its own makes", "Ø7 ×"},
		{"the one that is made", part + work + "}\n", "Ø5 ×", "Ø7 ×"},
		{"no work", part + "}\n", "The raw piece, of which no work is written", "Ø5 ×"},
		{"bought", part + work + "}\n" + pin, "It is bought ready.", "Not made on paper: it is bought"},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := text.Archive{"r/r.hcl": []byte(c.recipe), "s/s.hcl": []byte(rules.ExampleShop)}
			html := made(t, checked(t, files, "r", "s"), true).HTML()
			if !strings.Contains(html, c.has) {
				t.Errorf("does not say %q", c.has)
			}
			if strings.Contains(html, c.not) {
				t.Errorf("says %q", c.not)
			}
		})
	}
}
