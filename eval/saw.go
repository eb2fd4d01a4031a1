package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// slit saws a slit or a split with a disc cutter. A disc on an upright spindle cuts level
// planes only. Left to itself the saw is plunged: it goes straight in until the least
// depth of its arc, at the two ends of the slit, is the depth wanted. With `along` it runs
// the whole length at that depth.
func (k *Cut) slit(t Target) {
	f := t.Form
	fs := k.Part.change(k.After, f)
	w := Working{Target: t}
	entry := f.Into
	if f.Feature.Kind == "split" {
		entry = k.splitEntry(f)
	}
	if k.Choice.From != model.NoFace && k.Choice.From.Axis() != f.Across && f.Open[k.Choice.From] {
		entry = Plane{k.Choice.From, k.Part.FaceAt(k.Choice.From), k.Choice.From.String()}
	}
	w.Entry = entry
	var n solid.Vec
	n[f.Across] = 1
	w.Level = math.Abs(k.Hold.Pose.Dir(n)[2]) > 0.5
	up := k.Hold.Pose.Dir(Normal(entry.Face))[2]
	w.Facing = w.Level && math.Abs(up) < 0.5
	saw := k.sawn(f, entry)
	w.Depth, w.Run, w.Reach = saw.depth, saw.run, saw.depth+saw.sag
	if k.Choice.Tool.Cutter != nil && k.Choice.Tool.Size > 0 && w.Facing {
		w.Moves = saw.moves(k)
		w.Took = saw.took(f.Name())
	} else {
		w.Took = f.removal(k.Part.outward(), 0)
	}
	if saw.radius > 0 && saw.radius*2 < saw.depth {
		w.Wrong = "the saw is smaller across than the slit is deep"
	}
	if fs.Finished {
		fs.Twice = true
	}
	fs.Begun, fs.Finished, fs.Depth, fs.ByProcess, fs.By = true, true, f.Depth.Or(saw.depth), k.Choice.By, k.Spot
	w.Final = true
	k.took(w)
	k.splitFaces(f)
	k.slitBurrs(f, entry)
}

// splitEntry is the side that a saw enters to split the piece: of those that look level
// in this holding the one with the least metal behind it.
func (k *Cut) splitEntry(f *Form) Plane {
	best, depth := Plane{}, math.Inf(1)
	for _, face := range model.Faces {
		if face.Axis() == f.Across || math.Abs(k.Hold.Pose.Dir(Normal(face))[2]) > 0.5 {
			continue
		}
		if d := k.Part.Size[face.Axis()]; d < depth-model.Grain {
			best, depth = Plane{face, k.Part.FaceAt(face), face.String()}, d
		}
	}
	return best
}

// sawCut is the way of a disc in the part's frame.
type sawCut struct {
	radius, width float64
	across, along int // axes: square to the disc; along the slit
	entry         Plane
	outer         float64 // where the metal begins, outwards of the entry face
	lo, hi        float64 // metal along the slit
	depth         float64 // at the ends of the slit, from the entry face
	sag           float64 // how much deeper the arc is in its middle
	mid           float64 // middle plane of the slit
	travels       bool
	run           float64
}

func (k *Cut) sawn(f *Form, entry Plane) sawCut {
	s := sawCut{radius: k.Choice.Tool.Size / 2, across: f.Across, entry: entry}
	if k.Choice.Tool.Cutter == nil {
		s.radius = 0
	}
	s.width = f.Width
	if c := k.Choice.Tool.Cutter; c != nil && c.Width.Is() {
		s.width = c.Width.V
	}
	s.along = 3 - f.Across - entry.Face.Axis()
	lo, hi := k.Before.Bounds()
	s.lo, s.hi = max(lo[s.along], f.Lo[s.along]-k.Part.outward()), min(hi[s.along], f.Hi[s.along]+k.Part.outward())
	if !f.Open[model.FaceOn(s.along, -1)] {
		s.lo = f.Lo[s.along]
	}
	if !f.Open[model.FaceOn(s.along, 1)] {
		s.hi = f.Hi[s.along]
	}
	s.mid = (f.Lo[f.Across] + f.Hi[f.Across]) / 2
	s.outer = hi[entry.Face.Axis()]
	if entry.Face.Sign() < 0 {
		s.outer = lo[entry.Face.Axis()]
	}
	s.depth = f.Depth.V
	if f.Feature.Kind == "split" || f.Through {
		s.depth = k.Part.Size[entry.Face.Axis()] + k.Part.Build.Thumbs["flange_gap"].Or(0.5)
	}
	if st := k.Step.Step; st != nil && st.DownTo.Depth.Is() {
		s.depth = st.DownTo.Depth.V
	}
	s.travels = k.Step.Step != nil && k.Step.Step.Along.Is()
	half := (s.hi - s.lo) / 2
	s.run = s.depth
	if s.travels {
		s.run = s.hi - s.lo + 2*math.Sqrt(max(0, s.depth*(2*s.radius-s.depth)))
	} else if half < s.radius {
		s.sag = s.radius - math.Sqrt(s.radius*s.radius-half*half)
	}
	return s
}

// centre is the middle of the disc when its rim is at a depth below the entry face, at a
// place along the slit.
func (s sawCut) centre(depth, at float64) solid.Vec {
	var v solid.Vec
	v[s.across], v[s.along] = s.mid, at
	v[s.entry.Face.Axis()] = s.entry.At + s.entry.Face.Sign()*(s.radius-depth)
	return v
}

// ends are the first and last place of the disc's middle while it cuts.
func (s sawCut) ends() (from, to solid.Vec) {
	mid := (s.lo + s.hi) / 2
	if !s.travels {
		return s.centre(-beyond-math.Abs(s.outer-s.entry.At), mid), s.centre(s.depth+s.sag, mid)
	}
	run := math.Sqrt(max(0, s.depth*(2*s.radius-s.depth)))
	return s.centre(s.depth, s.lo-run-beyond), s.centre(s.depth, s.hi+run+beyond)
}

// moves are the ways of the disc's lower face in the machine's frame.
func (s sawCut) moves(k *Cut) []solid.Move {
	from, to := s.ends()
	a, b := k.Hold.Pose.Point(from), k.Hold.Pose.Point(to)
	a[2] -= s.width / 2
	b[2] -= s.width / 2
	return []solid.Move{{From: a, To: b}}
}

// took is the sweep of the disc: a disc at each end and the box between.
func (s sawCut) took(name string) []solid.Removal {
	from, to := s.ends()
	var half solid.Vec
	half[s.across] = s.width / 2
	disc := func(c solid.Vec) solid.Removal {
		return solid.Removal{Take: solid.Cylinder(c.Sub(half), c.Add(half), s.radius), By: name}
	}
	axis := s.entry.Face.Axis()
	side := s.along
	if s.travels {
		axis, side = s.along, s.entry.Face.Axis()
	}
	lo, hi := from, from
	lo[axis], hi[axis] = min(from[axis], to[axis]), max(from[axis], to[axis])
	lo[side], hi[side] = from[side]-s.radius, from[side]+s.radius
	lo[s.across], hi[s.across] = s.mid-s.width/2, s.mid+s.width/2
	return []solid.Removal{disc(to), disc(from), {Take: solid.Box(lo, hi), By: name}}
}
