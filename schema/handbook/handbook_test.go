package handbook

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fettle/schema/drawing"
)

// Every table is read, every row has a source, and no key stands twice.
func TestTables(t *testing.T) {
	keys := map[string][]string{
		"iso286_grade": {"over_mm", "grade"}, "iso286_delta": {"over_mm", "grade"},
		"iso286_shaft": {"letter", "grade_from", "over_mm"}, "iso286_hole": {"letter", "grade_from", "over_mm"},
		"general": {"what", "over_mm"}, "thread": {"series", "size", "pitch_mm", "tpi"}, "taper": {"series", "number"},
		"drawbar": {"series", "number", "thread"}, "material": {"name"}, "speed": {"process", "tool", "group"},
		"drill_set": {"set", "name"}, "drill_length": {"series", "over_mm"}, "tap_lead": {"word"},
		"ream": {"reamer", "over_mm"}, "reamer_lead": {"reamer", "over_mm"}, "collet": {"system"},
		"instrument": {"kind", "from", "to", "reads_to"}, "cutter_bore": {"cutter", "diameter_mm"}, "kerf": {"saw"}, "skin": {"skin"},
		"tap_square": {"thread_mm"}, "centre_drill": {"pilot_mm"}, "driver": {"head", "thread_mm"}, "head": {"head", "thread_mm", "key"},
		"slip_gauge": {"set", "from"},
		"feed":       {"process", "tool", "metal", "from_mm", "unit", "least", "source"}, "speed_printed": {"process", "tool", "metal", "detail", "least", "source"},
		"force": {"vdi"}, "force_feed": {"process", "metal", "rm", "kc"}, "drill_force": {"metal", "rm"}, "drill_factor": {"symbol", "at"}, "drill_work": {"metal", "symbol"},
		"tap_force": {"formula", "metal"}, "tap_factor": {"tap", "metal", "pitch"}, "capability": {"process", "source"},
		"thread_tolerance": {"pitch_mm"}, "thread_pitch_tolerance": {"over_mm", "pitch_mm"},
		"clamp_friction": {"pair", "state"}, "strap": {"stud"}, "workholding": {"rule", "what"},
		"press_friction": {"one", "other", "joined"}, "tool_metal": {"name"}, "slender": {"what"},
		"heat": {"name"}, "tee_slot": {"throat_mm"}, "bend": {"metal", "condition"}, "heat_colour": {"colour"}, "solder": {"name"}, "bond": {"bond"},
		"key": {"over_mm"}, "circlip": {"on", "diameter_mm"}, "thread_undercut": {"on", "pitch_mm"}, "bearing": {"code"}, "pin": {"kind", "to_mm"}, "bearing_limits": {"on", "over_mm"}, "oil": {"process", "groups"}, "soak": {"does"}, "pass": {"kind", "tool", "groups"},
	}
	found, err := files.ReadDir("table")
	if err != nil || len(found) != len(keys) {
		t.Fatalf("%d tables, %d with a key (%v)", len(found), len(keys), err)
	}
	for name, columns := range keys {
		seen := map[string]bool{}
		rows := load(name).rows
		if len(rows) == 0 {
			t.Errorf("%s is empty", name)
		}
		for _, r := range rows {
			var k []string
			for _, c := range columns {
				k = append(k, r.text(c))
			}
			one := strings.Join(k, " | ")
			if seen[one] {
				t.Errorf("%s: %s stands twice", name, one)
			}
			seen[one] = true
			if source := r.text("source"); len(source) < 5 || strings.Contains(source, "://") {
				t.Errorf("%s: %s has source %q", name, one, source)
			}
		}
	}
}

// Rows of one kind follow each other without gap or overlap, and grow.
func TestSteps(t *testing.T) {
	for _, c := range []struct {
		table string
		by    string
		grow  []string
	}{
		{"drill_length", "series", []string{"overall_mm", "flutes_mm"}},
		{"ream", "reamer", []string{"most_mm"}},
		{"reamer_lead", "reamer", []string{"lead_mm"}},
		{"general", "what", nil},
		{"iso286_grade", "grade", []string{"um"}},
	} {
		last := map[string]row{}
		for _, r := range load(c.table).rows {
			if before, ok := last[r.text(c.by)]; ok {
				if before.number("to_mm") != r.number("over_mm") {
					t.Errorf("%s %s: over %v follows %v", c.table, r.text(c.by), r.number("over_mm"), before.number("to_mm"))
				}
				for _, g := range c.grow {
					if r.number(g) < before.number(g) {
						t.Errorf("%s %s: %s shrinks at %v", c.table, r.text(c.by), g, r.number("over_mm"))
					}
				}
			}
			if r.number("to_mm") <= r.number("over_mm") {
				t.Errorf("%s: step %v to %v", c.table, r.number("over_mm"), r.number("to_mm"))
			}
			last[r.text(c.by)] = r
		}
	}
}

// A coarser grade is never closer, at any size.
func TestGradesGrow(t *testing.T) {
	d := ISO286()
	for _, size := range []float64{1.5, 3, 5, 8, 14, 25, 40, 65, 100, 150, 220, 300, 360, 500} {
		before := 0.0
		for g := Grade01; g <= 18; g++ {
			um, ok := d.Grade(size, g)
			if !ok || um <= before {
				t.Errorf("%v mm: IT%d is %v after %v", size, g, um, before)
			}
			before = um
		}
	}
	for _, size := range []float64{0, -1, 500.001} {
		if um, ok := d.Grade(size, 7); ok {
			t.Errorf("%v mm has IT7 %v", size, um)
		}
	}
}

// ISO 286-1 gives the unit i = 0.45 cbrt(D) + 0.001 D, D the geometric mean of the step, and
// IT6 10i, IT7 16i ... IT11 100i. The printed tables are rounded: they stay within 12 % of
// it (41 of 260 cells depart from exact rounding). Up to 3 mm the printed figures are above
// the formula by more, 10 against 8.7 at IT7, and the tables are right; that step is left out.
func TestGradesAgainstUnit(t *testing.T) {
	for _, r := range load("iso286_grade").rows {
		over, to := r.number("over_mm"), r.number("to_mm")
		times, ok := map[string]float64{"6": 10, "7": 16, "8": 25, "9": 40, "10": 64, "11": 100}[r.text("grade")]
		if !ok {
			continue
		}
		if over == 0 {
			continue
		}
		mean := math.Sqrt(over * to)
		want := times * (0.45*math.Cbrt(mean) + 0.001*mean)
		if got := r.number("um"); math.Abs(got-want) > 0.12*want {
			t.Errorf("IT%s over %v: %v against %.1f", r.text("grade"), over, got, want)
		}
	}
}

func TestGeneral(t *testing.T) {
	for _, c := range []struct {
		letter     string
		size, half float64
		ok         bool
	}{ // ISO 2768-1 table 1, from memory; a size on a bound is in the step below
		{"m", 0.5, 0.1, true}, {"m", 3, 0.1, true}, {"m", 6, 0.1, true}, {"m", 6.001, 0.2, true}, {"m", 30, 0.2, true},
		{"m", 30.01, 0.3, true}, {"f", 25, 0.1, true}, {"c", 100, 0.8, true}, {"v", 2, 0, false}, {"m", 0.4, 0, false}, {"x", 10, 0, false}, {"", 10, 0, false}, {"mc", 10, 0, false}, {"m", 4001, 0, false},
	} {
		if half, ok := General(c.letter, c.size); half != c.half || ok != c.ok {
			t.Errorf("class %s at %v: %v %v", c.letter, c.size, half, ok)
		}
	}
	if half, ok := GeneralAngle("m", 40); half != 0.5 || !ok {
		t.Errorf("angle: %v %v", half, ok)
	}
	if half, ok := GeneralEdge("m", 2); half != 0.2 || !ok {
		t.Errorf("edge: %v %v", half, ok)
	}
}

// Every thread: pitch below diameter, drill between minor diameter less a little and major,
// within the limits of the nut where these are known.
func TestThreads(t *testing.T) {
	for _, r := range Threads() {
		if r.Pitch <= 0 || r.Diameter <= r.Pitch || r.MinorLeast >= r.Diameter {
			t.Errorf("%+v", r)
		}
		if r.Drill >= r.Diameter || r.Drill < r.MinorLeast-0.06 {
			t.Errorf("%s %s: drill %v", r.Series, r.Size, r.Drill)
		}
		if r.MinorMax > 0 && (r.Drill > r.MinorMax+0.005 || r.MinorMax <= r.MinorLeast) {
			t.Errorf("%s %s x %v: drill %v, nut %v to %v", r.Series, r.Size, r.Pitch, r.Drill, r.MinorLeast, r.MinorMax)
		}
	}
}

func TestFillThread(t *testing.T) {
	for _, c := range []struct {
		written, says   string
		diameter, pitch float64
		drill           float64
		ok              bool
	}{
		{"M6", "M6", 6, 1, 5, true},                              // ISO 261
		{"M12x1.75", "M12", 12, 1.75, 10.2, true},                // ISO 261
		{"M14x1.5 LH", "M14x1.5 LH", 14, 1.5, 12.5, true},        // ISO 261
		{"M10x0.9", "M10x0.9", 10, 0.9, 0, false},                // no such pitch
		{"1/4 UNC", "1/4-20 UNC", 6.35, 1.27, 5.18, true},        // ASME B1.1
		{"#10-32 UNF", "#10-32 UNF", 4.826, 0.79375, 4.04, true}, // ASME B1.1: 0.060 + 10 x 0.013 in
		{"#10-32", "#10-32", 4.826, 0.79375, 4.04, true},         //
		{"3/8 BSW", "3/8-16 BSW", 9.525, 1.5875, 8, true},        // BS 84
		{"3/8-20 BSW", "3/8-20 BSW", 9.525, 1.27, 0, false},      // no such pitch
		{"2 BA", "2 BA", 4.7, 0.81, 4, true},                     // BS 93
		{"G1/4", "G1/4", 13.157, 25.4 / 19, 11.8, true},          // ISO 228-1
		{"1/4-40 ME", "1/4-40 ME", 6.35, 0.635, 5.75, true},      // common practice
		{"7/16-20 UNF", "7/16-20 UNF", 11.1125, 1.27, 9.9, true}, // ASME B1.1
		{"Tr8", "Tr8", 8, 0, 0, false}, {"1.238-20", "1.238-20", 31.4452, 1.27, 0, false},
	} {
		th, err := drawing.ParseThread(c.written)
		if err != nil {
			t.Fatal(err)
		}
		got, ok := FillThread(th)
		if ok != c.ok || got.String() != c.says || math.Abs(got.Diameter-c.diameter) > 1e-9 || math.Abs(got.Pitch-c.pitch) > 1e-9 {
			t.Errorf("%s: %v %+v %s", c.written, ok, got, got)
		}
		if mm, _, _ := TappingDrill(got); math.Abs(mm-c.drill) > 1e-9 {
			t.Errorf("%s: drill %v, want %v", c.written, mm, c.drill)
		}
		if again, _ := FillThread(got); again != got {
			t.Errorf("%s: filled twice %+v", c.written, again)
		}
	}
	short, long := drawing.Thread{Series: "M", Diameter: 12}, drawing.Thread{Series: "M", Diameter: 12, Pitch: 1.75}
	short, _ = FillThread(short)
	if !short.Same(long) {
		t.Error("M12 filled is not M12x1.75")
	}
}

// Machinery's Handbook, 31st edition, p2155, prints these drills by name and by inches.
func TestDrillSets(t *testing.T) {
	s, ok := Set("number drills")
	if !ok || len(s.List) != 80 {
		t.Fatalf("%d number drills", len(s.List))
	}
	for name, inch := range map[string]float64{"#49": 0.0730, "#50": 0.0700, "#52": 0.0635, "#53": 0.0595} {
		for _, m := range s.List {
			if m.Name == name && math.Abs(m.Size-inch*25.4) > 1e-9 {
				t.Errorf("%s is %v mm", name, m.Size)
			}
		}
		if got := s.Name(inch * 25.4); got != name {
			t.Errorf("%v in is %s", inch, got)
		}
	}
	for _, name := range SetNames() {
		s, _ := Set(name)
		up := s.List[1].Size > s.List[0].Size
		for n := 1; n < len(s.List); n++ {
			if s.List[n].Size == s.List[n-1].Size || s.List[n].Size > s.List[n-1].Size != up {
				t.Errorf("%s: %s after %s", name, s.List[n].Name, s.List[n-1].Name)
			}
		}
	}
	if _, ok := Set("drills"); ok {
		t.Error("a set that is not there")
	}
}

func TestDrillLengths(t *testing.T) {
	for _, c := range []struct {
		series            string
		d, overall, flute float64
		ok                bool
	}{ // ISO 235 and ISO 494, from memory
		{"jobber", 5, 86, 52, true}, {"jobber", 5.3, 86, 52, true}, {"jobber", 5.4, 93, 57, true}, {"jobber", 10, 133, 87, true},
		{"stub", 5, 62, 26, true}, {"long", 5, 132, 87, true}, {"taper shank", 12, 182, 101, true},
		{"jobber", 21, 0, 0, false}, {"jobber", 0, 0, 0, false}, {"other", 5, 0, 0, false},
	} {
		if o, f, ok := DrillLengths(c.series, c.d); o != c.overall || f != c.flute || ok != c.ok {
			t.Errorf("%s %v: %v %v %v", c.series, c.d, o, f, ok)
		}
	}
	if taper, ok := DrillTaper(20); !ok || taper.String() != "MT2" {
		t.Errorf("20 mm drill has %v", taper)
	}
}

// A forum page on tip lengths gives 0.031 in for 0.104 in at 118 degrees and 0.084 in for 0.406 in at 135.
func TestDrillPoint(t *testing.T) {
	for _, c := range []struct{ angle, d, want float64 }{{118, 0.104, 0.031}, {135, 0.406, 0.084}, {90, 1, 0.5}} {
		if got := c.d * DrillPoint(c.angle); math.Abs(got-c.want) > 0.0005 {
			t.Errorf("%v at %v: %v", c.d, c.angle, got)
		}
	}
	for _, a := range []float64{0, -10, 180, 400, math.NaN()} {
		if DrillPoint(a) != 0 {
			t.Errorf("a point of %v degrees", a)
		}
	}
}

func TestColletSystem(t *testing.T) {
	er, ok := ColletSystem("er 25")
	if !ok || er.Closes(3) != 0.5 || er.Closes(6) != 1 || er.Largest != 16 || er.Nut.String() != "M32x1.5" {
		t.Errorf("%+v", er)
	}
	for _, r := range colletRows() {
		c, ok := ColletSystem(r.System)
		_, hi, some := c.Full.Range()
		if !ok || !some || hi > c.Largest+hair {
			t.Errorf("%s: %v largest %v", c.System, hi, c.Largest)
		}
		for _, m := range slices.Concat(c.Full.List, c.FullInch.List) {
			if m.Size > c.Largest+hair || c.Closes(m.Size) <= 0 {
				t.Errorf("%s: size %v", c.System, m.Size)
			}
		}
	}
}

func TestInstrumentError(t *testing.T) {
	for _, c := range []struct {
		kind              string
		lo, hi, step, err float64
		ok                bool
	}{ // DIN 862 and DIN 863 sheets of error limits
		{"micrometer", 0, 25, 0.01, 0.004, true}, {"micrometer", 75, 100, 0.001, 0.005, true}, {"caliper", 0, 150, 0.01, 0.03, true},
		{"caliper", 0, 150, 0.02, 0.03, true}, {"caliper", 0, 150, 0.1, 0.05, true}, {"caliper", 0, 150, 0, 0.05, true},
		{"caliper", 0, 150, 0.0127, 0.03, true}, {"caliper", 0, 2000, 0.02, 0, false}, {"micrometer", 0, 0, 0, 0.004, true}, {"hammer", 0, 1, 1, 0, false},
		{"dial_indicator", 0, 10, 0.01, 0.015, true}, {"steel_rule", 0, 150, 0.5, 0.1, true},
	} {
		if err, ok := InstrumentError(c.kind, c.lo, c.hi, c.step); err != c.err || ok != c.ok {
			t.Errorf("%s %v to %v by %v: %v %v", c.kind, c.lo, c.hi, c.step, err, ok)
		}
	}
}

func TestMaterial(t *testing.T) {
	for name, want := range map[string]string{
		"CW614N": "brass", "brass": "brass", "Brass": "brass", "CZ121": "brass", "C360": "brass CW603N", "EN 1A": "free-cutting mild steel",
		"EN1A": "free-cutting mild steel", "12L14": "free-cutting mild steel", "EN3B": "mild steel", "silver steel": "silver steel", "drill rod": "drill rod",
		"O1": "O1 tool steel", "EN AW-6082": "aluminium 6082", "6082-T6": "aluminium 6082", "1.4305": "stainless 303", "GG25": "cast iron", "POM": "acetal", "gunmetal": "gunmetal",
	} {
		m, ok := Material(name)
		if !ok || m.Name != want || m.Density < 500 || m.Written != name {
			t.Errorf("%s: %+v", name, m)
		}
	}
	for _, name := range []string{"", "unknown", "steel", "unobtainium"} {
		if m, ok := Material(name); ok {
			t.Errorf("%q is %s", name, m.Name)
		}
	}
	words := map[string]string{}
	groups := map[string]bool{}
	for _, s := range speeds() {
		groups[s.Group] = true
	}
	for _, m := range materials() {
		for _, w := range m.words {
			if other, twice := words[w]; twice && other != m.name {
				t.Errorf("%s means %s and %s", w, other, m.name)
			}
			words[w] = m.name
		}
		if m.group != "" && !groups[m.group] {
			t.Errorf("%s: no speeds for %s", m.name, m.group)
		}
	}
	for _, m := range materials() {
		if m.kind != "" && words[key(m.kind)] != m.kind {
			t.Errorf("%s is a grade of %s, which is not in the table", m.name, m.kind)
		}
	}
}

func TestServes(t *testing.T) {
	for _, c := range []struct {
		asked, there string
		ok           bool
	}{{"brass", "CW614N", true}, {"brass", "CW603N", true}, {"CW603N", "CW614N", false}, {"aluminium", "6082", true}, {"6082", "aluminium", false}, {"6082", "6061", false},
		{"silver steel", "drill rod", false}, {"drill rod", "silver steel", false}, {"mild steel", "EN1A", true}, {"stainless steel", "303", true}} {
		a, _ := Material(c.asked)
		b, _ := Material(c.there)
		if Serves(a, b) != c.ok {
			t.Errorf("%s for %s: %v", c.there, c.asked, !c.ok)
		}
	}
}

func TestSpeed(t *testing.T) {
	for _, s := range speeds() {
		if got, ok := Speed(s.Process, s.Tool, s.Group); !ok || got != s || s.Warn < s.Pick*1.4 || s.Warn > s.Pick*1.6 {
			t.Errorf("%+v", s)
		}
	}
	if _, ok := Speed("turning", "HSS", ""); ok {
		t.Error("a speed for a metal that is not known")
	}
}

// Every set of slip gauges comes to the pieces it is named by, no size twice.
func TestSlipSets(t *testing.T) {
	names := SlipSetNames()
	if len(names) != 8 {
		t.Errorf("%v", names)
	}
	for _, name := range names {
		s, ok := SlipSet(name)
		pieces, err := strconv.Atoi(name[1:])
		if !ok || err != nil || len(s.Sizes) != pieces || s.Name != name {
			t.Errorf("%s: %d pieces, %v %v", name, len(s.Sizes), ok, err)
		}
		if sizes := slices.Sorted(slices.Values(s.Sizes)); len(slices.Compact(sizes)) != pieces {
			t.Errorf("%s has a size twice", name)
		}
		for _, r := range load("slip_gauge").rows {
			if n := len(slipRow(r)); r.text("set") == name && float64(n) != r.number("pieces") {
				t.Errorf("%s from %s: %d pieces", name, r.text("from"), n)
			}
		}
	}
	if s, ok := SlipSet("m88/1"); !ok || s.Unit != drawing.Millimetre || !slices.Contains(s.Sizes, int64(10005*SlipGrain/10000)) {
		t.Errorf("%+v %v", s, ok)
	}
	if _, ok := SlipSet("M89"); ok {
		t.Error("a set of 89")
	}
}

// Morse tapers: large end less taper times length is the small end, all three printed.
func TestTapers(t *testing.T) {
	checked := 0
	for _, r := range tapers() {
		if r.Ratio <= 0 || r.Ratio > 0.4 || r.Gauge <= 0 {
			t.Errorf("%+v", r)
		}
		if r.Small > 0 && r.Length > 0 {
			checked++
			if got := r.Gauge - r.Ratio*r.Length; math.Abs(got-r.Small) > 0.006 {
				t.Errorf("%s%s: small end %v, printed %v", r.Series, r.Number, got, r.Small)
			}
		}
		if parsed, err := drawing.ParseTaper(r.Series + r.Number); err != nil || parsed.Series != r.Series || parsed.Number != r.Number {
			if r.Series != "R8" && r.Series != "5C" {
				t.Errorf("%s%s cannot be written", r.Series, r.Number)
			}
		}
	}
	if checked < 13 {
		t.Errorf("only %d checked", checked)
	}
	for written, n := range map[string]int{"R8": 2, "MT3": 4, "INT30": 3} {
		taper, _ := drawing.ParseTaper(written)
		if got := Drawbars(taper); len(got) != n {
			t.Errorf("%s: %d drawbar threads: %v", written, len(got), got)
		}
	}
	if r, ok := TaperSize(drawing.Taper{Series: "ISO", Number: "30"}); !ok || r.SelfHolding || r.Gauge != 31.75 {
		t.Errorf("%+v", r)
	}
}

func TestReaming(t *testing.T) {
	for _, c := range []struct {
		kind   string
		d      float64
		group  string
		lo, hi float64
		ok     bool
	}{
		{"machine", 8, "brass_free_cutting", 0.2, 0.406, true}, {"hand", 8, "steel_mild", 0.2, 0.3, true}, {"hand", 8, "aluminium", 0.2, 0.45, true},
		{"hand", 5, "", 0.1, 0.2, true}, {"adjustable", 25, "", 0.3, 0.5, true}, {"", 8, "", 0, 0, false},
	} {
		lo, hi, source, ok := ReamAllowance(c.kind, c.d, c.group)
		if math.Abs(lo-c.lo) > 1e-9 || math.Abs(hi-c.hi) > 1e-9 || ok != c.ok || ok && source == "" {
			t.Errorf("%s %v: %v %v %v", c.kind, c.d, lo, hi, ok)
		}
	}
	if mm, ok := ReamerLead("hand", 8); !ok || mm != 14.5 {
		t.Errorf("lead %v %v", mm, ok)
	}
	if lo, hi, ok := TapLead("taper"); lo != 8 || hi != 10 || !ok {
		t.Errorf("taper tap %v %v %v", lo, hi, ok)
	}
	if _, _, ok := TapLead("plug"); ok {
		t.Error("the word plug means two taps")
	}
}

// The tables stay plain text: tabs between cells, one line a row.
func TestPlainText(t *testing.T) {
	found, _ := files.ReadDir("table")
	for _, f := range found {
		b, err := files.ReadFile("table/" + f.Name())
		if err != nil || strings.Contains(string(b), "\r") || !strings.HasPrefix(string(b), "# ") || !strings.HasSuffix(string(b), "\n") {
			t.Errorf("%s: %v", f.Name(), err)
		}
	}
}
