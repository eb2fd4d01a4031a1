package sheet

import (
	"math"
	"strconv"
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// sweeps says how a rotary table takes the arcs and edges of an outline; false where no arc is swept.
// The places of its chords would be figures that nobody sets.
func (m *maker) sweeps(h *eval.Holding, k *eval.Cut, put func(a, b string)) bool {
	r := k.Stack.Diameter.Or(0) / 2
	said := false
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if f != nil && f.Rounded() && w.Wrong == "" && len(w.Moves) > 0 && r > 0 {
			m.ring(h, k, w, r, put)
			said = true
			continue
		}
		if f == nil || f.Way == nil || w.Wrong != "" || len(w.Moves) == 0 || !(r > 0) || len(f.Middles()) == 0 {
			continue
		}
		piece, pose := asPut(h, k)
		z := zeroOf(h, k, piece, pose)
		for _, s := range f.Sweeps(r) {
			put("set over the table's middle", at(z, pose.Point(s.Middle))+"; the arc has a radius of "+model.Figure(tidy(s.Arc))+
				" mm, and the tool's middle stands "+model.Figure(tidy(s.Tool))+" mm off the table's")
		}
		put("straight edges", "each turned along a way of the table, the tool's middle "+model.Figure(tidy(r))+" mm off it")
		said = true
	}
	return said
}

// ring says where the table's middle and the tool's stand for what is milled round a line.
func (m *maker) ring(h *eval.Holding, k *eval.Cut, w *eval.Working, r float64, put func(a, b string)) {
	piece, pose := asPut(h, k)
	f := w.Target.Form
	put("set over the table's middle", at(zeroOf(h, k, piece, pose), pose.Point(f.About.At)))
	var off []string
	mid := pose.Point(f.About.At)
	for _, v := range w.Moves {
		if alike(v.From, v.To, 2) {
			off = append(off, model.Figure(tidy(math.Hypot(v.To[0]-mid[0], v.To[1]-mid[1]))))
		}
	}
	says := strings.Join(off, " mm, then ")
	if n := len(off); n > fewPlaces {
		says = off[0] + " mm, then in " + strconv.Itoa(n-1) + " wider circles up to " + off[n-1]
	}
	put("tool's middle", says+" mm off the table's: down to the depth, then the table turned all the way round")
}
