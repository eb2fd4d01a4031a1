package handbook

import "math"

// ThreadUndercut is the groove that a metric thread runs out into, mm: how far its floor lies beyond the thread's own
// diameter (on diameter), least length of the floor and greatest width of the whole.
type ThreadUndercut struct{ Beyond, Least, Most float64 }

// UndercutFor gives the undercut for a metric thread of a pitch, mm, on a shaft or in a bore, of the usual length. False
// for a pitch that the table does not have.
func UndercutFor(pitch float64, bore bool) (ThreadUndercut, bool) {
	on := "shaft"
	if bore {
		on = "bore"
	}
	for _, r := range load("thread_undercut").rows {
		if r.text("on") == on && math.Abs(r.number("pitch_mm")-pitch) < hair {
			return ThreadUndercut{r.number("diameter_mm"), r.number("least_mm"), r.number("most_mm")}, true
		}
	}
	return ThreadUndercut{}, false
}

// Limits of the floor of a thread's undercut (DIN 76-1, from memory).
const (
	UndercutShaft = "h13"
	UndercutBore  = "H13"
)
