package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "stands-over-angle-plate",
	Title: "the work stands far out over the angle plate that it is clamped to, and is milled there",
	Why: `What stands out beyond the upright is held by nothing behind it: it springs under the cut, chatters, and levers the
clamps off. A larger plate, packing that is lower, or a cut while it lies is steadier.`,
	Rows:      []string{"A14"},
	Source:    []string{"half of its height on the upright for a cut from the side: common practice"},
	Limits:    []string{"upright_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Shifted:   true,
	Trips:     exampleOnPlate("[100, 60, 20]", ""),
	Sound:     exampleOnPlate("[100, 60, 30]", ""),
	OnHold:    standsOverAnglePlate,
})

func standsOverAnglePlate(h *eval.Holding, a *Ask) {
	p := h.Choice.Plate
	if p == nil || !pushedSideways(h.Work) {
		return
	}
	c, ok := Need(a, h.OnPlate)
	if !ok || !c.Touches {
		return
	}
	has, want := c.Grip, a.Limit("upright_share")*(h.Hi[2]-h.Lo[2])
	if has >= want-0.0005 {
		a.Clear(Room(has, want), "what lies on the upright of "+p.Path())
		return
	}
	f := a.Say(p.Path()+"+"+h.Work.SetUp.Path()+"+height", h.Place("packing", "free", "back", "hold"),
		"%s of the piece's %s of height lie on the upright of %s; usually at least %s mm (%s of it) for a cut from the side",
		mm(round(has)), mm(round(h.Hi[2]-h.Lo[2])), p.Path(), tenthUp(want), hundredth(a.Limit("upright_share")))
	f.Margin = Room(has, want)
}
