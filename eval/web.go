package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Web is the metal left in the finished part between two straight features, between a hole
// and a straight feature or another hole, or between a straight feature and the part's own
// face.
type Web struct {
	Of    *Form
	And   string     // the other feature; "" the part's own face
	Face  model.Face // that face
	Thick float64
	Floor bool // it is what the feature's floor stands on; else a wall
}

// Webs lists every web of the drawing once. Features that overlap or touch leave none
// between them, and neither does a face that another feature has taken away there.
func (p *Part) Webs() []Web {
	var out []Web
	rooms := p.rooms()
	for i, f := range rooms {
		for _, face := range model.Faces {
			if !f.Open[face] {
				out = append(out, p.webAt(f, face, rooms, i)...)
			}
		}
	}
	for _, f := range rooms {
		if w, ok := p.webRound(f); ok {
			out = append(out, w)
		}
	}
	return append(out, p.holeWebs()...)
}

// rooms are the features whose room is a box.
func (p *Part) rooms() []*Form {
	var out []*Form
	for _, f := range p.Forms {
		switch f.Feature.Kind {
		case "slot", "pocket", "step", "slit":
			if f.Wrong == "" && len(f.Lacks) == 0 && f.Skew == nil {
				out = append(out, f)
			}
		}
	}
	return out
}

// webAt is the metal beside a room in the direction that a face looks: to every later room
// that stands over against it, and to the face itself. An earlier room has told of the two
// already.
func (p *Part) webAt(f *Form, face model.Face, rooms []*Form, turn int) []Web {
	axis := face.Axis()
	floor := axis == f.Into.Face.Axis()
	var out []Web
	see := func(w Web, lo, hi solid.Vec) {
		for _, h := range rooms {
			if covers(h, lo, hi) {
				return // what would stand there is taken away too
			}
		}
		w.Of, w.Thick = f, hi[axis]-lo[axis]
		if w.Thick > model.Grain {
			out = append(out, w)
		}
	}
	span := func(from, to float64) (lo, hi solid.Vec) {
		lo, hi = f.Lo, f.Hi
		lo[axis], hi[axis] = from, to
		if face.Sign() < 0 {
			lo[axis], hi[axis] = to, from
		}
		return lo, hi
	}
	from, near := f.Hi[axis], func(g *Form) float64 { return g.Lo[axis] }
	if face.Sign() < 0 {
		from, near = f.Lo[axis], func(g *Form) float64 { return g.Hi[axis] }
	}
	for _, g := range rooms[turn+1:] {
		if over(f, g, axis) {
			lo, hi := span(from, near(g))
			for i := range 3 {
				if i != axis {
					lo[i], hi[i] = math.Max(lo[i], g.Lo[i]), math.Min(hi[i], g.Hi[i])
				}
			}
			see(Web{And: g.Name(), Floor: floor && axis == g.Into.Face.Axis()}, lo, hi)
		}
	}
	lo, hi := span(from, p.FaceAt(face))
	see(Web{Face: face, Floor: floor}, lo, hi)
	return out
}

// over says whether two rooms stand over against each other along an axis.
func over(f, g *Form, axis int) bool {
	for i := range 3 {
		if i != axis && (math.Min(f.Hi[i], g.Hi[i])-math.Max(f.Lo[i], g.Lo[i]) < model.Grain) {
			return false
		}
	}
	return true
}

// covers says whether a room takes a whole box away.
func covers(g *Form, lo, hi solid.Vec) bool {
	for i := range 3 {
		if g.Lo[i] > lo[i]+model.Grain || g.Hi[i] < hi[i]-model.Grain {
			return false
		}
	}
	return true
}

// holeWebs is the metal between a hole and what lies beside it.
func (p *Part) holeWebs() []Web {
	var out []Web
	for i, f := range p.Forms {
		if f.Wrong != "" || len(f.Lacks) > 0 || len(f.Mouths) == 0 || !f.Diameter.Is() {
			continue
		}
		for _, o := range p.Beside(f) {
			g, j := o.Other, o.Turn
			if g == nil || len(g.Mouths) > 0 && j < i || Meets(f, g) || o.Wall < model.Grain {
				continue
			}
			out = append(out, Web{Of: f, And: o.And, Thick: o.Wall})
		}
	}
	return out
}

func (p *Part) formNamed(name string) (*Form, int) {
	for i, f := range p.Forms {
		if f.Name() == name {
			return f, i
		}
	}
	return nil, -1
}
