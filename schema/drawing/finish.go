package drawing

import (
	"strconv"
	"strings"
)

// roughnessGrades are the Ra of the grade numbers N1 to N12, micrometres (ISO 1302, from memory).
var roughnessGrades = [...]float64{0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.3, 12.5, 25, 50}

// ParseRoughness reads the roughness Ra out of the words of a finish, micrometres: "Ra 1.6",
// "Ra 63 µin", "N7". False where the words name no roughness, or one outside 0.001 to 1,000 micrometres.
func ParseRoughness(s string) (ra float64, ok bool) {
	w := strings.ToLower(strings.TrimSpace(s))
	if n, is := strings.CutPrefix(w, "n"); is {
		i, err := strconv.Atoi(n)
		if err != nil || i < 1 || i > len(roughnessGrades) {
			return 0, false
		}
		return roughnessGrades[i-1], true
	}
	w, ok = strings.CutPrefix(w, "ra")
	if !ok {
		return 0, false
	}
	scale := 1.0
	w = strings.TrimSpace(w)
	for _, u := range []struct {
		word  string
		scale float64
	}{{"µin", 0.0254}, {"μin", 0.0254}, {"uin", 0.0254}, {"µm", 1}, {"μm", 1}, {"um", 1}} {
		if rest, is := strings.CutSuffix(w, u.word); is {
			w, scale = strings.TrimSpace(rest), u.scale
			break
		}
	}
	ra, err := strconv.ParseFloat(strings.Replace(w, ",", ".", 1), 64)
	ra *= scale
	if err != nil || !(ra >= 0.001 && ra <= 1000) {
		return 0, false
	}
	return ra, true
}
