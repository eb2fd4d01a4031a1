package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// A piece can lean in its holding, so that a tilted hole or a bevel looks at the spindle. What
// leans with it depends on the holding and on the axis:
//
//   - between the jaws of a vise, about the line from jaw to jaw: the piece alone, which then sits
//     on an edge;
//   - otherwise vise, jaws and piece together (a tilting vise, a tilting table, a vise on a sine
//     bar or an angle plate), and clamped work on what it lies on. About the upright nothing
//     else changes; about a level axis what stands below is declared nowhere, so that heights
//     above the table are not known.
//
// The grip is judged as the piece lies before all leans together (Holding.Upright).

// Lean is how far a piece leans, about an axis of the frame of the holding (in a vise X runs along
// the jaws and Y from jaw to jaw, however the vise is turned on the table).
type Lean struct {
	About int     // 0, 1, 2
	By    float64 // degrees, anticlockwise looking against that axis
}

// Words spells a lean out, for keys; "" for none.
func (l Lean) Words() string {
	if l.By == 0 {
		return ""
	}
	return "xyz"[l.About:l.About+1] + model.Figure(l.By)
}

// OnTable gives the same lean about an axis of the machine, for a vise turned on its table.
func (l Lean) OnTable(turned float64) Lean { return l.about(turned) }

// FromTable gives a lean that is written about an axis of the machine in the frame of the holding.
func (l Lean) FromTable(turned float64) Lean { return l.about(-turned) }

// about turns the axis of a lean about the upright by quarters.
func (l Lean) about(degrees float64) Lean {
	if l.About == 2 {
		return l
	}
	for range int(math.Round(math.Mod(degrees+720, 360)/90)) % 4 {
		if l.About == 0 {
			l.About = 1
		} else {
			l.About, l.By = 0, -l.By
		}
	}
	return l
}

// pose turns about an axis through the origin.
func (l Lean) pose() solid.Pose {
	sin, cos := sinCos(-l.By)
	a, b := (l.About+1)%3, (l.About+2)%3
	turn := func(axis int) (v solid.Vec) {
		switch axis {
		case l.About:
			v[axis] = 1
		case a:
			v[a], v[b] = cos, sin
		default:
			v[a], v[b] = -sin, cos
		}
		return v
	}
	return solid.Attitude(turn(2), turn(1))
}

// ToLookUp is the lean about the line from jaw to jaw (1) or along the jaws (0) that turns a
// direction of the part upwards; false where one such turn does not do it.
func ToLookUp(up, back model.Face, dir solid.Vec) (Lean, bool) {
	d := solid.Attitude(Normal(up), Normal(back)).Dir(dir)
	switch {
	case math.Abs(d[1]) < 1e-9 && math.Abs(d[0]) > 1e-9:
		return Lean{1, -math.Atan2(d[0], d[2]) * 180 / math.Pi}, true
	case math.Abs(d[0]) < 1e-9 && math.Abs(d[1]) > 1e-9:
		return Lean{0, math.Atan2(d[1], d[2]) * 180 / math.Pi}, true
	}
	return Lean{}, false
}

// Leans lists the directions of the part that want to look at the spindle and are square to none
// of its faces, as the steps of a stretch of work want them: axes of tilted holes, bevels milled.
func (p *Part) Leans(w *Work) []solid.Vec {
	var out []solid.Vec
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			f := t.Form
			if ds, ok := p.Wants(t); ok {
				for _, d := range ds {
					if n := mostly(d); n != model.NoFace && d.Dot(Normal(n)) < 1-1e-9 {
						out = append(out, d)
					}
				}
				continue
			}
			if f == nil || f.Wrong != "" || len(f.Lacks) > 0 {
				continue
			}
			if f.tilted() {
				for i := range max(1, len(f.Dirs)) {
					out = append(out, f.dir(i).Times(-1))
				}
			}
			if n, ok := f.Bevel(); ok && milledStep(st) {
				out = append(out, n)
			}
		}
	}
	return out
}

func milledStep(st *Step) bool { return st.Step != nil && st.Step.By.V == "milling" }

// tilted says whether a hole's axis leans from square to its face.
func (f *Form) tilted() bool {
	return len(f.Mouths) > 0 && f.Lathe == nil && f.Into.Face != model.NoFace && math.Abs(f.Dir[f.Into.Face.Axis()]) < 1-1e-9
}

// Slope is how far a hole's axis leans from square to its face, degrees.
func (f *Form) Slope() float64 {
	switch {
	case !f.tilted():
		return 0
	case f.Cross:
		return f.Feature.Tilted.By.Or(0)
	}
	return math.Acos(math.Min(1, math.Abs(f.Dir[f.Into.Face.Axis()]))) * 180 / math.Pi
}

// Bevel is the outward direction of a chamfer on the edge of two faces; false of anything else.
func (f *Form) Bevel() (n solid.Vec, ok bool) {
	if f.Feature.Kind != "chamfer" || f.Edge[0].Face == model.NoFace {
		return n, false
	}
	p, q := f.Edge[0], f.Edge[1]
	legA := f.Size * math.Tan(f.Feature.Angle.Or(45)*math.Pi/180)
	if !(f.Size > 0) || !(legA > 0) || math.IsInf(legA, 0) {
		return n, false
	}
	n[p.Face.Axis()], n[q.Face.Axis()] = p.Face.Sign()/legA, q.Face.Sign()/f.Size
	return n.Unit(), true
}

// lean turns the direction of a hole towards a face of the part.
func (p *Part) lean(f *Form) {
	t := f.Feature.Tilted
	if !t.Said {
		return
	}
	by, ok := t.By.Get()
	to, ok2 := t.Towards.Get()
	if !ok || !ok2 {
		f.lack(t.By.Missing())
		f.lack(t.Towards.Missing())
		return
	}
	face := to.Face
	if pl, ok := p.PlaneOf(to); ok {
		face = pl.Face
	}
	switch {
	case face == model.NoFace || face.Axis() == f.Into.Face.Axis():
		f.Wrong = "it is to lean towards a face that does not stand beside the one it goes into"
		return
	case by < 0 || by > 80:
		f.Wrong = "it is to lean " + model.Figure(by) + " degrees, and leans from 0 to 80 degrees are made"
		return
	case by == 0:
		return
	}
	sin, cos := math.Sincos(by * math.Pi / 180)
	f.Dir = Normal(f.Into.Face).Times(-cos).Add(Normal(face).Times(sin))
	if f.Through {
		f.Depth.V = max(f.Depth.V, p.far(f.Into)/cos)
	}
}

// at is where the axis of a hole through a mouth meets a plane square to the face it goes into.
func (f *Form) at(mouth solid.Vec, pl Plane) solid.Vec {
	a := pl.Face.Axis()
	if math.Abs(f.Dir[a]) < 1e-9 {
		mouth[a] = pl.At
		return mouth
	}
	if !f.tilted() {
		mouth[a] = pl.At
		return mouth
	}
	return mouth.Add(f.Dir.Times((pl.At - mouth[a]) / f.Dir[a]))
}

// more is how far a cylinder along a tilted hole must reach beyond its axis' end for its whole mouth.
func (f *Form) more(r float64) float64 { return r * math.Tan(f.Slope()*math.Pi/180) }

// leaned turns the whole holding, piece and obstacles, as the choice says. Heights are not known
// any more where the axis is level.
func (h *Holding) leaned() {
	whole := *h
	h.Upright = &whole
	pose := h.Choice.Lean.pose()
	if mid := h.Lo.Add(h.Hi).Times(0.5); h.Choice.Lean.About == 2 {
		pose = pose.Shifted(mid.Sub(pose.Point(mid)))
	}
	h.Pose = after(pose, h.Pose)
	h.Piece = h.Before.Piece.Placed(h.Pose)
	for i := range 3 {
		h.Lo[i], h.Hi[i] = h.Piece.Extent(i, -1), h.Piece.Extent(i, 1)
	}
	level := h.Choice.Lean.About != 2
	var stand []Obstacle
	for _, o := range h.Obstacles {
		if o.Name == "the table" {
			if !level {
				stand = append(stand, o)
			}
			continue
		}
		o.Least, o.Most, o.Hole = o.Least.Placed(pose), o.Most.Placed(pose), Hole{}
		stand = append(stand, o)
	}
	h.Obstacles = stand
	if level {
		lack := model.Known[float64]{Of: h.Work.SetUp.Item, Attr: "tilt (its height above the table)", At: h.Work.SetUp.Item.At}
		h.Bed, h.JawTop, h.Seat = lack, lack, lack
	}
}

// leansAlone says whether the piece alone leans: between the jaws, about the line from jaw to jaw.
func (c *HoldChoice) leansAlone() bool {
	return c.Lean.By != 0 && (c.Vise != nil && c.Lean.About == 1)
}

// aslant marks what was made in a direction that leans from the spindle.
func (k *Cut) aslant() {
	for i := range k.Works {
		w := &k.Works[i]
		f := w.Target.Form
		if w.Wrong != "" || k.Choice.ByHand || w.Turn != nil || f != nil && len(f.Dirs) > 0 || k.Part.Round && (f == nil || !f.tilted()) {
			continue
		}
		var n solid.Vec
		switch {
		case f == nil && w.Target.Face != model.NoFace:
			n = Normal(w.Target.Face)
		case f == nil:
			continue
		case len(f.Mouths) > 0:
			n = f.Dir.Times(-1)
			if w.Entry.Face != f.Into.Face {
				n = f.Dir
			}
		case f.Feature.Kind == "slit" || f.Feature.Kind == "split" && w.Target.Sub == "":
			n[f.Across] = 1
		case f.Feature.Kind == "chamfer" || f.Feature.Kind == "radius":
			continue
		case w.Entry.Face != model.NoFace:
			n = Normal(w.Entry.Face)
		default:
			continue
		}
		up := math.Abs(k.Hold.Pose.Dir(n)[2])
		if k.Choice.By == "milling" && (up > 1-1e-9 || up < 1e-6 && f == nil) {
			k.offWays(w, n)
		}
		if up > 1-1e-9 || up < 1e-6 {
			continue
		}
		w.Facing = false
		w.Wrong = "it leans " + inDegrees(math.Acos(up)) + " from the spindle" + k.wouldLean(n)
		if f != nil && len(f.Mouths) > 0 {
			w.Wrong = "its axis leans " + inDegrees(math.Acos(up)) + " from the spindle" + k.wouldLean(n)
		}
	}
}

// offWays marks a straight feature, or a face n that looks sideways, of a piece that is turned about the upright
// against the table's ways. A face that looks up is milled whichever way it is turned.
func (k *Cut) offWays(w *Working, n solid.Vec) {
	f := w.Target.Form
	if w.Wrong != "" || k.Hold.Choice.Divided != nil ||
		f != nil && (f.Skew != nil || len(f.Mouths) > 0 || f.Way != nil || len(f.Copies) > 0) {
		return
	}
	along := n
	if f != nil {
		along = solid.Vec{}
		along[(f.Into.Face.Axis()+1)%3] = 1
	} else if math.Abs(k.Hold.Pose.Dir(n)[2]) > 0.5 {
		return
	}
	if w.Wrong = k.offSlides(along); w.Wrong != "" {
		w.Facing = false
	}
}

// wouldLean says which tilt turns a direction of the part to the spindle.
func (k *Cut) wouldLean(n solid.Vec) string {
	c := &k.Hold.Choice
	if k.Hold.Pose.Dir(n)[2] < 0 && c.Lean.By == 0 {
		return ""
	}
	n = k.Hold.inWhole(n)
	if faceAlong(n) != model.NoFace && math.Abs(Normal(faceAlong(n)).Dot(n)) > 1-1e-9 {
		return "; it is made with no tilt"
	}
	l, ok := ToLookUp(c.Up, c.Back, n)
	if !ok {
		return ""
	}
	more := ""
	if l.About == 0 && c.Vise != nil {
		axis := 3 - c.Up.Axis() - c.Back.Axis()
		more = ", vise and all; with " + model.FaceOn(axis, -1).String() + " on the fixed jaw the piece alone is tilted"
	}
	l = l.OnTable(k.Hold.Turned)
	return "; tilt = { about = \"" + "xyz"[l.About:l.About+1] + "\", by = " + model.Figure(math.Round(l.By*1e4)/1e4) + " } turns it there" + more
}

// inDegrees prints an angle in radians.
func inDegrees(a float64) string {
	return model.Figure(math.Round(a*180/math.Pi*1000)/1000) + " degrees"
}

// bevel mills a chamfer flat, as the piece leans: the way of the cutter over it.
func (k *Cut) bevel(f *Form, w *Working) {
	c := k.Choice.Tool.Cutter
	n, ok := f.Bevel()
	if !ok || c == nil || k.Choice.By != "milling" {
		return
	}
	switch c.Kind {
	case "end_mill", "slot_drill", "face_mill", "fly_cutter":
	default:
		return
	}
	d := k.Hold.Pose.Dir(n)
	if d[2] < 1-1e-6 {
		w.Facing = false
		w.Wrong = "its bevel leans " + inDegrees(math.Acos(math.Max(-1, d[2]))) + " from level, and a flat-ended cutter mills what is level" + k.wouldLean(n)
		return
	}
	lo, hi := k.Part.Low, k.Part.High()
	var a, b solid.Vec
	for _, pl := range f.Edge {
		a[pl.Face.Axis()] = pl.At - pl.Face.Sign()*f.Size/2
		if pl == f.Edge[0] {
			a[pl.Face.Axis()] = pl.At - pl.Face.Sign()*f.Size*math.Tan(f.Feature.Angle.Or(45)*math.Pi/180)/2
		}
	}
	b = a
	r := k.Stack.Diameter.Or(0) / 2
	a[f.Along], b[f.Along] = lo[f.Along]-r, hi[f.Along]+r
	w.Moves = []solid.Move{{From: k.Hold.Pose.Point(a), To: k.Hold.Pose.Point(b)}}
	w.Run = b[f.Along] - a[f.Along]
	w.Deep = f.Size / 2
}
