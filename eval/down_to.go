package eval

import (
	"fettle/schema/model"
)

// downToFace puts the depth in place of a face that `down_to` names, so that all that plays a depth
// plays it: how far that face, as it is finished, lies below the one that the tool enters, mm. Amiss
// says why the face is no floor for it. With several things made the first that has a form counts.
func (p *Part) downToFace(out *Step) {
	st := out.Step
	if st == nil || !st.DownTo.Face.Is() {
		return
	}
	for _, t := range out.Makes {
		if t.Form == nil {
			continue
		}
		entry := t.Form.Into
		if f := st.From.V.Face; f != model.NoFace {
			entry = Plane{f, p.FaceAt(f), f.String()}
		}
		floor, ok := p.PlaneOf(st.DownTo.Face.V)
		deep := (entry.At - floor.At) * entry.Face.Sign()
		switch {
		case !ok || entry.Face == model.NoFace:
			return
		case floor.Face.Axis() != entry.Face.Axis():
			out.Amiss = "it does not lie square to the way in from " + entry.Name
		case deep <= model.Grain:
			out.Amiss = "it does not lie below " + entry.Name + ", where the tool goes in"
		default:
			own := *st
			own.DownTo.Depth = model.Known[float64]{V: deep, From: st.DownTo.Face.From, At: st.DownTo.Face.At, Of: st.Item, Attr: "down_to"}
			out.Step = &own
		}
		return
	}
}

// Steps lists every step of the work of a part, in the order written.
func (p *Part) Steps() (out []*Step) {
	for _, w := range p.Work {
		out = append(out, w.Steps...)
	}
	return out
}
