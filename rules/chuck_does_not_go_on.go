package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "chuck-does-not-go-on",
	Title: "the chuck and the spindle nose do not belong together",
	Why: `A chuck fits one kind of nose: a thread of its own, a bolt circle, a cam lock. One from another lathe, or from the dividing
head, wants a backplate of its own to be made first.`,
	Rows:      []string{"B7", "C20"},
	Source:    []string{"look-up in the shop"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     replaced(replaced(exampleWaist(inThree, ""), "chuck.three", "chuck.marked")+markedChuck(2000), `mounts     = "M39x4"`, `mounts     = "camlock"`),
	Sound:     replaced(exampleWaist(inThree, ""), "chuck.three", "chuck.marked") + markedChuck(2000),
	OnChuck:   chuckDoesNotGoOn,
})

func chuckDoesNotGoOn(h *eval.Chucking, a *Ask) {
	m := h.Choice.Machine
	if m == nil {
		return
	}
	var goesOn model.Known[model.Nose]
	switch {
	case h.Choice.Chuck != nil:
		goesOn = h.Choice.Chuck.Mounts
	case h.Choice.Faceplate != nil:
		goesOn = h.Choice.Faceplate.Mounts
	default:
		return
	}
	c := h.Choice.Holder()
	nose, ok := Need(a, m.Nose)
	mounts, ok2 := Need(a, goesOn)
	if !ok || !ok2 {
		return
	}
	if sameNose(nose, mounts) {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(c.Path()+".mounts+"+m.Path(), h.Place("hold"), "%s goes on %s, and the nose of %s is %s", c.Path(), noseWord(mounts), m.Path(), noseWord(nose))
	f.Also = []finding.Note{{Place: goesOn.At, Says: "what it goes on"}, {Place: m.Nose.At, Says: "the nose"}}
}

func sameNose(a, b model.Nose) bool {
	switch {
	case a.Screwed() || b.Screwed():
		return a.Screwed() && b.Screwed() && a.Thread.Same(b.Thread)
	case a.Word != "" || b.Word != "":
		return a.Word == b.Word
	}
	return a.Taper.Same(b.Taper)
}

func noseWord(n model.Nose) string {
	switch {
	case n.Screwed():
		return n.Thread.String()
	case n.Word != "":
		return n.Word
	}
	return n.Taper.String()
}
