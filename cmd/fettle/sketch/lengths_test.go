package sketch

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"fettle/eval/solid"

	"pgregory.net/rapid"
)

// Law: whatever distances and notes a part has, each stands on its drawing once or is given back, and no
// text lies on another or on a wide line. With few of them all find room.
func TestSizesFindRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := vec{rapid.Float64Range(5, 150).Draw(t, "x"), rapid.Float64Range(5, 80).Draw(t, "y"), rapid.Float64Range(2, 60).Draw(t, "z")}
		p := solid.Raw(solid.Box(vec{}, size))
		pr := Projection(rapid.IntRange(0, 1).Draw(t, "projection"))
		s := overall(p)
		axes := [3][2]int{{0, 2}, {0, 1}, {1, 2}}
		for i := range rapid.IntRange(0, 20).Draw(t, "lengths") {
			in := Which(rapid.IntRange(0, 2).Draw(t, "view"))
			axis := axes[in][rapid.IntRange(0, 1).Draw(t, "axis")]
			a := rapid.Float64Range(0, 0.8).Draw(t, "from") * size[axis]
			b := a + rapid.Float64Range(0.05, 1).Draw(t, "long")*(size[axis]-a)
			l := Length{In: in, Axis: axis, From: a, To: b, At: math.NaN(), Words: fmt.Sprintf("L%d.25", i)}
			if l.Placed = rapid.Bool().Draw(t, "placed"); l.Placed {
				l.From = 0
			}
			s.Lengths = append(s.Lengths, l)
		}
		for i := range rapid.IntRange(0, 8).Draw(t, "notes") {
			at := vec{}
			for k := range 3 {
				at[k] = rapid.Float64Range(0, 1).Draw(t, "at") * size[k]
			}
			s.Notes = append(s.Notes, Note{In: Which(rapid.IntRange(0, 2).Draw(t, "view")), At: at, Radius: 1, Words: fmt.Sprintf("N%d H7 through", i)})
		}
		d, left, err := Part("part", p, pr, s)
		if err != nil {
			t.Fatal(err)
		}
		if o := d.Overlaps(); len(o) > 0 {
			t.Fatalf("%v", o)
		}
		want := map[string]int{}
		for _, l := range s.Lengths {
			want[l.Words]++
		}
		for _, n := range s.Notes {
			want[n.Words]++
		}
		for _, x := range d.Texts {
			want[x.Words]--
		}
		for _, w := range left {
			want[w]--
		}
		for _, l := range s.Lengths {
			if want[l.Words] != 0 {
				t.Fatalf("%q is not there once: %d too few", l.Words, want[l.Words])
			}
		}
		for _, n := range s.Notes {
			if want[n.Words] != 0 {
				t.Fatalf("%q is not there once: %d too few", n.Words, want[n.Words])
			}
		}
		if len(s.Lengths) < 7 && len(s.Notes) < 3 && len(left) > 0 {
			t.Fatalf("no room for %q of %d distances and %d notes", left, len(s.Lengths), len(s.Notes))
		}
	})
}

// Arrowheads stand as far apart as the part's places are, times the scale.
func TestArrowsToScale(t *testing.T) {
	p := solid.Raw(solid.Box(vec{}, vec{60, 40, 20}))
	for _, c := range []struct {
		l  Length
		up bool
	}{
		{Length{In: InFront, Axis: 0, From: 10, To: 35, At: math.NaN(), Words: "25"}, false},
		{Length{In: InFront, Axis: 2, From: 2, To: 19, At: math.NaN(), Words: "17"}, true},
		{Length{In: Above, Axis: 1, From: 5, To: 31, At: math.NaN(), Words: "26"}, true},
		{Length{In: Aside, Axis: 1, From: 5, To: 31, At: math.NaN(), Words: "26"}, false},
		{Length{In: InFront, Axis: 1, From: 5, To: 31, At: math.NaN(), Words: "26"}, false}, // the view looks along it
	} {
		d, left, err := Part("part", p, FirstAngle, Sizes{Lengths: []Length{c.l}})
		if err != nil || len(left) > 0 {
			t.Fatalf("no room for %q, error %v", left, err)
		}
		if c.l.In == InFront && c.l.Axis == 1 {
			if len(d.Heads) > 0 {
				t.Errorf("%+v is drawn in a view that looks along it", c.l)
			}
			continue
		}
		scale := 0.0 // that of the strip at the foot
		for _, x := range d.Texts {
			var a, b float64
			if n, _ := fmt.Sscanf(x.Words, "scale %f:%f", &a, &b); n == 2 {
				scale = a / b
			}
		}
		if len(d.Heads) != 2 || scale == 0 {
			t.Fatalf("%d arrowheads, scale %v", len(d.Heads), scale)
		}
		gap := d.Heads[1].At.sub(d.Heads[0].At)
		if c.up {
			gap = Point{gap.Y, gap.X}
		}
		if math.Abs(math.Abs(gap.X)-(c.l.To-c.l.From)*scale) > 1e-9 || math.Abs(gap.Y) > 1e-9 {
			t.Errorf("%+v: the arrows stand %v apart at scale %v", c.l, gap, scale)
		}
	}
}

// Law: figures moved apart keep their order and their middle, and are as far apart as asked.
func TestSpread(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ts := rapid.SliceOfN(rapid.Float64Range(0, 100), 1, 30).Draw(t, "places")
		slices.Sort(ts)
		least := rapid.Float64Range(0.1, 10).Draw(t, "least")
		was := slices.Clone(ts)
		spread(ts, least)
		sum := 0.0
		for i := range ts {
			sum += ts[i] - was[i]
			if i > 0 && ts[i]-ts[i-1] < least-1e-9 {
				t.Fatalf("%v and %v are nearer than %v", ts[i-1], ts[i], least)
			}
		}
		if math.Abs(sum) > 1e-6 {
			t.Fatalf("all together moved by %v", sum)
		}
	})
}
