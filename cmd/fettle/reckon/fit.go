package reckon

import (
	"fmt"
	"regexp"
	"strings"

	"fettle/eval/reckon/fit"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Subject{
	Name:  "fit",
	Title: "limits and play of a class or pair of ISO 286; the mate to make",
	Words: []Want{{Name: "SIZE", Kind: Text, Needed: true, Rest: true,
		Says: "nominal size and pair, 12 H7/p6, or one class, 30 g6; over 0 to 500 mm"}},
	Flags: []Want{
		{Name: "hole", Kind: Length, Least: 0.001, Most: 600, Says: "the hole as it was measured"},
		{Name: "shaft", Kind: Length, Least: 0.001, Most: 600, Says: "the shaft as it was measured"},
		{Name: "least-play", Kind: Number, Least: -100, Most: 100, Says: "mm, with one class: the mate's classes nearest to a wanted play; below 0 is interference"},
		{Name: "most-play", Kind: Number, Least: -100, Most: 100, Says: "mm, with --least-play"},
	},
	Examples: [][]string{{"12 H7/p6"}, {"30 g6"}, {"12 H7/g6", "--hole", "12.008"}, {"1/2 in H8/f7"}, {"12 H7", "--least-play", "0.01", "--most-play", "0.04"}},
	No:       "a measured part lies outside its limits, or two of them outside the play of the fit",
	Answer:   answerFit,
})

// fitted is a fit as it was asked for: a side without a class was not asked about.
type fitted struct {
	Ask
	nominal     float64
	hole, shaft side
	make        side // the mate of a measured part; without a name: none
	out         Answer
}

// side is one part of a pair.
type side struct {
	name     string // "hole", "shaft"
	class    string // "" none asked for
	dev      [2]float64
	lo, hi   float64 // limits of size
	measured float64 // 0: not measured
}

// tightest is the size that makes the least play: the measured one, else the least hole or the
// greatest shaft; 0 where nothing is known.
func (s side) tightest() float64 {
	switch {
	case s.measured != 0:
		return s.measured
	case s.name == "hole":
		return s.lo
	}
	return s.hi
}

var pairAtEnd = regexp.MustCompile(`^(.*?)\s*([A-Za-z]+[0-9]+\s*/\s*[A-Za-z]+[0-9]+)$`)

func answerFit(a Ask) (Answer, error) {
	f := fitted{Ask: a, hole: side{name: "hole"}, shaft: side{name: "shaft"}}
	if err := f.read(a.Text("SIZE")); err != nil {
		return Answer{}, err
	}
	for _, s := range []*side{&f.hole, &f.shaft} {
		s.measured, _ = a.Length(s.name)
		if err := f.limits(s); err != nil {
			return Answer{}, err
		}
	}
	if f.hole.class != "" && f.shaft.class != "" {
		f.pair()
	} else {
		f.single()
	}
	f.table()
	if err := f.near(); err != nil {
		return Answer{}, err
	}
	f.out.Sources = append(f.out.Sources, "ISO 286-1, tables of standard tolerances and fundamental deviations, as the handbook's tables hold them")
	f.out.Caution = caution(f)
	return f.out, nil
}

// read takes the size and its classes apart.
func (f *fitted) read(words string) error {
	if m := pairAtEnd.FindStringSubmatch(words); m != nil {
		hole, shaft, err := fit.ParsePair(m[2])
		if err != nil {
			return err
		}
		f.hole.class, f.shaft.class = hole, shaft
		f.nominal, err = drawing.ParseLength(m[1], f.Units)
		return err
	}
	s, err := drawing.ParseSize(words, f.Units)
	if err != nil {
		return err
	}
	if s.Tol.Kind != drawing.Class {
		return fmt.Errorf("%s names no class of ISO 286: write the size and the pair, as in 12 H7/p6, or one class, as in 30 g6", quoted(words))
	}
	f.nominal = s.Nominal
	if fit.IsHole(s.Tol.Letters) {
		f.hole.class = s.Tol.Letters
	} else {
		f.shaft.class = s.Tol.Letters
	}
	return nil
}

// farOff is how far a measured size may lie from the nominal one: a tenth of it, and half a
// millimetre at least. Beyond that it is a slip of the keyboard, or in another unit.
func farOff(nominal float64) float64 { return max(nominal/10, 0.5) }

// limits works out one side and its steps.
func (f *fitted) limits(s *side) error {
	if s.measured != 0 && (s.measured < f.nominal-farOff(f.nominal) || s.measured > f.nominal+farOff(f.nominal)) {
		return fmt.Errorf("--%s %s is %s mm, which cannot be meant for a size of %s mm: from %s to %s mm is", s.name, quoted(f.Written(s.name)),
			millimetres(s.measured), millimetres(f.nominal), millimetres(max(f.nominal-farOff(f.nominal), 0)), millimetres(f.nominal+farOff(f.nominal)))
	}
	if s.class == "" {
		return nil
	}
	lo, hi, err := fit.Limits(handbook.ISO286(), f.nominal, s.class)
	if err != nil {
		return err
	}
	s.dev, s.lo, s.hi = [2]float64{lo, hi}, f.nominal+lo, f.nominal+hi
	f.step("%s at %s mm: the tables give deviations of %s and %s mm, %s mm apart.", s.class, millimetres(f.nominal), signed(lo), signed(hi), millimetres(hi-lo))
	f.step("%s: least %s, greatest %s mm.", capital(s.name), sum(f.nominal, lo), sum(f.nominal, hi))
	f.value(s.name+" least", s.lo, "ISO 286-1, "+s.class)
	f.value(s.name+" greatest", s.hi, "ISO 286-1, "+s.class)
	return nil
}

func (f *fitted) step(format string, args ...any) {
	f.out.Steps = append(f.out.Steps, fmt.Sprintf(format, args...))
}
func (f *fitted) say(format string, args ...any) {
	f.out.Says = append(f.out.Says, fmt.Sprintf(format, args...))
}
func (f *fitted) value(name string, mm float64, from string) {
	f.out.Values = append(f.out.Values, figure(name, mm, "mm", from))
}

// sum writes an addition with its figures: "12 + 0.018 = 12.018".
func sum(a, b float64) string {
	sign := "+"
	if b < 0 {
		sign = "-"
	}
	return fmt.Sprintf("%s %s %s = %s", millimetres(a), sign, strings.TrimPrefix(millimetres(b), "-"), millimetres(a+b))
}

// less writes a subtraction with its figures.
func less(a, b float64) string {
	return fmt.Sprintf("%s - %s = %s", millimetres(a), millimetres(b), millimetres(a-b))
}

func capital(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// pair answers for a hole and a shaft.
func (f *fitted) pair() {
	least, most := fit.Play(f.hole.lo, f.hole.hi, f.shaft.lo, f.shaft.hi)
	kind := fit.KindOf(least, most)
	f.step("Least play = least hole less greatest shaft: %s mm.", less(f.hole.lo, f.shaft.hi))
	f.step("Most play = greatest hole less least shaft: %s mm.", less(f.hole.hi, f.shaft.lo))
	f.value("play least", least, "worked out")
	f.value("play most", most, "worked out")
	f.out.Values = append(f.out.Values, word("kind", kind.String(), "ISO 286-1, 3.3"))
	f.out.Sources = append(f.out.Sources, "ISO 286-1, 3.3, for the kinds of fit: a least play of nought is still clearance, a most of nought interference")
	promise := fmt.Sprintf("%s is %s fit: %s.", f.name(), article(kind), f.plays(least, most))
	switch h, s := f.hole.measured, f.shaft.measured; {
	case h != 0 && s != 0:
		f.both(least, most, promise)
	case h != 0:
		f.mate(f.shaft, h-most, h-least, h-(least+most)/2)
		f.say("%s", promise)
		f.step("Shaft to the measured hole: least = hole less most play: %s; greatest = hole less least play: %s mm.", less(h, most), less(h, least))
		f.inLimits(f.hole)
	case s != 0:
		f.mate(f.hole, s+least, s+most, s+(least+most)/2)
		f.say("%s", promise)
		f.step("Hole to the measured shaft: least = shaft and least play: %s; greatest = shaft and most play: %s mm.", sum(s, least), sum(s, most))
		f.inLimits(f.shaft)
	default:
		f.say("%s", promise)
	}
}

func article(k fit.Kind) string {
	if k == fit.Interference {
		return "an " + k.String()
	}
	return "a " + k.String()
}

// name is the fit as it was asked for.
func (f *fitted) name() string { return strings.Join(strings.Fields(f.Text("SIZE")), " ") }

// plays says in words what a least and a greatest clearance come to.
func (f *fitted) plays(least, most float64) string {
	switch fit.KindOf(least, most) {
	case fit.Clearance:
		return "the hole is larger by " + f.Span(least, most)
	case fit.Interference:
		return "the shaft is larger by " + f.Span(-most, -least)
	}
	return fmt.Sprintf("between %s of interference and %s of play", f.Says(-least), f.Says(most))
}

// mate says what to make for the part that was measured, so that the play is what the fit
// allows.
func (f *fitted) mate(s side, lo, hi, aim float64) {
	f.say("Make the %s %s; aim at %s, which gives the fit's mean play.", s.name, f.Span(lo, hi), f.Says(aim))
	f.make = side{name: s.name + " to make", lo: lo, hi: hi}
	f.value(s.name+" to make, least", lo, "worked out")
	f.value(s.name+" to make, greatest", hi, "worked out")
	f.value(s.name+" to make, aim", aim, "worked out")
}

// both answers for two parts that were measured.
func (f *fitted) both(least, most float64, promise string) {
	h, s := f.hole.measured, f.shaft.measured
	play := h - s
	verdict := "within what the fit allows"
	if play < least-model.Same || play > most+model.Same {
		verdict, f.out.No = "not what the fit allows", true
	}
	f.say("These two have a play of %s, %s.", f.Says(play), verdict)
	f.say("%s", promise)
	f.step("Play of the measured parts: %s mm; the fit allows %s to %s mm.", less(h, s), millimetres(least), millimetres(most))
	f.value("play measured", play, "--hole, --shaft")
	f.inLimits(f.hole)
	f.inLimits(f.shaft)
}

// inLimits compares a measured part with its own limits; both ends are in.
func (f *fitted) inLimits(s side) {
	switch {
	case s.measured < s.lo-model.Same:
		f.out.No = true
		f.say("The %s of %s lies %s below its least %s of %s.", s.name, f.Says(s.measured), f.Says(s.lo-s.measured), s.class, f.Says(s.lo))
	case s.measured > s.hi+model.Same:
		f.out.No = true
		f.say("The %s of %s lies %s above its greatest %s of %s.", s.name, f.Says(s.measured), f.Says(s.measured-s.hi), s.class, f.Says(s.hi))
	default:
		f.say("The %s of %s lies within its own limits, %s.", s.name, f.Says(s.measured), s.class)
	}
}

// single answers for one class.
func (f *fitted) single() {
	own, other := f.hole, f.shaft
	if own.class == "" {
		own, other = other, own
	}
	f.say("%s: the %s is %s.", f.name(), own.name, f.Span(own.lo, own.hi))
	if own.measured != 0 {
		f.inLimits(own)
	}
	if other.measured == 0 {
		return
	}
	least, most := fit.Play(f.hole.lo, f.hole.hi, other.measured, other.measured)
	if own.name == "shaft" {
		least, most = fit.Play(other.measured, other.measured, f.shaft.lo, f.shaft.hi)
	}
	f.say("With the measured %s of %s it makes %s fit: %s.", other.name, f.Says(other.measured), article(fit.KindOf(least, most)), f.plays(least, most))
	f.step("Play against the measured %s: least %s, most %s mm.", other.name, millimetres(least), millimetres(most))
	f.value("play least", least, "worked out")
	f.value("play most", most, "worked out")
}

// table shows the limits of size in both units.
func (f *fitted) table() {
	t := Table{Head: []Column{left(""), left("class"), right("least mm"), right("greatest mm"), right("least in"), right("greatest in")}}
	for _, s := range []side{f.hole, f.shaft, f.make} {
		if s.hi != 0 {
			t.Rows = append(t.Rows, []string{s.name, s.class, millimetres(s.lo), millimetres(s.hi), inches(s.lo), inches(s.hi)})
		}
	}
	f.out.Tables = append(f.out.Tables, t)
}

func caution(f fitted) string {
	const cool = "Sizes of ISO 286 hold at 20 °C (ISO 1): measure when the part has cooled."
	pair := f.hole.class != "" && f.shaft.class != ""
	if pair && f.shaft.hi > f.hole.lo+model.Same || f.shaft.tightest() > f.hole.tightest()+model.Same && f.hole.tightest() != 0 {
		return "Parts that are pressed together can spring out or burst; keep out of their line, wear eye protection and follow the manual of the press. " + cool
	}
	return cool
}
