package sketch

import "fmt"

// Overlaps lists what of a drawing's texts overlaps another text or a wide line: from the
// boxes of the table of widths, and by sampling the wide lines. It looks at a drawing that is done and
// knows nothing of how texts were placed.
func (d *Drawing) Overlaps() (out []string) {
	for i, t := range d.Texts {
		b := t.box()
		if b.lo.X < 0 || b.lo.Y < 0 || b.hi.X > d.Width || b.hi.Y > d.Height {
			out = append(out, fmt.Sprintf("%q is not on the sheet", t.Words))
		}
		for _, o := range d.Texts[i+1:] {
			if b.meets(o.box()) {
				out = append(out, fmt.Sprintf("%q and %q", t.Words, o.Words))
			}
		}
		for _, s := range d.Strokes {
			for k := range s.Points[1:] {
				for f := 0.0; s.Pen == Wide && f <= 1; f += 0.01 {
					p := s.Points[k].add(s.Points[k+1].sub(s.Points[k]).times(f))
					if p.X > b.lo.X-wide/2 && p.X < b.hi.X+wide/2 && p.Y > b.lo.Y-wide/2 && p.Y < b.hi.Y+wide/2 {
						out = append(out, fmt.Sprintf("%q and a wide line at %v", t.Words, p))
						f = 2
					}
				}
			}
		}
	}
	return out
}

// Struck lists the texts of a drawing that a line of any kind runs through.
func (d *Drawing) Struck() (out []string) {
	for _, t := range d.Texts {
		b := t.box()
		const grace = 0.35 // of the room that is left around letters
		b = box{Point{b.lo.X + grace, b.lo.Y + grace}, Point{b.hi.X - grace, b.hi.Y - grace}}
		for i := range d.Strokes {
			s := &d.Strokes[i]
			for k := range s.Points[1:] {
				if b.crossedBy(s.Points[k], s.Points[k+1]) {
					out = append(out, fmt.Sprintf("%q by a line from %v to %v", t.Words, s.Points[k], s.Points[k+1]))
					break
				}
			}
		}
	}
	return out
}
