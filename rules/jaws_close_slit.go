package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
)

var _ = enter(Rule{
	Name:  "jaws-close-slit",
	Title: "the jaws press across an open slit and close it",
	Why: `Two prongs with a slit between them bend like springs when jaws press on their outsides. What
is bored or milled while they are squeezed springs open afterwards, and a saw in the slit is
pinched. Gripped along the slit, or below its root, nothing closes.`,
	Rows: []string{"C4"},
	Source: []string{"each prong bends as a cantilever, F a³ / 3 E I: derived",
		"never clamp over a slot: fill it with a key of its width, or clamp outside it: common practice"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     replaced(exampleSlitThenDrill("back"), "along     = -4", "along     = 46"),
	Sound:     exampleSlitThenDrill("back"),
	OnHold:    jawsCloseSlit,
	OnChuck:   chuckClosesSlit,
})

// exampleSlitThenDrill saws a slit from the left, then drills from the top, with a face on
// the fixed jaw.
func exampleSlitThenDrill(jaws string) string {
	s := replaced(exampleSlit(""), `  slit "cut"`, `  hole "later" {
    into     = "top"
    at       = { left = 52, front = 10 }
    diameter = 4
  }

  slit "cut"`)
	s = replaced(s, "depth = 10", "depth = 15")
	return replaced(s, "    }\n  }\n}\n", `    }
  }

  setup "drill" {
    hold      = vise.small
    up        = "top"
    jaws      = "`+jaws+`"
    parallels = 8
    along     = -4

    operation {
      makes = hole.later
    }
  }
}
`)
}

func jawsCloseSlit(h *eval.Holding, a *Ask) {
	if h.Jaws() == nil || len(h.Before.Piece.Removals()) == 0 {
		return
	}
	q, ok := Need(a, h.Between)
	if !ok || !q.Touches {
		return
	}
	if pinchedAtWork(h, a) {
		return
	}
	name := q.GapBy
	if q.Gap <= 0.001 || !openSlit(h.Part, name) || q.Share > 1e-6 {
		a.Clear(finding.Margin{}, "")
		return
	}
	a.Say(h.Work.SetUp.Path()+"+"+name, h.Place("jaws", "hold"),
		"the jaws press across %s (%s mm wide) and there is no metal from one jaw to the other that is not cut by it: "+
			"it will close; grip along it, below its root, or with a strip of its width in it", name, tenth(q.Gap))
}

// pinchedAtWork tells of a feature that is made between prongs while jaws press on both: metal behind the
// root lies between the jaws as well, and the prongs come together only as far as that gives.
func pinchedAtWork(h *eval.Holding, a *Ask) bool {
	for _, f := range h.Part.Forms {
		if f.Feature.Kind == "slot" || !openSlit(h.Part, f.Name()) { // walls beside a slot may be stout
			continue
		}
		made, ok := h.Pinched(f)
		if !ok || made == nil || h.Between.V.Share <= 1e-6 {
			continue
		}
		a.Say(h.Work.SetUp.Path()+"+"+f.Name(), h.Place("jaws", "hold"),
			"the jaws press on both sides of %s while %s is made there: what is made springs when they let go; make it before %s is cut, grip along it, or put a strip of its width in it",
			f.Name(), made.Name(), f.Name())
		return true
	}
	return false
}

// openSlit says whether a name is a slit, split or slot that runs out of the piece.
func openSlit(p *eval.Part, name string) bool {
	for _, f := range p.Forms {
		if f.Name() != name {
			continue
		}
		switch f.Feature.Kind {
		case "slit", "slot":
			return true
		case "split":
			// The halves of a joint that is drawn closed are to be pressed together.
			return f.Feature.StaysOpen.V
		}
	}
	return false
}

// chuckClosesSlit looks at jaws that close round work on a slit that goes to its axis or its bore:
// nothing stands behind it.
func chuckClosesSlit(h *eval.Chucking, a *Ask) {
	c := &h.Choice
	if c.Chuck == nil && c.Collets == nil || c.Bush != nil || len(h.Before.Piece.Removals()) == 0 {
		return
	}
	for i, f := range h.Part.Forms {
		if !h.Before.Features[i].Begun || !openSlit(h.Part, f.Name()) {
			continue
		}
		over, through := h.SlitGripped(f)
		if over <= 0.1 || !through {
			continue
		}
		a.Say(h.Work.SetUp.Path()+"+"+f.Name(), h.Place("hold", "grip", "stick_out"),
			"%s grips %s over %s mm of %s, which goes to its middle: the jaws close it; grip beside it, cut it last, or put a strip of its width in it",
			c.HeldBy(), h.Part.Label, tenth(over), f.Name())
		return
	}
	if len(h.Touches) > 0 {
		a.Clear(finding.Margin{}, "")
	}
}
