package sheet

import (
	"slices"

	"fettle/eval"
	"fettle/eval/solid"
)

// place is one place or stretch of the tool's middle, as the table of an operation and the
// drawing number them.
type place struct {
	from, to solid.Vec
	work     *eval.Working
}

// placesOf lists the places of an operation in the order of the work: of a hole the place, of a
// cut its stretch; what is done again at the same place, deeper, counts once. Where the piece is
// turned on between, or all round under the tool, one place stands for all.
func placesOf(k *eval.Cut) (out []place) {
	deep := 2 // the axis that a tool goes in along
	var mid solid.Vec
	if k.LevelSpindle() {
		deep = 1
		if t := k.Choice.Tool.Cutter; t != nil { // the stack counts from the cutter's face towards the worker
			mid[1] = t.Width.Or(0) / 2
		}
	}
	if len(k.Works) > 0 && k.Works[0].Target.Form != nil && k.Works[0].Target.Form.Rack != nil {
		deep = 3 // the dial sets each gap of a rack, whichever axis it lies along
	}
	same := func(p place, v solid.Move) bool { return alike(p.from, v.From, deep) && alike(p.to, v.To, deep) }
	for i := range k.Works {
		w := &k.Works[i]
		if w.Wrong != "" {
			continue
		}
		for _, v := range w.Moves {
			if f := w.Target.Form; f != nil && f.Rounded() && !alike(v.From, v.To, deep) {
				continue
			}
			v.From, v.To = v.From.Add(mid), v.To.Add(mid)
			if n := len(out); n > 0 && same(out[n-1], v) {
				continue
			}
			if w.Turn != nil && slices.ContainsFunc(out, func(p place) bool { return same(p, v) }) {
				continue
			}
			out = append(out, place{v.From, v.To, w})
		}
	}
	return out
}

func (m *milled) places() []place { return placesOf(m.k) }

// level says whether two places are one as seen from above.
func level(a, b solid.Vec) bool { return alike(a, b, 2) }

// alike says whether two places are one as seen along an axis.
func alike(a, b solid.Vec, axis int) bool {
	const same = 0.0005
	for i := range 3 {
		if i != axis && abs(a[i]-b[i]) >= same {
			return false
		}
	}
	return true
}

func abs(x float64) float64 { return max(x, -x) }
