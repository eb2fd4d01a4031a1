package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

var _ = enter(Rule{
	Name:  "finer-than-machine-repeats",
	Title: "the limits are finer than this machine comes back to by its dial, or than it turns parallel",
	Why: `A machine finds a place again by its dial only so closely, and a lathe whose axis is out of line with its bed turns a
taper where a cylinder is wanted. Its owner knows both figures. Where the limits leave less than twice what it is off, the size
comes out by luck. Measured while it is still held, a size that is too full can be cut once more, which halves what is wanted;
else set the last cut by an indicator, polish or lap to size, or ask for less.`,
	Rows: []string{"E2"},
	Source: []string{"what the owner states of the machine: repeats, turns_taper; twice the stated error: our own limit, to be set by the shop; half of that where the size is taken in the holding: our own reckoning",
		"the taper found on a test bar in the chuck is in proportion to length: geometry"},
	Limits:    []string{"repeat_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Deaf:      Holding | Mounting,
	Trips:     inLimits("±0.02") + repeating("0.03", "0.01"),
	Sound:     inLimits("±0.02") + repeating("0.01", "0.01"),
	OnCut:     finerThanMillRepeats,
	OnTurn:    finerThanLatheRepeats,
})

// inOwn holds the left end in the three-jaw chuck, on the lathe of the recipe.
const inOwn = `    machine = lathe.own
    hold    = chuck.three
    end     = "left"
    grip    = 20`

// inLimits turns 20 mm of the right end down to 16 mm, with limits.
func inLimits(limits string) string {
	return replaced(exampleWaist(inOwn, ""), "diameter = 16", `diameter = "16 `+limits+`"`)
}

// repeating is a lathe that finds a diameter again so closely, and turns so much taper in 100 mm.
func repeating(repeats, taper string) string {
	return `
lathe "own" {
  swing            = 250
  swing_over_slide = 150
  bore             = 26
  nose             = "M39x4"
  speeds           = [60, 100, 160, 260, 420, 680, 1100]
  repeats          = ` + repeats + `
  turns_taper      = ` + taper + `
}
`
}

func finerThanMillRepeats(k *eval.Cut, a *Ask) {
	m := k.Hold.Choice.Machine
	if m == nil || m.Kind != "mill" || k.Unplayed != "" || k.Choice.By != "milling" || k.Choice.Tool.Cutter == nil {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		if f := w.Target.Form; f != nil && (k.Choice.Tool.Size == f.Width || len(f.Mouths) > 0) {
			continue // as wide as its tool, whatever the dial says
		}
		finerThan(k, w, m, tapering{}, k.Place("tool", "makes"), a)
	}
}

func finerThanLatheRepeats(k *eval.Turn, a *Ask) {
	m := k.Lathe()
	if m == nil || k.Unplayed != "" {
		return
	}
	c := k.AsCut()
	for i := range c.Works {
		if w := &k.Works[i]; w.Wrong == "" && w.R0 == w.R1 && oneOf(k.By(w.Target), "turning", "boring") {
			finerThan(c, &c.Works[i], m, tapers(k, w), k.Place("tool", "makes"), a)
		}
	}
}

// tapering is by how much the two ends of a surface come out of different diameter, mm.
type tapering struct {
	off  float64
	over float64 // its length along the axis
}

// tapers is the taper of a cylinder that is turned, as its owner found it on a test bar in the
// chuck. What a centre carries at the other end is set by the tailstock, and another thing.
func tapers(k *eval.Turn, w *eval.Turning) tapering {
	if t, ok := k.Lathe().TurnsTaper.Get(); ok && !k.Hold.CentreStands() {
		along := k.Hold.About.Along
		over := math.Min(w.X1, k.Part.High()[along]) - math.Max(w.X0, k.Part.Low[along])
		return tapering{off: math.Abs(t) * over / 100, over: over}
	}
	return tapering{}
}

// coarseMachine is a width of limits that any machine comes back to, mm: of less its owner's figure
// is asked for. Our own.
const coarseMachine = 0.15

// takenAfter says whether what a step makes is measured, or tried with its mate, later in the same
// holding, where it can still be cut again.
func takenAfter(st *eval.Step, t eval.Target) bool {
	later := false
	for _, s := range st.Work.Steps {
		if s == st {
			later = true
			continue
		}
		if !later || s.Kind != "measure" || s.Step == nil || s.Step.TakenOut.V {
			continue
		}
		of := s.Step.Measured
		switch {
		case s.Step.Tries.Is():
			return true
		case t.Form != nil && of.Of.Is() && of.Of.V.Item == t.Form.Feature.Item:
			return true
		case t.Form == nil && (of.Of.Is() && of.Of.V.Item.Kind == "part" || of.From.Is()):
			return true
		}
	}
	return false
}

// finerThan compares the limits of what a work brings to size with the machine's own figures.
func finerThan(k *eval.Cut, w *eval.Working, m *model.Machine, t tapering, at text.Place, a *Ask) {
	if !w.Final {
		return
	}
	size, of, attr := finalSize(k, w)
	if of == nil || size.Nominal <= 0 {
		return
	}
	lim, ok := eval.LimitsOf(size, k.Part.Build.Recipe.General, of, attr).Get()
	if !ok || lim.Width()-t.off >= coarseMachine {
		return // no limits are asked for, or such as any machine keeps
	}
	if _, ok := Need(a, m.Repeats); !ok && t.off == 0 {
		return
	}
	share, often := a.Limit("repeat_share"), "usually"
	measured := takenAfter(k.Step, w.Target)
	if measured {
		share, often = share/2, "and though it is measured in the holding, usually"
	}
	has, wants := round(lim.Width()-t.off), round(share*m.Repeats.V)
	cause := w.Target.Name() + "." + attr + "+" + m.Path()
	says := func(cause, words string, args ...any) {
		f := a.Say(cause, at, words, args...)
		f.Margin = Room(has, wants)
		if m.Repeats.Is() {
			f.Also = append(f.Also, finding.Note{Place: m.Repeats.At, Says: "how closely it comes back"})
		}
		if t.off > 0 {
			f.Also = append(f.Also, finding.Note{Place: m.TurnsTaper.At, Says: "the taper that it turns in 100 mm"})
		}
	}
	width := mm(round(lim.Width()))
	switch {
	case has < -0.0005:
		says(cause+".turns_taper", "the limits of %s leave a width of %s, and %s turns a taper of %s over its %s mm: one end or the other comes out beyond them",
			w.Target.Name(), width, m.Path(), mm(round(t.off)), figure(round(t.over)))
	case has >= wants-0.0005:
		a.Clear(Room(has, wants), "the limits of "+w.Target.Name()+" against what "+m.Path()+" comes back to")
	case t.off > 0:
		says(cause+".repeats", "the limits of %s leave a width of %s, of which %s turns %s away as taper over its %s mm, and it comes back by its dial to %s: %s what is left is at least %s (repeat_share)",
			w.Target.Name(), width, m.Path(), mm(round(t.off)), figure(round(t.over)), mm(m.Repeats.V), often, timesThat(share))
	default:
		says(cause+".repeats", "the limits of %s leave a width of %s, and %s comes back by its dial to %s: %s they leave at least %s (repeat_share)",
			w.Target.Name(), width, m.Path(), mm(m.Repeats.V), often, timesThat(share))
	}
	if n := len(a.v.Found); n > 0 && !measured && has >= wants/2-0.0005 {
		a.v.Found[n-1].Says += "; measured before it leaves the holding, half of that would do"
	}
}

// timesThat words a multiple.
func timesThat(share float64) string {
	if share == 1 {
		return "as much as that"
	}
	return figure(share) + " times that"
}
