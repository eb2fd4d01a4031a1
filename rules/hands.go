package rules

import (
	"strings"

	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

// hands tells what was said already of the other hand of a mirrored part: they have one drawing, and a figure
// of it is one cause. What has no figure, as a feature that nobody makes, is of each hand.
type hands struct {
	of    map[string]string // of both hands, by label: the label of the one that is drawn
	first map[drawn]int     // where in the list a finding stands
}

type drawn struct {
	rule, cause string
	at          text.Place
	margin      finding.Margin
}

func newHands(b *model.Build) hands {
	h := hands{map[string]string{}, map[drawn]int{}}
	for _, p := range b.Parts {
		if o := p.MirrorOf.V.Item; o != nil {
			h.of[p.Item.Label], h.of[o.Label] = o.Label, o.Label
		}
	}
	return h
}

// place gives where a finding, which would be the next of a list so long, stands in it already.
func (h hands) place(f *finding.Finding, long int) (int, bool) {
	if len(f.Spots) == 0 {
		return 0, false
	}
	hand := f.Spots[0].Part
	of, two := h.of[hand]
	if !two || f.Margin.Unit == "" {
		return 0, false
	}
	words := strings.FieldsFunc(f.Cause, func(r rune) bool { return r == '.' || r == '+' })
	for i, w := range words {
		if w == hand {
			words[i] = of
		}
	}
	key := drawn{f.Rule, strings.Join(words, "."), f.Place, f.Margin}
	if i, ok := h.first[key]; ok {
		return i, true
	}
	h.first[key] = long
	return 0, false
}
