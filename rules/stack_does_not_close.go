package rules

import (
	"fmt"
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "stack-does-not-close",
	Title: "the dimensions in a row do not leave the gap that is wanted",
	Why: `Each dimension of a chain may lie anywhere within its limits, and they add up. What is left at the end takes the sum of
all tolerances: a gap of a few hundredths cannot be had from five dimensions of a tenth.`,
	Rows:      []string{"E7", "I6", "F16"},
	Source:    []string{"sum of limits (worst case), or root of the sum of squares where the recipe asks for it: tolerance chains, worked examples in the tests of the arithmetic"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleStack(`"6 ±0.1"`, `"5.8 ±0.1"`, `"0.1..0.3"`),
	Sound:     exampleStack(`"6 ±0.05"`, `"5.8 ±0.05"`, `"0.1..0.3"`),
	OnJoint:   stackDoesNotClose,
})

func stackDoesNotClose(j *eval.Joint, a *Ask) {
	s := j.Stack
	if s == nil {
		return
	}
	likely := s.Model.Reckoned.V == "likely"
	gap, ok := Need(a, s.Gap(likely))
	wants, ok2 := Need(a, s.Wants)
	if ok2 && !ok && !likely && s.Sure > wants.Width()+0.0005 {
		f := a.Say(j.Item.Path(), s.Model.Item.At, "the tolerances along %s that are known, %s mm together, are more than the %s mm that its gap may vary by, whatever the others are",
			j.Item.Path(), figure(round(s.Sure)), figure(round(wants.Width())))
		f.Margin = Bound(round(s.Sure), round(wants.Width()), "mm")
	}
	if !ok || !ok2 {
		return
	}
	low, high := wants.Lo-gap.Lo, gap.Hi-wants.Hi
	if low <= 0.0005 && high <= 0.0005 {
		a.Clear(Room(round(math.Min(-low, -high)), 0), "the gap of "+j.Item.Path())
		return
	}
	how := "at the worst"
	if likely {
		how = "most likely"
	}
	f := a.Say(j.Item.Path(), s.Model.Item.At, "%s leaves %s to %s mm %s; wanted is %s to %s mm",
		chainWords(s), figure(round(gap.Lo)), figure(round(gap.Hi)), how, figure(round(wants.Lo)), figure(round(wants.Hi)))
	if gap.Width() > wants.Width()+0.0005 {
		f.Says += "; the tolerances together, " + figure(round(gap.Width())) + " mm, are more than the " + figure(round(wants.Width())) + " mm allowed"
	}
}

// chainWords says the chain as it is reckoned: "part.frame.slot.room.width less part.wheel.length".
func chainWords(s *eval.StackJoint) string {
	var more, less []string
	for _, l := range s.Chain.V {
		if l.Ratio > 0 {
			more = append(more, l.Name)
		} else {
			less = append(less, l.Name)
		}
	}
	switch {
	case len(s.Chain.V) > 6:
		return fmt.Sprintf("a chain of %d dimensions", len(s.Chain.V))
	case len(less) == 0:
		return inWords(more)
	}
	return inWords(more) + " less " + inWords(less)
}
