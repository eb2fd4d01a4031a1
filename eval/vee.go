package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Round work in a vee block lies on the two sides of the vee, whatever its diameter: its axis stands
// d / (2 sin(a/2)) from the sharp bottom of a vee of the included angle a, and each side touches it
// d/2 sin(a/2) nearer to that bottom than the axis and d/2 cos(a/2) beside it. With the vee looking up
// the foot stands on the table or on the bed, and the work lies along the block, which the jaws of a
// vise hold unless the work is wider than it. With the vee looking to a jaw the work is squeezed between
// that jaw and the vee, standing on end or lying along the jaws, and the foot of the block is at the other
// jaw. Work that stands on end on a table has the block on its end beside it.
//
// What is not known of the block is bracketed: certain is what lies between the mouth of the vee and its
// foot, but for a slot along its bottom as wide as the thinnest work lets it be, and half as deep as
// there is metal below (common practice; a slot that went further would leave no block).

// Veed is how a vee block stands in a holding.
type Veed struct {
	Block  *model.VBlock
	Looks  string    // where its vee looks: "up", "back" (fixed jaw, column), "front"
	At     []float64 // middle of each block along the part's axis, from its origin, mm
	Chosen []string  // what of this was not written, in words
}

// Words spells it out, for keys.
func (v *Veed) Words() string {
	s := v.Block.Path() + " " + v.Looks
	for _, x := range v.At {
		s += " " + model.Figure(x)
	}
	return s
}

// InVee is the work as it lies in a vee block.
type InVee struct {
	*Veed
	Upright bool // the work stands on end
	Against bool // the jaws of a vise squeeze it against the vee
	// Blocked says that the jaws of a vise hold the block and not the work.
	Blocked bool
	D       float64      // the diameter that lies in the vee, mm; the largest of several
	Each    []float64    // that of each block
	Spans   [][2]float64 // what each block covers, along the part's axis; no wider than a grain where its length is not known
	Axis    float64      // from the sharp bottom of the vee to the axis of the work, mm
	Rise    model.Known[float64]
	Touch   float64 // from the sharp bottom of the vee to where its sides touch the work
	// Lifts is how far a block on its side lifts the work off the bed or parallels, mm.
	Lifts float64
	half  float64 // half the included angle, radians
	out   solid.Vec
	along solid.Vec
	aside solid.Vec
}

// vee lays the work into its vee block before it is put anywhere: lo and hi are the metal's extent as
// it is turned. It gives a sentence where that is not made on paper.
func (h *Holding) vee() string {
	c := h.Choice.Vee
	if c == nil {
		return ""
	}
	if len(h.Before.Profile) == 0 || !h.Part.Round || h.Part.Part.Square.Is() || h.Part.Part.Hexagon.Is() {
		return "what is not round in a vee block is not made on paper"
	}
	if h.Choice.leansAlone() {
		return "work that leans by itself in a vee block is not made on paper"
	}
	v := &InVee{Veed: c, Rise: model.Lacking[float64](c.Block.Vee.Missing())}
	v.along = h.Pose.Dir(solid.Vec{1, 0, 0})
	v.Upright = math.Abs(v.along[2]) > 0.5
	v.half = c.Block.Angle.Or(90) / 2 * math.Pi / 180
	long := c.Block.Length.Or(0)
	for _, x := range c.At {
		span := [2]float64{x - math.Max(long, 2*model.Grain)/2, x + math.Max(long, 2*model.Grain)/2}
		if long == 0 || v.Upright {
			span[0], span[1], _ = h.Before.Profile.Ends()
		}
		if stands := long - h.Choice.Height - h.Choice.Packing; v.Upright && stands > 0 { // from its lower end up
			if v.along[2] > 0 {
				span[1] = math.Min(span[1], span[0]+stands)
			} else {
				span[0] = math.Max(span[0], span[1]-stands)
			}
		}
		d := 2 * h.Before.Profile.Between(span[0], span[1]).Most()
		v.Spans, v.Each, v.D = append(v.Spans, span), append(v.Each, d), math.Max(v.D, d)
	}
	if !(v.D > 0) || !(v.half > 0.01) || !(v.half < math.Pi/2-0.01) {
		return "no metal of the work lies in the vee block"
	}
	v.Axis, v.Touch = VeeAxis(v.D, 2*v.half)
	if b, ok := c.Block.Vee.Get(); ok {
		v.Rise = model.Sure(b + v.Axis)
	}
	v.Against = h.Choice.Vise != nil && c.Looks != "up"
	switch c.Looks {
	case "back":
		v.out = solid.Vec{0, 1, 0}
	case "front":
		v.out = solid.Vec{0, -1, 0}
	default:
		v.out = solid.Vec{0, 0, 1}
	}
	v.aside = v.along.Cross(v.out)
	h.Vee = v
	return ""
}

// VeeAxis gives how far the axis of round work of diameter d, mm, stands from the sharp bottom of a
// vee of the included angle given, radians above 0 and below pi, and how far the places where it touches
// the sides do, both square to the foot: d/(2 sin(a/2)), and that less d/2 sin(a/2). Geometry; exact.
func VeeAxis(d, angle float64) (axis, touch float64) {
	s := math.Sin(angle / 2)
	return d / (2 * s), d/(2*s) - d/2*s
}

// Aside is how far beside the axis the sides of the vee touch the work.
func (v *InVee) Aside() float64 { return v.D / 2 * math.Cos(v.half) }

// Mouth is how wide the vee is at the top of its block.
func (v *InVee) Mouth() model.Known[float64] {
	return model.Both(v.Block.Height, v.Block.Vee, func(high, vee float64) float64 {
		return math.Max(0, 2*(high-vee)*math.Tan(v.half))
	})
}

// Proud is how far the work stands out of the vee, beyond the top of the block.
func (v *InVee) Proud() model.Known[float64] {
	return model.Both(v.Rise, v.Block.Height, func(rise, high float64) float64 { return rise + v.D/2 - high })
}

// Standing says whether the block can stand so at all: work that stands on end lies in no vee that looks up.
func (v *InVee) Standing() bool { return !v.Upright || v.Looks != "up" }

// veeSeat is how high the lowest metal lies above the foot of a vee block that looks up, by the extent
// of the metal as it is turned; least holds whatever the vee: it goes down to the foot at the most.
func (h *Holding) veeSeat(lo solid.Vec) (lift model.Known[float64], least float64) {
	below := h.Pose.Point(solid.Vec{})[2] - lo[2]
	lift = model.Map(h.Vee.Rise, func(r float64) float64 { return r - below })
	return lift, lift.Or(math.Max(0, h.Vee.Axis-below))
}

// belowVee brackets what stands under work of which it is not known how far a vee block lifts it, from an
// obstacle on: it lies as low as it can, and all of this may lie lower, by the height of a block that looks up.
func (h *Holding) belowVee(from int, lift model.Known[float64]) {
	v := h.Vee
	if v == nil || lift.Is() {
		return
	}
	down := solid.Still().Shifted(solid.Vec{0, 0, -far})
	if v.Looks == "up" {
		down = solid.Still().Shifted(solid.Vec{0, 0, -v.Block.Height.Or(far)})
	}
	for i := range h.Obstacles[from:] {
		if o := &h.Obstacles[from+i]; o.Item != v.Block.Item {
			o.Least, o.Same = o.Least.Placed(down), false
			o.Lacks = append(append([]model.Lack{}, o.Lacks...), lift.Missing()...)
		}
	}
}

// TakesPoint says whether a drill of radius r, mm, that comes out below round work stays clear of the sides of the vee
// whether or not there is a slot along their bottom: its full diameter ends at the lowest metal, and below that its point
// draws in faster than the sides do.
func (v *InVee) TakesPoint(r float64) bool {
	return v.Looks == "up" && !v.Upright && r < (v.Axis-v.D/2)*math.Tan(v.half)-model.Grain
}

// wide is how wide a block is across its vee at the least: as declared, else the mouth, else what touches.
func (v *InVee) wide() float64 {
	return v.Block.Width.Or(math.Max(v.Mouth().Or(0), v.D*math.Cos(v.half)))
}

// stand puts the blocks beside the work. The foot of one that looks up or to a jaw follows from the axis;
// base is what a block on its end stands on.
func (h *Holding) standVee(base float64) {
	v := h.Vee
	if v == nil || !v.Standing() {
		return
	}
	b := v.Block
	for _, x := range v.At {
		mid := h.Pose.Point(solid.Vec{x, 0, 0})
		from, to := -b.Length.Or(model.Grain)/2, b.Length.Or(model.Grain)/2
		mostFrom, mostTo := -b.Length.Or(far)/2, b.Length.Or(far)/2
		if v.Upright {
			mid[2] = base
			from, to, mostFrom, mostTo = 0, b.Length.Or(model.Grain), 0, b.Length.Or(far)
		}
		least, most := v.shapes(mid, from, to, true), v.shapes(mid, mostFrom, mostTo, false)
		lacks := append(append(append(append(append([]model.Lack{}, b.Vee.Missing()...), b.Height.Missing()...), b.Length.Missing()...), b.Width.Missing()...), b.Relief.Missing()...)
		for i := range least {
			h.obstacle(b.Path(), b.Item, least[i], most[i], lacks)
		}
	}
}

// shapes are the two sides of a block and the web between them below the vee, in the machine's frame:
// what certainly stands there, or all that could. mid is a place on the axis of the work; from and to
// count from there along the block.
func (v *InVee) shapes(mid solid.Vec, from, to float64, least bool) [3]solid.Shape {
	b := v.Block
	bottom := -v.Axis
	tan := math.Tan(v.half)
	wide, slot := v.wide()/2, b.Relief.Or(0)/2
	foot, top := bottom-b.Vee.Or(model.Grain), v.Touch-v.Axis
	if !b.Relief.Is() && least {
		thin := v.D
		if bars := b.Bars.V; b.Bars.Is() && len(bars) == 2 {
			thin = math.Min(thin, bars[0])
		}
		slot = thin / 2 * math.Cos(v.half)
	}
	web := bottom
	if least {
		web = bottom - b.Vee.Or(model.Grain)/2
	} else {
		wide = b.Width.Or(far) / 2
		foot, top = bottom-b.Vee.Or(far), far
	}
	if b.Vee.Is() && b.Height.Is() {
		top = foot + b.Height.V
	}
	along := v.along
	if along[2] < 0 { // a block on its end stands on what its work stands on
		along = along.Times(-1)
	}
	at := func(n solid.Vec, c float64) solid.Half { return solid.Half{N: n, C: c + n.Dot(mid)} }
	side := func(aside solid.Vec) solid.Shape {
		return solid.Prism(at(along, to), at(along.Times(-1), -from), at(v.out.Times(-1), -foot), at(v.out, top),
			at(aside.Times(-1), -slot), at(aside, math.Max(wide, slot+model.Grain)), at(v.out.Times(tan).Sub(aside), tan*bottom))
	}
	s := math.Max(slot, model.Grain)
	return [3]solid.Shape{side(v.aside), side(v.aside.Times(-1)),
		solid.Prism(at(along, to), at(along.Times(-1), -from), at(v.out.Times(-1), -foot), at(v.out, math.Max(web, foot+model.Grain)),
			at(v.aside, s), at(v.aside.Times(-1), s))}
}

// veeInVise settles where work in a vee block lies between the jaws of a vise, and where these then stand:
// it gives the place of the farthest metal behind, and how high the lowest metal lies above what is
// under it, known or at the least.
func (h *Holding) veeInVise(lo, hi solid.Vec) (y float64, rise model.Known[float64], least float64) {
	v, axis := h.Vee, h.Pose.Point(solid.Vec{})
	rise = model.Sure(0.0)
	if !v.Standing() {
		return 0, rise, least
	}
	if v.Looks == "up" {
		rise, least = h.veeSeat(lo)
		deep := hi[1] - lo[1]
		across := v.Block.Width
		room := v.wide()
		if math.Abs(v.along[1]) > 0.5 {
			across, room = v.Block.Length, v.Block.Length.Or(0)
		}
		if v.Blocked = room > deep || !across.Is(); v.Blocked {
			room = math.Max(room, deep)
			h.jawsLack = across.Missing()
			return -room/2 + (hi[1] - axis[1]), rise, least
		}
		return 0, rise, least
	}
	if !v.Upright { // on its side
		w, known := v.Block.Width.Get()
		up := axis[2] - lo[2] + h.Choice.Height + h.Choice.Packing
		switch {
		case known && w/2 > up:
			v.Lifts = w/2 - up
			rise = model.Sure(v.Lifts)
		case !known && h.Choice.Height == 0 && h.Choice.Packing == 0:
			rise = model.Lacking[float64](v.Block.Width.Missing())
		}
	}
	reach := v.Rise.Or(v.Axis)
	h.jawsLack = v.Rise.Missing()
	if v.Looks == "front" { // the block stands at the fixed jaw, and looks to the moving one
		return hi[1] - axis[1] - reach, rise, rise.Or(0)
	}
	return 0, rise, rise.Or(0)
}

// veeJaws is where the faces of the two jaws stand, once the work lies where it does.
func (h *Holding) veeJaws() (fixed, moving float64) {
	v := h.Vee
	fixed, moving = h.Hi[1], h.Lo[1]
	switch {
	case !v.Standing():
	case v.Blocked:
		room := v.wide()
		if math.Abs(v.along[1]) > 0.5 {
			room = v.Block.Length.Or(0)
		}
		fixed, moving = 0, -math.Max(room, h.Hi[1]-h.Lo[1])
	case v.Looks == "front":
		fixed = 0
	case v.Looks == "back":
		moving = h.Pose.Point(solid.Vec{})[1] - v.Rise.Or(v.Axis)
	}
	return fixed, moving
}

// Jaws is the vise whose jaws press on the work itself; nil where something else holds it, or the jaws
// hold the vee block that it lies in.
func (h *Holding) Jaws() *model.Vise {
	if h.Vee != nil && h.Vee.Blocked {
		return nil
	}
	return h.Choice.Vise
}

// BySomething says whether what stands at the moving jaw is not the work: a round bar, or a vee block.
func (h *Holding) BySomething() bool {
	return h.Choice.RoundBar > 0 || h.Vee != nil && h.Vee.Against && h.Vee.Looks == "back"
}

// touched says whether a jaw stands at the work itself, so that its place is known.
func (h *Holding) touched(dir float64) bool {
	return h.Vee.Against && (dir > 0) == (h.Vee.Looks == "back")
}

// jawSomewhere stands a jaw of which it is not known how far from the work it stands: no nearer than y, on
// the bed.
func (h *Holding) jawSomewhere(name string, y, dir, bed float64) {
	v := h.Choice.Vise
	least := solid.Box(solid.Vec{0, h.MovingAt, bed - model.Grain}, solid.Vec{model.Grain, h.MovingAt + model.Grain, bed})
	most := solid.Box(solid.Vec{-far, min(y, y+dir*far), bed}, solid.Vec{far, max(y, y+dir*far), bed + h.Choice.JawDepth().Or(far)})
	h.obstacle(name, v.Item, least, most, h.jawsLack, v.JawWidth.Missing(), h.Choice.JawDepth().Missing(), v.JawThickness.Missing())
}

// veeTouches narrows what stands at the work on the side of a vee block down to the block: as high as it
// stands, or as long as it lies.
func (h *Holding) veeTouches() {
	v := h.Vee
	if v == nil || !v.Against || !v.Standing() || !h.Fixed.Is() {
		return
	}
	sign, at, side := -1.0, h.Lo[1], &h.Moving
	if v.Looks == "front" {
		sign, at, side = 1, h.Hi[1], &h.Fixed
	}
	long, ok := v.Block.Length.Get()
	if !ok {
		*side = model.Lacking[Contact](v.Block.Length.Missing())
		return
	}
	r := side.V.Rect
	if v.Upright {
		r.Lo[1], r.Hi[1] = h.bedLevel(), h.bedLevel()+long
	} else {
		mid := h.Pose.Point(solid.Vec{v.At[0], 0, 0})[0]
		r.Lo[0], r.Hi[0] = mid-long/2, mid+long/2
		r.Lo[1], r.Hi[1] = h.Lo[2], h.Hi[2]
	}
	*side = model.Sure(h.touch(1, sign, at, r))
}

// inVee says whether a place of the piece, in the machine's frame, lies over one of its vee blocks.
func (h *Holding) inVee(at solid.Vec) (yes bool, lacks []model.Lack) {
	if !h.Vee.Block.Length.Is() {
		return false, h.Vee.Block.Length.Missing()
	}
	x := h.Pose.Inverse().Point(at)[0]
	for _, s := range h.Vee.Spans {
		if x >= s[0]-model.Grain && x <= s[1]+model.Grain {
			return true, nil
		}
	}
	return false, nil
}
