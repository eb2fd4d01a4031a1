package drawing

import (
	"strconv"
	"strings"
)

// ParseEngagement reads a class of thread that is written as a percent of full thread: "65 %". False
// where it is another class, and below 1 or above 100.
func ParseEngagement(s string) (percent float64, ok bool) {
	n, ok := strings.CutSuffix(strings.TrimSpace(s), "%")
	if !ok {
		return 0, false
	}
	percent, err := strconv.ParseFloat(strings.TrimSpace(n), 64)
	return percent, err == nil && percent >= 1 && percent <= 100
}
