package choose

import (
	"sort"

	"fettle/eval"
	"fettle/schema/model"
)

// Boring on a mill: a bar in a boring head, which turns with the spindle. It wants a hole to begin
// with, and its slide sets the diameter.

// headNamed says whether the step or its set-up names a boring head.
func (k *asked) headNamed() bool {
	for _, r := range k.pinnedHolders() {
		if r.Item != nil && r.Item.Kind == "boring_head" {
			return true
		}
	}
	return false
}

// boringBars lists the bars for a hole: those that go into what is there, the thickest first; then
// the others.
func (c *chooser) boringBars(k *asked) []eval.Pick {
	var out []eval.Pick
	for _, cu := range c.here([]string{"boring_bar"}) {
		d, _ := cu.Diameter.V.Nearest(0)
		out = append(out, c.pick(k, cu, d))
	}
	had := 0.0
	if f := k.target.Form; f != nil {
		had = k.part.Feature(k.before, f).Diameter
	}
	enters := func(t eval.Pick) bool { return t.Cutter.LeastBore.Or(t.Size) <= had+model.Grain }
	sort.SliceStable(out, func(i, j int) bool {
		if enters(out[i]) != enters(out[j]) {
			return enters(out[i])
		}
		return out[i].Size > out[j].Size
	})
	return out
}

// boringHeads lists the boring heads that go in a spindle: those whose range holds the diameter first.
func (c *chooser) boringHeads(k *asked, m *model.Machine, add adder) {
	for _, h := range c.holders("boring_head") {
		pre, ok := c.inSpindle(m, shankTaper(h.Shank))
		r, known := h.Bores.Get()
		d := k.wanted()
		reaches := !known || len(r) == 2 && d >= r[0]-model.Grain && d <= r[1]+model.Grain
		add((ok || !h.Shank.Is()) && reaches, append(pre, eval.Mount{Holder: h})...)
	}
}
