// Package sheet puts on paper what a dry run knows: drawings of parts and set-ups, and the sheet
// to take to the machine. Every figure comes from the dry run and the reckoner.
package sheet

import (
	"math"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
)

// What is drawn around piece and tool: a share of their size, and at least so many mm.
const (
	marginShare = 0.2
	marginLeast = 12.0
	toolShown   = 30.0 // of the tool above the piece
	bodyShown   = 20.0 // of a chuck behind its jaws
	jawHalf     = 6.0  // half the width of a jaw as drawn: shops do not tell it
)

// Milled draws a holding on a mill or drill press as it is before an operation, the tool at its
// deepest; of a holding alone, as the piece is put up.
func Milled(h *eval.Holding, k *eval.Cut) sketch.Setting {
	s := sketch.Setting{Name: h.Spot.String(), Along: sketch.Right, Other: sketch.Top,
		Says: "Seen along the jaws, from their right end; from above"}
	switch d := h.Choice.Divided; {
	case d != nil && !d.Upright: // its axis lies along the table
		s.Along, s.Says = sketch.Front, "Seen from the front of the table; from above"
	case h.Choice.Vise == nil:
		s.Says = "Seen from the right end of the table; from above"
	}
	piece := h.Before.Piece
	if k != nil {
		s.Name, piece = k.Spot.String(), k.Before.Piece
		if len(k.Works) > 0 && k.Works[0].Turn != nil {
			piece = piece.Placed(*k.Works[0].Turn)
		}
	}
	s.Piece = piece.Placed(h.Pose)
	bound(&s)
	top, under, front := s.Hi[2], s.Lo[2], s.Lo[1]
	for _, o := range h.Obstacles {
		s.Things = append(s.Things, sketch.Thing{Name: short(o.Name), Shape: o.Least})
	}
	if h.Bed.Is() {
		s.Lo[2] = min(s.Lo[2], h.Bed.V)
	}
	if k != nil {
		tool(&s, k)
	}
	grow(&s)
	if h.JawTop.Is() && h.Choice.Vise != nil {
		gauge := func(a, b float64) {
			if math.Abs(b-a) > 0.05 {
				s.Gauges = append(s.Gauges, sketch.Gauge{From: solid.Vec{0, front, a}, To: solid.Vec{0, front, b},
					Out: sketch.Point{X: -1}, Words: sketch.Figure(math.Round((b-a)*100) / 100)})
			}
		}
		gauge(h.JawTop.V, top)
		if h.Bed.Is() {
			gauge(h.Bed.V, under)
		}
	}
	return s
}

// bound takes in the piece.
func bound(s *sketch.Setting) {
	for a := range 3 {
		s.Lo[a], s.Hi[a] = s.Piece.Extent(a, -1), s.Piece.Extent(a, 1)
	}
}

// reach takes in a place.
func reach(s *sketch.Setting, v solid.Vec) {
	for a := range 3 {
		s.Lo[a], s.Hi[a] = min(s.Lo[a], v[a]), max(s.Hi[a], v[a])
	}
}

// grow leaves a margin around.
func grow(s *sketch.Setting) {
	most := 0.0
	for a := range 3 {
		most = max(most, s.Hi[a]-s.Lo[a])
	}
	m := max(marginLeast, marginShare*most)
	for a := range 3 {
		s.Lo[a] -= m
		s.Hi[a] += m
	}
}

// tool stands the stack at the deepest place of its ways, and cuts the piece there.
func tool(s *sketch.Setting, k *eval.Cut) {
	at, ok := deepest(k)
	if !ok {
		return
	}
	s.At, s.Cut = at, true
	top := s.Hi[2]
	for _, w := range k.Works {
		for _, m := range w.Moves {
			s.Ways = append(s.Ways, [2]solid.Vec{m.From, m.To})
			for _, v := range []solid.Vec{m.From, m.To} {
				reach(s, solid.Vec{v[0], v[1], min(max(v[2], s.Lo[2]), s.Hi[2])})
			}
		}
	}
	for _, b := range k.Stack.Bodies {
		t := b.Least
		from, to := at.Add(solid.Vec{0, 0, t.Z0}), at.Add(solid.Vec{0, 0, t.Z1})
		if !(t.Z1 > t.Z0) {
			continue
		}
		s.Things = append(s.Things, sketch.Thing{Name: short(b.Name), Tool: true, Shape: solid.Cone(from, to, t.R0, t.R1)})
		if from[2] < top+toolShown {
			r := max(t.R0, t.R1)
			reach(s, solid.Vec{at[0] - r, at[1] - r, from[2]})
			reach(s, solid.Vec{at[0] + r, at[1] + r, min(to[2], top+toolShown)})
		}
	}
}

// deepest is the lowest place of the tool's ways; of places as low the first.
func deepest(k *eval.Cut) (at solid.Vec, ok bool) {
	for _, w := range k.Works {
		for _, m := range w.Moves {
			// The middle of a level way shows more of what is cut than its end.
			places := []solid.Vec{m.From, m.To}
			if math.Abs(m.From[2]-m.To[2]) < 1e-9 {
				places = []solid.Vec{m.From.Add(m.To).Times(0.5)}
			}
			for _, v := range places {
				if !ok || v[2] < at[2]-1e-9 {
					at, ok = v, true
				}
			}
		}
	}
	return at, ok
}

// Turned draws a holding on a lathe, headstock on the left, as it is before an operation, with
// the ways of the tool.
func Turned(h *eval.Chucking, k *eval.Turn) sketch.Setting {
	s := sketch.Setting{Name: h.Spot.String(), Along: sketch.Top, Other: sketch.Right, WaysAlong: true, Cut: true,
		Says: "Section through the axis, from above; from the tailstock"}
	piece := h.Before.Piece
	if k != nil {
		s.Name, piece = k.Spot.String(), k.Before.Piece
	}
	s.Piece = piece.Placed(onLathe(h))
	s.Piece = shortened(s.Piece, h)
	bound(&s)
	chuck(&s, h)
	if k != nil {
		for _, w := range k.Works {
			s.Ways = append(s.Ways, ways(&w)...)
		}
		for _, w := range s.Ways {
			reach(&s, w[0])
			reach(&s, w[1])
		}
	}
	grow(&s)
	out := s.Piece.Extent(0, 1)
	if out > 0.05 {
		y := -s.Piece.Extent(1, 1)
		s.Gauges = append(s.Gauges, sketch.Gauge{From: solid.Vec{0, y, 0}, To: solid.Vec{out, y, 0}, Out: sketch.Point{Y: -1},
			Words: sketch.Figure(math.Round(out*100) / 100)})
	}
	return s
}

// onLathe is the pose in the lathe's frame: x along the axis from the jaw face to the tailstock.
func onLathe(h *eval.Chucking) solid.Pose {
	if h.Sign < 0 {
		return solid.Attitude(solid.Vec{0, 0, 1}, solid.Vec{0, -1, 0}).Shifted(solid.Vec{h.Jaw, 0, 0})
	}
	return solid.Still().Shifted(solid.Vec{-h.Jaw, 0, 0})
}

// chuck stands body and jaws of a chuck, as far as their sizes are known.
func chuck(s *sketch.Setting, h *eval.Chucking) {
	c, l := h.Choice.Chuck, h.JawLength
	if c == nil || !l.Is() || !(h.Gripped > 0) {
		return
	}
	outer := c.Diameter.Or(0) / 2
	if outer <= h.Gripped/2 {
		outer = h.Gripped/2 + 10
	}
	// Whatever their number, two jaws are turned into the plane of the drawing.
	for _, side := range []float64{-1, 1} {
		a, b := side*h.Gripped/2, side*outer
		s.Things = append(s.Things, sketch.Thing{Name: "jaws",
			Shape: solid.Box(solid.Vec{-l.V, min(a, b), -jawHalf}, solid.Vec{0, max(a, b), jawHalf})})
	}
	if d := c.Diameter; d.Is() {
		back := -l.V - min(c.Length.Or(bodyShown), bodyShown)
		s.Things = append(s.Things, sketch.Thing{Name: c.Path(), Shape: solid.Cylinder(solid.Vec{back, 0, 0}, solid.Vec{-l.V, 0, 0}, d.V/2)})
		reach(s, solid.Vec{back, -d.V / 2, -d.V / 2})
		reach(s, solid.Vec{-l.V, d.V / 2, d.V / 2})
	}
}

// shortened leaves out what of a long bar lies behind the chuck's face.
func shortened(p *solid.Piece, h *eval.Chucking) *solid.Piece {
	behind := -h.JawLength.Or(0) - bodyShown
	if lo := p.Extent(0, -1); lo < behind-bodyShown {
		const wide = 1e4
		return p.Cut(solid.Removal{Take: solid.Box(solid.Vec{lo - 1, -wide, -wide}, solid.Vec{behind, wide, wide}), By: "left out of the drawing"})
	}
	return p
}

// ways are those of the tip on the operator's side of the axis, in the lathe's frame.
func ways(w *eval.Turning) [][2]solid.Vec {
	a, b := solid.Vec{w.U1, -w.R1, 0}, solid.Vec{w.U0, -w.R0, 0}
	if math.Abs(w.U1-w.U0) < 1e-9 {
		a[1] = -w.Had
	}
	return [][2]solid.Vec{{a, b}}
}

// short is a name without its article, and without the thing's name where its kind says enough:
// "fixed jaw", "collet_chuck.er32".
func short(name string) string {
	name = strings.TrimPrefix(name, "the ")
	if kind, of, ok := strings.Cut(name, " of "); ok {
		if kind == "cutting part" {
			return of
		}
		return kind
	}
	return name
}
