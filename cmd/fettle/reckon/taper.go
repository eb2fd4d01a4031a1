package reckon

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"fettle/eval/reckon/taper"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Subject{
	Name:  "taper",
	Title: "set-over, top slide, sine bar, slip gauges, rollers for an angle",
	Words: []Want{{Name: "TAPER", Kind: Text, Rest: true, Says: `MT2, R8, 1:20, 16 deg 30' (included), 0.6 in/ft; left out where --ends, --plug or --ring measure one`}},
	Flags: []Want{
		{Name: "ends", Kind: Lengths, Least: 0, Most: 1e4, Says: "diameters of both ends of the cone; wants --along"},
		{Name: "along", Kind: Length, Least: 0.01, Most: 1e4, Says: "length of the cone along the axis"},
		{Name: "whole", Kind: Length, Least: 0.1, Most: 1e5, Says: "whole length of the work between centres: the set-over of the tailstock"},
		{Name: "zero", Kind: OneOf, Of: []string{"axis", "face"}, Says: "where the scale of the top slide has its nought (left out: axis)"},
		{Name: "sine", Kind: Length, Least: 10, Most: 2000, Says: "centres of a sine bar (left out: the shop's)"},
		{Name: "set", Kind: OneOf, Of: []string{"included", "half"}, Says: "what the sine bar is set to (left out: included)"},
		{Name: "slips", Kind: Text, Says: "set of slip gauges, as M88, M45, E81 (left out: the shop's)"},
		{Name: "stack", Kind: Length, Least: 0.001, Most: 1000, Says: "a height to build from slip gauges; alone, or in place of the sine bar's"},
		{Name: "wear", Kind: Length, Least: 0.1, Most: 10, Says: "of each of two wear blocks at the ends of the stack"},
		{Name: "over", Kind: Length, Least: 0.1, Most: 500, Says: "rollers, diameter, beside the plug standing on its small end; wants --small"},
		{Name: "small", Kind: Length, Least: 0.1, Most: 1e4, Says: "small end of the plug"},
		{Name: "lift", Kind: Length, Least: 0, Most: 1e4, Says: "stacks under the rollers (left out: 0)"},
		{Name: "plug", Kind: Lengths, Least: 0.1, Most: 1e4, Says: "measured: rollers, stacks, over the rollers below, and above on the stacks"},
		{Name: "ring", Kind: Lengths, Least: 0, Most: 1e4, Says: "measured: large ball, small ball, top of the large above the face, of the small below it"},
		{Name: "male", Kind: Lengths, Least: 0.1, Most: 1e4, Says: "dovetail: narrow width, rollers; TAPER is the angle of its flank to the flat"},
		{Name: "female", Kind: Lengths, Least: 0.1, Most: 1e4, Says: "dovetail: wide width, rollers; as --male"},
		{Name: "vee", Kind: Lengths, Least: 0.1, Most: 1e4, Says: "rollers that lie in a vee whose angle is TAPER: how high they stand"},
	},
	Examples: [][]string{{"MT2", "--along", "65"}, {"--ends", "20,18", "--along", "40", "--whole", "150"}, {"12 deg 34'", "--sine", "100", "--slips", "M88"},
		{"--plug", "10,60,45,51.3"}, {"60 deg", "--male", "40,10"}, {"--stack", "43.507", "--slips", "M88"}},
	No:     "the lathe of the shop can turn it in none of the ways asked for, or no stack comes to the height",
	Answer: answerTaper,
})

// coned is a taper as it was asked for.
type coned struct {
	Ask
	t     taper.Taper
	angle float64 // included, degrees, also where it is no taper; 0: none
	name  string
	along float64
	can   bool // a way of turning it does, or is not known not to
	cannot,
	asked bool // a way does not; something was answered
	out Answer
}

func answerTaper(a Ask) (Answer, error) {
	q := coned{Ask: a}
	q.along, _ = a.Length("along")
	if err := q.read(); err != nil {
		return Answer{}, err
	}
	for _, part := range []func() error{q.dovetail, q.vee, q.plain, q.turning, q.sine, q.rollers} {
		if err := part(); err != nil {
			return Answer{}, err
		}
	}
	if !q.asked {
		return Answer{}, fmt.Errorf("taper wants TAPER, or --ends with --along, --plug, --ring, or --stack")
	}
	if len(q.out.Sources) == 0 {
		q.source("plain trigonometry")
	}
	q.out.No = q.out.No || q.cannot && !q.can
	return q.out, nil
}

func (q *coned) say(format string, args ...any) {
	q.asked = true
	q.out.Says = append(q.out.Says, fmt.Sprintf(format, args...))
}
func (q *coned) step(format string, args ...any) {
	q.out.Steps = append(q.out.Steps, fmt.Sprintf(format, args...))
}
func (q *coned) value(name string, x float64, unit, from string) {
	q.out.Values = append(q.out.Values, figure(name, x, unit, from))
}
func (q *coned) source(s string) {
	if !slices.Contains(q.out.Sources, s) {
		q.out.Sources = append(q.out.Sources, s)
	}
}

// figures gives a list of so many lengths; false where the flag is not given.
func (q *coned) figures(flag string, n int) ([]float64, bool, error) {
	l, ok := q.Lengths(flag)
	if ok && len(l) != n {
		return nil, false, fmt.Errorf("--%s wants %d lengths with commas between: %s", flag, n, q.of.want(flag).Says)
	}
	return l, ok, nil
}

var perFoot = regexp.MustCompile(`^(.*?)\s*(?:in/ft|tpf|inch(?:es)? (?:per|to the|a) foot)$`)

// read finds the taper, by its name or by measuring.
func (q *coned) read() (err error) {
	ends, isEnds, err1 := q.figures("ends", 2)
	plug, isPlug, err2 := q.figures("plug", 4)
	ring, isRing, err3 := q.figures("ring", 4)
	if err := cmpErr(err1, err2, err3); err != nil {
		return err
	}
	ways := 0
	for _, is := range []bool{isEnds, isPlug, isRing, q.Text("TAPER") != ""} {
		if is {
			ways++
		}
	}
	if ways > 1 {
		return fmt.Errorf("TAPER, --ends, --plug and --ring each say the taper: give one of them")
	}
	switch {
	case isEnds && q.along == 0:
		return fmt.Errorf("--ends wants --along, the length between them")
	case isEnds:
		q.t, err = taper.Ends(ends[0], ends[1], q.along)
		q.name = fmt.Sprintf("From %s to %s mm in %s mm", millimetres(ends[0]), millimetres(ends[1]), millimetres(q.along))
		q.step("Taper on diameter: (%s - %s) / %s = %s.", millimetres(max(ends[0], ends[1])), millimetres(min(ends[0], ends[1])), millimetres(q.along), round(q.t.Ratio(), 6))
	case isPlug:
		err = q.plug(taper.Plug{Roller: plug[0], Lifted: plug[1], Below: plug[2], Above: plug[3]})
	case isRing:
		err = q.ring(taper.Ring{Large: ring[0], Small: ring[1], Proud: ring[2], Deep: ring[3]})
	case ways == 1:
		err = q.named(q.Text("TAPER"))
	}
	if q.angle == 0 {
		q.angle = q.t.Included()
	}
	return err
}

// named reads a taper as it is written.
func (q *coned) named(words string) (err error) {
	q.name = strings.Join(strings.Fields(words), " ")
	if m := perFoot.FindStringSubmatch(words); m != nil {
		in, err := pure(strings.TrimSpace(m[1]))
		if err != nil {
			return err
		}
		x, _ := in.Float64()
		q.t, err = taper.PerFoot(x)
		return err
	}
	if t, err := drawing.ParseTaper(words); err == nil {
		return q.standard(t)
	}
	deg, err := drawing.ParseAngle(words)
	if err != nil {
		return fmt.Errorf("%s is neither a taper, such as MT2, 1:20 or 0.6 in/ft, nor an included angle, such as 16 deg 30'", quoted(words))
	}
	q.angle = deg
	q.t, err = taper.Included(deg)
	return err
}

func (q *coned) standard(t drawing.Taper) (err error) {
	ratio := t.Ratio
	if ratio == 0 {
		r, ok := handbook.TaperSize(t)
		if !ok {
			return fmt.Errorf("%s is not in the tables: say its ratio, as in 1:20", t)
		}
		ratio = r.Ratio
		q.source(r.Source)
		sizes := Table{Title: t.String(), Head: []Column{left(""), right("mm"), right("in")}}
		for _, x := range []struct {
			name string
			mm   float64
		}{{"at the gauge line", r.Gauge}, {"small end", r.Small}, {"length of the cone", r.Length}} {
			if x.mm > 0 {
				sizes.Rows = append(sizes.Rows, []string{x.name, millimetres(x.mm), inches(x.mm)})
				q.value(x.name, x.mm, "mm", "the tables")
			}
		}
		q.out.Tables = append(q.out.Tables, sizes)
		q.out.Caution = "This taper does not hold by its own friction: it wants its drawbar, or it comes out of the spindle."
		if r.SelfHolding {
			q.out.Caution = "This taper holds drills by its own friction; for cutting sideways it wants a drawbar as well (common practice)."
		}
	}
	q.t, err = taper.OnDiameter(ratio)
	return err
}

func (q *coned) plug(p taper.Plug) (err error) {
	var small float64
	if q.t, small, err = p.Cone(); err != nil {
		return err
	}
	q.name = "The plug"
	q.say("The plug is %s at the plate.", q.Says(small))
	q.step("Half angle = atan((%s - %s) / (2 x %s)) = %s degrees.", millimetres(p.Above), millimetres(p.Below), millimetres(p.Lifted), round(q.t.Half(), 4))
	q.step("At the plate: %s - %s x (1 + cot((90 - %s) / 2)) = %s mm.", millimetres(p.Below), millimetres(p.Roller), round(q.t.Half(), 4), millimetres(small))
	q.value("small end", small, "mm", "--plug")
	return nil
}

func (q *coned) ring(r taper.Ring) (err error) {
	var mouth float64
	if q.t, mouth, err = r.Cone(); err != nil {
		return err
	}
	apart := r.Deep + r.Proud + (r.Small-r.Large)/2
	q.name = "The bore"
	q.say("The bore is %s at the face.", q.Says(mouth))
	q.step("The centres of the balls are %s + %s + %s - %s = %s mm apart.", millimetres(r.Deep), millimetres(r.Proud), millimetres(r.Small/2), millimetres(r.Large/2), millimetres(apart))
	q.step("Half angle = asin(%s / %s) = %s degrees.", millimetres((r.Large-r.Small)/2), millimetres(apart), round(q.t.Half(), 4))
	q.value("mouth", mouth, "mm", "--ring")
	return nil
}

// isCone says whether the angle is asked about as a cone: not of a dovetail or a vee.
func (q *coned) isCone() bool {
	for _, flag := range []string{"male", "female", "vee"} {
		if _, ok := q.Lengths(flag); ok {
			return false
		}
	}
	return q.angle > 0
}

// plain says the taper in every way.
func (q *coned) plain() error {
	if !q.isCone() {
		return nil
	}
	q.say("%s: %s degrees included, half angle %s degrees (%s); 1:%s, %s inches to the foot.", q.name, round(q.t.Included(), 4), round(q.t.Half(), 4), minutes(q.t.Half()), round(q.t.OneIn(), 4), round(q.t.PerFoot(), 5))
	q.step("Half angle = atan(%s / 2) = %s degrees.", round(q.t.Ratio(), 6), round(q.t.Half(), 5))
	if q.along > 0 {
		q.step("Over %s mm the diameter changes by %s mm.", millimetres(q.along), millimetres(q.t.Across(q.along)))
	}
	for _, v := range []struct {
		name string
		x    float64
		unit string
	}{{"included angle", q.t.Included(), "degrees"}, {"half angle", q.t.Half(), "degrees"}, {"on diameter", q.t.Ratio(), ""}, {"inches to the foot", q.t.PerFoot(), "in/ft"}} {
		q.value(v.name, v.x, v.unit, "worked out")
	}
	return nil
}

// minutes writes degrees with minutes and seconds.
func minutes(deg float64) string {
	s := int(math.Round(deg * 3600))
	return fmt.Sprintf("%d deg %d' %d\"", s/3600, s/60%60, s%60)
}

// figure of the lathe of the shop; false where nobody says it.
func (q *coned) lathe(attr string) (mm float64, from string, ok bool) {
	for _, i := range q.Things("lathe") {
		if v, said := Member(i, attr); said && v.Kind == model.Number {
			return v.Num, i.Path(), true
		}
	}
	return 0, "", false
}

// turning says how a lathe is set, and whether the shop's reaches.
func (q *coned) turning() error {
	if !q.isCone() {
		return nil
	}
	zero, words := taper.FromAxis, "on a scale that reads 0 along the axis"
	if q.Text("zero") == "face" {
		zero, words = taper.FromFace, "on a scale that reads 0 square to the axis"
	}
	slide := q.t.Slide(zero)
	q.say("Top slide: set it to %s degrees (%s) %s.", round(slide, 4), minutes(slide), words)
	q.value("top slide", slide, "degrees", "worked out")
	if q.along > 0 {
		way, err := q.t.SlideWay(q.along)
		if err != nil {
			return err
		}
		q.step("Way of the top slide: %s / cos %s = %s mm.", millimetres(q.along), round(q.t.Half(), 4), millimetres(way))
		q.value("way of the top slide", way, "mm", "worked out")
		q.reaches("top_slide.travel", way, "the top slide moves %s mm, and %s has %s mm")
		q.attachment()
	}
	if whole, ok := q.Length("whole"); ok {
		return q.setOver(whole)
	}
	return nil
}

// reaches holds what is wanted of the shop's lathe against what it has.
func (q *coned) reaches(attr string, want float64, words string) {
	has, from, ok := q.lathe(attr)
	switch {
	case !ok:
		q.can = true
	case want > has+model.Same:
		q.cannot = true
		q.say("It does not reach: "+words+".", millimetres(want), from, millimetres(has))
	default:
		q.can = true
		q.say("It reaches: "+words+".", millimetres(want), from, millimetres(has))
	}
}

// attachment holds the cone against the taper attachment of the shop's lathe, where it says how far
// that goes.
func (q *coned) attachment() {
	long, from, ok1 := q.lathe("taper_attachment.length")
	steep, _, ok2 := q.lathe("taper_attachment.angle")
	switch {
	case !ok1 || !ok2:
	case q.along > long+model.Same || q.t.Included() > steep+1e-9:
		q.cannot = true
		q.say("The taper attachment of %s does not do it: it goes %s mm along and to %s degrees included.", from, millimetres(long), round(steep, 4))
	default:
		q.can = true
		q.say("The taper attachment of %s does it: it goes %s mm along and to %s degrees included.", from, millimetres(long), round(steep, 4))
	}
}

func (q *coned) setOver(whole float64) error {
	if q.along > whole+model.Same {
		return fmt.Errorf("--whole %s mm is less than the cone, --along %s mm", millimetres(whole), millimetres(q.along))
	}
	rule, exact, err := q.t.SetOver(whole)
	if err != nil {
		return err
	}
	q.say("Between centres: set the tailstock over by %s, for the whole length of %s mm.", q.Says(rule), millimetres(whole))
	q.step("Set-over = %s / 2 x %s = %s mm; by the sine of the half angle %s mm.", round(q.t.Ratio(), 6), millimetres(whole), millimetres(rule), millimetres(exact))
	q.value("set-over", rule, "mm", "worked out")
	q.source("Machinery Repairman, and J. Rose, Modern Machine-Shop Practice, page 614: the set-over goes by the whole length of the work")
	q.reaches("tailstock.set_over", rule, "the set-over is %s mm, and the tailstock of %s goes %s mm")
	return nil
}
