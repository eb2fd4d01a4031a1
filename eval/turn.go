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
	case f.Scale != nil && f.Scale.Ruled != nil && f.Scale.Ruled.Round != nil && k.Part.Own(k.Hold.About):
		k.linedAlong(&w)
	case f.Scale != nil && f.Scale.Ruled != nil:
		w.Wrong = "a straight scale lies on a flat face, and its lines are ruled by the slides of a mill or by hand"
	case f.Scale != nil:
		k.lined(&w)
	case f.KeyBore != nil && f.About.Same(k.Hold.About):
		k.planed(&w)
	case f.Tooth != nil && f.About.Same(k.Hold.About):
		k.planedTeeth(&w)
	case f.EndRing != nil:
		k.endGroove(&w)
	case f.Lathe == nil && len(f.Mouths) > 0 && k.onAxis(f), k.drilledOut(f):
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
	if !k.Hold.Choice.Centres && !k.Hold.OutsideFree() {
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
	if w.Inside && f.Feature.Kind == "bore" && k.boredOn(w, f) {
		return
	}
	if near(w.X1, k.Part.High()[along]) && hi > w.X1 && k.heldEnd() != most {
		w.X1 = hi
	}
	if near(w.X0, k.Part.Low[along]) && lo < w.X0 && k.heldEnd() != least {
		w.X0 = lo
	}
}

// boredOn lets a bore that goes through a piece still one with its bar go on into the bar, as deep as
// `down_to` says; false where it does not.
func (k *Turn) boredOn(w *Turning, f *Form) bool {
	d := k.Step.Step
	if d == nil || !d.DownTo.Depth.Is() || k.Part.Blank.Bar != k.heldEnd() || f.Into.Face != k.heldEnd().Opposite() {
		return false
	}
	along := k.Hold.About.Along
	end := f.Into.At - f.Into.Face.Sign()*d.DownTo.Depth.V
	switch {
	case f.Into.Face.Sign() > 0 && near(w.X0, k.Part.Low[along]) && end < w.X0:
		w.X0 = end
		_, hi, _ := k.Before.Profile.Ends()
		w.X1 = math.Max(w.X1, hi)
	case f.Into.Face.Sign() < 0 && near(w.X1, k.Part.High()[along]) && end > w.X1:
		w.X1 = end
		lo, _, _ := k.Before.Profile.Ends()
		w.X0 = math.Min(w.X0, lo)
	default:
		return false
	}
	return true
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
	w.Final = !(k.leaves() > 0 && f.Feature.Kind == "thread") // a split die opened, or passes left over
	fs := k.Part.change(k.After, f)
	w.Done = fs.Finished
	if !l.Inside {
		k.After.Profile = k.Before.Profile.marked(l.X0, l.X1, func(z *Zone) { z.Spoilt, z.By = word, k.Spot })
	}
	k.done(fs, f.Diameter.Or(2*l.R0), w.Final)
	fs.Threaded = word == "threaded"
}

// toolWidth is the width of a parting or grooving tool; 0 where there is none, or it is not
// known.
func toolWidth(t Pick) float64 {
	if t.Cutter == nil {
		return 0
	}
	return t.Cutter.Width.V
}
