package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "sheet-grabs",
	Title: "a drill is let through sheet that is much thinner than its point is long",
	Why: `The point is through before the lips are in: nothing centres the drill, its lips hook under the edge, and it pulls
the sheet up and spins it. Clamped down over wood, drilled between two boards, or cut with a step drill or a hole
cutter, it stays.`,
	Rows:      []string{"D12"},
	Source:    []string{"a point of 118 degrees is 0.3 diameters long: geometry", "limit: own proposal, common practice"},
	Limits:    []string{"sheet_grabs"},
	Level:     finding.Danger,
	Judgement: finding.Thumb,
	Caution:   "Clamp sheet down flat with something solid under it; a sheet that a drill spins cuts like a knife.",
	Trips:     exampleSheet(1),
	Sound:     exampleSheet(4),
	OnCut:     sheetGrabs,
})

// exampleSheet drills a 6 mm hole in sheet that is held in the vise.
func exampleSheet(thick float64) string {
	return replaced(exampleHole("tool  = drill.jobbers[6]"), "  height   = 20\n", "  thickness = "+figure(thick)+"\n")
}

func sheetGrabs(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "drill" || k.Choice.By != "drilling" || k.Unplayed != "" {
		return
	}
	thick := k.Hold.Hi[2] - k.Hold.Lo[2]
	if k.Step.Work.Kind == "bench" {
		lo, hi := k.Before.Bounds()
		thick = hi[2] - lo[2]
	}
	limit := a.Limit("sheet_grabs") * k.Choice.Tool.Size
	switch {
	case thick >= limit-1e-6:
		a.Clear(Room(round(thick), limit), "the thickness under "+k.ToolPath())
		return
	case k.Hold.Choice.Clamps != nil, k.Hold.Above() > 0: // it lies between two others
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(k.ToolPath()+"+sheet", k.Place("tool", "makes"), "%s goes through a sheet of %s that nothing clamps down; usually a drill grabs and spins sheet thinner than %s",
		k.ToolPath(), mm(round(thick)), mm(round(limit)))
	f.Margin = Room(round(thick), limit)
}
