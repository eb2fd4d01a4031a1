package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/handbook"
)

var _ = enter(Rule{
	Name:  "hole-wrong-for-reamer",
	Title: "the hole leaves the reamer too much to take, or too little",
	Why: `A reamer takes a few tenths: with too little it rubs and wears, with too much it clogs, tears and
cuts large. The allowance grows with the size and is less for a hand reamer. And there must be a hole.`,
	Rows: []string{"D4"},
	Source: []string{"allowances by diameter from four printed tables that agree within about 0.1 mm; hand reamers: common practice",
		"never more than 1/32 inch in one pass: a printed handbook"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Deaf:      Holding | Mounting,
	Trips:     exampleReam("7"),
	Sound:     exampleReam("7.8"),
	OnCut:     holeWrongForReamer,
	OnTurn:    asCut(holeWrongForReamer),
})

func holeWrongForReamer(k *eval.Cut, a *Ask) {
	c := k.Choice.Tool.Cutter
	if c == nil || c.Kind != "reamer" {
		return
	}
	for _, w := range k.Works {
		if w.Target.Form == nil || len(w.Target.Form.Mouths) == 0 || w.Target.Sub != "" {
			continue
		}
		if lacks := k.Part.Unnamed(); w.Had == 0 && len(lacks) > 0 {
			a.Lack(lacks...)
			continue
		}
		if w.Had == 0 {
			a.Say(w.Target.Name()+"+reamer+none", k.Place("tool", "makes"), "%s is to ream %s, and no hole has been drilled there yet", k.ToolPath(), w.Target.Name())
			continue
		}
		kind, ok := Need(a, c.ReamerKind)
		if !ok {
			continue
		}
		group := k.MaterialGroup().Or("")
		lo, hi, _, ok := handbook.ReamAllowance(kind, k.Choice.Tool.Size, group)
		if !ok {
			continue
		}
		left := round(k.Choice.Tool.Size - w.Had)
		switch {
		case left < lo-0.0005:
			f := a.Say(w.Target.Name()+"+reamer", k.Place("tool"), "the hole is %s and leaves %s for %s; it wants from %s to %s mm on diameter, so a hole of %s to %s",
				mm(w.Had), mm(left), k.ToolPath(), figure(lo), figure(hi), figure(round(k.Choice.Tool.Size-hi)), mm(round(k.Choice.Tool.Size-lo)))
			f.Margin = Room(left, lo)
		case left > hi+0.0005:
			f := a.Say(w.Target.Name()+"+reamer", k.Place("tool"), "the hole is %s and leaves %s for %s; it wants from %s to %s mm on diameter, so a hole of %s to %s",
				mm(w.Had), mm(left), k.ToolPath(), figure(lo), figure(hi), figure(round(k.Choice.Tool.Size-hi)), mm(round(k.Choice.Tool.Size-lo)))
			f.Margin = Bound(left, hi, "mm")
		default:
			a.Clear(Bound(left, hi, "mm"), "what is left for "+k.ToolPath())
			a.Clear(Room(left, lo), "what is left for "+k.ToolPath())
		}
	}
}
