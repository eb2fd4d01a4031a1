package dial

import (
	"fmt"
	"math"
)

// Room is how figures go round a dial.
type Room struct {
	Spacing float64 // arc from figure to figure at the rim, mm
	Needs   float64 // arc of the widest figure with its gap, mm
	Spare   float64 // spacing less needs; below 0 they touch
	Fits    bool    // spare is 0 or more
	Least   float64 // rim diameter from which they fit, mm
	Line    float64 // arc from line to line, mm; 0 where no lines were asked
}

// Width is how wide a punch's figure is of its height, mm: from 0.5 to 0.75 (common practice;
// measure your own: a 1 is narrower, a 0 wider). A bare formula, which refuses nothing.
func Width(height float64) (least, most float64) { return 0.5 * height, 0.75 * height }

// Figures gives the room for numbers round a rim of a diameter, 1 to 5000 mm: so many numbers (1
// to 1000) of at most so many digits (1 to 6), each digit of a width, 0.1 to 50 mm, with a gap
// beside each digit, 0 to 50 mm. Lines: round the dial, to 10,000; 0 not asked. An error names the
// figure out of range.
//
// Law: at the least diameter the spare room is nought.
func Figures(diameter float64, numbers, digits int, width, gap float64, lines int) (Room, error) {
	switch {
	case !(diameter >= 1 && diameter <= 5000):
		return Room{}, fmt.Errorf("a rim of %v mm: from 1 to 5000", diameter)
	case numbers < 1 || numbers > 1000 || digits < 1 || digits > 6:
		return Room{}, fmt.Errorf("%d numbers of %d digits: from 1 to 1000, of 1 to 6", numbers, digits)
	case !(width >= 0.1 && width <= 50):
		return Room{}, fmt.Errorf("a digit %v mm wide: from 0.1 to 50", width)
	case !(gap >= 0 && gap <= 50):
		return Room{}, fmt.Errorf("a gap of %v mm: from 0 to 50", gap)
	case lines < 0 || lines > 10000:
		return Room{}, fmt.Errorf("a dial of %d lines: from 1 to 10000, or 0 where they are not asked", lines)
	}
	r := Room{Spacing: math.Pi * diameter / float64(numbers), Needs: float64(digits) * (width + gap)}
	r.Spare = r.Spacing - r.Needs
	r.Fits = r.Spare >= -1e-9
	r.Least = r.Needs * float64(numbers) / math.Pi
	if lines > 0 {
		r.Line = math.Pi * diameter / float64(lines)
	}
	return r, nil
}

// Stroke is how far a slide goes to cut a line of a length.
type Stroke struct {
	Every  int     // lines that are so long: each 10th, 5th, 1st
	Length float64 // mm, as it will be seen
	Cutter float64 // diameter of a disc cutter, mm; 0: a point that is drawn along
	Beyond float64 // how far the disc cuts beyond its own middle: sqrt(h (D - h)), mm
	Travel float64 // from where the cutter's middle stands over the end of the rim, mm
	Turns  int     // of the slide's handle
	Lines  int     // and lines of its dial besides
	Off    float64 // length that comes of it less the length wanted, mm
}

// Cut works strokes out for lines of several lengths, each with a cutter of its own, at one depth,
// by whole lines of the slide's dial: turn and value of a line in mm. The cutter's middle starts
// over the end of the rim, so a disc's line is longer than its travel by what it cuts beyond. A
// line shorter than that cannot be cut by this disc, which is an error. Ranges: depth 0 to 5 mm,
// turn above 0.01 to 1000, value from a 10,000th of the turn to a turn, lengths above 0 to 500, a
// cutter above twice the depth to 500; an error names the figure. Of a stroke only Every, Length
// and Cutter are read.
func Cut(strokes []Stroke, depth, turn, value float64) ([]Stroke, error) {
	switch {
	case !(turn > 0.01 && turn <= 1000):
		return nil, fmt.Errorf("a turn of %v mm: from 0.01 to 1000", turn)
	case !(value >= turn/10000 && value <= turn):
		return nil, fmt.Errorf("a line of %v mm: from a 10000th of the turn to a turn", value)
	case !(depth >= 0 && depth <= 5):
		return nil, fmt.Errorf("a line %v mm deep: from 0 to 5", depth)
	}
	out := make([]Stroke, len(strokes))
	for i, s := range strokes {
		if !(s.Length > 0 && s.Length <= 500) {
			return nil, fmt.Errorf("a line %v mm long: more than 0, at most 500", s.Length)
		}
		if s.Cutter != 0 && !(s.Cutter > 2*depth && s.Cutter <= 500) {
			return nil, fmt.Errorf("a cutter of %v mm: more than twice the depth, at most 500", s.Cutter)
		}
		s.Beyond = 0
		if s.Cutter > 0 {
			s.Beyond = math.Sqrt(depth * (s.Cutter - depth))
		}
		s.Travel = s.Length - s.Beyond
		if s.Travel < 0 {
			return nil, fmt.Errorf("a line %v mm long: the cutter already leaves %.3f mm where it goes in", s.Length, s.Beyond)
		}
		all := math.Round(s.Travel / value)
		perTurn := turn / value
		s.Turns = int(math.Floor(all/perTurn + 1e-9))
		s.Lines = int(math.Round(all - float64(s.Turns)*perTurn))
		s.Off = (float64(s.Turns)*turn + float64(s.Lines)*value) - s.Travel
		out[i] = s
	}
	return out, nil
}

// Way tells which way figures must run round a dial, seen from the handle, so that they rise past a
// fixed mark: against the turning (the dial that turns clockwise brings the next figure from the
// other side).
func Way(risesClockwise bool) string {
	if risesClockwise {
		return "anticlockwise"
	}
	return "clockwise"
}
