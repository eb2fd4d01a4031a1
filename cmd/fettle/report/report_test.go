package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"strings"
	"testing"
	"unicode"

	"fettle/eval"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema/finding"
	"fettle/schema/model"
	"fettle/schema/text"
)

const file = "r/a.hcl"

// made is a check made by hand, with everything in it that a report can have to show.
func made() *Checked {
	b := &model.Build{Sources: &text.Sources{}, Recipe: model.Recipe{Item: &model.Item{Label: "toy"}, Title: "A toy"}}
	b.Shop.Title = "The shed"
	b.Shop.Item = &model.Item{Label: "shed"}
	b.Parts = []*model.Part{{Item: &model.Item{Label: "arm"}}, {Item: &model.Item{Label: "leg"}}}
	b.Sources.Add(file, []byte("\tgrip = 2 # shallow\nover = \"\u202e\"\n"))
	arm := finding.Spot{Part: "arm", SetUp: "setup bore"}
	leg := finding.Spot{Part: "leg", SetUp: "setup bore", Step: "hole.pin"}
	return &Checked{Recipe: "r", Shop: "s", Build: b, Read: true,
		Findings: []finding.Finding{
			{Rule: "slip", Level: finding.Stop, Judgement: finding.Fact, Cause: "c", Place: text.Place{File: file, From: 20, To: 32},
				Spots: []finding.Spot{{Part: "leg"}}, Says: "leg.\x1b[31m is not known here"},
			{Rule: "grip-too-shallow", Rows: []string{"B1", "B2"}, Level: finding.Scrap, Judgement: finding.Thumb, Cause: "arm.bore",
				Place: text.Place{File: file, From: 8, To: 9}, Spots: []finding.Spot{arm, {Part: "arm", SetUp: "setup saw"}, leg},
				Says: "too little lies between the jaws <here> & there", Margin: finding.Margin{Has: 2.00049, Wants: 3, Unit: "mm"},
				Also:     []finding.Note{{Place: text.Place{File: file, From: 1, To: 5}, Says: "the other place"}},
				Remedies: []finding.Remedy{{Title: "parallels 1 mm lower", Edits: []text.Edit{{File: file, From: 8, To: 9, New: "3"}}}}},
			{Rule: "no-part", Level: finding.Advice, Judgement: finding.Fact, Cause: "all", Says: "something of the whole build"},
		},
		Result: &rules.Result{
			Trace:   &eval.Trace{Build: b},
			Excused: 2,
			Tightest: []rules.Tight{
				{Rule: "tower-too-tall", Spot: arm, Margin: finding.Margin{Has: 198, Wants: 212, Unit: "mm", Less: true}, What: "the nose above the table"}},
			Unknown: unknowns(12),
			Asked:   []rules.Count{{Rule: "tower-too-tall", Clear: 1, Trouble: 0, Open: 3}},
			Questions: []rules.Question{{Rule: "nut-unwinds", Spot: leg, Asks: "does the nut sit on a left-hand thread?",
				For: []string{"arbor.a.clamp"}}},
			Unplayed: []rules.Unplayed{{Spot: leg, Why: "the lathe is not made on paper yet"}},
		},
		Chosen: []choose.Choice{
			{Spot: arm, What: "machine", Item: "mill.a", Why: "the first that passes"},
			{Spot: leg, What: "tool", Item: "drill.a[5]", Why: "the first that passes"},
			{Spot: leg, What: "speed", Item: "400 rev/min", Why: "the handbook's"},
			{Spot: finding.Spot{Part: "leg", SetUp: "setup bore", Step: "hole.pin, second"}, What: "speed", Item: "400 rev/min", Why: "the handbook's"},
		},
	}
}

func unknowns(n int) (out []rules.Wanted) {
	for i := range n {
		out = append(out, rules.Wanted{Fact: fmt.Sprintf("fact.%d", i), Settles: n - i})
	}
	return out
}

// The whole of a report, in its order and its words.
const whatIsSaid = `A toy (r)
against The shed (s)
0 parts, 0 holdings, 0 operations; 1 place not made on paper (see the end); 4
questions put, 3 of them open for want of a fact
Found: 1 stop, 1 scrap, 1 advice; 2 findings accepted by concession

The files and the build as a whole
  ADVICE
    Something of the whole build.
    [no-part]

Part arm
  SCRAP  setup bore
    Usually a trouble: too little lies between the jaws <here> & there.
    Has 2 mm, wants at least 3 mm.
    A rule of thumb: the shop may set vise_grip_share in rules_of_thumb.
    r/a.hcl line 1
      grip = »2« # shallow
    See r/a.hcl line 1: the other place.
    The same stops setup saw; leg › setup bore › hole.pin.
    Tried on paper, and it cures this: parallels 1 mm lower.
    [grip-too-shallow]

Part leg
  STOP
    leg.\x1b[31m is not known here.
    r/a.hcl line 2
      »over = "\u202e"«
    [slip]

To ask at the machine
  leg › setup bore › hole.pin
    Does the nut sit on a left-hand thread?
    It could be settled here with arbor.a.clamp.

Chosen, where the recipe leaves it open
  arm › setup bore
    holding  machine mill.a
  leg › setup bore
    throughout  speed 400 rev/min
    hole.pin    tool drill.a[5]
  Why
    machine, tool: the first that passes
    speed: the handbook's

Tightest of what passes
  14 mm to spare: the nose above the table
    has 198, may be 212 mm; arm › setup bore [tower-too-tall]

Worth measuring next, by how many questions it would settle
    12  fact.0
    11  fact.1
    10  fact.2
     9  fact.3
     8  fact.4
     7  fact.5
     6  fact.6
     5  fact.7
     4  fact.8
     3  fact.9
  and 2 more

Not made on paper, so not judged
  leg › setup bore › hole.pin: the lathe is not made on paper yet
`

func TestText(t *testing.T) {
	var b bytes.Buffer
	Text(&b, made(), Pen{})
	want, got := strings.Split(whatIsSaid, "\n"), strings.Split(b.String(), "\n")
	for i := range max(len(want), len(got)) {
		if i >= len(want) || i >= len(got) || want[i] != got[i] {
			t.Fatalf("line %d differs; the report is\n%s", i+1, b.String())
		}
	}
}

// Colour adds escapes and changes no word.
func TestColour(t *testing.T) {
	var plain, coloured bytes.Buffer
	Text(&plain, made(), Pen{})
	Text(&coloured, made(), Pen{Colour: true})
	var bare strings.Builder
	in := false
	for _, r := range coloured.String() {
		switch {
		case r == '\x1b':
			in = true
		case in:
			in = r != 'm'
		default:
			bare.WriteRune(r)
		}
	}
	if coloured.String() == plain.String() {
		t.Error("nothing is coloured")
	}
	if bare.String() != plain.String() {
		t.Errorf("colour changes the words:\n%s", bare.String())
	}
}

// Without a finding the report says what was asked, and promises nothing.
func TestSilent(t *testing.T) {
	c := made()
	c.Findings, c.Result = nil, &rules.Result{Trace: c.Result.Trace, Asked: c.Result.Asked}
	var b bytes.Buffer
	Text(&b, c, Pen{})
	if !strings.Contains(b.String(), "4 questions put") || !strings.Contains(b.String(), "What was asked is all that was checked.") {
		t.Errorf("it does not say what was checked:\n%s", b.String())
	}
	for _, word := range []string{"safe", "good", "correct", "passed"} {
		if strings.Contains(strings.ToLower(b.String()), word) {
			t.Errorf("it says %q:\n%s", word, b.String())
		}
	}
}

// The form of the JSON that is promised to programs, field by field; what is ours comes after.
var form = map[string][]string{
	"":                                {"format", "checked"},
	"checked":                         {"recipe", "shop", "parts", "setups", "operations", "findings", "chosen", "tightest", "unknown", "asked", "questions", "not_played", "read", "excused"},
	"checked.findings":                {"rule", "covers", "level", "judgement", "cause", "file", "line", "column", "length", "at", "says", "also", "margin", "remedies", "spots"},
	"checked.findings.also":           {"file", "line", "column", "length", "says"},
	"checked.findings.margin":         {"has", "wants", "unit", "at_most"},
	"checked.findings.remedies":       {"title", "edits"},
	"checked.findings.remedies.edits": {"file", "from", "to", "new"},
	"checked.chosen":                  {"at", "what", "item", "why"},
	"checked.tightest":                {"rule", "at", "what", "margin"},
	"checked.tightest.margin":         {"has", "wants", "unit", "at_most"},
	"checked.unknown":                 {"fact", "settles"},
	"checked.asked":                   {"rule", "clear", "trouble", "open"},
	"checked.questions":               {"rule", "at", "asks", "for"},
	"checked.not_played":              {"at", "why"},
}

func TestJSONForm(t *testing.T) {
	var b bytes.Buffer
	if err := JSON(&b, []*Checked{made()}); err != nil {
		t.Fatal(err)
	}
	got := map[string][]string{}
	d := json.NewDecoder(bytes.NewReader(b.Bytes()))
	fields(t, d, "", got)
	if _, err := d.Token(); err != io.EOF {
		t.Error("something comes after the document")
	}
	for path := range form {
		if !reflect.DeepEqual(form[path], got[path]) {
			t.Errorf("%q has %v, not %v", path, got[path], form[path])
		}
	}
	if len(got) != len(form) {
		t.Errorf("%d kinds of objects, not %d", len(got), len(form))
	}
	s := b.String()
	for _, part := range []string{`"has": 2,`, `"margin": null`, `<here> & there`, "\n  \"checked\": [\n    {\n      \"recipe\"", `\u001b[31m`} {
		if !strings.Contains(s, part) {
			t.Errorf("%s is not in it", part)
		}
	}
	if !strings.HasSuffix(s, "}\n") || strings.HasSuffix(s, "\n\n") {
		t.Error("it does not end with one line end")
	}
	if strings.ContainsFunc(s, func(r rune) bool { return unicode.IsControl(r) && r != '\n' }) {
		t.Error("a control character is in it")
	}
}

// fields notes the keys of each kind of object in their order, and that objects of a kind agree.
func fields(t *testing.T, d *json.Decoder, path string, got map[string][]string) {
	t.Helper()
	tok, err := d.Token()
	if err != nil {
		t.Fatal(err)
	}
	switch tok {
	case json.Delim('['):
		for d.More() {
			fields(t, d, path, got)
		}
	case json.Delim('{'):
		var keys []string
		for d.More() {
			k, err := d.Token()
			if err != nil {
				t.Fatal(err)
			}
			keys = append(keys, k.(string))
			fields(t, d, strings.TrimPrefix(path+"."+k.(string), "."), got)
		}
		if old, ok := got[path]; ok && !reflect.DeepEqual(old, keys) {
			t.Errorf("two objects at %q differ: %v and %v", path, old, keys)
		}
		got[path] = keys
	default:
		if tok == nil && !strings.HasSuffix(path, ".margin") {
			t.Errorf("%s is null", path)
		}
		return
	}
	if _, err := d.Token(); err != nil { // the closing bracket
		t.Fatal(err)
	}
}

// A check of nothing still has every list.
func TestJSONEmpty(t *testing.T) {
	var b bytes.Buffer
	c := &Checked{Recipe: "r", Build: &model.Build{Sources: &text.Sources{}, Unread: true}}
	if err := JSON(&b, []*Checked{c}); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), "null") || !strings.Contains(b.String(), `"read": false`) {
		t.Error(b.String())
	}
	b.Reset()
	if err := JSON(&b, nil); err != nil || !strings.Contains(b.String(), `"checked": []`) {
		t.Error(b.String(), err)
	}
}

// Words are never split, a figure stays with its unit, and no line is longer than it may be
// unless one word is.
func TestWrap(t *testing.T) {
	for _, c := range []struct {
		says string
		wide int
		want []string
	}{
		{"", 10, []string{""}},
		{"one two", 7, []string{"one two"}},
		{"one two", 6, []string{"one", "two"}},
		{"it has 12 mm left", 11, []string{"it has", "12 mm left"}},
		{"a/very/long/way.hcl is", 10, []string{"a/very/long/way.hcl", "is"}},
		{"größe ½ µm", 7, []string{"größe ½", "µm"}},
	} {
		if got := wrap(c.says, c.wide); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%q in %d: %q, not %q", c.says, c.wide, got, c.want)
		}
	}
}

// Whatever turns the direction of writing, moves the cursor or does not print is escaped.
func TestSafe(t *testing.T) {
	for _, c := range [][2]string{
		{"plain ½ µ › »", "plain ½ µ › »"},
		{"\x1b[2J", `\x1b[2J`},
		{"a\u202eb\u2066c", `a\u202eb\u2066c`},
		{"a\nb\rc", `a\nb\rc`},
		{"\u200b\u00ad\ufeff", `\u200b\u00ad\ufeff`},
		{"a\tb", "a  b"},
		{"a\xffb", "a�b"},
	} {
		if got := Safe(c[0]); got != c[1] {
			t.Errorf("%q: %q, not %q", c[0], got, c[1])
		}
	}
}
