package rules

import (
	"fmt"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "spindle-does-not-get-there",
	Title: "from where the holding stands on the table the slides do not bring the work under the spindle",
	Why: `The slides travel so far to either side of their middle and no farther. A vise that stands near one end of the table has
its far places out of reach, though the way itself would be short enough. Move it towards the middle.`,
	Rows: []string{"A4"},
	Source: []string{"arithmetic; the spindle stands over the middle of the table when both slides are in the middle of their travel: common practice",
		"a holding whose place is not written stands in the middle"},
	Limits:    []string{"table_middle"},
	Level:     finding.Stop,
	Judgement: finding.Thumb,
	Trips:     exampleOnTable(40),
	Sound:     exampleOnTable(250),
	OnCut:     spindleDoesNotGetThere,
})

// exampleOnTable drills a hole in a vise that stands with its middle so far from the left end of a table of
// 500 mm that travels 300.
func exampleOnTable(left float64) string {
	return replaced(exampleHole(), "    hold      = vise.small", "    machine   = mill.own\n    on_table  = ["+figure(left)+", 80]\n    hold      = vise.small") + `
mill "own" {
  taper         = "MT3"
  drawbars      = ["M12"]
  speeds        = [100, 200, 350, 600, 1000, 1800]
  reverse       = true
  table         = [500, 160]
  travel        = [300, 140, 200]
  nose_to_table = [40, 300]
  throat        = 150
  column        = "dovetail"
  quill         = 40
  nose_diameter = 50
}
`
}

func spindleDoesNotGetThere(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	lo, hi, ok := k.TablePlaces()
	if m == nil || m.Kind == "drill_press" || k.Unplayed != "" || !ok {
		return
	}
	table, ok := Need(a, m.Table)
	travel, ok2 := Need(a, m.Travel)
	if !ok || !ok2 || len(table) != 2 || len(travel) < 2 {
		return
	}
	if standsBesideTable(k.Hold, m, table, a) {
		return
	}
	spare := a.Limit("table_middle")
	for i, ends := range [2][2]string{{"left", "along"}, {"front", "across"}} {
		mid := table[i] / 2
		from, to := mid-travel[i]/2, mid+travel[i]/2
		short := round(max(from-lo[i], hi[i]-to) - spare)
		if short <= 0.0005 {
			a.Clear(Bound(short, 0, "mm"), "the way of "+m.Path()+" "+ends[1]+" the table to "+targetName(k))
			continue
		}
		f := a.Say(k.Hold.Work.SetUp.Path()+".on_table", k.Hold.Place("on_table"), "for %s the spindle of %s has to come over the table %s from its %s, and its slide usually brings it from %s to %s there",
			targetName(k), m.Path(), tableSpanWords(lo[i], hi[i]), ends[0], mm(round(from)), mm(round(to)))
		f.Margin = Bound(short, 0, "mm")
	}
}

func tableSpanWords(lo, hi float64) string {
	if a, b := tenth(lo), tenth(hi); a != b {
		return fmt.Sprintf("from %s to %s mm", a, b)
	}
	return "at " + tenth(lo) + " mm"
}

// standsBesideTable says where the middle of a holding is written to be off the table.
func standsBesideTable(h *eval.Holding, m *model.Machine, table []float64, a *Ask) bool {
	at := h.Work.SetUp.OnTable.V
	for i, way := range []string{"from the left end of the table", "from the front of the table"} {
		if at[i] < 0 || at[i] > table[i]+0.0005 {
			a.Say(h.Work.SetUp.Path()+".on_table", h.Work.SetUp.OnTable.At, "the middle of the holding is to stand %s %s, and that of %s measures %s there", mm(at[i]), way, m.Path(), mm(table[i]))
			return true
		}
	}
	return false
}
