package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/handbook"
)

// turnedTooFast is the part of speed-too-fast that looks at operations on a lathe: the speed of
// the edge at the largest diameter that it meets.
func turnedTooFast(k *eval.Turn, a *Ask) {
	c := k.Choice.Tool.Cutter
	d := k.Largest()
	if c == nil || k.Choice.ByHand || d <= 0 || k.Hold.Unplayed != "" {
		return
	}
	group, ok := Need(a, k.MaterialGroup())
	if !ok {
		return
	}
	if k.Choice.Speed == 0 {
		if m := k.Hold.Choice.Machine; m != nil {
			Need(a, m.Speeds)
		}
		return
	}
	row, ok := handbook.Speed(eval.TurnedAs(k.Choice.By), c.Of.Or("HSS"), group)
	if !ok {
		return
	}
	v := math.Pi * d * k.Choice.Speed / 1000
	if v <= row.Warn+1e-6 {
		a.Clear(Bound(v, row.Warn, "m/min"), "the edge of "+k.ToolPath())
		return
	}
	if !c.Of.Is() {
		// Of edges that may be carbide, only what is too fast for carbide too is certain.
		if o, ok := handbook.Speed(eval.TurnedAs(k.Choice.By), "carbide", group); !ok || v <= o.Warn+1e-6 {
			Need(a, c.Of)
			return
		}
	}
	rev := row.Pick * 1000 / math.Pi / d
	f := a.Say(k.Spot.String()+".speed", k.Place("speed", "tool"), "%s rev/min runs the edge of %s at %s m/min where the work is %s mm; in this metal %s m/min is a cautious figure, or %s rev/min",
		figure(k.Choice.Speed), k.ToolPath(), tenth(v), figure(round(d)), tenth(row.Pick), tenth(rev))
	f.Margin = Bound(v, row.Warn, "m/min")
}
