package eval

import (
	"fettle/eval/reckon/press"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Pressing is a fit that is pressed together with an arbor press: the force that it takes. The least is that of the thinnest
// hub that the metal round the hole can be taken for, of the widest bore that the shaft may have there, and of the least
// friction; the most is the other way about (see Part.round). Keyways and flats are not counted.
type Pressing struct {
	Fit         *FitJoint
	Bench       *model.SetUp
	Press       *model.ArborPress
	Force       model.Known[Limits]  // N, at full length: least and most, by limits, stiffness and friction
	Least, Most press.Answer         // what comes of the fit at either end of what hub and shaft can be; zero where Force is not known
	Tall        model.Known[float64] // shaft standing on the hub before it goes in, mm
	None        bool                 // there is no interference, or nothing that can be worked out of it
}

// Pressings lists every fit that a bench joins with a press that it names.
func (t *Trace) Pressings() []Pressing {
	var benches []*model.SetUp
	for _, p := range t.Build.Parts {
		benches = append(benches, p.Work...)
	}
	for _, a := range t.Build.Assemblies {
		benches = append(benches, a.Work...)
	}
	var out []Pressing
	for _, s := range benches {
		for _, tool := range s.Tool.V {
			ap, ok := model.Find(t.Build.Shop.Presses, tool.Item)
			if s.Kind != "bench" || !ok || tool.Item == nil {
				continue
			}
			for _, r := range s.Joins.V {
				for _, j := range t.Joints {
					if j.Fit != nil && r.Item != nil && j.Item == r.Item {
						out = append(out, t.pressing(j.Fit, s, ap))
					}
				}
			}
		}
	}
	return out
}

// pressing works the force out.
func (t *Trace) pressing(f *FitJoint, s *model.SetUp, ap *model.ArborPress) Pressing {
	out := Pressing{Fit: f, Bench: s, Press: ap}
	play, ok := f.Play.Get()
	hub, shaft := t.modelOf(f.Hole.Of), t.modelOf(f.Shaft.Of)
	if hub != nil && shaft != nil {
		out.Tall = model.Both(hub.Length, shaft.Length, func(h, s drawing.Size) float64 { return h.Nominal + s.Nominal })
	}
	if !ok {
		out.Force = model.Lacking[Limits](f.Play.Missing())
		return out
	}
	if play.Lo >= 0 || hub == nil || shaft == nil || f.Hole.Part == nil || f.Shaft.Part == nil {
		out.None = true
		return out
	}
	length, known := f.Model.Engaged.Get()
	if !known || !hub.Material.Is() || !shaft.Material.Is() {
		out.Force = model.Lacking[Limits](f.Model.Engaged.Missing(), hub.Material.Missing(), shaft.Material.Missing())
		return out
	}
	d := f.Hole.Size.V.Nominal
	thin, thick := f.Hole.Part.round(f.Hole.Form, d)
	narrow, wide := f.borings()
	w := press.Fit{Diameter: d, Outside: thin, Bore: wide, Length: length, Interference: handbook.Band{Lo: -play.Hi, Hi: -play.Lo}}
	if !pressMetals(&w, hub.Material.V.Name, shaft.Material.V.Name) {
		out.None = true
		return out
	}
	least, err := press.Work(w)
	w.Outside, w.Bore = thick, narrow
	most, err2 := press.Work(w)
	if err != nil || err2 != nil || yields(&most) {
		out.None = true // beyond yield the force is less than the theory says
		return out
	}
	out.Least, out.Most = least, most
	out.Force = model.Sure(Limits{least.Force.Lo, most.Force.Hi})
	if yields(&least) {
		out.Force.V.Lo = 0
	}
	return out
}

// yields says whether hub or shaft is beyond yield even at the least interference.
func yields(a *press.Answer) bool { return a.Hub.Share.Lo > 1 || a.Shaft.Share.Lo > 1 }

// pressMetals gives a fit its two metals and their friction; false where the handbook has not all of it.
func pressMetals(w *press.Fit, hub, shaft string) bool {
	h, ok := handbook.ElasticOf(hub)
	k, ok2 := handbook.ElasticOf(shaft)
	mu, _, ok3 := handbook.PressFriction(h.Family, k.Family, "dry")
	if oiled, _, ok := handbook.PressFriction(h.Family, k.Family, "oiled"); ok {
		mu.Lo = min(mu.Lo, oiled.Lo) // nobody says whether it is oiled
	}
	w.Hub, w.Shaft, w.Friction = h, k, mu
	return ok && ok2 && ok3
}

// borings are the narrowest and the widest that a shaft may be hollow where it is pressed, mm; 0 is solid.
func (f *FitJoint) borings() (narrow, wide float64) {
	p := f.Shaft.Part
	lo, hi := f.stretch()
	for _, g := range p.Forms {
		if !g.boresAlong(p) || !g.overlaps(lo, hi) {
			continue
		}
		if !g.Diameter.Is() {
			wide = max(wide, 0.99*f.Hole.Size.V.Nominal) // as thin a tube as may be
			continue
		}
		wide = max(wide, g.Diameter.V)
		x0, x1 := g.along(lo, hi)
		if whole := x0 <= lo+model.Grain && x1 >= hi-model.Grain; whole && (g.Lathe != nil || g.Depth.Is()) {
			narrow = max(narrow, g.Diameter.V)
		}
	}
	return narrow, wide
}

// modelOf finds the part that a block is, or stands in.
func (t *Trace) modelOf(i *model.Item) *model.Part {
	if i == nil {
		return nil
	}
	up := i.Up("part")
	for _, p := range t.Build.Parts {
		if p.Item == up {
			return p
		}
	}
	return nil
}
