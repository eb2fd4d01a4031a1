package solid

import (
	"math/rand"
	"testing"
)

type count struct{ straight, arc, traced, closed int }

func tally(es []Edge, keep func(Edge) bool) (c count) {
	for _, e := range es {
		if !keep(e) {
			continue
		}
		switch e.Kind {
		case Straight:
			c.straight++
		case Arc:
			c.arc++
		case Traced:
			c.traced++
		}
		if e.Closed() {
			c.closed++
		}
	}
	return c
}

func every(Edge) bool         { return true }
func visible(e Edge) bool     { return e.Visible && !e.Contour }
func seenContour(e Edge) bool { return e.Visible && e.Contour }
func hidden(e Edge) bool      { return !e.Visible && !e.Contour }

func seen(t *testing.T, p *Piece, towards Vec) []Edge {
	t.Helper()
	es, err := p.Seen(towards)
	if err != nil {
		t.Fatal(err)
	}
	return es
}

// What was counted by hand on a sheet of paper.
func TestEdgesCounted(t *testing.T) {
	block := Raw(Box(Vec{}, Vec{60, 40, 20}))
	hole := Removal{Take: Cylinder(Vec{30, 20, -1}, Vec{30, 20, 21}, 7), By: "hole"}
	general := Vec{-1, -1.7, 0.8}
	for _, c := range []struct {
		what              string
		p                 *Piece
		all               count // edges of the metal
		see, not, contour count
	}{
		{"a box", block, count{straight: 12}, count{straight: 9}, count{straight: 3}, count{}},
		{"a box with a hole through", block.Cut(hole), count{straight: 12, arc: 2, closed: 2},
			count{straight: 9, arc: 1, closed: 1}, count{straight: 3, arc: 1, closed: 1}, count{}},
		{"a step flush with a step", block.Cut(Removal{Take: Box(Vec{-1, -1, 10}, Vec{20, 20, 21}), By: "a"},
			Removal{Take: Box(Vec{-1, 20, 10}, Vec{20, 41, 21}), By: "a"}), count{straight: 21}, // 18, of which two steps share three
			count{straight: 18}, count{straight: 3}, count{}},
		{"a step that is no step", block.Cut(Removal{Take: Box(Vec{20, 10, 20}, Vec{70, 50, 30})}), count{straight: 12}, count{straight: 9}, count{straight: 3}, count{}},
		{"a slot with round ends", block.Cut(Removal{Take: Box(Vec{20, 15, 10}, Vec{40, 25, 21}), By: "slot"},
			Removal{Take: Cylinder(Vec{20, 20, 10}, Vec{20, 20, 21}, 5), By: "slot"},
			Removal{Take: Cylinder(Vec{40, 20, 10}, Vec{40, 20, 21}, 5), By: "slot"}), count{straight: 16, arc: 4}, count{straight: 11, arc: 2}, count{straight: 5, arc: 2}, count{}},
		{"a hole across a hole", block.Cut(hole, Removal{Take: Cylinder(Vec{-1, 20, 10}, Vec{61, 20, 10}, 4), By: "cross"}),
			count{straight: 12, arc: 4, traced: 2, closed: 6}, count{straight: 9, arc: 2, closed: 2}, count{}, count{}},
		{"a bar", Raw(Cylinder(Vec{}, Vec{0, 0, 50}, 10)), count{arc: 2, closed: 2}, count{arc: 2, closed: 1}, count{arc: 1}, count{straight: 2}},
		{"a bar turned down", Raw(Cylinder(Vec{}, Vec{0, 0, 50}, 10)).Cut(Removal{Take: Cylinder(Vec{0, 0, 30}, Vec{0, 0, 51}, 11),
			Less: []Shape{Cylinder(Vec{0, 0, 29}, Vec{0, 0, 52}, 6)}, By: "turn"}), count{arc: 4, closed: 4}, count{}, count{}, count{straight: 4}},
	} {
		t.Run(c.what, func(t *testing.T) {
			if got := tally(c.p.Edges(), every); got != c.all {
				t.Errorf("edges %+v, counted %+v", got, c.all)
				for _, e := range c.p.Edges() {
					t.Logf("%v %v %v %v", e.Kind, e.By, e.Points[0], e.Points[len(e.Points)-1])
				}
			}
			es := seen(t, c.p, general)
			for _, x := range []struct {
				what      string
				got, want count
			}{{"visible", tally(es, visible), c.see}, {"hidden", tally(es, hidden), c.not}, {"contours", tally(es, seenContour), c.contour}} {
				if x.want != (count{}) && x.got != x.want {
					t.Errorf("%s: %+v, counted %+v", x.what, x.got, x.want)
				}
			}
		})
	}
}

func BenchmarkSeen20(b *testing.B) {
	r := rand.New(rand.NewSource(3))
	var ps []*Piece
	for range 20 {
		ps = append(ps, randomPiece(r, 20))
	}
	i := 0
	for b.Loop() {
		if _, err := ps[i%20].Seen(Vec{1, -1.3, 0.9}); err != nil {
			b.Fatal(err)
		}
		i++
	}
}

func BenchmarkEdges20(b *testing.B) {
	r := rand.New(rand.NewSource(3))
	var ps []*Piece
	for range 20 {
		ps = append(ps, randomPiece(r, 20))
	}
	i := 0
	for b.Loop() {
		ps[i%20].Edges()
		i++
	}
}
