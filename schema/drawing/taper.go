package drawing

import (
	"fmt"
	"math"
	"math/big"
	"strings"
)

// taperSeries are the series of tapers by the words in use, with the numbers that exist.
// INT, NT and ISO are one taper, 7/24 of ISO 297; "2MT" and "MK2" are other ways to write MT2.
var taperSeries = []struct {
	words   string // blanks between, lower case
	series  string
	numbers string // blanks between and around; "" where the series is one size
}{
	{"mt mk morse", "MT", " 0 1 2 3 4 5 6 7 "},
	{"jt jacobs", "JT", " 0 1 2 3 4 5 6 33 "},
	{"iso int nt", "ISO", " 10 15 20 25 30 35 40 45 50 55 60 "},
	{"nmtb", "NMTB", " 10 20 25 30 35 40 45 50 60 "},
	{"bt", "BT", " 15 20 25 30 35 40 45 50 60 "},
	{"cat", "CAT", " 30 40 45 50 60 "},
	{"sk", "SK", " 20 25 30 35 40 45 50 60 "},
	{"b", "B", " 6 10 12 16 18 22 24 "},
	{"b&s bs", "B&S", " 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 "},
	{"w", "W", " 8 10 12 15 20 25 "},
	{"r", "R8", " 8 "},
}

// ParseTaper reads a taper: "MT2", "R8", "ISO 30", "INT40", "JT33", "B16", "5C", or a plain
// ratio on diameter, "1:10", also "1 in 48".
func ParseTaper(s string) (Taper, error) {
	r, err := begin(s)
	if err != nil {
		return Taper{}, err
	}
	t, err := r.taper()
	t.Written = strings.TrimSpace(s)
	if err != nil {
		return Taper{}, err
	}
	return t, nil
}

func (r *reader) taper() (Taper, error) {
	number := r.digits()
	r.blank()
	if number != "" && (r.next() == ':' || r.next() == '.' || strings.HasPrefix(asciiLower(r.rest()), "in ")) {
		r.at = 0
		return r.ratio()
	}
	from := r.at
	for isLetter(r.next()) || r.next() == '&' {
		r.at++
	}
	word := strings.ToLower(r.all[from:r.at])
	if number == "" {
		r.blank()
		number = r.digits()
	} else if word == "c" && number == "5" && r.done() {
		return Taper{Series: "5C"}, nil
	}
	if r.done() {
		for _, series := range taperSeries {
			if !strings.Contains(" "+series.words+" ", " "+word+" ") || word == "" {
				continue
			}
			if !strings.Contains(series.numbers, " "+number+" ") || number == "" {
				return Taper{}, fmt.Errorf("%s: that taper is made in the sizes%s", said(r.all), strings.TrimRight(series.numbers, " "))
			}
			if series.series == "R8" {
				number = ""
			}
			return Taper{Series: series.series, Number: number}, nil
		}
	}
	return Taper{}, fmt.Errorf("%s: not a taper as the trade writes it, such as MT2, R8, ISO 30, JT33, 5C or 1:10 on diameter", said(r.all))
}

// ratio reads "1:10" or "1 in 10".
func (r *reader) ratio() (Taper, error) {
	upper, err := r.unsigned()
	if err != nil {
		return Taper{}, err
	}
	r.blank()
	if !r.take(":") {
		r.letters()
	}
	r.blank()
	lower, err := r.unsigned()
	if err != nil {
		return Taper{}, err
	}
	if r.blank(); !r.done() || upper.decimals < 0 || lower.decimals < 0 || upper.value.Sign() == 0 || lower.value.Sign() == 0 {
		return Taper{}, fmt.Errorf("%s: a ratio is written 1:10, on diameter", said(r.all))
	}
	v := new(big.Rat).Quo(upper.value, lower.value)
	if v.Cmp(big.NewRat(10, 1)) > 0 || v.Cmp(big.NewRat(1, 10000)) < 0 {
		return Taper{}, fmt.Errorf("%s: a taper of %s on each mm of length", said(r.all), plain(float(v)))
	}
	return Taper{Ratio: float(v)}, nil
}

// String says the taper: "MT2", "ISO 30", "R8", "1:10".
func (t Taper) String() string {
	switch {
	case t.Series == "" && t.Ratio > 0:
		n := 1 / t.Ratio
		if w := plain(n); math.Abs(n-math.Round(n*100)/100) < 1e-9 {
			return "1:" + w
		}
		return t.Written
	case t.Series == "":
		return t.Written
	case t.Series == "ISO" || t.Series == "B&S":
		return t.Series + " " + t.Number
	}
	return t.Series + t.Number
}

// Same says whether a shank of one taper fits the socket of the other. ISO 297 and NMTB
// sockets and shanks are one cone with one kind of drawbar; the later 7/24 shanks for tool
// changers (BT, CAT, SK) are not taken for them. No two plain ratios are the same taper
// without their diameters, so only the ratio is compared there.
func (t Taper) Same(o Taper) bool {
	a, b := t.Series, o.Series
	if a == "NMTB" {
		a = "ISO"
	}
	if b == "NMTB" {
		b = "ISO"
	}
	return a == b && t.Number == o.Number && math.Abs(t.Ratio-o.Ratio) < 1e-9
}
