package eval

import (
	"math"

	"fettle/eval/reckon/thread"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Measurements that turned work has besides its sizes: how far a surface swings as it turns, a
// thread over three wires, and a mate that is tried on before the holding is opened.

// asTurned works out what such a measurement takes; false where it is none of them.
func (m *Measurement) asTurned() bool {
	st := m.Step.Step
	switch {
	case st.Runout.Is():
		m.runout(st.Runout.V)
	case st.OverWires.Is():
		m.overWires(st.OverWires.V)
	case st.Tries.Is():
		m.Name, m.Tried = st.Tries.V.Path(), true
	default:
		return false
	}
	return true
}

// runout is the full swing of an indicator on a surface. Its limits are those that the drawing
// gives for it: from 0 to what is allowed.
func (m *Measurement) runout(r model.Ref) {
	f := m.Part.FormOf(r.Item)
	switch {
	case f == nil && isOutside(r) && m.Part.Round:
		m.Name = "the run-out of the outside"
	case f == nil || f.Lathe == nil && len(f.Mouths) == 0:
		m.Wrong = "what is to run true is not a round surface of this part"
		return
	default:
		m.Form, m.Name = f, "the run-out of "+f.Name()
	}
	m.Runs = true
	m.Size = drawing.PlainSize(0, "", m.Part.Build.Recipe.Unit)
	m.Limits = model.Known[Limits]{Of: m.Part.Part.Item, Attr: "runout"}
	if f == nil {
		return
	}
	m.Limits = model.Known[Limits]{Of: f.Feature.Item, Attr: "runout"}
	for _, within := range []model.Known[float64]{f.Feature.RunoutTo.Within, f.Feature.Concentric.Within} {
		if within.Is() {
			m.Limits = model.Map(within, func(w float64) Limits { return Limits{0, w} })
			return
		}
	}
}

// overWires is the size of a thread over three wires: over the middle of the limits of its pitch
// diameter, by the class that the drawing gives, else the usual one of its series.
func (m *Measurement) overWires(r model.Ref) {
	f := m.Part.FormOf(r.Item)
	if f == nil || f.Feature.Kind != "thread" || !f.Feature.ThreadSize.Is() {
		m.Wrong = "what is measured over wires is not a thread of this part"
		return
	}
	m.Form, m.Name = f, f.Name()+" over wires"
	if f.Lathe != nil && f.Lathe.Inside {
		m.Wrong = "a thread in a bore is not measured over wires"
		return
	}
	t := f.Feature.ThreadSize.V
	if full, ok := handbook.FillThread(t); ok {
		t = full
	}
	wires, err := thread.WiresFor(t)
	if err != nil {
		m.Wrong = err.Error()
		return
	}
	class := f.Feature.Class.V
	if !f.Feature.Class.Is() {
		class, _ = thread.UsualClasses(t)
	}
	wire := m.Step.Step.Wire.Or(wires.Best)
	lim, err := thread.LimitsOf(t, class)
	if err != nil {
		m.Wrong = err.Error()
		return
	}
	lo, _, err := thread.Over(t, lim.PitchLo, wire)
	hi, _, err2 := thread.Over(t, lim.PitchHi, wire)
	if err != nil || err2 != nil {
		m.Wrong = "wires of " + model.Figure(wire) + " mm do not touch the flanks of " + t.String() + "; " +
			model.Figure(round3(wires.Least)) + " to " + model.Figure(round3(wires.Most)) + " mm do"
		return
	}
	m.Size = drawing.PlainSize(round3((lo+hi)/2), "", m.Part.Build.Recipe.Unit)
	m.Limits = model.Sure(Limits{lo, hi})
}

// threadTried is a thread that a gauge is tried on: it goes or does not, and there is no size to read.
func (m *Measurement) threadTried(f *Form) {
	m.Tried, m.Name = true, f.Name()
	t := f.Feature.ThreadSize
	if f.Kind() == "hole" {
		t, m.Name = f.Feature.Thread.Size, f.Name()+".thread"
	}
	if !t.Is() {
		m.Wrong = "the drawing gives it no thread"
		return
	}
	m.Thread, m.Inside = t.V, f.Kind() == "hole" || f.Lathe != nil && f.Lathe.Inside
}

// round3 brings a figure to a thousandth, mm.
func round3(x float64) float64 { return math.Round(x*1000) / 1000 }

// OddTeeth is how much less than the diameter two flat anvils read over a turned surface that an odd number of
// teeth, notches or flats is cut in: a tip on one side, and two on the other. False where nothing odd is cut in
// it yet, or it is no diameter.
func (m *Measurement) OddTeeth() (of *Form, short float64, ok bool) {
	if m.Wrong != "" || m.Inside || m.Runs || m.Tried || m.Depth || !m.Part.Round || !(m.Size.Nominal > 0) {
		return nil, 0, false
	}
	if m.Form != nil && m.Form.Feature.Kind != "outside" || m.Form == nil && m.Name != "diameter" {
		return nil, 0, false
	}
	for i, f := range m.Part.Forms {
		if f.Tooth == nil || f.On != m.Form || !m.State.Features[i].Begun || f.Tooth.Count < 3 || f.Tooth.Count%2 == 0 {
			continue
		}
		r := m.Size.Nominal / 2
		return f, r * (1 - math.Cos(math.Pi/float64(f.Tooth.Count))), true
	}
	return nil, 0, false
}
