package reckon

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/eval/reckon/rigid"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
)

var _ = enter(Subject{
	Name:  "rigid",
	Title: "how far bars, tools and thin walls give under a force; whirl",
	Words: []Want{{Name: "HOW", Kind: OneOf, Needed: true, Of: []string{"chuck", "centre", "centres", "bar", "mill", "wall", "whirl"},
		Says: "held in a chuck, in chuck and centre, between centres; a boring bar, an end mill, a thin wall, a tail out of the headstock"}},
	Flags: []Want{
		{Name: "diameter", Kind: Length, Least: 0.1, Most: 1e4, Says: "of work, bar or cutter"},
		{Name: "length", Kind: Length, Least: 0.1, Most: 1e5, Says: "out of the jaws or holder, between centres, of the wall along its free edge, of the tail"},
		{Name: "bore", Kind: Length, Least: 0, Most: 1e4, Says: "of a hollow bar (left out: solid)"},
		{Name: "steps", Kind: Texts, Says: "of stepped work, diameter x length each, from the jaws or left centre on: 20x60,12x40"},
		{Name: "force", Kind: Number, Least: 0, Most: 1e6, Says: "square to the bar or wall, N"},
		{Name: "at", Kind: Length, Least: 0, Most: 1e5, Says: "where it pushes, from the jaws or left centre (left out: the free end; the middle with a centre)"},
		{Name: "material", Kind: Text, Says: "of the work, as mild steel (left out: mild steel)"},
		{Name: "tool", Kind: OneOf, Of: handbook.ToolMetalNames(), Says: "what a boring bar (left out: steel) or end mill (left out: HSS) is made of"},
		{Name: "young", Kind: Number, Least: 1, Most: 2e6, Says: "stiffness, MPa, in place of the handbook's"},
		{Name: "flutes", Kind: Length, Least: 0.1, Most: 1000, Says: "length of an end mill's flutes (left out: as far as it stands out)"},
		{Name: "shank", Kind: Length, Least: 0.1, Most: 1000, Says: "its shank (left out: as its diameter)"},
		{Name: "height", Kind: Length, Least: 0.1, Most: 1e4, Says: "of a wall, from its foot to its free edge"},
		{Name: "thick", Kind: Length, Least: 0.01, Most: 1e3, Says: "of a wall"},
		{Name: "ends", Kind: YesNo, Says: "the wall is held at both ends too"},
		{Name: "corner", Kind: YesNo, Says: "the wall is pushed at an end of its free edge, not at its middle"},
		{Name: "tolerance", Kind: Length, Least: 0.0001, Most: 1000, Says: "how much of it is taken; on diameter, of a wall or end mill on size"},
		{Name: "revs", Kind: Number, Least: 1, Most: 1e5, Says: "speed at which the tail runs, rev/min"},
		{Name: "share", Kind: Number, Least: 1, Most: 100, Says: "of the first whirl, % (left out: 40, a habit and no standard's)"},
	},
	Examples: [][]string{{"chuck", "--diameter", "12", "--length", "40", "--force", "60"}, {"centre", "--steps", "20x80,14x120", "--force", "100", "--at", "120"},
		{"bar", "--diameter", "12", "--length", "48", "--force", "50"}, {"mill", "--diameter", "6", "--length", "20", "--force", "80", "--tool", "HSS"},
		{"wall", "--length", "60", "--height", "20", "--thick", "1", "--force", "9"}, {"whirl", "--diameter", "10", "--length", "250", "--revs", "900"}},
	No:     "it gives by more than the tolerance over the whole band, or the tail runs above the share of its first whirl",
	Answer: answerRigid,
})

// bent is what gives, as it was asked for.
type bent struct {
	talk
	how    string
	force  float64
	d, l   float64
	isD    bool
	isL    bool
	stuff  handbook.Elastic
	double bool // a tolerance is on diameter
}

func answerRigid(a Ask) (Answer, error) {
	q := bent{talk: talk{Ask: a}, how: a.Text("HOW")}
	q.d, q.isD = q.Length("diameter")
	q.l, q.isL = q.Length("length")
	if err := q.metals(); err != nil {
		return Answer{}, err
	}
	var err error
	switch f, ok := q.Number("force"); {
	case q.how == "whirl":
		err = q.whirl()
	case !ok:
		err = fmt.Errorf("%s wants --force, from 0 to 1000000 N", q.how)
	case q.how == "wall":
		q.force = f
		err = q.wall()
	default:
		q.force = f
		err = q.bar()
	}
	return q.out, err
}

// metals finds what it is made of.
func (q *bent) metals() error {
	m, ok, err := q.metal("material")
	if err != nil {
		return err
	}
	if !ok {
		m, _ = handbook.ElasticOf("mild steel")
	}
	if q.how == "bar" || q.how == "mill" {
		name := q.Text("tool")
		if name == "" {
			name = map[string]string{"bar": "steel", "mill": "HSS"}[q.how]
		}
		m, _ = handbook.ToolMetal(name)
	}
	q.stuff = m
	q.over(&q.stuff.Young, "young", 1)
	from := m.Name
	if _, own := q.Number("young"); own {
		from = "--young"
	} else {
		q.source(about(m))
	}
	if !q.stuff.Young.Known() {
		return fmt.Errorf("the stiffness of %s is not known: say --young in MPa", m.Name)
	}
	q.band("stiffness", q.stuff.Young, "MPa", from)
	return nil
}

// bar answers for everything that bends like one.
func (q *bent) bar() error {
	b, said, err := q.shape()
	if err != nil {
		return err
	}
	l := b.Length()
	at, ok := q.Length("at")
	if !ok {
		at = l
		if b.Hold != rigid.Chuck {
			at = l / 2
		}
	}
	got, err := b.Under(rigid.Load{At: at, Force: q.force}, at)
	if err != nil {
		return err
	}
	q.double = q.how != "mill"
	q.say("%s: %s N at %s mm push it away by %s µm there.", said, three(q.force), millimetres(at), micro(got.Way))
	if q.double {
		q.say("Work comes out %s µm %s on diameter there.", micro(got.Way.Times(2)), map[bool]string{true: "smaller (of a bore)", false: "larger"}[q.how == "bar"])
	}
	q.step("Stiffness E = %s MPa.", thirds(q.stuff.Young))
	for n, p := range b.Parts {
		q.step("Part %d: %s mm long, second moment of area %s mm⁴.", n+1, millimetres(p.Length), three(p.Bend))
	}
	q.closed(b, at)
	q.step("Shear adds %s µm, which is not counted above.", micro(got.Shear))
	if got.Centre > 0 {
		q.say("The centre at the end bears %s N of it.", three(got.Centre))
		q.value("force on the centre", got.Centre, "N", "worked out")
	}
	q.band("gives", got.Way.Times(1000), "µm", "worked out")
	q.band("shear adds", got.Shear.Times(1000), "µm", "worked out")
	q.source("bending of slender stepped bars, integrated exactly; finite elements give up to 5.5 % more at sharp steps")
	q.out.Caution = "Jaws, centre, spindle, post and holder give way too and were taken as rigid: the true figure is larger. Long work that is not supported can climb over the tool or bend out: support it, and follow the lathe's manual."
	if q.how == "mill" || q.how == "bar" {
		q.out.Caution = "Holder, spindle and post give way too and were taken as rigid: the true figure is larger. A tool that reaches far chatters and can break: wear eye protection."
	}
	q.travel(b)
	return cmpErr(q.slender(b), q.shares(got.Way))
}

// closed shows the formula where the bar has one part.
func (q *bent) closed(b rigid.Bar, at float64) {
	if len(b.Parts) > 1 {
		q.step("Curvature = moment / (E x second moment of area), integrated twice from step to step.")
		return
	}
	switch b.Hold {
	case rigid.Chuck:
		q.step("F a³ / (3 E I) = %s x %s³ / (3 x %s x %s); doubled reach gives eight times as much.", three(q.force), millimetres(at), thirds(q.stuff.Young), three(b.Parts[0].Bend))
	case rigid.Centre:
		q.step("F a³ b² (3 a + 4 b) / (12 E I L³), a = %s mm from the jaws, b the rest of L = %s mm.", millimetres(at), millimetres(b.Length()))
	default:
		q.step("F a² b² / (3 E I L), a = %s mm from the left, b the rest of L = %s mm.", millimetres(at), millimetres(b.Length()))
	}
}

// shape makes the bar, and says what it is.
func (q *bent) shape() (rigid.Bar, string, error) {
	b := rigid.Bar{Young: q.stuff.Young, Hold: map[string]rigid.Hold{"centre": rigid.Centre, "centres": rigid.Centres}[q.how]}
	if b.Hold == 0 {
		b.Hold = rigid.Chuck
	}
	steps := slices.Clone(q.Texts("steps"))
	if len(steps) > 0 && (q.how == "mill" || q.isD || q.isL) {
		return b, "", fmt.Errorf("say --steps, or --diameter and --length, one of them; an end mill has --flutes and --shank")
	}
	if len(steps) == 0 && (!q.isD || !q.isL) {
		return b, "", fmt.Errorf("%s wants --diameter and --length", q.how)
	}
	bore, _ := q.Length("bore")
	if q.how == "mill" {
		return q.mill()
	}
	if len(steps) == 0 {
		steps = []string{millimetres(q.d) + "x" + millimetres(q.l)}
		b.Parts = []rigid.Part{rigid.Round(q.l, q.d, bore)}
		if !(bore < q.d) {
			return b, "", fmt.Errorf("--bore must lie from 0 to under the diameter, %s mm, not %s", millimetres(q.d), millimetres(bore))
		}
	} else if err := q.stepped(&b, steps, bore); err != nil {
		return b, "", err
	}
	name := q.stuff.Name
	if _, own := q.Number("young"); own {
		name = "that stiffness"
	}
	where := map[string]string{"chuck": "in the chuck", "centre": "in chuck and centre", "centres": "between centres", "bar": "as a boring bar"}[q.how]
	return b, fmt.Sprintf("%s mm of %s %s", strings.Join(steps, ", "), name, where), nil
}

// stepped reads 20x60.
func (q *bent) stepped(b *rigid.Bar, steps []string, bore float64) error {
	if len(steps) > 100 {
		return fmt.Errorf("--steps wants 1 to 100 steps, not %d", len(steps))
	}
	for n, s := range steps {
		d, l, ok := strings.Cut(s, "x")
		one, err := q.size(d)
		two, err2 := q.size(l)
		if !ok || err != nil || err2 != nil || !(one >= 0.1 && one <= 1e4 && two >= 0.1 && two <= 1e5) {
			return fmt.Errorf("--steps %s: each wants diameter x length, from 0.1 to 10000 and 100000 mm, as in 20x60", quoted(s))
		}
		if !(bore < one) {
			return fmt.Errorf("--bore must lie from 0 to under each diameter, not %s in %s mm", millimetres(bore), millimetres(one))
		}
		b.Parts = append(b.Parts, rigid.Round(two, one, bore))
		steps[n] = millimetres(one) + "x" + millimetres(two)
	}
	return nil
}

func (q *bent) size(s string) (float64, error) {
	return drawing.ParseLength(strings.TrimSpace(s), q.Units)
}

func (q *bent) mill() (rigid.Bar, string, error) {
	flutes, ok := q.Length("flutes")
	if !ok {
		flutes = q.l
	}
	shank, ok := q.Length("shank")
	if !ok {
		shank = q.d
	}
	b, err := rigid.EndMill(q.d, flutes, shank, q.l, q.stuff.Young)
	q.source("fluted part as a plain bar of 0.8 of its diameter: L. Kops, D. T. Vo, CIRP Annals 39 (1990), abstract")
	q.step("Flutes bend like a bar of %s x %s = %s mm.", plain(rigid.FluteCore), millimetres(q.d), millimetres(rigid.FluteCore*q.d))
	return b, fmt.Sprintf("End mill %s mm of %s, %s mm out", millimetres(q.d), q.stuff.Name, millimetres(q.l)), err
}

// travel shows the way under the force as it travels along turned work.
func (q *bent) travel(b rigid.Bar) {
	if q.how == "mill" || q.how == "bar" {
		return
	}
	t := Table{Title: "As the tool travels", Head: []Column{right("at mm"), right("gives µm"), right("on diameter µm")}}
	for k := range 9 {
		x := b.Length() * float64(k) / 8
		got, err := b.Under(rigid.Load{At: x, Force: q.force}, x)
		if err != nil {
			return
		}
		way := handbook.Band{Lo: math.Max(0, got.Way.Lo), Hi: math.Max(0, got.Way.Hi)}
		t.Rows = append(t.Rows, []string{millimetres(x), micro(way), micro(way.Times(2))})
	}
	q.out.Tables = append(q.out.Tables, t)
}

// slender compares with what is usual.
func (q *bent) slender(b rigid.Bar) error {
	what := map[string]string{"chuck": "work in the chuck", "centre": "work in chuck and tailstock", "centres": "work between centres"}[q.how]
	if q.how == "bar" || q.how == "mill" {
		what = q.stuff.Name + map[string]string{"bar": " boring bar", "mill": " end mill"}[q.how]
	}
	r, ok := handbook.Slender(what)
	if !ok || !q.isD {
		return nil
	}
	ratio, v, err := rigid.Slender(r, b.Length(), q.d)
	if err != nil {
		return err
	}
	verdict := "not more than is usual"
	switch v {
	case rigid.Beyond:
		verdict = "more than is usual: support it, or reach less far"
	case rigid.Never:
		verdict = "more than anybody of the sources goes: support it, or reach less far"
	}
	q.say("It reaches %s times its %s, %s (%s).", round(ratio, 2), r.By, verdict, plain(r.Limit))
	q.source("usual reach, " + what + ": " + plain(r.Limit) + " times; " + r.Source)
	q.value("reach", ratio, "", "worked out")
	return nil
}

// shares compares with a tolerance.
func (q *bent) shares(way handbook.Band) error {
	tolerance, ok := q.Length("tolerance")
	if !ok {
		return nil
	}
	s, err := rigid.Share(way, q.double, tolerance)
	if err != nil {
		return err
	}
	q.out.No = s.Lo > 1
	of := "on size"
	if q.double {
		of = "on diameter"
	}
	q.say("That takes %s of the tolerance of %s %s.", percents(s), q.Says(tolerance), of)
	q.band("share of the tolerance", s.Times(100), "%", "worked out")
	return nil
}

func (q *bent) wall() error {
	w := rigid.Wall{Ends: q.Yes("ends"), AtEnd: q.Yes("corner"), Length: q.l}
	var ok, ok2 bool
	w.Height, ok = q.Length("height")
	w.Thickness, ok2 = q.Length("thick")
	if !ok || !ok2 || !q.isL {
		return fmt.Errorf("wall wants --length, --height and --thick")
	}
	if !q.stuff.Poisson.Known() {
		return fmt.Errorf("the Poisson's ratio of %s is not known here", q.stuff.Name)
	}
	f, err := w.Figure()
	if err != nil {
		return err
	}
	way, err := w.Under(q.force, q.stuff)
	if err != nil {
		return err
	}
	held, where := "along its foot", "the middle"
	if w.Ends {
		held = "along its foot and both ends"
	}
	if w.AtEnd {
		where = "an end"
	}
	q.say("A wall %s x %s x %s mm of %s held %s: %s N at %s of its free edge push it away by %s µm.", millimetres(w.Length), millimetres(w.Height), millimetres(w.Thickness), q.stuff.Name, held, three(q.force), where, micro(way))
	if !w.Ends && !w.AtEnd {
		w.AtEnd = true
		if end, err := w.Under(q.force, q.stuff); err == nil {
			q.say("At an end of the edge the same force gives %s µm.", micro(end))
			q.band("gives at an end", end.Times(1000), "µm", "worked out")
		}
	}
	q.step("Plate stiffness D = E t³ / (12 (1 - v²)), E = %s MPa, v = %s.", thirds(q.stuff.Young), thirds(q.stuff.Poisson))
	q.step("f P H² / D, with f = %s for a length of %s heights.", thirds(f), round(w.Length/w.Height, 2))
	q.source("figure f: finite elements (shells), kept with the project; the long wall agrees with 0.168 of T. H. MacGregor 1935 (from memory); the band holds thickness to a tenth of the height, Poisson's ratio 0.25 to 0.34 and the mesh")
	q.band("gives", way.Times(1000), "µm", "worked out")
	q.out.Caution = "What the wall stands on gives way too and was taken as rigid. A wall that springs is cut too thick at its edge and can be caught by the cutter."
	return q.shares(way)
}

func (q *bent) whirl() error {
	if !q.isD || !q.isL {
		return fmt.Errorf("whirl wants --diameter and --length of the tail")
	}
	if !(q.stuff.Density > 0) {
		return fmt.Errorf("the density of %s is not known here", q.stuff.Name)
	}
	bore, _ := q.Length("bore")
	n, err := rigid.Whirl(q.l, q.d, bore, q.stuff.Young, q.stuff.Density)
	if err != nil {
		return err
	}
	share, ok := q.Number("share")
	if !ok {
		share = rigid.UsualWhirl * 100
		q.source("40 % of it, and a support for every tail over 300 mm: common practice")
	}
	most := n.Times(share / 100)
	q.say("A tail of %s mm, %s mm out of its last support, of %s first whirls at %s rev/min.", millimetres(q.d), millimetres(q.l), q.stuff.Name, thirds(n))
	q.say("%s %% of that is %s rev/min.", plain(share), thirds(most))
	q.step("q² x sqrt(E / density) x sqrt(d² + bore²) / 4 / length² x 30 / pi, q = 1.8751; E = %s MPa, density %s kg/m³.", thirds(q.stuff.Young), plain(q.stuff.Density))
	q.source("first swing of a clamped bar, theory of beams; a bar of 6.35 mm with about 610 mm out was reported bent at 800 rev/min, where this gives 723 to 741")
	q.band("first whirl", n, "rev/min", "worked out")
	q.band("limit", most, "rev/min", "worked out")
	if revs, ok := q.Number("revs"); ok {
		switch {
		case revs > most.Hi:
			q.out.No = true
			q.say("%s rev/min is above that: saw the bar shorter, or support its tail.", plain(revs))
		case revs > most.Lo:
			q.say("Whether %s rev/min is above that depends on the bar: support its tail.", plain(revs))
		default:
			q.say("%s rev/min is not above that.", plain(revs))
		}
	}
	if q.l > rigid.LongTail {
		q.say("A tail over %d mm wants a support whatever the speed.", rigid.LongTail)
	}
	q.out.Caution = "A bar that whirls out of a headstock bends in an instant and flails: people have been killed by it. Support the tail with a bush or stand, begin at the slowest speed, keep everybody away from it, and follow the lathe's manual. A tail that is bent, or loose in its last support, whirls sooner than this."
	return nil
}
