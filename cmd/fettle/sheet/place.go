package sheet

import (
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
// turned on between, one place stands for all.
func placesOf(k *eval.Cut) (out []place) {
	for i := range k.Works {
		w := &k.Works[i]
		if w.Wrong != "" {
			continue
		}
		for _, v := range w.Moves {
			if n := len(out); n > 0 && level(out[n-1].from, v.From) && level(out[n-1].to, v.To) {
				continue
			}
			if w.Turn != nil && known(out, v) {
				continue
			}
			out = append(out, place{v.From, v.To, w})
		}
	}
	return out
}

func (m *milled) places() []place { return placesOf(m.k) }

func known(ps []place, v solid.Move) bool {
	for _, p := range ps {
		if level(p.from, v.From) && level(p.to, v.To) {
			return true
		}
	}
	return false
}

// level says whether two places are one as seen from above.
func level(a, b solid.Vec) bool {
	const same = 0.0005
	return abs(a[0]-b[0]) < same && abs(a[1]-b[1]) < same
}

func abs(x float64) float64 { return max(x, -x) }
