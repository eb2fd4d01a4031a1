package reckon

import (
	"fmt"
	"slices"
	"strings"

	"fettle/eval/reckon/geometry"
)

var _ = enter(Subject{
	Name:  "geometry",
	Title: "holes on a circle, arcs, polygons from round, tangents, tilts, mass",
	Words: []Want{{Name: "FIGURE", Kind: OneOf, Needed: true, Of: []string{"circle", "arc", "polygon", "bar", "flat", "corner", "tangent", "tilt", "mass"},
		Says: "circle of holes; arc, chord and height; polygon or flat bar from round; flat on a round; rounded corner; two circles; compound angle; mass of a bar"}},
	Flags: []Want{
		{Name: "holes", Kind: Whole, Least: 1, Most: geometry.MostHoles, Says: "circle: how many"},
		{Name: "diameter", Kind: Length, Least: 0.01, Most: 1e5, Says: "circle: through the middles of the holes; flat: of the round"},
		{Name: "first", Kind: Angle, Least: -360, Most: 360, Says: "circle: angle of the first hole, from x to the right towards y (left out: 0)"},
		{Name: "at", Kind: Lengths, Least: -1e5, Most: 1e5, Says: "circle: its middle from the datum, x,y (left out: counted from the middle)"},
		{Name: "radius", Kind: Length, Least: 0.01, Most: 1e5, Says: "arc, corner, tangent: of the arc"},
		{Name: "angle", Kind: Angle, Least: 0.001, Most: 360, Says: "arc: from end to end; corner: between its sides"},
		{Name: "chord", Kind: Length, Least: 0.001, Most: 1e5, Says: "arc: straight from end to end"},
		{Name: "height", Kind: Length, Least: 0.001, Most: 1e5, Says: "arc: its middle off the chord"},
		{Name: "along", Kind: Length, Least: 0.001, Most: 1e5, Says: "arc: way round it; mass: length of the bar"},
		{Name: "sides", Kind: Whole, Least: 3, Most: 360, Says: "polygon: how many"},
		{Name: "across", Kind: Length, Least: 0.01, Most: 1e5, Says: "polygon: across flats"},
		{Name: "round", Kind: Length, Least: 0.01, Most: 1e5, Says: "polygon, bar: diameter of the round that is there"},
		{Name: "widths", Kind: Lengths, Least: 0.01, Most: 1e5, Says: "bar: both, as 20,10"},
		{Name: "width", Kind: Length, Least: 0.001, Most: 1e5, Says: "flat: its width; give it or --depth"},
		{Name: "depth", Kind: Length, Least: 0.001, Most: 1e5, Says: "flat: its depth"},
		{Name: "radii", Kind: Lengths, Least: 0.01, Most: 1e5, Says: "tangent: of both circles, as 10,4"},
		{Name: "centres", Kind: Length, Least: 0.01, Most: 1e5, Says: "tangent: from one to the other"},
		{Name: "front", Kind: Angle, Least: -89, Most: 89, Says: "tilt: slope along x, as the front view shows it"},
		{Name: "side", Kind: Angle, Least: -89, Most: 89, Says: "tilt: slope along y, as the side view shows it"},
		{Name: "section", Kind: OneOf, Of: []string{"round", "square", "hexagon", "octagon", "flat"}, Says: "mass: shape of the bar (left out: round)"},
		{Name: "size", Kind: Length, Least: 0.01, Most: 1e4, Says: "mass: diameter, across flats, or width"},
		{Name: "other", Kind: Length, Least: 0.01, Most: 1e4, Says: "mass: the other width of a flat bar"},
		{Name: "bore", Kind: Length, Least: 0, Most: 1e4, Says: "mass: round hole along it"},
		{Name: "material", Kind: Text, Says: "mass: a metal of the handbook"},
		{Name: "density", Kind: Number, Least: 1, Most: 30000, Says: "mass: kg/m³, in place of --material"},
	},
	Examples: [][]string{{"circle", "--holes", "7", "--diameter", "80", "--at", "50,40"}, {"arc", "--radius", "60", "--along", "20"}, {"polygon", "--sides", "6", "--across", "17", "--round", "20"},
		{"flat", "--diameter", "20", "--width", "6"}, {"corner", "--angle", "60", "--radius", "5"}, {"tilt", "--front", "10", "--side", "15"}, {"mass", "--size", "25", "--along", "1000", "--material", "EN8"}},
	No:     "the round is too small for the polygon or bar to fill out",
	Answer: answerGeometry,
})

// drawn is a figure as it was asked for.
type drawn struct {
	Ask
	out Answer
}

func answerGeometry(a Ask) (Answer, error) {
	q := &drawn{Ask: a}
	if err := q.stray(); err != nil {
		return Answer{}, err
	}
	err := map[string]func() error{"circle": q.circle, "arc": q.arc, "polygon": q.polygon, "bar": q.bar, "flat": q.flat, "corner": q.corner, "tangent": q.tangent, "tilt": q.tilt, "mass": q.mass}[a.Text("FIGURE")]()
	q.out.Sources = append(q.out.Sources, "plain geometry")
	return q.out, err
}

// takes are the flags that each figure has a use for.
var takes = map[string]string{"circle": "holes diameter first at", "arc": "radius angle chord height along", "polygon": "sides across round", "bar": "widths round",
	"flat": "diameter width depth", "corner": "radius angle", "tangent": "radii centres radius", "tilt": "front side", "mass": "along section size other bore material density"}

// stray refuses a flag that the figure has no use for.
func (q *drawn) stray() error {
	of := q.Text("FIGURE")
	for _, w := range q.of.Flags {
		if flags := strings.Fields(takes[of]); q.Written(w.Name) != "" && !slices.Contains(flags, w.Name) {
			return fmt.Errorf("%s has no use for --%s; it takes --%s", of, w.Name, strings.Join(flags, " --"))
		}
	}
	return nil
}

func (q *drawn) say(format string, args ...any) {
	q.out.Says = append(q.out.Says, fmt.Sprintf(format, args...))
}
func (q *drawn) step(format string, args ...any) {
	q.out.Steps = append(q.out.Steps, fmt.Sprintf(format, args...))
}
func (q *drawn) value(name string, x float64, unit string) {
	q.out.Values = append(q.out.Values, figure(name, x, unit, "worked out"))
}

// lengths gives the lengths that a figure needs, or says which is lacking.
func (q *drawn) lengths(flags ...string) ([]float64, error) {
	var out []float64
	for _, f := range flags {
		mm, ok := q.Length(f)
		if !ok {
			return nil, fmt.Errorf("%s wants --%s: %s", q.Text("FIGURE"), f, q.of.want(f).Says)
		}
		out = append(out, mm)
	}
	return out, nil
}

// pair gives a list of two lengths.
func (q *drawn) pair(flag string) (one, other float64, err error) {
	l, ok := q.Lengths(flag)
	if !ok || len(l) != 2 {
		return 0, 0, fmt.Errorf("%s wants --%s, two lengths with a comma between: %s", q.Text("FIGURE"), flag, q.of.want(flag).Says)
	}
	return l[0], l[1], nil
}

func (q *drawn) circle() error {
	n, ok := q.Whole("holes")
	l, err := q.lengths("diameter")
	if !ok || err != nil {
		return cmpErr(err, fmt.Errorf("circle wants --holes, how many"))
	}
	c := geometry.Circle{Holes: n, Diameter: l[0]}
	c.First, _ = q.Angle("first")
	from := "the middle of the circle"
	if _, ok := q.Lengths("at"); ok {
		if c.Middle.X, c.Middle.Y, err = q.pair("at"); err != nil {
			return err
		}
		from = fmt.Sprintf("the datum, from which the middle lies at x %s, y %s", millimetres(c.Middle.X), millimetres(c.Middle.Y))
	}
	all, err := c.Places()
	if err != nil {
		return err
	}
	q.say("%s on a circle of %s, counted from %s.", counted(n, "hole"), q.Says(l[0]), from)
	t := Table{Head: []Column{right("hole"), right("degrees"), right("x mm"), right("y mm"), right("x in"), right("y in")}, Most: 40}
	for i, p := range all {
		t.Rows = append(t.Rows, []string{fmt.Sprint(i + 1), round(c.First+360*float64(i)/float64(n), 4), millimetres(p.X), millimetres(p.Y), inches(p.X), inches(p.Y)})
		q.value(fmt.Sprintf("x %d", i+1), p.X, "mm")
		q.value(fmt.Sprintf("y %d", i+1), p.Y, "mm")
	}
	q.out.Tables = append(q.out.Tables, t)
	q.step("x = %s + %s x cos, y = %s + %s x sin of the angle.", millimetres(c.Middle.X), millimetres(l[0]/2), millimetres(c.Middle.Y), millimetres(l[0]/2))
	if n > 1 {
		chord, err := c.Chord(1)
		if err != nil {
			return err
		}
		q.say("Dividers from hole to hole: %s.", q.Says(chord))
		q.step("Chord = %s x sin(180 / %d) = %s mm.", millimetres(l[0]), n, millimetres(chord))
		q.value("chord", chord, "mm")
	}
	return nil
}

func (q *drawn) arc() error {
	radius, isRadius := q.Length("radius")
	angle, isAngle := q.Angle("angle")
	chord, isChord := q.Length("chord")
	height, isHeight := q.Length("height")
	along, isAlong := q.Length("along")
	var a geometry.Arc
	var err error
	switch given := [5]bool{isRadius, isAngle, isChord, isHeight, isAlong}; given {
	case [5]bool{true, true}:
		a, err = geometry.ByAngle(radius, angle)
	case [5]bool{true, false, true}:
		a, err = geometry.ByChord(radius, chord)
		q.step("Angle = 2 x asin(%s / (2 x %s)) = %s degrees.", millimetres(chord), millimetres(radius), round(a.Angle, 4))
	case [5]bool{true, false, false, true}:
		if chord, err = geometry.FlatWidth(2*radius, height); err == nil {
			a, err = geometry.ByHeight(chord, height)
		}
		q.step("Chord = 2 x sqrt(%s x (%s - %s)) = %s mm.", millimetres(height), millimetres(2*radius), millimetres(height), millimetres(chord))
	case [5]bool{true, false, false, false, true}:
		a, err = geometry.ByLength(radius, along)
		q.step("Angle = %s / %s = %s degrees.", millimetres(along), millimetres(radius), round(a.Angle, 4))
	case [5]bool{false, false, true, true}:
		a, err = geometry.ByHeight(chord, height)
		q.step("Radius = (%s² + 4 x %s²) / (8 x %s) = %s mm.", millimetres(chord), millimetres(height), millimetres(height), millimetres(a.Radius))
	default:
		return fmt.Errorf("arc wants --radius and one of --angle, --chord, --height, --along; or --chord and --height")
	}
	if err != nil {
		return err
	}
	q.say("Radius %s over %s degrees: straight from end to end %s, along the arc %s.", q.Says(a.Radius), round(a.Angle, 4), q.Says(a.Chord()), q.Says(a.Length()))
	q.say("A size along the arc is %s mm longer than the straight one: set dividers to the straight one.", millimetres(a.Length()-a.Chord()))
	q.say("The middle of the arc stands %s off the chord.", q.Says(a.Height()))
	q.step("Chord = 2 x %s x sin(%s / 2); arc = %s x %s in radians; height = r (1 - cos half the angle).", millimetres(a.Radius), round(a.Angle, 4), millimetres(a.Radius), round(a.Angle, 4))
	q.value("radius", a.Radius, "mm")
	q.value("angle", a.Angle, "degrees")
	q.value("chord", a.Chord(), "mm")
	q.value("along", a.Length(), "mm")
	q.value("height", a.Height(), "mm")
	return nil
}

func (q *drawn) flat() error {
	l, err := q.lengths("diameter")
	if err != nil {
		return err
	}
	width, isWidth := q.Length("width")
	depth, isDepth := q.Length("depth")
	if isWidth == isDepth {
		return fmt.Errorf("flat wants --width or --depth, one of them")
	}
	if isWidth {
		depth, err = geometry.Flat(l[0], width)
		q.step("Depth = %s - sqrt(%s² - %s²) = %s mm.", millimetres(l[0]/2), millimetres(l[0]/2), millimetres(width/2), millimetres(depth))
	} else {
		width, err = geometry.FlatWidth(l[0], depth)
		q.step("Width = 2 x sqrt(%s x (%s - %s)) = %s mm.", millimetres(depth), millimetres(l[0]), millimetres(depth), millimetres(width))
	}
	if err != nil {
		return err
	}
	q.say("On a round of %s a flat %s wide is %s deep.", q.Says(l[0]), q.Says(width), q.Says(depth))
	q.say("It leaves %s from the flat to the far side. The crown stands as far above the edges of a keyway of that width.", q.Says(l[0]-depth))
	q.value("width", width, "mm")
	q.value("depth", depth, "mm")
	q.value("flat to far side", l[0]-depth, "mm")
	return nil
}

func (q *drawn) corner() error {
	l, err := q.lengths("radius")
	angle, ok := q.Angle("angle")
	if err != nil || !ok {
		return cmpErr(err, fmt.Errorf("corner wants --angle, between its sides"))
	}
	touches, off, err := geometry.Corner{Angle: angle}.Fillet(l[0])
	if err != nil {
		return err
	}
	q.say("A radius of %s in a corner of %s degrees touches its sides %s from the corner, and stays %s off it.", q.Says(l[0]), round(angle, 4), q.Says(touches), q.Says(off))
	q.step("Touches: %s / tan(%s / 2) = %s mm.", millimetres(l[0]), round(angle, 4), millimetres(touches))
	q.step("Off the corner: %s x (1 / sin(%s / 2) - 1) = %s mm.", millimetres(l[0]), round(angle, 4), millimetres(off))
	q.value("touches", touches, "mm")
	q.value("off the corner", off, "mm")
	return nil
}

func (q *drawn) tangent() error {
	a, b, err1 := q.pair("radii")
	l, err2 := q.lengths("centres")
	if err := cmpErr(err1, err2); err != nil {
		return err
	}
	outside, between, err := geometry.Tangent(a, b, l[0])
	if err != nil {
		return err
	}
	q.say("A straight line that touches both on one side is %s long from touch to touch; one that crosses between them %s.", q.Says(outside), q.Says(between))
	q.step("Outside: sqrt(%s² - (%s - %s)²) = %s mm.", millimetres(l[0]), millimetres(a), millimetres(b), millimetres(outside))
	if between > 0 {
		q.step("Between: sqrt(%s² - (%s + %s)²) = %s mm.", millimetres(l[0]), millimetres(a), millimetres(b), millimetres(between))
	} else {
		q.out.Says[0] = fmt.Sprintf("A straight line that touches both on one side is %s long from touch to touch; the circles meet, and none crosses between them.", q.Says(outside))
	}
	q.value("outside", outside, "mm")
	q.value("between", between, "mm")
	if radius, ok := q.Length("radius"); ok {
		p, err := geometry.Blend(a, b, l[0], radius)
		if err != nil {
			return err
		}
		q.say("An arc of %s between them has its middle %s along the line of centres from the first, and %s off it.", q.Says(radius), q.Says(p.X), q.Says(p.Y))
		q.value("blend along", p.X, "mm")
		q.value("blend off", p.Y, "mm")
	}
	return nil
}

func (q *drawn) tilt() error {
	a, ok1 := q.Angle("front")
	b, ok2 := q.Angle("side")
	if !ok1 || !ok2 {
		return fmt.Errorf("tilt wants --front and --side, the slopes that the two views show")
	}
	c := geometry.Compound{A: a, B: b}
	tilt, towards, err1 := c.Once()
	lower, upper, err2 := c.Twice()
	if err := cmpErr(err1, err2); err != nil {
		return err
	}
	q.say("In one tilt: %s degrees (%s), with the steepest way up turned %s degrees from x towards y.", round(tilt, 4), minutes(tilt), round(towards, 4))
	q.say("In two, one upon the other: the lower %s degrees along x, the upper %s degrees along y, which is not the %s of the side view.", round(lower, 4), round(upper, 4), round(b, 4))
	q.step("tan² of the tilt = tan² %s + tan² %s: %s degrees; direction = atan2(tan %s, tan %s).", round(a, 4), round(b, 4), round(tilt, 4), round(b, 4), round(a, 4))
	q.step("tan of the upper = tan %s x cos %s: %s degrees.", round(b, 4), round(a, 4), round(upper, 4))
	q.value("one tilt", tilt, "degrees")
	q.value("towards", towards, "degrees")
	q.value("lower", lower, "degrees")
	q.value("upper", upper, "degrees")
	return nil
}
