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
	Played bool
	Why    string // why it is not made on paper; "" if it is
}

func (j *Joint) assembly(a *model.Assembly) {
	o := &Assembled{Assembly: a}
	j.Assembly = o
	for _, r := range a.Of.V {
		if p := j.Trace.makingOf(r.Item); p != nil {
			o.Parts = append(o.Parts, p.Part)
		}
	}
	if len(o.Parts) == 0 || len(o.Parts) != len(a.Of.V) {
		j.Unplayed = "its parts are not known"
		return
	}
	made := j.Trace.makingOf(a.Item)
	for _, s := range a.Work {
		w := Together{SetUp: s, Why: j.Trace.apart[a]}
		if made != nil {
			for _, k := range made.Part.Work {
				if k.SetUp == s {
					w.Why = k.Unplayed
				}
			}
		}
		if len(makesOf(s)) == 0 {
			w.Why = "" // it joins, heats or says nothing that is cut
		}
		w.Played = w.Why == "" && made != nil
		o.Spelt = append(o.Spelt, w)
	}
}

// MadeJoined says whether a feature, or a face, is made in work on joined parts: what comes of it is
// said there, or nobody can say it.
func (p *Part) MadeJoined(f *Form, face model.Face) bool {
	for _, a := range p.Build.Assemblies {
		if !within(p.Item, a, p.Build, 0) {
			continue
		}
		for _, r := range makesOfAll(a) {
			if f != nil && r.Item == f.Feature.Item || f == nil && p.faceNamed(r) == face && (r.Item != nil || a.Of.V[0].Item == p.Item) {
				return true
			}
		}
	}
	return false
}

// MadeTogether lists the features that the work of an assembly makes, with the state that they come to.
func (t *PartTrace) MadeTogether() (forms []*Form, states []*FeatureState) {
	for i, f := range t.Part.Forms {
		for _, w := range t.Part.Work {
			made := false
			for _, st := range w.Steps {
				for _, g := range st.Makes {
					made = made || g.Form == f
				}
			}
			if made && w.Unplayed == "" {
				forms, states = append(forms, f), append(states, t.End.Features[i])
				break
			}
		}
	}
	return forms, states
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
					named[v.Ref.Part()] = true
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
