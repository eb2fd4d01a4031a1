package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "mandrel-does-not-fit",
	Title: "the mandrel is not of the bore's diameter",
	Why: `A mandrel holds by the bore, and only a bore of its own size. A looser one lets the work turn on it and run out, a tighter one
does not go in. A stub mandrel turned for the job, and left in the chuck, always runs true.`,
	Rows:      []string{"C15"},
	Source:    []string{"sizes as declared; five hundredths of a millimetre are taken for the same: our own"},
	Level:     finding.Stop,
	Judgement: finding.Fact,
	Trips:     exampleMandrel("12", "20", ""),
	Sound:     exampleMandrel("10", "20", ""),
	OnChuck:   mandrelDoesNotFit,
})

// exampleMandrel turns a disc with a bore of 10 mm on a mandrel.
func exampleMandrel(size, disc, more string) string {
	s := exampleTurned(`
  hole "eye" {
    into     = "left"
    diameter = 10
  }
`, `    machine   = lathe.centre
    hold      = mandrel.own
    end       = "left"
    stick_out = 5`, `
    operation {
      makes = face.right
    }`)
	s = replaced(replaced(s, "diameter = 20", "diameter = "+disc), "length   = 60", "length   = 15")
	s = replaced(s, "  setup \"turn\"", "  setup \"first\" {\n"+replaced(inFour, `"left"`, `"right"`)+"\n\n    operation {\n      makes = face.left\n    }\n    operation {\n      makes = hole.eye\n    }\n  }\n\n  setup \"turn\"")
	return replaced(s, "    grip    = 20", "    grip    = 10") + `
mandrel "own" {
  kind     = "stub"
  diameter = [` + size + `]
  length   = 14
` + more + `}
`
}

// mandrelSame is how near a bore must be to the mandrel's size, mm.
const mandrelSame = 0.05

func mandrelDoesNotFit(h *eval.Chucking, a *Ask) {
	m := h.Choice.Mandrel
	if m == nil {
		return
	}
	kind, ok := Need(a, m.Sort)
	if ok && nutDoesNotPass(h, m, kind, a) {
		return
	}
	if ok && kind == "screwed" {
		onScrewed(h, m, a)
		return
	}
	if !ok || kind == "glue" {
		return
	}
	sizes, ok := Need(a, m.Diameter)
	if !ok {
		return
	}
	if h.Gripped == 0 {
		a.Say(m.Path()+".bore+"+h.Part.Label, h.Place("hold"), "%s has no bore where %s holds it", h.Part.Label, m.Path())
		return
	}
	near, ok := sizes.Nearest(h.Gripped)
	if !ok {
		return
	}
	off := round(math.Abs(near - h.Gripped))
	if off <= mandrelSame+0.0005 {
		a.Clear(Bound(off, mandrelSame, "mm"), "the bore on "+m.Path())
		return
	}
	f := a.Say(m.Path()+".diameter+"+h.Part.Label, h.Place("hold"), "%s fits bores of %s mm, and %s has one of %s mm there",
		m.Path(), figure(round(near)), h.Part.Label, figure(round(h.Gripped)))
	f.Also = []finding.Note{{Place: m.Diameter.At, Says: "what it fits"}}
}

// onScrewed asks of a screwed mandrel whether the work has a thread of its kind on the axis.
func onScrewed(h *eval.Chucking, m *model.Mandrel, a *Ask) {
	thread, ok := Need(a, m.Thread)
	if !ok {
		return
	}
	has := ""
	for _, f := range h.Part.Forms {
		t, ok := f.Feature.Thread.Size.Get()
		if f.Feature.Kind == "thread" && f.Lathe != nil && f.Lathe.Inside { // cut in a bore
			t, ok = f.Feature.ThreadSize.Get()
		}
		if fs := h.Part.Feature(h.Before, f); !ok || fs == nil || !fs.Threaded || !f.About.Same(h.About) {
			continue
		}
		if filled(t).Same(filled(thread)) {
			onShoulder(h, m, thread, a)
			return
		}
		has = f.Name() + " is " + t.String()
	}
	if has == "" {
		has = h.Part.Label + " has no thread on its axis then"
	}
	f := a.Say(m.Path()+".thread+"+h.Part.Label, h.Place("hold"), "%s holds by %s, and %s", m.Path(), thread, has)
	f.Also = []finding.Note{{Place: m.Thread.At, Says: "its thread"}}
}

// onShoulder asks whether work that is screwed on finds the shoulder that it is to stand against.
func onShoulder(h *eval.Chucking, m *model.Mandrel, thread drawing.Thread, a *Ask) {
	if d := m.Shoulder.V; m.Shoulder.Is() && d <= thread.Diameter+0.0005 {
		f := a.Say(m.Path()+".shoulder+"+h.Part.Label, h.Place("hold"), "%s is to stand against the shoulder of %s, and that is ⌀%s mm, no larger than its thread, %s", h.Part.Label, m.Path(), figure(d), thread)
		f.Also = []finding.Note{{Place: m.Shoulder.At, Says: "its shoulder"}}
		return
	}
	a.Clear(finding.Margin{}, "")
}

// nutDoesNotPass says that a nut holds no work on a mandrel: it does not go on the mandrel's own thread, or
// the end that it goes on is thicker than the bore that must pass over it.
func nutDoesNotPass(h *eval.Chucking, m *model.Mandrel, kind string, a *Ask) bool {
	nut, ok := m.Nut.Get()
	if !ok || kind == "glue" {
		return false
	}
	thread, own := m.Thread.Get()
	says := ""
	switch {
	case own && kind == "screwed" && !filled(thread).Same(filled(nut)) && nut.Diameter > thread.Diameter-model.Grain:
		says = "the nut of " + m.Path() + " goes on " + nut.String() + ", and work with a thread of " + thread.String() + " does not pass over that"
	case own && kind != "screwed" && !filled(thread).Same(filled(nut)):
		says = "the nut of " + m.Path() + " is " + nut.String() + ", and its thread is " + thread.String()
	case kind != "screwed" && h.Gripped > 0 && nut.Diameter > h.Gripped+0.0005:
		says = "the nut of " + m.Path() + " goes on " + nut.String() + ", and the bore of " + h.Part.Label + ", ⌀" + mm(round(h.Gripped)) + ", does not pass over that"
	default:
		return false
	}
	f := a.Say(m.Path()+".nut+"+h.Part.Label, h.Place("hold"), "%s", says)
	f.Also = []finding.Note{{Place: m.Nut.At, Says: "its nut"}}
	return true
}
