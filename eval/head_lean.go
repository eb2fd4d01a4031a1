package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// What is made on a dividing head comes to look at the spindle by two angles alone: that of the head's
// axis above the table, and that to which the piece is turned about it. A direction of the piece that
// makes an angle with the free end of the axis keeps it, however the piece is turned; so the axis must
// rise by just what that direction rises from square to the axis towards the free end.

// Leans says whether the axis neither lies level nor stands upright.
func (d *Divided) Leans() bool { return !d.Upright && d.Slope != 0 }

// Leaning says whether the piece stands on a head whose axis leans.
func (h *Holding) Leaning() bool { return h.Carried != nil && h.Choice.Divided.Leans() }

// jawFace is how high the jaw face lies above the table, the axis rising by an angle in degrees. The
// head tilts about a line that crosses its axis at centre height.
func (d *Divided) jawFace(c *Chucking, slope float64) model.Known[float64] {
	nose := model.Known[float64]{Of: d.Item(), Attr: "face above the table when it leans (no attribute says it)"}
	if d.Head != nil {
		nose = d.Head.TiltToNose
	}
	sin, _ := sinCos(slope)
	out := model.Both(nose, c.Front(), func(n, f float64) float64 { return (n + f) * sin })
	return model.Both(d.CentreHeight(), out, func(h, o float64) float64 { return h + o })
}

// leaning has the axis rise along X: the place 0 of X is the jaw face, the free end on the right.
func (h *Holding) leaning() {
	d, c := h.Choice.Divided, h.Carried
	back := solid.Vec{0, 1, 0}
	if c.Sign < 0 {
		back = solid.Vec{0, -1, 0}
	}
	rise := d.jawFace(c, d.Slope)
	z := rise.Or(far)
	level := solid.Attitude(solid.Vec{0, 0, 1}, back).Shifted(solid.Vec{-c.Sign * c.Jaw, 0, 0})
	h.putUp(after(Lean{1, -d.Slope}.pose(), level).Shifted(solid.Vec{0, 0, z}))
	h.Seat = model.Map(rise, func(float64) float64 { return h.Lo[2] })
	sin, cos := sinCos(d.Slope)
	along, face := solid.Vec{cos, 0, sin}, solid.Vec{0, 0, z}
	h.jaws(face.Sub(along.Times(far)), face, c)
	h.supports(face, along, c)
	h.table()
}

// supports stands what holds the free end in the tool's way, and a carrier at the held end. How thick
// a footstock is about its centre nobody can say; it is as wide as the seat in the work at least, and
// no wider than it is high.
func (h *Holding) supports(face, along solid.Vec, c *Chucking) {
	d, s := h.Choice.Divided, c.Choice.Support
	if end := face.Add(along.Times(c.Free)); c.Choice.Centres || s != nil && !s.Middle && s.Steady == nil {
		name, item := "the footstock of "+d.Item().Path(), d.Item()
		if s != nil && s.Item != nil && s.Item != item {
			name, item = "the support "+s.Item.Path(), s.Item
		}
		lack := []model.Lack{{Fact: item.Path() + " (how thick it is beside its centre; no attribute says it)", At: item.At}}
		least := math.Max(model.Grain, h.seat(c))
		h.obstacle(name, item, solid.Cylinder(end, end.Add(along.Times(far)), least),
			solid.Cylinder(end, end.Add(along.Times(far)), math.Max(least, d.CentreHeight().Or(far))), lack)
	}
	if k := c.Choice.Driver; k != nil {
		r := math.Max(model.Grain, c.Within(c.Before.Profile, 0, 2*model.Grain).Most())
		least, most := model.Grain, k.Swing.Or(far)
		if w, ok := k.Width.Get(); ok {
			least, most = w, w
		}
		if w, ok := k.Swing.Get(); ok {
			r = w / 2
		}
		h.obstacle("the carrier "+k.Path(), k.Item, solid.Cylinder(face, face.Add(along.Times(least)), r),
			solid.Cylinder(face, face.Add(along.Times(most)), k.Swing.Or(2*far)/2), k.Width.Missing(), k.Swing.Missing())
	}
}

// seat is the radius of the centre hole in the free end; 0 of none.
func (h *Holding) seat(c *Chucking) float64 {
	for i, f := range h.Part.Forms {
		if f.Feature.Kind == "centre_hole" && f.Lathe != nil && f.Into.Face == c.FreeEnd() && h.Before.Features[i].Begun {
			return math.Max(f.Lathe.R0, f.Lathe.R1)
		}
	}
	return 0
}

// dividedAbout is the line that a piece on a dividing head turns about: a turned part's own axis; of
// another the middle of the first thing that goes round a line along the axis, else its own middle.
func (p *Part) dividedAbout(w *Work, end model.Face) Axis {
	if p.Round || end == model.NoFace {
		return Axis{}
	}
	along := end.Axis()
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			f := t.Form
			switch {
			case f == nil || f.Wrong != "" || f.Into.Face == model.NoFace || f.Into.Face.Axis() != along:
			case len(f.Copies) > 0:
				return AxisAt(along, f.Centre)
			case f.Rounded():
				return f.About
			case f.circled():
				if v, known := p.locate(f.Into.Face, f.Feature.At.V[0]); known != [3]bool{} {
					return AxisAt(along, v)
				}
			}
		}
	}
	return AxisAt(along, p.Low.Add(p.Size.Times(0.5)))
}

// Line gives two places on the line that a piece on a dividing head turns about, in the machine's frame.
func (h *Holding) Line() (a, b solid.Vec) {
	var along solid.Vec
	if h.Carried == nil {
		along[0] = 1
		return h.Pose.Point(solid.Vec{}), h.Pose.Point(along)
	}
	at := h.Carried.About
	along = at.At
	along[at.Along]++
	return h.Pose.Point(at.At), h.Pose.Point(along)
}

// turnUp is the turn about the axis of the head that brings a direction of the part up; wrong says why
// none does.
func (h *Holding) turnUp(dir solid.Vec) (turn solid.Pose, wrong string) {
	c := h.Carried
	out := Normal(c.Choice.End.Opposite())
	up := h.Pose.Inverse().Dir(solid.Vec{0, 0, 1})
	s, rises := dir.Dot(out), up.Dot(out)
	if math.Abs(s-rises) > 1e-9 {
		return Lean{}.pose(), h.otherAxis(s)
	}
	d, n := dir.Sub(out.Times(s)), up.Sub(out.Times(rises))
	by := 0.0
	if d.Len() > 1e-9 && n.Len() > 1e-9 {
		by = math.Atan2(out.Dot(d.Cross(n)), d.Dot(n)) * 180 / math.Pi * c.Choice.End.Opposite().Sign()
	}
	if q := math.Round(by / 90); math.Abs(by-90*q) < 1e-9 {
		by = 90 * q
	}
	turn = Lean{c.About.Along, by}.pose()
	return turn.Shifted(c.About.At.Sub(turn.Point(c.About.At))), ""
}

// otherAxis says at what angle the axis would have to stand for a direction that makes an angle of this
// cosine with its free end.
func (h *Holding) otherAxis(cos float64) string {
	d := h.Choice.Divided
	has := 0.0
	if d.Upright {
		has = 90
	} else if d.Leans() {
		has = d.Slope
	}
	wants := math.Round(math.Asin(math.Max(-1, math.Min(1, cos)))*180/math.Pi*1e4) / 1e4
	says := "with the axis of " + d.Item().Path() + " " + rising(has) + " it leans " + model.Figure(math.Round(math.Abs(wants-has)*1e4)/1e4) + " degrees from the spindle however it is turned; "
	switch wants {
	case 0:
		return says + `axis = "level" brings it there`
	case 90:
		return says + `axis = "upright" brings it there`
	case -90:
		return says + "it looks to the end that is held"
	}
	other := ""
	if wants < 0 {
		other = ", or the other end held and axis = " + model.Figure(-wants)
	}
	return says + "axis = " + model.Figure(wants) + " brings it there" + other
}

func rising(degrees float64) string {
	switch degrees {
	case 0:
		return "level"
	case 90:
		return "upright"
	}
	return "at " + model.Figure(degrees) + " degrees"
}

// looksOut is the direction that the tool comes from: against a leaning hole, else square to the face
// that a form goes into.
func (f *Form) looksOut() solid.Vec {
	if f.tilted() {
		return f.Dir.Times(-1)
	}
	return Normal(f.Into.Face)
}

// comesFrom is the direction that the tool comes from for a target; false where there is none.
func (k *Cut) comesFrom(t Target) (n solid.Vec, ok bool) {
	f := t.Form
	switch {
	case f == nil:
		return Normal(t.Face), t.Face != model.NoFace
	case f.Wrong != "" || len(f.Lacks) > 0:
		return n, false
	case f.Feature.Kind == "chamfer" || f.Feature.Kind == "radius":
		if len(f.Rims) > 0 {
			return Normal(f.Rims[0].Face.Face), true
		}
		if k.Choice.By != "milling" {
			return n, false
		}
		return f.Bevel()
	case f.Feature.Kind == "slit" || f.Feature.Kind == "split":
		n[f.Across] = 1
		return n, true
	case f.Into.Face == model.NoFace:
		return n, false
	case k.Choice.From == f.Into.Face.Opposite() && f.Through:
		return f.looksOut().Times(-1), true
	case k.Choice.From != model.NoFace && f.Open[k.Choice.From]:
		return Normal(k.Choice.From), true
	}
	return f.looksOut(), true
}

// turnsTo makes a target of a piece on a dividing head with the piece turned so that it looks up;
// false where that is not how it is made. A face beside the axis may be cut by the side of a mill.
func (k *Cut) turnsTo(t Target) bool {
	h := k.Hold
	if h.Carried == nil || k.Choice.ByHand || k.Part.Round && (t.Form == nil || !t.Form.tilted() || radial(t.Form.Into.Face) || len(t.Form.Spins) > 0) {
		return false
	}
	n, ok := k.comesFrom(t)
	if !ok {
		return false
	}
	turn, wrong := h.turnUp(n)
	if f := t.Form; wrong != "" && (f == nil || f.Feature.Kind == "slit" || f.Feature.Kind == "split") {
		turn, wrong = h.turnUp(n.Times(-1))
		if f == nil || wrong != "" {
			return false
		}
	}
	sub, hold := *k, *h
	hold.Pose, hold.Carried = after(h.Pose, turn), nil
	placed := k.Before.Piece.Placed(hold.Pose)
	for i := range 3 {
		if h.Choice.Divided.Leans() {
			break // what it sweeps is the same
		}
		hold.Lo[i], hold.Hi[i] = placed.Extent(i, -1), placed.Extent(i, 1)
	}
	sub.Hold, sub.Works = &hold, nil
	sub.work(t)
	k.Unplayed = sub.Unplayed
	for _, w := range sub.Works {
		w.Turn = &turn
		if wrong != "" && w.Wrong == "" {
			w.Facing, w.Wrong = false, wrong
		}
		k.Works = append(k.Works, w)
	}
	return true
}
