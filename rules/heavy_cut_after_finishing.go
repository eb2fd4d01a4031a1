package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "heavy-cut-after-finishing",
	Title: "a close size is finished, and much of the metal comes off after it",
	Why: `Metal that comes off lets go of the strain that it held, warms the work, and is taken by cuts that lean on it. What was
brought to a close size before that does not stay there. Rough all over first, and finish what is close at the end.`,
	Rows: []string{"F2"},
	Source: []string{"order of work as written; rough all, then finish all: common practice",
		"limits closer than 0.1 mm, and a quarter of what is left: own limits"},
	Limits:    []string{"heavy_share", "finished_limits"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleFinishedFirst("20 ±0.02", "12"),
	Sound:     exampleFinishedFirst("20 ±0.02", "4"),
	OnPart:    heavyCutAfterFinishing,
})

// exampleFinishedFirst takes a block to its height, then mills a pocket so deep in its other side.
func exampleFinishedFirst(height, deep string) string {
	s := replaced(exampleHole(), "height   = 20", "height   = \""+height+"\"")
	s = replaced(s, "top = 0,", "top = 0.5,")
	s = replaced(s, "      makes = hole.pin\n    }\n", `      makes = face.top
    }
    deburr {}
    operation {
      makes = hole.pin
    }
    deburr {}
  }

  setup "hollow" {
    hold      = vise.small
    up        = "bottom"
    jaws      = "back"
    parallels = 10

    operation {
      makes = pocket.hollow
    }
`)
	return replaced(s, "  setup \"drill\"", `  pocket "hollow" {
    into  = "bottom"
    from  = [4, 4]
    to    = [36, 26]
    depth = `+deep+`
  }

  setup "drill"`)
}

// Turned work is left out: bar that loses metal all round does not bend, and a bush is turned, drilled and
// reamed in one holding for good reason.
func heavyCutAfterFinishing(p *eval.PartTrace, a *Ask) {
	if p.Part.Round || p.Part.Joined() || p.End == nil {
		return
	}
	finished, taken, most := "", 0.0, 0.0
	var heaviest *eval.Cut
	for _, m := range p.Moments {
		k := m.Cut
		if k == nil || k.Unplayed != "" {
			continue
		}
		if finished != "" && hollows(k) {
			off := k.Before.Piece.Volume() - k.After.Piece.Volume()
			if taken += off; off > most {
				most, heaviest = off, k
			}
		}
		if finished == "" {
			finished = closelyFinished(k, a.Limit("finished_limits"))
		}
	}
	if finished == "" || heaviest == nil || p.End.Piece == nil {
		return
	}
	left := p.End.Piece.Volume()
	if !(left > 0) {
		return
	}
	share, limit := round(taken/left), a.Limit("heavy_share")
	if share < limit {
		a.Clear(Bound(share, limit, "of what is left"), "metal taken off after "+finished)
		return
	}
	f := a.Say(p.Part.Label+"+"+finished, heaviest.Place("makes"), "%s is finished to limits closer than %s, and metal as much as %s of what is left comes off after it, most of it with %s: usually less than %s (heavy_share), or it moves",
		finished, mm(a.Limit("finished_limits")), figure(share), targetName(heaviest), figure(limit))
	f.Margin, f.Spots[0] = Bound(share, limit, ""), heaviest.Spot
}

// hollows says whether a cut mills metal out of one side of the piece. A drill takes it from within, and a
// skim of a face is what squaring up is.
func hollows(k *eval.Cut) bool {
	if k.Choice.By != "milling" && k.Choice.By != "plunging" {
		return false
	}
	for i := range k.Works {
		if k.Works[i].Target.Form != nil {
			return true
		}
	}
	return false
}

// closelyFinished names the first face, slot or step that a cut brings to a size with limits closer
// than so much, mm; "" where it brings none. A drilled or reamed hole keeps its size, whatever happens round it.
func closelyFinished(k *eval.Cut, width float64) string {
	for i := range k.Works {
		w := &k.Works[i]
		if !w.Final || w.Wrong != "" || w.Target.Form != nil && len(w.Target.Form.Mouths) > 0 {
			continue
		}
		size, of, attr := finalSize(k, w)
		if of == nil || size.Nominal <= 0 {
			continue
		}
		if lim, ok := eval.LimitsOf(size, k.Part.Build.Recipe.General, of, attr).Get(); ok && lim.Width() < width-0.0005 {
			return w.Target.Name()
		}
	}
	return ""
}
