package finding

import (
	"testing"

	"fettle/schema/text"
)

// What is left over, as a share of what is wanted: nought on the border, below it past the
// border, whichever way the border is to be kept.
func TestShare(t *testing.T) {
	for _, c := range []struct {
		m    Margin
		want float64
	}{
		{Margin{Has: 6, Wants: 4, Unit: "mm"}, 0.5},
		{Margin{Has: 4, Wants: 4, Unit: "mm"}, 0},
		{Margin{Has: 3, Wants: 4, Unit: "mm"}, -0.25},
		{Margin{Has: 3, Wants: 4, Unit: "mm", Less: true}, 0.25},
		{Margin{Has: 5, Wants: 4, Unit: "mm", Less: true}, -0.25},
	} {
		if got := c.m.Share(); got != c.want {
			t.Errorf("%+v: %v, not %v", c.m, got, c.want)
		}
	}
}

// The identity of a finding is its rule, cause and labels, never its place in the file.
func TestIdentity(t *testing.T) {
	a := Finding{Rule: "r", Cause: "c", Spots: []Spot{{"p", "setup s", "step"}}, Place: text.Place{File: "a", From: 1, To: 2}}
	b := a
	b.Place, b.Says = text.Place{File: "b", From: 7, To: 9}, "other words"
	if a.ID() != b.ID() {
		t.Error("the place is part of the identity")
	}
	b.Spots = []Spot{{"p", "setup s", "other"}}
	if a.ID() == b.ID() {
		t.Error("the labels are not part of the identity")
	}
}

func TestLevels(t *testing.T) {
	for l := Advice; l <= Danger; l++ {
		if got, ok := ParseLevel(l.String()); !ok || got != l {
			t.Errorf("%v does not read back", l)
		}
	}
	var none Level
	if _, ok := ParseLevel(none.String()); ok {
		t.Error("the zero level is valid")
	}
}
