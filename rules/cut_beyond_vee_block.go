package rules

import (
	"math"

	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "cut-beyond-vee-block",
	Title: "the work is cut where it hangs far out over the end of its vee block",
	Why: `A drill or cutter pushes the work down. Beyond the end of the block nothing lies under it: the work tips about that end,
only the clamp holds its other end down, and the hole comes out leaning or the drill snatches.`,
	Rows:      []string{"A14", "D10"},
	Source:    []string{"a load outside of what supports it tips: statics; about one diameter of overhang: common practice"},
	Limits:    []string{"vee_overhang"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleOnVee("height = 20\n  vee    = 10\n  length = 12"),
	Sound:     exampleOnVee("height = 20\n  vee    = 10\n  length = 40"),
	OnCut:     cutBeyondVeeBlock,
})

func cutBeyondVeeBlock(k *eval.Cut, a *Ask) {
	h := k.Hold
	v := h.Vee
	if v == nil || v.Looks != "up" || !v.Standing() || h.Jaws() != nil || k.Unplayed != "" || len(k.Works) == 0 || k.Choice.ByHand {
		return
	}
	if len(h.Work.SetUp.Jacks.V) > 0 {
		a.Clear(finding.Margin{}, "")
		return
	}
	if _, ok := Need(a, v.Block.Length); !ok {
		return
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, s := range v.Spans {
		lo, hi = math.Min(lo, s[0]), math.Max(hi, s[1])
	}
	beyond, back := 0.0, h.Pose.Inverse()
	from, to, _ := h.Before.Profile.Ends()
	for _, w := range k.Works {
		for _, m := range w.Moves {
			for _, at := range []solid.Vec{m.From, m.To} {
				x := back.Point(at)[0]
				x = math.Min(math.Max(x, from), to) // where a cutter runs off there is no work to tip
				beyond = math.Max(beyond, math.Max(lo-x, x-hi))
			}
		}
	}
	beyond = round(beyond)
	most := round(a.Limit("vee_overhang") * v.D)
	if beyond <= most+0.0005 {
		a.Clear(Bound(beyond, most, "mm"), "what is cut beyond the end of "+v.Block.Path())
		return
	}
	f := a.Say(v.Block.Path()+"+"+k.Spot.Step, k.Place("makes"), "%s is cut %s mm beyond the end of %s, with nothing under it; usually %s mm at most, %s of its diameter: move the block, or put a jack there",
		h.Part.Label, tenth(beyond), v.Block.Path(), tenth(most), figure(a.Limit("vee_overhang")))
	f.Margin = Bound(beyond, most, "mm")
}
