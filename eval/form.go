package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Form is the shape of a feature in the part's frame, as finished.
type Form struct {
	Feature *model.Feature
	Into    Plane // the face that it is cut into
	// Round features: where each axis meets the face it goes into, and the inward direction.
	Mouths   []solid.Vec
	Dir      solid.Vec
	Diameter model.Known[float64] // finished diameter of the plain hole
	Depth    model.Known[float64] // full diameter, or floor, inwards from Into; Through: to the far face
	Through  bool
	Beyond   Beyond // of a written depth that is greater than the part is thick there
	Flat     bool   // flat-bottomed
	Cross    bool   // of a hole: in the round of a turned part, which may be a cone
	// Straight features: the room they take within the envelope.
	Lo, Hi   solid.Vec
	Open     [7]bool // by face: the feature runs out of the envelope there
	Width    float64
	Across   int             // axis square to the walls of a slot, slit or split
	Along    int             // axis that it runs along
	Side     model.Face      // step: the other open face
	Edge     [2]Plane        // chamfer, radius: the two faces that meet
	Rims     []Rim           // chamfer, radius on rims of holes
	Size     float64         // chamfer, radius
	Of       *Form           // of a feature at one of its places alone: the feature itself
	Lathe    *Lathe          // of features that a lathe makes; places along the line About
	EndRing  *EndGroove      // of a groove in an end
	About    Axis            // of features that a lathe makes: the line that they lie round
	Half     float64         // of a taper: half its included angle, radians
	Spins    []float64       // of features not square to one face: each time round, degrees from top towards back; the shape itself looks to the top
	Tooth    *Toothing       // of teeth
	Rack     *Rack           // of teeth on a flat face
	Scale    *Scale          // of graduations
	On       *Form           // of teeth and graduations: the turned surface that they lie on; nil the part's own outside
	Flank    float64         // of a vee groove: length of each flank along the line; of a round one the radius at its floor
	Way      *OutlineWay     // of an outline: its edge
	Trim     []solid.Removal // of an outline
	Stops    bool            // of a thread: it ends before a shoulder where that is left open
	Under    *Undercut       // of tee slots and dovetails
	Skew     *Skew           // of a slot that runs aslant
	Seat     *KeySeat        // of a keyway for a half-round key
	KeyBore  *KeyBore        // of a keyway in a bore
	Dirs     []solid.Vec     // of leaning holes round a circle: the direction of each; else nil
	Copies   []float64       // of a straight feature repeated round a circle: degrees from its first place
	Centre   solid.Vec       // the middle of that circle
	Owner    *Part           // in an assembly: the part that it is of
	Own      *Form           // in an assembly: the same in its own part
	Mirrored bool            // turned over, left to right, from how its block says it
	Lacks    []model.Lack
	beside   []Breakout // worked out once; nil before
	// Wrong says in a sentence why there is no such shape; "" if there is. Later: only because
	// it is not made on paper yet.
	Wrong string
	Later bool
	Aside bool // in an assembly: it is made all the same, in the frame of its own part
}

// Beyond is a written depth, and how thick the part is there in the same direction, mm; none where it is no greater.
type Beyond struct{ Depth, Thick float64 }

// Rim is the edge of a hole at a face.
type Rim struct {
	Hole *Form
	Face Plane
}

// Name is what the feature is called in sentences: "hole.pillar".
// In an assembly, where two parts may have a hole.pillar each, with its part: "part.bush.hole.bore".
func (f *Form) Name() string {
	if f.Owner != nil {
		return f.Owner.Path() + "." + f.Feature.Kind + "." + f.Feature.Label
	}
	return f.Feature.Kind + "." + f.Feature.Label
}

func (f *Form) middle() solid.Vec {
	if len(f.Mouths) > 0 {
		return f.Mouths[0]
	}
	return f.Lo.Add(f.Hi).Times(0.5)
}

// face gives the flat faces of a feature: its floor, and its walls by the direction that
// they look in from the metal.
func (f *Form) face(sub string) (Plane, bool) {
	if f.Lathe != nil {
		return f.shoulder(sub)
	}
	if f.Feature.Kind == "split" {
		return f.jointFace(sub)
	}
	if f.Into.Face == model.NoFace {
		return Plane{}, false
	}
	axis, sign := f.Into.Face.Axis(), f.Into.Face.Sign()
	switch {
	case sub == "floor" && f.Depth.Is() && !f.Through:
		return Plane{f.Into.Face, f.Into.At - sign*f.Depth.V, f.Name() + ".floor"}, true
	case sub == "" || len(f.Mouths) > 0:
		return Plane{}, false
	}
	w, ok := model.ParseFace(sub)
	if !ok || w.Axis() == axis || f.Open[w] {
		return Plane{}, false
	}
	// The wall on the left side of a slot looks right, into the slot.
	at := f.Lo[w.Axis()]
	if w.Sign() > 0 {
		at = f.Hi[w.Axis()]
	}
	return Plane{w.Opposite(), at, f.Name() + "." + sub}, true
}

// forms resolves every feature of the part, those that others refer to first.
func (p *Part) forms() {
	for _, f := range p.Features {
		p.Forms = append(p.Forms, &Form{Feature: f})
	}
	done := map[*Form]int{} // 1 on the way, 2 done
	var resolve func(f *Form)
	resolve = func(f *Form) {
		if done[f] != 0 {
			return
		}
		done[f] = 1
		for _, r := range f.refers() {
			if g := p.FormOf(r.Item); g != nil {
				resolve(g)
			}
		}
		p.shape(f)
		f.blameLacks()
		done[f] = 2
	}
	// What others lie on by default comes first.
	for _, first := range [2]bool{true, false} {
		for _, f := range p.Forms {
			if k := f.Feature.Kind; !first || k == "outside" || k == "bore" {
				resolve(f)
			}
		}
	}
}

// blameLacks says of the figures that stayed open for what the form lacks what would settle them.
func (f *Form) blameLacks() {
	for _, k := range [2]*model.Known[float64]{&f.Depth, &f.Diameter} {
		if k.From == model.Unknown && k.Of == nil && len(k.Lacks) == 0 && len(f.Lacks) > 0 {
			*k = model.Lacking[float64](f.Lacks)
		}
	}
}

// refers lists the references that the form's place hangs on.
func (f *Form) refers() []model.Ref {
	m := f.Feature
	out := []model.Ref{m.Into.V, m.Side.V, m.Depth.V.From, m.Concentric.To.V}
	out = append(out, m.On.V...)
	for _, ps := range append(append([]model.Position{}, m.At.V...), m.From.V, m.To.V) {
		for _, c := range ps.Coords {
			out = append(out, c.Datum)
		}
	}
	return out
}

func (p *Part) shape(f *Form) {
	p.byStandard(f)
	m := f.Feature
	if p.Round && (p.turnedShape(f) || p.radialShape(f)) || !p.Round && p.besideShape(f) {
		return
	}
	switch m.Kind {
	case "chamfer", "radius":
		p.edge(f)
		return
	case "split":
		p.split(f)
		return
	case "outline":
		p.outline(f)
		return
	case "bend":
		if f.later("it is judged as it is written; the sheet stays flat on paper"); !turnsSheet(m.Angle.Or(90)) {
			f.Wrong, f.Later = "sheet is bent by more than nought and no more than 180 degrees, a hem, and this is "+model.Figure(m.Angle.V)+" degrees", false
		}
		return
	}
	if !m.Into.Is() {
		f.lack(m.Into.Missing())
		return
	}
	pl, ok := p.PlaneOf(m.Into.V)
	if !ok {
		f.Wrong = "the face it goes into is not a flat face of this part"
		return
	}
	f.Into = pl
	f.Dir = Normal(pl.Face).Times(-1)
	p.depth(f)
	defer p.repeat(f)
	switch m.Kind {
	case "hole":
		p.hole(f)
	case "slot", "slit":
		p.channel(f)
	case "pocket":
		p.pocket(f)
	case "step":
		p.step(f)
	case "tee_slot":
		p.teeSlot(f)
	case "dovetail":
		p.dovetail(f)
	default:
		f.later("a " + m.Kind + " is not made on paper yet")
	}
}

// later says that the feature is not made on paper yet.
func (f *Form) later(says string) { f.Wrong, f.Later = says, true }

func (f *Form) lack(ls []model.Lack) { f.Lacks = append(f.Lacks, ls...) }

// far is the depth from the plane a feature goes into to the far side of the envelope.
func (p *Part) far(pl Plane) float64 {
	return math.Abs(pl.At - p.FaceAt(pl.Face.Opposite()))
}

func (p *Part) depth(f *Form) {
	d := f.Feature.Depth
	switch {
	case !d.Is() || d.V.Through:
		if f.Feature.Kind == "slit" || f.Feature.Kind == "step" {
			f.Depth = model.Lacking[float64](d.Missing())
			f.lack(d.Missing())
			return
		}
		f.Through = true
		f.Depth = model.Sure(p.far(f.Into))
	case !d.V.From.IsNone():
		pl, ok := p.PlaneOf(d.V.From)
		if !ok || pl.Face.Axis() != f.Into.Face.Axis() {
			f.Wrong = "its depth counts from a face that does not lie square to it"
			return
		}
		// From the far side what is left counts, from the near side the way in.
		floor := pl.At - pl.Face.Sign()*d.V.Size.Nominal
		f.Depth = model.Sure((f.Into.At - floor) * f.Into.Face.Sign())
	default:
		f.Depth = model.Sure(d.V.Size.Nominal)
	}
	far := p.far(f.Into)
	if d.V.From.IsNone() && !f.Through {
		far /= f.upright() // a leaning hole goes in less than it is long
	}
	if f.Depth.V >= far-model.Grain {
		f.deeperThan(far)
		f.Through, f.Depth.V = true, max(f.Depth.V, far)
	}
}

// deeperThan notes a written depth, mm, that goes beyond the far side.
func (f *Form) deeperThan(thick float64) {
	if d := f.Feature.Depth; d.Is() && !d.V.Through && f.Depth.V > thick+model.Grain {
		f.Beyond = Beyond{Depth: f.Depth.V, Thick: thick}
	}
}

// upright is how far a feature goes in square to its face for each mm of its own depth.
func (f *Form) upright() float64 {
	if t := f.Feature.Tilted; f.Feature.Kind == "hole" && t.Said && t.By.V > 0 && t.By.V <= 80 {
		return math.Cos(t.By.V * math.Pi / 180)
	}
	return 1
}

func (p *Part) hole(f *Form) {
	f.Flat = f.Feature.Bottom.V == "flat"
	p.holeDiameter(f)
	p.holePlaces(f)
}

// holeDiameter settles the finished diameter of a hole: with a thread its tapping size.
func (p *Part) holeDiameter(f *Form) {
	m := f.Feature
	switch {
	case m.Diameter.Is():
		f.Diameter = model.Map(m.Diameter, nominal)
	case m.Thread.Size.Is():
		if d, ok := tapHole(&m.Thread); ok {
			f.Diameter = model.Known[float64]{V: d, From: model.Handbook}
		} else {
			f.Diameter = model.Lacking[float64](m.Diameter.Missing())
		}
	default:
		f.Diameter = model.Lacking[float64](m.Diameter.Missing())
		f.lack(m.Diameter.Missing())
	}
}

// holePlaces settles where the axes of a hole meet the face it goes into.
func (p *Part) holePlaces(f *Form) {
	m := f.Feature
	a, b := across(f.Into.Face)
	if !m.At.Is() && p.Round && f.Into.Face.Axis() == 0 {
		f.Mouths = []solid.Vec{{f.Into.At, 0, 0}} // an end of a turned part: on the axis
		if m.Around.Said {
			f.around(a, b)
		}
		return
	}
	if !m.At.Is() {
		f.lack(m.At.Missing())
		return
	}
	for _, pos := range m.At.V {
		v, known := p.locate(f.Into.Face, pos)
		if !known[a] || !known[b] {
			f.Wrong = "its place fixes only one of the two co-ordinates on that face"
			return
		}
		v[f.Into.Face.Axis()] = f.Into.At
		f.Mouths = append(f.Mouths, v)
	}
	p.lean(f)
	if m.Around.Said {
		f.around(a, b)
		p.leanRound(f)
		p.fan(f)
	}
}

// leanRound lets holes round the axis of a turned part that lean from square to its end lean alike: each
// is the first one turned on about the axis. Angles count from top towards back, which is from z to y.
func (p *Part) leanRound(f *Form) {
	if !p.Round || f.Into.Face.Axis() != 0 || !f.tilted() || len(f.Mouths) < 2 || math.Hypot(f.Mouths[0][1], f.Mouths[0][2]) < model.Grain {
		return
	}
	first := math.Atan2(f.Mouths[0][1], f.Mouths[0][2])
	for i, m := range f.Mouths {
		by := (math.Atan2(m[1], m[2]) - first) * 180 / math.Pi
		f.Spins = append(f.Spins, math.Mod(math.Round(by*1e9)/1e9+360, 360))
		f.Mouths[i] = f.Mouths[0]
	}
}

// around spreads the holes evenly round a circle: from the face's first axis towards its
// second, whichever side one looks from.
func (f *Form) around(a, b int) {
	n, ok := f.Feature.Around.Count.Get()
	pcd, ok2 := f.Feature.Around.Pcd.Get()
	if !ok || !ok2 || n < 1 || n > 10000 || len(f.Mouths) == 0 {
		f.lack(f.Feature.Around.Count.Missing())
		f.lack(f.Feature.Around.Pcd.Missing())
		return
	}
	centre := f.Mouths[0]
	over := f.Feature.Around.Over.Or(360)
	step := over / float64(n)
	if over < 360 && n > 1 {
		step = over / float64(n-1)
	}
	f.Mouths = nil
	for i := range n {
		t := (f.Feature.Around.Start.Or(0) + float64(i)*step) * math.Pi / 180
		v := centre
		v[a] += pcd.Nominal / 2 * math.Cos(t)
		v[b] += pcd.Nominal / 2 * math.Sin(t)
		f.Mouths = append(f.Mouths, v)
	}
}
