package eval

import (
	"math"
	"sort"

	"fettle/eval/solid"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// Bent sheet is drawn folded, and its legs are measured over their outsides: along an axis the part is as
// long as all its legs together, each to the outside of the next; at a bend over 90 degrees to the outermost
// place of the bend (solid.Setback). The sheet that they are folded from is
// shorter: a bend takes up less of it than the two outsides that meet at it count.

// FlatSheet is the flat sheet along one axis of a part with bends across it, mm.
type FlatSheet struct {
	Axis  int
	Drawn float64 // all legs over their outsides
	Flat  model.Known[float64]
	Folds []Fold
}

// Fold is one bend of a pattern.
type Fold struct {
	Form    *Form
	At      float64              // the outside of the leg, along the axis
	Inside  model.Known[float64] // its radius
	Setback model.Known[float64] // from where a leg is measured to, to where it is straight
	Takes   model.Known[float64] // sheet less than the outsides count
	Leg     [2]float64           // outsides of the legs on the lower and the higher side
}

// Tempered is the state of the metal when it is bent: as an anneal before it left it, else as the blank or
// the stock is, else as the part is said to be.
func (p *Part) Tempered() model.Known[string] {
	for _, w := range p.Work {
		if w.Kind == "heat" && w.SetUp.Does.V == "anneal" {
			return model.Known[string]{V: "annealed", From: model.WorkedOut}
		}
		if w.bends() {
			break
		}
	}
	if b := p.Part.Blank; b != nil && b.Condition.Is() {
		return b.Condition
	}
	if s := p.Blank.Stock; s != nil && s.Condition.Is() {
		return s.Condition
	}
	return p.Part.Condition
}

func (w *Work) bends() bool {
	for _, st := range w.Steps {
		for _, t := range st.Makes {
			if t.Form != nil && t.Form.Feature.Kind == "bend" {
				return true
			}
		}
	}
	return false
}

// FlatSheets works out the flat sheet of a part with bends, along each axis that has any.
func (p *Part) FlatSheets() (out []FlatSheet) {
	if p.Round || !p.Part.Thickness.Is() {
		return nil
	}
	for axis := range 2 {
		pat := FlatSheet{Axis: axis, Drawn: p.Size[axis]}
		for _, f := range p.Forms {
			if f.Feature.Kind != "bend" || len(f.Feature.At.V) != 1 {
				continue
			}
			if a, at, ok := p.PlaceOf(f.Feature.At.V[0]); ok && a == axis {
				pat.Folds = append(pat.Folds, p.fold(f, at))
			}
		}
		if len(pat.Folds) == 0 {
			continue
		}
		sort.SliceStable(pat.Folds, func(i, j int) bool { return pat.Folds[i].At < pat.Folds[j].At })
		pat.Flat = model.Sure(pat.Drawn)
		from := p.Low[axis]
		for i := range pat.Folds {
			f := &pat.Folds[i]
			to := p.High()[axis]
			if i+1 < len(pat.Folds) {
				to = pat.Folds[i+1].At
			}
			f.Leg = [2]float64{f.At - from, to - f.At}
			from = f.At
			pat.Flat = model.Both(pat.Flat, f.Takes, func(a, b float64) float64 { return a - b })
		}
		out = append(out, pat)
	}
	return out
}

// fold works out one bend.
func (p *Part) fold(f *Form, at float64) Fold {
	m, t := f.Feature, p.Part.Thickness.V.Nominal
	o := Fold{Form: f, At: at, Inside: model.Map(m.InsideRadius, nominal)}
	if !m.InsideRadius.Said() && !m.InsideRadius.Is() {
		o.Inside = p.leastInside(m)
	}
	deg := m.Angle.Or(90)
	angle := deg * math.Pi / 180
	o.Setback = model.Map(o.Inside, func(r float64) float64 { return solid.Setback(angle, r, t) })
	switch share, ok := handbook.BendShare(o.Inside.V, t); {
	case !o.Inside.Is():
		o.Takes = model.Lacking[float64](o.Inside.Missing())
	case !turnsSheet(deg):
		o.Takes = model.Lacking[float64]([]model.Lack{{Fact: m.Item.Path() + ".angle", At: m.Item.At}})
	case m.Allowance.Is():
		o.Takes = model.Sure(2*o.Setback.V - m.Allowance.V)
	case !ok:
		o.Takes = model.Lacking[float64](m.Allowance.Missing())
	default:
		o.Takes = model.Sure(2*o.Setback.V - solid.Allowance(angle, o.Inside.V, t, share))
	}
	return o
}

// turnsSheet says whether sheet is bent by so many degrees: up to 180, a hem, both ends in.
func turnsSheet(degrees float64) bool { return degrees > 0 && degrees <= 180 }

// leastInside is the inside radius that is chosen where none is written: the least that the handbook allows
// for the metal as it is bent.
func (p *Part) leastInside(m *model.Feature) model.Known[float64] {
	state := p.Tempered()
	if !p.Part.Material.Is() || !state.Is() {
		return model.Lacking[float64](p.Part.Material.Missing(), state.Missing())
	}
	across, along, ok := handbook.LeastBend(p.Part.Material.V, state.V)
	if !ok || p.Part.Material.V.Unsure {
		return model.Lacking[float64](m.InsideRadius.Missing())
	}
	r := along
	if m.Grain.V == "across" {
		r = across
	}
	return model.Known[float64]{V: r * p.Part.Thickness.V.Nominal, From: model.Chosen}
}

// Straights lists what is straight of each leg, from the lower side to the higher: its outside less the
// corners at its ends; below nought there is no room for its bends.
func (s *FlatSheet) Straights() (out []model.Known[float64]) {
	for i := range len(s.Folds) + 1 {
		var k model.Known[float64]
		if i < len(s.Folds) {
			k = model.Map(s.Folds[i].Setback, func(b float64) float64 { return s.Folds[i].Leg[0] - b })
		} else {
			k = model.Map(s.Folds[i-1].Setback, func(b float64) float64 { return s.Folds[i-1].Leg[1] - b })
		}
		if i > 0 && i < len(s.Folds) {
			k = model.Both(k, s.Folds[i-1].Setback, func(a, b float64) float64 { return a - b })
		}
		out = append(out, k)
	}
	return out
}

// VisedBend is a bend that is folded in the jaws of a vise, and nothing else.
type VisedBend struct {
	Form  *Form
	Bench *model.SetUp
	Vise  *model.Vise
	Long  float64 // along the bend
}

// VisedBends lists the bends of benches that are held in a vise alone.
func (p *Part) VisedBends() (out []VisedBend) {
	for _, w := range p.Work {
		if w.Kind != "bench" || len(w.SetUp.Hold.V) != 1 || barsBeside(w.SetUp) {
			continue
		}
		v, ok := model.Find(p.Build.Shop.Vises, w.SetUp.Hold.V[0].Item)
		if !ok {
			continue
		}
		for _, st := range w.Steps {
			for _, t := range st.Makes {
				if t.Form == nil || t.Form.Feature.Kind != "bend" || len(t.Form.Feature.At.V) != 1 {
					continue
				}
				if axis, _, ok := p.PlaceOf(t.Form.Feature.At.V[0]); ok && axis < 2 {
					long := p.Size[1-axis]
					if p.Flat != nil {
						long = p.Flat.long(t.Form, long)
					}
					out = append(out, VisedBend{t.Form, w.SetUp, v, long})
				}
			}
		}
	}
	return out
}

// barsBeside says whether something to fold over is named besides the vise.
func barsBeside(s *model.SetUp) bool {
	for _, r := range s.Tool.V {
		if r.Item == nil {
			continue
		}
		switch r.Item.Kind {
		case "soft_jaws", "packing", "parallels", "round_bar", "angle_plate":
			return true
		}
	}
	return false
}
