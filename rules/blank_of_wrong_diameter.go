package rules

import (
	"math"

	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "blank-of-wrong-diameter",
	Title: "the diameter of the blank is not that over the tips of its teeth",
	Why: `The cutter is fed in from the outside of the blank by the depth of the tooth. A blank turned too large leaves thick teeth that
do not go into mesh, one too small thin teeth with a short tip. Over the tips a wheel measures module times teeth and two more;
a shifted profile says so.`,
	Rows:      []string{"H6"},
	Source:    []string{"m (z + 2 + 2x) or (z + 2)/DP: ISO 21771, gear handbooks"},
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
		if f.Tooth == nil || !f.Tooth.Involute || f.On == nil && !p.Part.Part.Diameter.Is() {
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
		tip := f.Tooth.Blank.Tip
		lim := eval.Limits{Lo: size.V.Nominal - asDrawn, Hi: size.V.Nominal + asDrawn}
		if l, ok := eval.LimitsOf(size.V, p.Part.Build.Recipe.General, item, "diameter").Get(); ok {
			lim = eval.Limits{Lo: math.Min(l.Lo, lim.Lo), Hi: math.Max(l.Hi, lim.Hi)}
		}
		blankThen(p, f, lim, a)
		if tip >= lim.Lo-1e-9 && tip <= lim.Hi+1e-9 {
			a.Clear(Bound(round(math.Abs(tip-size.V.Nominal)), round(math.Max(lim.Hi-size.V.Nominal, size.V.Nominal-lim.Lo)), "mm"), "the blank of "+f.Name())
			continue
		}
		word := "large"
		if size.V.Nominal < tip {
			word = "small"
		}
		m := a.Say(p.Part.Label+"."+f.Name()+".blank", size.At, "%s are %d teeth of module %.4g mm, which measure %s mm over the tips; the blank has %s, %s mm too %s",
			f.Name(), f.Tooth.Count, f.Tooth.Wheel.Module, figure(round(tip)), mm(size.V.Nominal), figure(round(math.Abs(size.V.Nominal-tip))), word)
		m.Also = []finding.Note{{Place: f.Feature.Item.At, Says: "the teeth; a profile shift would be said by shifted"}}
	}
}

// blankThen looks at the blank as it is when its teeth are cut: metal over must be gone by then.
func blankThen(p *eval.PartTrace, f *eval.Form, lim eval.Limits, a *Ask) {
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
				n := a.Say(p.Part.Label+"."+f.Name()+".blank then", k.Place("makes"), "when %s are cut the blank still measures %s there, and %s is wanted: turn it to size first", f.Name(), mm(round(d)), mm(round(f.Tooth.Blank.Tip)))
				n.Spots = []finding.Spot{k.Spot}
			}
		}
	}
}
