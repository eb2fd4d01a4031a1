package rules_test

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"

	"fettle/eval"
	"fettle/rules"
	"fettle/rules/choose"
	"fettle/schema"
	"fettle/schema/printed"
	"fettle/schema/text"
)

// madeIn plays a recipe in a shop.
func madeIn(t *testing.T, recipe, shop string) (*eval.Trace, []rules.Verdict) {
	t.Helper()
	b, slips, err := schema.Load(text.Archive{"recipe/recipe.hcl": []byte(recipe), "shop/shop.hcl": []byte(shop)}, "recipe", "shop")
	if err != nil || len(slips) > 0 {
		t.Fatal(err, slips, recipe)
	}
	trace, vs, _ := choose.Choose(b, choose.Effort)
	return trace, vs
}

// lastTurn is the last operation on a lathe of the first part.
func lastTurn(t *testing.T, trace *eval.Trace) *eval.Turn {
	t.Helper()
	var last *eval.Turn
	for _, m := range trace.Parts[0].Moments {
		if m.Turn != nil {
			last = m.Turn
		}
	}
	if last == nil || last.Hold.Unplayed != "" {
		t.Fatal("nothing is turned")
	}
	return last
}

// of are the verdicts of one rule.
func of(vs []rules.Verdict, rule string) []rules.Verdict {
	return slices.DeleteFunc(slices.Clone(vs), func(v rules.Verdict) bool { return v.Rule.Name != rule })
}

// kinds are the answers of one rule.
func kinds(vs []rules.Verdict, rule string) (out []rules.Kind) {
	for _, v := range of(vs, rule) {
		out = append(out, v.Kind)
	}
	return out
}

// put replaces what must be there.
func put(t *testing.T, s string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(s, pairs[i]) {
			t.Fatalf("no %q in\n%s", pairs[i], s)
		}
		s = strings.ReplaceAll(s, pairs[i], pairs[i+1])
	}
	return s
}

// A wheel of so many teeth on a dividing head, as the index table has it: the setting that the dry run
// gives the crank is the printed one (the table gives the least circle, and all of them for three plates),
// and where the table has none the rule finds none, or leaves it open where two circles of a plate do it
// together, which a shop cannot say. Below 17 teeth nobody cuts such a wheel on the head of the examples;
// the rows that are asked are those of the plates of three, of the two-sided plate, and of 60 and 90 to 1.
func TestPublishedIndexTableOnAHead(t *testing.T) {
	wheel := rules.Find("no-circle-for-it").Sound
	three := "circles = [15, 16, 17, 18, 19, 20]\n}\n\ndividing_plate \"second\" {\n  circles = [21, 23, 27, 29, 31, 33]\n}\n\ndividing_plate \"third\" {\n  circles = [37, 39, 41, 43, 47, 49]"
	sided := "circles = [24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43, 46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66]"
	plates := map[string]string{three: "[dividing_plate.own, dividing_plate.second, dividing_plate.third]", sided: "[dividing_plate.own]"}
	asked := map[string]int{}
	for _, f := range printed.Rows(t, "dividing_index.tsv", 13) {
		n := printed.Figure(t, f[0])
		if n < 17 {
			continue
		}
		for _, c := range []struct {
			name, ratio, circles, want string
		}{{"three", "40", three, f[1]}, {"sided", "40", sided, f[3]}, {"sixty", "60", three, f[9]}, {"ninety", "90", three, f[10]}} {
			asked[c.name]++
			tips := fmt.Sprintf("diameter = %v\n", n/2+1)
			trace, vs := madeIn(t, put(t, wheel, "count  = 60", fmt.Sprintf("count  = %v", n), "diameter = 31\n", tips, "ratio         = 40", "ratio         = "+c.ratio,
				"circles = [15, 16, 17, 18, 19, 20]", c.circles, "[dividing_plate.own]", plates[c.circles], "direct        = [24]", "direct        = []"), rules.ExampleShop)
			got, way := "-", 0.0
			for _, m := range trace.Parts[0].Moments {
				if m.Cut == nil {
					continue
				}
				if d, ok := m.Cut.Hold.Divider(); ok {
					if s := eval.Settings(d, m.Cut.Step); len(s) == 1 {
						k := s[0].Move.Crank
						got, way = fmt.Sprintf("%d + %d/%d", k.Turns, k.Holes, k.Circle), float64(k.Turns)+float64(k.Holes)/float64(max(k.Circle, 1))
						if f[2] != "" && c.name == "three" && k.Holes > 0 && !slices.Contains(strings.Fields(f[2]), fmt.Sprintf("%d/%d", k.Holes, k.Circle)) {
							t.Errorf("%v teeth: %s, printed circles %s", n, got, f[2])
						}
					}
				}
			}
			if (c.want == "-") != (got == "-") || c.want != "-" && math.Abs(way-turnsOf(t, c.want)) > 1e-12 {
				t.Errorf("%v teeth, %s: %s, printed %s", n, c.name, got, c.want)
			}
			want := []rules.Kind{rules.Clear}
			switch {
			case c.want != "-":
			case c.name != "three" || f[6] == "":
				want = []rules.Kind{rules.Trouble, rules.Open} // two circles of a plate may do it together: not in the source
			case f[6] == "-":
				want = []rules.Kind{rules.Trouble}
			default:
				want = []rules.Kind{rules.Open}
			}
			if says := kinds(vs, "no-circle-for-it"); len(says) != 1 || !slices.Contains(want, says[0]) {
				t.Errorf("%v teeth, %s: the rule says %v, printed %s, compound %s", n, c.name, says, c.want, f[6])
			}
		}
	}
	if asked["three"] < 100 {
		t.Errorf("asked %v", asked)
	}
}

// turnsOf reads turns of the crank, "2 + 18/21".
func turnsOf(t *testing.T, s string) (turns float64) {
	t.Helper()
	for _, w := range strings.Split(s, " + ") {
		turns += fraction(t, w)
	}
	return turns
}

// A thread cut with the printed wheels on a lathe of the printed screw: exact trains are cut,
// approximations come out as many parts in a million off as printed, and a train that is a misprint is told
// of. Leads of an inch and of a module are of no thread that one cuts on a bar of the examples, and stay
// with the reckoning.
func TestPublishedTrainsOnALathe(t *testing.T) {
	asked := map[string]int{}
	for _, f := range printed.Rows(t, "screwcut.tsv", 5) {
		if f[0] != "train" && f[0] != "misprint" && f[0] != "approximation" {
			continue
		}
		w := strings.Split(f[1], "; ")
		lead, unit, _ := strings.Cut(w[1], " ")
		var size string
		switch {
		case unit == "tpi" && lead != "1":
			size = "5/8-" + lead + " UN"
		case unit == "mm" && lead != "20":
			size = "M16x" + lead
		default:
			continue
		}
		asked[f[0]]++
		cut := func(wheels string) (eval.Turn, []rules.Verdict) {
			list := strings.NewReplacer("/", ", ", " x ", ", ").Replace(wheels)
			shop := put(t, rules.ExampleShop, "lead_screw        = 3\n", "lead_screw        = \""+w[0]+"\"\n", "[20, 20, 30, 40, 50, 60, 60, 80, 100, 127]", "["+list+"]")
			recipe := put(t, rules.Find("wheels-cut-other-lead").Sound, "M16x2", size, "wheels = [40, 60]", "wheels = ["+list+"]")
			if unit == "tpi" {
				recipe = put(t, recipe, "diameter = 16", "diameter = 15.875")
			}
			trace, vs := madeIn(t, recipe, shop)
			return *lastTurn(t, trace), vs
		}
		k, vs := cut(w[2])
		says := kinds(vs, "wheels-cut-other-lead")
		train, ok := k.Train()
		switch f[0] {
		case "train":
			if !ok || train.String() != w[2] || train.PPM != 0 || !slices.Equal(says, []rules.Kind{rules.Clear}) {
				t.Errorf("%s: %v, %v", f[1], train, says)
			}
			driver, driven, _ := strings.Cut(w[2], "/")
			if _, vs := cut(driven + "/" + driver); !slices.Equal(kinds(vs, "wheels-cut-other-lead"), []rules.Kind{rules.Trouble}) {
				t.Errorf("%s the wrong way round: %v", f[1], kinds(vs, "wheels-cut-other-lead"))
			}
		case "misprint":
			if !slices.Equal(says, []rules.Kind{rules.Trouble}) {
				t.Errorf("%s is a misprint: %v", f[1], says)
			}
			if _, vs := cut(f[2]); !slices.Equal(kinds(vs, "wheels-cut-other-lead"), []rules.Kind{rules.Clear}) {
				t.Errorf("%s with %s: %v", f[1], f[2], kinds(vs, "wheels-cut-other-lead"))
			}
		case "approximation":
			if want, within := printed.Figures(t, f[2])[0], printed.Figures(t, f[3])[0]; !ok || math.Abs(train.PPM-want) > within {
				t.Errorf("%s: %v, printed %v ppm", f[1], train.PPM, want)
			}
		}
	}
	for what, n := range map[string]int{"train": 33, "misprint": 1, "approximation": 9} {
		if asked[what] != n {
			t.Errorf("%d rows of %s, want %d", asked[what], what, n)
		}
	}
}

// A taper between centres with the tailstock set over as printed: the rule finds it right, and of a tenth more it says
// the printed figure. A row's large diameter says nothing of the set-over, and is another here.
func TestPublishedSetOversOnALathe(t *testing.T) {
	n := 0
	shop := put(t, rules.ExampleShop, "set_over = 8", "set_over = 60", "between_centres   = 500", "between_centres   = 1000")
	for _, f := range printed.Rows(t, "taper.tsv", 5) {
		if f[0] != "set-over" {
			continue
		}
		n++
		unit := 25.4
		in, want := printed.Figures(t, f[1]), printed.Figure(t, f[2])
		if in[0] > 10 {
			unit = 1
		}
		whole := in[3] * unit
		turn := func(over float64) []rules.Verdict {
			_, vs := madeIn(t, put(t, rules.Find("tailstock-set-over-wrong").Sound, "1:40", fmt.Sprintf("1:%.9f", in[2]/(in[0]-in[1])), "length   = 186", fmt.Sprintf("length   = %v", whole),
				"from     = 96", fmt.Sprintf("from     = %v", whole-60), "diameter = 20", "diameter = 60", "set_over = 2.325", fmt.Sprintf("set_over = %v", over)), shop)
			return of(vs, "tailstock-set-over-wrong")
		}
		if vs := turn(want * unit); len(vs) != 1 || vs[0].Kind != rules.Clear || vs[0].Margin.Has > 0.001 {
			t.Errorf("%s: %+v, printed %v", f[1], vs, want)
		}
		says := fmt.Sprintf("set over by %v mm on %v mm", round3(want*unit), round3(whole))
		if vs := turn(want * unit * 1.1); len(vs) != 1 || len(vs[0].Found) != 1 || !strings.Contains(vs[0].Found[0].Says, says) {
			t.Errorf("%s a tenth more: %+v, wanted %q", f[1], vs, says)
		}
	}
	if n != 5 {
		t.Errorf("%d rows", n)
	}
}

// Tapers turned with the top slide: it is set to half the printed angle, or to the angle of the printed
// taper. Rings, plugs and stacks of gauges measure a taper with balls and rollers that no recipe names.
func TestPublishedTopSlides(t *testing.T) {
	asked := map[string]int{}
	for _, f := range printed.Rows(t, "taper.tsv", 5) {
		said := "angle = " + f[1]
		var in []float64
		switch f[0] {
		case "half of foot":
			said = fmt.Sprintf("size = \"1:%.12f\"", 12/printed.Figure(t, f[1]))
		case "half angle of ends":
			in = printed.Figures(t, f[1])
			said = fmt.Sprintf("size = \"1:%.12f\"", in[2]/(in[0]-in[1]))
		case "taper of angle", "foot of angle", "slide from face":
		default:
			continue
		}
		asked[f[0]]++
		trace, _ := madeIn(t, put(t, rules.Find("taper-longer-than-slide").Sound, "angle = 6", said, "from     = 30", "from     = 78"), rules.ExampleShop)
		slide := lastTurn(t, trace).Choice.Slide
		got := map[string]float64{"half of foot": slide, "half angle of ends": slide, "slide from face": 90 - slide,
			"taper of angle": 2 * math.Tan(slide*math.Pi/180), "foot of angle": 24 * math.Tan(slide*math.Pi/180)}[f[0]]
		if math.Abs(got-printed.Figure(t, f[2])) > printed.Figure(t, f[3]) {
			t.Errorf("%s %s: the top slide is set to %v, %v; printed %s in %s", f[0], f[1], slide, got, f[2], f[4])
		}
	}
	if asked["half of foot"] != 6 || asked["taper of angle"] != 7 || asked["foot of angle"] != 2 || asked["slide from face"] != 3 || asked["half angle of ends"] != 1 {
		t.Errorf("asked %v", asked)
	}
}

func round3(x float64) float64 { return math.Round(x*1000) / 1000 }

// Dials as printed: lines of the printed value make up the turn of the screw, or of the worm, and one line more, or of
// a worm half a line, does not.
func TestPublishedDialsOnMachines(t *testing.T) {
	n := 0
	for _, f := range printed.Rows(t, "dial.tsv", 4) {
		w := strings.Fields(f[1])
		if f[0] != "screw" && f[0] != "worm" && f[0] != "diameter" {
			continue
		}
		n++
		value := fraction(t, f[2])
		for _, c := range []struct {
			more float64
			want rules.Kind
		}{{0, rules.Clear}, {1, rules.Trouble}} {
			lines := printed.Figure(t, w[1]) + c.more
			recipe := rules.Find("dial-does-not-close").Sound
			switch f[0] {
			case "screw":
				recipe = put(t, recipe, "division = 0.02, turn = 2, lines = 100", fmt.Sprintf("division = %.12f, turn = %.12f, lines = %v", value, fraction(t, w[0]), lines))
			case "diameter": // a slide that reads the diameter counts twice the lead
				recipe = put(t, recipe, "division = 0.02, turn = 2, lines = 100", fmt.Sprintf("division = %.12f, turn = %.12f, lines = %v, reads = \"diameter\"", value, 2*fraction(t, w[0]), lines))
			case "worm":
				recipe = put(t, recipe, "lathe \"own\" {", fmt.Sprintf("rotary_table \"own\" {\n  ratio = %s\n  dial = { division = %.12f }\n}\n\nlathe \"own\" {", w[0],
					value*printed.Figure(t, w[1])/(printed.Figure(t, w[1])+c.more/2)))
			}
			_, vs := madeIn(t, recipe, rules.ExampleShop)
			if says := kinds(vs, "dial-does-not-close"); !slices.Equal(says, []rules.Kind{c.want}) {
				t.Errorf("%s %s with %v lines: %v, want %v", f[0], f[1], lines, says, c.want)
			}
		}
	}
	if n != 13 {
		t.Errorf("%d rows", n)
	}
}

func fraction(t *testing.T, s string) float64 {
	t.Helper()
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		t.Fatalf("%q is no fraction", s)
	}
	x, _ := r.Float64()
	return x
}

// Involute wheels as printed: of the fewest teeth that are not undercut the rule is silent, of one fewer not; and pairs that
// are looked up for a distance of the axes mesh there, and 2 % of a module nearer they jam.
func TestPublishedWheelsInRecipes(t *testing.T) {
	asked := map[string]int{}
	for _, f := range printed.Rows(t, "gear.tsv", 5) {
		switch f[0] {
		case "undercut":
			asked[f[0]]++
			for less, want := range map[float64]rules.Kind{0: rules.Clear, 1: rules.Trouble} {
				n := printed.Figure(t, f[2]) - less
				_, vs := madeIn(t, put(t, rules.Find("teeth-undercut").Sound, "count  = 18", fmt.Sprintf("count  = %v\n    pressure_angle = %s", n, f[1]), "diameter = 20\n", fmt.Sprintf("diameter = %v\n", n+2)), rules.ExampleShop)
				if says := kinds(vs, "teeth-undercut"); !slices.Equal(says, []rules.Kind{want}) {
					t.Errorf("%v teeth at %s degrees: %v, want %v", n, f[1], says, want)
				}
			}
		case "pair for centre":
			asked[f[0]]++
			in, want := printed.Figures(t, f[1]), printed.Figures(t, f[2])
			for nearer, says := range map[float64]rules.Kind{0: rules.Clear, 0.2: rules.Trouble} {
				recipe := put(t, rules.Find("centres-wrong-for-wheels").Sound, "count = 40\n    module = 1\n    thinned = 0.1", fmt.Sprintf("count = %v\n    module = %v\n    thinned = 0.1", want[1], in[2]),
					"count = 20\n    module = 1", fmt.Sprintf("count = %v\n    module = %v", want[0], in[2]), "30 ±0.02", fmt.Sprintf("%v ±0.02", in[0]-nearer))
				trace, vs := madeIn(t, recipe, rules.ExampleShop)
				if got := kinds(vs, "centres-wrong-for-wheels"); !slices.Equal(got, []rules.Kind{says}) {
					t.Errorf("%s, %v nearer: %v, want %v", f[1], nearer, got, says)
				}
				for _, j := range trace.Joints {
					if j.Mesh != nil && (!j.Mesh.Standard.Is() || math.Abs(j.Mesh.Standard.V-in[0]) > 1e-9) {
						t.Errorf("%s: the pitch circles touch at %+v", f[1], j.Mesh.Standard)
					}
				}
			}
		}
	}
	if asked["undercut"] != 2 || asked["pair for centre"] != 4 {
		t.Errorf("asked %v", asked)
	}
}
