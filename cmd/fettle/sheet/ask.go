package sheet

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/model"
)

// Some things can be known by nobody but the one who stands at the machine. They are asked where they
// matter, in the lines of the set-up or the operation, and are never findings: a question does not say
// that something is wrong. What each asks, and where, is common practice.

// asks is how the line of a question begins.
const asks = "to ask"

// chipsAsked is from how many diameters a hole is asked for its chips.
const chipsAsked = 5

// stringy are the metals, as the cutting tables group them, whose chips come long.
var stringy = []string{"steel_mild", "steel_free_cutting", "steel_tool", "stainless_303", "stainless_304", "aluminium", "copper", "acetal"}

// chips asks whether the chip breaks, where it comes long and close to a hand.
func chips(by string, group model.Known[string], deep, wide float64, put func(a, b string)) {
	if !group.Is() || !slices.Contains(stringy, group.V) {
		return
	}
	switch {
	case by == "parting":
		put(asks, "does the chip break? If it comes long, stop the feed to break it; draw it away with a hook, the spindle stopped, never by hand")
	case (by == "drilling" || by == "boring") && wide > 0 && deep >= chipsAsked*wide:
		put(asks, fmt.Sprintf("do the chips come out of the hole? It is %s diameters deep: draw back to break and clear them, and keep the hand away from what winds round the tool",
			model.Figure(float64(int(10*deep/wide))/10)))
	}
}

// cutAsks puts the questions of an operation on a mill or drill press.
func cutAsks(h *eval.Holding, k *eval.Cut, put func(a, b string)) {
	for i := range k.Works {
		w := &k.Works[i]
		if w.Wrong != "" || w.Target.Form == nil || w.Target.Sub != "" {
			continue
		}
		f := w.Target.Form
		switch {
		case f.Scale != nil:
			scaleAsks(f, put)
		case f.Tooth != nil && k.Choice.By == "milling" && w.Depth >= deepTooth-model.Grain:
			put(asks, "will head and machine take "+length(w.Depth)+" in one cut? If not, gash the gaps first with a slitting saw, or go round twice; lock the head for every cut, and hold the blank near its rim")
		}
		chips(k.Choice.By, k.MaterialGroup(), w.Depth, w.Diameter, put)
		break // the others of one operation are alike
	}
	if turns(h, k) {
		put(asks, "which way does the work turn when the crank goes clockwise? The places count from top towards back of the part; try it with a pencil mark before the first cut")
	}
}

// deepTooth is the depth of a gap, in mm, from which it is asked whether one cut takes it: that of module
// 1 nearly. Own limit.
const deepTooth = 2.2

// turns says whether it matters which way a dividing head turns: where the places do not lie evenly all
// round, or carry figures.
func turns(h *eval.Holding, k *eval.Cut) bool {
	if h.Choice.Divided == nil {
		return false
	}
	for _, t := range k.Step.Makes {
		switch f := t.Form; {
		case f == nil:
		case f.Scale != nil && (!f.Scale.Full() || f.Feature.Figures.Said):
			return true
		case f.Feature.Around.Said && f.Feature.Around.Over.Is() && f.Feature.Around.Over.V < 360:
			return true
		}
	}
	st := k.Step.Step
	return st != nil && len(st.Index.Angles.V) > 2
}

// ruledRuns says which way a straight scale grows, and asks for the stop.
func ruledRuns(f *eval.Form, put func(a, b string)) {
	r := f.Scale.Ruled
	below := "the edge that its lines begin at"
	if r.Round != nil {
		below = "the line that its lines begin at, " + model.Figure(r.Round.Angle) + " degrees from top towards back,"
	}
	runs := f.Feature.Runs.V
	if runs == "" {
		runs = "right"
	}
	put("runs", "to the "+runs+", held with "+below+" below")
	if n := len(f.Scale.Lines); n > 1 {
		put(asks, fmt.Sprintf("is there one stop with %d settings, a setting for each length of line? Set all of them on a spare piece before the first line", n))
	}
}

// scaleAsks says which lines of a scale are long and which way its figures grow, and asks for the stop.
func scaleAsks(f *eval.Form, put func(a, b string)) {
	s, m := f.Scale, f.Feature
	var lines []string
	for _, l := range s.Lines {
		which := "every line"
		switch {
		case l.Every == 1 && len(s.Lines) > 1:
			which = "the others"
		case l.Every > 1:
			which = fmt.Sprintf("every %d lines from the first", l.Every)
		}
		lines = append(lines, which+" "+length(l.Length))
	}
	put("lines", strings.Join(lines, ", "))
	if s.Ruled != nil {
		ruledRuns(f, put)
		return
	}
	side := "right"
	if m.SeenFrom.V.Face == model.Left {
		side = "left"
	}
	runs := m.Runs.V
	if runs == "" {
		runs = "clockwise"
	}
	zero := "looks to the top"
	if z := m.ZeroAt.V; z != 0 {
		zero = "stands " + model.Figure(z) + " degrees from top towards back"
	}
	put("runs", runs+" as seen from the "+side+" end; the first line "+zero)
	if len(s.Lines) > 1 {
		put(asks, fmt.Sprintf("is there one stop with %d settings, a setting for each length of line? Set all of them on a spare piece before the first line", len(s.Lines)))
	}
	if m.Figures.Said && !m.Runs.Said() && !m.Figures.Runs.Said() {
		put(asks, "which way are the figures to grow for the one who turns the dial? Nothing says it, and they are laid out "+runs+" as seen from the "+side+" end")
	}
}

// twin says the size of a tool whose name does not tell it, and names the one that it is easily taken for.
func (m *maker) twin(t eval.Pick, put func(a, b string)) {
	other, ok := t.Twin(m.c.Build)
	if !ok && !t.InFigures() {
		return
	}
	says := model.Figure(t.Size) + " mm"
	if t.InFigures() {
		says += fmt.Sprintf(" (%.4f in)", t.Size/25.4)
	}
	if ok {
		says += "; " + other.Path() + " of " + model.Figure(other.Size) + " mm is here too: measure before it goes in"
	}
	put("measures", says)
}

// holdAsks puts the questions of a set-up on a mill.
func holdAsks(g *group, put func(a, b string)) {
	h := g.hold
	if cast(h) {
		put(asks, "does the casting rest on three places and no more? Rock it by hand; file three spots, or put a jack or a shim under, before it is clamped")
	}
	if before := turnedTo(g); before != "" && !h.Work.SetUp.SetBy.Is() {
		put(asks, "how does the piece come to lie at the right angle to "+before+", made before it was taken out? Set that level or square first, and count from it")
	}
	if mc := h.Choice.Machine; mc != nil && mc.Kind == "mill" && !(mc.Tilts.Is() && mc.Tilts.V == 0) {
		for _, k := range g.cuts {
			if minds(k) {
				put(asks, "is the head square to the table, and when was it last tried? "+k.Choice.By+" "+makes(k.Step)+" shows it")
				break
			}
		}
	}
}

// turnedTo names what lies at an angle about the axis of a turned part and was made in another holding,
// where this one makes something at an angle too; "" where there is no such thing.
func turnedTo(g *group) string {
	if !g.hold.Part.Round {
		return ""
	}
	makes := false
	for _, k := range g.cuts {
		for _, t := range k.Step.Makes {
			makes = makes || t.Form != nil && k.Unplayed == "" && angled(t.Form)
		}
	}
	for i, f := range g.hold.Part.Forms {
		s := g.hold.Before.Features[i]
		if makes && s.Begun && angled(f) && s.By.SetUp != g.hold.Spot.SetUp {
			return f.Name()
		}
	}
	return ""
}

// angled says whether it matters how a feature is turned about the axis of its part: it does not look
// alike at every angle.
func angled(f *eval.Form) bool {
	if f.Tooth != nil || f.Scale != nil && f.Scale.Full() && !f.Feature.Figures.Said {
		return false
	}
	for _, v := range f.Mouths {
		if f.Into.Face.Turned() && math.Hypot(v[1], v[2]) > model.Grain {
			return true
		}
	}
	return len(f.Spins) > 0 || len(f.Mouths) > 0 && !f.Into.Face.Turned() || len(f.Copies) > 1 ||
		slices.Contains([]string{"flat", "flats", "keyway", "slot", "step", "pocket"}, f.Feature.Kind)
}

// minds says whether an operation shows a head that leans: a bore, a deep reamed hole, a wide face.
func minds(k *eval.Cut) bool {
	if k.Unplayed != "" || k.Choice.Tool.Cutter == nil {
		return false
	}
	switch kind := k.Choice.Tool.Cutter.Kind; {
	case k.BoresWithHead(), kind == "fly_cutter", kind == "face_mill":
		return true
	case k.Choice.By == "reaming":
		for _, w := range k.Works {
			if w.Diameter > 0 && w.Depth >= chipsAsked*w.Diameter {
				return true
			}
		}
	}
	return false
}

// cast says whether a piece stands on, or lies against the fixed jaw with, a face as it was cast.
func cast(h *eval.Holding) bool {
	for _, f := range model.Faces {
		n := h.Pose.Dir(eval.Normal(f))
		if s := h.Before.Faces[f]; s.Skin == "cast" && (n[2] < -0.5 || h.Choice.Vise != nil && n[1] > 0.5) {
			return true
		}
	}
	return false
}

// chuckAsks puts the questions of a set-up on a lathe.
func chuckAsks(g *group, put func(a, b string)) {
	c := g.chuck
	mc := c.Choice.Machine
	slid, line := false, false
	for _, k := range g.turns {
		for i := range k.Works {
			w := &k.Works[i]
			slid = slid || k.Choice.Post != nil && w.Off > 0 && k.Choice.By != "facing"
			line = line || k.Choice.By == "reaming" && w.R0 > 0 && w.Depth >= chipsAsked*2*w.R0
			line = line || c.CentreStands() && w.Final && w.Wrong == "" && k.Choice.By == "turning" && limited(w)
		}
	}
	if slid && mc != nil && !mc.CrossSlide.Reads.Is() {
		put(asks, "does the dial of the cross slide read the radius or the diameter? Wind in by ten lines, and measure what comes off")
	}
	if line {
		put(asks, "is the tailstock on the line of the spindle, sideways and in height, and when was it last tried? Turn both ends alike and measure")
	}
}

// limited says whether the size that a working brings about has limits of its own.
func limited(w *eval.Turning) bool {
	f := w.Target.Form
	return f != nil && f.Feature.Diameter.Is() && f.Feature.Diameter.V.Tol.Own()
}
