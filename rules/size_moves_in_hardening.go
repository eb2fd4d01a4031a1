package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "size-moves-in-hardening",
	Title: "a close size is finished before hardening, which moves it",
	Why: `Steel grows in the quench, goes mostly back in the temper, and warps by more than either. Sizes closer than about
a thousandth of themselves are left to be ground or lapped afterwards.`,
	Rows:      []string{"F9"},
	Source:    []string{"limit: common practice, own proposal, to be set by the shop"},
	Limits:    []string{"hardening_moves"},
	Level:     finding.Scrap,
	Judgement: finding.Thumb,
	Trips:     replaced(exampleHeat("silver steel", "harden"), "diameter = 6", "diameter = \"6 ±0.002\""),
	Sound:     replaced(exampleHeat("silver steel", "harden"), "diameter = 6", "diameter = \"6 ±0.05\""),
	OnHeat:    sizeMovesInHardening,
})

func sizeMovesInHardening(h *eval.Heating, a *Ask) {
	if h.Does != "harden" || h.Part == nil {
		return
	}
	if m, ok := h.Part.Metal(); ok && !m.Hardens() {
		return // metal-does-not-harden speaks of it
	}
	share := a.Limit("hardening_moves")
	for _, s := range closeSizes(h) {
		l, ok := Need(a, s.limits)
		if !ok {
			continue
		}
		wants := share * s.nominal
		m := finding.Margin{Has: round(l.Width()), Wants: wants, Unit: "mm"}
		if l.Width() >= wants-1e-9 {
			a.Clear(m, s.name)
			continue
		}
		f := a.Say(h.Part.Item.Path()+"+"+s.name, h.Place("does"),
			"%s of %s is finished before %s, and its limits lie %s apart; usually one closer than %s is left to be ground or lapped afterwards",
			s.name, mm(s.nominal), heatName(h), mm(round(l.Width())), mm(round(wants)))
		f.Margin = m
	}
}

type closeSize struct {
	name    string
	nominal float64
	limits  model.Known[eval.Limits]
}

// closeSizes lists what is finished, heated and not lapped or ground later: diameters, widths
// of slots, and the part's own sizes.
func closeSizes(h *eval.Heating) []closeSize {
	p, s := h.Part, h.Before
	general := p.Build.Recipe.General
	var out []closeSize
	for i, f := range p.Forms {
		fs := s.Features[i]
		ref := []model.Ref{{Item: f.Feature.Item}}
		if !fs.Finished || eval.Apart(ref, h.SetUp.Zone.V) || lappedLater(h, f, model.NoFace) {
			continue
		}
		if d, ok := f.Feature.Diameter.Get(); ok && !f.Feature.Thread.Said {
			out = append(out, closeSize{f.Name() + ".diameter", d.Nominal, eval.LimitsOf(d, general, f.Feature.Item, "diameter")})
		}
		if w, ok := f.Feature.Width.Get(); ok {
			out = append(out, closeSize{f.Name() + ".width", w.Nominal, eval.LimitsOf(w, general, f.Feature.Item, "width")})
		}
	}
	if len(h.SetUp.Zone.V) > 0 || p.Round {
		return out
	}
	for axis, name := range [3]string{"length", "width", "height"} {
		lo, hi := model.FaceOn(axis, -1), model.FaceOn(axis, 1)
		if !s.Faces[lo].Done || !s.Faces[hi].Done || lappedLater(h, nil, lo) || lappedLater(h, nil, hi) {
			continue
		}
		if s.Faces[lo].Times+s.Faces[hi].Times == 0 {
			continue // both as the stock is
		}
		if axis == 2 && p.Thickness.Is() {
			name = "thickness"
		}
		out = append(out, closeSize{"the " + name, p.Size[axis], eval.LimitsOf(p.Sized[axis], general, p.Part.Item, name)})
	}
	return out
}

// lappedLater says whether a step after the heat grinds or laps the feature or the face.
func lappedLater(h *eval.Heating, f *eval.Form, face model.Face) bool {
	after := false
	for _, w := range h.Part.Work {
		if w.SetUp == h.SetUp {
			after = true
			continue
		}
		if !after {
			continue
		}
		for _, st := range w.Steps {
			for _, t := range st.Makes {
				by := w.SetUp.By.V
				if st.Step != nil {
					by = st.Step.By.Or(by)
				}
				if worksHard(by, "") && (f != nil && t.Form == f || f == nil && t.Form == nil && t.Face == face) {
					return true
				}
			}
		}
	}
	return false
}
