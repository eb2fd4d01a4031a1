package rules

import (
	"slices"
	"strings"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:      "instrument-for-another-job",
	Title:     "the instrument measures outsides and the size is an inside one, or the other way about",
	Why:       `A plain micrometer takes outsides; a bore wants inside jaws, a bore gauge or a plug. What cannot get at the size cannot measure it.`,
	Rows:      []string{"E10"},
	Source:    []string{"kinds as declared"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleBore("micrometer.first"),
	Sound:     exampleBore("caliper.long"),
	OnMeasure: instrumentForAnotherJob,
})

// exampleBore takes the diameter of a hole with an instrument.
func exampleBore(with string) string {
	s := replaced(exampleMeasure("    deburr {}\n", "height   = 10", 10), "size = height", "size = hole.pin.diameter")
	s = replaced(replaced(s, "width    = 6", "width    = 30"), "length   = 8", "length   = 30")
	s = replaced(s, "parallels = 10", "parallels = 12")
	s = replaced(s, "{ left = 4, front = 3 }", "{ left = 15, front = 15 }")
	return replaced(s, "micrometer.first", with)
}

func instrumentForAnotherJob(m *eval.Measurement, a *Ask) {
	if g, ok := m.Gauged(); ok && m.With == nil {
		if g.Bore {
			a.Say(g.Set.Path()+"+"+m.Name, m.Place("with", "size"), "%s is a bore, and the gauges of %s are flat: they measure between flats", m.Name, g.Set.Path())
			return
		}
		a.Clear(finding.Margin{}, "")
		return
	}
	if m.Wrong == "" && m.Thread.Diameter > 0 {
		threadGauge(m, a)
		return
	}
	if m.Wrong != "" || m.With == nil || m.Tried {
		return
	}
	if m.Runs {
		if oneOf(m.With.Kind, "dial_indicator", "dial_test_indicator") {
			a.Clear(finding.Margin{}, "")
			return
		}
		a.Say(m.With.Path()+"+"+m.Name, m.Place("with", "runout"), "%s is read with an indicator as the work turns, and %s is none", m.Name, m.With.Path())
		return
	}
	if m.Angle != (m.With.Kind == "protractor") {
		says := "%s is an angle, and %s measures lengths"
		if !m.Angle {
			says = "%s is a length, and %s measures angles"
		}
		a.Say(m.With.Path()+"+"+m.Name, m.Place("with", "size"), says, m.Name, m.With.Path())
		return
	}
	if !m.Inside && !m.Depth {
		if oneOf(m.With.Kind, "bore_gauge", "telescopic_gauge", "plug_gauge", "depth_gauge") || m.With.Measures.V == "inside" || m.With.Measures.V == "depth" {
			a.Say(m.With.Path()+"+"+m.Name, m.Place("with", "size"), "%s is an outside size, and %s does not measure outsides", m.Name, m.With.Path())
			return
		}
		a.Clear(finding.Margin{}, "")
		return
	}
	if m.Depth {
		if oneOf(m.With.Kind, "depth_gauge", "caliper", "steel_rule", "height_gauge", "dial_indicator") || m.With.Measures.V == "depth" {
			a.Clear(finding.Margin{}, "")
			return
		}
		a.Say(m.With.Path()+"+"+m.Name, m.Place("with", "size"), "%s is a depth, and %s does not measure depths", m.Name, m.With.Path())
		return
	}
	switch {
	case m.With.Kind == "bore_gauge" && betweenWalls(m):
		a.Say(m.With.Path()+"+"+m.Name, m.Place("with", "size"), "%s lies between walls, and %s measures bores", m.Name, m.With.Path())
	case oneOf(m.With.Kind, "bore_gauge", "telescopic_gauge", "plug_gauge", "steel_rule") || m.With.Measures.V == "inside":
		a.Clear(finding.Margin{}, "")
	case m.With.Kind == "caliper":
		insideJaws(m, a)
	default:
		a.Say(m.With.Path()+"+"+m.Name, m.Place("with", "size"), "%s is an inside size, and %s measures outsides", m.Name, m.With.Path())
	}
}

// threadGauge asks whether what a thread is tried with is a gauge of that thread, and of the kind that goes there.
func threadGauge(m *eval.Measurement, a *Ask) {
	size := m.Thread.String()
	if m.With == nil {
		a.Lack(model.Lack{Fact: "a thread gauge for " + size, At: m.Step.Step.Item.At})
		return
	}
	cause, at := m.With.Path()+"+"+m.Name, m.Place("with", "size")
	if m.With.Kind != "thread_gauge" {
		a.Say(cause, at, "%s is a thread: a thread gauge or its mate tries it, and outside wires measure it (over_wires); %s does neither", m.Name, m.With.Path())
		return
	}
	kind, ok := Need(a, m.With.Measures)
	threads, ok2 := Need(a, m.With.Threads)
	want := "ring"
	if m.Inside {
		want = "plug"
	}
	switch {
	case ok && kind == "leaves":
		a.Say(cause, at, "%s is %s, and the leaves of %s show its pitch alone, not whether it fits: a %s tries it", m.Name, size, m.With.Path(), want)
	case ok && kind != want:
		a.Say(cause, at, "%s is %s, and %s is a %s: a %s tries it", m.Name, map[bool]string{true: "a thread in a hole", false: "an outside thread"}[m.Inside], m.With.Path(), kind, want)
	case ok2 && !slices.ContainsFunc(threads, m.Thread.Same):
		a.Say(cause, at, "%s is %s, and %s is for %s", m.Name, size, m.With.Path(), threadsWords(threads))
	case ok && ok2:
		a.Clear(finding.Margin{}, "")
	}
}

func threadsWords(ts []drawing.Thread) string {
	var out []string
	for _, t := range ts {
		out = append(out, t.String())
	}
	return strings.Join(out, ", ")
}

// betweenWalls says whether an inside size is that of a slot or the like, and of nothing round.
func betweenWalls(m *eval.Measurement) bool {
	return m.Form != nil && oneOf(m.Form.Feature.Kind, "slot", "pocket", "tee_slot", "dovetail", "slit", "keyway")
}

// insideJaws asks whether the inside jaws of a caliper go into a bore.
func insideJaws(m *eval.Measurement, a *Ask) {
	in, ok := Need(a, m.With.Inside)
	if !ok || len(in) < 1 {
		return
	}
	if m.Size.Nominal < in[0]-0.0005 {
		a.Say(m.With.Path()+".inside+"+m.Name, m.Place("with", "size"), "%s is %s, and the inside jaws of %s want a bore of %s at least",
			m.Name, mm(m.Size.Nominal), m.With.Path(), mm(in[0]))
		return
	}
	a.Clear(finding.Margin{Has: m.Size.Nominal, Wants: in[0], Unit: "mm"}, "the inside jaws of "+m.With.Path())
}
