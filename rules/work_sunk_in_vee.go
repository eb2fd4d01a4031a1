package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "work-sunk-in-vee",
	Title: "the work does not stand out of its vee block, and what is to press it in meets the block",
	Why: `A vee holds only what is pressed into it. Work that lies below the top of the block is touched neither by a strap
across it nor by a jaw: these bear on the two edges of the block, and the work turns or lifts under the first cut.`,
	Rows:      []string{"A14", "D10"},
	Source:    []string{"the axis stands d/(2 sin(a/2)) above the sharp bottom of a vee of the angle a: geometry"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleOnVee("height = 35\n  vee    = 10"),
	Sound:     exampleOnVee("height = 20\n  vee    = 10"),
	OnHold:    workSunkInVee,
})

// exampleOnVee drills across a pin of 12 mm that is clamped in a vee block on the table.
func exampleOnVee(sizes string) string {
	return replaced(replaced(exampleInVee("[5, 50]"), "[v_block.own, vise.small]", "[v_block.own, clamps.set]"),
		"height = 20\n  vee    = 10", sizes)
}

func workSunkInVee(h *eval.Holding, a *Ask) {
	v := h.Vee
	if v == nil || v.Blocked || !v.Against && v.Upright || !v.Standing() || !v.Against && h.Choice.Clamps == nil {
		return
	}
	proud, ok := Need(a, v.Proud())
	if !ok {
		return
	}
	proud = round(proud)
	if proud > 0.0005 {
		a.Clear(Room(proud, 0), "how far the work stands out of "+v.Block.Path())
		return
	}
	lies := "lies level with its top"
	if proud < -0.0005 {
		lies = "lies " + mm(-proud) + " below its top"
	}
	what := "a clamp across it"
	if v.Against {
		what = "the jaw before it"
	}
	f := a.Say(v.Block.Path()+"+"+h.Part.Label+"+sunk", veePlace(h), "%s bears on %s and not on %s, which %s; a lower block, or one whose own yoke holds the work, is wanted",
		what, v.Block.Path(), h.Part.Label, lies)
	f.Margin = Room(proud, 0)
}
