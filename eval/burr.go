package eval

import (
	"math"
	"slices"

	"fettle/eval/solid"
	"fettle/schema/finding"
	"fettle/schema/model"
)

// Burrs are kept where a cut surely leaves them: along the edges of a face that was
// milled, round the rims of a hole, and along the edges where a saw or mill came out. How
// high they stand no table says (every figure is common practice), so the height is the
// limit of judgement "burr".

func (k *Cut) burr(b Burr) {
	b.Height = k.Part.Build.Thumbs["burr"].Or(0)
	b.By = k.Spot
	k.After.Burrs = append(k.After.Burrs, &b)
}

// dropBurrs takes away the burrs that stood where metal is gone now: a cut takes the burrs
// of the edges that it removes along with them.
func (k *Cut) dropBurrs(f model.Face) {
	var left []*Burr
	for _, b := range k.After.Burrs {
		if b.On == f {
			continue
		}
		left = append(left, b)
	}
	k.After.Burrs = left
}

// faceBurrs leaves burrs round a machined face: they stand out of its four neighbours.
func (k *Cut) faceBurrs(f model.Face, at float64) {
	k.dropBurrs(f)
	k.dropEdge(f)
	for _, side := range model.Faces {
		if side.Axis() == f.Axis() {
			continue
		}
		along := 3 - f.Axis() - side.Axis()
		var a, b solid.Vec
		a[f.Axis()], a[side.Axis()] = at, k.After.Faces[side].At
		b = a
		a[along], b[along] = k.After.Faces[model.FaceOn(along, -1)].At, k.After.Faces[model.FaceOn(along, 1)].At
		k.burr(Burr{On: side, A: a, B: b, Edge: edgeName(f, side),
			Names: []string{"face." + f.String(), "face." + side.String()}})
	}
}

func edgeName(a, b model.Face) string {
	if b < a {
		a, b = b, a
	}
	return "the edge of " + a.String() + " and " + b.String()
}

// dropEdge forgets straight burrs along the old edges of a face that has moved.
func (k *Cut) dropEdge(f model.Face) {
	var left []*Burr
	for _, b := range k.After.Burrs {
		if !b.Round && len(b.Names) == 2 && b.Names[0] == "face."+f.String() {
			continue
		}
		left = append(left, b)
	}
	k.After.Burrs = left
}

// holeBurrs leaves a lip where a drill, reamer or tap went in and a larger one where it
// came out.
func (k *Cut) holeBurrs(t Target, entry Plane) {
	if k.Choice.By == "spotting" || k.Choice.By == "centring" || t.Sub == "countersink" {
		if t.Sub == "countersink" {
			k.dropRim(t.Form, entry.Face)
		}
		return
	}
	f := t.Form
	var w *Working
	for i := range k.Works {
		if k.Works[i].Target.Form == f {
			w = &k.Works[i]
		}
	}
	if w == nil {
		return
	}
	k.dropRim(f, entry.Face)
	k.rimBurr(f, entry, w.Diameter/2)
	if w.Through {
		far := entry.Face.Opposite()
		k.dropRim(f, far)
		out := Plane{far, k.After.Faces[far].At, far.String()}
		switch {
		case f.Owner != nil && far == f.Into.Face:
			out = f.Into
		case f.Owner != nil:
			out = f.exit()
		}
		k.rimBurr(f, out, w.Diameter/2)
	}
}

func (k *Cut) rimBurr(f *Form, pl Plane, r float64) {
	for _, m := range f.Mouths {
		at := f.at(m, pl)
		k.burr(Burr{On: pl.Face, Round: true, A: at, B: at, R: r,
			Edge:  "the rim of " + f.Name() + " at " + pl.Name,
			Names: []string{f.Name(), pl.Name}})
	}
}

func (k *Cut) dropRim(f *Form, face model.Face) {
	name := f.Name()
	gone := func(b *Burr) bool { return b.Round && b.On == face && len(b.Names) > 0 && b.Names[0] == name }
	if !slices.ContainsFunc(k.After.Burrs, gone) {
		return
	}
	var left []*Burr
	for _, b := range k.After.Burrs {
		if !gone(b) {
			left = append(left, b)
		}
	}
	k.After.Burrs = left
}

// slitBurrs leaves burrs along both edges of a sawn slit on every face that it opens, but
// for the one the saw came in by, where the teeth push metal inwards.
func (k *Cut) slitBurrs(f *Form, entry Plane) {
	for _, face := range model.Faces {
		if !f.Open[face] || face == entry.Face || face.Axis() == f.Across {
			continue
		}
		k.channelBurr(f, f.Lo, f.Hi, face)
	}
}

// straightBurrs leaves burrs along the upper edges of a slot, pocket or step, and where it
// runs out.
func (k *Cut) straightBurrs(f *Form, shape *Form) {
	if f.Skew != nil {
		k.skewBurrs(f)
		return
	}
	for _, face := range model.Faces {
		if f.Open[face] {
			k.channelBurr(f, shape.Lo, shape.Hi, face)
		}
	}
}

// channelBurr is the burr round the mouth of a form on one face: its straight edges there.
func (k *Cut) channelBurr(f *Form, lo, hi solid.Vec, face model.Face) {
	a, b := across(face)
	at := k.After.Faces[face].At
	corner := func(x, y float64) solid.Vec {
		var v solid.Vec
		v[a], v[b], v[face.Axis()] = x, y, at
		return v
	}
	clip := func(i int, x float64) float64 {
		return math.Min(math.Max(x, k.After.Faces[model.FaceOn(i, -1)].At), k.After.Faces[model.FaceOn(i, 1)].At)
	}
	ps := [4]solid.Vec{corner(clip(a, lo[a]), clip(b, lo[b])), corner(clip(a, hi[a]), clip(b, lo[b])),
		corner(clip(a, hi[a]), clip(b, hi[b])), corner(clip(a, lo[a]), clip(b, hi[b]))}
	sides := [4]model.Face{model.FaceOn(b, -1), model.FaceOn(a, 1), model.FaceOn(b, 1), model.FaceOn(a, -1)}
	for i, side := range sides {
		if f.Open[side] || ps[i].Sub(ps[(i+1)%4]).Len() < model.Grain {
			continue
		}
		k.burr(Burr{On: face, A: ps[i], B: ps[(i+1)%4],
			Edge: "the edge of " + f.Name() + " at " + face.String(), Names: []string{f.Name(), "face." + face.String()}})
	}
}

// Deburr is the moment when burrs are taken off.
type Deburr struct {
	Spot   finding.Spot
	Step   *Step
	Hold   *Holding // nil at the bench
	Before *State
	After  *State
	Left   []Burr // those that a hand cannot reach in this holding
}

// deburr takes off the burrs that are named, or all that a hand can reach: in a vise those
// above the jaws, at the bench all.
func (pl *Player) deburr(p *Part, h *Holding, before *State, st *Step) *Deburr {
	key := before.Key.With(itemDigest(st.Step.Item), digest("deburr"))
	if h != nil {
		key = key.With(h.Key[0], h.Key[1])
	}
	d := &Deburr{Spot: st.Spot, Step: st, Hold: h, Before: before}
	d.After = before.next(st.Spot, key)
	d.After.Burrs = nil
	named := st.Step.Edges.V
	for _, b := range before.Burrs {
		switch {
		case len(named) > 0 && !b.named(named, p):
			d.After.Burrs = append(d.After.Burrs, b)
		case h != nil && !h.handReaches(*b):
			d.After.Burrs = append(d.After.Burrs, b)
			d.Left = append(d.Left, *b)
		}
	}
	return d
}

func (b *Burr) named(refs []model.Ref, p *Part) bool {
	for _, r := range refs {
		want := r.Path()
		if f := p.FormOf(r.Item); f != nil {
			want = f.Name()
		} else if r.Face != model.NoFace {
			want = "face." + r.Face.String()
		}
		for _, n := range b.Names {
			if n == want || "face."+n == want {
				return true
			}
		}
	}
	return false
}

// handReaches says whether a burr lies where a hand with a file gets at it: not on the
// underside, and above the jaws.
func (h *Holding) handReaches(b Burr) bool {
	if h.Unplayed != "" {
		return true
	}
	n := h.Pose.Dir(Normal(b.On))
	if n[2] < -0.5 {
		return false
	}
	top, ok := h.JawTop.Get()
	if !ok || h.Choice.Vise == nil {
		return true
	}
	low := math.Min(h.Pose.Point(b.A)[2], h.Pose.Point(b.B)[2])
	if n[2] > 0.5 { // a rim lies level
		return low > top-model.Grain
	}
	return low-b.R > top-model.Grain || math.Abs(n[0]) > 0.5
}
