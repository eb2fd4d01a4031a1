package drawing

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// ParseSize reads a dimension with its limits: "8", "8 H7", "30 ±0.1", "30 +/-0.1",
// "12 -0.05/0", "12 +0.02/-0.01", "9.5..9.6", "3/8 in ±0.005".
//
// A unit behind the last figure holds for all of them ("30 ±0.1 mm"); deviations without
// one are in the unit of the size. Thousandths behind a deviation hold for it alone
// ("12 ±5 thou": the 12 is bare).
func ParseSize(s string, bare Unit) (Size, error) {
	r, err := begin(s)
	if err != nil {
		return Size{}, err
	}
	for _, sign := range []string{"\u2300", "\u00f8", "\u00d8"} { // the sign for a diameter
		if r.take(sign) {
			r.blank()
			break
		}
	}
	p := sizeParts{reader: r, bare: bareMeasure(bare)}
	if err := p.read(); err != nil {
		return Size{}, err
	}
	return p.size(strings.TrimSpace(s))
}

// sizeParts is a dimension taken apart, before its units are settled.
type sizeParts struct {
	*reader
	bare     measure
	nominal  figure
	own      measure // unit of the nominal size
	ownSaid  bool
	kind     TolKind
	isRange  bool
	devs     [2]figure
	devUnits [2]measure
	devSaid  [2]bool
	tolClass string
}

func (p *sizeParts) read() (err error) {
	if p.nominal, p.own, p.ownSaid, err = p.signed(); err != nil {
		return err
	}
	p.blank()
	switch {
	case p.done():
		return nil
	case p.take(".."):
		p.kind, p.isRange = Deviations, true
		p.blank()
		p.devs[0], p.devUnits[0], p.devSaid[0], err = p.signed()
		if err != nil {
			return err
		}
	case p.take("\u00b1"), p.take("+/-"), p.take("+-"):
		err = p.plusMinus()
	case p.next() == '+', p.next() == '-', p.next() == '0':
		err = p.twoDeviations()
	case isLetter(p.next()):
		return p.class()
	default:
		return p.leftOver()
	}
	if err != nil {
		return err
	}
	if p.blank(); !p.done() {
		return p.leftOver()
	}
	return nil
}

// signed takes a figure with or without a sign, and its unit if one follows.
func (p *sizeParts) signed() (figure, measure, bool, error) {
	negative := p.take("-")
	if !negative {
		p.take("+")
	}
	f, err := p.unsigned()
	if err != nil {
		return f, measure{}, false, err
	}
	if negative {
		f.value.Neg(f.value)
	}
	m, ok := p.unit()
	return f, m, ok, nil
}

func (p *sizeParts) plusMinus() error {
	p.kind = Deviations
	p.blank()
	from := p.at
	f, err := p.unsigned()
	if err != nil {
		return fmt.Errorf("%s: what follows ± is not a length: %s", said(p.all), said(p.all[from:]))
	}
	m, ok := p.unit()
	low := figure{new(big.Rat).Neg(f.value), f.decimals}
	p.devs = [2]figure{low, f}
	p.devUnits, p.devSaid = [2]measure{m, m}, [2]bool{ok, ok}
	return nil
}

// twoDeviations takes "-0.05/0" or "+0.02 -0.01". Each has a sign or is nought.
func (p *sizeParts) twoDeviations() (err error) {
	p.kind = Deviations
	for n := range p.devs {
		if n == 1 {
			p.blank()
			if p.take("/") {
				p.blank()
			}
			if p.done() {
				return fmt.Errorf("%s: one deviation only; write both, as in 12 -0.05/0", said(p.all))
			}
		}
		hasSign := p.next() == '+' || p.next() == '-'
		if p.devs[n], p.devUnits[n], p.devSaid[n], err = p.signed(); err != nil {
			return err
		}
		if !hasSign && p.devs[n].value.Sign() != 0 {
			return fmt.Errorf("%s: a deviation needs its sign, as in 12 +0.02/-0.01", said(p.all))
		}
	}
	return nil
}

// class takes the letters and grade of ISO 286 that end the text.
func (p *sizeParts) class() error {
	word := p.rest()
	if strings.Contains(word, "/") && !strings.Contains(word, " ") {
		return fmt.Errorf("%s: %s names a hole and a shaft; a size takes one of them", said(p.all), said(word))
	}
	if !IsClass(word) {
		return fmt.Errorf("%s: %s is neither a unit (mm, in, thou) nor a tolerance class such as H7", said(p.all), said(word))
	}
	p.kind, p.tolClass = Class, word
	p.at = len(p.all)
	return nil
}

// positions are the letters of ISO 286-1:2010 for shafts; holes have the same in capitals.
const positions = " a b c cd d e ef f fg g h j js k m n p r s t u v x y z za zb zc "

// IsClass says whether a word is a tolerance class of ISO 286-1: letters in one case, and
// a grade from 01, 0, 1 to 18.
func IsClass(word string) bool {
	n := 0
	for n < len(word) && isLetter(word[n]) {
		n++
	}
	letters, grade := word[:n], word[n:]
	low := strings.ToLower(letters)
	if letters == "" || letters != low && letters != strings.ToUpper(letters) || !strings.Contains(positions, " "+low+" ") {
		return false
	}
	if grade == "01" || grade == "0" {
		return true
	}
	g, err := strconv.ParseUint(grade, 10, 8)
	return err == nil && grade[0] != '0' && grade[0] != '+' && g <= 18
}

// units settles which unit each figure is in.
func (p *sizeParts) units() {
	last := p.devSaid[1] || p.isRange && p.devSaid[0]
	lastUnit := p.devUnits[1]
	if p.isRange {
		lastUnit = p.devUnits[0]
	}
	if !p.ownSaid {
		p.own = p.bare
		if last && (!lastUnit.thou || p.isRange) {
			p.own = lastUnit
		}
	}
	for n := range p.devs {
		switch {
		case p.devSaid[n]:
		case !p.isRange && p.devSaid[1-n]:
			p.devUnits[n] = p.devUnits[1-n]
		default:
			p.devUnits[n] = p.own
		}
	}
}

func (p *sizeParts) size(written string) (Size, error) {
	p.units()
	s := Size{Decimals: p.nominal.decimals, Unit: p.own.unit, Written: written}
	s.Tol.Kind, s.Tol.Letters = p.kind, p.tolClass
	nominal, err := p.millimetres(p.nominal.value, p.own)
	if err != nil {
		return Size{}, err
	}
	if p.kind == Deviations {
		var d [2]*big.Rat
		for n := range d {
			if p.isRange && n == 1 {
				break
			}
			if d[n], err = p.millimetres(p.devs[n].value, p.devUnits[n]); err != nil {
				return Size{}, err
			}
		}
		if p.isRange {
			if d[0].Cmp(nominal) < 0 {
				return Size{}, fmt.Errorf("%s: the range runs backwards; write the smaller size first", said(p.all))
			}
			half := new(big.Rat).Sub(d[0], nominal)
			half.Quo(half, big.NewRat(2, 1))
			nominal = new(big.Rat).Add(nominal, half)
			d[0], d[1] = new(big.Rat).Neg(half), half
			s.Decimals = max(s.Decimals, p.devs[0].decimals)
		}
		if d[0].Cmp(d[1]) > 0 {
			d[0], d[1] = d[1], d[0]
		}
		s.Tol.Lo, s.Tol.Hi = float(d[0]), float(d[1])
	}
	s.Nominal = float(nominal)
	return s, nil
}

// PlainSize makes a size of a bare number that was worked out or read as a number. Its
// decimal places are those of the written form, where that is a plain number.
func PlainSize(mm float64, written string, u Unit) Size {
	s := Size{Nominal: mm, Decimals: -1, Unit: u, Written: written}
	if r, err := begin(written); err == nil {
		r.take("-")
		if f, err := r.unsigned(); err == nil && r.done() {
			s.Decimals = f.decimals
		}
	}
	return s
}

// String says the size as a drawing does: "8 H7", "30 ±0.1", "12 -0.05/0", "3/8 in ±0.005".
func (s Size) String() string {
	if s.Tol.Kind == Deviations && strings.Contains(s.Written, "..") {
		return s.figure(s.Nominal+s.Tol.Lo) + ".." + s.figure(s.Nominal+s.Tol.Hi) + s.inches()
	}
	words := s.nominalWords() + s.inches()
	switch s.Tol.Kind {
	case Class:
		return words + " " + s.Tol.Letters
	case Deviations:
		if s.Tol.Lo == -s.Tol.Hi {
			return words + " ±" + s.figure(s.Tol.Hi)
		}
		return words + " " + s.deviation(s.Tol.Lo) + "/" + s.deviation(s.Tol.Hi)
	}
	return words
}

func (s Size) inches() string {
	if s.Unit == Inch {
		return " in"
	}
	return ""
}

// figure prints a length in the unit of the size, to a tenth of a micrometre or a
// hundred-thousandth of an inch, no trailing noughts.
func (s Size) figure(mm float64) string {
	scale := 1e4
	if s.Unit == Inch {
		scale = 1e5
	}
	v := math.Round(mm/s.Unit.MM()*scale) / scale
	if v == 0 {
		v = 0 // no minus before nought
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

func (s Size) deviation(mm float64) string {
	f := s.figure(mm)
	if mm > 0 && f != "0" {
		return "+" + f
	}
	return f
}

// nominalWords keeps the noughts that were written and the fractions of an inch.
func (s Size) nominalWords() string {
	v := s.Nominal / s.Unit.MM()
	if s.Decimals > 0 && s.Decimals <= 6 {
		w := strconv.FormatFloat(v, 'f', s.Decimals, 64)
		if back, err := strconv.ParseFloat(w, 64); err == nil && math.Abs(back-v) < 1e-9 {
			return w
		}
	}
	if s.Decimals < 0 && s.Unit == Inch && strings.Contains(s.Written, "/") {
		if w, ok := fractionWords(v); ok {
			return w
		}
	}
	return s.figure(s.Nominal)
}

// fractionWords writes a multiple of 1/64 as a whole number and a fraction in lowest terms.
func fractionWords(v float64) (string, bool) {
	n := math.Round(v * 64)
	if v <= 0 || math.Abs(v*64-n) > 1e-9 || n > 1e6 {
		return "", false
	}
	whole, part, den := int(n)/64, int(n)%64, 64
	for part > 0 && part%2 == 0 {
		part, den = part/2, den/2
	}
	switch {
	case part == 0:
		return strconv.Itoa(whole), true
	case whole == 0:
		return fmt.Sprintf("%d/%d", part, den), true
	}
	return fmt.Sprintf("%d %d/%d", whole, part, den), true
}
