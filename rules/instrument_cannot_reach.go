package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "instrument-cannot-reach",
	Title: "the instrument does not get to where the size lies",
	Why: `A micrometer's frame, a caliper's jaws and a bore gauge's stem reach only so far in from the edge
of the work; and a face that lies in the jaws of the vise or on its bed cannot be measured to at all until the
piece is taken out.`,
	Rows:      []string{"E10"},
	Source:    []string{"geometry, and reaches as declared"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleInVise(""),
	Sound:     exampleInVise("taken_out = true"),
	OnMeasure: instrumentCannotReach,
})

// exampleInVise takes the height while the piece still sits on its parallels.
func exampleInVise(attr string) string {
	return replaced(exampleHole(), "      makes = hole.pin\n    }\n", `      makes = hole.pin
    }
    deburr {}
    measure {
      size = height
      with = micrometer.first
      `+attr+`
    }
`)
}

func instrumentCannotReach(m *eval.Measurement, a *Ask) {
	if m.Wrong != "" || m.With == nil {
		return
	}
	takenOut, ok := Need(a, m.Step.Step.TakenOut)
	if !ok || m.Hold != nil && m.Hold.Unplayed == "" && !takenOut && coveredFace(m, a) {
		return
	}
	if m.Depth && m.With.Kind == "depth_gauge" && fallsIn(m, a) {
		return
	}
	deep, what := 0.0, model.Known[float64]{}
	switch {
	case m.Faces[0] != model.NoFace && m.With.Kind == "micrometer":
		deep, what = nearestEdge(m), m.With.Reach
	case m.With.Kind == "plug_gauge" && m.Inside && !m.Depth && m.Form != nil && m.Deep > 0:
		plugTooShort(m, a)
		return
	case m.Faces[0] != model.NoFace && m.With.Kind == "caliper":
		deep, what = nearestEdge(m), m.With.Jaws
	default:
		a.Clear(finding.Margin{}, "")
		return
	}
	if deep < 0.001 {
		a.Clear(finding.Margin{}, "")
		return
	}
	reach, ok := Need(a, what)
	if !ok {
		return
	}
	if deep > reach+0.0005 {
		f := a.Say(m.With.Path()+".reach+"+m.Name, m.Place("at", "with"), "the place where %s is taken lies %s from the nearest edge, and %s reaches %s in",
			m.Name, mm(deep), m.With.Path(), mm(reach))
		f.Margin = Bound(deep, reach, "mm")
		return
	}
	a.Clear(Bound(deep, reach, "mm"), "the reach of "+m.With.Path())
}

// plugTooShort says so where a plug gauge tries only the beginning of a hole. From both sides of a through
// hole it may try half of it each.
func plugTooShort(m *eval.Measurement, a *Ask) {
	deep := m.Deep
	if m.Form.Through {
		deep /= 2
	}
	l, ok := m.With.Length.Get()
	if !ok || deep <= l+0.0005 {
		a.Clear(finding.Margin{}, "")
		return
	}
	f := a.Say(m.With.Path()+".length+"+m.Name, m.Place("with", "size"), "%s goes in %s, and the hole is %s deep: %s of it stay untried", m.With.Path(), mm(l), mm(round(m.Deep)), mm(round(m.Deep-l*m.Deep/deep)))
	f.Margin = Bound(round(deep), l, "mm")
	f.Also = []finding.Note{{Place: m.With.Length.At, Says: "how far it goes in"}}
}

// nearestEdge is how far in from the nearest edge of the face the written place lies; 0
// where none is written, since a place at the edge will do.
func nearestEdge(m *eval.Measurement) float64 { return m.EdgeDistance() }

// coveredFace says so where a face that is measured to lies against jaw, parallels or bed.
func coveredFace(m *eval.Measurement, a *Ask) bool {
	for _, f := range m.Faces {
		if f == model.NoFace {
			continue
		}
		by := m.Hold.Covers(f)
		if by == "" {
			continue
		}
		a.Say(m.Spot.SetUp+"+"+m.Name+"+"+f.String(), m.Place("size", "taken_out"),
			"%s cannot be taken while the piece is held: its %s face lies on %s; take it out (taken_out = true), or measure from what it sits on",
			m.Name, f, by)
		return true
	}
	return false
}

// smallFoot is an opening that the foot of any depth gauge bridges, mm: of a wider one its length is
// asked for. Common practice.
const smallFoot = 25.0

// fallsIn says so where the foot of a depth gauge is no longer than the opening that it is to bridge. A
// step is open on one side: the foot lies on the other.
func fallsIn(m *eval.Measurement, a *Ask) bool {
	f := m.Form
	if f == nil || !oneOf(f.Feature.Kind, "slot", "pocket", "hole") {
		return false
	}
	wide := f.Width
	switch f.Feature.Kind {
	case "hole":
		wide = f.Diameter.Or(0)
	case "pocket":
		in := f.Into.Face.Axis()
		wide = min(f.Hi[(in+1)%3]-f.Lo[(in+1)%3], f.Hi[(in+2)%3]-f.Lo[(in+2)%3])
	}
	if wide <= smallFoot {
		return false
	}
	base, ok := Need(a, m.With.Base)
	if !ok || base > wide+0.0005 {
		return false
	}
	n := a.Say(m.With.Path()+".base+"+m.Name, m.Place("with", "size"), "the foot of %s is %s long, and %s is %s wide: it falls in; lay a parallel across, and take it off the reading", m.With.Path(), mm(base), f.Name(), mm(round(wide)))
	n.Margin = Room(base, round(wide))
	return true
}
