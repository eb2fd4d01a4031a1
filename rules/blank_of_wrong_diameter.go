package rules

import (
	"math"

	"fettle/eval"
	"fettle/eval/reckon/gear"
	"fettle/schema/drawing"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "blank-of-wrong-diameter",
	Title: "the diameter of the blank is not that over the tips of its teeth",
	Why: `The cutter is fed in from the outside of the blank by the depth of the tooth. A blank turned too large leaves thick teeth that
do not go into mesh, one too small thin teeth with a short tip. Over the tips a wheel measures module times teeth and two more;
a shifted profile says so. Between the tips of inside teeth two less. The teeth of clockwork stand out of the pitch circle by what
the table of their cutter says, and never farther than where both flanks meet. A throated wheel is to be hollowed: its blank is
larger than the tips in the middle of the rim.`,
	Rows: []string{"H6"},
	Source: []string{"m (z + 2 + 2x) or (z + 2)/DP: ISO 21771, gear handbooks; throat m z + 2 m: metric worm formula sheets",
		"where the flanks of cycloidal teeth meet: geometry; reckon/gear, Pointed"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     replaced(replaced(exampleWheel("", "", "", ""), "  diameter = 31\n  length", "  diameter = 30\n  length"), "from     = 60\n    diameter = 31", "from     = 60\n    diameter = 30"),
	Sound:     exampleWheel("", "", "", ""),
	OnPart:    blankOfWrongDiameter,
})

// asDrawn is how far a diameter without limits may be off by being written to two places.
const asDrawn = 0.005

func blankOfWrongDiameter(p *eval.PartTrace, a *Ask) {
	for _, f := range p.Part.Forms {
		if f.Tooth == nil || !(f.Tooth.Module > 0) || f.On == nil && !p.Part.Part.Diameter.Is() {
			continue
		}
		size, item := p.Part.Part.Diameter, p.Part.Item
		if f.On != nil {
			size, item = f.On.Feature.Diameter, f.On.Feature.Item
		}
		if !size.Is() {
			a.Lack(size.Missing()...)
			continue
		}
		lim := eval.Limits{Lo: size.V.Nominal - asDrawn, Hi: size.V.Nominal + asDrawn}
		if l, ok := eval.LimitsOf(size.V, p.Part.Build.Recipe.General, item, "diameter").Get(); ok {
			lim = eval.Limits{Lo: math.Min(l.Lo, lim.Lo), Hi: math.Max(l.Hi, lim.Hi)}
		}
		if !f.Tooth.Inside {
			wants := size.V.Nominal
			if f.Tooth.Involute && f.Tooth.Throat == nil {
				wants = f.Tooth.Blank.Tip
			}
			blankThen(p, f, lim, wants, a)
		}
		b := blank{p, f, size, lim}
		switch {
		case f.Tooth.Form == "cycloidal":
			b.cycloidal(a)
		case f.Tooth.Throat != nil:
			b.throated(a)
		default:
			b.involute(a)
		}
	}
}

// blank is a surface that carries teeth, and its diameter with its limits.
type blank struct {
	p    *eval.PartTrace
	f    *eval.Form
	size model.Known[drawing.Size]
	lim  eval.Limits
}

func (b blank) say(a *Ask, format string, args ...any) *finding.Finding {
	return a.Say(b.p.Part.Label+"."+b.f.Name()+".blank", b.size.At, format, args...)
}

func (b blank) involute(a *Ask) {
	f, size, lim, tip := b.f, b.size, b.lim, b.f.Tooth.Blank.Tip
	if tip >= lim.Lo-1e-9 && tip <= lim.Hi+1e-9 {
		a.Clear(Bound(round(math.Abs(tip-size.V.Nominal)), round(math.Max(lim.Hi-size.V.Nominal, size.V.Nominal-lim.Lo)), "mm"), "the blank of "+f.Name())
		return
	}
	word, has := "large", "which measure %s mm over the tips; the blank has %s, %s mm too %s"
	if f.Tooth.Inside {
		has = "which leave %s mm between their tips; the bore has %s, %s mm too %s"
	}
	if size.V.Nominal < tip {
		word = "small"
	}
	m := b.say(a, "%s are %d teeth of module %.4g mm, "+has,
		f.Name(), f.Tooth.Count, f.Tooth.Wheel.Module, figure(round(tip)), mm(size.V.Nominal), figure(round(math.Abs(size.V.Nominal-tip))), word)
	m.Also = []finding.Note{{Place: f.Feature.Item.At, Says: "the teeth; a profile shift would be said by shifted"}}
}

// cycloidal asks what is certain of teeth of clockwork: they stand out of their pitch circle and reach
// into it, and are no taller than where their flanks meet.
func (b blank) cycloidal(a *Ask) {
	f, t := b.f, b.f.Tooth
	pitch := t.Module * float64(t.Count)
	if b.lim.Hi <= pitch+asDrawn+1e-9 {
		b.say(a, "%s are %d teeth of module %.4g mm on a pitch circle of %s; the blank has %s, and no tooth stands out of it", f.Name(), t.Count, t.Module, mm(round(pitch)), mm(b.size.V.Nominal))
		return
	}
	if floor := b.size.V.Nominal - 2*t.Deep; floor >= pitch-1e-9 {
		b.say(a, "the gaps of %s are %s deep and end at a diameter of %s, outside of the pitch circle of %s", f.Name(), mm(t.Deep), mm(round(floor)), mm(round(pitch)))
		return
	}
	leaves, driver := b.p.Part.PinionLeaves(f)
	switch {
	case !driver:
		a.Clear(finding.Margin{}, "") // a pinion: its leaves are rounded as its cutter has it
		return
	case leaves == 0:
		a.Lack(model.Lack{Fact: "the pinion of " + f.Feature.Path() + " (no mesh names it)", At: f.Feature.Item.At})
		return
	}
	high, err := gear.Pointed(t.Count, leaves)
	if err != nil {
		return
	}
	most := pitch + 2*t.Module*high
	if b.lim.Lo > most+1e-9 {
		m := b.say(a, "%s are %d teeth of module %.4g mm for a pinion of %d leaves: their flanks meet at a diameter of %s, and the blank has %s", f.Name(), t.Count, t.Module, leaves, mm(round(most)), mm(b.size.V.Nominal))
		m.Margin = Bound(round(b.size.V.Nominal), round(most), "mm")
		return
	}
	a.Clear(Bound(round(b.size.V.Nominal), round(most), "mm"), "the blank of "+f.Name())
}

func (b blank) throated(a *Ask) {
	f, d := b.f, b.f.Tooth.Throat.Drive
	if b.lim.Hi <= d.Throat+asDrawn+1e-9 {
		m := b.say(a, "%s measure %s over the tips in the hollow of the rim; the blank has %s, and there is nothing to hollow: over the corners of the rim they measure %s",
			f.Name(), mm(round(d.Throat)), mm(b.size.V.Nominal), mm(round(d.Corner)))
		m.Margin = Room(round(b.size.V.Nominal), round(d.Throat))
		return
	}
	a.Clear(Room(round(b.size.V.Nominal), round(d.Throat)), "the blank of "+f.Name())
}

// blankThen looks at the blank as it is when its teeth are cut: metal over must be gone by then.
func blankThen(p *eval.PartTrace, f *eval.Form, lim eval.Limits, wants float64, a *Ask) {
	for _, m := range p.Moments {
		k := m.Cut
		if k == nil || k.Unplayed != "" {
			continue
		}
		for _, w := range k.Works {
			if w.Target.Form != f || !w.Final {
				continue
			}
			if d := 2 * k.Before.Profile.Between(f.Lo[0], f.Hi[0]).Most(); d > lim.Hi+0.0005 {
				n := a.Say(p.Part.Label+"."+f.Name()+".blank then", k.Place("makes"), "when %s are cut the blank still measures %s there, and %s is wanted: turn it to size first", f.Name(), mm(round(d)), mm(round(wants)))
				n.Spots = []finding.Spot{k.Spot}
			}
		}
	}
}
