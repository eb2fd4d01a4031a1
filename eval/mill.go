package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// coneDepth is how deep a cone of an included angle goes from a large diameter down to a
// small one: half the difference over the tangent of half the angle.
func coneDepth(large, small, included float64) float64 {
	half := included / 2 * math.Pi / 180
	if half <= 0 || half >= math.Pi/2 {
		return 0
	}
	return max(0, large-small) / 2 / math.Tan(half)
}

// face machines one of the part's own faces flat; of an assembly that of the part that it is seen from.
func (k *Cut) face(t Target) {
	called := t.Face.String()
	if t.Member > 0 {
		called = t.Name()
	}
	k.faced(t, t.Face, k.Part.FaceAt(t.Face), called)
}

// faced machines a face that looks in a direction and lies finished at a place along its axis.
func (k *Cut) faced(t Target, f model.Face, finished float64, called string) {
	fs := &k.After.Faces[f]
	w := Working{Target: t, Entry: Plane{f, finished, called}, Level: true}
	at := k.faceGoal(f, finished)
	up := k.Hold.Pose.Dir(Normal(f))
	w.Facing = up[2] > 0.5
	w.Deep = math.Abs(k.Before.Faces[f].At - at)
	if k.Part.Joined() {
		w.Deep = max(0, (k.Before.Piece.Extent(f.Axis(), f.Sign())-at)*f.Sign())
	}
	lo, hi := k.Before.Bounds()
	boxLo, boxHi := lo.Add(solid.Vec{-beyond, -beyond, -beyond}), hi.Add(solid.Vec{beyond, beyond, beyond})
	if f.Sign() > 0 {
		boxLo[f.Axis()] = at
	} else {
		boxHi[f.Axis()] = at
	}
	if w.Deep > 0 {
		w.Took = []solid.Removal{{Take: solid.Box(boxLo, boxHi), By: t.Name()}}
	}
	w.Moves, w.Run = k.faceMoves(f, at, up)
	if up[2] > -0.5 && up[2] < 0.5 {
		// A face cut by the side of an end mill looks sideways; the tool's side must be as
		// long as the metal is high.
		w.Facing = k.sideCutter()
		w.Deep = k.Hold.Hi[2] - k.Hold.Lo[2]
	}
	done := near(at, finished)
	if fs.Done {
		fs.Times++
	}
	fs.At, fs.Skin, fs.Done, fs.By = at, "", done, k.Spot
	fs.Times++
	w.Final = done
	k.took(w)
	k.faceBurrs(f, at)
}

// faceGoal is where the face shall lie afterwards, along its axis: the finished place, or
// short of it by `leaves`, or the working size `to`, taken to the opposite face as it is.
func (k *Cut) faceGoal(f model.Face, at float64) float64 {
	if k.Step.Work.Kind == "setup" && k.Step.Step == nil {
		return at + f.Sign()*k.Step.Work.Leaves
	}
	st := k.Step.Step
	switch {
	case st == nil:
	case st.Leaves.Is():
		return at + f.Sign()*st.Leaves.V
	case st.To.Is():
		from := f.Opposite()
		other := k.Before.Faces[from].At
		if r := st.To.V.From; !r.IsNone() {
			if pl, ok := k.Part.PlaneOf(r); ok && pl.Face.Axis() == f.Axis() {
				other = pl.At
			}
		}
		return other + f.Sign()*st.To.V.Size.Nominal
	}
	return at
}

func (k *Cut) sideCutter() bool {
	c := k.Choice.Tool.Cutter
	if c == nil {
		return true
	}
	switch c.Kind {
	case "end_mill", "slot_drill", "side_and_face_cutter":
		return true
	}
	return false
}

// faceMoves are the passes over a face that looks up, or one pass along a face that looks
// sideways, in the machine's frame.
func (k *Cut) faceMoves(f model.Face, at float64, up solid.Vec) ([]solid.Move, float64) {
	d, ok := k.Stack.Diameter.Get()
	if !ok {
		return nil, 0
	}
	if moves, run, ok := k.bladeFace(f, at, up); ok {
		return moves, run
	}
	r := d / 2
	var v solid.Vec
	v[f.Axis()] = at
	level := k.Hold.Pose.Point(v)
	lo, hi := k.Hold.Lo, k.Hold.Hi
	if up[2] > 0.5 {
		return rows(lo, hi, level[2], r)
	}
	if up[2] < -0.5 {
		return nil, 0
	}
	axis, sign := 0, up[0]
	if math.Abs(up[1]) > 0.5 {
		axis, sign = 1, up[1]
	}
	var from, to solid.Vec
	other := 1 - axis
	from[axis], to[axis] = level[axis]+sign*r, level[axis]+sign*r
	from[2], to[2] = lo[2]-k.Part.Build.Thumbs["flange_gap"].Or(0.5), lo[2]-k.Part.Build.Thumbs["flange_gap"].Or(0.5)
	from[other], to[other] = lo[other]-r, hi[other]+r
	return []solid.Move{{From: from, To: to}}, to[other] - from[other]
}

// rows covers a rectangle with passes of a cutter of radius r along its longer side. One
// pass along the middle is enough where the cutter is as wide as the metal; else the outer
// passes run with the cutter's middle a quarter of its radius inside the edge.
func rows(lo, hi solid.Vec, z, r float64) ([]solid.Move, float64) {
	long, short := 0, 1
	if hi[1]-lo[1] > hi[0]-lo[0]+model.Grain {
		long, short = 1, 0
	}
	pass := func(at float64) solid.Move {
		var m solid.Move
		m.From[2], m.To[2] = z, z
		m.From[short], m.To[short] = at, at
		m.From[long], m.To[long] = lo[long]-r, hi[long]+r
		return m
	}
	run := hi[long] - lo[long] + 2*r
	if hi[short]-lo[short] <= 2*r {
		return []solid.Move{pass((lo[short] + hi[short]) / 2)}, run
	}
	inset := r / 4
	first, last := lo[short]+inset, hi[short]-inset
	n := int(math.Ceil((last-first)/(1.5*r))) + 1
	out := []solid.Move{pass(first), pass(last)}
	return out, run * float64(n)
}

// straight makes a slot, pocket or step with an end mill or slot drill.
func (k *Cut) straight(t Target) {
	if k.blade(t) {
		return
	}
	f := t.Form
	fs := k.Part.change(k.After, f)
	w := Working{Target: t, Entry: f.Into}
	entry := f.Into
	from := k.Choice.From
	if from != model.NoFace && from != entry.Face && f.Open[from] {
		entry = Plane{from, k.Part.FaceAt(from), from.String()}
		w.Entry = entry
	}
	w.Facing = k.Hold.Pose.Dir(Normal(entry.Face))[2] > 0.5
	shape := k.trimmed(f)
	r := k.Stack.Diameter.Or(0) / 2
	corner := r
	if entry.Face != f.Into.Face {
		corner = 0
	}
	w.Took = shape.removal(k.Part.outward(), corner)
	w.Depth = shape.Depth.V
	w.Deep = shape.Hi[entry.Face.Axis()] - shape.Lo[entry.Face.Axis()]
	w.Through = f.Through
	switch {
	case f.Skew != nil && !w.Facing:
	case f.Skew != nil:
		if w.Wrong = k.skewWrong(f); w.Wrong != "" {
			w.Facing = false
		} else if k.Stack.Diameter.Is() && w.Facing {
			w.Moves, w.Run = k.skewMoves(shape, r)
		}
	case k.Stack.Diameter.Is() && w.Facing:
		w.Moves, w.Run = k.straightMoves(shape, entry, r)
	}
	k.straightDone(fs, f, shape, w)
}

// straightDone notes what has become of a straight feature, takes its metal away and leaves its burrs.
func (k *Cut) straightDone(fs *FeatureState, f, shape *Form, w Working) {
	if fs.Finished {
		fs.Twice = true
	}
	left := k.Step.Step != nil && k.Step.Step.Leaves.V > model.Grain
	fs.Begun, fs.Depth, fs.ByProcess, fs.By = true, w.Depth, k.Choice.By, k.Spot
	fs.Finished = !left && shape.Depth.V >= f.Depth.V-model.Grain
	w.Final = fs.Finished
	k.took(w)
	k.straightBurrs(f, shape)
}

// trimmed is the form as this operation leaves it: short by `leaves` on its closed sides,
// or only down to `down_to`.
func (k *Cut) trimmed(f *Form) *Form {
	g := *f
	st := k.Step.Step
	if st == nil {
		return &g
	}
	if l := st.Leaves.Or(0); l > 0 && g.Skew != nil {
		g.Width -= 2 * l
	} else if l > 0 {
		for _, face := range model.Faces {
			if g.Open[face] {
				continue
			}
			if face.Sign() > 0 {
				g.Hi[face.Axis()] -= l
			} else {
				g.Lo[face.Axis()] += l
			}
		}
	}
	if d, ok := st.DownTo.Depth.Get(); ok && d < g.Depth.V {
		g.Depth = model.Sure(d)
		g.Open[g.Into.Face.Opposite()] = false
		axis, floor := g.Into.Face.Axis(), g.Into.At-g.Into.Face.Sign()*d
		if g.Into.Face.Sign() > 0 {
			g.Lo[axis] = floor
		} else {
			g.Hi[axis] = floor
		}
	}
	return &g
}

// straightMoves are the outermost passes of a cutter of radius r in the room of a form, at
// its full depth: along closed walls the cutter's middle keeps r off, at open sides it runs
// out by r.
func (k *Cut) straightMoves(f *Form, entry Plane, r float64) ([]solid.Move, float64) {
	lo, hi := f.Lo, f.Hi
	for _, face := range model.Faces {
		a := face.Axis()
		if a == entry.Face.Axis() {
			continue
		}
		d := r
		if f.Open[face] {
			d = -r
			if f.Feature.Kind == "step" && face == f.Side || f.Hi[a]-f.Lo[a] <= 2*r && a == f.Across {
				d = min(r, f.Hi[a]-f.Lo[a]-r)
			}
		}
		if face.Sign() > 0 {
			hi[a] -= d
		} else {
			lo[a] += d
		}
	}
	for i := range 3 {
		if i != entry.Face.Axis() && lo[i] > hi[i] {
			m := (lo[i] + hi[i]) / 2
			lo[i], hi[i] = m, m
		}
	}
	return k.loop(f, lo, hi, entry)
}

// loop runs round a rectangle at the floor, or along a line where it has no width, and
// starts with the way down to it.
func (k *Cut) loop(f *Form, lo, hi solid.Vec, entry Plane) ([]solid.Move, float64) {
	e := entry.Face.Axis()
	floor := f.Lo[e]
	if entry.Face.Sign() < 0 {
		floor = f.Hi[e]
	}
	a, b := across(entry.Face)
	corner := func(x, y float64) solid.Vec {
		var v solid.Vec
		v[a], v[b], v[e] = x, y, floor
		return k.Hold.Pose.Point(v)
	}
	ps := []solid.Vec{corner(lo[a], lo[b]), corner(hi[a], lo[b]), corner(hi[a], hi[b]), corner(lo[a], hi[b])}
	above := ps[0]
	above[2] = k.Hold.Hi[2] + k.Part.Build.Thumbs["room"].Or(1)
	moves := []solid.Move{{From: above, To: ps[0]}}
	run := 0.0
	for i := range ps {
		m := solid.Move{From: ps[i], To: ps[(i+1)%4]}
		if l := m.To.Sub(m.From).Len(); l > model.Grain {
			moves = append(moves, m)
			run += l
		}
	}
	return moves, run
}
