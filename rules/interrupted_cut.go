package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "interrupted-cut",
	Title: "work that is not whole round is cut on a weak grip, or slender",
	Why: `Over corners, a keyway or a cross hole the tool is out of the cut and comes back with a blow, once or more in every turn. What
is held just well enough for an even cut works loose or springs under it. Make what breaks the surface later, hold it better,
or take light cuts.`,
	Rows:      []string{"J3"},
	Source:    []string{"common practice; seven tenths of the usual limits: our own"},
	Limits:    []string{"interrupted_share", "jaw_grip_share", "chuck_grip_share", "stick_out_share", "slender_free", "slender_centre"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Trips:     exampleInterrupted("16"),
	Sound:     exampleInterrupted("25"),
	OnTurn:    interruptedCut,
})

// exampleInterrupted turns the end of a square bar that is gripped so far.
func exampleInterrupted(grip string) string {
	return replaced(replaced(replaced(exampleWaist(inFour, ""), "diameter = 20", "square = 20"), ", outside = 1", ""), "grip    = 20", "grip    = "+grip)
}

func interruptedCut(k *eval.Turn, a *Ask) {
	if k.Hold.Unplayed != "" || !k.OnSlides() || !oneOf(k.Choice.By, "turning", "facing", "boring") {
		return
	}
	share := a.Limit("interrupted_share")
	for _, w := range k.Works {
		broken := k.Broken(&w)
		if broken == "" {
			continue
		}
		for _, use := range []limitUsed{gripUsed(k, a), slenderUsed(k, a, &w)} {
			switch {
			case use.of == "" || use.share > 1: // what is past the limit itself another rule speaks of
			case use.share <= share+1e-6:
				a.Clear(Bound(use.share, share, "of the limit"), use.of)
			default:
				f := a.Say(k.Hold.Work.SetUp.Path()+"+"+broken, k.Place("makes"), "%s is broken by %s, so that the tool strikes, and %s; for such a cut usually %s (interrupted_share)",
					w.Target.Name(), broken, use.says, use.wants(share))
				f.Margin = Bound(use.share, share, "of the limit")
				return
			}
		}
	}
}

// limitUsed is how much of a limit a holding uses; of is "" where it does not apply.
type limitUsed struct {
	share    float64
	of, says string
	wants    func(share float64) string // what is usual for an interrupted cut
}

func gripUsed(k *eval.Turn, a *Ask) limitUsed {
	h := k.Hold
	c := h.Choice.Chuck
	if c == nil || h.Supported() || h.Contact == 0 {
		return limitUsed{}
	}
	jaw, ok := c.JawLength.Get()
	if !ok {
		return limitUsed{}
	}
	worst := leastGrip(h, a, jaw)
	used := worst.want / h.Contact
	return limitUsed{used, "the grip of " + c.Path(), c.Path() + " grips " + mm(round(h.Contact)) + " where " + tenthUp(worst.want) + " mm is the least for an even cut",
		func(share float64) string { return "at least " + tenthUp(worst.want/share) + " mm" }}
}

func slenderUsed(k *eval.Turn, a *Ask, w *eval.Turning) limitUsed {
	if s := k.Hold.Choice.Support; s != nil && (s.Steady != nil || s.Middle) || w.Inside {
		return limitUsed{}
	}
	limit, long := a.Limit("slender_free"), w.U1
	if k.Hold.Supported() && !k.Choice.Withdrawn {
		limit, long = a.Limit("slender_centre"), k.Hold.Free
	}
	like := k.LikeBar(long)
	if like == 0 || long <= 0 {
		return limitUsed{}
	}
	ratio := long / like
	return limitUsed{ratio / limit, "what stands out of " + k.Hold.Choice.HeldBy(),
		"it stands " + tenthUp(ratio) + " diameters out of " + k.Hold.Choice.HeldBy() + " where " + figure(limit) + " is the most for an even cut",
		func(share float64) string { return "at most " + figure(round(limit*share)) }}
}
