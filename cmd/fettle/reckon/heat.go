package reckon

import (
	"cmp"
	"fmt"
	"math"

	"fettle/eval/reckon/heat"
	"fettle/schema/handbook"
)

var _ = enter(Subject{
	Name:  "heat",
	Title: "growth by warmth, readings taken warm, heat to shrink a hub on",
	Flags: []Want{
		{Name: "length", Kind: Length, Least: 0.001, Most: 1e5, Says: "of the part: its size, or what was read where --reading is said"},
		{Name: "material", Kind: Text, Says: "of the part, as brass, mild steel, 6082"},
		{Name: "expansion", Kind: Number, Least: 0.1, Most: 1000, Says: "of the part, millionths a degree, in place of the handbook's"},
		{Name: "at", Kind: Number, Least: -200, Most: 1600, Says: "temperature of the part, °C"},
		{Name: "from", Kind: Number, Least: -200, Most: 1600, Says: "temperature from which it grows, °C (left out: 20)"},
		{Name: "instrument", Kind: Text, Says: "metal of what it is measured with (left out: mild steel)"},
		{Name: "instrument-expansion", Kind: Number, Least: 0.1, Most: 1000, Says: "of the instrument, millionths a degree"},
		{Name: "instrument-at", Kind: Number, Least: -200, Most: 1600, Says: "temperature of the instrument, °C (left out: 20)"},
		{Name: "reading", Kind: YesNo, Says: "--length is what the instrument read: what is it at 20 °C?"},
		{Name: "tolerance", Kind: Length, Least: 0.0001, Most: 1000, Says: "does the misreading matter against it?"},
		{Name: "diameter", Kind: Length, Least: 0.1, Most: 1e4, Says: "of a shrink fit, the face where both meet; wants --interference, --hub and --shaft"},
		{Name: "interference", Kind: Lengths, Least: 0, Most: 100, Says: "on DIAMETER, shaft less bore: one, or least and most"},
		{Name: "gap", Kind: Length, Least: 0, Most: 100, Says: "on diameter, to put it together in (left out: a thousandth of the diameter)"},
		{Name: "hub", Kind: Text, Says: "metal of the hub"},
		{Name: "shaft", Kind: Text, Says: "metal of the shaft"},
		{Name: "hub-expansion", Kind: Number, Least: 0.1, Most: 1000, Says: "millionths a degree, in place of the handbook's"},
		{Name: "shaft-expansion", Kind: Number, Least: 0.1, Most: 1000, Says: "the same of the shaft"},
		{Name: "hub-at", Kind: Number, Least: -200, Most: 1600, Says: "temperature of the hub while the shaft is cooled, or of both at work, °C (left out: 20)"},
		{Name: "shaft-at", Kind: Number, Least: -200, Most: 1600, Says: "temperature of the shaft while the hub is heated, °C (left out: 20)"},
	},
	Examples: [][]string{{"--length", "100", "--material", "brass", "--at", "23", "--tolerance", "0.05"}, {"--diameter", "40", "--interference", "0.03", "--hub", "EN8", "--shaft", "EN8"}},
	No:       "the misreading takes more than a third of the tolerance, or no heat of a workshop opens the hub",
	Answer:   answerHeat,
})

const shrinkCaution = "Hot parts burn, set fire to oil and look cold; heat takes temper, plating and glue with it, and aluminium loses strength from about 150 °C, hardened steel temper from about 150 to 200 °C (from memory). What it does to your parts was not checked. Liquid gas and dry ice freeze flesh and drive out the air: follow the supplier. Have tongs and a stop ready, heat evenly, keep out of the line of a press, and never pour water on it."

func answerHeat(a Ask) (Answer, error) {
	q := talk{Ask: a}
	length, isLength := a.Length("length")
	_, isFit := a.Length("diameter")
	var err error
	switch {
	case isLength == isFit:
		err = fmt.Errorf("heat wants --length of a part, or --diameter of a shrink fit, one of them")
	case isFit:
		err = q.shrink()
	default:
		err = q.warm(length)
	}
	return q.out, err
}

// body reads a metal with its temperature; usual is its name where none is given, "" for none.
func (q *talk) body(metal, expansion, at, usual string) (heat.Body, string, error) {
	m, ok, err := q.metal(metal)
	if err != nil {
		return heat.Body{}, "", err
	}
	if !ok && usual != "" {
		m, _ = handbook.ElasticOf(usual)
	}
	e, name, from := m.Expansion, m.Name, m.Name
	q.over(&e, expansion, 1e-6)
	if _, own := q.Number(expansion); own {
		name, from = "that expansion", "--"+expansion
	} else {
		q.source(about(m))
	}
	if !e.Known() {
		return heat.Body{}, "", fmt.Errorf("heat wants --%s or --%s", metal, expansion)
	}
	t, ok := q.Number(at)
	if !ok {
		t = heat.Reference
	}
	q.band("expansion of "+metal, e.Times(1e6), "1e-6/K", from)
	return heat.Body{Expansion: e, At: t}, name, nil
}

// warm answers for one part.
func (q *talk) warm(length float64) error {
	if _, ok := q.Number("at"); !ok {
		return fmt.Errorf("heat wants --at, the temperature of the part, from -200 to 1600 °C")
	}
	work, name, err := q.body("material", "expansion", "at", "")
	if err != nil {
		return err
	}
	gauge, of, err := q.body("instrument", "instrument-expansion", "instrument-at", "mild steel")
	if err != nil {
		return err
	}
	q.source("growth a L dT: D. A. Swyt, J. Res. NIST 99 (1994) 31; 20 °C: ISO 1:2016")
	from, ok := q.Number("from")
	if !ok {
		from = heat.Reference
	}
	grown, err := heat.Growth(length, work.Expansion, from, work.At)
	off, err2 := heat.Misreading(length, work, gauge)
	true20, err3 := heat.At20(length, work, gauge)
	if err := cmp.Or(err, err2, err3); err != nil {
		return err
	}
	q.say("%s of %s from %s to %s °C: %s µm (%s millionths a degree).", q.Says(length), name, plain(from), plain(work.At), growth(grown), thirds(work.Expansion.Times(1e6)))
	q.say("An instrument of %s at %s °C reads it %s µm %s than it will be at 20 °C.", of, plain(gauge.At), unsignedMicro(off), longer(off))
	if q.Yes("reading") {
		q.say("So what reads %s is %s mm at 20 °C.", q.Says(length), spread(true20, func(x float64) string { return round(x, 4) }))
	}
	q.step("Growth = length x expansion x rise: %s x %s / 10^6 x (%s - %s) = %s µm.", millimetres(length), thirds(work.Expansion.Times(1e6)), plain(work.At), plain(from), micro(grown))
	q.step("Misread = length x (part's gain - instrument's gain), counted from 20 °C: %s x (%s - %s) / 10^6 = %s µm.", millimetres(length),
		thirds(work.Expansion.Times((work.At-20)*1e6)), thirds(gauge.Expansion.Times((gauge.At-20)*1e6)), micro(off))
	q.band("growth", grown.Times(1000), "µm", "worked out")
	q.band("misreading", off.Times(1000), "µm", "worked out")
	q.band("length at 20 degrees of that reading", true20, "mm", "worked out")
	q.out.Caution = "Parts are rarely as warm inside as outside: let them lie beside the instrument until both are as the room, and hold neither longer than you must."
	return q.spoils(off)
}

func (q *talk) spoils(off handbook.Band) error {
	tolerance, ok := q.Length("tolerance")
	if !ok {
		return nil
	}
	truth, err := heat.Spoils(tolerance, off)
	if err != nil {
		return err
	}
	switch truth {
	case heat.Yes:
		q.out.No = true
		q.say("That is more than a third of the tolerance of %s: do not measure it so.", q.Says(tolerance))
	case heat.No:
		q.say("That is not more than a third of the tolerance of %s.", q.Says(tolerance))
	default:
		q.say("Whether it takes a third of the tolerance of %s depends on the bar: not known.", q.Says(tolerance))
	}
	q.step("A third of the tolerance: %s / 3 = %s µm (rule derived with the reference, no standard's).", millimetres(tolerance), three(tolerance/3*1000))
	return nil
}

func growth(b handbook.Band) string {
	if b.Hi <= 0 && b.Lo < 0 {
		return "it shrinks by " + micro(b.Times(-1))
	}
	return "it grows by " + micro(b)
}

func unsignedMicro(b handbook.Band) string {
	if b.Hi <= 0 {
		b = b.Times(-1)
	}
	return micro(b)
}

func longer(b handbook.Band) string {
	switch {
	case b.Hi <= 0 && b.Lo < 0:
		return "shorter"
	case b.Lo < 0:
		return "longer (below nought: shorter)"
	}
	return "longer"
}

// shrink answers for a hub over a shaft.
func (q *talk) shrink() error {
	j := heat.Joint{}
	j.Diameter, _ = q.Length("diameter")
	i, ok, err := q.pairOf("interference")
	if err != nil {
		return err
	}
	if !ok || !(i.Lo > 0) {
		return fmt.Errorf("a shrink fit wants --interference over 0 mm, on diameter")
	}
	j.Interference = i
	var hub, shaft string
	if j.Hub, hub, err = q.body("hub", "hub-expansion", "hub-at", ""); err != nil {
		return err
	}
	if j.Shaft, shaft, err = q.body("shaft", "shaft-expansion", "shaft-at", ""); err != nil {
		return err
	}
	gap, ok := q.Length("gap")
	if !ok {
		gap = j.Diameter / 1000
		q.source("a gap of a thousandth of the diameter for putting together: common practice")
	}
	q.source("dT = (interference + gap) / (expansion x diameter of the common face), not of the outside: S. S. Bhavikatti, Strength of Materials, 8.8.17, whose printed figure divides by another diameter and is wrong")
	q.source("20 °C: ISO 1:2016")
	q.out.Caution = shrinkCaution
	return q.shrunk(j, gap, hub, shaft)
}

func (q *talk) shrunk(j heat.Joint, gap float64, hub, shaft string) error {
	at, err := heat.HubAt(j, gap)
	lower := at.Lo > 1600 || at.Lo < -200
	if err != nil && at == (handbook.Band{}) {
		return err
	}
	need := handbook.Band{Lo: j.Interference.Lo + gap, Hi: j.Interference.Hi + gap}
	if err != nil && lower {
		q.out.No = true
		q.say("No: %v.", err)
	} else {
		q.say("Heat the hub to %s °C: at %s °C it goes on with a gap of %s on diameter whatever the bar.", spread(at, degrees), degrees(math.Ceil(at.Hi)), q.Says(gap))
	}
	q.step("Opening wanted = interference + gap = %s mm at 20 °C, of %s mm: %s thousandths.", spread(need, millimetres), millimetres(j.Diameter), thirds(need.Times(1000/j.Diameter)))
	q.step("Hub (%s) grows %s millionths a degree, shaft (%s) at %s °C has gained %s millionths.", hub, thirds(j.Hub.Expansion.Times(1e6)), shaft, plain(j.Shaft.At), thirds(j.Shaft.Expansion.Times((j.Shaft.At-20)*1e6)))
	q.band("hub at", at, "°C", "worked out")
	if cold, err := heat.ShaftAt(j, gap); err == nil {
		q.say("Or cool the shaft to %s °C, the hub at %s °C.", spread(cold, degrees), plain(j.Hub.At))
		q.band("shaft at", cold, "°C", "worked out")
	} else {
		q.say("Cooling the shaft alone does not do it: it would have to be colder than -200 °C.")
	}
	loose, ok, err := heat.LooseAt(j)
	switch {
	case err != nil:
		return err
	case ok:
		q.say("With both equally warm or cold the interference is gone at %s °C.", spread(loose, degrees))
		q.band("loose at", loose, "°C", "worked out")
	case hub == shaft && hub != "that expansion":
		q.say("Hub and shaft of one metal, equally warm, do not come loose.")
	default:
		q.say("Whether they come loose when both are equally warm depends on the bars, or never happens: the bands of the two metals overlap, or lie too near.")
	}
	return nil
}
