package reckon

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"slices"

	"fettle/eval/reckon/dial"
)

var _ = enter(Subject{
	Name:  "dial",
	Title: "what a line of a dial stands for, whether it closes; verniers",
	Words: []Want{{Name: "LEAD", Kind: Pitch, Least: 0.01, Most: 1000, Says: "of the screw: 2.5, 10 tpi (left out with --worm or --vernier; with --shop alone every dial of the shop)"}},
	Flags: []Want{
		{Name: "worm", Kind: Number, Least: 1, Most: 10000, Says: "instead of LEAD, a rotary table of this ratio"},
		{Name: "ratio", Kind: Number, Least: 0.001, Most: 1000, Says: "turns of the dial to one of the screw (left out: 1)"},
		{Name: "lines", Kind: Whole, Least: 1, Most: 10000, Says: "round the dial"},
		{Name: "reads", Kind: OneOf, Of: []string{"diameter", "radius"}, Says: "a cross slide: what its dial counts (left out: the slide's own way)"},
		{Name: "value", Kind: Length, Least: 0.0001, Most: 100, Says: "what a line is marked as, or is to be"},
		{Name: "angle", Kind: Angle, Least: 0.0001, Most: 360, Says: "with --worm, what a line is marked as, or is to be"},
		{Name: "way", Kind: Length, Least: 0.01, Most: 1e5, Says: "error of a dial that does not close, over this way"},
		{Name: "rim", Kind: Length, Least: 1, Most: 5000, Says: "diameter of the dial's rim: room for lines and figures"},
		{Name: "figures", Kind: Whole, Least: 1, Most: 1000, Says: "numbers round the rim"},
		{Name: "digits", Kind: Whole, Least: 1, Most: 6, Says: "of the longest number (left out: those of the last, counted up by 1)"},
		{Name: "punch", Kind: Length, Least: 0.2, Most: 50, Says: "height of the figures"},
		{Name: "width", Kind: Length, Least: 0.1, Most: 50, Says: "width of one figure (left out: 0.5 to 0.75 of the height)"},
		{Name: "gap", Kind: Length, Least: 0, Most: 50, Says: "beside each figure (left out: 0.3 mm)"},
		{Name: "strokes", Kind: Lengths, Least: 0.1, Most: 500, Says: "lengths of lines, longest first: every tenth, fifth, single; wants --turn and --line"},
		{Name: "discs", Kind: Lengths, Least: 0, Most: 500, Says: "disc cutter of each of --strokes, 0 a point that is drawn along"},
		{Name: "deep", Kind: Length, Least: 0, Most: 5, Says: "depth of a line cut by a disc (left out: 0.2 mm)"},
		{Name: "turn", Kind: Length, Least: 0.02, Most: 1000, Says: "of the slide that makes the stroke: its way in a turn"},
		{Name: "line", Kind: Length, Least: 0.001, Most: 100, Says: "of that slide's dial"},
		{Name: "vernier", Kind: Whole, Least: 2, Most: 1000, Says: "lines of a vernier; wants --over and --main"},
		{Name: "over", Kind: Whole, Least: 1, Most: 10000, Says: "main lines that they lie over"},
		{Name: "main", Kind: Length, Least: 0.001, Most: 1000, Says: "what a main line stands for"},
	},
	Examples: [][]string{{"10 tpi", "--lines", "100", "--value", "0.001 in"}, {"2.5", "--lines", "125", "--reads", "diameter"},
		{"10 tpi", "--value", "0.02"}, {"--worm", "90", "--lines", "240"}, {"--vernier", "20", "--over", "39", "--main", "1"},
		{"2", "--lines", "100", "--rim", "50", "--figures", "10", "--punch", "2"},
		{"3", "--lines", "60", "--strokes", "7.5,5.5,3.5", "--turn", "2", "--line", "0.02"}},
	No:     "the lines do not close, or the figures find no room",
	Answer: answerDial,
})

// dialled is a question about a dial.
type dialled struct {
	Ask
	d    dial.Dial
	unit string // "mm", "degrees"
	out  Answer
}

func (q *dialled) say(format string, args ...any) {
	q.out.Says = append(q.out.Says, fmt.Sprintf(format, args...))
}
func (q *dialled) step(format string, args ...any) {
	q.out.Steps = append(q.out.Steps, fmt.Sprintf(format, args...))
}
func (q *dialled) given(flag string) bool { return q.Written(flag) != "" }

// value notes an exact figure; what is no decimal of twelve places is kept as a fraction too.
func (q *dialled) value(name string, x *big.Rat, unit, from string) {
	v := figure(name, asFloat(x), unit, from)
	if _, ends := x.FloatPrec(); !ends {
		v.Words = x.RatString()
	}
	q.out.Values = append(q.out.Values, v)
}

func asFloat(x *big.Rat) float64 {
	f, _ := x.Float64()
	return f
}

// amount writes what a dial counts: a length in both units, or degrees with minutes and seconds.
func (q *dialled) amount(x *big.Rat) string {
	if q.unit == "mm" {
		return q.Says(asFloat(x))
	}
	f := asFloat(x)
	seconds := math.Round(f*3600*100) / 100
	whole := math.Floor(seconds / 60)
	return fmt.Sprintf("%s degrees (%s deg %s' %s\")", round(f, 6), round(math.Floor(whole/60), 0), round(math.Mod(whole, 60), 0), round(seconds-whole*60, 2))
}

// plainAmount is amount without the other unit, for the working.
func (q *dialled) plainAmount(x *big.Rat) string { return round(asFloat(x), 6) + " " + q.unit }

func answerDial(a Ask) (Answer, error) {
	q := &dialled{Ask: a, unit: "mm"}
	if err := q.read(); err != nil {
		return Answer{}, err
	}
	var err error
	_, shop := q.Shop()
	switch {
	case q.given("vernier"):
		err = q.vernier()
	case q.d.Lead == nil && !q.d.Worm && shop:
		err = q.owned()
	case q.d.Lead == nil && !q.d.Worm:
		err = errors.New("dial wants the LEAD of a screw, --worm, --vernier or --shop")
	default:
		err = q.answer()
	}
	if q.out.Sources == nil {
		q.out.Sources = []string{"value = lead / (lines x ratio), twice that on diameter, 360 / (ratio x lines) on a worm: common practice"}
	}
	q.out.Caution = "Slack of the screw is no part of this: come to every reading from the same side."
	return q.out, err
}

// read makes the dial of the words.
func (q *dialled) read() error {
	q.d.Lead, _ = q.Exact("LEAD")
	q.d.Ratio, _ = q.Exact("ratio")
	q.d.Lines, _ = q.Whole("lines")
	q.d.Diameter = q.Text("reads") == "diameter"
	if worm, ok := q.Exact("worm"); ok {
		if q.d.Lead != nil || q.given("ratio") || q.given("reads") || q.given("value") || q.given("way") {
			return errors.New("--worm stands alone: LEAD, --ratio, --reads, --value and --way say nothing of a rotary table")
		}
		q.d.Worm, q.d.Ratio, q.unit = true, worm, "degrees"
	} else if q.given("angle") {
		return errors.New("--angle is of a rotary table: say --worm too")
	}
	alone := q.d.Lead == nil && !q.d.Worm
	for _, w := range q.of.Flags {
		ofVernier := slices.Contains([]string{"vernier", "over", "main"}, w.Name)
		switch {
		case !q.given(w.Name):
		case ofVernier && !q.given("vernier"):
			return fmt.Errorf("--%s is of a vernier: say --vernier too", w.Name)
		case ofVernier != q.given("vernier"):
			return fmt.Errorf("--%s says nothing of a vernier: ask for them apart", w.Name)
		case alone && !ofVernier:
			return fmt.Errorf("--%s is of a dial: say the LEAD of its screw, or --worm", w.Name)
		}
	}
	if q.given("vernier") && q.d.Lead != nil {
		return errors.New("a vernier has no LEAD: say --main, what its main line stands for")
	}
	return nil
}

// vernier answers for a vernier.
func (q *dialled) vernier() error {
	main, ok := q.Exact("main")
	over, also := q.Whole("over")
	if !ok || !also {
		return errors.New("--vernier wants --over, the main lines it lies over, and --main, what one of those stands for")
	}
	n, _ := q.Whole("vernier")
	reads, err := dial.Vernier(main, n, over)
	if err != nil {
		return err
	}
	q.say("The vernier reads to %s.", q.Says(asFloat(reads)))
	each := new(big.Rat).Mul(main, big.NewRat(int64(over), int64(n)))
	q.step("A line of the vernier is %d / %d of a main line = %s; it differs from the nearest whole number of main lines by %s.", over, n, q.plainAmount(each), q.plainAmount(reads))
	q.value("reads to", reads, "mm", "worked out")
	q.out.Sources = []string{"a x main line less vernier line: common practice"}
	return nil
}

// marked is what a line is said to stand for.
func (q *dialled) marked() (*big.Rat, bool) {
	if q.d.Worm {
		deg, ok := q.Angle("angle")
		// angles are written in seconds at the finest: whole thousandths of one are exact
		return big.NewRat(int64(math.Round(deg*3600*1000)), 3600*1000), ok
	}
	return q.Exact("value")
}

// answer goes through what is asked of one dial.
func (q *dialled) answer() error {
	turn, err := q.d.Turn()
	if err != nil {
		return err
	}
	marked, isMarked := q.marked()
	q.turn(turn)
	switch {
	case q.d.Lines > 0:
		if err := q.lines(marked, isMarked); err != nil {
			return err
		}
	case isMarked:
		if err := q.nearest(turn, marked); err != nil {
			return err
		}
	default:
		if err := q.divisions(turn); err != nil {
			return err
		}
	}
	return cmpErr(q.room(), q.strokes())
}

// turn puts what a turn stands for in words.
func (q *dialled) turn(turn *big.Rat) {
	q.value("turn", turn, q.unit, "worked out")
	if q.d.Worm {
		q.step("A turn = 360 / %s = %s.", q.d.Ratio.RatString(), q.plainAmount(turn))
		return
	}
	if !q.d.Diameter && q.d.Ratio == nil {
		q.step("A turn is the lead, %s.", q.plainAmount(turn))
		return
	}
	on, by := "", ""
	if q.d.Diameter {
		on = "2 x "
	}
	if q.d.Ratio != nil {
		by = " / " + q.d.Ratio.RatString()
	}
	q.step("A turn = %s%s%s = %s.", on, round(asFloat(q.d.Lead), 6), by, q.plainAmount(turn))
}

// lines answers for a dial that has its lines.
func (q *dialled) lines(marked *big.Rat, isMarked bool) error {
	value, err := q.d.Value()
	if err != nil {
		return err
	}
	q.value("line", value, q.unit, "worked out")
	what := ""
	if q.d.Diameter {
		what = " off the diameter"
	}
	turn, _ := q.d.Turn()
	q.say("A line is %s%s.", q.amount(value), what)
	q.step("A line = %s / %d = %s.", q.plainAmount(turn), q.d.Lines, q.plainAmount(value))
	if q.given("way") && !isMarked {
		return errors.New("--way tells the error of a marked dial: say --value too")
	}
	if !isMarked {
		return nil
	}
	c, err := q.d.Closes(marked)
	if err != nil {
		return err
	}
	q.value("over in a turn", c.Over, q.unit, "worked out")
	q.step("%d lines of %s count %s; a turn is %s.", q.d.Lines, q.plainAmount(marked), q.plainAmount(c.Counts), q.plainAmount(turn))
	if c.Closes {
		q.say("Marked as %s, the lines close.", q.amount(marked))
		return nil
	}
	q.out.No = true
	q.say("Marked as %s, the lines do not close: a turn counts %s and is %s.", q.amount(marked), q.amount(c.Counts), q.amount(turn))
	if c.Wanted.IsInt() {
		q.say("With %s lines they would.", c.Wanted.RatString())
	} else {
		q.say("No whole number of lines of that value closes: %s would be needed.", round(asFloat(c.Wanted), 3))
	}
	if way, ok := q.Exact("way"); ok {
		off := new(big.Rat).Quo(c.Over, turn)
		off.Mul(off, way)
		q.say("Over a way of %s it counts %s %s.", q.amount(way), q.amount(new(big.Rat).Abs(off)), muchOrLittle(off))
		q.value("error over --way", off, q.unit, "worked out")
	}
	return nil
}

func muchOrLittle(off *big.Rat) string {
	if off.Sign() < 0 {
		return "too little"
	}
	return "too much"
}

// nearest answers how many lines a value wants.
func (q *dialled) nearest(turn, value *big.Rat) error {
	n, err := dial.NearestLines(turn, value)
	if err != nil {
		return err
	}
	q.out.Values = append(q.out.Values, figure("lines", float64(n.Lines), "", "worked out"))
	q.value("line", n.True, q.unit, "worked out")
	q.step("Lines = turn / value = %s / %s = %s.", q.plainAmount(turn), q.plainAmount(value), round(asFloat(new(big.Rat).Quo(turn, value)), 4))
	if n.Exact {
		q.say("%d lines of %s close exactly.", n.Lines, q.amount(value))
		return nil
	}
	q.out.No = true
	off := new(big.Rat).Neg(n.Turn)
	q.say("No whole number of lines of %s closes. The nearest is %d lines, each in truth %s: a turn read as marked counts %s %s.", q.amount(value), n.Lines, q.amount(n.True),
		q.amount(new(big.Rat).Abs(off)), muchOrLittle(off))
	q.value("over in a turn", off, q.unit, "worked out")
	if way, ok := q.Exact("way"); ok {
		gathers := new(big.Rat).Quo(new(big.Rat).Mul(off, way), turn)
		q.say("Over a way of %s that gathers to %s.", q.amount(way), q.amount(new(big.Rat).Abs(gathers)))
		q.value("error over --way", gathers, q.unit, "worked out")
	}
	return nil
}

// handy are the values that dials are usually marked in: mm, then inch, then degrees.
func (q *dialled) handy() []*big.Rat {
	var out []*big.Rat
	add := func(scale *big.Rat, denominators ...int64) {
		for _, d := range denominators {
			out = append(out, new(big.Rat).Quo(scale, big.NewRat(d, 1)))
		}
	}
	if q.d.Worm {
		add(big.NewRat(1, 1), 1, 2, 4, 6, 10, 12, 20, 30, 60, 120, 180, 360)
		return out
	}
	add(big.NewRat(1, 1), 10, 20, 40, 50, 100, 200)
	add(big.NewRat(254, 10), 100, 200, 500, 1000, 2000)
	return out
}

// divisions lists handy values that close.
func (q *dialled) divisions(turn *big.Rat) error {
	found, err := dial.Divisions(turn, q.handy(), 10, 500)
	if err != nil {
		return err
	}
	if len(found) == 0 {
		q.out.No = true
		q.say("A turn is %s: none of the usual values of a line divides it into 10 to 500 lines.", q.amount(turn))
		return nil
	}
	q.say("A turn is %s: these values of a line close.", q.amount(turn))
	t := Table{Head: []Column{right("lines"), left("a line is")}}
	for _, d := range found {
		t.Rows = append(t.Rows, []string{fmt.Sprint(d.Lines), q.amount(d.Value)})
	}
	q.out.Tables = append(q.out.Tables, t)
	return nil
}
