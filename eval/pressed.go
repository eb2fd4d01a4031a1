package eval

import (
	"fettle/eval/reckon/press"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Pressing is a fit that is pressed together with an arbor press: the force that it takes.
type Pressing struct {
	Fit   *FitJoint
	Bench *model.SetUp
	Press *model.ArborPress
	Force model.Known[Limits]  // N, at full length: least and most, by limits, stiffness and friction
	Tall  model.Known[float64] // shaft standing on the hub before it goes in, mm
	None  bool                 // there is no interference, or nothing that can be worked out of it
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

// pressing works the force out for a hub that is turned: of one that is not, how thick it is
// all round has no one answer.
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
	if play.Lo >= 0 || hub == nil || shaft == nil || !hub.Diameter.Is() {
		out.None = true
		return out
	}
	length, known := f.Model.Engaged.Get()
	if !known || !hub.Material.Is() || !shaft.Material.Is() {
		out.Force = model.Lacking[Limits](f.Model.Engaged.Missing(), hub.Material.Missing(), shaft.Material.Missing())
		return out
	}
	h, ok := handbook.ElasticOf(hub.Material.V.Name)
	k, ok2 := handbook.ElasticOf(shaft.Material.V.Name)
	mu, _, ok3 := handbook.PressFriction(h.Family, k.Family, "dry")
	oiled, _, ok4 := handbook.PressFriction(h.Family, k.Family, "oiled")
	if ok4 {
		mu.Lo = min(mu.Lo, oiled.Lo) // nobody says whether it is oiled
	}
	if !ok || !ok2 || !ok3 {
		out.None = true
		return out
	}
	a, err := press.Work(press.Fit{Diameter: f.Hole.Size.V.Nominal, Outside: hub.Diameter.V.Nominal, Length: length, Hub: h, Shaft: k, Friction: mu,
		Interference: handbook.Band{Lo: -play.Hi, Hi: -play.Lo}})
	if err != nil || a.Hub.Share.Lo > 1 || a.Shaft.Share.Lo > 1 {
		out.None = true // beyond yield the force is less than the theory says
		return out
	}
	out.Force = model.Sure(Limits{a.Force.Lo, a.Force.Hi})
	return out
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
