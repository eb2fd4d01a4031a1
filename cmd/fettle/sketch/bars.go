package sketch

import "math"

// Sawn is a bar with what is sawn from it.
type Sawn struct {
	Name   string
	Length float64 // mm
	Kerf   float64 // width of a cut, mm
	Pieces []SawnPiece
}

// SawnPiece is a piece of a bar, from its left end on, with its number on the list.
type SawnPiece struct {
	Number string
	Length float64 // mm, the cut not counted
}

// Bars draws bars lying below each other, one scale for all: the pieces with their numbers, what
// remains hatched. A number that finds no room is left out.
func Bars(title string, bars []Sawn) *Drawing {
	const width, edge, high, row = 180.0, 4.0, 8.0, 18.0
	longest := 0.0
	for _, b := range bars {
		longest = math.Max(longest, b.Length)
	}
	d := &Drawing{Width: width, Height: row*float64(len(bars)) + edge, Title: title}
	if longest == 0 {
		return d
	}
	f := (width - 2*edge) / longest
	for i, b := range bars {
		y := d.Height - row*float64(i+1)
		x0, x1 := edge, edge+b.Length*f
		d.Path(Wide, Point{x0, y}, Point{x1, y}, Point{x1, y + high}, Point{x0, y + high}, Point{x0, y})
		_ = d.Write(Point{x0, y + high + 2.4}, shorten(b.Name, lettering, width-2*edge), lettering) // without room it is left out
		x := x0
		for _, p := range b.Pieces {
			end := math.Min(x+p.Length*f, x1)
			mid := Point{(x+end)/2 - Room(p.Number, lettering)/2, y + (high-lettering)/2}
			if Room(p.Number, lettering)+2 < end-x {
				_ = d.Write(mid, p.Number, lettering)
			}
			d.Line(Wide, Point{end, y}, Point{end, y + high})
			x = math.Min(end+b.Kerf*f, x1)
		}
		if x1-x > 0.5 {
			// Hatching wider than 0.5 mm is never refused.
			_ = d.Hatch([][]Point{{{x, y}, {x1, y}, {x1, y + high}, {x, y + high}}}, 2.5)
		}
	}
	return d
}
