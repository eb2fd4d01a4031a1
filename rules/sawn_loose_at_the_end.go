package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "sawn-loose-at-the-end",
	Title: "a part that is finished is sawn at the bench while a hand holds it",
	Why: `The last cut on a part looks like a small thing after all the care before, and is where finished parts are bent, marked and
sawn crooked. Hold the piece for it as well as for the cuts before, in the vise between soft jaws or clamped to a plate; or saw
while the part is still rough.`,
	Rows:      []string{"F17"},
	Source:    []string{"common practice: a finished gib was bent while its slot was sawn"},
	Level:     finding.Advice,
	Judgement: finding.Fact,
	Trips:     exampleSawnLast(""),
	Sound:     exampleSawnLast("    hold = vise.small\n"),
	OnCut:     sawnLooseAtTheEnd,
})

// exampleSawnLast drills and reams a hole, and then saws a slit at the bench.
func exampleSawnLast(hold string) string {
	s := replaced(exampleReam("7.8"), "  setup \"drill\"", `  slit "gap" {
    into  = "left"
    at    = { front = 15 }
    width = 0.8
    depth = 10
  }

  setup "drill"`)
	return strings.TrimSuffix(s, "}\n") + `
  bench "saw" {
` + hold + `
    operation {
      makes = slit.gap
      by    = "sawing"
    }
  }
}

piercing_saw "frame" {
  kerf = 0.3
}
`
}

func sawnLooseAtTheEnd(k *eval.Cut, a *Ask) {
	if k.Step.Work.Kind != "bench" || k.Choice.By != "sawing" || k.Unplayed != "" {
		return
	}
	for _, r := range k.Hold.Work.SetUp.Hold.V {
		if r.Item != nil {
			a.Clear(finding.Margin{}, "")
			return
		}
	}
	done, closest := finishedBefore(k)
	if closest == "" || !done {
		a.Clear(finding.Margin{}, "")
		return
	}
	makes := "it"
	for _, t := range k.Step.Makes {
		makes = t.Name()
		break
	}
	a.Say(k.Hold.Work.SetUp.Path()+".hold", k.Hold.Place("hold", "makes"), "%s is sawn last, with the part in the hand: all else on it is made, %s among it within limits of its own; hold it as well as for the cuts before",
		makes, closest)
}

// finishedBefore says whether all other features of the part are made, and names one of them, or a size of
// the part itself, that has limits of its own; "" where none has.
func finishedBefore(k *eval.Cut) (done bool, limited string) {
	done = true
	own := map[*eval.Form]bool{}
	for _, t := range k.Step.Makes {
		own[t.Form] = true
	}
	for i, f := range k.Part.Forms {
		if own[f] {
			continue
		}
		done = done && k.Before.Features[i].Finished
		m := f.Feature
		for _, s := range []drawing.Size{m.Diameter.V, m.Width.V, m.Depth.V.Size} {
			if limited == "" && s.Tol.Own() {
				limited = f.Name()
			}
		}
	}
	d := k.Part.Part
	for _, own := range []struct {
		name string
		size drawing.Size
	}{{"diameter", d.Diameter.V}, {"length", d.Length.V}, {"width", d.Width.V}, {"height", d.Height.V}, {"thickness", d.Thickness.V}} {
		if limited == "" && own.size.Tol.Own() {
			limited = "its " + own.name
		}
	}
	return done, limited
}
