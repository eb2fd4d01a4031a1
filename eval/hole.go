package eval

import (
	"fettle/eval/solid"
	"fettle/schema/model"
)

// hole makes a hole, or its thread, counterbore or countersink, at every one of its places.
func (k *Cut) hole(t Target) {
	f := t.Form
	fs := k.Part.change(k.After, f)
	entry := k.Part.BeginsAt(f, t.Sub)
	if k.Choice.From != model.NoFace && k.Choice.From == f.Into.Face.Opposite() && f.Through {
		entry = Plane{k.Choice.From, k.Part.FaceAt(k.Choice.From), k.Choice.From.String()}
		if f.Owner != nil {
			entry = f.exit()
		}
	}
	if f.Owner != nil && k.Choice.From == model.NoFace && f.Through && k.Hold.Pose.Dir(Normal(f.Into.Face))[2] < -0.5 {
		entry = f.exit() // a hole through a part that now stands the other way up is made from its other end
	}
	had := *fs
	for i, mouth := range f.Mouths {
		w := k.holeAt(t, entry, mouth, &had)
		k.took(w)
		if i == len(f.Mouths)-1 {
			k.holeState(t, fs, &w)
		}
	}
	k.holeBurrs(t, entry)
}

// holeAt plays one hole: how wide and deep, the way of the tip, what is taken.
func (k *Cut) holeAt(t Target, entry Plane, mouth solid.Vec, had *FeatureState) Working {
	f, c := t.Form, &k.Choice
	w := Working{Target: t, Entry: entry, Had: had.Diameter, HadDepth: had.Depth}
	up := k.Hold.Pose.Dir(Normal(entry.Face))
	w.Facing = up[2] > 0.5 || f.tilted() && up[2] > 0
	w.Through = f.Through
	w.Depth = f.Depth.V
	w.Diameter = k.holeDiameter(t)
	if d := k.Step.Step; d != nil && d.DownTo.Depth.Is() {
		w.Depth, w.Through = d.DownTo.Depth.V, false
	}
	tip := k.tipLength()
	w.Point = tip.Or(0)
	switch t.Sub {
	case "thread":
		deep, whole := k.Part.tapped(f)
		w.Depth, w.Through = deep, w.Through && whole
	case "counterbore":
		w.Depth, w.Through = f.Feature.Counterbore.Depth.V.Nominal, false
	case "countersink":
		w.Depth, w.Through = 0, false
	}
	switch c.By {
	case "spotting", "centring":
		w.Through, w.Depth = false, 0
	}
	if !w.Through && (t.Sub == "thread" || c.By == "reaming") {
		// A blind hole stops the tip at its floor; what the lead leaves is for the rules.
		w.Point = min(w.Point, max(0, had.Depth-w.Depth))
	}
	in := f.Dir
	if entry.Face != f.Into.Face {
		in = in.Times(-1)
	}
	start := f.at(mouth, entry)
	if entry.Face != k.Part.BeginsAt(f, t.Sub).Face {
		w.Depth = k.Part.far(f.Into)
		if f.tilted() || f.Owner != nil {
			w.Depth = f.Depth.V
		}
	}
	k.bore(&w, start, in)
	return w
}

// holeDiameter is what the operation makes of the hole: the tool's size, else the size that
// is written, else the finished one.
func (k *Cut) holeDiameter(t Target) float64 {
	f, c := t.Form, &k.Choice
	switch t.Sub {
	case "thread":
		return f.Feature.Thread.Size.V.Diameter
	case "counterbore":
		return f.Feature.Counterbore.Diameter.V.Nominal
	case "countersink":
		return f.Feature.Countersink.Diameter.V.Nominal
	}
	if c.Tool.Cutter != nil && c.By != "boring" && c.By != "milling" && c.Tool.Size > 0 {
		return c.Tool.Size
	}
	return k.wantedDiameter(f)
}

// wantedDiameter is the size that the step asks for: `to`, or the finished size less
// `leaves`.
func (k *Cut) wantedDiameter(f *Form) float64 {
	d := f.Diameter.V
	if st := k.Step.Step; st != nil {
		if st.To.Is() {
			return st.To.V.Size.Nominal
		}
		if st.Leaves.Is() {
			return d - st.Leaves.V
		}
	}
	return d
}

// bore lays the way of the tip and what is taken, from the outside in.
func (k *Cut) bore(w *Working, start, in solid.Vec) {
	r := w.Diameter / 2
	out := k.Part.outward() + w.Target.Form.more(r)
	top := start.Sub(in.Times(out))
	floor := start.Add(in.Times(w.Depth))
	if w.Through {
		if w.Target.Form.Owner != nil {
			floor = start.Add(in.Times(k.behind(w.Target.Form, start, in)))
		} else {
			floor = start.Add(in.Times(k.throughTo(start, in)))
		}
		w.Below = w.Point
		if k.Choice.boresWithHead() {
			w.Below = beyond
		}
	}
	tip := floor.Add(in.Times(max(w.Point, w.Below)))
	name := w.Target.Form.Name()
	cut := k.Choice.By
	switch {
	case cut == "spotting" || cut == "centring":
		tip = start.Add(in.Times(w.Point))
		w.Took = []solid.Removal{{Take: solid.Cone(start, tip, r, 0), By: name}}
	case w.Target.Sub == "countersink":
		k.sink(w, start, in, name)
		tip = start.Add(in.Times(w.Deep))
	default:
		end := floor
		if w.Through && w.Target.Form.Owner == nil {
			end = floor.Add(in.Times(out))
		}
		w.Took = []solid.Removal{{Take: solid.Cylinder(top, end, r), By: name}}
		if (!w.Through || w.Target.Form.Owner != nil) && w.Point > 0 && cut == "drilling" {
			w.Took = append(w.Took, solid.Removal{Take: solid.Cone(floor, tip, r, 0), By: name})
		}
	}
	from := top.Sub(in.Times(k.Part.Build.Thumbs["room"].Or(1)))
	w.Moves = []solid.Move{{From: k.Hold.Pose.Point(from), To: k.Hold.Pose.Point(tip)}}
	w.Run = w.Depth
}

// throughTo is how far from the start the last metal on the axis lies.
func (k *Cut) throughTo(start, in solid.Vec) float64 {
	out := k.Part.outward()
	spans := k.Before.Piece.Ray(start.Sub(in.Times(out)), in)
	if len(spans) == 0 {
		return k.Part.far(Plane{Face: faceAlong(in.Times(-1)), At: start[faceAlong(in).Axis()]})
	}
	return spans[len(spans)-1].B - out
}

// faceAlong is the face that looks along an axis direction.
func faceAlong(d solid.Vec) model.Face {
	for i := range 3 {
		if d[i] > 0.5 {
			return model.FaceOn(i, 1)
		}
		if d[i] < -0.5 {
			return model.FaceOn(i, -1)
		}
	}
	return model.NoFace
}

// sink takes the cone of a countersink.
func (k *Cut) sink(w *Working, start, in solid.Vec, name string) {
	angle, ok := w.Target.Form.Feature.Countersink.Angle.Get()
	if !ok {
		angle = k.Choice.Tool.coneAngle()
	}
	depth := coneDepth(w.Diameter, w.Had, angle)
	w.Deep = depth
	end := start.Add(in.Times(depth))
	w.Took = []solid.Removal{{Take: solid.Cone(start, end, w.Diameter/2, w.Had/2), By: name}}
}

func (t Pick) coneAngle() float64 {
	if t.Cutter != nil {
		return t.Cutter.Angle.Or(90)
	}
	return 90
}

// holeState notes how far the hole has come.
func (k *Cut) holeState(t Target, fs *FeatureState, w *Working) {
	f := t.Form
	switch t.Sub {
	case "thread":
		fs.Twice = fs.Twice || fs.Threaded
		fs.Threaded = true
		return
	case "counterbore":
		fs.Bored = true
		return
	case "countersink":
		fs.Sunk = true
		return
	}
	if k.Choice.By == "spotting" || k.Choice.By == "centring" {
		fs.Spotted = true
		return
	}
	if fs.Finished {
		fs.Twice = true
	}
	fs.Begun = true
	fs.Diameter = max(fs.Diameter, w.Diameter)
	fs.Depth = max(fs.Depth, w.Depth)
	fs.Point = w.Point
	fs.Through = fs.Through || w.Through
	fs.ByProcess, fs.By = k.Choice.By, k.Spot
	deep := fs.Through || fs.Depth >= f.Depth.V-model.Grain
	fs.Finished = deep && k.Part.holeDone(f, k.wantedDiameter(f), fs.Diameter)
	w.Final = fs.Finished
	k.Works[len(k.Works)-1].Final = fs.Finished
}

// WantedDiameter is the size that the step asks for.
func (k *Cut) WantedDiameter(f *Form) float64 { return k.wantedDiameter(f) }
