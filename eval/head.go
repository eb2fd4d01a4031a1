package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A piece on a dividing head or rotary table. With its axis level it lies along X, what holds it on
// the left, and can be turned about its axis to any angle; with its axis upright it stands on what
// holds it; between the two its free end leans up, or down. What carries it is reckoned like a holding
// on a lathe.

// Divided is how a piece stands on a dividing head or rotary table.
type Divided struct {
	Head    *model.DividingHead
	Table   *model.RotaryTable
	Carries ChuckChoice // what is on it; its Machine is nil
	Upright bool
	Slope   float64 // degrees of the axis above the table, the free end up; not counted where Upright
	Blocks  float64 // raising blocks under head and footstock
	Foot    bool    // its footstock holds the free end
}

// Item is the block of head or table.
func (d *Divided) Item() *model.Item {
	if d.Head != nil {
		return d.Head.Item
	}
	return itemOf(d.Table)
}

// Words spells the choice out, for keys.
func (d *Divided) Words() string {
	s := d.Item().Path() + "|" + d.Carries.Words() + "|" + model.Figure(d.Blocks)
	if d.Upright {
		s += "|upright"
	}
	if d.Foot {
		s += "|footstock"
	}
	if d.Leans() {
		s += "|" + model.Figure(d.Slope) + " deg"
	}
	return s
}

// CentreHeight is the axis above the table, blocks included.
func (d *Divided) CentreHeight() model.Known[float64] {
	c := model.Known[float64]{Of: d.Item(), Attr: "centre_height"}
	switch {
	case d.Head != nil:
		c = d.Head.CentreHeight
	case d.Table != nil:
		c = d.Table.CentreHeight
	}
	return model.Map(c, func(h float64) float64 { return h + d.Blocks })
}

// onHead puts the piece on a dividing head or rotary table.
func (h *Holding) onHead() {
	d := h.Choice.Divided
	h.Carried = &Chucking{Spot: h.Spot, Work: h.Work, Part: h.Part, Choice: d.Carries, own: h.Before, Key: h.Key}
	h.Carried.About = h.Part.dividedAbout(h.Work, d.Carries.End)
	h.Carried.Before = h.Carried.seen(h.Before)
	h.Carried.play()
	if h.Carried.Unplayed != "" {
		h.Unplayed = h.Carried.Unplayed
		return
	}
	switch {
	case d.Upright:
		h.standing()
	case d.Leans():
		h.leaning()
	default:
		h.lying()
	}
}

// lying has the axis level along X: the place 0 of X is the jaw face, and what holds the piece
// is on the left.
func (h *Holding) lying() {
	d, c := h.Choice.Divided, h.Carried
	back := solid.Vec{0, 1, 0}
	if c.Sign < 0 {
		back = solid.Vec{0, -1, 0} // turned end for end about the upright
	}
	height := d.CentreHeight()
	z := height.Or(far)
	h.putUp(solid.Attitude(solid.Vec{0, 0, 1}, back).Shifted(solid.Vec{-c.Sign * c.Jaw, 0, z}))
	h.Lo[0] = math.Max(h.Lo[0], -c.JawLength.Or(0))
	if height.Is() {
		h.Seat = model.Sure(h.Lo[2])
	} else {
		h.Seat = model.Lacking[float64](height.Missing())
	}
	from, to := solid.Vec{-far, 0, z}, solid.Vec{0, 0, z}
	h.jaws(from, to, c)
	h.supports(to, solid.Vec{1, 0, 0}, c)
	h.table()
}

// putUp places the piece, as it lies in the frame of the line that it turns about.
func (h *Holding) putUp(pose solid.Pose) {
	h.Pose = pose
	if !h.Part.Own(h.Carried.About) {
		h.Pose = after(pose, h.Carried.About.Pose())
	}
	h.Piece = h.Before.Piece.Placed(h.Pose)
	if h.Choice.Divided.Leans() {
		h.Lo, h.Hi = h.sweptBox(pose)
		return
	}
	for i := range 3 {
		h.Lo[i], h.Hi[i] = h.Piece.Extent(i, -1), h.Piece.Extent(i, 1)
	}
}

// sweptBox is the box round what the piece sweeps when it is turned about its axis, by its half section:
// of a turned part the box round it.
func (h *Holding) sweptBox(pose solid.Pose) (lo, hi solid.Vec) {
	for i := range 3 {
		lo[i], hi[i] = math.Inf(1), math.Inf(-1)
	}
	along := pose.Dir(solid.Vec{1, 0, 0})
	for _, z := range h.Carried.Before.Profile {
		for _, end := range [2][2]float64{{z.X0, z.Out0}, {z.X1, z.Out1}} {
			at := pose.Point(solid.Vec{end[0], 0, 0})
			for i := range 3 {
				r := end[1] * math.Sqrt(math.Max(0, 1-along[i]*along[i]))
				lo[i], hi[i] = math.Min(lo[i], at[i]-r), math.Max(hi[i], at[i]+r)
			}
		}
	}
	return lo, hi
}

// standing has the axis upright, the held end down on what holds it.
func (h *Holding) standing() {
	d, c := h.Choice.Divided, h.Carried
	up := solid.Vec{c.Sign, 0, 0}
	rise := d.rise(c)
	z := rise.Or(far)
	h.putUp(solid.Attitude(up, solid.Vec{0, 1, 0}).Shifted(solid.Vec{0, 0, z - c.Sign*c.Jaw}))
	if rise.Is() {
		h.Seat = model.Sure(z)
	} else {
		h.Seat = model.Lacking[float64](rise.Missing())
	}
	h.jaws(solid.Vec{0, 0, -far}, solid.Vec{0, 0, z}, c)
	h.table()
}

// rise is the jaw face above the table, axis upright: the table's height, or a head's centre height and
// how far its nose stands from the line that it tilts about, and what is on it.
func (d *Divided) rise(c *Chucking) model.Known[float64] {
	if d.Table != nil {
		return model.Both(d.Table.Height, c.Front(), func(b, f float64) float64 { return b + f + d.Blocks })
	}
	return d.jawFace(c, 90)
}

// jaws stands what holds the piece in the tool's way: the body of a chuck, and its jaws as far
// as they sweep round.
func (h *Holding) jaws(from, to solid.Vec, c *Chucking) {
	ch := c.Choice.Chuck
	if ch == nil {
		return
	}
	along := to.Sub(from).Unit()
	least, most := c.Gripped/2+model.Grain, far
	sweep := c.Sweeps()
	if s, ok := sweep.Get(); ok {
		least, most = s/2, s/2
	}
	h.obstacle("the jaws of "+ch.Path(), ch.Item, solid.Cylinder(from, to, least), solid.Cylinder(from, to, most), sweep.Missing())
	body := to.Sub(along.Times(ch.JawLength.Or(0)))
	r := model.Map(ch.Diameter, func(d float64) float64 { return d / 2 })
	h.obstacle("the body of "+ch.Path(), ch.Item, solid.Cylinder(from, body, r.Or(least)), solid.Cylinder(from, body, r.Or(far)), r.Missing(), ch.JawLength.Missing())
}

// Turned features that look in several directions are made one after another, the piece turned
// on between. Each is shaped as if it looked to the top, and played in that frame.

// spun gives a radial feature as it looks to the top, with the angles that it really looks in;
// false where it is none.
func (f *Form) spun() (*Form, []float64, bool) {
	if len(f.Spins) > 0 {
		return f, f.Spins, true
	}
	if f.Lathe != nil || !radial(f.Into.Face) {
		return nil, nil, false
	}
	n := map[model.Face]int{model.Top: 0, model.Back: 1, model.Bottom: 2, model.Front: 3}[f.Into.Face]
	g := *f
	g.Mouths = append([]solid.Vec(nil), f.Mouths...)
	for range (4 - n) % 4 {
		g.quarterTurn()
	}
	return &g, []float64{float64(90 * n)}, true
}

func radial(f model.Face) bool {
	return f == model.Top || f == model.Back || f == model.Bottom || f == model.Front
}

// one is the feature at one of its angles alone, looking to the top.
func (f *Form) one(of *Form, i int) *Form {
	g := *f
	g.Spins, g.Of, g.beside = nil, of, nil
	if len(f.Mouths) > 0 {
		g.Mouths = []solid.Vec{f.Mouths[min(i, len(f.Mouths)-1)]}
		if radial(f.Into.Face) { // on a cone each mouth lies at a radius of its own
			g.Into.At = g.Mouths[0][f.Into.Face.Axis()]
		}
	}
	return &g
}

// towards is the pose that turns the direction at an angle, from top towards back, to the top.
func towards(degrees float64) solid.Pose {
	sin, cos := sinCos(degrees)
	return solid.Attitude(solid.Vec{0, sin, cos}, solid.Vec{0, cos, -sin})
}

// roundAbout makes a feature at each of its angles that can be reached: on a dividing head all
// of them, the piece turned on; in another holding those that look up as it is held.
func (k *Cut) roundAbout(t Target, f *Form, spins []float64) {
	fs := k.Part.change(k.After, t.Form)
	// A spot, a thread or a countersink leaves the hole itself as far as it had come.
	beside := t.Sub != "" || k.Choice.By == "spotting" || k.Choice.By == "centring"
	was, twice, done := fs.Finished, fs.Twice || fs.Finished, fs.Turns
	made, finished := 0, true
	for i, spin := range spins {
		turn := towards(spin)
		pose := k.Hold.Pose
		if k.Hold.Choice.Divided == nil && !k.byHand() {
			if pose.Dir(turn.Inverse().Dir(f.looksOut()))[2] < 1-1e-9 {
				continue
			}
			pose = after(pose, turn.Inverse())
		}
		one := f.one(t.Form, i)
		wrong := ""
		if k.Hold.Carried != nil && (one.tilted() || k.Hold.Choice.Divided.Leans()) {
			var more solid.Pose
			if more, wrong = k.Hold.turnUp(one.looksOut()); wrong == "" {
				pose = after(pose, more)
			}
		}
		fs.Finished = false
		k.turnedTo(turn, pose, Target{Ref: t.Ref, Form: one, Sub: t.Sub}, t, wrong)
		made++
		finished = finished && fs.Finished
	}
	if beside {
		fs.Finished = was
	} else {
		fs.Turns = min(done+made, len(spins))
		fs.Finished = finished && made > 0 && fs.Turns >= len(spins)
		fs.Twice = twice && made > 0
	}
	if made == 0 {
		k.Works = append(k.Works, Working{Target: t, Entry: f.Into, Wrong: "none of its places looks up as the piece is held"})
	}
}

// after is the pose q followed by p.
func after(p, q solid.Pose) solid.Pose {
	back, inv := q.Inverse(), p.Inverse()
	out := solid.Attitude(back.Dir(inv.Dir(solid.Vec{0, 0, 1})), back.Dir(inv.Dir(solid.Vec{0, 1, 0})))
	return out.Shifted(p.Point(q.Point(solid.Vec{})).Sub(out.Point(solid.Vec{})))
}

// turnedTo makes one target with the piece turned so that it looks to the top, and takes over
// what was taken, turned back.
// wrong says why it does not come to look at the spindle; "" if it does.
func (k *Cut) turnedTo(turn, pose solid.Pose, t, whole Target, wrong string) {
	sub, hold, before, end := *k, *k.Hold, *k.Before, *k.After
	hold.Pose = pose
	before.Piece = k.Before.Piece.Placed(turn)
	end.Piece = k.After.Piece.Placed(turn)
	end.Burrs = nil
	sub.Hold, sub.Before, sub.After, sub.Works = &hold, &before, &end, nil
	had := len(end.Piece.Removals())
	sub.work(t)
	back := turn.Inverse()
	var took []solid.Removal
	for _, r := range sub.After.Piece.Removals()[had:] {
		took = append(took, turnedBack(r, back))
	}
	k.After.Piece = k.After.Piece.Cut(took...)
	if k.Hold.Choice.Divided != nil && pose != k.Hold.Pose {
		turn = after(k.Hold.Pose.Inverse(), after(pose, turn))
	}
	for _, w := range sub.Works {
		w.Target = whole
		w.Turn = &turn
		if wrong != "" && w.Wrong == "" {
			w.Facing, w.Wrong = false, wrong
		}
		k.Works = append(k.Works, w)
	}
}

// sinCos are those of an angle in degrees, exact for quarter turns.
func sinCos(degrees float64) (sin, cos float64) {
	sin, cos = math.Sincos(degrees * math.Pi / 180)
	for _, x := range [2]*float64{&sin, &cos} {
		if r := math.Round(*x); math.Abs(*x-r) < 1e-15 {
			*x = r
		}
	}
	return sin, cos
}

func turnedBack(r solid.Removal, back solid.Pose) solid.Removal {
	out := solid.Removal{Take: r.Take.Placed(back), By: r.By}
	for _, l := range r.Less {
		out.Less = append(out.Less, l.Placed(back))
	}
	return out
}

// spun makes a feature on the round of a turned part place by place, where that is how it is
// made: on a dividing head, or where it looks in several directions.
func (k *Cut) spun(t Target) bool {
	f, spins, ok := t.Form.spun()
	if !ok || k.Hold.Choice.Divided == nil && len(t.Form.Spins) == 0 {
		return false
	}
	k.roundAbout(t, f, spins)
	return true
}
