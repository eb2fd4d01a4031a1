package rules_test

import "testing"

// A hole that goes into no known surface leaves its depth open too: what is missed is told by the name of its
// face, and by nothing else.
func TestNamelessFact(t *testing.T) {
	p := play(t, "feature-not-possible", `recipe "example" {
  units = "mm"
}

part "pin" {
  material = "brass"
  diameter = 20
  length   = 30

  hole "cross" {
    into     = outside.none
    at       = [10, 0]
    diameter = 3
    depth    = 5
  }

  setup "drill" {
    hold = [v_block.own, vise.small]
    up   = "top"

    operation {
      makes = hole.cross
    }
  }
}

v_block "own" {
  bars   = [5, 50]
  height = 40
}
`, `shop "own" {
  units = "mm"
}

mill "own" {
  travel = [200, 100, 200]
}

vise "small" {
  jaw_width = 50
  opening   = 45
}
`)
	if len(p.result.Unknown) == 0 {
		t.Error("nothing is missed")
	}
	for _, w := range p.result.Unknown {
		if w.Fact == "" {
			t.Errorf("a fact without a name is missed, %d times", w.Settles)
		}
	}
}
