package eval

import (
	"math"
	"strconv"
	"strings"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// TurnChoice is every decision about one operation on a lathe.
type TurnChoice struct {
	By        string // "turning", "facing", "boring", "grooving", "parting", "drilling", "threading", …
	Tool      Pick
	Mounts    []Mount       // in the tailstock, from its quill outwards
	Post      *model.Holder // tool post; nil for what sits in the tailstock or in the hand
	Speed     float64       // rev/min; 0: not chosen, for want of facts
	Reverse   bool
	Turned    bool    // the tool upside down in its post
	Slide     float64 // top slide, degrees from the axis; 0: along it
	Withdrawn bool    // the support stands back for this cut
	ByHand    bool    // turned by hand: die, tap, file
	NoTool    string
	Index     []string // how the spindle is turned on, in words
}

// Words spells the choice out, for keys.
func (c *TurnChoice) Words() string {
	var b strings.Builder
	put := func(s string) { b.WriteString(s); b.WriteByte('|') }
	put(c.By)
	put(c.Tool.Path())
	put(c.Tool.Lead.Word)
	for _, m := range c.Mounts {
		put(m.Path())
	}
	put(itemOf(c.Post).Path())
	put(model.Figure(c.Speed))
	put(model.Figure(c.Slide))
	for _, f := range []bool{c.Reverse, c.Turned, c.Withdrawn, c.ByHand} {
		if f {
			put("y")
		} else {
			put("n")
		}
	}
	put(c.NoTool)
	for _, s := range c.Index {
		put(s)
	}
	return b.String()
}

// Turn is the moment of one operation on a lathe.
type Turn struct {
	Spot   finding.Spot
	Step   *Step
	Hold   *Chucking
	Part   *Part
	Choice TurnChoice
	Before *State // in the frame of the line that it turns about
	Own    *State // Before, in the part's own frame
	After  *State
	Left   *State // After, in the part's own frame: what the next step begins from
	Works  []Turning
	Key    Key
	// Unplayed says in a sentence why this operation is not made on paper; "" if it is.
	Unplayed string
	asCut    *Cut // as AsCut gave it
}

// Turning is the making of one target on a lathe. Places X are the part's, places U the
// lathe's (0 at the jaw face, growing to the tailstock).
type Turning struct {
	Target Target
	X0, X1 float64 // the stretch that is worked
	U0, U1 float64 // the same from the jaw face: the nearer end, the farther end
	R0, R1 float64 // radius left at X0 and X1; of a bore its own
	Inside bool
	Had    float64 // largest radius there before; of a bore the smallest
	Off    float64 // most metal taken, on the radius
	Thin   float64 // smallest outside radius from the jaws to the farther end, before the cut
	Width  float64 // of a parting or grooving tool
	Depth  float64 // of a hole on the axis: full diameter, from the finished face
	Point  float64 // length of the tip below it
	Final  bool    // brings the target to its finished size
	Done   bool    // it was finished before
	Wrong  string  // why the target cannot be made so; "" if it can
}

// Turn carries out one operation on a lathe as the choice says.
func (pl *Player) Turn(h *Chucking, before *State, st *Step, c TurnChoice) *Turn {
	key := before.Key.With(h.Key[0], h.Key[1], itemDigest(st.Step.Item), digest("turn", c.Words(), st.Spot.Step))
	if k, ok := pl.turns[key]; ok {
		return k
	}
	pl.Moments++
	k := &Turn{Spot: st.Spot, Step: st, Hold: h, Part: h.Part, Choice: c, Before: h.seen(before), Own: before, Key: key}
	k.play()
	k.Left = k.left(before)
	pl.turns[key] = k
	return k
}

func (k *Turn) play() {
	k.After = k.Before.next(k.Spot, k.Key)
	k.Unplayed = k.Hold.Unplayed
	for _, t := range k.Step.Makes {
		k.work(t)
	}
}

func (k *Turn) work(t Target) {
	w := Turning{Target: t}
	f := t.Form
	switch {
	case f == nil && t.Face != model.NoFace && t.Face.Axis() == k.Hold.About.Along:
		k.end(&w)
	case f != nil && f.several():
		w.Wrong = "it lies round " + strconv.Itoa(len(f.Mouths)) + " lines, and a piece turns about one in a holding: write one " + f.Feature.Kind +
			" for each place with a set-up for each, or bore them with a boring head on a mill"
	case t.Outside && !k.Part.Own(k.Hold.About), f != nil && f.Lathe != nil && !f.About.Same(k.Hold.About):
		w.Wrong = k.otherLine(t)
	case t.Outside:
		k.ownOutside(&w)
	case f == nil:
		w.Wrong = "the " + t.Face.String() + " face is not one that a lathe makes on this part"
	case f.Wrong != "" || len(f.Lacks) > 0:
		return
	case f.Scale != nil && f.Scale.Ruled != nil:
		w.Wrong = "a straight scale lies on a flat face, and its lines are ruled by the slides of a mill or by hand"
	case f.Scale != nil:
		k.lined(&w)
	case f.KeyBore != nil && f.About.Same(k.Hold.About):
		k.planed(&w)
	case f.Tooth != nil && k.Part.Own(k.Hold.About):
		k.planedTeeth(&w)
	case f.EndRing != nil:
		k.endGroove(&w)
	case f.Lathe == nil && len(f.Mouths) > 0 && k.onAxis(f):
		k.axisHole(&w)
	case f.Lathe == nil:
		w.Wrong = "it does not lie round the axis that turns"
	case f.Feature.Kind == "thread", f.Feature.Kind == "knurl", f.Feature.Kind == "worm":
		k.onIt(&w)
	case f.Feature.Kind == "centre_hole":
		k.centre(&w)
	default:
		k.round(&w)
	}
	k.Works = append(k.Works, w)
}

// onAxis says whether a hole lies on the axis that turns.
func (k *Turn) onAxis(f *Form) bool {
	a := k.Hold.About
	return len(f.Mouths) == 1 && f.Into.Face.Axis() == a.Along && a.Same(AxisAt(a.Along, f.Mouths[0]))
}

// reach settles where the stretch lies along the lathe, and what stood there.
func (k *Turn) reach(w *Turning) {
	a, b := k.Hold.At(w.X0), k.Hold.At(w.X1)
	w.U0, w.U1 = math.Min(a, b), math.Max(a, b)
	there := k.Before.Profile.Between(w.X0, w.X1)
	if w.Inside {
		w.Had = math.Inf(1)
		for _, z := range there {
			w.Had = math.Min(w.Had, math.Min(z.In0, z.In1))
		}
		if len(there) == 0 {
			w.Had = 0
		}
	} else {
		w.Had = there.Most()
	}
	from := k.Hold.Within(k.Before.Profile, 0, w.U1)
	w.Thin = from.Least()
	if w.Thin == 0 {
		w.Thin = there.Least()
	}
}

// leaves is the metal that the step leaves, on diameter for rounds, mm.
func (k *Turn) leaves() float64 {
	if st := k.Step.Step; st != nil {
		return st.Leaves.V
	}
	return 0
}

// radius is what the step brings a round to: `to`, or the finished radius with what it leaves.
func (k *Turn) radius(finished float64, inside bool) float64 {
	st := k.Step.Step
	switch {
	case st != nil && st.To.Is() && st.To.V.From.IsNone():
		return st.To.V.Size.Nominal / 2
	case inside:
		return finished - k.leaves()/2
	}
	return finished + k.leaves()/2
}

// end faces or parts one end of the piece.
func (k *Turn) end(w *Turning) {
	f := w.Target.Face
	x := k.endPlace(f)
	lo, hi, ok := k.Before.Profile.Ends()
	if !ok {
		return
	}
	w.Width = 0
	if k.Choice.By == "parting" {
		k.part(w, f, x)
		return
	}
	if f.Sign() > 0 {
		w.X0, w.X1 = x, math.Max(x, hi)
	} else {
		w.X0, w.X1 = math.Min(x, lo), x
	}
	k.reach(w)
	w.Off = w.X1 - w.X0
	if held := k.heldEnd(); f == held {
		w.Wrong = "the " + f.String() + " end is the one that is held"
		return
	}
	w.Final = near(x, k.Part.FaceAt(f))
	k.After.Profile = k.Before.Profile.faced(x, f.Sign())
	k.takeBeyond(x, f.Sign())
	k.faceDone(f, x)
	k.seatGone(f, x)
}

// seatGone notes that no seat for a centre is left in an end that was faced to x.
func (k *Turn) seatGone(f model.Face, x float64) {
	if !k.After.Centred[endIndex(f)] {
		return
	}
	spans := k.After.Piece.Ray(solid.Vec{x + f.Sign(), 0, 0}, solid.Vec{-f.Sign(), 0, 0})
	if len(spans) > 0 && spans[0].A <= 1+model.Grain {
		k.After.Centred[endIndex(f)] = false
	}
}

// heldEnd is the end that sits in the jaws; between centres neither does.
func (k *Turn) heldEnd() model.Face {
	if k.Hold.Choice.Centres {
		return model.NoFace
	}
	return k.Hold.Choice.End
}

// endPlace is where the step brings an end to: its finished place, with the metal it leaves.
func (k *Turn) endPlace(f model.Face) float64 {
	x := k.Part.FaceAt(f) + f.Sign()*k.leaves()
	st := k.Step.Step
	if st == nil || !st.To.Is() {
		return x
	}
	to := st.To.V
	if to.From.IsNone() { // to the opposite face as it then is
		lo, hi, _ := k.Before.Profile.Ends()
		if f.Sign() > 0 {
			return lo + to.Size.Nominal
		}
		return hi - to.Size.Nominal
	}
	if pl, ok := k.Part.PlaneOf(to.From); ok && pl.Face.Axis() == k.Hold.About.Along {
		return pl.At + f.Sign()*to.Size.Nominal
	}
	return x
}

// part frees the piece from what is held: the tool goes in beyond the finished face.
func (k *Turn) part(w *Turning, f model.Face, x float64) {
	w.Width = toolWidth(k.Choice.Tool)
	w.X0, w.X1 = x, x+f.Sign()*w.Width
	if w.X1 < w.X0 {
		w.X0, w.X1 = w.X1, w.X0
	}
	k.reach(w)
	w.Off = w.Had
	w.Final = near(x, k.Part.FaceAt(f))
	if f != k.heldEnd() {
		w.Wrong = "the piece would be parted off at its free end: the " + f.String() + " face is not on the side that is held"
		return
	}
	k.After.Profile = k.Before.Profile.faced(x, f.Sign())
	k.takeBeyond(x, f.Sign())
	k.faceDone(f, x)
	k.After.Parted = true
}

// faceDone notes a face that was made.
func (k *Turn) faceDone(f model.Face, x float64) {
	fs := &k.After.Faces[f]
	fs.At, fs.Skin, fs.Done, fs.By = x, "", near(x, k.Part.FaceAt(f)), k.Spot
	fs.Times++
}

// takeBeyond takes everything beyond a place along the axis from the solid.
func (k *Turn) takeBeyond(x, sign float64) {
	r := k.clear()
	lo, hi, _ := k.Before.Profile.Ends()
	far := lo - 1
	if sign > 0 {
		far = hi + 1
	}
	from, to := solid.Vec{math.Min(x, far), 0, 0}, solid.Vec{math.Max(x, far), 0, 0}
	k.After.Piece = k.After.Piece.Cut(solid.Removal{Take: solid.Cylinder(from, to, r), By: "face"})
}

// clear is a radius beyond all the metal.
func (k *Turn) clear() float64 {
	if k.Part.Own(k.Hold.About) {
		return k.Part.Blank.Hi[1] + k.Part.outward()
	}
	return k.Before.Profile.Most() + k.Part.outward()
}

// ring takes what lies outside a straight line in half section from the solid.
func (k *Turn) ring(x0, x1, r0, r1 float64, name string) {
	r := k.clear()
	a, b := solid.Vec{x0, 0, 0}, solid.Vec{x1, 0, 0}
	k.After.Piece = k.After.Piece.Cut(solid.Removal{Take: solid.Cylinder(a, b, r), Less: []solid.Shape{solid.Cone(a, b, r0, r1)}, By: name})
}

// ownOutside turns the part's own outside, as far as the jaws allow.
func (k *Turn) ownOutside(w *Turning) {
	lo, hi, ok := k.Before.Profile.Ends()
	if !ok {
		return
	}
	r := k.radius(k.Part.Radius(), false)
	w.X0, w.X1 = k.Part.Low[0], k.Part.High()[0]
	if !k.Hold.Choice.Centres && !k.Hold.Inside {
		if k.Hold.Sign > 0 {
			w.X0, w.X1 = math.Max(w.X0, k.Hold.Jaw), math.Max(w.X1, hi)
		} else {
			w.X0, w.X1 = math.Min(w.X0, lo), math.Min(w.X1, k.Hold.Jaw)
		}
	}
	if w.X1 <= w.X0 {
		w.Wrong = "all of it lies in the jaws"
		return
	}
	w.X0, w.X1 = larger(k.Before.Profile.Between(w.X0, w.X1), r, w.X0, w.X1)
	w.R0, w.R1 = r, r
	k.reach(w)
	w.Off = math.Max(0, w.Had-r)
	w.Final = near(r, k.Part.Radius())
	k.After.Profile = k.Before.Profile.turned(w.X0, w.X1, r, r, Zone{By: k.Spot})
	k.ring(w.X0, w.X1, r, r, "outside")
}

// round turns or bores a feature: outside, bore, groove, taper, chamfer.
func (k *Turn) round(w *Turning) {
	f := w.Target.Form
	l := *f.Lathe
	w.X0, w.X1, w.Inside = l.X0, l.X1, l.Inside
	w.R0, w.R1 = k.radius(l.R0, l.Inside), k.radius(l.R1, l.Inside)
	finished := near(w.R0, l.R0) && near(w.R1, l.R1)
	k.overrun(w)
	k.reach(w)
	if f.Feature.Kind == "groove" {
		w.Width = toolWidth(k.Choice.Tool)
	}
	fs := k.Part.change(k.After, f)
	w.Final, w.Done = finished, fs.Finished
	if l.Hollow { // left standing when the surface beside it was turned
		k.done(fs, 2*w.R0, finished)
		return
	}
	mark := Zone{By: k.Spot}
	switch {
	case f.Feature.Kind == "groove":
		mark.Spoilt = "grooved"
		k.After.Profile = f.grooved(k.Before.Profile, w.X0, w.X1, w.R0, k.Part.reach(l.On).R0, mark)
	case l.Inside:
		k.After.Profile = k.Before.Profile.bored(w.X0, w.X1, w.R0, w.R1)
	default:
		if finished && f.Feature.Kind == "outside" {
			mark.Form = f
		}
		k.After.Profile = k.Before.Profile.turned(w.X0, w.X1, w.R0, w.R1, mark)
	}
	if w.Off = math.Max(0, w.Had-math.Min(w.R0, w.R1)); l.Inside {
		w.Off = math.Max(0, math.Max(w.R0, w.R1)-w.Had)
	}
	k.After.Piece = k.After.Piece.Cut(k.roundTook(w)...)
	k.done(fs, 2*w.R0, finished)
}

// roundTook is what turning or boring a feature takes from the solid.
func (k *Turn) roundTook(w *Turning) []solid.Removal {
	f, raw := w.Target.Form, k.Before.Piece.Blank()
	if f.Flank > 0 {
		if took, ok := k.grooveTook(w); ok {
			return took
		}
	}
	l := Lathe{X0: w.X0, X1: w.X1, R0: w.R0, R1: w.R1, Inside: w.Inside}
	if f.Feature.Kind == "radius" {
		return cornerTook(&l, f.Size, raw, f.Name())
	}
	if left, right := k.Part.fillets(f); left+right > 0 && near(w.R0, w.R1) {
		if took, ok := filletedTook(l, left, right, raw, f.Name()); ok {
			return took
		}
	}
	a, b := solid.Vec{w.X0, 0, 0}, solid.Vec{w.X1, 0, 0}
	if w.Inside {
		return []solid.Removal{{Take: solid.Cone(a, b, w.R0, w.R1), By: f.Name()}}
	}
	return []solid.Removal{solid.Axle{}.Taper(raw, w.X0, w.X1, w.R0, w.R1, f.Name())}
}

// overrun lets a cut that ends at an end of the part go on through the metal over that end.
func (k *Turn) overrun(w *Turning) {
	lo, hi, ok := k.Before.Profile.Ends()
	f := w.Target.Form
	along := k.Hold.About.Along
	least, most := k.Hold.About.Ends()
	if !ok || f.Feature.Kind == "groove" || f.Feature.Kind == "chamfer" || f.Feature.Kind == "radius" || !near(w.R0, w.R1) {
		return
	}
	if near(w.X1, k.Part.High()[along]) && hi > w.X1 && k.heldEnd() != most {
		w.X1 = hi
	}
	if near(w.X0, k.Part.Low[along]) && lo < w.X0 && k.heldEnd() != least {
		w.X0 = lo
	}
}

// done notes how far a feature has come.
func (k *Turn) done(fs *FeatureState, diameter float64, finished bool) {
	if fs.Finished {
		fs.Twice = true
	}
	fs.Begun, fs.Finished, fs.Diameter = true, finished, diameter
	fs.ByProcess, fs.By = k.Choice.By, k.Spot
}

// onIt makes what changes a surface and not its size: a thread, a knurl.
func (k *Turn) onIt(w *Turning) {
	f := w.Target.Form
	l := *f.Lathe
	w.X0, w.X1, w.R0, w.R1, w.Inside = l.X0, l.X1, l.R0, l.R1, l.Inside
	k.reach(w)
	word := "threaded"
	if f.Feature.Kind == "knurl" {
		word = "knurled"
	}
	w.Final = true
	fs := k.Part.change(k.After, f)
	w.Done = fs.Finished
	if !l.Inside {
		k.After.Profile = k.Before.Profile.marked(l.X0, l.X1, func(z *Zone) { z.Spoilt, z.By = word, k.Spot })
	}
	k.done(fs, f.Diameter.Or(2*l.R0), true)
	fs.Threaded = word == "threaded"
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

// axisHole drills, reams, taps or bores a hole on the axis.
func (k *Turn) axisHole(w *Turning) {
	f := w.Target.Form
	w.Inside = true
	fs := k.Part.change(k.After, f)
	w.Depth, w.Point = f.Depth.V, k.tip()
	if st := k.Step.Step; st.DownTo.Depth.Is() {
		w.Depth = st.DownTo.Depth.V
	}
	begins, through := k.Part.BeginsAt(f, w.Target.Sub), f.Through
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
	fs.Depth, fs.Point, fs.Through = w.Depth, w.Point, f.Through
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

// toolWidth is the width of a parting or grooving tool; 0 where there is none, or it is not
// known.
func toolWidth(t Pick) float64 {
	if t.Cutter == nil {
		return 0
	}
	return t.Cutter.Width.V
}

// Largest is the largest diameter at which the edge cuts, mm: of a tool in the tailstock its
// own, of metal the largest that it meets.
func (k *Turn) Largest() float64 {
	d := 0.0
	for _, w := range k.Works {
		switch {
		case w.Inside && k.Choice.Post == nil && k.Choice.Tool.Size > 0:
			d = math.Max(d, k.Choice.Tool.Size)
		case w.Inside:
			d = math.Max(d, 2*math.Max(w.R0, w.R1))
		default:
			d = math.Max(d, 2*w.Had)
		}
	}
	return d
}

// TurnedAs names a process on the lathe as the tables of cutting speeds do.
func TurnedAs(by string) string {
	switch by {
	case "parting", "grooving":
		return "parting"
	case "drilling", "spotting", "centring", "counterboring", "countersinking":
		return "drilling"
	case "reaming":
		return "reaming"
	case "tapping":
		return "tapping_machine"
	}
	return "turning"
}

// Axial is where a place lies along the axis of a turned part; false where it does not say.
func (p *Part) Axial(pos model.Position) (float64, bool) { return p.axial(pos) }

// Deepest is the place of a target that lies nearest the held end, in the part's frame; false
// where it has none that a lathe works.
func (p *Part) Deepest(t Target, held model.Face) (float64, bool) {
	lo, hi := 0.0, 0.0
	switch {
	case t.Form != nil && t.Form.Lathe != nil && t.Form.Lathe.Inside && (t.Form.Through || !p.Round):
		return 0, false // the tool works within the piece, wherever that is held
	case t.Form != nil && t.Form.Lathe != nil:
		lo, hi = t.Form.Lathe.X0, t.Form.Lathe.X1
	case t.Form == nil && t.Face != model.NoFace && t.Face.Axis() == held.Axis():
		lo = p.FaceAt(t.Face)
		hi = lo
	case p.Round && t.Form != nil && t.Form.Wrong == "" && len(t.Form.Lacks) == 0 && radial(t.Form.Into.Face):
		lo, hi = t.Form.Lo[0], t.Form.Hi[0]
		for i, m := range t.Form.Mouths {
			r := t.Form.Diameter.Or(0) / 2
			if i == 0 {
				lo, hi = m[0]-r, m[0]+r
			}
			lo, hi = math.Min(lo, m[0]-r), math.Max(hi, m[0]+r)
		}
	case !p.Round && t.Form != nil && t.Form.Wrong == "" && len(t.Form.Lacks) == 0 && t.Form.Into.Face != model.NoFace && t.Form.Into.Face.Axis() != held.Axis():
		a, b := t.Form.extent()
		if lo, hi = a[held.Axis()], b[held.Axis()]; math.IsInf(hi-lo, 0) {
			return 0, false
		}
	default:
		return 0, false
	}
	if held.Sign() > 0 {
		return hi, true
	}
	return lo, true
}

// WantedDiameter is what the step asks of a hole on the axis: `to`, or the finished size less
// what it leaves.
func (k *Turn) WantedDiameter(f *Form) float64 { return 2 * k.radius(f.Diameter.V/2, true) }

// larger narrows a stretch to where the metal is thicker than a radius; as it was where none is.
func larger(p Profile, r, x0, x1 float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, z := range p {
		if z.Most() > r+model.Grain {
			lo, hi = math.Min(lo, z.X0), math.Max(hi, z.X1)
		}
	}
	if lo > hi {
		return x0, x1
	}
	return lo, hi
}

// LikeBar is the diameter of plain bar that would give way as much as the work does where a
// force pushes it sideways at a place u in front of the jaws, the jaws holding it stiffly.
// The end of a stepped bar gives way by F/E times the integral of (u-x)^2/I(x), with
// I = pi (D^4 - d^4)/64 (beam theory); of plain bar that is F u^3/(3 E I).
func (k *Turn) LikeBar(u float64) float64 {
	sum := 0.0
	for _, z := range k.Hold.Within(k.Before.Profile, 0, u) {
		a, b := k.Hold.At(z.X0), k.Hold.At(z.X1)
		a, b = math.Min(a, b), math.Max(a, b)
		out, in := 2*z.Least(), z.In0+z.In1
		second := math.Pow(out, 4) - math.Pow(in, 4)
		if !(second > 0) {
			return 0
		}
		sum += (math.Pow(u-a, 3) - math.Pow(u-b, 3)) / 3 / second
	}
	if !(sum > 0) {
		return 0
	}
	return math.Pow(u*u*u/3/sum, 0.25)
}
