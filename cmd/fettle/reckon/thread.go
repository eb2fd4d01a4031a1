package reckon

import (
	"fmt"
	"slices"

	"fettle/eval/reckon/thread"
	"fettle/schema"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

var _ = enter(Subject{
	Name:  "thread",
	Title: "diameters, the drill to tap after, how deep, how much holds",
	Words: []Want{{Name: "THREAD", Kind: Text, Needed: true, Rest: true, Says: "as drawings write it: M6, M6x0.75 LH, 1/4-20 UNC, 2 BA, G1/4"}},
	Flags: []Want{
		{Name: "drills", Kind: Sizes, Least: 0.1, Most: 200, Says: "the drills at hand (left out: the shop's, else the tables' drill)"},
		{Name: "hole", Kind: Length, Least: 0.1, Most: 1000, Says: "a hole that is there: what thread it leaves"},
		{Name: "depth", Kind: Length, Least: 0.1, Most: 1000, Says: "full thread wanted in a blind hole: how deep to drill"},
		{Name: "lead", Kind: Text, Says: "of --depth, the tap: taper, second, bottoming, spiral point, spiral flute, or its incomplete threads from 0 to 20"},
		{Name: "material", Kind: Text, Says: "metal that is tapped: how much thread usually holds"},
		{Name: "class", Kind: Text, Says: "limits of a class: 6g, 6H, 2A, 2B, medium bolt, normal nut; or usual"},
		{Name: "wire", Kind: Length, Least: 0.01, Most: 50, Says: "wires for measuring: the size over three of them"},
		{Name: "engaged", Kind: Length, Least: 0.1, Most: 1000, Says: "length of thread that holds: what breaks or strips first"},
		{Name: "screw-strength", Kind: Number, Least: 10, Most: 3000, Says: "of --engaged: tensile strength of the screw, MPa"},
		{Name: "nut-strength", Kind: Number, Least: 10, Most: 3000, Says: "of --engaged: tensile strength of what is tapped, MPa"},
		{Name: "alike", Kind: YesNo, Says: "list threads that could be taken for it"},
	},
	Examples: [][]string{{"M6", "--material", "brass"}, {"1/4-20 UNC", "--drills", "number drills"},
		{"2 BA", "--depth", "10", "--lead", "second"}, {"M5", "--shop", "recipes/shops/bench"},
		{"M8", "--class", "usual", "--wire", "0.72"}, {"M6", "--engaged", "8", "--screw-strength", "800", "--nut-strength", "300"}, {"1/4-20 UNC", "--alike"}},
	No:     "no drill at hand serves, the hole leaves no thread, or the thread is cut to a gauge",
	Answer: answerThread,
})

// The share of thread that a drill may leave, percent on the basis of the form: common practice.
const leastThread, mostThread = 55, 80

// threaded is a thread as it was asked for.
type threaded struct {
	Ask
	t    drawing.Thread
	form thread.Profile
	out  Answer
}

func answerThread(a Ask) (Answer, error) {
	q := threaded{Ask: a}
	t, err := drawing.ParseThread(a.Text("THREAD"))
	if err != nil {
		return Answer{}, err
	}
	q.t, _ = handbook.FillThread(t)
	var ok bool
	if q.form, ok = thread.ProfileOf(q.t.Series); !ok {
		return tapered(q.t), nil
	}
	if q.t.Diameter == 0 || q.t.Pitch == 0 {
		return Answer{}, fmt.Errorf("%s is not in the tables: write its diameter and pitch, as in M6x0.75 or 1/4-32 UN", quoted(q.t.Written))
	}
	if _, _, root, _ := thread.Diameters(q.t); root <= 0 {
		return Answer{}, fmt.Errorf("%s: a pitch of %s mm leaves no core in a diameter of %s mm", quoted(q.t.Written), millimetres(q.t.Pitch), millimetres(q.t.Diameter))
	}
	q.diameters()
	q.drill()
	q.hole()
	if err := cmpErr(q.depth(), q.material(), q.classes(), q.wires(), q.strength()); err != nil {
		return Answer{}, err
	}
	q.alike()
	q.tap()
	return q.out, nil
}

func tapered(t drawing.Thread) Answer {
	return Answer{No: true, Says: []string{fmt.Sprintf("%s is a tapered pipe thread: it is cut to a gauge, and its drill and depth are not reckoned here.", t)},
		Sources: []string{"its standard, and the gauge"}, Values: []Value{word("thread", t.String(), "THREAD")}}
}

func (q *threaded) say(format string, args ...any) {
	q.out.Says = append(q.out.Says, fmt.Sprintf(format, args...))
}
func (q *threaded) step(format string, args ...any) {
	q.out.Steps = append(q.out.Steps, fmt.Sprintf(format, args...))
}
func (q *threaded) value(name string, x float64, unit, from string) {
	q.out.Values = append(q.out.Values, figure(name, x, unit, from))
}
func (q *threaded) source(s string) {
	if !slices.Contains(q.out.Sources, s) {
		q.out.Sources = append(q.out.Sources, s)
	}
}

// diameters gives the table of the thread itself.
func (q *threaded) diameters() {
	effective, nut, root, _ := thread.Diameters(q.t)
	from := "worked out from the form"
	t := Table{Title: q.t.String(), Head: []Column{left(""), right("mm"), right("in")}}
	row := func(name string, mm float64, from string) {
		t.Rows = append(t.Rows, []string{name, millimetres(mm), inches(mm)})
		q.value(name, mm, "mm", from)
	}
	written := "the tables"
	source := "the designation as written; the tables have no such size"
	if r, ok := handbook.Thread(q.t); ok {
		source = r.Source
	} else {
		written = "THREAD"
	}
	row("major diameter", q.t.Diameter, written)
	row(fmt.Sprintf("pitch (%s threads an inch)", round(25.4/q.t.Pitch, 3)), q.t.Pitch, written)
	row("effective diameter", effective, from)
	row("inside of the nut, basic", nut, from)
	if least, most, ok := handbook.MinorLimits(q.t); ok {
		row("inside of the nut, least", least, "the tables")
		row("inside of the nut, most", most, "the tables")
	}
	row("root of the screw", root, from)
	q.out.Tables = append(q.out.Tables, t)
	q.less("Effective diameter", q.form.Effective, effective)
	q.less("Inside of the nut, basic", q.form.Nut, nut)
	q.less("Root of the screw", q.form.Root, root)
	q.source(source)
}

// less is the step of a diameter that is so many pitches less than the major one.
func (q *threaded) less(name string, pitches, mm float64) {
	q.step("%s: %s - %s x %s = %s mm.", name, millimetres(q.t.Diameter), round(pitches, 6), millimetres(q.t.Pitch), millimetres(mm))
}

// tapLeads are the words of taps, in the order of the tables.
var tapLeads = []string{"taper", "second", "bottoming", "spiral point", "spiral flute"}

// depth says how deep to drill for so much full thread.
func (q *threaded) depth() error {
	lead := q.Text("lead")
	full, ok := q.Length("depth")
	if !ok {
		if lead != "" {
			return fmt.Errorf("--lead is of the tap in a blind hole: say --depth too")
		}
		return nil
	}
	words, from := q.leads(lead)
	t := Table{Title: fmt.Sprintf("To drill for %s of full thread", q.Says(full)), Head: []Column{left("tap"), right("incomplete threads"), right("deep mm"), right("deep in")}}
	for _, w := range words {
		lo, hi, err := incomplete(w)
		if err != nil {
			return err
		}
		least, most := thread.Blind(full, q.t.Pitch, lo), thread.Blind(full, q.t.Pitch, hi)
		t.Rows = append(t.Rows, []string{w, span(lo, hi, plain), span(least, most, millimetres), span(least, most, inches)})
		q.step("With %s: %s + (%s + 1) x %s = %s mm.", tapOf(w), millimetres(full), plain(hi), millimetres(q.t.Pitch), millimetres(most))
		q.value("deep, "+w, most, "mm", "worked out for the "+from)
	}
	if lead != "" {
		lo, hi, _ := incomplete(lead)
		q.say("For %s of full thread drill %s deep at full diameter, the point beyond it, for a tap with %s incomplete threads.", q.Says(full),
			q.Says(thread.Blind(full, q.t.Pitch, hi)), span(lo, hi, plain))
	}
	old := thread.BlindBS1936(full, q.t.Diameter)
	q.say("The older rule of BS 1936 drills %s deep for it.", q.Says(old))
	q.value("deep, BS 1936", old, "mm", "BS 1936")
	q.out.Tables = append(q.out.Tables, t)
	q.source("depth: full thread, the tap's incomplete threads and one pitch of room: a cutting tool supplier's page on the least depth for tapping")
	q.source("incomplete threads of taps: Machinery's Handbook 26, paragraph on tap chamfers; spiral point and spiral flute from memory, DIN 2197")
	return nil
}

// leads gives the taps that a depth is worked out for: the one of --lead, else those of the
// shop's taps for the thread, else all that the tables know; and whose they are.
func (q *threaded) leads(lead string) (words []string, from string) {
	if lead != "" {
		return []string{lead}, "tap of --lead"
	}
	for _, i := range q.taps() {
		v, _ := Member(i, "leads")
		for _, x := range v.List {
			w := x.Text
			if x.Kind == model.Number {
				w = plain(x.Num)
			}
			if _, _, err := incomplete(w); err == nil && !slices.Contains(words, w) {
				words = append(words, w)
			}
		}
	}
	if len(words) > 0 {
		return words, "shop's tap"
	}
	return tapLeads, "tap of the tables"
}

func tapOf(lead string) string {
	if slices.Contains(tapLeads, lead) {
		return "a " + lead + " tap"
	}
	return lead + " incomplete threads"
}

// incomplete gives how many incomplete threads a tap has at its tip, by its word or as a figure.
func incomplete(lead string) (lo, hi float64, err error) {
	if lo, hi, ok := handbook.TapLead(lead); ok {
		return lo, hi, nil
	}
	if v, err := pure(lead); err == nil {
		if n, _ := v.Float64(); n >= 0 && n <= 20 {
			return n, n, nil
		}
	}
	if near := schema.Near(lead, tapLeads); near != "" {
		return 0, 0, fmt.Errorf("--lead has no %s; %s is near", quoted(lead), near)
	}
	return 0, 0, fmt.Errorf("--lead wants %s, or incomplete threads from 0 to 20; %s is none of them", and(tapLeads), quoted(lead))
}

// span writes two figures, or one where they are the same.
func span(lo, hi float64, write func(float64) string) string {
	if lo == hi {
		return write(lo)
	}
	return write(lo) + " to " + write(hi)
}

// material says how much thread usually holds.
func (q *threaded) material() error {
	name := q.Text("material")
	if name == "" {
		return nil
	}
	m, ok := handbook.Material(name)
	if !ok {
		if near := schema.Near(name, handbook.MaterialNames()); near != "" {
			return fmt.Errorf("--material %s is not in the handbook; %s is near", quoted(name), near)
		}
		return fmt.Errorf("--material %s is not in the handbook: name it as in brass, mild steel, 6082 or cast iron", quoted(name))
	}
	d, ok := thread.LeastEngaged(m.Group)
	if !ok {
		q.say("How much thread holds in %s is not known here.", m.Name)
		return nil
	}
	mm := d * q.t.Diameter
	q.say("In %s usually %s diameters of thread, %s, hold as well as the screw.", m.Name, plain(d), q.Says(mm))
	q.step("Thread that holds in %s: %s x %s = %s mm.", m.Name, plain(d), millimetres(q.t.Diameter), millimetres(mm))
	q.value("thread that holds", mm, "mm", "common practice, for "+m.Name)
	q.source("thread that holds as well as the screw: common practice")
	q.out.Caution = "How much thread holds is a rule of thumb for a screw of ordinary strength: where someone would be hurt if it gave way, have it worked out by one who is licensed to."
	return nil
}

// taps lists the shop's taps that cut the thread.
func (q *threaded) taps() []*model.Item {
	var out []*model.Item
	for _, i := range q.Things("tap") {
		v, _ := Member(i, "threads")
		if slices.ContainsFunc(v.List, func(x model.Value) bool {
			t, _ := handbook.FillThread(x.Thread)
			return t.Same(q.t)
		}) {
			out = append(out, i)
		}
	}
	return out
}

// tap says which tap of the shop cuts the thread.
func (q *threaded) tap() {
	if _, ok := q.Shop(); !ok {
		return
	}
	var have []string
	for _, i := range q.taps() {
		have = append(have, i.Path())
	}
	if len(have) == 0 {
		q.say("The shop has no tap for it.")
		return
	}
	q.say("The shop's tap for it: %s.", and(have))
	q.out.Values = append(q.out.Values, word("tap", and(have), "the shop"))
}
