package rules

import (
	"strings"

	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "drawn-bar-bends",
	Title: "drawn bar loses metal on one side, and is to be flat",
	Why: `Cold drawing leaves the skin of a bar pulling and its inside pushing. Take the skin off one side and the other bends the bar, away
from the cut. Rough both sides, let it lie, then finish; or take hot-rolled or annealed metal; or stress relieve it after roughing.`,
	Rows:      []string{"F1"},
	Source:    []string{"a strip of 152 mm that bowed 1.27 mm: a builder's report; eight times as long as thick: own limit", "a tenth of the metal more from one side than from the other: own limit"},
	Limits:    []string{"bow_share"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     exampleStrip("drawn", 90),
	Sound:     exampleStrip("drawn", 60),
	OnPart:    drawnBarBends,
})

// exampleStrip mills a long slot in the top of a strip 8 mm thick, so long, of bar with a skin.
func exampleStrip(skin string, length float64) string {
	return `recipe "example" {
  units = "mm"
}

part "strip" {
  material = "mild steel"
  length   = ` + figure(length) + `
  width    = 20
  height   = 8

  blank {
    stock = stock.own
    over  = { left = 0, right = 0, front = 0, back = 0, top = 0, bottom = 0 }
  }

  face "bottom" {
    flat = 0.05
  }

  slot "way" {
    into  = "top"
    at    = { front = 10 }
    width = 10
    depth = 3
  }

  setup "mill" {
    hold = vise.small
    up   = "top"

    operation {
      makes = slot.way
    }
  }
}

stock "own" {
  material = "mild steel"
  flat     = { width = 20, thickness = 8 }
  lengths  = [500]
  skin     = "` + skin + `"
}
`
}

// oneSided is by how much of the raw piece more must go from one side than from the other before it
// counts.
const oneSided = 0.1

func drawnBarBends(p *eval.PartTrace, a *Ask) {
	part, s := p.Part, p.Part.Blank.Stock
	if part.Unplayed != "" || part.Round || s == nil || p.End == nil {
		return
	}
	flat := straightWanted(part)
	thin, long := 0, 0
	for i := range 3 {
		if part.Size[i] < part.Size[thin] {
			thin = i
		}
		if part.Size[i] > part.Size[long] {
			long = i
		}
	}
	share := takenFromOneSide(part, thin)
	if flat == "" || share < oneSided {
		return
	}
	group, ok := Need(a, materialOf(part))
	if !ok || !strings.HasPrefix(group, "steel") {
		return
	}
	if !s.Condition.Is() {
		if skin, ok := Need(a, s.Skin); !ok || skin != "drawn" {
			return
		}
	} else if c := strings.ToLower(s.Condition.V); !strings.Contains(c, "bright") && !strings.Contains(c, "drawn") {
		return
	}
	for _, t := range p.End.Treated {
		if oneOf(t.Does, "anneal", "stress relieve") {
			a.Clear(finding.Margin{}, "")
			return
		}
	}
	ratio, limit := part.Size[long]/part.Size[thin], a.Limit("bow_share")
	if ratio <= limit+1e-6 {
		a.Clear(Bound(round(ratio), limit, "times"), part.Label+" of "+s.Path())
		return
	}
	f := a.Say(part.Label+"+bends", part.At, "%s is drawn, %s is %s times as long as thick, and loses %s %% more of its metal on one side than on the other: from %s times on it usually bends, and %s",
		s.Path(), part.Label, tenth(ratio), tenth(100*share), figure(limit), flat)
	f.Margin = Bound(round(ratio), limit, "times")
}

// materialOf is the row of the part's metal, or of its stock's, in the cutting tables.
func materialOf(p *eval.Part) model.Known[string] {
	m := p.Material
	if !m.Is() && p.Blank.Stock != nil {
		m = p.Blank.Stock.Material
	}
	return model.Map(m, func(m model.Material) string { return m.Group })
}

// straightWanted says what of a part is to be flat, straight or parallel; "" where nothing is said.
func straightWanted(p *eval.Part) string {
	asked := func(name string, r *model.Relations) string {
		switch {
		case r.Flatness.Is():
			return name + " is to be flat within " + mm(r.Flatness.V)
		case r.Straightness.Is():
			return name + " is to be straight within " + mm(r.Straightness.V)
		case r.ParallelTo.Within.Is():
			return name + " is to be parallel within " + mm(r.ParallelTo.Within.V)
		}
		return ""
	}
	for _, f := range p.Faces {
		if s := asked("its "+f.Label+" face", &f.Relations); s != "" {
			return s
		}
	}
	for _, f := range p.Features {
		if s := asked(f.Kind+"."+f.Label, &f.Relations); s != "" {
			return s
		}
	}
	return ""
}

// takenFromOneSide is how much more goes from one of two opposite sides than from the other, as a share
// of the raw piece: what lies over the finished faces, and slots, pockets and steps that go into them.
func takenFromOneSide(p *eval.Part, axis int) float64 {
	low, high := model.FaceOn(axis, -1), model.FaceOn(axis, 1)
	area := p.Size[(axis+1)%3] * p.Size[(axis+2)%3]
	over := func(f model.Face) float64 {
		at := p.Blank.Lo[axis]
		if f.Sign() > 0 {
			at = p.Blank.Hi[axis]
		}
		return (at - p.FaceAt(f)) * f.Sign() * area
	}
	taken := over(high) - over(low)
	for _, f := range p.Forms {
		if !oneOf(f.Feature.Kind, "slot", "pocket", "step") || f.Wrong != "" || len(f.Lacks) > 0 || f.Through || f.Into.Face.Axis() != axis {
			continue
		}
		room := f.Hi.Sub(f.Lo)
		n := max(1, len(f.Copies))
		taken += f.Into.Face.Sign() * room[0] * room[1] * room[2] * float64(n)
	}
	whole := area * (p.Blank.Hi[axis] - p.Blank.Lo[axis])
	if !(whole > 0) {
		return 0
	}
	return abs(taken) / whole
}
