package screwcut

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"

	"fettle/schema/drawing"
)

// The ranges taken.
const (
	LeastPitch = 0.01 // mm
	MostPitch  = 1000 // mm
)

// Pitch is the pitch or lead of a thread, exact: a fraction of a millimetre, for the worms of
// wheels by module or diametral pitch times pi. The zero Pitch is none.
type Pitch struct {
	num, den int64 // mm
	pi       bool  // times pi
	inch     bool  // spoken of by the inch: threads to the inch, or diametral pitch
}

// Fraction is a whole number over another, Den above 0.
type Fraction struct{ Num, Den int64 }

// Float gives the fraction as a figure; 0 where it has no denominator.
func (f Fraction) Float() float64 {
	if f.Den == 0 {
		return 0
	}
	return float64(f.Num) / float64(f.Den)
}

// String writes 3/4, or 5 where it is whole. What is no fraction is written as it stands.
func (f Fraction) String() string {
	if f.Den == 1 {
		return strconv.FormatInt(f.Num, 10)
	}
	return fmt.Sprintf("%d/%d", f.Num, f.Den)
}

// FractionOf finds the fraction that a figure stands for: a decimal of at most six places, else
// the first fraction with a denominator to 20,000 that lies within 1e-12 of it, else its first
// nine decimals. Figures from 1e-6 to 1e6; others are an error.
func FractionOf(x float64) (Fraction, error) {
	if !(x >= 1e-6 && x <= 1e6) {
		return Fraction{}, fmt.Errorf("%v is not a figure from 0.000001 to 1000000", x)
	}
	if n := math.Round(x * 1e6); math.Abs(x*1e6-n) <= 1e-15*x*1e6 || strconv.FormatFloat(n/1e6, 'g', -1, 64) == strconv.FormatFloat(x, 'g', -1, 64) {
		return reduced(int64(n), 1e6), nil
	}
	if f, ok := nearFraction(x); ok {
		return f, nil
	}
	return reduced(int64(math.Round(x*1e9)), 1e9), nil
}

// nearFraction walks the continued fraction of x.
func nearFraction(x float64) (Fraction, bool) {
	p0, q0, p1, q1 := int64(0), int64(1), int64(1), int64(0)
	for rest := x; ; {
		whole := math.Floor(rest)
		if whole > 1e9 {
			return Fraction{}, false
		}
		p0, q0, p1, q1 = p1, q1, int64(whole)*p1+p0, int64(whole)*q1+q0
		if q1 > 20000 {
			return Fraction{}, false
		}
		if math.Abs(float64(p1)/float64(q1)-x) <= 1e-12*x {
			return Fraction{p1, q1}, true
		}
		if rest == whole {
			return Fraction{}, false
		}
		rest = 1 / (rest - whole)
	}
}

func reduced(num, den int64) Fraction {
	g := gcd(num, den)
	return Fraction{num / g, den / g}
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, 1)
}

// Millimetres is a pitch in mm, LeastPitch to MostPitch; others are an error. A figure that is a
// plain fraction of an inch, such as 25.4/13, is taken for it.
func Millimetres(mm float64) (Pitch, error) {
	if !(mm >= LeastPitch && mm <= MostPitch) {
		return Pitch{}, fmt.Errorf("a pitch of %v mm is not from %v to %v mm", mm, LeastPitch, MostPitch)
	}
	f, err := FractionOf(mm)
	if err != nil {
		return Pitch{}, err
	}
	if f.Den <= 1e6 && 1e6%f.Den == 0 {
		return pitch(f, 1, 1, Pitch{})
	}
	if in, ok := nearFraction(mm / 25.4); ok && in.Den < f.Den { // the plainer of the two
		return pitch(in, 127, 5, Pitch{inch: true})
	}
	return pitch(f, 1, 1, Pitch{})
}

// Exactly is a pitch in mm that is a fraction, LeastPitch to MostPitch, of whole numbers of 64
// bits; none, and others, are an error.
func Exactly(mm *big.Rat) (Pitch, error) {
	if mm == nil {
		return Pitch{}, fmt.Errorf("no pitch is given")
	}
	if !mm.Num().IsInt64() || !mm.Denom().IsInt64() {
		return Pitch{}, fmt.Errorf("a pitch of %s mm has too many figures", mm.FloatString(9))
	}
	return pitch(Fraction{mm.Num().Int64(), mm.Denom().Int64()}, 1, 1, Pitch{})
}

// PerInch is a pitch by threads to the inch, such as 8, 11.5 or 2.875: 25.4/n mm, exactly. An
// error where the pitch would lie outside LeastPitch to MostPitch.
func PerInch(threads float64) (Pitch, error) {
	f, err := FractionOf(threads)
	if err != nil {
		return Pitch{}, fmt.Errorf("threads to the inch: %w", err)
	}
	return pitch(Fraction{f.Den, f.Num}, 127, 5, Pitch{inch: true})
}

// Module is the axial pitch of a worm for wheels of a module in mm: pi times the module, exactly.
// An error where it would lie outside LeastPitch to MostPitch mm.
func Module(module float64) (Pitch, error) {
	f, err := FractionOf(module)
	if err != nil {
		return Pitch{}, fmt.Errorf("module: %w", err)
	}
	return pitch(f, 1, 1, Pitch{pi: true})
}

// DiametralPitch is the axial pitch of a worm for wheels of a diametral pitch: pi/P inches,
// exactly. An error where it would lie outside LeastPitch to MostPitch mm.
func DiametralPitch(p float64) (Pitch, error) {
	f, err := FractionOf(p)
	if err != nil {
		return Pitch{}, fmt.Errorf("diametral pitch: %w", err)
	}
	return pitch(Fraction{f.Den, f.Num}, 127, 5, Pitch{pi: true, inch: true})
}

// pitch makes f times num/den, within the range taken, spoken of as p is.
func pitch(f Fraction, num, den int64, p Pitch) (Pitch, error) {
	r := new(big.Rat).Mul(big.NewRat(f.Num, f.Den), big.NewRat(num, den))
	if !r.Num().IsInt64() || !r.Denom().IsInt64() {
		return Pitch{}, fmt.Errorf("a pitch of %s mm has too many figures", r.FloatString(9))
	}
	p.num, p.den = r.Num().Int64(), r.Denom().Int64()
	p.inch = p.inch || !p.pi && p.num%127 == 0 // 127 is prime: no pitch of the metric thread has it
	if mm := p.MM(); !(mm >= LeastPitch && mm <= MostPitch) {
		return Pitch{}, fmt.Errorf("a pitch of %v mm is not from %v to %v mm", mm, LeastPitch, MostPitch)
	}
	return p, nil
}

// Times gives the lead of so many starts, 1 to 1000, or any whole number of pitches, exactly. An
// error for others, for no pitch, and for a lead above MostPitch.
func (p Pitch) Times(n int) (Pitch, error) {
	if n < 1 || n > 1000 {
		return Pitch{}, fmt.Errorf("%d is not a number of starts from 1 to 1000", n)
	}
	if p.den == 0 {
		return Pitch{}, fmt.Errorf("no pitch is given")
	}
	return pitch(Fraction{p.num, p.den}, int64(n), 1, p)
}

// MM gives the pitch in mm as a figure, error below 1e-15 of it; 0 where there is none.
func (p Pitch) MM() float64 {
	x := Fraction{p.num, p.den}.Float()
	if p.pi {
		x *= math.Pi
	}
	return x
}

// rat gives the pitch in mm. Pi stands in it to 40 figures.
func (p Pitch) rat() *big.Rat {
	r := big.NewRat(p.num, max(p.den, 1))
	if p.pi {
		r.Mul(r, pi)
	}
	return r
}

// pi to 40 figures, as in every table.
var pi, _ = new(big.Rat).SetString("3.141592653589793238462643383279502884197")

// String says the pitch as the trade does: "1.5 mm", "13 tpi", "module 0.8 mm", "diametral pitch 20".
func (p Pitch) String() string {
	own := Fraction{p.num, p.den}
	if p.den == 0 {
		return "no pitch"
	}
	if p.inch {
		own = reduced(p.den*127, p.num*5)
	}
	words := own.String()
	if own.Den != 0 && 1000000%own.Den == 0 {
		words = strconv.FormatFloat(own.Float(), 'f', -1, 64)
	}
	switch {
	case p.pi && p.inch:
		return "diametral pitch " + words
	case p.pi:
		return "module " + words + " mm"
	case p.inch:
		return words + " tpi"
	}
	return words + " mm"
}

// ParsePitch reads a pitch or lead: "1.5", "1.5 mm", "1/8 in", "8 tpi", "11 1/2 tpi", and of worms
// "module 0.8" (mm) or "diametral pitch 20". A bare figure is in the unit given. An error for
// words that are none of these, and for pitches outside LeastPitch to MostPitch mm.
func ParsePitch(s string, bare drawing.Unit) (Pitch, error) {
	words := strings.ToLower(strings.TrimSpace(s))
	for _, w := range []struct {
		word string
		make func(float64) (Pitch, error)
	}{{"tpi", PerInch}, {"module", Module}, {"diametral pitch", DiametralPitch}, {"dp", DiametralPitch}} {
		rest, ok := strings.CutSuffix(words, w.word)
		if !ok && w.word != "tpi" {
			rest, ok = strings.CutPrefix(words, w.word)
		}
		if !ok {
			continue
		}
		x, err := drawing.ParseLength(strings.TrimSpace(rest), drawing.Millimetre)
		if err != nil {
			return Pitch{}, err
		}
		return w.make(x)
	}
	mm, err := drawing.ParseLength(s, bare)
	if err != nil {
		return Pitch{}, err
	}
	return Millimetres(mm)
}
