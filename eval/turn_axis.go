package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// drilledOut says whether a bore on the axis is worked by a tool that goes in along it and has a size of its own, as a hole is.
func (k *Turn) drilledOut(f *Form) bool {
	switch k.Choice.By {
	case "drilling", "reaming", "spotting", "centring":
		return f.Feature.Kind == "bore" && f.Lathe != nil && k.onAxis(f)
	}
	return false
}

// axisDepth is how deep a hole on the axis goes from the face that it goes into, and whether it comes out at the part's other
// end. A drill that only makes room in a blind bore with a flat floor stops where its point comes to the floor.
func (k *Turn) axisDepth(f *Form) (deep float64, through bool) {
	if f.Lathe == nil {
		return f.Depth.V, f.Through
	}
	far, end := f.Lathe.X0, k.Part.Low[k.Hold.About.Along]
	if f.Into.Face.Sign() < 0 {
		far, end = f.Lathe.X1, k.Part.High()[k.Hold.About.Along]
	}
	deep, through = math.Abs(f.Into.At-far), near(far, end)
	if !through && f.Flat && k.Choice.By == "drilling" {
		deep = math.Max(0, deep-k.tip())
	}
	return deep, through
}

// axisHole drills, reams, taps or bores a hole on the axis.
func (k *Turn) axisHole(w *Turning) {
	f := w.Target.Form
	w.Inside = true
	fs := k.Part.change(k.After, f)
	w.Point = k.tip()
	deep, through := k.axisDepth(f)
	w.Depth = deep
	if st := k.Step.Step; st.DownTo.Depth.Is() {
		w.Depth = st.DownTo.Depth.V
	}
	begins := k.Part.BeginsAt(f, w.Target.Sub)
	switch w.Target.Sub {
	case "thread":
		whole := false
		w.Depth, whole = k.Part.tapped(f)
		through = through && whole
	case "counterbore":
		w.Depth, through = f.Feature.Counterbore.Depth.V.Nominal, false
	case "countersink":
		w.Depth, through = 0, false
	}
	spot := k.Choice.By == "spotting" || k.Choice.By == "centring"
	if spot {
		w.Depth = 0
	}
	at, in := begins.At, -begins.Face.Sign()
	end := at + in*w.Depth
	if through && !spot && begins.Face == f.Into.Face {
		end = at + in*k.axisThrough(f, fs)
		w.Depth = math.Abs(end - at)
	}
	mouth := k.metalEnd(begins.Face)
	w.X0, w.X1 = math.Min(mouth, end), math.Max(mouth, end)
	r := k.holeDiameter(w) / 2
	w.R0, w.R1 = r, r
	k.reach(w)
	w.Off = math.Max(0, r-w.Had)
	w.Done = fs.Finished && w.Target.Sub == ""
	if begins.Face == k.heldEnd() {
		w.Wrong = "it goes in from the " + begins.Face.String() + " end, which is the one that is held"
		return
	}
	k.axisTook(w, spot, end, in)
	k.axisState(w, fs, spot)
}

// axisThrough is how deep an operation goes for a hole that is through the finished part, from
// the face it goes into: as written; else to the end of the metal, or of the part where it is still
// one with its bar; and what only widens a hole goes no deeper than it was drilled.
func (k *Turn) axisThrough(f *Form, fs *FeatureState) float64 {
	if d := k.Step.Step.DownTo.Depth; d.Is() {
		return d.V
	}
	deep := k.Part.Size[k.Hold.About.Along]
	behind := f.Into.Face.Opposite()
	if k.heldEnd() != behind || k.Part.Blank.Bar == model.NoFace {
		deep = math.Abs(k.metalEnd(behind) - f.Into.At)
	}
	if fs.Begun && k.Choice.By != "drilling" && fs.Depth >= f.Depth.V-model.Grain {
		deep = min(deep, fs.Depth)
	}
	return deep
}

// axisTook takes a hole on the axis, its point too where it does not come out of the metal.
func (k *Turn) axisTook(w *Turning, spot bool, end, in float64) {
	name := w.Target.Form.Name()
	if spot || w.Target.Sub == "countersink" || w.Target.Sub == "thread" || !(w.R0 > 0) {
		return
	}
	a, b := solid.Vec{w.X0, 0, 0}, solid.Vec{w.X1, 0, 0}
	took := []solid.Removal{{Take: solid.Cylinder(a, b, w.R0), By: name}}
	behind := k.metalEnd(k.Part.BeginsAt(w.Target.Form, w.Target.Sub).Face.Opposite())
	out := near(end, behind) || in*end > in*behind
	if w.Point > 0 && !out && k.Choice.By == "drilling" {
		took = append(took, solid.Removal{Take: solid.Cone(solid.Vec{end, 0, 0}, solid.Vec{end + in*w.Point, 0, 0}, w.R0, 0), By: name})
	}
	k.After.Piece = k.After.Piece.Cut(took...)
	k.After.Profile = k.Before.Profile.bored(w.X0, w.X1, w.R0, w.R0)
}

func (k *Turn) axisState(w *Turning, fs *FeatureState, spot bool) {
	f := w.Target.Form
	switch {
	case spot:
		fs.Spotted = true
		return
	case w.Target.Sub == "thread":
		fs.Threaded = true
		return
	case w.Target.Sub == "counterbore":
		fs.Bored = true
		return
	case w.Target.Sub == "countersink":
		fs.Sunk = true
		return
	}
	d := 2 * w.R0
	k.done(fs, d, k.Part.roundHoleDone(f, k.WantedDiameter(f), d))
	fs.Depth, fs.Point = w.Depth, w.Point
	_, fs.Through = k.axisDepth(f)
	w.Final = fs.Finished
}

// holeDiameter is what the operation makes of a hole on the axis.
func (k *Turn) holeDiameter(w *Turning) float64 {
	f, c := w.Target.Form, &k.Choice
	switch w.Target.Sub {
	case "thread":
		return f.Feature.Thread.Size.V.Diameter
	case "counterbore":
		return f.Feature.Counterbore.Diameter.V.Nominal
	case "countersink":
		return f.Feature.Countersink.Diameter.V.Nominal
	}
	if c.Tool.Cutter != nil && c.By != "boring" && c.Tool.Size > 0 {
		return c.Tool.Size
	}
	return 2 * k.radius(f.Diameter.V/2, true)
}

// tip is the length of the tool's tip below its full diameter.
func (k *Turn) tip() float64 {
	like := Cut{Choice: CutChoice{Tool: k.Choice.Tool, By: k.Choice.By}}
	return like.tipLength().Or(0)
}

// centre drills a seat for a centre, from the metal's end as it then is.
func (k *Turn) centre(w *Turning) {
	f := w.Target.Form
	l := *f.Lathe
	end := k.metalEnd(f.Into.Face)
	shift := end - f.Into.At
	w.X0, w.X1, w.R0, w.R1, w.Inside = l.X0+shift, l.X1+shift, l.R0, l.R1, true
	k.reach(w)
	w.Off, w.Final = math.Max(l.R0, l.R1), true
	if f.Into.Face == k.heldEnd() {
		w.Wrong = "the " + f.Into.Face.String() + " end is the one that is held"
		return
	}
	a, b := solid.Vec{w.X0, 0, 0}, solid.Vec{w.X1, 0, 0}
	k.After.Piece = k.After.Piece.Cut(solid.Removal{Take: solid.Cone(a, b, w.R0, w.R1), By: f.Name()})
	k.done(k.Part.change(k.After, f), f.Size, true)
	k.After.Centred[endIndex(f.Into.Face)] = true
}

func endIndex(f model.Face) int {
	if f.Sign() > 0 {
		return 1
	}
	return 0
}

// metalEnd is where the metal ends now on one side.
func (k *Turn) metalEnd(f model.Face) float64 {
	lo, hi, _ := k.Before.Profile.Ends()
	if f.Sign() > 0 {
		return hi
	}
	return lo
}
