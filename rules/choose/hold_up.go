package choose

import (
	"sort"

	"fettle/eval"
	"fettle/schema/model"
)

// attitudes spreads a grip over the faces that may look up and back, and the heights.
func (c *chooser) attitudes(p *eval.Part, before *eval.State, w *eval.Work, h eval.HoldChoice) []eval.HoldChoice {
	var out []eval.HoldChoice
	pairs := c.uprightFaces(p, w)
	if level(h.Machine) {
		pairs = c.levelFaces(p, w, &h)
	}
	for _, f := range pairs {
		out = append(out, c.heldSo(p, before, w, h, f[0], f[1])...)
	}
	return out
}

// uprightFaces lists the faces that may look up, each with those that may look back, under an
// upright spindle.
func (c *chooser) uprightFaces(p *eval.Part, w *eval.Work) [][2]model.Face {
	var out [][2]model.Face
	for _, up := range ups(p, w) {
		for _, back := range c.backs(p, w, up) {
			out = append(out, [2]model.Face{up, back})
		}
	}
	return out
}

// ups lists the faces that may look up: as written, else those that the operations enter.
func ups(p *eval.Part, w *eval.Work) []model.Face {
	if w.Facing != model.NoFace {
		return []model.Face{w.Facing}
	}
	if r, ok := w.SetUp.Up.Get(); ok {
		return []model.Face{r.Face}
	}
	var out []model.Face
	add := func(f model.Face) {
		for _, g := range out {
			if f == g {
				return
			}
		}
		if f != model.NoFace {
			out = append(out, f)
		}
	}
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			if fs := p.MayLookUp(t); len(fs) > 0 {
				for _, f := range fs {
					add(f)
				}
				continue
			}
			switch {
			case st.Step != nil && st.Step.From.Is():
				add(st.Step.From.V.Face)
			case t.Form == nil:
				add(t.Face)
			case jointFace(p, t) != model.NoFace:
				add(jointFace(p, t))
			case t.Form.Seat != nil:
				add(model.FaceOn(t.Form.Across, 1))
				add(model.FaceOn(t.Form.Across, -1))
			case t.Form.Feature.Kind == "slit" || t.Form.Feature.Kind == "split":
				add(model.FaceOn(t.Form.Across, 1))
				add(model.FaceOn(t.Form.Across, -1))
			default:
				add(t.Form.Into.Face)
			}
		}
	}
	if len(out) == 0 {
		out = append(out, model.Top)
	}
	return out
}

// backs lists the faces for the fixed jaw: as written, else gripping across the shorter
// way first.
func (c *chooser) backs(p *eval.Part, w *eval.Work, up model.Face) []model.Face {
	s := w.SetUp
	for _, r := range []model.Known[[]model.Ref]{s.Jaws, {V: []model.Ref{s.Back.V}, From: s.Back.From}} {
		if r.Is() && len(r.V) > 0 {
			return []model.Face{r.V[0].Face}
		}
	}
	if w.Guide != model.NoFace && w.Guide.Axis() != up.Axis() {
		return []model.Face{w.Guide}
	}
	var out []model.Face
	for _, f := range []model.Face{model.Back, model.Front, model.Right, model.Left, model.Top, model.Bottom} {
		if f.Axis() != up.Axis() {
			out = append(out, f)
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		return p.Size[out[i].Axis()] < p.Size[out[j].Axis()]-model.Grain
	})
	return out
}
