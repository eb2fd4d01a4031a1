package sheet

import (
	"fmt"
	"math"
	"strings"

	"fettle/cmd/fettle/sketch"
	"fettle/eval"
	"fettle/eval/solid"
	"fettle/schema/model"
)

// Sheet that is bent stands on the page twice: flat, with the lines about which it is bent, and folded. The
// sizes of the flat sheet are worked out by the dry run; those that the recipe gives stand in the table.

// flatSheet puts the flat sheet of a bent part on the page.
func (m *maker) flatSheet(t *eval.PartTrace) {
	if t.Lies == nil {
		return
	}
	w := t.Part.Flat
	rows := [][]string{{"the sheet", hundredths(w.Part.Size[0]) + " x " + hundredths(w.Part.Size[1]) + " mm, " + hundredths(w.Part.Size[2]) + " mm thick", ""}}
	for i := range w.Bends {
		a, _ := w.BendLine(i)
		k := &w.Bends[i]
		rows = append(rows, []string{k.Form.Name(), fmt.Sprintf("%s mm from the %s", hundredths(a[k.Axis]-w.Part.Low[k.Axis]), [2]string{"left", "front"}[k.Axis]), bendWords(k)})
	}
	m.page.table([]string{"flat", "bend line", "bend"}, rows)
	if !m.w.Pictures {
		return
	}
	m.later(func() ([]Block, error) {
		d, left, err := sketch.Part(title(t)+", flat", t.FlatState().Piece, sketch.FirstAngle, flatSizes(w))
		if err != nil {
			return nil, fmt.Errorf("part %s, flat: %w", t.Part.Label, err)
		}
		out := []Block{{Kind: Picture, SVG: d.SVG(), Words: "The flat sheet with the lines about which it is bent, in first angle projection"}}
		if len(left) > 0 {
			out = append(out, Block{Kind: Para, Words: "For these the drawing has no room: " + strings.Join(left, "; ") + "."})
		}
		return out, nil
	})
}

// bendWords says how far and which way a bend goes.
func bendWords(k *eval.Crease) string {
	up := "up"
	if k.Angle < 0 {
		up = "down"
	}
	return fmt.Sprintf("%s deg %s, inside radius %s", hundredths(math.Abs(k.Angle)*180/math.Pi), up, hundredths(k.Inside))
}

// bends says how far an operation bends sheet, and how one goes on over 90 degrees, where the jaw or the bar
// that it is folded over is in its own way (common practice).
func bends(k *eval.Cut, put func(a, b string)) {
	w := k.Part.Folded
	for _, t := range k.Step.Makes {
		for i := 0; w != nil && i < len(w.Bends); i++ {
			b := &w.Bends[i]
			if t.Form == nil || t.Form.Feature != b.Form.Feature {
				continue
			}
			put("bend", bendWords(b))
			if a := math.Abs(b.Angle) * 180 / math.Pi; a > 179.999 {
				put("over 90 deg", "fold it to 90 deg, take it out, lean it over further, and close it over a strip "+hundredths(2*b.Inside)+" mm thick")
			} else if a > 90.001 {
				put("over 90 deg", "fold it to 90 deg, take it out, and close it to "+hundredths(a)+" deg by itself; try the angle with a template of "+hundredths(180-a)+" deg between the legs")
			}
		}
	}
}

// hundredths prints a figure that was worked out, to a hundredth.
func hundredths(x float64) string { return model.Figure(math.Round(x*100) / 100) }

// flatSizes are the outer sizes of a flat sheet, and where its bend lines and holes lie.
func flatSizes(w *eval.Folding) (s sketch.Sizes) {
	p := w.Part
	put := func(in sketch.Which, axis int, from, to, at float64, placed bool) {
		s.Lengths = append(s.Lengths, sketch.Length{In: in, Axis: axis, From: from, To: to, At: at, Upto: at, Placed: placed, Words: hundredths(to - from)})
	}
	put(sketch.InFront, 0, p.Low[0], p.High()[0], math.NaN(), false)
	put(sketch.Above, 1, p.Low[1], p.High()[1], math.NaN(), false)
	put(sketch.InFront, 2, p.Low[2], p.High()[2], math.NaN(), false)
	for i := range w.Bends {
		k := &w.Bends[i]
		a, b := w.BendLine(i)
		a[2], b[2] = p.High()[2], p.High()[2]
		s.Lines = append(s.Lines, sketch.Line{In: sketch.Above, A: a, B: b})
		put(sketch.Above, k.Axis, p.Low[k.Axis], a[k.Axis], a[1-k.Axis], true)
		s.Notes = append(s.Notes, sketch.Note{In: sketch.Above, At: a.Times(0.75).Add(b.Times(0.25)), Words: bendWords(k)})
	}
	for _, f := range p.Forms {
		if f.Wrong != "" || len(f.Lacks) > 0 || len(f.Mouths) == 0 || f.Into.Face.Axis() != 2 {
			continue
		}
		for _, v := range f.Mouths {
			put(sketch.Above, 0, p.Low[0], v[0], v[1], true)
			put(sketch.Above, 1, p.Low[1], v[1], v[0], true)
		}
	}
	s.Lengths = once(s.Lengths)
	return s
}

// foldedSizes are the outer sizes of a part as it is folded; where its features lie on their legs stands in
// the table.
func foldedSizes(t *eval.PartTrace) (s sketch.Sizes) {
	if t.End.Bent == nil {
		return flatSizes(t.Part.Flat)
	}
	var lo, hi solid.Vec = t.Lies.Low, t.Lies.High()
	for axis, in := range [3]sketch.Which{sketch.InFront, sketch.Above, sketch.InFront} {
		s.Lengths = append(s.Lengths, sketch.Length{In: in, Axis: axis, From: lo[axis], To: hi[axis], At: math.NaN(), Upto: math.NaN(), Words: hundredths(hi[axis] - lo[axis])})
	}
	return s
}
