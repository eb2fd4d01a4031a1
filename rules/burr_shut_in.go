package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "burr-shut-in",
	Title: "parts are drilled together and not taken apart: burrs stay between them",
	Why: `A drill throws up metal where it leaves one part and where it enters the next, however hard they are clamped. Between faces
that are to lie on each other it holds them apart, and no file reaches it. Parts that are drilled or reamed together are taken
apart, deburred, and joined again.`,
	Rows:      []string{"F18"},
	Source:    []string{"rims that a cut leaves between two joined parts: common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleCheeks(bothPivots, ""),
	Sound:     exampleCheeks(bothPivots, "  apart = true\n"),
	Together:  true,
	OnPart:    burrShutIn,
})

func burrShutIn(p *eval.PartTrace, a *Ask) {
	if !p.Part.Joined() || p.End == nil {
		return
	}
	told := map[string]bool{}
	for _, b := range p.ShutIn() {
		if b.Of == nil || told[b.By.String()] {
			continue
		}
		told[b.By.String()] = true
		f := a.Say(p.Part.Path()+"+"+b.By.Step, p.Part.Part.Item.At, "making %s leaves a burr on %s where that lies on another part, and the assembly is not taken apart afterwards (apart = true) to get it off",
			b.By.Step, b.Of.Path())
		f.Spots[0] = b.By
	}
	a.Clear(finding.Margin{}, "")
}
