package eval

import (
	"slices"
	"strings"

	"fettle/schema/finding"
	"fettle/schema/handbook"
	"fettle/schema/model"
	"fettle/schema/text"
)

// Heating is the moment of one heat: what is heated, how hot it certainly gets and how hot
// at most, and what stood on the piece before it that heat can undo. Temperatures are
// degrees Celsius.
type Heating struct {
	Spot    finding.Spot
	SetUp   *model.SetUp
	Part    *Part   // nil in an assembly
	Of      []*Part // what is heated: the part, or the parts of the assembly
	Build   *model.Build
	Before  *State // of the part; nil in an assembly
	After   *State
	Earlier []Treatment
	Does    string
	Least   float64 // it gets at least so hot; 0: not known
	Most    float64 // and at most so hot; 0: not known
	Lacks   []model.Lack
	Solder  handbook.Solder // the filler; no name where it is not known
	Source  *model.HeatSource
	Pinned  bool // the source is written
}

// Treatment is something that heat brought about, or that heat can undo: a state of the
// metal, or a joint.
type Treatment struct {
	Spot  finding.Spot
	At    text.Place
	Does  string // "harden", "temper", "anneal", …, "soft solder", "silver solder", "press", "cold work", "bond"
	Name  string // in sentences: "the joint of heat.first (Ag155)"
	Zone  []model.Ref
	Part  *Part // of which part; nil: of a whole assembly
	Least float64
	Most  float64 // how hot it was made; 0: not known
	// It holds up to Low; from High on it is certainly undone. 0: nothing is known to undo it.
	Low, High float64
	Joins     []model.Ref  // what it joins
	Lacks     []model.Lack // what would bring Low and High together
}

// Joint says whether it holds two things together.
func (t *Treatment) Joint() bool {
	switch t.Does {
	case "soft solder", "silver solder", "bond", "press", "shrink on":
		return true
	}
	return false
}

// solderOver is how far above liquidus soldering is done at most, degrees Celsius: common practice.
const solderOver = 60

// stillHard is up to what temper a hardened steel is still too hard for high-speed steel and
// files, degrees Celsius: carbon tool steel tempered at 400 has some 50 HRC, from memory.
const stillHard = 400

// hardest is how much hardness high-speed steel and files still cut, HRC: common practice, 40 to 45.
const hardest = 45

// Metal gives what heat does to the metal of a part; false where metal or table do not say.
func (p *Part) Metal() (handbook.Metal, bool) {
	m, ok := p.Part.Material.Get()
	if !ok || m.Unsure {
		return handbook.Metal{}, false
	}
	return handbook.HeatOf(m)
}

// heat plays one heat of a part.
func (pl *Player) heat(p *Part, w *Work, before *State, d Decider) *Heating {
	h := &Heating{Spot: w.Spot, SetUp: w.SetUp, Part: p, Of: []*Part{p}, Build: p.Build, Before: before}
	h.Earlier = append(p.coldWork(), before.Treated...)
	h.play(d)
	h.After = before.next(w.Spot, before.Key.With(itemDigest(w.SetUp.Item), digest(h.Does)))
	h.After.Treated = append(append([]Treatment{}, before.Treated...), h.treatment(p))
	return h
}

func (h *Heating) play(d Decider) {
	h.Does = h.SetUp.Does.V
	if h.SetUp.Filler.Is() {
		h.Solder, _ = handbook.SolderNamed(h.SetUp.Filler.V)
	}
	h.temperature()
	h.Source, h.Pinned = d.Source(h), h.SetUp.Source.Is()
}

// temperature settles how hot the work gets: as written, else by the filler, else by the metal.
func (h *Heating) temperature() {
	s := h.SetUp
	if t, ok := s.Temperature.Get(); ok && t > 0 {
		h.Least, h.Most = t, t
		return
	}
	if b, ok := handbook.Temperature(s.Colour.V); ok && s.Colour.Is() {
		h.Least, h.Most = b.Low, b.High
		return
	}
	switch h.Does {
	case "soft solder", "silver solder":
		h.solderHeat()
	case "blue":
		b, _ := handbook.HeatColour("blue")
		h.Least, h.Most = b.Low, b.High
	case "harden", "temper", "anneal", "stress relieve":
		h.metalHeat()
	default:
		h.lackTemperature()
	}
}

func (h *Heating) lackTemperature() {
	h.Lacks = append(h.Lacks, model.Lack{Fact: h.SetUp.Path() + ".temperature", At: h.SetUp.At})
}

// solderHeat is the heat at which the filler flows; of one that is not known, that of every
// filler of its kind.
func (h *Heating) solderHeat() {
	if h.Solder.Name != "" {
		h.Least, h.Most = h.Solder.Liquidus, h.Solder.Liquidus+solderOver
		return
	}
	_, liquidus, _ := handbook.SolderKind(strings.TrimSuffix(h.Does, " solder"))
	h.Least, h.Most = liquidus.Low, liquidus.High+solderOver
	h.Lacks = append(h.Lacks, model.Lack{Fact: h.SetUp.Path() + ".filler", At: h.SetUp.At})
}

// metalHeat is the band of the table for the metal; of several metals the widest. Parts joined to one that
// hardens get as hot as it does.
func (h *Heating) metalHeat() {
	for _, p := range h.Of {
		if h.Does == "harden" && len(h.Of) > 1 {
			if m, ok := p.Metal(); ok && m.Harden.High == 0 && h.anyHardens() {
				continue
			}
		}
		m, ok := p.Metal()
		b := map[string]handbook.Degrees{"harden": m.Harden, "temper": m.Temper, "anneal": m.Anneal, "stress relieve": m.Relieve}[h.Does]
		if !ok || b.High == 0 {
			h.Lacks = append(h.Lacks, p.Part.Material.Missing()...)
			h.Least, h.Most = 0, 0
			h.lackTemperature()
			return
		}
		if h.Least == 0 || b.Low < h.Least {
			h.Least = b.Low
		}
		h.Most = max(h.Most, b.High)
	}
}

func (h *Heating) anyHardens() bool {
	return slices.ContainsFunc(h.Of, func(p *Part) bool {
		m, ok := p.Metal()
		return ok && m.Harden.High > 0
	})
}

// treatment is what the heat leaves behind.
func (h *Heating) treatment(p *Part) Treatment {
	t := Treatment{Spot: h.Spot, At: h.SetUp.At, Does: h.Does, Zone: h.SetUp.Zone.V, Part: p, Least: h.Least, Most: h.Most,
		Lacks: h.Lacks, Name: "the " + map[string]string{"harden": "hardness", "temper": "temper"}[h.Does] + " of " + h.SetUp.Kind + "." + h.SetUp.Label}
	switch h.Does {
	case "harden":
		// An untempered piece loses its hardness from 150 on, and most of it above 350: from memory.
		t.Low, t.High = 150, 350
	case "temper":
		t.Low, t.High = h.Least, h.Most
		if h.SetUp.Temperature.Is() || h.SetUp.Colour.Is() {
			t.Lacks = nil
		} else {
			t.Lacks = []model.Lack{{Fact: h.SetUp.Path() + ".temperature", At: h.SetUp.At}}
		}
	case "soft solder", "silver solder":
		t.Name = "the joint of " + h.SetUp.Kind + "." + h.SetUp.Label
		if h.Solder.Name != "" {
			t.Name += " (" + h.Solder.Name + ")"
			t.Low, t.High, t.Lacks = h.Solder.Solidus, h.Solder.Solidus, nil
			break
		}
		solidus, _, _ := handbook.SolderKind(strings.TrimSuffix(h.Does, " solder"))
		t.Low, t.High = solidus.Low, solidus.High
		t.Lacks = []model.Lack{{Fact: h.SetUp.Path() + ".filler", At: h.SetUp.At}}
	case "shrink on":
		t.Name = "the shrunk joint of " + h.SetUp.Kind + "." + h.SetUp.Label
		t.Low, t.High = relieved(h.Of)
	default:
		t.Name = ""
	}
	return t
}

// relieved is where the metals of a joint lose the stress that holds it: it holds below the
// least of their bands of stress relieving and is gone above the greatest; 0 not known.
func relieved(ps []*Part) (low, high float64) {
	for _, p := range ps {
		m, ok := p.Metal()
		if !ok || m.Relieve.High == 0 {
			return 0, 0
		}
		if low == 0 || m.Relieve.Low < low {
			low = m.Relieve.Low
		}
		high = max(high, m.Relieve.High)
	}
	return low, high
}

// coldWork is the springiness or hardness by drawing or rolling that a part is said to have
// when finished; heat that anneals its metal takes it away.
func (p *Part) coldWork() []Treatment {
	c, ok := p.Part.Condition.Get()
	m, known := p.Metal()
	if !ok || !known || m.Anneal.Low == 0 || m.Hardens() {
		return nil
	}
	switch w := strings.ToLower(c); {
	case strings.Contains(w, "half hard"), w == "hard", strings.Contains(w, "spring"), strings.Contains(w, "cold"):
		return []Treatment{{At: p.Part.Condition.At, Does: "cold work", Name: "the condition " + c + " of " + p.Label, Part: p,
			Low: max(m.Relieve.High, m.Relieve.Low), High: m.Anneal.Low}}
	}
	return nil
}

// bonds is what a bench joins that heat can undo; nothing where it does not say how.
func bonds(w *model.SetUp, spot finding.Spot, p *Part, of []*Part) []Treatment {
	if !w.Joins.Is() {
		return nil
	}
	var out []Treatment
	add := func(says, name string) {
		t := Treatment{Spot: spot, At: w.At, Part: p, Joins: w.Joins.V}
		if bond, b, ok := handbook.Bond(says); ok {
			t.Does, t.Name, t.Low, t.High = "bond", "the "+bond+" of "+name, b.Low, b.High
		} else if strings.Contains(says, "press") {
			t.Does, t.Name = "press", "the pressed joint of "+name
			t.Low, t.High = relieved(of)
		}
		if t.High > 0 {
			out = append(out, t)
		}
	}
	add(strings.ToLower(w.By.V), w.Kind+"."+w.Label)
	if len(out) > 0 {
		return out
	}
	for _, r := range w.Joins.V {
		if r.Item != nil && r.Item.Kind == "fit" {
			if j := r.Item.Attr("joined"); j != nil {
				add(strings.ToLower(j.Value.Text), r.Path())
			}
		}
	}
	return out
}

// Apart says whether two treatments are said to touch different features: what one heats
// need not reach the other.
func Apart(a, b []model.Ref) bool {
	if len(a) == 0 || len(b) == 0 {
		return false
	}
	for _, x := range a {
		for _, y := range b {
			if x.Item == y.Item && x.Face == y.Face {
				return false
			}
		}
	}
	return true
}

// Hard finds the hardening that makes a target too hard for high-speed steel and files now;
// nil where none does, or where it was softened again.
func (p *Part) Hard(s *State, t Target) *Treatment {
	if q := p.Owner(t); q != p {
		one := *s
		one.Treated = nil
		for _, tr := range s.Treated {
			if tr.Part == nil || tr.Part == q {
				one.Treated = append(one.Treated, tr)
			}
		}
		if t.Form != nil {
			t.Form = t.Form.Own
		}
		return q.Hard(&one, t)
	}
	var hard *Treatment
	for i := range s.Treated {
		tr := &s.Treated[i]
		switch {
		case tr.Does == "harden" && p.hardens() && tr.covers(t):
			hard = tr
		case hard == nil || Apart(hard.Zone, tr.Zone):
		case tr.Does == "anneal", tr.Most > stillHard, tr.Most == 0:
			hard = nil // softened, or nobody knows that it is not
		}
	}
	return hard
}

// hardens says whether quenching certainly makes the part's metal harder than tools cut.
func (p *Part) hardens() bool {
	m, ok := p.Metal()
	return ok && m.HRC > hardest
}

// covers says whether the whole piece, or what a target is, was heated.
func (t *Treatment) covers(g Target) bool {
	if len(t.Zone) == 0 {
		return true
	}
	for _, z := range t.Zone {
		if g.Form != nil && z.Item == g.Form.Feature.Item || g.Form == nil && z.Face == g.Face && g.Face != model.NoFace {
			return true
		}
	}
	return false
}

// Place is where a finding about the heat belongs: the first of the named attributes that
// is written, else the block.
func (h *Heating) Place(attrs ...string) text.Place {
	if at, ok := written(h.SetUp.Item, attrs); ok {
		return at
	}
	return h.SetUp.At
}

// within says whether a part is in an assembly, or in one that is in it.
func within(part *model.Item, a *model.Assembly, b *model.Build, deep int) bool {
	for _, r := range a.Of.V {
		if r.Item == part {
			return true
		}
		for _, inner := range b.Assemblies {
			if inner.Item == r.Item && deep < 16 && within(part, inner, b, deep+1) {
				return true
			}
		}
	}
	return false
}

// Gap is the clearance at a joint, on one side, and where it is said.
type Gap struct {
	Lo, Hi float64
	Of     string
	At     text.Place
	Lacks  []model.Lack
}

// Gaps lists the gaps of the joints that a heat fills: as written, else of every fit that it
// joins, half the clearance on diameter.
func (h *Heating) Gaps() []Gap {
	if g, ok := h.SetUp.Gap.Get(); ok {
		l := LimitsOf(g, model.General{}, h.SetUp.Item, "gap")
		if !l.Is() {
			l = model.Sure(Limits{g.Nominal, g.Nominal})
		}
		return []Gap{{Lo: l.V.Lo, Hi: l.V.Hi, Of: "the gap", At: h.SetUp.Gap.At}}
	}
	var out []Gap
	for _, r := range h.SetUp.Joins.V {
		for _, f := range h.Build.Fits {
			if r.Item == nil || f.Item != r.Item {
				continue
			}
			// Of the clearance on diameter half lies on either side, where the shaft sits in the middle.
			// Of sizes without limits the fit says what is to be made.
			joint := (&Trace{Build: h.Build}).fit(f)
			play := joint.Play
			if !play.Is() && joint.Wants.Is() {
				play = joint.Wants
			}
			g := Gap{Of: "the gap of " + r.Path(), At: r.At, Lacks: play.Missing()}
			g.Lo, g.Hi = play.V.Lo/2, play.V.Hi/2
			out = append(out, g)
		}
	}
	return out
}
