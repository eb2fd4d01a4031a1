package sketch

import (
	"fettle/eval/solid"
	"math"

	"flag"
	"os"
	"path/filepath"
	"testing"
)

var renew = flag.Bool("renew", false, "write the expected drawings anew")

type vec = solid.Vec

// bracket is a block with a step, two holes, a counterbore, a slot and a cross hole.
func bracket() *solid.Piece {
	hole := func(x, y, r, z0, z1 float64, by string) solid.Removal {
		return solid.Removal{Take: solid.Cylinder(vec{x, y, z0}, vec{x, y, z1}, r), By: by}
	}
	return solid.Raw(solid.Box(vec{}, vec{80, 40, 30})).Cut(
		solid.Removal{Take: solid.Box(vec{50, -1, 12}, vec{81, 41, 31}), By: "step"},
		hole(20, 20, 6, -1, 31, "bore"), hole(20, 20, 10, 22, 31, "counterbore"),
		hole(65, 12, 3.3, -1, 31, "hole"), hole(65, 28, 3.3, -1, 31, "hole"),
		solid.Removal{Take: solid.Box(vec{34, -1, 24}, vec{40, 41, 31}), By: "slot"},
		solid.Removal{Take: solid.Cylinder(vec{-1, 20, 11}, vec{30, 20, 11}, 3), By: "cross"},
	)
}

// spindle is a bar turned down with a chamfer, a groove and a flat.
func spindle() *solid.Piece {
	ring := func(x0, x1, r float64, by string) solid.Removal {
		return solid.Removal{Take: solid.Cylinder(vec{x0, 0, 0}, vec{x1, 0, 0}, 20),
			Less: []solid.Shape{solid.Cylinder(vec{x0 - 1, 0, 0}, vec{x1 + 1, 0, 0}, r)}, By: by}
	}
	return solid.Raw(solid.Cylinder(vec{}, vec{90, 0, 0}, 15)).Cut(
		ring(50, 91, 10, "turn"), ring(45, 50, 8, "groove"),
		solid.Removal{Take: solid.Cylinder(vec{88, 0, 0}, vec{91, 0, 0}, 20),
			Less: []solid.Shape{solid.Cone(vec{80, 0, 0}, vec{98, 0, 0}, 18, 0)}, By: "chamfer"},
		solid.Removal{Take: solid.Box(vec{-1, -20, 10}, vec{25, 20, 20}), By: "flat"},
		solid.Removal{Take: solid.Cylinder(vec{12, 0, -20}, vec{12, 0, 20}, 3), By: "pin"},
	)
}

func drawn(t *testing.T, name string, p *solid.Piece, pr Projection) *Drawing {
	t.Helper()
	d, left, err := Part(name, p, pr, overall(p))
	if len(left) > 0 {
		t.Errorf("no room for %q", left)
	}
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func sheetsOf(t *testing.T) map[string]*Drawing {
	out := map[string]*Drawing{
		"bracket-first": drawn(t, "bracket", bracket(), FirstAngle),
		"bracket-third": drawn(t, "bracket", bracket(), ThirdAngle),
		"spindle-first": drawn(t, "spindle <\"&'> of steel", spindle(), FirstAngle),
	}
	d := &Drawing{Width: 210, Height: 120, Title: "section"}
	lines, hatch, err := Front.Section(bracket(), vec{0, 20, 0}, Point{40, 40}, 1.5)
	if err != nil {
		t.Fatal(err)
	}
	d.Strokes = lines
	check(t, d.Hatch(hatch, 3))
	check(t, d.Dimension(Dimension{Point{40, 40}, Point{160, 40}, Point{0, -1}, "80"}))
	check(t, d.Dimension(Dimension{Point{91, 76}, Point{100, 76}, Point{0, 1}, "6 +0.03"}))
	check(t, d.Dimension(Dimension{Point{160, 40}, Point{160, 58}, Point{1, 0}, "12"}))
	check(t, d.Leader(Point{61, 85}, "Ø12 through"))
	out["section"] = d
	return out
}

func check(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Error(err)
	}
}

func TestExpectedDrawings(t *testing.T) {
	for name, d := range sheetsOf(t) {
		path := filepath.Join("..", "..", "..", "testdata", "sketch", name+".svg")
		got := d.SVG()
		if *renew {
			check(t, os.WriteFile(path, []byte(got), 0o644))
			continue
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(want) {
			t.Errorf("%s.svg differs: go test -run Expected -renew, and look at it", name)
		}
	}
}

// overall are the three outer sizes of a piece.
func overall(p *solid.Piece) (s Sizes) {
	for axis, in := range []Which{InFront, Above, InFront} {
		lo, hi := p.Extent(axis, -1), p.Extent(axis, 1)
		s.Lengths = append(s.Lengths, Length{In: in, Axis: axis, From: lo, To: hi, At: math.NaN(), Words: Figure(hi - lo)})
	}
	return s
}
