// Package dial is the arithmetic of graduated collars: what a line stands for, whether the lines
// close round the dial, how nearly a dial of one unit fits a screw of the other, verniers, room
// for figures, and the strokes that cut the lines.
//
// A dial's own figures are exact: screws and lines are ratios of whole numbers, so they are
// big.Rat. Lengths are mm, angles degrees. Slack of the screw is no part of a dial's value.
//
// Where a comment names no source, a formula is the definition of its words or plain geometry.
//
// Where a function gives an error, it names the figure that is out of range or what does not go
// together; what is not a number is out of every range.
package dial

import (
	"errors"
	"fmt"
	"math/big"
)

// Dial is a collar on a screw or on the worm of a rotary table.
type Dial struct {
	Lead     *big.Rat // mm that the slide moves in one turn of the screw, up to 1000; nil for a worm
	Ratio    *big.Rat // turns of the dial to one of the screw, or of the worm to one of the table; nil: 1
	Lines    int      // round the dial, 1 to 10000
	Diameter bool     // a cross slide whose dial counts what comes off the diameter
	Worm     bool     // the dial counts degrees of the table
}

var one, two = big.NewRat(1, 1), big.NewRat(2, 1)

// between refuses x unless 0 < x <= most, with a denominator of at most 256 binary digits.
func between(what string, x *big.Rat, most int64, unit string) error {
	if x != nil && x.Sign() > 0 && x.Cmp(big.NewRat(most, 1)) <= 0 && x.Denom().BitLen() <= 256 {
		return nil
	}
	said := "not given"
	if x != nil {
		said = x.FloatString(6)
		if f, _ := x.Float64(); f > 1e9 || f < 1e-6 {
			said = fmt.Sprintf("%.3g", f)
		}
		if x.Denom().BitLen() > 256 {
			said += ", a fraction of a denominator over 256 binary digits"
		}
	}
	return fmt.Errorf("%s %s: it must be more than 0 and at most %d%s", what, said, most, unit)
}

// Turn is what one turn of the dial stands for, in the dial's own reckoning: the lead by the
// ratio, twice that where it reads diameter; of a worm 360 by the ratio, in degrees.
//
// The ratio is above 0 to 10,000, the lead above 0 to 1000 mm; an error names the one that is not.
func (d Dial) Turn() (*big.Rat, error) {
	ratio := d.Ratio
	if ratio == nil {
		ratio = one
	}
	if err := between("a ratio of", ratio, 10000, ""); err != nil {
		return nil, err
	}
	turn := big.NewRat(360, 1)
	if !d.Worm {
		if err := between("a lead of", d.Lead, 1000, " mm"); err != nil {
			return nil, err
		}
		turn = new(big.Rat).Set(d.Lead)
		if d.Diameter {
			turn.Mul(turn, two)
		}
	}
	return turn.Quo(turn, ratio), nil
}

func lines(n int) error {
	if n < 1 || n > 10000 {
		return fmt.Errorf("a dial of %d lines: from 1 to 10000", n)
	}
	return nil
}

// Value is what one line stands for: lead/(lines x ratio), twice that on diameter (common
// practice).
//
// Law: lines times value is the turn.
//
// An error names what Turn refuses, or lines outside 1 to 10,000.
func (d Dial) Value() (*big.Rat, error) {
	turn, err := d.Turn()
	if err == nil {
		err = lines(d.Lines)
	}
	if err != nil {
		return nil, err
	}
	return turn.Quo(turn, big.NewRat(int64(d.Lines), 1)), nil
}

// Closure is how a dial whose lines are said to stand for something goes with its screw.
type Closure struct {
	Turn   *big.Rat // what a turn is
	Counts *big.Rat // what the lines come to: lines x value as marked
	Over   *big.Rat // counts less turn; 0: it closes
	Closes bool
	Wanted *big.Rat // lines that would close with that value; whole or not
	True   *big.Rat // what a line of this dial really is
}

// Closes holds a marked value of a line, mm or degrees as the dial counts, above 0 to 1000,
// against the screw. Exact. An error names the figure out of range.
func (d Dial) Closes(marked *big.Rat) (Closure, error) {
	real, err := d.Value()
	if err != nil {
		return Closure{}, err
	}
	if err := between("a marked value of", marked, 1000, ""); err != nil {
		return Closure{}, err
	}
	turn, _ := d.Turn()
	c := Closure{Turn: turn, True: real, Counts: new(big.Rat).Mul(marked, big.NewRat(int64(d.Lines), 1))}
	c.Over = new(big.Rat).Sub(c.Counts, turn)
	c.Closes = c.Over.Sign() == 0
	c.Wanted = new(big.Rat).Quo(turn, marked)
	return c, nil
}

// Nearest is a dial of whole lines that comes nearest to a value for each.
type Nearest struct {
	Lines int
	True  *big.Rat // what a line really is
	Step  *big.Rat // true less wanted, for one line
	Turn  *big.Rat // what has gathered after a turn, the dial read as if it were right
	Exact bool
}

// NearestLines gives the whole number of lines, 1 to 10,000, that divides a turn nearest to a
// value: metric lines for an inch screw, or the other way about. Half a line goes up. Turn and
// value have one unit and are above 0 to 100,000; an error names the one that is not, or the lines
// that would be wanted.
//
// Law: no other whole number of lines is nearer in what gathers after a turn.
func NearestLines(turn, value *big.Rat) (Nearest, error) {
	if err := between("a turn of", turn, 100000, ""); err != nil {
		return Nearest{}, err
	}
	if err := between("a value of", value, 100000, ""); err != nil {
		return Nearest{}, err
	}
	n := rounded(new(big.Rat).Quo(turn, value))
	if !n.IsInt64() || lines(int(n.Int64())) != nil {
		return Nearest{}, fmt.Errorf("%v lines: from 1 to 10000", n)
	}
	whole := new(big.Rat).SetInt(n)
	out := Nearest{Lines: int(n.Int64()), True: new(big.Rat).Quo(turn, whole)}
	out.Step = new(big.Rat).Sub(out.True, value)
	out.Turn = new(big.Rat).Mul(out.Step, whole)
	out.Exact = out.Step.Sign() == 0
	return out, nil
}

// rounded is the nearest whole number of a positive figure; half goes up.
func rounded(x *big.Rat) *big.Int {
	twice := new(big.Int).Lsh(x.Num(), 1)
	twice.Add(twice, x.Denom())
	return twice.Quo(twice, new(big.Int).Lsh(x.Denom(), 1))
}

// Division is a way to divide a dial.
type Division struct {
	Lines int
	Value *big.Rat
}

// Divisions lists the values of a list that divide a turn into least to most whole lines, in the
// order of the list. Turn and values have one unit and are above 0 to 100,000; an error names the
// one that is not. A list of which none serves, or a least above most, gives none and no error.
func Divisions(turn *big.Rat, values []*big.Rat, least, most int) ([]Division, error) {
	if err := between("a turn of", turn, 100000, ""); err != nil {
		return nil, err
	}
	var out []Division
	for _, v := range values {
		if err := between("a value of", v, 100000, ""); err != nil {
			return nil, err
		}
		n := new(big.Rat).Quo(turn, v)
		if n.IsInt() && n.Num().IsInt64() && n.Num().Int64() >= int64(least) && n.Num().Int64() <= int64(most) {
			out = append(out, Division{int(n.Num().Int64()), v})
		}
	}
	return out, nil
}

// Vernier is what a vernier reads to: the difference between a line of it and the nearest whole
// number of main lines (common practice). main: what a main line stands for, above 0 to 100,000;
// lines of the vernier, 2 to 1000, lie over so many main lines, 1 to 10,000. Figures out of range,
// and a vernier that reads nothing (each line over a main line), are an error.
//
// Law: of n lines over kn - 1 or kn + 1 main lines it reads a main line by n.
func Vernier(main *big.Rat, lines, over int) (*big.Rat, error) {
	if err := between("a main line of", main, 100000, ""); err != nil {
		return nil, err
	}
	if lines < 2 || lines > 1000 || over < 1 || over > 10000 {
		return nil, fmt.Errorf("a vernier of %d lines over %d main lines: from 2 to 1000 over 1 to 10000", lines, over)
	}
	each := big.NewRat(int64(over), int64(lines))
	off := new(big.Rat).Sub(each, new(big.Rat).SetInt(rounded(each)))
	off.Abs(off).Mul(off, main)
	if off.Sign() == 0 {
		return nil, errors.New("each line of the vernier stands over a main line: it reads nothing finer")
	}
	return off, nil
}

// VernierLines is how many lines a vernier must have to read a main line down to a value: the
// whole number of times that it goes in, 2 to 1000; they lie over one main line fewer. Both are
// above 0 to 100,000 in one unit; other figures are an error that names them.
func VernierLines(main, reads *big.Rat) (int, error) {
	if err := between("a main line of", main, 100000, ""); err != nil {
		return 0, err
	}
	if err := between("a reading of", reads, 100000, ""); err != nil {
		return 0, err
	}
	n := new(big.Rat).Quo(main, reads)
	if !n.IsInt() || n.Cmp(two) < 0 || n.Cmp(big.NewRat(1000, 1)) > 0 {
		return 0, fmt.Errorf("a main line holds the reading %s times: it must be a whole number from 2 to 1000", n.FloatString(3))
	}
	return int(n.Num().Int64()), nil
}
