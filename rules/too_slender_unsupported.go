package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "too-slender-unsupported",
	Title: "the work stands out too far for its thickness",
	Why: `A cut pushes the free end away. It springs back behind the tool: the work comes out thicker at the end, chatters, or climbs
over the tool. Let less stand out, put a centre to the end, or rough it while it is thick.`,
	Rows:      []string{"A10"},
	Source:    []string{"four diameters free, ten to twelve with a centre: common practice; deflection grows with the cube of what stands out (beam theory)"},
	Limits:    []string{"slender_free", "slender_centre"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleSlender(96),
	Sound:     exampleSlender(70),
	OnTurn:    tooSlenderUnsupported,
})

// exampleSlender turns the end of a long piece of 20 mm.
func exampleSlender(length float64) string {
	s := replaced(exampleWaist(inThree, ""), "length   = 60", "length   = "+figure(length+19))
	return replaced(s, "from     = 40", "from     = "+figure(length))
}

func tooSlenderUnsupported(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" || !k.OnSlides() {
		return
	}
	if s := k.Hold.Choice.Support; s != nil && (s.Steady != nil || s.Middle) {
		return // a steady stands where it is wanted
	}
	for _, w := range k.Works {
		if w.U1 <= 0 || w.Inside || w.Wrong != "" {
			continue
		}
		free := k.Hold.Supported() && !k.Choice.Withdrawn
		limit, long, how := a.Limit("slender_free"), w.U1, "free"
		if free {
			limit, long, how = a.Limit("slender_centre"), k.Hold.Free, "with a centre"
		}
		like := k.LikeBar(long)
		if like == 0 {
			continue
		}
		ratio := long / like
		if ratio <= limit+1e-6 {
			a.Clear(Bound(ratio, limit, "diameters"), "what stands out of "+k.Hold.Choice.HeldBy())
			continue
		}
		f := a.Say(k.Hold.Work.SetUp.Path()+".slender", k.Hold.Place("stick_out", "grip", "hold"), "%s is cut %s mm from %s, and as far out the work is as stiff as plain bar of %s mm: %s diameters; usually %s at most %s",
			w.Target.Name(), tenth(long), k.Hold.Choice.HeldBy(), tenth(like), tenthUp(ratio), figure(limit), how)
		f.Margin = Bound(ratio, limit, "diameters")
		return
	}
}
