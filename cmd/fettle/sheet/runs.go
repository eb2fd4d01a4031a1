package sheet

import (
	"math"
	"slices"
	"strings"

	"fettle/eval"
)

// Operations that follow each other at the same feature, as spotting, drilling and reaming do, are drawn
// once: that of them whose tool comes nearest to something, of as near ones the last. One that meets
// something is always drawn.

// runs says of each operation of a set-up, from 1, with which one it is drawn.
func (g *group) runs() []int {
	n := len(g.cuts) + len(g.turns)
	out := make([]int, n+1)
	at := func(i int) (features string, near float64) {
		if len(g.turns) > 0 {
			k := g.turns[i-1]
			return places(k.Step), nearTurn(k)
		}
		k := g.cuts[i-1]
		return places(k.Step), nearCut(g.hold, k)
	}
	for from := 1; from <= n; {
		features, least := at(from)
		best, to := from, from
		for to+1 <= n && features != "" {
			f, near := at(to + 1)
			if f != features {
				break
			}
			to++
			if near <= least {
				best, least = to, near
			}
		}
		for i := from; i <= to; i++ {
			out[i] = best
			if _, near := at(i); near < 0 || g.unplayed(i) != "" {
				out[i] = i
			}
		}
		from = to + 1
	}
	return out
}

// places names the features that an operation is at, without saying what of them; "" where it makes
// anything else.
func places(st *eval.Step) string {
	var out []string
	for _, t := range st.Makes {
		if t.Form == nil {
			return ""
		}
		out = append(out, t.Form.Name())
	}
	slices.Sort(out)
	return strings.Join(slices.Compact(out), " ")
}

// nearCut is how near the tool of an operation comes to something; infinite where nothing is near.
func nearCut(h *eval.Holding, k *eval.Cut) float64 {
	near := math.Inf(1)
	for _, c := range closest(h, k) {
		near = min(near, c.mm)
	}
	return near
}

func nearTurn(k *eval.Turn) float64 {
	near := math.Inf(1)
	for i := range k.Works {
		if r, ok := roomOf(k, &k.Works[i]); ok && r.Room <= closeMost {
			near = min(near, r.Room)
		}
	}
	return near
}
