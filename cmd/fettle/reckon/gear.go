package reckon

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"fettle/eval/reckon/gear"
	"fettle/schema/model"
)

var _ = enter(Subject{
	Name:  "gear",
	Title: "wheels: blank, depth, cutter, pair, span, pins; worm, bevel",
	Words: []Want{{Name: "TEETH", Kind: Wholes, Most: 10000, Least: 1,
		Says: "of one wheel, 30, or of a pair, 20,60; of a worm the starts stand first"}},
	Flags: []Want{
		{Name: "module", Kind: Number, Least: 0.02, Most: 100, Says: "normal module in mm, of a worm axial"},
		{Name: "dp", Kind: Number, Least: 0.254, Most: 1270, Says: "diametral pitch, instead of --module"},
		{Name: "pressure", Kind: Angle, Least: 10, Most: 35, Says: "pressure angle (left out: 20 degrees, and the answer says so)"},
		{Name: "helix", Kind: Angle, Least: 0, Most: 75, Says: "helix angle at the pitch circle"},
		{Name: "shift", Kind: Number, Least: -2, Most: 2, Says: "profile shift of the first wheel, modules"},
		{Name: "mate-shift", Kind: Number, Least: -2, Most: 2, Says: "profile shift of the second"},
		{Name: "depth", Kind: OneOf, Of: depthNames(), Says: "how deep the teeth are (left out: 2.157 at 14.5 degrees, else 2.25)"},
		{Name: "internal", Kind: YesNo, Says: "the only or the second wheel has its teeth inside"},
		{Name: "centre", Kind: Length, Least: 0.1, Most: 1e5, Says: "centre distance that is there"},
		{Name: "ratio", Kind: Number, Least: 1, Most: 1000, Says: "with --centre and no TEETH: the pairs that come near"},
		{Name: "backlash", Kind: Length, Least: 0, Most: 10, Says: "taken off the tooth of a wheel, or half off each of a pair, along the pitch circle square to the teeth"},
		{Name: "slack", Kind: Length, Least: 0, Most: 10, Says: "how much thinner still each tooth may be: limits of span and pins"},
		{Name: "span", Kind: Whole, Most: 10000, Least: 1, Says: "teeth to measure over (left out: the best number)"},
		{Name: "pin", Kind: Length, Least: 0.01, Most: 400, Says: "pins to measure over (left out: of the trade's list)"},
		{Name: "over-span", Kind: Length, Least: 0.01, Most: 1e5, Says: "what the span measures now: how much to cut yet"},
		{Name: "over-pins", Kind: Length, Least: 0.01, Most: 1e5, Says: "what the pins measure now: how much to cut yet"},
		{Name: "cutter", Kind: Length, Least: 1, Most: 1000, Says: "diameter of the disc cutter: how far it runs out (left out: that of the shop's first cutter that serves)"},
		{Name: "tip", Kind: Length, Least: 0.5, Most: 1e5, Says: "measured tip diameter of a wheel: which pitch it may have"},
		{Name: "worm", Kind: Length, Least: 0.1, Most: 5000, Says: "pitch diameter of the worm; TEETH are its starts and the wheel's teeth"},
		{Name: "bevel", Kind: YesNo, Says: "straight bevel wheels"},
		{Name: "shaft", Kind: Angle, Least: 10, Most: 170, Says: "angle between bevel shafts (left out: 90)"},
		{Name: "long", Kind: YesNo, Says: "bevel with long and short addenda"},
		{Name: "face", Kind: Length, Least: 0, Most: 5000, Says: "width of a bevel tooth or of a worm wheel's rim"},
	},
	Examples: [][]string{{"30", "--module", "1"}, {"20,60", "--dp", "16", "--pressure", "14.5", "--backlash", "0.003 in"},
		{"12,24", "--module", "3", "--shift", "0.6", "--mate-shift", "0.36"}, {"2,30", "--module", "3", "--worm", "44"},
		{"20,40", "--module", "3", "--bevel"}, {"24", "--tip", "3.25 in"}, {"--centre", "120", "--ratio", "3", "--module", "2.5"}},
	No:     "no cutter of the shop serves, or the wheels jam, foul or lose touch",
	Answer: answerGear,
})

func depthNames() []string {
	var out []string
	for _, d := range gear.Depths() {
		out = append(out, d.Name)
	}
	return out
}

// geared is a question about wheels and the answer as it grows.
type geared struct {
	Ask
	teeth []int
	m     float64 // module, mm
	angle float64 // pressure angle, degrees
	depth gear.Depth
	disc  float64 // diameter of the shop's cutter that serves, mm; 0: none, or not known
	out   Answer
}

func (g *geared) say(format string, args ...any) {
	g.out.Says = append(g.out.Says, fmt.Sprintf(format, args...))
}
func (g *geared) step(format string, args ...any) {
	g.out.Steps = append(g.out.Steps, fmt.Sprintf(format, args...))
}
func (g *geared) value(name string, x float64, unit, from string) {
	g.out.Values = append(g.out.Values, figure(name, x, unit, from))
}
func (g *geared) source(s string) {
	if !slices.Contains(g.out.Sources, s) {
		g.out.Sources = append(g.out.Sources, s)
	}
}

// given says whether a flag was given.
func (g *geared) given(flag string) bool { return g.Written(flag) != "" }

// only refuses flags that have nothing to say of what is asked.
func (g *geared) only(of string, flags ...string) error {
	for _, w := range g.of.Flags {
		if g.given(w.Name) && !slices.Contains(flags, w.Name) {
			return fmt.Errorf("--%s says nothing of %s", w.Name, of)
		}
	}
	return nil
}

// wants holds the count of TEETH.
func (g *geared) wants(n int, what string) error {
	if len(g.teeth) != n {
		return fmt.Errorf("TEETH wants %s; %d were given", what, len(g.teeth))
	}
	return nil
}

const gearCaution = "Clamp blank and cutter as the manuals of machine and dividing head say, keep hands off a turning cutter, and guard wheels that run."

func answerGear(a Ask) (Answer, error) {
	g := &geared{Ask: a}
	g.teeth, _ = a.Wholes("TEETH")
	var err error
	switch {
	case g.given("tip"):
		err = g.find()
	case g.given("ratio"):
		err = g.pairs()
	case g.given("worm"):
		err = g.worm()
	case g.Yes("bevel"):
		err = g.bevel()
	default:
		err = g.wheels()
	}
	return g.out, err
}

// pitch reads module or diametral pitch, angle and depth, and says what was taken for granted.
func (g *geared) pitch() error {
	m, isModule := g.Number("module")
	dp, isDP := g.Number("dp")
	switch {
	case isModule && isDP:
		return errors.New("--module and --dp are two words for one thing: say one of them")
	case isDP:
		m = gear.Module(dp)
		g.step("Module = 25.4 / DP = 25.4 / %s = %s mm.", round(dp, 4), round(m, 6))
	case !isModule:
		return errors.New("gear wants the pitch: --module or --dp")
	}
	g.m = m
	from := "--module"
	if isDP {
		from = "--dp"
	}
	g.value("module", m, "mm", from)
	var ok bool
	from = "--pressure"
	if g.angle, ok = g.Angle("pressure"); !ok {
		g.angle, from = 20, "taken, none was given"
		g.step("No pressure angle was given: 20 degrees is taken. The cutter and the mate must have the same.")
	}
	g.depth = gear.UsualDepth(g.angle)
	for _, d := range gear.Depths() {
		if d.Name == g.Text("depth") {
			g.depth = d
		}
	}
	g.source(g.depth.Source)
	g.value("pressure angle", g.angle, "degrees", from)
	return nil
}

// called is the pitch in the words it was asked for in.
func (g *geared) called() string {
	if dp, ok := g.Number("dp"); ok {
		return round(dp, 4) + " DP"
	}
	return "module " + round(g.m, 4)
}

// find answers which pitch a wheel may have.
func (g *geared) find() error {
	if err := cmpErr(g.only("a wheel whose pitch is wanted", "tip"), g.wants(1, "the count of one wheel")); err != nil {
		return err
	}
	tip, _ := g.Length("tip")
	found, err := gear.FromTip(tip, g.teeth[0], 6)
	if err != nil {
		return err
	}
	best := found[0]
	g.say("%s comes nearest: a wheel of %d teeth has then a tip diameter of %s.", capital(best.Name), g.teeth[0], g.Says(best.Tip))
	g.say("Shifted, stub or worn teeth mislead this: hold the wheel against a cutter or a rack of that pitch before anything is cut.")
	t := Table{Title: "Standard pitches, nearest first", Head: []Column{left("pitch"), right("module mm"), right("tip mm"), right("measured less tip mm")}}
	for _, p := range found {
		t.Rows = append(t.Rows, []string{p.Name, round(p.Module, 5), millimetres(p.Tip), signed(p.Off)})
	}
	g.out.Tables = append(g.out.Tables, t)
	g.out.Values = append(g.out.Values, word("pitch", best.Name, "worked out"))
	g.value("module", best.Module, "mm", "worked out")
	g.value("reference diameter", best.Module*float64(g.teeth[0]), "mm", "worked out")
	g.step("Module = tip diameter / (teeth + 2) = %s / %d = %s mm, or DP = 25.4 / that = %s.", millimetres(tip), g.teeth[0]+2,
		round(tip/float64(g.teeth[0]+2), 5), round(25.4*float64(g.teeth[0]+2)/tip, 4))
	g.source("d = m (z + 2), any gear text; ISO 54 modules and the usual list of diametral pitches (from memory)")
	return nil
}

// pairs answers which wheels come to a centre distance and ratio.
func (g *geared) pairs() error {
	if err := cmpErr(g.only("a search by ratio", "ratio", "centre", "module", "dp", "pressure"),
		g.wants(0, "nothing beside --ratio")); err != nil {
		return err
	}
	centre, ok := g.Length("centre")
	if !ok {
		return errors.New("--ratio finds wheels for a centre distance: say --centre too")
	}
	if err := g.pitch(); err != nil {
		return err
	}
	ratio, _ := g.Number("ratio")
	found, err := gear.PairsFor(centre, ratio, g.m, g.angle)
	if err != nil {
		return err
	}
	best := found[0]
	g.say("%d and %d teeth of %s run at %s, with a ratio of %s.", best.Teeth[0], best.Teeth[1], g.called(), g.Says(centre-best.Off), round(best.Ratio, 5))
	if best.Off > 1e-9 || best.Off < -1e-9 {
		g.say("That is %s from the centre distance wanted: profile shift makes it up (ask again with both counts and --centre).", g.Says(math.Abs(best.Off)))
	}
	t := Table{Head: []Column{right("teeth"), right("teeth"), right("ratio"), right("centre mm"), right("off mm"), left("undercut")}}
	for _, c := range found {
		t.Rows = append(t.Rows, []string{fmt.Sprint(c.Teeth[0]), fmt.Sprint(c.Teeth[1]), round(c.Ratio, 5), millimetres(centre - c.Off), signed(c.Off), undercutWord(c.Undercut)})
	}
	g.out.Tables = append(g.out.Tables, t)
	g.step("Teeth together = 2 x centre / module = 2 x %s / %s = %s.", millimetres(centre), round(g.m, 6), round(2*centre/g.m, 4))
	g.step("First wheel = that by (1 + ratio) = %s, made whole.", round(2*centre/g.m/(1+ratio), 4))
	for i, name := range []string{"first teeth", "second teeth"} {
		g.value(name, float64(best.Teeth[i]), "", "worked out")
	}
	g.value("off", best.Off, "mm", "worked out")
	return nil
}

func undercutWord(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// cutters says which form cutter cuts a wheel of so many teeth, virtual or real.
func (g *geared) cutters(name string, teeth int) {
	var numbers []string
	for _, s := range gear.AllSeries() {
		if n, r, ok := s.Number(teeth); ok {
			numbers = append(numbers, fmt.Sprintf("no. %s of %s (%s)", round(n, 1), s.Name, r))
		}
	}
	if len(numbers) == 0 {
		g.say("%s: no cutter of the usual sets is for %d teeth; they begin at 12.", name, teeth)
	} else {
		g.say("%s: a cutter of %s, %s degrees, with %d in the range printed on it.", name, g.called(), round(g.angle, 4), teeth)
		g.step("%s, %d teeth: %s.", name, teeth, strings.Join(numbers, "; "))
	}
	g.source("sets of 8 and 15 cutters: old handbooks (ranges from memory, their ends confirmed). Series run opposite ways: the range printed on the cutter decides, not its number")
	g.owned(name, teeth)
}

// owned looks among the shop's cutters.
func (g *geared) owned(name string, teeth int) {
	if g.shop == nil {
		return
	}
	t := Table{Title: fmt.Sprintf("Gear cutters of the shop, for the %s", strings.ToLower(name)), Head: []Column{left("cutter"), left("serves"), left("why")}}
	g.disc = 0
	best := gear.No // yes before not known before no
	for _, i := range g.Things("gear_cutter") {
		var c gear.Cutter
		if v, ok := Member(i, "module"); ok {
			c.Module = v.Num
		} else if v, ok := Member(i, "diametral_pitch"); ok && v.Num > 0 {
			c.Module = gear.Module(v.Num)
		}
		if v, ok := Member(i, "pressure_angle"); ok {
			c.Pressure = v.Num
		}
		if v, ok := Member(i, "form"); ok {
			c.Form = v.Text
		}
		fit, why := gear.No, "it is a hob, which wants a machine of its own"
		if v, _ := Member(i, "kind"); v.Text != "hob" {
			switch v, _ := Member(i, "teeth"); len(v.List) {
			case 1:
				c.Teeth = gear.Range{Least: int(v.List[0].Num)} // to the rack
			case 2:
				c.Teeth = gear.Range{Least: int(v.List[0].Num), Most: int(v.List[1].Num)}
			}
			fit, why = c.Serves(g.m, g.angle, teeth)
		}
		if fit == gear.Yes || fit == gear.NotKnown && best == gear.No {
			best = fit
		}
		if v, ok := Member(i, "diameter"); ok && fit == gear.Yes && g.disc == 0 && v.Kind == model.Number {
			g.disc = v.Num
		}
		t.Rows = append(t.Rows, []string{i.Path(), fitWord[fit], why})
	}
	switch {
	case len(t.Rows) == 0:
		g.say("The shop has no gear cutter.")
	case best == gear.Yes:
		g.say("The shop has a cutter for it.")
	case best == gear.No:
		g.say("None of the shop's gear cutters serves.")
	default:
		g.say("Whether one of the shop's gear cutters serves is not known: read what is printed on it.")
	}
	g.out.No = g.out.No || best == gear.No
	if len(t.Rows) > 0 {
		g.out.Tables = append(g.out.Tables, t)
	}
}

var fitWord = map[gear.Fit]string{gear.NotKnown: "not known", gear.No: "no", gear.Yes: "yes"}
