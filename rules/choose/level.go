package choose

import (
	"sort"

	"fettle/eval"
	"fettle/schema/model"
)

// level says whether a machine's spindle lies level.
func level(m *model.Machine) bool { return m != nil && m.Spindle.V == "level" }

// levelFaces lists the faces that may look up and back under a level spindle, which comes from the
// column. Holes look back. What a disc cuts with its rim (slots, steps, slits, faces) looks up, its
// walls towards the column.
func (c *chooser) levelFaces(p *eval.Part, w *eval.Work, h *eval.HoldChoice) [][2]model.Face {
	var out [][2]model.Face
	add := func(up, back model.Face) {
		if up == model.NoFace || back == model.NoFace || up.Axis() == back.Axis() {
			return
		}
		s := w.SetUp
		if r, ok := s.Up.Get(); ok && r.Face != up {
			return
		}
		for _, r := range []model.Known[[]model.Ref]{s.Jaws, {V: []model.Ref{s.Back.V}, From: s.Back.From}} {
			if r.Is() && len(r.V) > 0 && r.V[0].Face != back {
				return
			}
		}
		for _, f := range out {
			if f == [2]model.Face{up, back} {
				return
			}
		}
		out = append(out, [2]model.Face{up, back})
	}
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			for _, f := range wanted(p, t, w.SetUp.Turned.Or(0)) {
				add(f[0], f[1])
			}
		}
	}
	if len(out) == 0 { // as written, else as on any mill
		return c.uprightFaces(p, w)
	}
	sort.SliceStable(out, func(i, j int) bool {
		return p.Size[out[i][1].Axis()] < p.Size[out[j][1].Axis()]-model.Grain
	})
	return out
}

// wanted lists the faces up and on the fixed jaw with which a target can be made under a level
// spindle. A vise turned by a quarter has its jaws along the spindle.
func wanted(p *eval.Part, t eval.Target, turned float64) (out [][2]model.Face) {
	across := turned == 90 || turned == 270
	towards := func(up, column model.Face) {
		if up.Axis() == column.Axis() {
			return
		}
		if across {
			side := model.FaceOn(3-up.Axis()-column.Axis(), 1)
			out = append(out, [2]model.Face{up, side}, [2]model.Face{up, side.Opposite()})
			return
		}
		out = append(out, [2]model.Face{up, column})
	}
	both := func(up model.Face, axis int) {
		towards(up, model.FaceOn(axis, 1))
		towards(up, model.FaceOn(axis, -1))
	}
	f := t.Form
	switch {
	case f == nil && t.Face != model.NoFace:
		both(t.Face, (t.Face.Axis()+1)%3)
		both(t.Face, (t.Face.Axis()+2)%3)
		for _, up := range model.Faces {
			towards(up, t.Face)
		}
	case f == nil:
	case f.Feature.Kind == "slit" || f.Feature.Kind == "split":
		for _, up := range model.Faces {
			if up.Axis() != f.Across && (f.Into.Face == model.NoFace || up == f.Into.Face) {
				both(up, f.Across)
			}
		}
	case len(f.Mouths) > 0:
		for _, up := range model.Faces {
			towards(up, f.Into.Face)
		}
	case f.Feature.Kind == "slot" || f.Feature.Kind == "step":
		both(f.Into.Face, f.Across)
		if f.Feature.Kind == "step" {
			both(f.Side, f.Into.Face.Axis())
		}
	}
	return out
}
