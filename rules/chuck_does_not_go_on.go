package rules

import (
	"fettle/eval"
	"fettle/schema/drawing"
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
	OnHold:    chuckDoesNotGoOnHead,
	OnChuck:   chuckDoesNotGoOn,
})

func chuckDoesNotGoOn(h *eval.Chucking, a *Ask) {
	if m := h.Choice.Machine; m != nil {
		goesOnNose(h, m.Item, m.Nose, a)
	}
}

// chuckDoesNotGoOnHead asks the same of a dividing head; what is bolted to a rotary table goes on
// by its own slots.
func chuckDoesNotGoOnHead(h *eval.Holding, a *Ask) {
	if d := h.Choice.Divided; d != nil && d.Head != nil && h.Carried != nil {
		goesOnNose(h.Carried, d.Head.Item, inHead(d.Head, h.Carried), a)
	}
}

// inHead is what a chuck goes on by: the head's nose, or its socket where the chuck has a taper.
func inHead(d *model.DividingHead, h *eval.Chucking) model.Known[model.Nose] {
	if c := h.Choice.Chuck; c != nil && c.Mounts.Is() && !c.Mounts.V.Screwed() && c.Mounts.V.Word == "" && d.Taper.Is() {
		return model.Map(d.Taper, func(t drawing.Taper) model.Nose { return model.Nose{Taper: t} })
	}
	return d.Nose
}

func goesOnNose(h *eval.Chucking, on *model.Item, its model.Known[model.Nose], a *Ask) {
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
	nose, ok := Need(a, its)
	mounts, ok2 := Need(a, goesOn)
	if !ok || !ok2 {
		return
	}
	if sameNose(nose, mounts) {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(c.Path()+".mounts+"+on.Path(), h.Place("hold"), "%s goes on %s, and the nose of %s is %s", c.Path(), noseWord(mounts), on.Path(), noseWord(nose))
	f.Also = []finding.Note{{Place: goesOn.At, Says: "what it goes on"}, {Place: its.At, Says: "the nose"}}
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
