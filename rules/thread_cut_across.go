package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "thread-cut-across",
	Title: "a thread is cut first, and a slit or hole then goes across it",
	Why: `Where a saw or a drill goes through a finished thread every turn is left with a burr at either side of the gap, bent over the
next one, and no screw goes past it. Cut the thread after the slit or the hole; or run tap or die through once more afterwards; or
leave a nut on the thread while it is sawn and let it clean the turns as it comes off.`,
	Rows:      []string{"D28"},
	Source:    []string{"common practice"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleCutAcross("hole.pin.thread", "hole.cross"),
	Sound:     exampleCutAcross("hole.cross", "hole.pin.thread"),
	OnPart:    threadCutAcross,
})

// exampleCutAcross drills a hole for M6 through a block; its thread, and a hole across it, are made in an
// order.
func exampleCutAcross(first, second string) string {
	s := replaced(exampleHole(), "diameter = 6", "diameter = 5\n    thread   = { size = \"M6\" }")
	s = replaced(s, "  setup \"drill\"", `  hole "cross" {
    into     = "front"
    at       = { left = 20, bottom = 10 }
    diameter = 3
    depth    = 20
    meets    = [hole.pin]
  }

  setup "drill"`)
	top := func(of string) string {
		return "  setup \"" + of + "\" {\n    hold      = vise.small\n    up        = \"top\"\n    jaws      = \"back\"\n    parallels = 10\n\n    operation {\n      makes = " + of + "\n    }\n  }\n"
	}
	made := map[string]string{
		"hole.pin.thread": top("hole.pin.thread"),
		"hole.cross":      "  setup \"across\" {\n    hold      = vise.small\n    up        = \"front\"\n    jaws      = \"top\"\n    parallels = 14\n\n    operation {\n      makes = hole.cross\n    }\n  }\n",
	}
	return replaced(s, "      makes = hole.pin\n    }\n  }\n", "      makes = hole.pin\n    }\n  }\n\n"+made[first]+"\n"+made[second])
}

func threadCutAcross(p *eval.PartTrace, a *Ask) {
	if p.End == nil {
		return
	}
	for _, f := range p.Part.Forms {
		if !f.Threaded() {
			continue
		}
		var across *eval.Cut // that nothing has cleaned since
		for _, m := range p.Moments {
			switch {
			case makesThread(m, f):
				across = nil
			case m.Cut != nil && across == nil && p.Part.Crosses(m.Cut, f, p.End):
				across = m.Cut
			}
		}
		if across == nil {
			a.Clear(finding.Margin{}, "")
			continue
		}
		if g := unmade(p); g != nil {
			a.Lack(g.Lacks...) // it might take that end of the thread away; other rules tell of it
			continue
		}
		a.Say(p.Part.Label+"."+f.Name()+"+across", across.Place("makes", "tool"), "%s goes across the thread of %s, which is cut before: its turns keep burrs where they are cut through; cut the thread after it, or run %s once more",
			crosser(across, f), f.Name(), chaser(f))
	}
}

// unmade is a feature that is not made in the end; nil where all are.
func unmade(p *eval.PartTrace) *eval.Form {
	for i, f := range p.Part.Forms {
		if f.Wrong != "" || len(f.Lacks) > 0 || !p.End.Features[i].Finished {
			return f
		}
	}
	return nil
}

// crosser names what of a cut goes across a thread: the feature that it makes, the first where it makes
// several.
func crosser(k *eval.Cut, f *eval.Form) string {
	for _, t := range k.Step.Makes {
		if t.Form != nil && t.Form.Feature != f.Feature {
			return t.Form.Name()
		}
	}
	return k.Step.Spot.Step
}

// chaser is what cleans a thread.
func chaser(f *eval.Form) string {
	if f.Lathe != nil && !f.Lathe.Inside {
		return "the die or a nut over it"
	}
	return "the tap through it"
}

// makesThread says whether a moment cuts the thread of a form.
func makesThread(m eval.Moment, f *eval.Form) bool {
	var of *eval.Step
	switch {
	case m.Cut != nil:
		of = m.Cut.Step
	case m.Turn != nil:
		of = m.Turn.Step
	default:
		return false
	}
	for _, t := range of.Makes {
		if t.Form != nil && t.Form.Feature == f.Feature && (t.Sub == "thread" || f.Feature.Kind == "thread") {
			return true
		}
	}
	return false
}
