package sheet

import (
	"math"
	"strings"

	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// putUp says how the piece is put up: what to do with jaws, parallels and stop, and where the dials
// are set to nought. What it says of handling is common practice.
func (m *maker) putUp(g *group) (rows [][]string) {
	put := putting(&rows)
	if g.chuck != nil {
		m.chucked(g.chuck, put)
		chuckAsks(g, put)
		return rows
	}
	h := g.hold
	if c := h.Carried; c != nil && c.Unplayed == "" {
		put("held in", c.Choice.HeldBy())
		if c.Choice.Centres || c.Choice.Mandrel != nil {
			put("at the head", c.Choice.End.String()+" end")
		} else {
			put(heldEnd(c), c.Choice.End.String())
			standsOut(c, put)
		}
		if k := c.Choice.Driver; k != nil {
			put("turned by", k.Path()+", its tail held without slack")
		}
		if c.Gripped > 0 {
			put("gripped on", gripped(c))
		}
		switch d := h.Choice.Divided; {
		case d.Upright:
			put("its axis", "upright")
		case d.Leans():
			put("its axis", model.Figure(d.Slope)+" degrees above the table, its free end up")
		case d.CentreHeight().Is():
			put("its axis", "level, "+length(d.CentreHeight().V)+" above the table")
		}
	}
	if h.Choice.Clamps != nil {
		clampedBy(h.Choice.Clamps, put)
	}
	if h.Vee != nil {
		inVee(h, put)
	}
	if h.Choice.Plate != nil {
		onPlate(h, put)
	}
	if h.Sunk > 0 {
		put("its spigot", length(tidy(h.Sunk))+" down in the bore of "+h.Choice.Divided.Item().Path())
	}
	if h.Choice.Vise != nil {
		if c := &h.Choice; c.Soft != nil && c.SoftHigh > 0 {
			put("in place of its jaws", c.Soft.Path()+", "+length(c.SoftHigh)+" high")
		}
		parallels(h, put)
		along(h, put)
	}
	stop(&h.Work.SetUp.Stop, put)
	asWritten(h.Work.SetUp, h, put)
	z := zeroOf(h, nil, h.Before.Piece.Placed(h.Pose), h.Pose)
	put("measured from", z.counts())
	if by := h.Work.SetUp.Zero.By; by.Is() {
		put("found with", by.V.Path())
	}
	setBy(h.Work.SetUp.SetBy, h.Work.SetUp.Within, put)
	leans(h, put)
	m.approach(h.Choice.Machine, z, put)
	holdAsks(g, put)
	return rows
}

func setBy(by model.Known[model.Ref], within model.Known[float64], put func(a, b string)) {
	if !by.Is() {
		if within.Is() {
			put("set true", "to "+model.Figure(within.V)+" mm")
		}
		return
	}
	s := by.V.Path()
	if within.Is() {
		s += ", to " + model.Figure(within.V) + " mm"
	}
	put("set true with", s)
}

// leans says how far the piece leans, what it is set with, and of a sine bar what stands under its roller.
func leans(h *eval.Holding, put func(a, b string)) {
	l := h.Choice.Lean.OnTable(h.Turned)
	if l.By == 0 {
		return
	}
	words := model.Figure(math.Round(math.Abs(l.By)*1e4)/1e4) + " degrees about " + "xyz"[l.About:l.About+1] + " of the machine, "
	if l.By > 0 {
		words += "anticlockwise"
	} else {
		words += "clockwise"
	}
	put("tilted", words+" looking against that axis")
	s, ok := h.SineSet()
	if by := h.Work.SetUp.Tilt.SetBy; by.Is() && !ok {
		put("tilt set with", by.V.Path())
	}
	if !ok {
		return
	}
	put("tilt set with", s.Bar.Path()+", "+model.Figure(s.Wants)+" mm under one roller")
	if !s.Made {
		put("under the roller", "NO SLIP GAUGES ARE HERE: something measured of that height")
		return
	}
	put("under the roller", s.Stack.Words())
	seconds := func(deg float64) string { return model.Figure(math.Ceil(deg*3600 - 1e-6)) }
	if off, ok := s.Off.Get(); ok {
		put("angle off by", seconds(off)+" seconds of arc at most, by the stack and the error of the bar")
	} else {
		put("angle off by", seconds(s.Certain)+" seconds of arc by the stack, besides what the bar is off, which nothing says")
	}
}

// parallels says how a piece is seated between jaws.
func parallels(h *eval.Holding, put func(a, b string)) {
	c := &h.Choice
	var s []string
	switch {
	case h.Vee != nil && h.Vee.Looks == "up" && c.Height == 0 && c.Packing == 0:
		s = append(s, "the vee block down on the clean bed of the vise")
	case c.Pair != nil && c.Height > 0:
		s = append(s, "the pair of "+model.Figure(c.Height)+" mm, one against each jaw; tap the piece down until neither moves by hand")
	case c.Packing > 0:
		s = append(s, "on packing of "+model.Figure(c.Packing)+" mm; see that it bears all along")
	default:
		s = append(s, "down on the clean bed of the vise; tap it down")
	}
	if c.RoundBar > 0 {
		s = append(s, "a round bar of ⌀"+model.Figure(c.RoundBar)+" between piece and moving jaw at half the grip")
	}
	put("seat it", strings.Join(s, "; "))
}

// onPlate says how the work lies against an angle plate.
func onPlate(h *eval.Holding, put func(a, b string)) {
	c := &h.Choice
	s := c.Back.String() + " on its upright, " + length(math.Abs(tidy(h.Lo[0])))
	if h.Lo[0] < -0.0005 {
		s += " out beyond its left end"
	} else {
		s += " in from its left end"
	}
	put("against "+c.Plate.Path(), s)
	switch {
	case c.Free > 0:
		put("its foot", length(c.Free)+" above the foot of the plate with nothing under it: the clamps alone hold it there; put packing or a jack under it before anything pushes down")
	case c.Packing > 0:
		put("its foot", "on packing of "+length(c.Packing))
	default:
		put("its foot", "down on the table")
	}
}

// inVee says how the work lies in its vee block. That work between jaws wants the block's own yoke is common
// practice.
func inVee(h *eval.Holding, put func(a, b string)) {
	v := h.Vee
	if !v.Standing() {
		return
	}
	s := v.Block.Path() + ", its vee "
	switch {
	case v.Looks == "up":
		s += "up"
	case v.Looks == "back" && v.Against:
		s += "to the fixed jaw, its foot at the moving one"
	case v.Against:
		s += "to the moving jaw, its foot at the fixed one"
	default:
		s += "to the " + map[string]string{"back": "column", "front": "front"}[v.Looks] + ", on its end beside the work"
	}
	if v.Looks == "up" {
		var at []string
		for _, x := range v.At {
			at = append(at, length(x))
		}
		s += "; its middle " + strings.Join(at, " and ") + " from the left end of the work"
	}
	if v.Blocked {
		s += "; the jaws hold the block: clamp the work in it with its yoke"
	}
	put("in a vee block", s)
	if (v.Looks == "up" || v.Lifts > 0) && h.Seat.Is() {
		at := h.Pose.Point(solid.Vec{v.At[0], 0, 0})
		put("its axis", "level, "+length(at[2])+" above the table, for work of ⌀"+model.Figure(tidy(v.D)))
	}
}

// along says where the piece lies along the jaws.
func along(h *eval.Holding, put func(a, b string)) {
	x := tidy(h.Lo[0])
	w := h.Choice.Vise.JawWidth
	switch {
	case !w.Is():
		return
	case x < 0:
		put("along the jaws", "it stands "+length(-x)+" out to the left of their left end")
	case x > 0.0005:
		put("along the jaws", length(x)+" in from their left end")
	default:
		put("along the jaws", "flush with their left end")
	}
}

// heldEnd is what the end of the work that is towards the headstock is called.
func heldEnd(c *eval.Chucking) string {
	switch k := &c.Choice; {
	case k.Centres, k.Mandrel != nil:
		return "at the headstock"
	case k.Collets != nil:
		return "end in the collet"
	}
	return "end in the chuck"
}

// standsOut says how far a piece stands out of what grips it, where something does.
func standsOut(c *eval.Chucking, put func(a, b string)) {
	if k := &c.Choice; k.Centres || k.Faceplate != nil || k.Mandrel != nil {
		return
	}
	datum, d := c.Datum()
	put("stands out", length(tidy(c.Free-d))+" from "+datum)
}

// chucked says what else holds a piece on a lathe, and how it is set.
func (m *maker) chucked(c *eval.Chucking, put func(a, b string)) {
	if s := c.Choice.Support; s != nil {
		switch {
		case s.Centre != nil:
			put("supported by", s.Centre.Path())
		case s.Steady != nil && s.Middle:
			datum, d := c.Datum()
			put("supported by", s.Steady.Path()+", "+length(tidy(c.At(s.At)-d))+" from "+datum)
		case s.Steady != nil:
			put("supported by", s.Steady.Path())
		case s.Item != nil:
			put("supported by", s.Item.Path())
		}
	}
	if c.Choice.Bush != nil {
		put("in", c.Choice.Bush.Path())
	}
	if c.Choice.Between != "" {
		put("between jaws and work", c.Choice.Between)
	}
	onMandrel(c, put)
	onFaceplate(c, put)
	u := c.Work.SetUp
	stop(&u.Stop, put)
	asWritten(u, nil, put)
	setBy(u.SetBy, u.Within, put)
	datum, _ := c.Datum()
	put("measured from", datum+", towards the tailstock")
	put("cross slide", m.crossSlide(c.Choice.Machine))
	lathed(c, put)
}

// onFaceplate says how an angle plate stands on a faceplate, and what hangs on the nose of the spindle.
func onFaceplate(c *eval.Chucking, put func(a, b string)) {
	if s, ok := c.Shelf(); ok {
		put("on the angle plate", s.Plate.Path()+", its upright bolted to the faceplate, the "+s.Face.String()+" face on its foot")
		put("its foot", length(math.Round(s.Off*1e3)/1e3)+" from the axis, square to the faceplate, tried with an indicator")
	}
	if c.Choice.Faceplate != nil {
		if u := c.Under(); u > 0 {
			put("packing", length(u)+" between the work and the plate")
		}
		for _, r := range c.Work.SetUp.Hold.V {
			if k, ok := model.Find(c.Part.Build.Shop.Clamps, r.Item); ok {
				put("held by", k.Path())
				clampedBy(k, put)
			}
		}
	}
	if kg, ok := c.OnNose(); ok && kg.Is() {
		put("on the nose", model.Figure(math.Round(kg.V*100)/100)+" kg together, without clamps, bolts and packing; lay a board over the bed first")
	}
}

// onMandrel says how work sits on a mandrel that has a thread, a shoulder or a nut.
func onMandrel(c *eval.Chucking, put func(a, b string)) {
	m := c.Choice.Mandrel
	if m == nil {
		return
	}
	against := ""
	if m.Shoulder.Is() {
		against = ", up to the shoulder of ⌀" + model.Figure(m.Shoulder.V) + " mm; see that no chip lies between"
	}
	switch {
	case m.Sort.V == "screwed" && m.Thread.Is():
		put("screwed on", m.Thread.V.String()+against)
	case against != "":
		put("pushed on", strings.TrimPrefix(against, ", "))
	}
	if c.NutAtEnd() {
		put("clamped by", "the nut "+m.Nut.V.String()+" on the free end")
	}
}
