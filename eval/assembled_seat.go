package eval

import (
	"math"
	"slices"
	"sort"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Where a part sits in an assembly follows from what is written: a place block, the fits and the
// screws that join it to parts that sit already. Each gives conditions on how it is turned, which is
// looked for among the 24 ways that axes lie on axes, the least turned first, then among those in which it lies
// square to one that is turned aslant; and on where its origin
// lies. A shaft with a shoulder stands with it against the mouth of its hole; one without goes to the
// bottom of a blind hole; one no longer than a through hole stands flush with the mouth. How far a
// longer one goes in, and how a part turns about the only screw or shaft that holds it, must be said.

// anchor is a place of the part that lies on a place of the assembly, and a direction of it that runs
// along one of the assembly.
type anchor struct {
	own, ownDir     solid.Vec // in the part's frame
	other, otherDir solid.Vec // in the assembly's
	facing          bool      // the two directions are one; else they may also be opposite
	line            bool      // the places lie on one line along the direction
	deep            bool      // the places count along the direction
	soft            bool      // but only where nothing else says it
	round           bool      // the line is the part's own axis: how it turns about it does not matter
	how             string
}

// poseOf is how a part of a member lies in the assembly.
func (m *Member) poseOf(leaf *Part) solid.Pose {
	for i := range m.Part.Members {
		if n := &m.Part.Members[i]; slices.Contains(n.Part.Leaves(), leaf) {
			return after(m.Pose, n.poseOf(leaf))
		}
	}
	return m.Pose
}

// seat finds where a part sits beside those that sit already; why says why it is not known.
func (t *Trace) seat(a *model.Assembly, sits []Member, m *Member) (why string) {
	var as []anchor
	for _, f := range t.Build.Fits {
		as = append(as, t.fitAnchors(f, sits, m)...)
	}
	for _, s := range t.Build.Screwed {
		as = append(as, t.screwAnchors(s, sits, m)...)
	}
	var place *model.Place
	for _, pl := range a.Places {
		if pl.Part.V.Item == m.Part.Item {
			place = pl
		}
	}
	switch {
	case place == nil && len(as) == 0:
		return "nothing says where " + m.Part.Path() + " sits in it: a fit or screws that join it, or a place block, would"
	case place == nil && !as[0].round && !severalAxes(as):
		return "how " + m.Part.Path() + " is turned about " + as[0].how + " is not known: a place block would say it"
	case place != nil && place.Turned.Said && !place.Turned.By.Is():
		return "how far " + m.Part.Path() + " is turned is not known"
	}
	if place != nil {
		ts, said := touchAnchors(place, sits, m)
		if said != "" {
			return said
		}
		as = append(ts, as...)
	}
	lacks := ""
	for _, q := range t.turns(place, sits) {
		pose, whole, ok := solve(q, as, place, sits[0].Part)
		if !ok {
			continue
		}
		if !whole {
			lacks = "how far " + m.Part.Path() + " goes in is not known: a place block would say it"
			continue
		}
		m.Pose, m.How = pose, "place"
		if place == nil {
			m.How = as[0].how
		}
		return ""
	}
	if lacks == "" {
		lacks = "what is said of where " + m.Part.Path() + " sits does not go together"
	}
	return lacks
}

// severalAxes says whether anchors lie on more than one line.
func severalAxes(as []anchor) bool {
	for _, b := range as[1:] {
		d := b.other.Sub(as[0].other)
		if d.Sub(as[0].otherDir.Times(d.Dot(as[0].otherDir))).Len() > 0.01 {
			return true
		}
	}
	return false
}

// turns lists the ways that a part may be turned: as its place block says, else the least turned first.
func (t *Trace) turns(place *model.Place, sits []Member) []solid.Pose {
	var said solid.Pose
	if place != nil && place.Turned.Said {
		axis := map[string]int{"x": 0, "y": 1, "z": 2}[place.Turned.About.V]
		said = Lean{axis, place.Turned.By.V}.pose()
		if !squareTo(said) {
			return []solid.Pose{said}
		}
	}
	var out []solid.Pose
	for _, up := range model.Faces {
		for _, back := range model.Faces {
			if up.Axis() != back.Axis() {
				out = append(out, solid.Attitude(Normal(up), Normal(back)))
			}
		}
	}
	if place != nil && place.Turned.Said {
		return slices.DeleteFunc(out, func(q solid.Pose) bool { // the same without the last digits of sines
			return q.Dir(solid.Vec{1, 0, 0}).Sub(said.Dir(solid.Vec{1, 0, 0})).Len() > 0.1 || q.Dir(solid.Vec{0, 1, 0}).Sub(said.Dir(solid.Vec{0, 1, 0})).Len() > 0.1
		})
	}
	straight := func(q solid.Pose) (sum float64) {
		for i := range 3 {
			var v solid.Vec
			v[i] = 1
			sum += q.Dir(v)[i]
		}
		return sum + q.Dir(solid.Vec{0, 0, 1})[2]/8 // of two that are turned as far the one that stands upright
	}
	sort.SliceStable(out, func(i, j int) bool { return straight(out[i]) > straight(out[j]) })
	n := len(out)
	for i := range sits {
		if lies := sits[i].Pose; !squareTo(lies) { // as a part lies that is not turned by quarters
			lies = lies.Shifted(lies.Point(solid.Vec{}).Times(-1))
			for _, q := range out[:n] {
				out = append(out, after(lies, q))
			}
		}
	}
	return out
}

// fixed is where a place lies so far: how far along each of up to three directions square to one another.
type fixed struct {
	dir [3]solid.Vec
	at  [3]float64
	n   int
}

// set says that the place lies so far along a direction; false where it is known to lie elsewhere. soft:
// only where that is not known yet.
func (x *fixed) set(d solid.Vec, at float64, soft bool) bool {
	for i := range x.n {
		c := d.Dot(x.dir[i])
		d, at = d.Sub(x.dir[i].Times(c)), at-c*x.at[i]
	}
	l := d.Len()
	if x.n == len(x.dir) || l < 1e-6 {
		return soft || math.Abs(at) < 0.01
	}
	x.dir[x.n], x.at[x.n] = d.Times(1/l), at/l
	x.n++
	return true
}

// point is the place; whole says whether all of it is known.
func (x *fixed) point() (v solid.Vec, whole bool) {
	for i := range x.n {
		v = v.Add(x.dir[i].Times(x.at[i]))
	}
	return v, x.n == 3
}

// squareBeside are two directions square to one and to each other.
func squareBeside(d solid.Vec) [2]solid.Vec {
	var axis solid.Vec
	axis[(mostly(d).Axis()+1)%3] = 1
	a := axis.Sub(d.Times(axis.Dot(d))).Unit()
	return [2]solid.Vec{a, d.Cross(a)}
}

// solve shifts a part that is turned so that all conditions hold. whole says whether nothing of its
// place is left open, ok whether the conditions go together.
func solve(q solid.Pose, as []anchor, place *model.Place, frame *Part) (pose solid.Pose, whole, ok bool) {
	var x fixed
	if place != nil {
		axis := func(i int, at float64) {
			var d solid.Vec
			d[i] = 1
			x.set(d, at, false)
		}
		for i, s := range place.At.V.Short {
			if i < 3 {
				axis(i, s.Nominal)
			}
		}
		for _, c := range place.At.V.Coords { // counted from faces of the first part
			if c.Datum.Face != model.NoFace {
				axis(c.Datum.Face.Axis(), frame.FaceAt(c.Datum.Face)-c.Datum.Face.Sign()*c.Size.Nominal)
			}
		}
	}
	for _, soft := range [2]bool{false, true} {
		for _, a := range as {
			d := q.Dir(a.ownDir).Dot(a.otherDir)
			if math.Abs(math.Abs(d)-1) > 1e-6 || a.facing && d < 0 {
				return pose, false, false
			}
			shift := a.other.Sub(q.Point(a.own))
			if a.line && !soft {
				for _, n := range squareBeside(a.otherDir) {
					if !x.set(n, shift.Dot(n), false) {
						return pose, false, false
					}
				}
			}
			if a.deep && a.soft == soft && !x.set(a.otherDir, shift.Dot(a.otherDir), soft) {
				return pose, false, false
			}
		}
	}
	at, whole := x.point()
	return q.Shifted(at), whole, true
}

// touchAnchors are the faces of a place block that touch: the part's own and another's, in turn.
func touchAnchors(place *model.Place, sits []Member, m *Member) (out []anchor, why string) {
	refs := place.Touches.V
	if len(refs)%2 == 1 {
		return nil, "the faces that touch in " + place.Path() + " do not come in pairs"
	}
	for i := 0; i < len(refs); i += 2 {
		own, ok := m.Part.planeNamed(refs[i])
		other, pose, ok2 := Plane{}, unturned, false
		for j := range sits {
			if refs[i+1].Item == nil {
				continue
			}
			for _, leaf := range sits[j].Part.Leaves() {
				if pl, ok := leaf.planeNamed(refs[i+1]); ok && !ok2 {
					other, pose, ok2 = pl, sits[j].poseOf(leaf), true
				}
			}
		}
		if !ok || !ok2 {
			return nil, "the faces that touch in " + place.Path() + " are no flat faces of parts that are joined here"
		}
		a := anchor{ownDir: Normal(own.Face), otherDir: pose.Dir(Normal(other.Face)).Times(-1), facing: true, deep: true, how: place.Path()}
		a.own[own.Face.Axis()] = own.At
		a.other[other.Face.Axis()] = other.At + other.Face.Sign()*place.Gap.V.Nominal
		a.other = pose.Point(a.other)
		out = append(out, a)
	}
	return out, ""
}

// planeNamed is a flat face of this part by a reference from outside it.
func (p *Part) planeNamed(r model.Ref) (Plane, bool) {
	if r.Item == nil || r.Part() != p.Item {
		return Plane{}, false
	}
	if f := p.faceNamed(r); f != model.NoFace {
		return Plane{f, p.FaceAt(f), f.String()}, true
	}
	return p.PlaneOf(r)
}
