package eval

import (
	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Stack is the tool as it stands in the spindle, from its tip or, of a disc cutter, from
// its lower face upwards: height 0 is that place, and what clamps a disc stands below it.
type Stack struct {
	Bodies []Body
	Out    model.Known[float64] // tip to the face of the holder
	Reach  model.Known[float64] // height 0 to the spindle nose
	Links  []Link
	// Of the cutting part.
	Diameter model.Known[float64]
	Flutes   model.Known[float64]
	Overall  model.Known[float64]
	Shank    model.Known[float64] // diameter of a plain shank
	Holder   *model.Holder        // the last mount that is a holder; nil for a collet in the spindle itself
}

// Body is one round piece of the stack. Where a size is not known, Least is what certainly
// turns there and Most all that could.
type Body struct {
	Name        string
	Item        *model.Item
	Least, Most solid.Turned
	Cuts        bool // it may touch what is to be cut
	Spindle     bool
	Lacks       []model.Lack
}

// Link is one joint of the stack: what takes, and what it takes.
type Link struct {
	Kind         string // "taper", "shank", "bore", "drawbar", "tail"
	Upper, Lower *model.Item
	Fits         model.Answer
	Takes, Has   string // "MT3", "M12": what the upper takes and the lower is
	Lacks        []model.Lack
	Why          string // of a joint that does not fit, where Takes and Has do not say enough
}

// grasp is how much of a plain shank a chuck must hold, in diameters. Common practice.
const grasp = 1.5

// round is one body, known or not.
func (s *Stack) round(name string, item *model.Item, z0, z1 float64, diameter model.Known[float64], cuts bool) {
	b := Body{Name: name, Item: item, Cuts: cuts}
	r := diameter.Or(2*model.Grain) / 2 // not known: a hair certainly turns there
	b.Least = solid.Turned{Z0: z0, Z1: z1, R0: r, R1: r, Name: name}
	b.Most = b.Least
	if !diameter.Is() {
		b.Most.R0, b.Most.R1 = far, far
		b.Lacks = diameter.Missing()
	}
	s.Bodies = append(s.Bodies, b)
}

// arborStack builds a disc cutter on an arbor.
func (s *Stack) arborStack(t Pick, a *model.Holder) {
	width := t.Cutter.Width
	w := width.Or(0)
	s.Diameter = model.Sure(t.Size)
	s.round("the cutter", t.Cutter.Item, 0, w, s.Diameter, true)
	collar, body := a.Collar, a.BodyDiameter
	clamp := a.Clamp
	below := model.Both(clamp.Diameter, collar, func(d, c float64) float64 { return max(d, c) })
	name := "the " + clamp.By.Or("nut or screw") + " of " + a.Path()
	if l, ok := clamp.Length.Get(); ok {
		if l > 0 {
			s.round(name, a.Item, -l, 0, below, false)
		}
	} else {
		s.round(name, a.Item, -far, 0, model.Known[float64]{Lacks: clamp.Length.Missing()}, false)
		s.Bodies[len(s.Bodies)-1].Least.Z0 = -model.Grain
	}
	out := a.Out
	z1 := w + out.Or(far)
	s.round("the collar of "+a.Path(), a.Item, w, w+model.Grain, collar, false)
	whole := model.Both(collar, body, func(c, b float64) float64 { return max(c, b) })
	s.round("the body of "+a.Path(), a.Item, w+model.Grain, z1, whole, false)
	if body.Is() {
		s.Bodies[len(s.Bodies)-1].Least.R0 = body.V / 2
		s.Bodies[len(s.Bodies)-1].Least.R1 = body.V / 2
	}
	s.Reach = model.Both(out, width, func(o, w float64) float64 { return o + w })
	s.Holder = a
	s.seat(t, a)
}

// seat joins the cutter's bore to the arbor.
func (s *Stack) seat(t Pick, a *model.Holder) {
	l := Link{Kind: "bore", Upper: a.Item, Lower: t.Cutter.Item}
	if !t.Cutter.Bore.Is() || !a.Seat.Is() {
		l.Lacks = append(t.Cutter.Bore.Missing(), a.Seat.Missing()...)
	} else {
		l.Takes, l.Has = model.Figure(a.Seat.V)+" mm", model.Figure(t.Cutter.Bore.V)+" mm"
		l.Fits = answer(near(a.Seat.V, t.Cutter.Bore.V))
	}
	s.Links = append(s.Links, l)
	if sl, ok := a.SeatLength.Get(); ok && len(sl) == 2 && t.Cutter.Width.Is() {
		if t.Cutter.Width.V > sl[1]+model.Grain {
			s.Links = append(s.Links, Link{Kind: "bore", Upper: a.Item, Lower: t.Cutter.Item, Fits: model.No,
				Takes: model.Figure(sl[1]) + " mm wide at most", Has: model.Figure(t.Cutter.Width.V) + " mm wide"})
		}
		if w := t.Cutter.Width.V; w < sl[0]-model.Grain && !packsOut(a.Spacers.V.Within(model.Grain, sl[1], mostSpacers), sl[0]-w, sl[1]-w) {
			s.Links = append(s.Links, Link{Kind: "bore", Upper: a.Item, Lower: t.Cutter.Item, Fits: model.No,
				Takes: model.Figure(sl[0]) + " mm wide at least, its spacers counted", Has: model.Figure(w) + " mm wide"})
		}
	}
}

// mostSpacers is how many spacing collars of an arbor are counted.
const mostSpacers = 16

// packsOut says whether some of the spacing collars, each once, come to a length between two, mm.
func packsOut(collars []float64, least, most float64) bool {
	if least <= model.Grain && most >= -model.Grain {
		return true
	}
	for i, c := range collars {
		if c <= most+model.Grain && packsOut(collars[i+1:], least-c, most-c) {
			return true
		}
	}
	return false
}

func answer(yes bool) model.Answer {
	if yes {
		return model.Yes
	}
	return model.No
}

// Lengths gives whole length and flutes of a tool: as written, else of its standard series.
func Lengths(t Pick) (overall, flutes model.Known[float64]) {
	c := t.Cutter
	overall, flutes = c.Overall, c.FluteLength
	if c.Kind == "drill" {
		if o, f, ok := handbook.DrillLengths(c.Series.Or("jobber"), t.Size); ok {
			if !overall.Is() {
				overall = model.Known[float64]{V: o, From: model.Handbook}
			}
			if !flutes.Is() {
				flutes = model.Known[float64]{V: f, From: model.Handbook}
			}
		}
	}
	return overall, flutes
}

// ShankDiameter gives the diameter of a plain shank: as written; of straight-shank drills
// their own (ISO 235: shank and drill are alike); else not known.
func ShankDiameter(t Pick) model.Known[float64] {
	c := t.Cutter
	if s, ok := c.Shank.Get(); ok {
		if s.Diameter > 0 {
			return model.Known[float64]{V: s.Diameter, From: c.Shank.From, At: c.Shank.At, Of: c.Item, Attr: "shank"}
		}
		return model.Known[float64]{At: c.At, Of: c.Item, Attr: "shank"}
	}
	if c.Kind == "drill" && c.Series.V != "taper shank" {
		return model.Known[float64]{V: t.Size, From: model.Handbook}
	}
	return model.Known[float64]{At: c.At, Of: c.Item, Attr: "shank"}
}

// shankStack builds a tool with a shank, standing out of the last holder by out.
func (s *Stack) shankStack(t Pick, mounts []Mount) {
	s.Overall, s.Flutes = Lengths(t)
	s.Shank = ShankDiameter(t)
	s.Diameter = model.Sure(t.Size)
	if undercutter(t.Cutter) {
		s.Flutes = t.Cutter.Width // only the head cuts
	}
	if t.Thread.Series != "" {
		s.Diameter = model.Sure(t.Thread.Diameter)
	}
	d := s.Diameter.V
	out := s.Out.Or(0)
	if !s.centreDrill(t, out) {
		s.plainShank(t, d, out)
	}
	top := out
	for i := len(mounts) - 1; i >= 0; i-- {
		h := mounts[i].Holder
		if h == nil {
			continue
		}
		s.Holder = h
		nose := h.Nose
		if h.Kind == "drill_chuck" || h.Kind == "boring_head" {
			nose = h.Diameter
		}
		s.round(h.Path(), h.Item, top, top+h.Out.Or(far), nose, false)
		if h.Out.Is() {
			top += h.Out.V
		} else {
			top = -1
			s.Reach = model.Lacking[float64](h.Out.Missing())
		}
		break
	}
	if top >= 0 {
		s.Reach = model.Sure(top)
	}
	if !s.Out.Is() {
		s.Reach = model.Lacking[float64](s.Out.Missing())
	}
}

// plainShank builds the cutting part of a tool and its shank up to the face of what holds it.
func (s *Stack) plainShank(t Pick, d, out float64) {
	flutes := min(s.Flutes.Or(out), out)
	s.round("the cutting part of "+t.Path(), t.Cutter.Item, 0, flutes, s.Diameter, true)
	if undercutter(t.Cutter) && flutes < out {
		end := min(t.Cutter.Reach.Or(out), out)
		s.round("the neck of "+t.Path(), t.Cutter.Item, flutes, end, t.Cutter.Neck, false)
		flutes = end
	}
	if flutes < out {
		shank := s.Shank
		if t.Cutter.Neck.Is() && !undercutter(t.Cutter) {
			shank = t.Cutter.Neck
		}
		if !shank.Is() && t.Cutter.Kind != "end_mill" && t.Cutter.Kind != "slot_drill" {
			shank = model.Sure(d)
		}
		s.round("the shank of "+t.Path(), t.Cutter.Item, flutes, out, shank, false)
	}
}

// OutKnown says whether how far the tool stands out rests on its length; else it is only the least
// that the cut needs.
func (s *Stack) OutKnown() bool { return s.Out.Is() && (s.Overall.Is() || s.Flutes.Is()) }

// unsure says that how far the tool can stand out is not known, for want of its length: what
// holds it may stand as low as the least that the cut needs.
func (s *Stack) unsure(least float64, overall model.Known[float64]) {
	if !s.Out.Is() {
		return
	}
	drop := s.Out.V - least
	for i := range s.Bodies {
		b := &s.Bodies[i]
		if b.Least.Z0 < s.Out.V-model.Grain {
			continue
		}
		b.Most.Z0 -= drop
		b.Lacks = append(append([]model.Lack{}, b.Lacks...), overall.Missing()...)
	}
	if s.Reach.Is() {
		s.Reach = model.Lacking[float64](overall.Missing())
	}
}

// spindle puts the nose on top of the stack.
func (s *Stack) spindle(m *model.Machine) {
	if m == nil || !s.Reach.Is() {
		return
	}
	s.round("the spindle nose of "+m.Path(), m.Item, s.Reach.V, s.Reach.V+far, m.NoseDiameter, false)
	s.Bodies[len(s.Bodies)-1].Spindle = true
}

// taperLink joins a tapered shank to the socket above it.
func taperLink(upper *model.Item, socket model.Known[drawing.Taper], lower *model.Item, shank model.Known[model.Shank]) Link {
	l := Link{Kind: "taper", Upper: upper, Lower: lower}
	if !socket.Is() || !shank.Is() {
		l.Lacks = append(socket.Missing(), shank.Missing()...)
		return l
	}
	l.Takes = socket.V.String()
	if shank.V.Taper.Written == "" && shank.V.Taper.Series == "" {
		l.Has, l.Fits = "a plain shank of "+model.Figure(shank.V.Diameter)+" mm", model.No
		return l
	}
	l.Has = shank.V.Taper.String()
	l.Fits = answer(socket.V.Same(shank.V.Taper))
	return l
}
