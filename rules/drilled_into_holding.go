package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "drilled-into-holding",
	Title: "the tool comes out below and goes into parallel, vise, table, chuck or faceplate",
	Why: `A through hole is through only when the full diameter has passed the far face: the drill's point,
the lead of a reamer, the lead of a tap all go on below it. What lies there is drilled, or the
tool is spoilt on it.`,
	Rows: []string{"C8", "D3"},
	Source: []string{"point 0.300 D at 118 degrees, 0.207 D at 135: geometry, seen in print",
		"a hand reamer's lead is about a quarter of its flutes, a taper tap's 8 to 10 pitches: Machinery's Handbook 26; room below: common practice"},
	Limits:    []string{"breakthrough"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleThrough(27),
	Sound:     exampleThrough(15),
	OnCut:     drilledIntoHolding,
	OnTurn:    drilledIntoChuck,
})

// exampleThrough drills one hole through, at a distance from the front face, over parallels
// 3 mm thick that stand against the jaws.
func exampleThrough(front float64) string {
	return replaced(replaced(wideBlock(30), "front = 25", "front = "+figure(front)), "parallels = 6", "parallels = 8")
}

func drilledIntoHolding(k *eval.Cut, a *Ask) {
	if k.Unplayed != "" || k.Choice.Tool.Cutter == nil {
		return
	}
	through := false
	for _, w := range k.Works {
		through = through || w.Through && w.Target.Form != nil && len(w.Target.Form.Mouths) > 0
	}
	if !through {
		return
	}
	if _, ok := Need(a, k.TipLength()); !ok {
		return
	}
	for _, n := range k.Near {
		if n.Piece || n.BodyItem != k.Choice.Tool.Cutter.Item {
			continue
		}
		if v := k.Hold.Vee; v != nil && n.Thing == v.Block.Path() && k.Choice.Tool.Cutter.Kind == "drill" && v.TakesPoint(k.Stack.Diameter.Or(0)/2) {
			a.Clear(finding.Margin{}, "")
			continue
		}
		switch {
		case n.Sure < 0:
			w := k.Works[0]
			f := a.Say(k.Hold.Work.SetUp.Path()+"+"+n.Thing, k.Place("tool"),
				"%s passes the far face by %s mm and goes %s mm into %s%s", k.Choice.Tool.Path(), tenthUp(w.Below), tenthUp(-n.Sure), n.Thing, sideways(n))
			f.Margin = Room(n.Sure, 0)
		case n.Worst < 0 && len(n.Lacks) > 0:
			a.Lack(n.Lacks...)
		case len(n.Lacks) > 0:
			a.Clear(finding.Margin{}, "")
		default:
			a.Clear(Room(n.Worst, 0), k.Choice.Tool.Path()+" to "+n.Thing)
		}
	}
}

// sideways tells how far aside a hole would clear a parallel.
func sideways(n eval.Near) string {
	if n.Aside > 0 && strings.Contains(n.Thing, "parallel") {
		return "; " + tenthUp(n.Aside) + " mm aside would clear it"
	}
	return ""
}

// drilledIntoChuck looks behind work that is drilled or bored through on a lathe: how far the tool
// comes out of it, against the hole through what holds it.
func drilledIntoChuck(k *eval.Turn, a *Ask) {
	t := k.Choice.Tool.Cutter
	if k.Unplayed != "" || t == nil || t.Kind == "tap" || k.Part.Blank.Bar != model.NoFace && !k.Before.Parted {
		return
	}
	for _, w := range k.Works {
		out, ok := k.ComesOut(&w)
		if !ok {
			continue
		}
		if _, ok := Need(a, k.AsCut().TipLength()); !ok && k.InTailstock() {
			continue
		}
		room, known := k.Hold.RoomBehind().Get()
		d := round(2 * max(w.R0, w.R1))
		bore, known2 := k.Hold.BoreBehind().Get()
		switch {
		case known && out <= room+0.0005:
			a.Clear(Room(round(room), round(out)), "the room behind "+k.Part.Label+" in "+k.Hold.Choice.HeldBy())
		case known2 && d <= bore+0.0005:
			a.Clear(Bound(d, bore, "mm"), k.Choice.Tool.Path()+" in the bore of "+k.Hold.Choice.HeldBy())
		case !known || !known2:
			Need(a, k.Hold.RoomBehind())
			Need(a, k.Hold.BoreBehind())
		default:
			f := a.Say(k.Hold.Work.SetUp.Path()+"+"+k.Hold.Choice.HeldBy(), k.Place("tool", "makes"),
				"%s comes out %s mm behind %s with a diameter of %s mm; behind it %s has %s mm of room and a bore of %s",
				k.Choice.Tool.Path(), tenthUp(out), k.Part.Label, figure(d), k.Hold.Choice.HeldBy(), tenth(room), mm(bore))
			f.Margin = Room(round(room), round(out))
		}
	}
}
