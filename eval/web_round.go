package eval

import (
	"math"
	"slices"

	"fettle/schema/model"
)

// RoundWebs lists the walls of a turned part between what is hollow about its axis and what is turned on its
// outside, as drawn: only those of which no step of the work makes either side. The others are judged as
// they are made, in the order in which they are made.
func (p *Part) RoundWebs() []Web {
	if !p.Round {
		return nil
	}
	made, outside := map[*Form]bool{}, false
	for _, w := range p.Work {
		for _, st := range w.Steps {
			for _, t := range st.Makes {
				made[t.Form] = true
				outside = outside || t.Outside
			}
		}
	}
	var out []Web
	for _, in := range p.Forms {
		x0, x1, r, ok := p.hollowAbout(in)
		if !ok || made[in] {
			continue
		}
		for _, f := range p.Forms {
			l := f.Lathe
			if l == nil || l.Inside || l.End != model.NoFace || made[f] || f.Wrong != "" || f.About.Aside() > model.Grain || !turnsDown(f) {
				continue
			}
			if math.Min(x1, l.X1)-math.Max(x0, l.X0) > model.Grain {
				if thick := math.Min(l.R0, l.R1) - r; thick > model.Grain {
					out = append(out, Web{Of: f, And: in.Name(), Thick: thick})
				}
			}
		}
		if thick := p.Radius() - r; thick > model.Grain && !outside && !p.turnedOver(x0, x1) {
			out = append(out, Web{Of: in, And: "outside", Thick: thick})
		}
	}
	return out
}

// turnsDown says whether a feature brings the outside down to its own diameter all along it.
func turnsDown(f *Form) bool {
	return f.Feature.Kind == "outside" || f.Feature.Kind == "groove"
}

// hollowAbout is where a hole or bore about the axis lies along it, and its radius.
func (p *Part) hollowAbout(f *Form) (x0, x1, r float64, ok bool) {
	if f.Wrong != "" || len(f.Lacks) > 0 || f.About.Aside() > model.Grain {
		return 0, 0, 0, false
	}
	if l := f.Lathe; l != nil {
		return l.X0, l.X1, math.Min(l.R0, l.R1), l.Inside && f.Feature.Kind == "bore"
	}
	if f.Feature.Kind != "hole" || len(f.Mouths) != 1 || !f.Diameter.Is() || !f.Depth.Is() || math.Abs(f.Dir[0]) < 1-model.Grain ||
		math.Hypot(f.Mouths[0][1], f.Mouths[0][2]) > model.Grain {
		return 0, 0, 0, false
	}
	a := f.Mouths[0][0]
	b := a + f.Dir[0]*f.Depth.V
	return math.Min(a, b), math.Max(a, b), f.Diameter.V / 2, true
}

// turnedOver says whether features take down the outside over the whole of a stretch.
func (p *Part) turnedOver(x0, x1 float64) bool {
	at := []float64{x0, x1}
	for _, f := range p.Forms {
		if f.Lathe != nil && !f.Lathe.Inside && turnsDown(f) {
			at = append(at, math.Min(x1, math.Max(x0, f.Lathe.X0)), math.Min(x1, math.Max(x0, f.Lathe.X1)))
		}
	}
	slices.Sort(at)
	for i := 1; i < len(at); i++ {
		mid := (at[i-1] + at[i]) / 2
		if at[i]-at[i-1] > model.Grain && !slices.ContainsFunc(p.Forms, func(f *Form) bool {
			return f.Lathe != nil && !f.Lathe.Inside && turnsDown(f) && f.Lathe.X0 < mid && mid < f.Lathe.X1
		}) {
			return false
		}
	}
	return true
}
