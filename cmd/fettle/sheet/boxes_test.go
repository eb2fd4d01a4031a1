package sheet

import (
	"slices"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/eval/solid"
)

// A step that makes several holes has a box for each, and for the least and the greatest of many.
func TestBoxes(t *testing.T) {
	for n, want := range map[int][]string{
		1: {"as made"},
		2: {"as made, ⌀, no. 1", "as made, ⌀, no. 2"},
		7: {"as made, ⌀, the least", "as made, ⌀, the greatest"},
	} {
		k := Block{Kind: Tick, Box: "as made", Boxes: boxesOf(&eval.Form{Mouths: make([]solid.Vec, n)}, "finished ⌀")}
		if got := k.boxes(); !slices.Equal(got, want) {
			t.Errorf("%d holes: %q, want %q", n, got, want)
		}
		var b strings.Builder
		k.markdown(&b)
		if got := strings.Count(b.String(), "…………"); got != len(want) {
			t.Errorf("%d holes: %d lines to write on", n, got)
		}
	}
}
