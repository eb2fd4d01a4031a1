package drawing

import (
	"strconv"
	"strings"
)

// Hardness is what a drawing asks for: figures of one scale. Hi is 0 where only the least is written.
type Hardness struct {
	Scale  string // "HRC", "HB", "HV"
	Lo, Hi float64
}

// ParseHardness reads "58..60 HRC", "58-60 HRC", "150 HB", "HRC 60", "700 HV 10". False where the words are no
// hardness of these three scales (ISO 6508, 6506, 6507), or its figures lie outside 1 to 3,000 or the wrong way round.
func ParseHardness(s string) (h Hardness, ok bool) {
	w := strings.ToUpper(strings.TrimSpace(s))
	for _, scale := range []struct{ word, is string }{{"HRC", "HRC"}, {"HBW", "HB"}, {"HB", "HB"}, {"HV", "HV"}} {
		before, after, found := strings.Cut(w, scale.word)
		if !found {
			continue
		}
		figures := strings.TrimSpace(before)
		if figures == "" {
			figures = strings.TrimSpace(after)
		}
		h.Scale = scale.is
		h.Lo, h.Hi, ok = twoFigures(figures)
		return h, ok
	}
	return h, false
}

// twoFigures reads one figure, or two with a sign between.
func twoFigures(s string) (lo, hi float64, ok bool) {
	a, b, two := strings.Cut(s, "..")
	for _, sign := range []string{"–", "-", " TO "} {
		if !two {
			a, b, two = strings.Cut(s, sign)
		}
	}
	read := func(s string) (float64, bool) {
		x, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
		return x, err == nil && x >= 1 && x <= 3000
	}
	lo, ok = read(a)
	if !ok || !two {
		return lo, 0, ok
	}
	hi, ok = read(b)
	return lo, hi, ok && hi >= lo
}
