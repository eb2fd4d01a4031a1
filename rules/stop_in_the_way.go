package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "stop-in-the-way",
	Title: "the work stop stands where the tool comes past, or where no stop can stand",
	Why: `A stop touches the piece at one end, and a tool that runs out over that end runs into it unless it is swung away or stands
below the cut. Against a jaw, or against the face that looks up, none can stand.`,
	Rows:      []string{"C6"},
	Source:    []string{"geometry of the dry run; how high the stop stands is for the recipe to say"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleStop(`{ against = "left", clear_of_tool = false }`),
	Sound:     exampleStop(`{ against = "left", clear_of_tool = true }`),
	OnCut:     stopInTheWay,
})

// exampleStop mills a ledge along the front of a block that goes against a stop.
func exampleStop(stop string) string {
	return replaced(exampleDownTo("step.ledge.floor"), "  setup \"ledge\" {\n    hold      = vise.small", "  setup \"ledge\" {\n    stop      = "+stop+"\n    hold      = vise.small")
}

func stopInTheWay(k *eval.Cut, a *Ask) {
	st := k.Hold.Work.SetUp.Stop
	face := st.Against.V.Face
	if !st.Said || k.Unplayed != "" || k.Choice.Tool.Cutter == nil || stopStandsNowhere(k.Hold, a) || !k.PassesOver(face) {
		return
	}
	clear, ok := st.ClearOfTool.Get()
	switch {
	case !ok:
		a.Asks("does the stop at the %s stand clear of %s on its whole way?", face, k.ToolPath())
		a.Lack(st.ClearOfTool.Missing()...)
	case clear:
		a.Clear(finding.Margin{}, "")
	default:
		a.Say(k.Hold.Work.SetUp.Path()+".stop", st.ClearOfTool.At, "%s runs out over the %s for %s, and the stop there is not clear of the tool: swing it away, or set it below the cut",
			k.ToolPath(), face, targetName(k))
	}
}

// stopStandsNowhere says where no stop can stand against the face that is named.
func stopStandsNowhere(h *eval.Holding, a *Ask) bool {
	st := h.Work.SetUp.Stop
	face := st.Against.V.Face
	if face == model.NoFace {
		return false
	}
	where := ""
	switch c := &h.Choice; {
	case face == c.Up:
		where = "looks up"
	case face == c.Up.Opposite():
		where = "looks down"
	case c.Vise != nil && (face == c.Back || c.MovedJaw == model.NoFace && face == c.Back.Opposite() || face == c.MovedJaw):
		where = "is in the jaws"
	}
	if where == "" {
		a.Clear(finding.Margin{}, "")
		return false
	}
	a.Say(h.Work.SetUp.Path()+".stop.against", st.Against.At, "the stop is to stand against the %s, which %s in this holding", face, where)
	return true
}
