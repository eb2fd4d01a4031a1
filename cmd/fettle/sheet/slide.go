package sheet

import (
	"math"

	"fettle/eval"
	"fettle/eval/reckon/thread"
	"fettle/schema/model"
)

// The slides of a lathe: how far each is set over or wound in, in turns and lines of its own dial.

// slide says how far the top slide is set over, and how far it must go.
func slide(k *eval.Turn, put func(a, b string)) {
	if k.Choice.Slide == 0 {
		return
	}
	s := model.Figure(math.Round(k.Choice.Slide*1e4)/1e4) + " degrees from the axis"
	switch st := k.Step.Step; {
	case st != nil && st.TopSlide.Is():
		s += ", as written"
	default:
		s += ", half of the included angle"
	}
	for i := range k.Works {
		w := &k.Works[i]
		if f := w.Target.Form; f == nil || f.Feature.Kind != "taper" || w.Wrong != "" {
			continue
		}
		s += "; it goes " + length(w.TaperWay()) + " along the slope"
		if mc := k.Lathe(); mc != nil && mc.TopSlide.Travel.Is() {
			s += " of the " + model.Figure(mc.TopSlide.Travel.V) + " mm that it has"
		}
	}
	put("top slide", s)
}

// crossDial is the dial of the cross slide; false where it is not known what it counts.
func (m *maker) crossDial(mc *model.Machine) (dial, bool) {
	if mc == nil || !mc.CrossSlide.Reads.Is() {
		return dial{}, false
	}
	return m.dialOf(mc.CrossSlide.Turn, mc.CrossSlide.Division)
}

// crossSlide says once for a set-up what the dial of the cross slide counts, and how to come to a size.
func (m *maker) crossSlide(mc *model.Machine) string {
	d, ok := m.crossDial(mc)
	if !ok {
		return ""
	}
	s := "its dial reads the " + mc.CrossSlide.Reads.V + ", one line " + d.size(d.line) + ", one turn " + d.size(d.turn) + "; come to every size winding into the cut"
	if mc.Backlash.Bare.Is() {
		s += ", the slack is " + model.Figure(mc.Backlash.Bare.V) + " mm"
	}
	return s
}

// slides says a cut in turns and lines: of the cross slide for what comes off a diameter, of the top
// slide, set along the axis, for what comes off a length.
func (m *maker) slides(k *eval.Turn, w *eval.Turning, put func(a, b string)) {
	mc := k.Lathe()
	if mc == nil || k.Choice.Post == nil || w.Wrong != "" {
		return
	}
	if k.Choice.By == "facing" || w.Target.Form != nil && w.Target.Form.EndRing != nil {
		if d, ok := m.dialOf(mc.TopSlide.Turn, mc.TopSlide.Division); ok && k.Choice.Slide == 0 {
			put("top slide, along the axis", d.reads(w.U1-w.U0)+" for the whole of it")
		}
		return
	}
	d, ok := m.crossDial(mc)
	if deep := screwDepth(k, w); deep > 0 {
		words := model.Figure(math.Round(deep*1e3)/1e3) + " mm on the radius, to the root of its profile; a sharper point goes deeper: try the mate or a gauge"
		if way := deep; ok {
			if mc.CrossSlide.Reads.V == "diameter" {
				way *= 2
			}
			words += "; cross slide, fed square: " + d.reads(way)
		}
		put("thread deep", words)
		return
	}
	if !ok || !(w.Off > 0) {
		return
	}
	way, to := w.Off, ""
	if aim, ok := m.aim(w); ok {
		way = math.Abs(w.Had - aim/2)
		to = ", to ⌀" + model.Figure(aim) + ", the middle of its limits"
	}
	if mc.CrossSlide.Reads.V == "diameter" {
		way *= 2
	}
	by := "in by "
	if w.Inside {
		by = "out by "
	}
	put("cross slide", by+d.reads(way)+" in all from where it touches"+to)
}

// screwDepth is how deep a thread is that a tool in the post cuts, mm on the radius; 0 of all else, and of threads whose
// profile is not known.
func screwDepth(k *eval.Turn, w *eval.Turning) float64 {
	f := w.Target.Form
	if k.Choice.By != "threading" || f == nil || !f.Feature.ThreadSize.Is() || k.Choice.Tool.Cutter == nil || k.Choice.Tool.Cutter.Kind != "threading_tool" {
		return 0
	}
	t := f.Feature.ThreadSize.V
	_, nut, root, ok := thread.Diameters(t)
	switch {
	case !ok:
		return 0
	case w.Inside:
		return (t.Diameter - nut) / 2
	}
	return (t.Diameter - root) / 2
}

// aim is the diameter in the middle of the limits of what a working finishes, to a thousandth; false
// where it finishes none, or its limits are not said.
func (m *maker) aim(w *eval.Turning) (float64, bool) {
	f := w.Target.Form
	if !w.Final || f == nil || w.Target.Sub != "" || math.Abs(w.R0-w.R1) > model.Grain || !f.Feature.Diameter.Is() ||
		f.Feature.Kind != "outside" && f.Feature.Kind != "hole" && f.Feature.Kind != "bore" && f.Feature.Kind != "groove" {
		return 0, false
	}
	l := eval.LimitsOf(f.Feature.Diameter.V, m.c.Build.Recipe.General, f.Feature.Item, "diameter")
	if !l.Is() || math.Abs((l.V.Lo+l.V.Hi)/2-2*w.R0) > 1 {
		return 0, false
	}
	return math.Round((l.V.Lo+l.V.Hi)/2*1000) / 1000, true
}
