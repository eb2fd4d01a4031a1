package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Work on a lathe turns about one line of the part. Of a turned part that is its own axis, unless
// the piece is set over for an eccentric; of any other part it is a line square to two of its
// faces, through a boss, a bore or a hole. Places along the line are the part's own co-ordinate on
// that axis, so that they are the same figures in both frames; the piece alone is turned about,
// and its half section worked out afresh for that line.

// Axis is a line that a piece is turned about.
type Axis struct {
	Along int       // the axis of the part that it runs along
	At    solid.Vec // where it passes; nought along itself
}

// AxisAt is the line along an axis of the part through a place.
func AxisAt(along int, at solid.Vec) Axis {
	at[along] = 0
	return Axis{along, at}
}

// Own says whether the line is the axis of a turned part itself.
func (p *Part) Own(a Axis) bool { return p.Round && a.Along == 0 && a.At.Len() < model.Grain }

// Same says whether two lines are one.
func (a Axis) Same(b Axis) bool { return a.Along == b.Along && a.At.Sub(b.At).Len() < model.Grain }

// Pose brings a piece into the frame in which the line is x.
func (a Axis) Pose() solid.Pose {
	var up, back solid.Vec
	up[(a.Along+2)%3], back[(a.Along+1)%3] = 1, 1
	p := solid.Attitude(up, back)
	return p.Shifted(p.Point(a.At).Times(-1))
}

// Ends are the two faces of the part that the line runs square to.
func (a Axis) Ends() (lo, hi model.Face) { return model.FaceOn(a.Along, -1), model.FaceOn(a.Along, 1) }

// Aside is how far the line lies beside the axis of a turned part.
func (a Axis) Aside() float64 { return a.At.Len() }

// axisOf is the line that a target lies round; false where it lies round none, as a face.
func (p *Part) axisOf(t Target) (Axis, bool) {
	f := t.Form
	switch {
	case t.Outside:
		return Axis{}, true
	case f == nil:
		return Axis{}, false
	case f.Lathe != nil, f.KeyBore != nil, f.Tooth != nil && f.Tooth.Inside:
		return f.About, !f.several()
	case f.Kind() == "hole" && len(f.Mouths) == 1 && f.Into.Face != model.NoFace && (!p.Round || f.Into.Face.Axis() == 0):
		return AxisAt(f.Into.Face.Axis(), f.Mouths[0]), true
	}
	return Axis{}, false
}

// TurnsAbout is the line that a stretch of work turns about: that of the first of its targets that
// lies round one; else of a turned part its own, and of another the middle of the face that is
// made, or held.
func (p *Part) TurnsAbout(w *Work) Axis {
	along := 0
	for _, r := range []model.Ref{w.SetUp.End.V, w.SetUp.Up.V} {
		if r.Face != model.NoFace {
			along = r.Face.Axis()
		}
	}
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			if a, ok := p.axisOf(t); ok {
				return a
			}
			if t.Form == nil && t.Face != model.NoFace && !w.SetUp.End.Is() && !w.SetUp.Up.Is() {
				along = t.Face.Axis()
			}
		}
	}
	if p.Round {
		return Axis{}
	}
	return AxisAt(along, p.Low.Add(p.Size.Times(0.5)))
}

// MetalAlong are the outermost places of the metal along an axis of the part.
func (p *Part) MetalAlong(s *State, along int) (lo, hi float64) {
	if p.Round && along == 0 {
		lo, hi, _ = s.Profile.Ends()
		return lo, hi
	}
	return s.Faces[model.FaceOn(along, -1)].At, s.Faces[model.FaceOn(along, 1)].At
}

// HalfSection is the piece in half section about a line. About a line that is not its own axis the
// outside of a zone is what it sweeps, and Core what of it is whole. Slots and steps that are milled
// in a block shorten what it sweeps; in what is whole they are open as they are drawn.
func (p *Part) HalfSection(s *State, a Axis) Profile {
	if p.Own(a) {
		return s.Profile
	}
	var out Profile
	if p.Round && a.Along == 0 {
		out = s.Profile.beside(a.Aside())
	} else {
		out = p.blockAbout(s, a)
	}
	for i, f := range p.Forms {
		if fs := s.Features[i]; fs.Begun && !p.passedOver(f) {
			out = p.madeAbout(out, f, fs, a)
		}
	}
	return out
}

// beside is a turned piece as it runs about a line beside its axis.
func (p Profile) beside(e float64) Profile {
	var out Profile
	for _, z := range p {
		z.Uneven, z.Core = true, math.Max(0, math.Min(z.coreAt(z.X0), z.coreAt(z.X1))-e)
		z.Out0, z.Out1 = z.Out0+e, z.Out1+e
		z.In0, z.In1 = math.Max(0, z.In0-e), math.Max(0, z.In1-e)
		z.Form = nil
		out = append(out, z)
	}
	return out
}

// blockAbout is the raw section of a part that is not turned, about a line: a block between its
// faces as they are now, or the round bar that it is cut from.
func (p *Part) blockAbout(s *State, a Axis) Profile {
	lo, hi := p.MetalAlong(s, a.Along)
	z := Zone{X0: lo, X1: hi, Flats: 4, Uneven: true, Core: math.Inf(1)}
	sides := [2]float64{} // the farther face on each of the two axes across
	worked := false
	for _, f := range model.Faces {
		if f.Axis() == a.Along {
			continue
		}
		d := (s.Faces[f].At - a.At[f.Axis()]) * f.Sign()
		i := (f.Axis() - a.Along + 3) % 3
		sides[i-1] = math.Max(sides[i-1], d)
		z.Core = math.Min(z.Core, d)
		worked = worked || s.Faces[f].Times > 0
		if s.Faces[f].Times == 0 && z.Skin == "" {
			z.Skin = s.Faces[f].Skin
		}
	}
	z.Out0 = math.Hypot(sides[0], sides[1])
	if b := &p.Blank; b.Round && a.Along == b.Lies[0] {
		middle := b.Lo.Add(b.Hi).Times(0.5)
		middle[a.Along] = 0
		bar, off := b.Hi[(a.Along+1)%3]-middle[(a.Along+1)%3], a.At.Sub(middle).Len()
		z.Out0, z.Core = math.Min(z.Out0, bar+off), math.Min(z.Core, bar-off)
		if !worked {
			z.Flats, z.Uneven = 0, off > model.Grain
		}
	}
	z.Core = math.Max(0, z.Core)
	z.Out1 = z.Out0
	if hi-lo < model.Grain {
		return nil
	}
	return p.milledAbout(s, a, z)
}

// madeAbout adds what has been made round a line to a half section about it.
func (p *Part) madeAbout(out Profile, f *Form, fs *FeatureState, a Axis) Profile {
	if f.Of != nil {
		return out
	}
	if f.Lathe == nil {
		line, ok := p.axisOf(Target{Form: f})
		if !ok || !line.Same(a) || !(fs.Diameter > 0) {
			return out
		}
		at, in := f.Into.At, -f.Into.Face.Sign()
		far := at + in*fs.Depth
		if fs.Through {
			far = at + in*p.far(f.Into)
		}
		x0, x1 := p.overEnds(out, math.Min(at, far), math.Max(at, far), a)
		return out.bored(x0, x1, fs.Diameter/2, fs.Diameter/2)
	}
	l := *f.Lathe
	if !f.roundsLine(a) || l.Hollow || l.End != model.NoFace {
		return out
	}
	mark := Zone{By: fs.By}
	switch f.Feature.Kind {
	case "thread", "knurl", "worm":
		if l.Inside {
			return out
		}
		word := "threaded"
		if f.Feature.Kind == "knurl" {
			word = "knurled"
		}
		return out.marked(l.X0, l.X1, func(z *Zone) { z.Spoilt, z.By = word, fs.By })
	case "groove":
		mark.Spoilt = "grooved"
		return f.grooved(out, l.X0, l.X1, l.R0, p.reach(l.On).R0, mark)
	case "outside", "bore":
		l.R0, l.R1 = fs.Diameter/2, fs.Diameter/2
		l.X0, l.X1 = p.overEnds(out, l.X0, l.X1, a)
		if fs.Finished && !l.Inside {
			mark.Form = f
		}
	}
	if l.Inside {
		return out.bored(l.X0, l.X1, l.R0, l.R1)
	}
	return out.turned(l.X0, l.X1, l.R0, l.R1, mark)
}

// overEnds lets a stretch that ends at an end of the part go on through the metal over that end.
func (p *Part) overEnds(out Profile, x0, x1 float64, a Axis) (float64, float64) {
	lo, hi, ok := out.Ends()
	if ok && near(x0, p.Low[a.Along]) {
		x0 = math.Min(x0, lo)
	}
	if ok && near(x1, p.High()[a.Along]) {
		x1 = math.Max(x1, hi)
	}
	return x0, x1
}

// seen is the piece as it turns: in the frame of the line that it turns about.
func (h *Chucking) seen(s *State) *State {
	if h.Part.Own(h.About) {
		return s
	}
	if v := h.views[s]; v != nil {
		return v
	}
	n := *s
	if h.views == nil {
		h.views = map[*State]*State{}
	}
	h.views[s] = &n
	n.Piece = s.Piece.Placed(h.About.Pose())
	n.Profile = h.Part.HalfSection(s, h.About)
	n.Centred = [2]bool{}
	for i, f := range h.Part.Forms {
		if f.Feature.Kind == "centre_hole" && s.Features[i].Finished && f.About.Same(h.About) {
			n.Centred[endIndex(f.Into.Face)] = true
		}
	}
	return &n
}

// left is the piece after an operation, back in the part's own frame.
func (k *Turn) left(own *State) *State {
	h, p := k.Hold, k.Part
	if p.Own(h.About) {
		return k.After
	}
	n := *k.After
	n.Centred = own.Centred
	back := h.About.Pose().Inverse()
	var took []solid.Removal
	for _, r := range k.After.Piece.Removals()[len(k.Before.Piece.Removals()):] {
		took = append(took, turnedBack(r, back))
	}
	n.Piece, n.Profile = own.Piece.Cut(took...), own.Profile
	if !p.Round {
		return &n
	}
	e := h.About.Aside()
	for _, w := range k.Works {
		switch f := w.Target.Form; {
		case w.Wrong != "":
		case f == nil && w.Target.Face.Turned():
			n.Profile = n.Profile.faced(k.After.Faces[w.Target.Face].At, w.Target.Face.Sign())
		case f != nil && f.Lathe != nil && !w.Inside:
			n.Profile = n.Profile.turned(w.X0, w.X1, w.R0+e, w.R1+e, Zone{By: k.Spot}).marked(w.X0, w.X1, func(z *Zone) { z.Spoilt, z.By = "eccentric", k.Spot })
		}
	}
	return &n
}

// GoesRound says whether everything that a stretch of work makes goes round one line: ends,
// outsides, bores, holes on that line. Of a turned part holes must lie on its own axis: others are
// drilled elsewhere unless the recipe says so.
func (p *Part) GoesRound(w *Work) bool {
	some := false
	line := p.TurnsAbout(w)
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			about, ok := p.axisOf(t)
			switch {
			case t.Form == nil && !t.Outside:
				ok = t.Face != model.NoFace && t.Face.Axis() == line.Along
			case ok && p.Round && t.Form != nil && t.Form.Lathe == nil && !p.Own(about):
				ok = false
			default:
				ok = ok && about.Same(line)
			}
			if !ok {
				return false
			}
			some = true
		}
	}
	return some
}

// Bossed says whether a stretch of work makes something that is made on a lathe alone.
func (w *Work) Bossed() bool {
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			if t.Form != nil && t.Form.Lathe != nil && t.Form.Feature.Kind != "chamfer" && t.Form.Feature.Kind != "radius" {
				return true
			}
		}
	}
	return false
}
