package dividing

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"fettle/schema/printed"
)

// The plate sets of testdata/published/dividing.tsv; low_high is from memory.
var (
	three = []Plate{
		{Name: "1", Faces: [][]int{{15, 16, 17, 18, 19, 20}}},
		{Name: "2", Faces: [][]int{{21, 23, 27, 29, 31, 33}}},
		{Name: "3", Faces: [][]int{{37, 39, 41, 43, 47, 49}}},
	}
	sided   = []Plate{{Name: "two-sided", Faces: [][]int{{24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43}, {46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66}}}}
	lowHigh = []Plate{{Name: "low", Faces: [][]int{{16, 17, 19, 21, 23, 29, 30, 31}, {33, 37, 39, 41, 43, 47, 49, 54}}}}
	usual   = []int{24, 24, 28, 32, 40, 44, 48, 56, 64, 72, 86, 100}
)

func ratio(t testing.TB, s string) Fraction {
	t.Helper()
	num, den, cut := strings.Cut(s, "/")
	if !cut {
		den = "1"
	}
	return Of(whole(t, num), whole(t, den))
}

func whole(t testing.TB, s string) int64 {
	t.Helper()
	n, err := strconv.ParseInt(strings.TrimSpace(s), 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// head reads a ratio and circles, or the name of a plate set.
func head(t testing.TB, r string, circles ...string) Head {
	t.Helper()
	h := Head{Ratio: ratio(t, r)}
	switch {
	case len(circles) == 0:
	case circles[0] == "three" || circles[0] == "three plates":
		h.Plates = three
	case circles[0] == "sided" || circles[0] == "two-sided":
		h.Plates = sided
	default:
		var face []int
		for _, c := range circles {
			face = append(face, int(whole(t, c)))
		}
		h.Plates = []Plate{{Faces: [][]int{face}}}
	}
	return h
}

func divisions(t testing.TB, n int) Job {
	t.Helper()
	j, err := Divisions(n)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func angle(t testing.TB, degrees Fraction) Job {
	t.Helper()
	j, err := Angle(degrees, 1)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// of gives the settings of a method, written as the tables write them, in order of preference.
func of(t testing.TB, h Head, j Job, m Method) (out []string) {
	t.Helper()
	all, err := Settings(h, j)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range all {
		if s.Method == m {
			out = append(out, written(s))
		}
	}
	return out
}

// written gives "3 + 16/18", or "3"; of two pins "1 + 7/39 + 29/41", "10/15 - 2/23".
func written(s Setting) string {
	if s.Crank.Holes == 0 {
		return fmt.Sprint(s.Crank.Turns)
	}
	w := fmt.Sprintf("%d + %d/%d", s.Crank.Turns, s.Crank.Holes, s.Crank.Circle)
	sign := "+"
	if s.Against {
		sign = "-"
	}
	if s.Method == Compound {
		w += fmt.Sprintf(" %s %d/%d", sign, s.Back.Holes, s.Back.Circle)
	}
	return w
}

// onto puts a setting of the tables into one form: the whole turns written, the parts of two pins
// in rising order of their circles where both are added.
func onto(s string) string {
	s = strings.ReplaceAll(strings.ReplaceAll(s, "+", " + "), "-", " - ")
	f := strings.Fields(s)
	if len(f) > 0 && strings.Contains(f[0], "/") {
		f = append([]string{"0", "+"}, f...)
	}
	if len(f) == 5 && f[3] == "+" && f[2][strings.Index(f[2], "/"):] > f[4][strings.Index(f[4], "/"):] {
		f[2], f[4] = f[4], f[2]
	}
	return strings.Join(f, " ")
}

func ontoAll(all []string) (out []string) {
	for _, s := range all {
		out = append(out, onto(s))
	}
	return out
}

func TestPublished(t *testing.T) {
	counts := map[string]int{}
	for _, f := range printed.Rows(t, "dividing.tsv", 5) {
		counts[f[0]]++
		g := strings.Fields(f[2])
		var got, want []string
		want = strings.Split(f[3], ", ")
		switch f[0] {
		case "all":
			got = of(t, head(t, g[0], g[2:]...), divisions(t, int(whole(t, g[1]))), Plain)
		case "one", "compound":
			m := map[string]Method{"one": Plain, "compound": Compound}[f[0]]
			got = of(t, head(t, g[0], g[2:]...), divisions(t, int(whole(t, g[1]))), m)
			if !slices.Contains(ontoAll(got), onto(f[3])) {
				t.Errorf("%s %s: %v, printed %s", f[1], f[2], got, f[3])
			}
			continue
		case "angle":
			got = of(t, head(t, g[0], g[2:]...), angle(t, ratio(t, g[1])), Plain)
		case "cover":
			cover(t, head(t, g[0], g[1:]...), f[3])
			continue
		case "direct":
			got, want = divides(t, g), strings.Fields(f[3])
		case "direct one":
			all, _ := Settings(Head{Ratio: Of(40, 1), Direct: []int{int(whole(t, g[1]))}}, divisions(t, int(whole(t, g[0]))))
			got = []string{"0"}
			for _, s := range all {
				if s.Method == Direct {
					got = []string{fmt.Sprint(s.Crank.Holes)}
				}
			}
		case "near", "compound near":
			checkNear(t, f)
			continue
		default:
			t.Fatalf("no check for %q", f[0])
		}
		if len(got) == 0 {
			got = []string{"none"}
		}
		slices.Sort(got)
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s %s %s: %v, printed %v in %s", f[0], f[1], f[2], got, want, f[4])
		}
	}
	if counts["all"] != 14 || counts["angle"] != 18 || counts["compound"] != 8 || counts["cover"] != 2 || len(counts) != 9 {
		t.Errorf("rows checked: %v", counts)
	}
}

// cover holds what is claimed for a set of plates: "all to 50, evens to 100 without 96".
func cover(t *testing.T, h Head, claim string) {
	for _, part := range strings.Split(claim, ", ") {
		part, without, _ := strings.Cut(part, " without ")
		f := strings.Fields(part)
		for n := 2; n <= int(whole(t, f[len(f)-1])); n++ {
			asked := f[0] == "all" || n%2 == 0 || strings.Contains(part, "fives") && n%5 == 0
			if does := len(of(t, h, divisions(t, n), Plain)) > 0; asked && does == (strconv.Itoa(n) == without) {
				t.Errorf("%s: %d is done: %v", claim, n, does)
			}
		}
	}
}

// divides gives every number of divisions that rows of holes do directly.
func divides(t *testing.T, rows []string) (out []string) {
	h := Head{Ratio: Of(40, 1)}
	for _, r := range rows {
		h.Direct = append(h.Direct, int(whole(t, r)))
	}
	for n := 2; n <= MostHoles; n++ {
		if len(of(t, h, divisions(t, n), Direct)) > 0 {
			out = append(out, strconv.Itoa(n))
		}
	}
	return out
}

func checkNear(t *testing.T, f []string) {
	g := strings.Fields(f[2])
	at := strings.LastIndex(f[3], " ")
	want, miss := f[3][:at], printed.Figure(t, f[3][at+1:])
	var s Setting
	var got float64
	if f[0] == "near" {
		n, err := Near(head(t, g[0], g[2:]...), angle(t, ratio(t, g[1])))
		if err != nil {
			t.Fatal(err)
		}
		s, got = n.Single, Seconds(n.Single.PerSpace)/60
	} else {
		j, err := Block(int(whole(t, g[1])), int(whole(t, g[2])))
		if err != nil {
			t.Fatal(err)
		}
		n, err := Near(head(t, g[0], g[3:]...), j)
		if err != nil {
			t.Fatal(err)
		}
		s, got = n.Compound, Seconds(n.Compound.PerSpace)
	}
	// Two pins make one way in several ways: the way is compared.
	if s.turn().Cmp(pins(t, want).turn()) != 0 || math.Abs(got-miss) > 0.0005 {
		t.Errorf("%s %s: %s with an error of %.4f, printed %s", f[1], f[2], written(s), got, f[3])
	}
}

func TestIndexTable(t *testing.T) {
	rows := printed.Rows(t, "dividing_index.tsv", 13)
	checked := map[string]int{}
	for _, f := range rows {
		n := int(whole(t, f[0]))
		j := divisions(t, n)
		for _, c := range []struct {
			name, want string
			h          Head
		}{
			{"three", f[1], Head{Ratio: Of(40, 1), Plates: three}},
			{"sided", f[3], Head{Ratio: Of(40, 1), Plates: sided}},
			{"low_high", f[4], Head{Ratio: Of(40, 1), Plates: lowHigh}},
			{"sixty", f[9], Head{Ratio: Of(60, 1), Plates: three}},
			{"ninety", f[10], Head{Ratio: Of(90, 1), Plates: three}},
			{"five", f[11], Head{Ratio: Of(5, 1), Plates: three}},
		} {
			got := of(t, c.h, j, Plain)
			checked[c.name]++
			// The table gives the least circle, which is the last of ours.
			if c.want == "-" && len(got) > 0 || c.want != "-" && (len(got) == 0 || got[len(got)-1] != onto(c.want)) {
				t.Errorf("%d %s: %v, printed %s", n, c.name, got, c.want)
			}
		}
		if f[2] != "" {
			checked["circles"]++
			got := of(t, Head{Ratio: Of(40, 1), Plates: three}, j, Plain)
			for i := range got {
				_, got[i], _ = strings.Cut(got[i], " + ")
			}
			slices.Reverse(got)
			if strings.Join(got, " ") != f[2] {
				t.Errorf("%d: %v, printed %s", n, got, f[2])
			}
		}
		if _, circle, ok := strings.Cut(f[5], "/"); ok {
			checked["high"]++
			if got := of(t, head(t, "40", circle), j, Plain); !slices.Equal(got, []string{onto(f[5])}) {
				t.Errorf("%d: %v, printed %s", n, got, f[5])
			}
		}
		if f[6] != "" {
			checked["compound"]++
			got := ontoAll(of(t, Head{Ratio: Of(40, 1), Plates: three}, j, Compound))
			if f[6] == "-" && len(got) > 0 || f[6] != "-" && !slices.Contains(got, onto(f[6])) {
				t.Errorf("%d: %v, printed %s", n, got, f[6])
			}
		}
		for i, read := range map[int]func(testing.TB, string) (string, Train){7: trainOf, 8: classicOf} {
			if f[i] != "" {
				checked[[]string{7: "train", 8: "classic"}[i]]++
				way, want := read(t, f[i])
				g, err := Gears(Head{Ratio: Of(40, 1), Plates: three, Gear: Gearing{Wheels: usual, Axis: Level}}, j)
				if err != nil {
					t.Fatal(err)
				}
				found := slices.ContainsFunc(g.Settings, func(s Setting) bool {
					return written(s) == onto(way) && alike(s.Train, want)
				})
				if !found {
					t.Errorf("%d: none of %d settings is the printed %s", n, len(g.Settings), f[i])
				}
			}
		}
	}
	if checked["three"] != len(rows) || checked["circles"] != 76 || checked["high"] != 136 || checked["compound"] != 65 || checked["train"] != 65 || checked["classic"] != 57 {
		t.Errorf("rows checked: %v", checked)
	}
}

// alike says whether two trains have the same wheels, those that drive and those that are driven
// taken in either order.
func alike(a, b Train) bool {
	set := func(x, y int) [2]int { return [2]int{min(x, y), max(x, y)} }
	return a.Pairs == b.Pairs && a.Idlers == b.Idlers && set(a.Spindle, a.StudOut) == set(b.Spindle, b.StudOut) &&
		set(a.Plate, a.StudIn) == set(b.Plate, b.StudIn)
}

// trainOf reads "34/43; e=-14/43; plate-side 86, spindle 28, 2 idlers" and
// "10/43; e=10/43; plate-side 48, stud 24 with 86, spindle 40, 1 idler".
func trainOf(t testing.TB, s string) (string, Train) {
	t.Helper()
	f := strings.Split(s, "; ")
	r := Train{Pairs: 1, Against: strings.HasPrefix(f[1], "e=-")}
	_, err := fmt.Sscanf(f[2], "plate-side %d, spindle %d, %d idler", &r.Plate, &r.Spindle, &r.Idlers)
	if err != nil {
		r.Pairs = 2
		_, err = fmt.Sscanf(f[2], "plate-side %d, stud %d with %d, spindle %d, %d idler", &r.Plate, &r.StudOut, &r.StudIn, &r.Spindle, &r.Idlers)
	}
	if err != nil {
		t.Fatalf("%q: %v", s, err)
	}
	if e := r.Ratio(); "e="+e.String() != f[1] {
		t.Errorf("%q: the train gives %s", s, e)
	}
	return f[0], r
}

// classicOf reads "14/17; W24 P48; 2 idler(s)" and "35/49; W56 S1 40 S2 24 P72; 0 idler(s)":
// P on the spindle, S2 meshing with it, S1 on the same stud, W at the plate.
func classicOf(t testing.TB, s string) (string, Train) {
	t.Helper()
	f := strings.Split(s, "; ")
	r := Train{Pairs: 1, Idlers: int(f[2][0] - '0')}
	if _, err := fmt.Sscanf(f[1], "W%d P%d", &r.Plate, &r.Spindle); err != nil {
		r.Pairs = 2
		if _, err = fmt.Sscanf(f[1], "W%d S1 %d S2 %d P%d", &r.Plate, &r.StudOut, &r.StudIn, &r.Spindle); err != nil {
			t.Fatalf("%q: %v", s, err)
		}
	}
	return f[0], r
}
