package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// What goes round a line and is made otherwise than on a lathe. By hand the edges of turned work are
// broken and threads cut with a die. Under a mill a boss is left standing where a rotary table lying
// flat turns the piece past the side of the cutter, the boss's middle over the table's own: round its
// foot first, then in wider circles until nothing is left beside it.

// roundOtherwise makes such a feature; what cannot be made so is told of, and is played as if done, so
// that no more follows from it.
func (k *Cut) roundOtherwise(t Target) {
	f := t.Form
	fs := k.Part.change(k.After, f)
	if fs.Finished {
		fs.Twice = true
	}
	fs.Begun, fs.Finished, fs.ByProcess, fs.By = true, true, k.Choice.By, k.Spot
	w := Working{Target: t, Entry: f.Into, Facing: true, Final: true}
	by := k.byHand()
	switch kind := f.Feature.Kind; {
	case by && (kind == "chamfer" || kind == "radius"):
		w.Took = k.edgeByHand(f)
	case by && kind == "thread":
		k.threadByHand(f, fs)
	case by:
		k.Unplayed = t.Name() + " goes round the axis, and this holding does not turn"
		return
	case kind == "outside" && k.bossMilled(f, &w, fs):
	case k.sunkIn(f):
		k.sunk(f, &w)
	default:
		w.Facing = false
		w.Wrong = "it goes all the way round a line, and nothing here turns the piece: a lathe does"
		if kind == "outside" {
			w.Wrong = "it goes all the way round a line, and nothing here turns the piece: a lathe does, or a rotary table lying flat with its middle under that line"
		}
	}
	k.took(w)
}

// sunkIn says whether a tool that turns with the spindle of a mill makes a form by going in along its
// line: a centre drill its seat, a countersink the mouth of a bore, a tap or a taper reamer the bore.
func (k *Cut) sunkIn(f *Form) bool {
	by := k.Choice.By
	switch f.Feature.Kind {
	case "centre_hole":
		return by == "centring" || by == "spotting" || by == "drilling"
	case "chamfer":
		return f.Lathe.Inside && !f.Lathe.Hollow && by == "countersinking"
	case "thread":
		return f.Lathe.Inside && by == "tapping"
	case "taper":
		return f.Lathe.Inside && by == "reaming"
	}
	return false
}

// sunk sinks a tool into what lies round a line, from the end of that line that looks up.
func (k *Cut) sunk(f *Form, w *Working) {
	least, most := f.About.Ends()
	l := f.Lathe
	lo, hi := f.About.At, f.About.At
	lo[f.About.Along], hi[f.About.Along] = l.X0, l.X1
	top, down := hi, lo
	up := k.Hold.Pose.Dir(Normal(most))[2]
	w.Entry = Plane{most, l.X1, most.String()}
	if f.Feature.Kind == "centre_hole" && f.Into.Face == least || f.Feature.Kind != "centre_hole" && up < 0 {
		top, down, up = lo, hi, -up
		w.Entry = Plane{least, l.X0, least.String()}
	}
	shift := solid.Vec{}
	if f.Feature.Kind == "centre_hole" { // from the end of the metal as it is
		axis := f.About.Along
		shift[axis] = k.After.Faces[w.Entry.Face].At - top[axis]
		if k.Part.Round {
			shift[axis] = k.Before.Piece.Extent(axis, w.Entry.Face.Sign()) - top[axis]
		}
		k.After.Centred[endIndex(w.Entry.Face)] = true
	}
	w.Facing = up > 0.5
	w.Depth = l.X1 - l.X0
	if f.Feature.Kind != "thread" {
		w.Took = []solid.Removal{{Take: solid.Cone(lo.Add(shift), hi.Add(shift), l.R0, l.R1), By: f.Name()}}
	}
	above := top.Add(Normal(w.Entry.Face).Times(k.Part.outward() + k.Part.Build.Thumbs["room"].Or(1)))
	w.Moves = []solid.Move{{From: k.Hold.Pose.Point(above), To: k.Hold.Pose.Point(down.Add(shift))}}
	w.Run = w.Depth
}

// byLathe is a form as a lathe would make it, in the frame of its own line, and the way back.
func (k *Cut) byLathe(f *Form) (Turn, Turning, solid.Pose) {
	pose := f.About.Pose()
	l := f.Lathe
	t := Turn{Part: k.Part, Before: &State{Piece: k.Before.Piece.Placed(pose)}}
	return t, Turning{Target: Target{Form: f}, X0: l.X0, X1: l.X1, R0: l.R0, R1: l.R1, Inside: l.Inside}, pose.Inverse()
}

// byHand says whether a hand does it, under the spindle or at the bench.
func (k *Cut) byHand() bool { return k.Choice.ByHand || k.Step.Work.Kind != "setup" }

// edgeByHand is what breaking an edge of turned work takes; nothing of a hollow corner.
func (k *Cut) edgeByHand(f *Form) []solid.Removal {
	if f.Lathe.Hollow {
		return nil
	}
	t, w, back := k.byLathe(f)
	var out []solid.Removal
	for _, r := range t.roundTook(&w) {
		out = append(out, turnedBack(r, back))
	}
	if l := f.Lathe; k.Part.Own(f.About) && !l.Inside {
		k.After.Profile = k.After.Profile.turned(l.X0, l.X1, l.R0, l.R1, Zone{By: k.Spot})
	} else if k.Part.Own(f.About) {
		k.After.Profile = k.After.Profile.bored(l.X0, l.X1, l.R0, l.R1)
	}
	return out
}

// threadByHand marks an outside as threaded.
func (k *Cut) threadByHand(f *Form, fs *FeatureState) {
	fs.Threaded, fs.Diameter = true, f.Diameter.Or(0)
	if l := f.Lathe; k.Part.Own(f.About) && !l.Inside {
		k.After.Profile = k.After.Profile.marked(l.X0, l.X1, func(z *Zone) { z.Spoilt, z.By = "threaded", k.Spot })
	}
}

// bossMilled mills round a boss by turning the table under it; false where the holding does not.
func (k *Cut) bossMilled(f *Form, w *Working, fs *FeatureState) bool {
	d := k.Hold.Choice.Divided
	if k.Part.Round || d == nil || !d.Upright {
		return false
	}
	w.Facing = k.Hold.Pose.Dir(Normal(f.Into.Face))[2] > 0.5
	if off := k.besideTable(f.About); off > model.Grain {
		w.Facing = false
		w.Wrong = besideWords(off, d)
		return true
	}
	r := f.Lathe.R0
	switch st := k.Step.Step; {
	case st == nil:
	case st.To.Is() && st.To.V.From.IsNone():
		r = st.To.V.Size.Nominal / 2
	default:
		r += st.Leaves.V / 2
	}
	along, sign := f.Into.Face.Axis(), f.Into.Face.Sign()
	foot, top := f.Lathe.X0, f.Into.At
	if sign < 0 {
		foot = f.Lathe.X1
	}
	lo, hi := f.About.At, f.About.At
	open := top + sign*k.Part.outward()
	lo[along], hi[along] = math.Min(foot, open), math.Max(foot, open)
	far := k.farthest(f.About)
	w.Took = []solid.Removal{{Take: solid.Cylinder(lo, hi, far+k.Part.outward()), Less: []solid.Shape{solid.Cylinder(lo, hi, r)}, By: f.Name()}}
	w.Depth, w.Deep = math.Abs(top-foot), math.Abs(top-foot)
	if c := k.Stack.Diameter.Or(0) / 2; c > 0 && w.Facing {
		var circles []float64
		for at := r + c; ; at += 1.5 * c { // passes overlap by a quarter of the cutter
			circles = append(circles, at)
			if at+c > far || len(circles) > 200 {
				break
			}
		}
		w.Moves, w.Run = k.roundMoves(f, w.Depth, circles)
	}
	fs.Diameter, fs.Finished = 2*r, near(r, f.Lathe.R0)
	w.Final = fs.Finished
	return true
}

// farthest is how far the metal reaches from a line.
func (k *Cut) farthest(a Axis) float64 {
	lo, hi := k.Before.Bounds()
	sum := 0.0
	for i := range 3 {
		if i != a.Along {
			d := math.Max(hi[i]-a.At[i], a.At[i]-lo[i])
			sum += d * d
		}
	}
	return math.Sqrt(sum)
}
