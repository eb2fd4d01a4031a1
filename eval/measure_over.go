package eval

import "fettle/schema/model"

// micrometers are the outside micrometers that are here: what a telescopic gauge is measured over
// with.
func (m *Measurement) micrometers() []*model.Instrument {
	var out []*model.Instrument
	for _, i := range m.Part.Build.Shop.Instruments {
		if i.Kind == "micrometer" && i.Here() && i.Measures.Or("outside") == "outside" {
			out = append(out, i)
		}
	}
	return out
}

// Shows is the smallest step that the reading can show, mm: the instrument's own, and of a
// telescopic gauge, which shows nothing itself, that of the finest micrometer here whose range
// the size lies in.
func (m *Measurement) Shows() model.Known[float64] {
	if m.With.Kind != "telescopic_gauge" {
		return m.With.ReadsTo
	}
	best := model.Known[float64]{Of: m.With.Item, Attr: "micrometer for it (none here has the range)"}
	for _, i := range m.micrometers() {
		r, ok := i.Range.Get()
		if ok && (len(r) != 2 || m.Size.Nominal < r[0]-model.Grain || m.Size.Nominal > r[1]+model.Grain) {
			continue
		}
		if step, ok := i.ReadsTo.Get(); ok && (!best.Is() || step < best.V) || !best.Is() {
			best = i.ReadsTo
		}
	}
	return best
}
