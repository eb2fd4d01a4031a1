package sketch

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"fettle/eval/solid"

	"pgregory.net/rapid"
)

// block is a set-up of a block between two jaws, with all that a setting can have.
func block(name string) Setting {
	piece := solid.Raw(solid.Box(solid.Vec{0, -20, 40}, solid.Vec{50, 0, 60}))
	lo, hi := solid.Vec{-10, -35, 30}, solid.Vec{60, 15, 90}
	return Setting{
		Name: name, Piece: piece, Lo: lo, Hi: hi,
		Things: []Thing{
			{Name: name + " fixed", Shape: solid.Box(solid.Vec{-5, 0, 30}, solid.Vec{55, 12, 50})},
			{Name: name + " moving", Shape: solid.Box(solid.Vec{-5, -32, 30}, solid.Vec{55, -20, 50})},
			{Name: name + " tool", Tool: true, Shape: solid.Cylinder(solid.Vec{25, -10, 45}, solid.Vec{25, -10, 120}, 4), In: []int{0}},
		},
		Panes: []Pane{
			{View: Right, Says: name, Cut: true, At: solid.Vec{25, -10, 45},
				Gauges: []Gauge{{From: solid.Vec{0, -20, 50}, To: solid.Vec{0, -20, 60}, Out: Point{-1, 0}, Words: "10"}},
				Passes: []Passage{{A: solid.Vec{25, -6, 48}, B: solid.Vec{25, 0, 48}, Words: "6"}, {A: solid.Vec{25, -20, 48}, B: solid.Vec{25, -20, 48}, Meets: true, Words: "CLASH " + name}},
				Tags:   []Tag{{At: solid.Vec{0, 0, 60}, Words: name}}, Zero: []solid.Vec{{0, 0, 60}}},
			{View: Top, Says: name, Ways: []Way{{From: solid.Vec{5, -5, 60}, To: solid.Vec{5, -5, 40}, Number: "1"}, {From: solid.Vec{5, -5, 60}, To: solid.Vec{45, -5, 60}, Number: "2"}}},
		},
		Foot: []string{name, name},
	}
}

func TestSettingHoldsItsWords(t *testing.T) {
	d, err := Set(block("jaw"))
	if err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, x := range d.Texts {
		all = append(all, x.Words)
	}
	words := strings.Join(all, " ")
	for _, want := range []string{"jaw fixed", "jaw moving", "jaw tool", "10", "6", "CLASH jaw", "1", "2", ", in mm."} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is not on the drawing: %s", want, words)
		}
	}
	for _, o := range append(d.Overlaps(), d.Struck()...) {
		t.Error(o)
	}
}

// Names and captions are someone else's: whatever they are, they stay texts, on the sheet and beside
// each other.
func TestHostileWordsInASetting(t *testing.T) {
	for _, name := range []string{
		`</text><script>alert(1)</script>`, "\"'&<>", "a\x00b\x1b[31m\u202Ec\u0301", "\xff\xfe", strings.Repeat("W", 3000), strings.Repeat("W ", 900),
		strings.Repeat("a.b[", 80), "", " ", "[", ".", "\x00",
	} {
		d, err := Set(block(name))
		if err != nil {
			t.Errorf("%.20q: %v", name, err)
			continue
		}
		svg := d.SVG()
		in := xml.NewDecoder(strings.NewReader(svg))
		for {
			tok, err := in.Token()
			if err == io.EOF {
				break
			}
			if err != nil {
				t.Fatalf("%.20q: %v", name, err)
			}
			if e, ok := tok.(xml.StartElement); ok && e.Name.Local == "script" {
				t.Errorf("%.20q: a script came through", name)
			}
		}
		if strings.ContainsAny(svg, "\x00\x1b\u202E") {
			t.Errorf("%.20q came through", name)
		}
		for _, o := range d.Overlaps() {
			t.Errorf("%.20q: %s", name, o)
		}
	}
}

// Law: wherever things, rooms and sizes lie, no text overlaps a text or a wide line, all lies on the
// sheet, and a second drawing has the same bytes.
func TestSettingLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := block(rapid.StringMatching(`[a-z_.0-9\[\] ]{0,40}`).Draw(t, "name"))
		at := func() solid.Vec {
			return solid.Vec{rapid.Float64Range(-10, 60).Draw(t, "x"), rapid.Float64Range(-35, 15).Draw(t, "y"), rapid.Float64Range(30, 90).Draw(t, "z")}
		}
		for range rapid.IntRange(0, 6).Draw(t, "more") {
			p := &s.Panes[rapid.IntRange(0, 1).Draw(t, "pane")]
			words := rapid.StringMatching(`[0-9A-Z a-z]{1,60}`).Draw(t, "words")
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				p.Tags = append(p.Tags, Tag{At: at(), Words: words, Dot: rapid.Bool().Draw(t, "dot")})
			case 1:
				p.Passes = append(p.Passes, Passage{A: at(), B: at(), Words: words})
			case 2:
				a, b := at(), at()
				b[0], b[1] = a[0], a[1]
				p.Gauges = append(p.Gauges, Gauge{From: a, To: b, Out: Point{-1, 0}, Words: words[:min(len(words), 6)]})
			default:
				p.Ways = append(p.Ways, Way{From: at(), To: at(), Number: "7"})
			}
		}
		d, err := Set(s)
		if err != nil {
			t.Fatal(err)
		}
		if o := d.Overlaps(); len(o) > 0 {
			t.Fatal(o)
		}
		for i := range d.Strokes {
			for _, p := range d.Strokes[i].Points {
				if !(p.X >= 0 && p.X <= d.Width && p.Y >= 0 && p.Y <= d.Height) {
					t.Fatalf("a line lies beside the sheet, at %v", p)
				}
			}
		}
		if again, err := Set(s); err != nil || again.SVG() != d.SVG() {
			t.Fatal("drawn twice it differs")
		}
	})
}

// The check can fail.
func TestStruckTextsAreFound(t *testing.T) {
	d := &Drawing{Width: 100, Height: 100}
	d.Texts = []Text{{At: Point{10, 10}, Words: "ten", Height: 2.5}}
	if n := len(d.Struck()); n != 0 {
		t.Errorf("%d, want none", n)
	}
	d.Line(Narrow, Point{5, 11}, Point{30, 11.5})
	if n := len(d.Struck()); n != 1 {
		t.Errorf("%d, want 1", n)
	}
}

func TestNothingToSet(t *testing.T) {
	for _, s := range []Setting{{}, {Piece: solid.Raw(solid.Box(solid.Vec{}, solid.Vec{1, 1, 1}))}} {
		if _, err := Set(s); err == nil {
			t.Errorf("%v is drawn", s)
		}
	}
	s := block("x")
	s.Hi[0] = 1e9
	if _, err := Set(s); err == nil {
		t.Error("a thing of a thousand kilometres is drawn")
	}
}
