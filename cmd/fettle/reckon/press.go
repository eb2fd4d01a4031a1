package reckon

import (
	"fmt"
	"math"

	"fettle/eval/reckon/fit"
	"fettle/eval/reckon/heat"
	"fettle/eval/reckon/press"
	"fettle/schema/handbook"
)

var _ = enter(Subject{
	Name:  "press",
	Title: "press and shrink fits: pressure, stress, force, torque, closing bore",
	Words: []Want{{Name: "FIT", Kind: Text, Rest: true, Says: "nominal size and pair, 12 H7/p6; left out where --interference, or --hole and --size, say it"}},
	Flags: []Want{
		{Name: "diameter", Kind: Length, Least: 0.1, Most: 1e4, Says: "of the common face, where no FIT says it"},
		{Name: "interference", Kind: Lengths, Least: 0, Most: 100, Says: "on DIAMETER, shaft less bore, never on radius: one, or least and most"},
		{Name: "hole", Kind: Lengths, Least: 0.1, Most: 1e4, Says: "bore of the hub, as measured or its limits; with --size"},
		{Name: "size", Kind: Lengths, Least: 0.1, Most: 1e4, Says: "outside of the shaft, as measured or its limits"},
		{Name: "outside", Kind: Length, Needed: true, Least: 0.1, Most: 1e5, Says: "of the hub"},
		{Name: "bore", Kind: Length, Least: 0, Most: 1e4, Says: "of a hollow shaft or bush (left out: solid)"},
		{Name: "length", Kind: Length, Least: 0.01, Most: 1e4, Says: "pressed; without it no force and torque"},
		{Name: "hub", Kind: Text, Says: "metal of the hub, as brass, mild steel, cast iron"},
		{Name: "shaft", Kind: Text, Says: "metal of the shaft or bush"},
		{Name: "joined", Kind: OneOf, Of: []string{"dry", "oiled", "shrunk"}, Says: "how it is put together, for friction (left out: dry)"},
		{Name: "friction", Kind: Number, Least: 0.001, Most: 2, Says: "in place of the handbook's"},
		{Name: "ra", Kind: Number, Least: 0.01, Most: 100, Says: "roughness Ra of both faces, µm: what of the interference is pressed flat (left out: nothing)"},
		{Name: "rz", Kind: Number, Least: 0.01, Most: 500, Says: "the same as Rz, µm"},
		{Name: "gap", Kind: Length, Least: 0, Most: 100, Says: "on diameter, to shrink it on in (left out: a thousandth of the diameter)"},
		{Name: "hub-young", Kind: Number, Least: 1, Most: 2e6, Says: "stiffness of the hub, MPa, in place of the handbook's"},
		{Name: "hub-poisson", Kind: Number, Least: 0, Most: 0.49, Says: "Poisson's ratio of the hub"},
		{Name: "hub-yield", Kind: Number, Least: 1, Most: 1e5, Says: "yield of the hub, MPa"},
		{Name: "shaft-young", Kind: Number, Least: 1, Most: 2e6, Says: "stiffness of the shaft, MPa"},
		{Name: "shaft-poisson", Kind: Number, Least: 0, Most: 0.49, Says: "Poisson's ratio of the shaft"},
		{Name: "shaft-yield", Kind: Number, Least: 1, Most: 1e5, Says: "yield of the shaft, MPa"},
	},
	Examples: [][]string{{"12 H7/p6", "--outside", "30", "--hub", "EN8", "--shaft", "EN8"}, {"20 H7/s6", "--outside", "50", "--length", "20", "--hub", "GG25", "--shaft", "EN8"}},
	No:       "there is no interference, or a part is worked beyond its yield or strength over the whole band",
	Answer:   answerPress,
})

const pressCaution = "Parts that are pressed together can spring out or burst: keep out of their line, wear eye protection, press straight, and follow the manual of the press. What was worked out is even rings at rest, not keyways, flanges, shock, spin or fatigue; where someone would be hurt if it slipped or burst, have it worked out by one who is licensed to."

// pressed is a fit as it was asked for.
type pressed struct {
	talk
	f press.Fit
	a press.Answer
}

func answerPress(a Ask) (Answer, error) {
	q := pressed{talk: talk{Ask: a}}
	for _, part := range []func() error{q.sizes, q.metals, q.rubs, q.rough, q.work} {
		if err := part(); err != nil {
			return Answer{}, err
		}
	}
	return q.out, nil
}

// sizes finds diameter and interference, one way.
func (q *pressed) sizes() error {
	i, isInterference, err := q.pairOf("interference")
	hole, isHole, err2 := q.pairOf("hole")
	size, isSize, err3 := q.pairOf("size")
	if err := cmpErr(err, err2, err3); err != nil {
		return err
	}
	d, isDiameter := q.Length("diameter")
	named := q.Text("FIT") != ""
	switch {
	case named && (isInterference || isHole || isSize || isDiameter), isInterference && (isHole || isSize), isHole != isSize, !named && !isInterference && !isHole:
		return fmt.Errorf("press wants one of: FIT; --diameter and --interference; --hole and --size")
	case isInterference && !isDiameter:
		return fmt.Errorf("--interference wants --diameter of the common face")
	case named:
		f := fitted{Ask: q.Ask, hole: side{name: "hole"}, shaft: side{name: "shaft"}}
		if err := f.read(q.Text("FIT")); err != nil {
			return err
		}
		if f.hole.class == "" || f.shaft.class == "" {
			return fmt.Errorf("%s names one class: a press fit wants a pair, as in 12 H7/p6", quoted(q.Text("FIT")))
		}
		if err := cmpErr(f.limits(&f.hole), f.limits(&f.shaft)); err != nil {
			return err
		}
		least, most := fit.Play(f.hole.lo, f.hole.hi, f.shaft.lo, f.shaft.hi)
		d, i = f.nominal, handbook.Band{Lo: -most, Hi: -least}
		q.step("%s: %s to %s; %s: %s to %s mm.", f.hole.class, millimetres(f.hole.lo), millimetres(f.hole.hi), f.shaft.class, millimetres(f.shaft.lo), millimetres(f.shaft.hi))
		q.source("ISO 286-1, tables of limits")
	case isHole:
		if i, err = press.Limits(hole.Lo, hole.Hi, size.Lo, size.Hi); err != nil {
			return err
		}
		if !isDiameter {
			d = (hole.Lo + hole.Hi) / 2
		}
	}
	q.f.Diameter, q.f.Interference = d, i
	q.f.Outside, _ = q.Length("outside")
	q.f.Bore, _ = q.Length("bore")
	q.f.Length, _ = q.Length("length")
	q.step("Interference on diameter = shaft less bore: %s mm.", spread(i, signed))
	return nil
}

// metals finds what hub and shaft are made of.
func (q *pressed) metals() error {
	for _, p := range []struct {
		name string
		m    *handbook.Elastic
	}{{"hub", &q.f.Hub}, {"shaft", &q.f.Shaft}} {
		m, _, err := q.metal(p.name)
		if err != nil {
			return err
		}
		q.over(&m.Young, p.name+"-young", 1)
		q.over(&m.Poisson, p.name+"-poisson", 1)
		if _, ok := q.Number(p.name + "-yield"); ok {
			q.over(&m.Yield, p.name+"-yield", 1)
			m.Breaks = handbook.Band{}
		}
		if !m.Young.Known() {
			return fmt.Errorf("the stiffness of the %s is not known: say --%s, or --%s-young in MPa and --%s-poisson", p.name, p.name, p.name, p.name)
		}
		if _, ok := q.Number(p.name + "-poisson"); !m.Poisson.Known() && !ok {
			return fmt.Errorf("the Poisson's ratio of the %s is not known: say --%s-poisson from 0 to 0.49", p.name, p.name)
		}
		*p.m = m
		q.source(about(m))
	}
	return nil
}

// rubs finds the friction.
func (q *pressed) rubs() error {
	if mu, ok := q.Number("friction"); ok {
		q.f.Friction = handbook.One(mu)
		return nil
	}
	if q.f.Length == 0 {
		return nil
	}
	joined := q.Text("joined")
	if joined == "" {
		joined = "dry"
	}
	mu, source, ok := handbook.PressFriction(q.f.Hub.Family, q.f.Shaft.Family, joined)
	if !ok {
		q.say("The friction of these two metals joined %s is not known here: say --friction for force and torque.", joined)
		return nil
	}
	q.f.Friction = mu
	q.source("friction " + thirds(mu) + ", joined " + joined + ": " + source)
	return nil
}

// rough finds what roughness takes.
func (q *pressed) rough() error {
	rz, isRz := q.Number("rz")
	ra, isRa := q.Number("ra")
	if !isRz && !isRa {
		return nil
	}
	if isRz && isRa {
		return fmt.Errorf("say the roughness as --ra or as --rz, not both")
	}
	b := handbook.One(rz)
	if isRa {
		b = press.RzOfRa(ra)
	}
	lost, err := press.Smoothing(b, b)
	if err != nil {
		return err
	}
	q.f.Smoothing = lost
	q.step("Lost to roughness: 0.8 x (Rz + Rz) = 0.8 x 2 x %s = %s µm of it.", thirds(b), micro(lost))
	q.source("roughness: " + press.SmoothingSource)
	return nil
}

func (q *pressed) work() (err error) {
	if q.a, err = press.Work(q.f); err != nil {
		return err
	}
	said := q.out.Says
	q.out.Says = nil
	if !(q.a.Interference.Hi > 0) {
		q.out.No = true
		lost := ""
		if q.f.Smoothing.Known() {
			lost = ", of which roughness takes " + micro(q.f.Smoothing) + " µm"
		}
		q.say("No: there is no interference to press on: %s mm on diameter%s.", spread(q.f.Interference, signed), lost)
		q.band("interference", q.a.Interference, "mm", "shaft less bore")
		return nil
	}
	q.pressure()
	q.strength("hub", "hoop pull at its bore", q.a.Hub, q.f.Hub)
	q.strength("shaft", shaftStress(q.f.Bore), q.a.Shaft, q.f.Shaft)
	if q.a.Hub.Share.Hi > 1 || q.a.Shaft.Share.Hi > 1 {
		q.say("Where a part goes beyond that, pressure, force and torque are less than is given here.")
	}
	if err := q.room(); err != nil {
		return err
	}
	q.holds()
	q.moves()
	q.out.Says = append(q.out.Says, said...)
	q.source("thick rings of Lamé: A. C. Ugural, S. K. Fenster, Advanced Strength and Applied Elasticity, 8; checked against finite elements to 0.15 %")
	q.out.Caution = pressCaution
	if q.f.Hub.Family == "plastic" || q.f.Shaft.Family == "plastic" {
		q.out.Caution = "Plastics creep: the pressure falls by itself and the fit loosens. " + q.out.Caution
	}
	return q.shrinks()
}

func shaftStress(bore float64) string {
	if bore > 0 {
		return "hoop push at its bore"
	}
	return "push throughout"
}

func (q *pressed) pressure() {
	a, f := q.a, q.f
	q.say("Pressure between the faces: %s MPa, from %s mm of interference on diameter.", thirds(a.Pressure), spread(a.Interference, millimetres))
	d, o, b := f.Diameter, f.Outside, f.Bore
	co, ci := (o*o+d*d)/(o*o-d*d), (d*d+b*b)/(d*d-b*b)
	q.step("Hub: E %s MPa, Poisson %s, (outside² + d²) / (outside² - d²) = %s.", thirds(f.Hub.Young), thirds(f.Hub.Poisson), round(co, 4))
	q.step("Shaft: E %s MPa, Poisson %s, (d² + bore²) / (d² - bore²) = %s.", thirds(f.Shaft.Young), thirds(f.Shaft.Poisson), round(ci, 4))
	q.step("Pressure = interference / (d x ((%s + Poisson) / E of the hub + (%s - Poisson) / E of the shaft)) = %s MPa, d = %s mm.", round(co, 4), round(ci, 4), thirds(a.Pressure), millimetres(d))
	q.band("interference", a.Interference, "mm", "shaft less bore")
	q.band("pressure", a.Pressure, "MPa", "worked out")
}

// strength says how hard a part is worked.
func (q *pressed) strength(part, where string, s press.Stress, m handbook.Elastic) {
	q.band("hoop of the "+part, s.Hoop, "MPa", "worked out")
	size := s.Hoop
	if size.Hi <= 0 {
		size = size.Times(-1)
	}
	bears, limit := "yield", m.Yield
	if !m.Yield.Known() && m.Breaks.Known() {
		bears, limit = "tensile strength", m.Breaks
	}
	switch {
	case !s.Share.Known():
		q.say("The %s has %s MPa of %s; whether it bears that is not known here.", part, thirds(size), where)
		return
	case s.Holds == press.Yes:
		q.say("The %s has %s MPa of %s and is worked to %s of its %s: below it.", part, thirds(size), where, percents(s.Share), bears)
	case s.Holds == press.No:
		q.out.No = true
		q.say("No: the %s has %s MPa of %s and is worked to %s of its %s: beyond it.", part, thirds(size), where, percents(s.Share), bears)
	default:
		q.say("The %s has %s MPa of %s and is worked to %s of its %s: whether it goes beyond depends on the sizes and the bar.", part, thirds(size), where, percents(s.Share), bears)
	}
	q.step("%s: largest difference of stresses %s MPa against %s MPa.", capital(part), thirds(s.Worst), thirds(limit))
	q.band("share of "+bears+" of the "+part, s.Share.Times(100), "%", "worked out")
}

// room says how much interference would be borne.
func (q *pressed) room() error {
	most, ok, err := press.MostInterference(q.f)
	if err != nil || !ok {
		return err
	}
	q.say("Both parts stay below that up to %s of interference on diameter, whatever the bar.", q.Says(most))
	q.value("most interference", most, "mm", "worked out")
	return nil
}

// holds says force and torque.
func (q *pressed) holds() {
	a, f := q.a, q.f
	if !a.Force.Known() {
		return
	}
	q.say("Pressing in or out takes %s kN at full length; it slips at %s N m.", thirds(a.Force.Times(1e-3)), thirds(a.Torque.Times(1e-3)))
	q.step("Force = friction x pi x d x length x pressure: %s x pi x %s x %s x %s = %s N.", thirds(f.Friction), millimetres(f.Diameter), millimetres(f.Length), thirds(a.Pressure), thirds(a.Force))
	q.step("Torque = force x d / 2 = %s N m.", thirds(a.Torque.Times(1e-3)))
	q.band("force", a.Force, "N", "worked out")
	q.band("torque", a.Torque.Times(1e-3), "N m", "worked out")
}

// moves says how much bore and outside change.
func (q *pressed) moves() {
	a, f := q.a, q.f
	if f.Bore > 0 {
		q.say("The bore of the shaft closes by %s µm on diameter: ream or bore it in place if that is too much.", micro(a.Closes))
		q.step("Bore closes by 2 x pressure x d² x bore / (E x (d² - bore²)) = %s µm, %s of the interference.", micro(a.Closes), percents(handbook.Band{Lo: share(a.Closes.Lo, a.Interference.Lo), Hi: share(a.Closes.Hi, a.Interference.Hi)}))
		q.band("bore closes", a.Closes.Times(1000), "µm", "worked out")
	}
	q.say("The outside of the hub grows by %s µm on diameter.", micro(a.Grows))
	q.band("outside grows", a.Grows.Times(1000), "µm", "worked out")
}

func share(x, of float64) float64 {
	if !(math.Abs(of) > 0) {
		return 0
	}
	return x / of
}

// shrinks says the heat, where both metals' expansions are known.
func (q *pressed) shrinks() error {
	f := q.f
	if !f.Hub.Expansion.Known() || !f.Shaft.Expansion.Known() {
		return nil
	}
	gap, ok := q.Length("gap")
	if !ok {
		gap = f.Diameter / 1000
	}
	j := heat.Joint{Diameter: f.Diameter, Interference: f.Interference, Hub: heat.Body{Expansion: f.Hub.Expansion, At: heat.Reference}, Shaft: heat.Body{Expansion: f.Shaft.Expansion, At: heat.Reference}}
	at, err := heat.HubAt(j, gap)
	switch {
	case err != nil:
		q.say("Heat alone does not open the hub by %s and a gap of %s mm.", spread(f.Interference, signed), millimetres(gap))
	default:
		q.say("A hub heated to %s °C goes on with a gap of %s mm instead.", degrees(math.Ceil(at.Hi)), millimetres(gap))
		q.value("hub at", at.Hi, "°C", "worked out")
		q.out.Caution += " Hot parts burn, and heat takes temper (aluminium from about 150 °C, hardened steel from about 150 to 200 °C; plastics soften far below: from memory); whether these parts bear it was not checked."
	}
	j.Interference = q.a.Interference
	if !(j.Interference.Lo > 0) {
		return nil
	}
	loose, ok, err := heat.LooseAt(j)
	if ok {
		q.say("With both equally warm or cold the interference is gone at %s °C.", spread(loose, degrees))
		q.band("loose at", loose, "°C", "worked out")
	}
	return err
}
