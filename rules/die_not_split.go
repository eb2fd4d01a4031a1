package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "die-not-split",
	Title: "metal is to be left on a thread by a die that cannot be opened",
	Why: `A split die is opened by the screw in its slit for a first cut, and closed until a nut or a gauge goes on. A die that is not
split cuts one size: it leaves nothing for a second cut.`,
	Rows:      []string{"B17"},
	Source:    []string{"common practice"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleSolidDie("false"),
	Sound:     exampleSolidDie("true"),
	OnTurn:    dieNotSplit,
})

// exampleSolidDie cuts M8 in two cuts with a die of its own.
func exampleSolidDie(split string) string {
	return replaced(exampleDie("25"), `tool  = die.metric["M8"]`, "tool  = die.own[\"M8\"]\n      leaves = 0.1") + `
die "own" {
  threads = ["M8"]
  outside = 25
  split   = ` + split + `
}
`
}

func dieNotSplit(k *eval.Turn, a *Ask) {
	c, st := k.Choice.Tool.Cutter, k.Step.Step
	if c == nil || c.Kind != "die" || st == nil || !(st.Leaves.V > 0) || k.Hold.Unplayed != "" {
		return
	}
	for _, w := range k.Works {
		if w.Wrong != "" || w.Target.Form == nil || w.Target.Form.Feature.Kind != "thread" {
			continue
		}
		split, ok := Need(a, c.Split)
		switch {
		case !ok:
			return
		case split:
			a.Clear(finding.Margin{}, "")
			continue
		}
		f := a.Say(c.Path()+".split+"+w.Target.Name(), k.Place("leaves", "tool"), "%s is to leave %s on %s for a later cut, and it is not split: it cuts the thread to its one size", c.Path(), mm(st.Leaves.V), w.Target.Name())
		f.Also = []finding.Note{{Place: c.Split.At, Says: "whether it can be opened"}}
	}
}
