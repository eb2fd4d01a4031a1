package eval

import (
	"slices"
	"testing"

	"fettle/schema/model"
)

// The taps of a set go in by falling lead, up to the one that finishes: common practice with hand taps.
func TestTapsInTurn(t *testing.T) {
	set := func(words ...string) *model.Cutter {
		c := &model.Cutter{}
		for _, w := range words {
			c.Leads.V = append(c.Leads.V, model.Lead{Word: w})
		}
		return c
	}
	hand := set("bottoming", "taper", "second")
	for _, c := range []struct {
		of   *model.Cutter
		last string
		want []string
	}{
		{hand, "bottoming", []string{"taper", "second", "bottoming"}},
		{hand, "second", []string{"taper", "second"}},
		{hand, "taper", []string{"taper"}},
		{set("taper", "bottoming"), "bottoming", []string{"taper", "bottoming"}},
		{set("taper", "spiral flute"), "spiral flute", nil},
		{set("bottoming", "spiral point"), "bottoming", []string{"bottoming"}},
		{set(), "", nil},
	} {
		if got := (Pick{Cutter: c.of, Lead: model.Lead{Word: c.last}}).TapsInTurn(); !slices.Equal(got, c.want) {
			t.Errorf("%v up to %q: %v, not %v", c.of.Leads.V, c.last, got, c.want)
		}
	}
}
