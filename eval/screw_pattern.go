package eval

import (
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Pattern is all the screws between the same two parts: one part with clearance holes, one
// with tapped holes.
type Pattern struct {
	Clear, Tapped *Part
	Holes         []Bolted
}

// Bolted is one screw of a pattern. Free is how far its hole may lie off to one side:
// (hole - screw)/2, mm.
type Bolted struct {
	Screw      *Screwed
	Clear, Tap *Form
	Free       float64
	Off        [2]model.Known[float64] // how far each hole may lie from its place as drawn
	Spotted    bool                    // one is drilled through the other, or both are drilled in one go
	A, B       [3]float64              // places in their own parts
}

// patterns gathers the screws of one pair of parts.
func (t *Trace) patterns() {
	type pair struct{ a, b *Part }
	of := map[pair]*Pattern{}
	for _, j := range t.Joints {
		s := j.Screw
		if s == nil || s.into == nil || !s.Thread.Is() || len(s.Passes) == 0 {
			continue
		}
		p := s.Passes[len(s.Passes)-1]
		if p.Form == nil || p.Part == s.Part || !p.Diameter.Is() || p.Hole.Thread.Said || len(p.Form.Mouths) != len(s.into.Mouths) {
			continue
		}
		key := pair{p.Part, s.Part}
		if of[key] == nil {
			of[key] = &Pattern{Clear: p.Part, Tapped: s.Part}
			s.Pattern = of[key]
		}
		for i := range p.Form.Mouths {
			of[key].Holes = append(of[key].Holes, Bolted{Screw: s, Clear: p.Form, Tap: s.into,
				Free: (p.Diameter.V.Lo - s.Thread.V.Diameter) / 2, A: p.Form.Mouths[i], B: s.into.Mouths[i],
				Off:     [2]model.Known[float64]{t.off(p.Part, p.Form), t.off(s.Part, s.into)},
				Spotted: t.spotted(p.Part, p.Form, s.into) || t.spotted(s.Part, s.into, p.Form) || t.inOneGo(p.Form, s.into)})
		}
	}
}

// off is how far a hole may lie from its place along either co-ordinate: by its position
// tolerance, else by the limits written with its co-ordinates. The recipe's general tolerance
// says that a hole is good, not how it was located: it is not taken for a fact about the holes.
func (t *Trace) off(p *Part, f *Form) model.Known[float64] {
	m := f.Feature
	if m.PositionIn.Said && m.PositionIn.Within.Is() {
		return model.Sure(m.PositionIn.Within.V / 2)
	}
	lack := model.Known[float64]{Of: m.Item, Attr: "at (its limits)", At: m.Item.At}
	if !m.At.Is() {
		return lack
	}
	most := 0.0
	for _, pos := range m.At.V {
		sizes := append([]drawing.Size(nil), pos.Short...)
		for _, c := range pos.Coords {
			sizes = append(sizes, c.Size)
		}
		for _, s := range sizes {
			l := LimitsOf(s, model.General{}, m.Item, "at")
			if !l.Is() {
				return lack
			}
			most = max(most, l.V.Width()/2)
		}
	}
	if m.Around.Said {
		if !m.Around.Pcd.Is() {
			return lack
		}
		l := LimitsOf(m.Around.Pcd.V, model.General{}, m.Item, "around.pcd")
		if !l.Is() {
			return lack
		}
		most += l.V.Width() / 4
	}
	return model.Sure(most)
}

// spotted says whether an operation that makes a hole is located through the other one.
func (t *Trace) spotted(p *Part, f, through *Form) bool {
	for _, w := range t.work(p) {
		for _, st := range w.Steps {
			for _, r := range st.Makes.V {
				if r.Item == f.Feature.Item && st.Located.V.Item == through.Feature.Item {
					return true
				}
			}
		}
	}
	return false
}

// work lists the set-ups of a part and of the assemblies that it stands in.
func (t *Trace) work(p *Part) []*model.SetUp {
	out := append([]*model.SetUp(nil), p.Part.Work...)
	for _, a := range t.Build.Assemblies {
		for _, r := range a.Of.V {
			if r.Item == p.Part.Item {
				out = append(out, a.Work...)
			}
		}
	}
	return out
}

// Driver is the key or blade that the screw of a joint takes: as the shop says of its screws, else of the
// standard of their head; "" where neither says.
func (j *Joint) Driver() string {
	s := j.Screw
	if s == nil || !s.Thread.Is() {
		return ""
	}
	for _, x := range j.Owned() {
		if x.Driver.Is() && (s.Length == 0 || !x.Lengths.Is() || x.Lengths.V.Has(s.Length)) {
			return x.Driver.V
		}
	}
	th := s.Thread.V
	if key, across, ok := handbook.Driver(s.Model.Head.V, th.Diameter); ok && th.Series == "M" {
		return key + ", " + model.Figure(across) + " mm"
	}
	return ""
}
