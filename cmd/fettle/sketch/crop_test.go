package sketch

import (
	"testing"

	"pgregory.net/rapid"
)

// Law: a narrowed drawing has all lines and texts at the same places to each other, no wider paper than
// needed, and still no text on another: what is written below all lines moves together.
func TestNarrowed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := &Drawing{Width: 180, Height: 120}
		x := rapid.Float64Range(40, 150)
		for range rapid.IntRange(1, 6).Draw(t, "lines") {
			d.Line(Wide, Point{x.Draw(t, "a"), 60}, Point{x.Draw(t, "b"), 100})
		}
		for range rapid.IntRange(0, 6).Draw(t, "notes") {
			_ = d.Leader(Point{x.Draw(t, "at"), 80}, "a note")
		}
		_ = d.Write(Point{3, 12}, "the first line at the foot", lettering)
		_ = d.Write(Point{3, 4}, "the second", lettering)
		n := d.Narrowed()
		if o := n.Overlaps(); len(o) > 0 {
			t.Fatalf("%v", o)
		}
		if n.Width > d.Width+1e-9 || len(n.Texts) != len(d.Texts) || len(n.Strokes) != len(d.Strokes) {
			t.Fatalf("%v wide of %v, %d texts of %d", n.Width, d.Width, len(n.Texts), len(d.Texts))
		}
		by := n.Strokes[0].Points[0].sub(d.Strokes[0].Points[0])
		for i := range d.Strokes {
			for k, p := range d.Strokes[i].Points {
				if n.Strokes[i].Points[k].sub(p).sub(by).len() > 1e-9 {
					t.Fatal("a line is moved otherwise than the first")
				}
			}
		}
		least := n.Width
		for _, s := range n.Strokes {
			for _, p := range s.Points {
				least = min(least, p.X)
			}
		}
		for _, x := range n.Texts {
			least = min(least, x.box().lo.X)
		}
		if least < 1 || least > 2.5 {
			t.Fatalf("the first thing begins %v mm from the edge", least)
		}
	})
}
