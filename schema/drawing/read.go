package drawing

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
	"unicode/utf8"
)

// longest is the most bytes that one piece of notation may have. Drawings need a tenth of
// it; the bound keeps reading instant on anything that is pasted in by mistake.
const longest = 100

// furthest is the greatest length that is read, in mm: ten kilometres. Beyond it a figure
// is a slip of the keyboard.
var furthest = big.NewRat(10_000_000, 1)

// reader goes through one piece of notation from left to right.
type reader struct {
	all string // without blanks around it, for messages
	at  int
}

// begin checks the text and makes a reader of it. Signs that have several shapes in print
// are brought to one first.
func begin(s string) (*reader, error) {
	if len(s) > longest {
		return nil, fmt.Errorf("%s: longer than anything on a drawing", said(s))
	}
	if !utf8.ValidString(s) {
		return nil, fmt.Errorf("%s: not readable as text", said(s))
	}
	s = strings.TrimSpace(shapes.Replace(s))
	if s == "" {
		return nil, errors.New("nothing is written")
	}
	return &reader{all: s}, nil
}

var shapes = strings.NewReplacer(
	"\u2212", "-", // minus sign
	"\u00d7", "x", // multiplication sign
	"\u2032", "'", "\u2019", "'", // minutes: prime, and the quote that some keyboards make of it
	"\u2033", `"`, "\u201d", `"`, // seconds, inches
	"\u00ba", "\u00b0", // the ordinal sign typed for a degree
	"\u00a0", " ", "\u202f", " ", "\u2009", " ", // narrow and hard blanks
	"\t", " ",
)

// said quotes what was written for a message, cut short where it is long.
func said(s string) string {
	if len(s) > 40 {
		cut := 37
		for cut > 0 && !utf8.RuneStart(s[cut]) {
			cut--
		}
		s = s[:cut] + "..."
	}
	return strconv.Quote(s)
}

func (r *reader) rest() string { return r.all[r.at:] }
func (r *reader) done() bool   { return r.at >= len(r.all) }

func (r *reader) blank() bool {
	from := r.at
	for r.at < len(r.all) && r.all[r.at] == ' ' {
		r.at++
	}
	return r.at > from
}

// take moves past a word if it stands next.
func (r *reader) take(word string) bool {
	if strings.HasPrefix(r.rest(), word) {
		r.at += len(word)
		return true
	}
	return false
}

func (r *reader) next() byte {
	if r.done() {
		return 0
	}
	return r.all[r.at]
}

func isDigit(b byte) bool  { return b >= '0' && b <= '9' }
func isLetter(b byte) bool { return b >= 'a' && b <= 'z' || b >= 'A' && b <= 'Z' }

// digits takes a run of digits, which may be empty.
func (r *reader) digits() string {
	from := r.at
	for isDigit(r.next()) {
		r.at++
	}
	return r.all[from:r.at]
}

// letters takes a run of letters, which may be empty.
func (r *reader) letters() string {
	from := r.at
	for isLetter(r.next()) {
		r.at++
	}
	return r.all[from:r.at]
}

// figure is a number as written.
type figure struct {
	value    *big.Rat
	decimals int // -1 of a fraction
}

// unsigned takes a number: "12", "12.50", ".5", "3/8", "1 1/8", "1-1/8". Powers of ten are
// no notation of drawings and are refused, and so is the decimal comma.
func (r *reader) unsigned() (figure, error) {
	whole := r.digits()
	if r.next() == '.' && !strings.HasPrefix(r.rest(), "..") {
		r.at++
		part := r.digits()
		if whole == "" && part == "" {
			return figure{}, r.noFigure()
		}
		v, _ := new(big.Rat).SetString("0" + whole + "." + part + "0")
		return figure{v, len(part)}, r.odd()
	}
	if whole == "" {
		return figure{}, r.noFigure()
	}
	v, _ := new(big.Rat).SetString(whole)
	if f, ok := r.over(v); ok {
		return figure{f, -1}, r.odd()
	}
	if f, ok := r.mixed(v); ok {
		return figure{f, -1}, r.odd()
	}
	return figure{v, 0}, r.odd()
}

// over takes "/8" behind the upper figure of a fraction. Nought below the line is none.
func (r *reader) over(upper *big.Rat) (*big.Rat, bool) {
	from := r.at
	if r.take("/") {
		if d, ok := new(big.Rat).SetString(r.digits()); ok && d.Sign() > 0 {
			return d.Quo(upper, d), true
		}
	}
	r.at = from
	return nil, false
}

// mixed takes " 1/8" or "-1/8" behind a whole number; the fraction must be a proper one.
func (r *reader) mixed(whole *big.Rat) (*big.Rat, bool) {
	from := r.at
	if r.blank() || r.take("-") {
		if n, ok := new(big.Rat).SetString(r.digits()); ok && n.Sign() > 0 {
			if f, ok := r.over(n); ok && f.Cmp(big.NewRat(1, 1)) < 0 {
				return f.Add(f, whole), true
			}
		}
	}
	r.at = from
	return nil, false
}

func (r *reader) noFigure() error {
	if r.done() {
		return fmt.Errorf("%s: a figure is missing at the end", said(r.all))
	}
	if r.rest() == r.all {
		return fmt.Errorf("%s is not a figure", said(r.all))
	}
	return fmt.Errorf("%s: %s is not a figure", said(r.all), said(r.rest()))
}

// odd refuses what must not follow a figure directly.
func (r *reader) odd() error {
	rest := r.rest()
	switch {
	case len(rest) > 1 && (rest[0] == 'e' || rest[0] == 'E') && (isDigit(rest[1]) || rest[1] == '+' || rest[1] == '-'):
		return fmt.Errorf("%s: write the figure out, without a power of ten (and a class with a blank before it)", said(r.all))
	case len(rest) > 1 && rest[0] == ',' && isDigit(rest[1]):
		return fmt.Errorf("%s: write a decimal point, not a comma", said(r.all))
	case rest != "" && rest[0] == '.' && !strings.HasPrefix(rest, ".."):
		return fmt.Errorf("%s: %s is not a figure", said(r.all), said(rest))
	}
	return nil
}

// measure is a unit as written: what it is in mm, and whether it is a unit of the inch.
type measure struct {
	mm   *big.Rat
	unit Unit
	thou bool
}

var (
	inMillimetres = measure{mm: big.NewRat(1, 1)}
	inInches      = measure{mm: big.NewRat(254, 10), unit: Inch}
	inThou        = measure{mm: big.NewRat(254, 10000), unit: Inch, thou: true}
)

func bareMeasure(u Unit) measure {
	if u == Inch {
		return inInches
	}
	return inMillimetres
}

// unit takes a unit of length if one stands next, blanks before it included; false and
// nothing taken if there is none.
func (r *reader) unit() (measure, bool) {
	from := r.at
	r.blank()
	if r.take(`"`) {
		return inInches, true
	}
	switch strings.ToLower(r.letters()) {
	case "mm":
		return inMillimetres, true
	case "in", "inch", "inches":
		return inInches, true
	case "thou":
		return inThou, true
	}
	r.at = from
	return measure{}, false
}

// millimetres gives a figure of a unit in mm, refused beyond the furthest length.
func (r *reader) millimetres(v *big.Rat, m measure) (*big.Rat, error) {
	mm := new(big.Rat).Mul(v, m.mm)
	if new(big.Rat).Abs(mm).Cmp(furthest) > 0 {
		return nil, fmt.Errorf("%s: more than ten kilometres", said(r.all))
	}
	return mm, nil
}

func float(v *big.Rat) float64 {
	f, _ := v.Float64()
	return f
}

// ParseLength reads a length: "12", "12 mm", "3/8 in", "1 1/8 in", "5 thou", "17/64". A bare
// figure or fraction is in the unit given. The answer is in mm, exact to the last bit.
func ParseLength(s string, bare Unit) (mm float64, err error) {
	v, err := ExactLength(s, bare)
	if err != nil {
		return 0, err
	}
	return float(v), nil
}

// ExactLength is ParseLength as the fraction that it is, mm.
func ExactLength(s string, bare Unit) (mm *big.Rat, err error) {
	r, err := begin(s)
	if err != nil {
		return nil, err
	}
	negative := r.take("-")
	if !negative {
		r.take("+")
	}
	f, err := r.unsigned()
	if err != nil {
		return nil, err
	}
	m, ok := r.unit()
	if !ok {
		m = bareMeasure(bare)
	}
	if r.blank(); !r.done() {
		return nil, r.leftOver()
	}
	v, err := r.millimetres(f.value, m)
	if err != nil {
		return nil, err
	}
	if negative {
		v.Neg(v)
	}
	return v, nil
}

// leftOver is the error for words behind something complete.
func (r *reader) leftOver() error {
	return fmt.Errorf("%s: %s is not understood here; a length is a figure with mm, in or thou", said(r.all), said(r.rest()))
}
