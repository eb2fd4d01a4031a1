package sketch

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// SVG writes the sheet, in mm to a hundredth. The same drawing gives the same bytes.
func (d *Drawing) SVG() string {
	var b strings.Builder
	fmt.Fprintf(&b, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%smm\" height=\"%smm\" viewBox=\"0 0 %s %s\" role=\"img\">\n",
		number(d.Width), number(d.Height), number(d.Width), number(d.Height))
	fmt.Fprintf(&b, "<title>%s</title>\n", escape(d.Title))
	fmt.Fprintf(&b, "<rect width=\"%s\" height=\"%s\" fill=\"#fff\"/>\n", number(d.Width), number(d.Height))
	for _, p := range []Pen{Narrow, Beside, Centre, Hidden, Wide} { // the wide ones lie on top
		if p == Beside && !d.has(p) {
			continue
		}
		b.WriteString(p.group())
		for i := range d.Strokes {
			if d.Strokes[i].Pen == p {
				fmt.Fprintf(&b, "<path d=\"%s\"/>\n", d.path(&d.Strokes[i]))
			}
		}
		b.WriteString("</g>\n")
	}
	b.WriteString("<g fill=\"#000\" stroke=\"none\">\n")
	for _, h := range d.Heads {
		c := h.corners()
		fmt.Fprintf(&b, "<path d=\"M%s L%s L%sZ\"/>\n", d.place(c[0]), d.place(c[1]), d.place(c[2]))
	}
	b.WriteString("</g>\n<g fill=\"#000\" stroke=\"none\" font-family=\"sans-serif\">\n")
	for _, t := range d.Texts {
		turn := ""
		if t.Turn != 0 {
			turn = fmt.Sprintf(" transform=\"rotate(%s %s)\"", number(-t.Turn), d.place(t.At))
		} else if t.End {
			turn = " text-anchor=\"end\""
		}
		fmt.Fprintf(&b, "<text x=\"%s\" y=\"%s\" font-size=\"%s\"%s>%s</text>\n", number(t.At.X), number(d.Height-t.At.Y),
			number(t.Height/capital), turn, escape(t.Words))
	}
	b.WriteString("</g>\n</svg>\n")
	return b.String()
}

// group opens the group of all lines of a pen.
func (p Pen) group() string {
	width, dashes := narrow, ""
	switch p {
	case Wide:
		width = wide
	case Hidden:
		dashes = dash(12, 3)
	case Centre:
		dashes = dash(24, 3, 0.5, 3)
	case Beside:
		dashes = dash(24, 3, 0.5, 3, 0.5, 3)
	}
	return fmt.Sprintf("<g fill=\"none\" stroke=\"#000\" stroke-width=\"%s\" stroke-linecap=\"%s\" stroke-linejoin=\"round\"%s>\n",
		number(width), map[bool]string{true: "round", false: "butt"}[dashes == ""], dashes)
}

// dash gives the parts of a broken narrow line, in widths of the line.
func dash(parts ...float64) string {
	var s []string
	for _, p := range parts {
		s = append(s, number(p*narrow))
	}
	return " stroke-dasharray=\"" + strings.Join(s, " ") + "\""
}

// place gives a place in the co-ordinates of the file, whose y runs down.
func (d *Drawing) place(p Point) string { return number(p.X) + " " + number(d.Height-p.Y) }

// number writes a length to a hundredth of a mm.
func number(x float64) string {
	s := strconv.FormatFloat(math.Round(x*100)/100, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

func (d *Drawing) path(s *Stroke) string {
	if s.Arc {
		return d.arc(s)
	}
	var b strings.Builder
	for i, p := range s.Points {
		b.WriteString(map[bool]string{true: "M", false: " L"}[i == 0] + d.place(p))
	}
	return b.String()
}

// arc writes an arc in parts of less than half a turn. The half diameters are turned into the
// ellipse's own axes, at the angle t where tan 2t = 2u·v/(u² − v²).
func (d *Drawing) arc(s *Stroke) string {
	t := math.Atan2(2*s.U.dot(s.V), s.U.dot(s.U)-s.V.dot(s.V)) / 2
	sin, cos := math.Sincos(t)
	a, b := s.U.times(cos).add(s.V.times(sin)), s.V.times(cos).sub(s.U.times(sin))
	turn := math.Atan2(-a.Y, a.X) * 180 / math.Pi
	if math.Abs(a.len()-b.len()) < 1e-6 {
		turn = 0
	}
	sweep := "0"
	if s.U.cross(s.V) < 0 {
		sweep = "1"
	}
	n := max(1, int(math.Ceil((s.To-s.From)/math.Pi*1.01)))
	out := "M" + d.place(s.at(s.From))
	for i := range n {
		end := s.at(s.From + (s.To-s.From)*float64(i+1)/float64(n))
		out += fmt.Sprintf(" A%s %s %s 0 %s %s", number(a.len()), number(b.len()), number(turn), sweep, d.place(end))
	}
	return out
}

// has says whether anything is drawn with a pen.
func (d *Drawing) has(p Pen) bool {
	return slices.ContainsFunc(d.Strokes, func(s Stroke) bool { return s.Pen == p })
}
