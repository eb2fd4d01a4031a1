package reckon

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"fettle/eval/reckon/screwcut"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Subject{
	Name:  "screwcut",
	Title: "change wheels for a thread from those there are; half-nuts, starts",
	Words: []Want{{Name: "PITCH", Kind: Text, Needed: true, Rest: true, Says: `pitch, or thread: 1.5, 13 tpi, M10, 1/4-20 UNC, 2 BA; of worms "module 0.8", "diametral pitch 20"`}},
	Flags: []Want{
		{Name: "screw", Kind: Pitch, Least: screwcut.LeastPitch, Most: screwcut.MostPitch, Says: "lead of the lead screw (left out: the lathe's)"},
		{Name: "wheels", Kind: Wholes, Least: screwcut.LeastTeeth, Most: screwcut.MostTeeth, Says: "teeth of the change wheels, doubles twice (left out: the lathe's)"},
		{Name: "head", Kind: Number, Least: 0.001, Most: 1000, Says: "turns of the first wheel's stud for one of the spindle (left out: the lathe's, else 1)"},
		{Name: "within", Kind: Number, Least: 0, Most: screwcut.MostWithin, Says: "error allowed, parts in a million (left out: 500)"},
		{Name: "pairs", Kind: Whole, Least: 1, Most: screwcut.MostPairs, Says: "most pairs of wheels (left out: 2, and 3 where 2 find nothing)"},
		{Name: "engaged", Kind: Length, Least: 0.1, Most: 10000, Says: "length of thread that is to screw together (left out: 25 mm)"},
		{Name: "starts", Kind: Whole, Least: 1, Most: 24, Says: "starts of the thread; PITCH is the way from one to the next"},
		{Name: "left", Kind: YesNo, Says: "the thread is left-handed"},
		{Name: "dial", Kind: Wholes, Least: 1, Most: 200, Says: "teeth of the wheel of the chasing dial, or of each that there is"},
		{Name: "spare", Kind: Whole, Least: 0, Most: 100, Says: "what meshing wheels must have beyond the one beside them, teeth (left out: 15)"},
		{Name: "module", Kind: Length, Least: 0.1, Most: 10, Says: "of the wheels; with --boss it takes the place of --spare"},
		{Name: "boss", Kind: Length, Least: 1, Most: 200, Says: "nut or washer on a stud that a wheel must pass, diameter"},
		{Name: "centres", Kind: Length, Least: 1, Most: 2000, Says: "first stud to lead screw; wants --module"},
		{Name: "slot", Kind: Lengths, Least: 0, Most: 2000, Says: "of the banjo: least and greatest distance of a stud from the lead screw; wants --module"},
	},
	Examples: [][]string{{"13 tpi", "--screw", "8 tpi", "--wheels", "20,30,40,50,60,65"},
		{"M8", "--screw", "8 tpi", "--wheels", "35,45,50,80", "--dial", "16"},
		{"3", "--starts", "2", "--left", "--screw", "6", "--wheels", "20,30,40,60"}},
	No:     "no train of the wheels that are there makes it within the error allowed",
	Answer: answerScrewcut,
})

// screwed is a thread to be cut as it was asked for.
type screwed struct {
	Ask
	lathe  screwcut.Lathe
	want   screwcut.Wanted
	pitch  screwcut.Pitch
	starts int
	left   bool
	form   float64 // angle of the thread's form, degrees; 0: not known
	long   float64 // in engagement, mm
	item   *model.Item
	found  screwcut.Answer
	shut   bool // the half-nuts are to be kept shut
	out    Answer
}

func answerScrewcut(a Ask) (Answer, error) {
	q := screwed{Ask: a, starts: 1, long: 25, left: a.Yes("left")}
	if err := cmpErr(q.readPitch(), q.readLathe(), q.readMesh()); err != nil {
		return Answer{}, err
	}
	if err := q.search(); err != nil {
		return Answer{}, err
	}
	if len(q.found.Trains) == 0 {
		return q.nothing()
	}
	if err := q.best(); err != nil {
		return Answer{}, err
	}
	q.hand()
	q.eachStart()
	if err := q.table(); err != nil {
		return Answer{}, err
	}
	q.steps()
	q.caution()
	return q.out, nil
}

func (q *screwed) say(format string, args ...any) {
	q.out.Says = append(q.out.Says, fmt.Sprintf(format, args...))
}
func (q *screwed) step(format string, args ...any) {
	q.out.Steps = append(q.out.Steps, fmt.Sprintf(format, args...))
}
func (q *screwed) value(name string, x float64, unit, from string) {
	q.out.Values = append(q.out.Values, figure(name, x, unit, from))
}

// forms are the angles of thread forms by their series, degrees, as their standards have them.
var forms = map[string]float64{"M": 60, "UN": 60, "UNC": 60, "UNF": 60, "UNEF": 60, "BSW": 55, "BSF": 55, "ME": 55, "BSB": 55, "BSP": 55, "BA": 47.5, "Tr": 30}

func (q *screwed) readPitch() (err error) {
	words := q.Text("PITCH")
	if q.pitch, err = screwcut.ParsePitch(words, q.Units); err != nil {
		t, notThread := drawing.ParseThread(words)
		if notThread != nil {
			return fmt.Errorf("%s is neither a pitch, such as 1.5 or 13 tpi, nor a thread: %w", quoted(words), err)
		}
		if t, _ = handbook.FillThread(t); t.Pitch == 0 {
			return fmt.Errorf("%s is not in the tables: say its pitch instead", quoted(words))
		}
		if q.pitch, err = screwcut.Millimetres(t.Pitch); err != nil {
			return err
		}
		q.left, q.form = q.left || t.Left, forms[t.Series]
	}
	if n, ok := q.Whole("starts"); ok {
		q.starts = n
	}
	if mm, ok := q.Length("engaged"); ok {
		q.long = mm
	}
	q.want.Lead, err = q.pitch.Times(q.starts)
	return err
}

func (q *screwed) readLathe() error {
	screw, ok, err := q.ExactFrom("screw", "lead_screw", "lathe")
	if err != nil {
		return err
	}
	if !ok {
		return fmt.Errorf("the lead of the lead screw is wanted: say --screw, or name a shop whose lathe says its lead_screw")
	}
	q.item = screw.Item
	if q.lathe.Screw, err = screwcut.Exactly(screw.V); err != nil {
		return err
	}
	wheels := q.WholesFrom("wheels", "wheels", "lathe")
	if len(wheels) != 1 {
		return fmt.Errorf("the change wheels of one lathe are wanted, and there are %d lists: say --wheels, or pick a lathe with --with", len(wheels))
	}
	q.lathe.Wheels = wheels[0].V
	if q.item == nil {
		q.item = wheels[0].Item
	}
	head, ok, err := q.ExactFrom("head", "fixed_train", "lathe")
	if err != nil {
		return err
	}
	for _, i := range []*model.Item{wheels[0].Item, head.Item} {
		if i != nil && q.item != nil && i != q.item {
			return fmt.Errorf("the lead screw is of %s and wheels or head are of %s: pick one lathe with --with, or say --screw, --wheels and --head", q.item.Path(), i.Path())
		}
	}
	if ok {
		q.lathe.Head, err = fractionOf(head.V)
		if err != nil {
			return err
		}
	}
	q.out.Values = append(q.out.Values, word("lead screw", q.lathe.Screw.String(), screw.From), word("wheels", teeth(q.lathe.Wheels), wheels[0].From))
	return nil
}

// fractionOf takes a fraction that is small enough for wheels.
func fractionOf(v *big.Rat) (screwcut.Fraction, error) {
	if v.Num().IsInt64() && v.Denom().IsInt64() {
		return screwcut.Fraction{Num: v.Num().Int64(), Den: v.Denom().Int64()}, nil
	}
	return screwcut.Fraction{}, fmt.Errorf("turns of the first stud: %s has too many figures", v.FloatString(9))
}

// teeth lists wheels, smallest first.
func teeth(wheels []int) string {
	var out []string
	for _, z := range slices.Sorted(slices.Values(wheels)) {
		out = append(out, strconv.Itoa(z))
	}
	return strings.Join(out, " ")
}

func (q *screwed) readMesh() error {
	m := screwcut.Mesh{Spare: screwcut.RuleOfThumb}
	if n, ok := q.Whole("spare"); ok {
		m.Spare = n
	}
	m.Module, _ = q.Length("module")
	m.Boss, _ = q.Length("boss")
	m.Centres, _ = q.Length("centres")
	if slot, ok := q.Lengths("slot"); ok {
		if len(slot) != 2 {
			return fmt.Errorf("--slot wants two lengths, the least and the greatest distance of a stud from the lead screw")
		}
		m.Nearest, m.Far = slot[0], slot[1]
	}
	q.lathe.Mesh = m
	return nil
}

// search looks for trains, with three pairs only where it was asked for or two find nothing.
func (q *screwed) search() (err error) {
	q.want.Within = 500
	if x, ok := q.Number("within"); ok {
		q.want.Within = x
	}
	pairs, said := q.Whole("pairs")
	if q.want.Pairs = pairs; !said {
		q.want.Pairs = 2
	}
	q.found, err = screwcut.Trains(q.lathe, q.want)
	if err == nil && q.found.Found == 0 && !said {
		q.want.Pairs = 3
		q.found, err = screwcut.Trains(q.lathe, q.want)
	}
	return err
}

// thread is what is cut, in words.
func (q *screwed) thread() string {
	s := q.pitch.String()
	if w := q.Text("PITCH"); q.form != 0 {
		s = w + ", " + s
	}
	if q.starts > 1 {
		s += fmt.Sprintf(" in %d starts, a lead of %s mm", q.starts, millimetres(q.want.Lead.MM()))
	}
	return s
}

// nothing answers where no train serves: what would.
func (q *screwed) nothing() (Answer, error) {
	q.out.No = true
	near := "exactly"
	if q.want.Within > 0 {
		near = "within " + round(q.want.Within, 3) + " parts in a million"
	}
	q.say("None of the trains of up to %d pairs of these wheels cuts %s %s.", q.want.Pairs, q.thread(), near)
	if q.found.Blocked > 0 {
		q.say("%s of wheels would be right and cannot be put up: %s.", counted(q.found.Blocked, "set"), q.meshing())
	}
	two := q.want
	two.Pairs = min(two.Pairs, 2)
	more, err := screwcut.WheelsToGet(q.lathe, two)
	if err != nil {
		return Answer{}, err
	}
	if len(more) > 0 {
		q.say("One more wheel makes an exact train, to cut or to borrow: of %s teeth.", orTeeth(more[:min(len(more), 6)]))
	}
	q.steps()
	q.caution()
	return q.out, nil
}

func orTeeth(wheels []int) string {
	s := strings.ReplaceAll(teeth(wheels), " ", ", ")
	if n := strings.LastIndex(s, ", "); n >= 0 {
		s = s[:n] + " or" + s[n+1:]
	}
	return s
}
