package sketch

import (
	"fettle/eval/solid"

	"encoding/xml"
	"fmt"
	"io"
	"math"
	"math/rand"
	"regexp"
	"strconv"
	"strings"
	"testing"

	_ "fettle/schema/seeded"
	"pgregory.net/rapid"
)

func TestNoTextOverlaps(t *testing.T) {
	for name, d := range sheetsOf(t) {
		for _, o := range d.Overlaps() {
			t.Errorf("%s: %s", name, o)
		}
	}
}

// Law 1: whatever dimensions, leaders and notes are asked for, what is drawn overlaps nothing;
// and on a sheet with room the first dozen find a place.
func TestPlacing(t *testing.T) {
	placed, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		d := &Drawing{Width: 297, Height: 210}
		d.Path(Wide, Point{90, 70}, Point{200, 70}, Point{200, 140}, Point{90, 140}, Point{90, 70})
		d.Circle(Wide, Point{130, 105}, 20)
		for range rapid.IntRange(1, 25).Draw(t, "how many") {
			x := rapid.Float64Range(90, 200)
			y := rapid.Float64Range(70, 140)
			words := rapid.StringMatching(`[0-9ØMWi. ±]{1,12}`).Draw(t, "words")
			var err error
			switch rapid.IntRange(0, 4).Draw(t, "kind") {
			case 0:
				err = d.Dimension(Dimension{Point{x.Draw(t, "a"), 140}, Point{x.Draw(t, "b"), 140}, Point{0, 1}, words})
			case 1:
				err = d.Dimension(Dimension{Point{x.Draw(t, "a"), 70}, Point{x.Draw(t, "b"), 70}, Point{0, -1}, words})
			case 2:
				err = d.Dimension(Dimension{Point{90, y.Draw(t, "a")}, Point{90, y.Draw(t, "b")}, Point{-1, 0}, words})
			case 3:
				err = d.Leader(Point{x.Draw(t, "a"), y.Draw(t, "b")}, words)
			default:
				err = d.Write(Point{x.Draw(t, "a"), y.Draw(t, "b")}, words, 3.5)
			}
			if err == nil {
				placed++
			} else {
				refused++
			}
		}
		if o := d.Overlaps(); len(o) > 0 {
			t.Fatalf("%v", o)
		}
	})
	t.Logf("%d placed, %d refused", placed, refused)
	if placed < refused {
		t.Errorf("%d placed, %d refused", placed, refused)
	}
}

// The checks themselves can fail.
func TestOverlapsAreFound(t *testing.T) {
	d := &Drawing{Width: 100, Height: 100}
	d.Texts = []Text{{At: Point{10, 10}, Words: "ten", Height: 3.5}, {At: Point{12, 11}, Words: "ten", Height: 3.5}}
	d.Line(Wide, Point{5, 12}, Point{30, 12})
	if n := len(d.Overlaps()); n != 3 {
		t.Errorf("%d overlaps found, want 3", n)
	}
}

// wellFormed reads a drawing as XML and gives its texts.
func wellFormed(t *testing.T, svg string) (texts []string) {
	t.Helper()
	in := xml.NewDecoder(strings.NewReader(svg))
	inText := false
	for {
		tok, err := in.Token()
		if err == io.EOF {
			return texts
		}
		if err != nil {
			t.Fatal(err)
		}
		switch x := tok.(type) {
		case xml.StartElement:
			inText = x.Name.Local == "text"
			if x.Name.Local == "script" {
				t.Error("a script came through")
			}
		case xml.CharData:
			if inText {
				texts = append(texts, string(x))
			}
		case xml.EndElement:
			inText = false
		}
	}
}

func TestHostileText(t *testing.T) {
	for _, words := range []string{`</text><script>alert(1)</script>`, "\"'&<>", "a\x00b\x1b[31m\u202Ec\u0301", "\xff\xfe", strings.Repeat("W", 5000)} {
		d := drawn(t, words, bracket(), FirstAngle)
		svg := d.SVG()
		texts := wellFormed(t, svg)
		if len(texts) == 0 || strings.ContainsAny(texts[0], "\x00\x1b\u202E") {
			t.Errorf("%q came out as %q", words, texts)
		}
		if o := d.Overlaps(); len(o) > 0 {
			t.Error(o)
		}
	}
	for _, d := range sheetsOf(t) {
		wellFormed(t, d.SVG())
	}
}

// Law 2: an arc written as elliptic arcs ends where it ends, and its half axes are those of the
// ellipse: the sums of squares and the product of any two half diameters that belong together
// stay the same (Apollonius of Perga, Conics, book VII, propositions 12 and 31).
func TestArcs(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	re := regexp.MustCompile(`-?[0-9.]+`)
	for range 300 {
		u, v := Point{r.NormFloat64() * 10, r.NormFloat64() * 10}, Point{r.NormFloat64() * 10, r.NormFloat64() * 10}
		from := r.Float64() * 6
		s := Ellipse(Wide, Point{100, 100}, u, v, from, from+r.Float64()*6.28)
		d := &Drawing{Width: 200, Height: 200}
		var f []float64
		for _, x := range re.FindAllString(d.path(&s), -1) {
			y, _ := strconv.ParseFloat(x, 64)
			f = append(f, y)
		}
		n := len(f)
		end := s.at(s.To)
		if math.Hypot(f[n-2]-end.X, 200-f[n-1]-end.Y) > 0.02 {
			t.Errorf("ends at %v, want %v", f[n-2:], end)
		}
		if a, b := f[2], f[3]; math.Abs(a*a+b*b-u.dot(u)-v.dot(v)) > 0.03*(a+b) || math.Abs(a*b-math.Abs(u.cross(v))) > 0.02*(a+b) {
			t.Errorf("half axes %v, %v of %v, %v", a, b, u, v)
		}
	}
}

// Law 3: the length of hatching times its spacing is the area, and no line leaves it.
func TestHatching(t *testing.T) {
	d := &Drawing{Width: 200, Height: 200}
	outer := []Point{{20, 20}, {120, 20}, {120, 80}, {20, 80}}
	var hole []Point
	for i := range 90 {
		s, c := math.Sincos(float64(i) * math.Pi / 45)
		hole = append(hole, Point{70 + 15*c, 50 + 15*s})
	}
	check(t, d.Hatch([][]Point{outer, hole}, 1))
	sum := 0.0
	for _, s := range d.Strokes {
		sum += s.Points[1].sub(s.Points[0]).len()
		m := s.Points[0].add(s.Points[1]).times(0.5)
		if m.X < 20 || m.X > 120 || m.Y < 20 || m.Y > 80 || m.sub(Point{70, 50}).len() < 14.9 {
			t.Errorf("hatching at %v", m)
		}
	}
	if want := 6000 - math.Pi*225; math.Abs(sum-want) > 0.01*want {
		t.Errorf("%.1f mm of hatching 1 mm apart, want %.1f", sum, want)
	}
	if d.Hatch(nil, math.NaN()) == nil || d.Hatch(nil, 0) == nil {
		t.Error("hatching without a spacing")
	}
}

// Lines drawn over one another are drawn once, the first.
func TestOnce(t *testing.T) {
	line := func(p Pen, x0, x1 float64) Stroke { return Stroke{Pen: p, Points: []Point{{x0, 5}, {x1, 5}}} }
	got := once([]Stroke{line(Hidden, 0, 50), line(Hidden, 40, 60)}, []Stroke{line(Wide, 10, 20)})
	want := []float64{0, 10, 20, 50, 50, 60}
	var xs []float64
	for _, s := range got {
		xs = append(xs, s.Points[0].X, s.Points[1].X)
	}
	if fmt.Sprint(xs) != fmt.Sprint(want) {
		t.Errorf("%v, want %v", xs, want)
	}
	c := Ellipse(Hidden, Point{}, Point{10, 0}, Point{0, 10}, 0, 2*math.Pi)
	half := Ellipse(Wide, Point{}, Point{10, 0}, Point{0, 10}, 0, math.Pi)
	rest := once([]Stroke{c}, []Stroke{half})
	if len(rest) != 1 || math.Abs(rest[0].To-rest[0].From-math.Pi) > 0.15 {
		t.Errorf("what is left of a circle under half of it: %+v", rest)
	}
	if left := once([]Stroke{c}, []Stroke{c}); len(left) != 0 {
		t.Errorf("of a circle under itself %d are left", len(left))
	}
}

// Law 4: the same part gives the same bytes; what cannot be drawn is an error.
func TestParts(t *testing.T) {
	if a, b := drawn(t, "a", bracket(), ThirdAngle).SVG(), drawn(t, "a", bracket(), ThirdAngle).SVG(); a != b {
		t.Error("two drawings of one part differ")
	}
	if _, _, err := Part("nothing", solid.Raw(solid.Shape{}), FirstAngle, Sizes{}); err == nil {
		t.Error("nothing was drawn")
	}
	if _, _, err := Part("house", solid.Raw(solid.Box(vec{}, vec{400000, 10, 10})), FirstAngle, Sizes{}); err == nil {
		t.Error("a part of 400 m was drawn")
	}
	for _, size := range []float64{0.5, 2, 7, 30, 110, 400, 3000, 30000} {
		for _, pr := range []Projection{FirstAngle, ThirdAngle} {
			p := solid.Raw(solid.Box(vec{}, vec{size, size / 2, size / 3}))
			d, left, err := Part("part", p, pr, overall(p))
			if len(left) > 0 {
				t.Errorf("no room for %q", left)
			}
			if err != nil {
				t.Errorf("%v: %v", size, err)
				continue
			}
			if o := d.Overlaps(); len(o) > 0 {
				t.Errorf("%v: %v", size, o)
			}
		}
	}
	d := &Drawing{Width: 100, Height: 100}
	for _, m := range []Dimension{{Out: Point{1, 1}}, {Out: Point{}}, {From: Point{X: math.NaN()}, Out: Point{0, 1}}, {Out: Point{0, 1}}} {
		if d.Dimension(m) == nil {
			t.Errorf("drawn: %+v", m)
		}
	}
	if d.Leader(Point{math.Inf(1), 0}, "x") == nil || d.Write(Point{50, 50}, "x", math.NaN()) == nil {
		t.Error("drawn at no place")
	}
}
