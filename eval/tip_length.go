package eval

import (
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// tipLength is the length of a tool's tip below its full diameter: a drill's point, the
// lead of a reamer or tap. Not known where the tool's facts lack.
func (k *Cut) tipLength() model.Known[float64] {
	t := k.Choice.Tool
	if t.Cutter == nil {
		return model.Sure(0.0)
	}
	switch t.Cutter.Kind {
	case "drill", "centre_drill":
		return model.Sure(handbook.DrillPoint(t.Cutter.Point.Or(118)) * t.Size)
	case "reamer":
		if t.Cutter.Lead.Is() {
			return t.Cutter.Lead
		}
		if kind, ok := t.Cutter.ReamerKind.Get(); ok {
			if l, ok := handbook.ReamerLead(kind, t.Size); ok {
				return model.Known[float64]{V: l, From: model.Handbook}
			}
		}
		return model.Lacking[float64](t.Cutter.ReamerKind.Missing())
	case "tap":
		return k.tapLead()
	}
	return model.Sure(0.0)
}

func (k *Cut) tapLead() model.Known[float64] {
	t := k.Choice.Tool
	n := t.Lead.Threads
	if n == 0 {
		if t.Lead.Word == "" {
			return model.Lacking[float64](t.Cutter.Leads.Missing())
		}
		_, hi, ok := handbook.TapLead(t.Lead.Word)
		if !ok {
			return model.Lacking[float64](t.Cutter.Leads.Missing())
		}
		n = hi
	}
	return model.Sure(n * t.Thread.Pitch)
}

// TipLength is the length of the tool's tip below its full diameter: a drill's point, the
// lead of a reamer or tap.
func (k *Cut) TipLength() model.Known[float64] { return k.tipLength() }
