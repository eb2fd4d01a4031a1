package eval

import "fettle/schema/model"

// Assembled is parts worked on when joined.
type Assembled struct {
	*model.Assembly
	Parts []*Part
	Spelt []Together // its set-ups
}

// Together is one stretch of work on joined parts.
type Together struct {
	SetUp  *model.SetUp
	Played bool   // in the first part's own work
	Why    string // why it is not made on paper; "" if it is
}

func (j *Joint) assembly(a *model.Assembly) {
	o := &Assembled{Assembly: a}
	j.Assembly = o
	for _, r := range a.Of.V {
		if p := j.Trace.partOf(r.Item); p != nil {
			o.Parts = append(o.Parts, p)
		}
	}
	if len(o.Parts) == 0 || len(o.Parts) != len(a.Of.V) {
		j.Unplayed = "its parts are not known"
		return
	}
	for _, s := range a.Work {
		w := Together{SetUp: s}
		w.Why = togetherWhy(o.Parts[0], a, s)
		w.Played = w.Why == ""
		o.Spelt = append(o.Spelt, w)
	}
}

// togetherWhy says why a stretch of work on joined parts is not made on paper; "" if it is. It
// is where all that it makes is of the first part, whose frame and faces count, and the others
// stand in holes of the first part and nowhere out of them: then the piece that is held and cut
// looks like the first part alone.
func togetherWhy(p *Part, a *model.Assembly, s *model.SetUp) string {
	switch {
	case s.Kind == "heat":
		return "heat is not made on paper yet"
	case p.Unplayed != "":
		return "its first part is not made on paper"
	}
	for _, r := range a.Of.V[1:] {
		if !p.swallows(r.Item) {
			return "where " + r.Path() + " stands out of " + p.Part.Path() + " is not made on paper yet"
		}
	}
	refs := append([]model.Ref(nil), s.Makes.V...)
	for _, st := range s.Steps {
		refs = append(refs, st.Makes.V...)
	}
	for _, r := range refs {
		if _, ok := p.target(r); !ok {
			return "what is made on other parts than the first of an assembly is not made on paper yet: " + r.Path()
		}
	}
	return ""
}

// swallows says whether another part stands in a hole of this one by a fit, and is no longer
// than the hole is deep.
func (p *Part) swallows(other *model.Item) bool {
	for _, m := range p.Build.Fits {
		hole, shaft := m.Hole.V.Item, m.Shaft.V.Item
		if hole == nil || shaft == nil || hole.Up("part") != p.Item || shaft.Up("part") != other {
			continue
		}
		f := p.FormOf(hole)
		if f == nil || f.Wrong != "" || !f.Depth.Is() || len(f.Mouths) == 0 {
			continue
		}
		for _, o := range p.Build.Parts {
			if o.Item == other && o.Diameter.Is() && o.Length.Is() && o.Length.V.Nominal <= f.Depth.V+model.Grain {
				return true
			}
		}
	}
	return false
}

// spellJoined adds to the work of a part what is done to it once others are joined to it.
func (p *Part) spellJoined() {
	for _, a := range p.Build.Assemblies {
		if len(a.Of.V) == 0 || a.Of.V[0].Item != p.Item {
			continue
		}
		for _, s := range a.Work {
			if togetherWhy(p, a, s) != "" {
				continue
			}
			n := len(p.Work)
			p.spellOne(s)
			for _, w := range p.Work[n:] {
				w.Spot.SetUp = "assembly " + a.Label + " " + w.Spot.SetUp
				for _, st := range w.Steps {
					st.Spot.SetUp = w.Spot.SetUp
				}
			}
		}
	}
}

// MadeJoined says whether a feature, or a face, is made in work on joined parts that is not made
// on paper: nobody can say then that it is never made.
func (p *Part) MadeJoined(f *Form, face model.Face) bool {
	for _, a := range p.Build.Assemblies {
		stands := false
		for _, r := range a.Of.V {
			stands = stands || r.Item == p.Item
		}
		if !stands {
			continue
		}
		for _, s := range a.Work {
			if a.Of.V[0].Item == p.Item && togetherWhy(p, a, s) == "" {
				continue
			}
			refs := append([]model.Ref(nil), s.Makes.V...)
			for _, st := range s.Steps {
				refs = append(refs, st.Makes.V...)
			}
			for _, r := range refs {
				if f != nil && r.Item == f.Feature.Item || f == nil && p.faceNamed(r) == face {
					return true
				}
			}
		}
	}
	return false
}

// faceNamed is the face of this part that a reference names; none where it names another's.
func (p *Part) faceNamed(r model.Ref) model.Face {
	switch {
	case r.Item == nil:
		return r.Face
	case r.Item == p.Item && r.Face != model.NoFace:
		return r.Face
	case r.Item == p.Item || r.Item.Kind == "face" && r.Item.Up("part") == p.Item:
		f, _ := model.ParseFace(lastWord(r.Path()))
		return f
	}
	return model.NoFace
}

// Joined says whether anything in the recipe joins two of the parts: a joint that names both, or
// heat or hand work of the assembly that joins them.
func (o *Assembled) Joined(t *Trace) bool {
	if o.JoinedBy.Is() && len(o.JoinedBy.V) > 0 {
		return true
	}
	for _, s := range o.Work {
		if s.Kind == "heat" || s.Joins.Is() {
			return true
		}
	}
	for _, i := range t.Build.Joints {
		if i.Kind == "assembly" {
			continue
		}
		named := map[*model.Item]bool{}
		for _, a := range i.Attrs {
			vs := []model.Value{a.Value}
			if a.Value.Kind == model.List {
				vs = a.Value.List
			}
			for _, v := range vs {
				if v.Kind == model.RefTo && v.Ref.Item != nil {
					named[v.Ref.Item.Up("part")] = true
				}
			}
		}
		n := 0
		for _, p := range o.Parts {
			if named[p.Part.Item] {
				n++
			}
		}
		if n > 1 {
			return true
		}
	}
	return len(o.Places) > 0
}

// Mates finds the one plain hole of a part and the one turned outside of the other that have
// the same nominal diameter; false where there is none, or more than one such pair.
func (o *Assembled) Mates(t *Trace) (hole, shaft Dimension, ok bool) {
	n := 0
	for i, p := range o.Parts {
		q := o.Parts[1-i]
		for _, f := range p.Forms {
			if k := f.Feature.Kind; k != "hole" && k != "bore" || f.Feature.Thread.Said || !f.Diameter.Is() || f.Wrong != "" {
				continue
			}
			h := t.dimension(model.Ref{Item: f.Feature.Item, Sub: "diameter", At: f.Feature.Item.At})
			for _, s := range q.shafts(t) {
				if h.Size.Is() && s.Size.Is() && near(h.Size.V.Nominal, s.Size.V.Nominal) {
					hole, shaft, n = h, s, n+1
				}
			}
		}
	}
	return hole, shaft, n == 1
}

// shafts are the plain turned outsides of a part; its own where nothing else is turned.
func (p *Part) shafts(t *Trace) []Dimension {
	if !p.Round || p.flats() > 0 {
		return nil
	}
	var out []Dimension
	for _, f := range p.Forms {
		if f.Feature.Kind == "outside" && f.Feature.Diameter.Is() {
			out = append(out, t.dimension(model.Ref{Item: f.Feature.Item, Sub: "diameter", At: f.Feature.Item.At}))
		}
	}
	if len(out) == 0 {
		out = append(out, t.dimension(model.Ref{Item: p.Part.Item, Sub: "diameter", At: p.Part.Item.At}))
	}
	return out
}
