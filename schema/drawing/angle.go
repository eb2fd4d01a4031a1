package drawing

import (
	"fmt"
	"math/big"
	"strings"
)

// ParseAngle reads an angle in degrees, minutes and seconds of arc: "45", "45 deg",
// "22 deg 30'", "22°30'", `1 deg 30' 15"`. The answer is in degrees.
func ParseAngle(s string) (deg float64, err error) {
	r, err := begin(s)
	if err != nil {
		return 0, err
	}
	negative := r.take("-")
	total, most := new(big.Rat), big.NewRat(36000, 1)
	for n, turn := 0, -1; !r.done(); n++ {
		f, err := r.unsigned()
		if err != nil {
			return 0, err
		}
		at, ok := r.arc()
		if !ok && n == 0 && r.done() {
			at, ok = 0, true
		}
		if !ok || at <= turn {
			return 0, fmt.Errorf("%s: an angle is written 22.5, 22.5 deg or 22 deg 30'", said(r.all))
		}
		if n > 0 && f.value.Cmp(big.NewRat(60, 1)) >= 0 {
			return 0, fmt.Errorf("%s: minutes and seconds of arc stay below 60", said(r.all))
		}
		turn = at
		total.Add(total, f.value.Quo(f.value, arcs[at]))
		r.blank()
	}
	if total.Cmp(most) > 0 {
		return 0, fmt.Errorf("%s: more than a hundred turns", said(r.all))
	}
	if negative {
		total.Neg(total)
	}
	return float(total), nil
}

var arcs = [...]*big.Rat{big.NewRat(1, 1), big.NewRat(60, 1), big.NewRat(3600, 1)}

// arc takes a sign or word for degrees (0), minutes (1) or seconds (2).
func (r *reader) arc() (int, bool) {
	r.blank()
	switch {
	case r.take("\u00b0"):
		return 0, true
	case r.take("''"), r.take(`"`):
		return 2, true
	case r.take("'"):
		return 1, true
	}
	switch strings.ToLower(r.letters()) {
	case "deg", "degree", "degrees":
		return 0, true
	case "min":
		return 1, true
	case "sec":
		return 2, true
	}
	return 0, false
}

// ParseFeed reads a feed: "0.1 mm/rev", "0.004 in/rev", "0.02 mm/tooth", "60 mm/min", "hand".
// A bare figure before the stroke is in the unit given.
func ParseFeed(s string, bare Unit) (Feed, error) {
	r, err := begin(s)
	if err != nil {
		return Feed{}, err
	}
	if strings.EqualFold(r.all, "hand") {
		return Feed{Kind: ByHand, Written: r.all}, nil
	}
	f, err := r.unsigned()
	if err != nil {
		return Feed{}, err
	}
	m, ok := r.unit()
	if !ok {
		m = bareMeasure(bare)
	}
	r.blank()
	kind, ok := r.per()
	if !ok {
		return Feed{}, fmt.Errorf("%s: a feed says what it is counted over: mm/rev, mm/tooth or mm/min, or it is \"hand\"", said(r.all))
	}
	v, err := r.millimetres(f.value, m)
	if err != nil {
		return Feed{}, err
	}
	if v.Sign() == 0 {
		return Feed{}, fmt.Errorf("%s: a feed of nothing", said(r.all))
	}
	return Feed{Kind: kind, Rate: float(v), Written: strings.TrimSpace(s)}, nil
}

// per takes "/rev", "/tooth" or "/min" that ends the text.
func (r *reader) per() (FeedKind, bool) {
	if !r.take("/") {
		return 0, false
	}
	r.blank()
	word := strings.ToLower(r.letters())
	if r.blank(); !r.done() {
		return 0, false
	}
	switch word {
	case "rev", "turn":
		return PerTurn, true
	case "tooth":
		return PerTooth, true
	case "min":
		return PerMinute, true
	}
	return 0, false
}
