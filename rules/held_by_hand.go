package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "held-by-hand",
	Title: "work held by hand under a spindle",
	Why: `When a drill breaks through it screws itself into what is left and turns the work with it. Above a
few millimetres no hand holds that, and sheet cuts like a knife.`,
	Rows:      []string{"C22"},
	Source:    []string{"common practice"},
	Limits:    []string{"held_by_hand"},
	Level:     finding.Danger,
	Judgement: finding.Thumb,
	Caution:   "Clamp the work or hold it in a vise; never steady it by hand, and follow the machine's manual.",
	Trips:     replaced(exampleHole("tool  = drill.jobbers[6]"), "hold      = vise.small\n    up        = \"top\"\n    jaws      = \"back\"\n    parallels = 10", "hold = \"hand\"\n    up   = \"top\""),
	Sound:     exampleHole("tool  = drill.jobbers[6]"),
	OnCut:     heldByHand,
})

func heldByHand(k *eval.Cut, a *Ask) {
	if k.Step.Work.Kind != "setup" || k.Choice.Tool.Cutter == nil || k.Choice.ByHand {
		return
	}
	if !k.Hold.Choice.ByHand {
		a.Clear(finding.Margin{}, "")
		return
	}
	d := k.Choice.Tool.Size
	limit := a.Limit("held_by_hand")
	thick := k.Hold.Hi[2] - k.Hold.Lo[2]
	says, drills := "", k.Choice.By == "drilling" || k.Choice.By == "spotting"
	switch {
	case !drills:
		says = "no work is held by hand for " + k.Choice.By + ": clamp it"
	case d > limit+0.0005:
		says = "usually nothing above " + mm(limit) + " is drilled so: clamp it"
	case thick < d-0.0005:
		says = "it is " + mm(round(thick)) + " thick, thinner than the drill, which grabs it and spins it: clamp it between boards"
	default:
		a.Clear(Bound(d, limit, "mm"), k.ToolPath()+" into work held by hand")
		return
	}
	f := a.Say(k.Hold.Work.SetUp.Path()+".hold", k.Hold.Place("hold"), "the work is held by hand under %s; %s", k.ToolPath(), says)
	if drills {
		f.Margin = Bound(d, limit, "mm")
	}
}
