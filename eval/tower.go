package eval

import (
	"math"

	"fettle/schema/model"
)

// Tower is the height from table to spindle nose that an operation needs.
type Tower struct {
	Low  model.Known[float64] // nose above the table with the tool at its deepest
	High model.Known[float64] // and with its tip clear above the metal
}

// Tower works out how low and how high the spindle nose must come. The stack must reach
// the deepest place of its moves, and the tip must clear the top of the metal by the usual
// room to get there; a tool that comes from the side need not.
func (k *Cut) Tower() Tower {
	if k.LevelSpindle() {
		return Tower{} // its axis is asked for, see AxisHeights
	}
	if !k.Stack.Reach.Is() || !k.Hold.Seat.Is() {
		lack := model.Lacking[float64](k.Stack.Reach.Missing(), k.Hold.Seat.Missing())
		return Tower{lack, lack}
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, w := range k.Works {
		for _, m := range w.Moves {
			low = min(low, m.From[2], m.To[2])
			high = max(high, m.From[2], m.To[2])
		}
	}
	if math.IsInf(low, 1) {
		return Tower{}
	}
	return Tower{model.Sure(low + k.Stack.Reach.V), model.Sure(high + k.Stack.Reach.V)}
}

// Span is how far apart the places of the spindle lie in a stretch of work, along the
// table (X) and across it (Y), run-on and run-off of milling included.
func Span(cuts []*Cut) (x, y float64) {
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, k := range cuts {
		for _, w := range k.Works {
			for _, m := range w.Moves {
				for i := range 2 {
					lo[i] = min(lo[i], m.From[i], m.To[i])
					hi[i] = max(hi[i], m.From[i], m.To[i])
				}
			}
		}
	}
	if math.IsInf(lo[0], 1) {
		return 0, 0
	}
	return hi[0] - lo[0], hi[1] - lo[1]
}

// SurfaceSpeed is how fast the edge of the tool runs at the chosen speed, m/min.
func (k *Cut) SurfaceSpeed() float64 {
	return math.Pi * k.Stack.Diameter.Or(0) * k.Choice.Speed / 1000
}

// MaterialGroup is the row of the cutting tables that the part's metal belongs to.
func (k *Cut) MaterialGroup() model.Known[string] { return k.Part.Makes(k.Step).materialGroup() }

// MaterialGroup is the row of the part's metal in the cutting tables.
func (k *Turn) MaterialGroup() model.Known[string] { return k.Part.Makes(k.Step).materialGroup() }

func (p *Part) materialGroup() model.Known[string] {
	m := p.Material
	if !m.Is() && p.Blank.Stock != nil {
		m = p.Blank.Stock.Material
	}
	if !m.Is() {
		return model.Lacking[string](m.Missing())
	}
	if m.V.Group == "" {
		return model.Lacking[string]([]model.Lack{{Fact: "cutting speeds for " + m.V.Written, At: m.At}})
	}
	return model.Sure(m.V.Group)
}
