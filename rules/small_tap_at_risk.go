package rules

import (
	"strings"

	"fettle/eval"
	"fettle/eval/reckon/thread"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "small-tap-at-risk",
	Title: "a small tap works under several of the things that break taps",
	Why: `A small tap, tough metal, a blind hole, a tight hole: each alone is everyday work, three together often end with a broken
tap in a part that was nearly done. Tap before the long work on the part, open the hole to 65 % of thread, go through, or use a
coarser thread.`,
	Rows:      []string{"D19"},
	Source:    []string{"tough metal and two more signs of four: own proposal, common practice"},
	Limits:    []string{"small_tap"},
	Level:     finding.Advice,
	Judgement: finding.Thumb,
	Deaf:      Holding | Mounting,
	Trips:     exampleSmallTap("stainless 304", "12"),
	Sound:     exampleSmallTap("brass", "12"),
	OnCut:     smallTapAtRisk,
	OnTurn:    asCut(smallTapAtRisk),
})

// exampleSmallTap taps M3 into a blind hole of a metal, so deep.
func exampleSmallTap(metal, deep string) string {
	s := replaced(exampleHole(), "    diameter = 6\n", "    diameter = 2.5\n    depth    = "+deep+"\n    thread   = { size = \"M3\", depth = 8 }\n")
	s = replaced(s, "      makes = hole.pin\n    }\n", `      makes = hole.pin
    }
    operation {
      makes = hole.pin.thread
    }
`)
	return replaced(s, "material = \"brass\"", "material = \""+metal+"\"") + `
tap "small" {
  threads = ["M3"]
  leads   = ["bottoming"]
  of      = "HSS"
}
`
}

// tight is the share of full thread, in percent, above which a hole is tight for its tap.
const tight = 75

// signs is how many of the things that break taps together are worth a word.
const signs = 3

func smallTapAtRisk(k *eval.Cut, a *Ask) {
	if k.Choice.By != "tapping" || k.Choice.Tool.Cutter == nil || k.Unplayed != "" {
		return
	}
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if w.Target.Sub != "thread" || f == nil || w.Wrong != "" {
			continue
		}
		th, ok := f.Feature.Thread.Size.Get()
		least := a.Limit("small_tap")
		if !ok || !(th.Diameter > 0) {
			return
		}
		if th.Diameter >= least-1e-9 {
			a.Clear(finding.Margin{}, "")
			return
		}
		tough, known := toughMetal(k, a)
		if !known {
			return
		}
		if !tough {
			a.Clear(finding.Margin{}, "")
			return
		}
		told := []string{"it is thinner than " + mm(least), "the metal is tough"}
		if !w.Through && !f.Through {
			told = append(told, "the hole is blind")
		}
		if full, _, ok := thread.Percent(th, w.Had); ok && w.Had > 0 && full > tight+0.05 {
			told = append(told, "the hole leaves "+tenth(full)+" % of full thread")
		}
		if othersDone(k, f) {
			told = append(told, "all else on "+k.Part.Label+" is made")
		}
		if len(told) < signs {
			a.Clear(finding.Margin{}, "")
			return
		}
		a.Say(f.Name()+".thread+risk", k.Place("makes", "tool"), "%s may break in %s: %s", th, f.Name(), listed(told))
		return
	}
}

// toughMetal says whether the metal is one that holds small taps fast: stainless, tool steel, steel bought
// hardened and tempered, titanium. Some of them have no row of their own in the cutting tables.
func toughMetal(k *eval.Cut, a *Ask) (tough, known bool) {
	if m := k.Part.Makes(k.Step).Material; m.Is() && (strings.Contains(m.V.Name, "stainless") || oneOf(m.V.Name, "EN16T", "EN24T", "titanium")) {
		return true, true
	}
	group, known := Need(a, k.MaterialGroup())
	return group == "steel_tool" || strings.Contains(group, "stainless"), known
}

// othersDone says whether every other feature of a part that has several is made.
func othersDone(k *eval.Cut, f *eval.Form) bool {
	n := 0
	for i, g := range k.Part.Forms {
		if g == f {
			continue
		}
		if !k.Before.Features[i].Finished {
			return false
		}
		n++
	}
	return n > 1
}

// listed joins things with commas, the last with "and".
func listed(things []string) string {
	if n := len(things); n > 1 {
		return strings.Join(things[:n-1], ", ") + " and " + things[n-1]
	}
	return strings.Join(things, "")
}
