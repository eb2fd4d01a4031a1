package handbook

import (
	"regexp"
	"strings"
)

// Bearing is a ball bearing by its number, mm. Open and Shielded are its widths without and with shields or seals; Width is
// the one of them that the number tells, 0 where they differ and nothing behind the number says which. Plain says that no
// closer class of limits than the normal one is named.
type Bearing struct {
	Bore, Outside, Width float64
	Open, Shielded       float64
	Plain                bool
}

// bearingCode is a number with what stands behind it: "608", "608-2RS", "6001 ZZ", "61800", "619/8".
var bearingCode = regexp.MustCompile(`^(61[89]/[0-9]|[0-9]{3,5})(.*)$`)

// BearingOf gives a ball bearing by its number. What stands behind the number tells shields and seals (Z, RS), and a
// closer class of limits (P6, P5, P4, P2). False for a number that the table does not have.
func BearingOf(code string) (Bearing, bool) {
	m := bearingCode.FindStringSubmatch(strings.ToUpper(strings.Join(strings.Fields(code), "")))
	if m == nil {
		return Bearing{}, false
	}
	number, behind := m[1], strings.Trim(m[2], "-/.")
	switch { // the same rings by their longer numbers
	case strings.HasPrefix(number, "618/"), strings.HasPrefix(number, "619/"):
		number = "6" + number[2:3] + number[4:]
	case len(number) == 5 && (strings.HasPrefix(number, "618") || strings.HasPrefix(number, "619")):
		number = "6" + number[2:]
	}
	for _, r := range load("bearing").rows {
		if r.text("code") != number {
			continue
		}
		open, shielded := r.number("width_mm"), r.number("shielded_mm")
		if shielded == 0 {
			shielded = open
		}
		b := Bearing{Bore: r.number("bore_mm"), Outside: r.number("outside_mm"), Open: open, Shielded: shielded}
		b.Plain = !closerClass.MatchString(behind)
		if open == shielded || strings.Contains(behind, "Z") || strings.Contains(behind, "RS") {
			b.Width = shielded
		}
		return b, true
	}
	return Bearing{}, false
}

var closerClass = regexp.MustCompile(`P[2456]`)

// BearingBelow gives how far a bearing of the normal class may lie below its nominal size, mm; it never lies above. On is
// "bore" or "width", both by the bore of the bearing, or "outside", by that. False beyond the table.
func BearingBelow(on string, size float64) (float64, bool) {
	for _, r := range load("bearing_limits").rows {
		if r.text("on") == on && r.covers(size) {
			return r.number("below_um") / 1000, true
		}
	}
	return 0, false
}
