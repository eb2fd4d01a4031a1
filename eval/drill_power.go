package eval

import (
	"fettle/eval/reckon/cutting"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// throughDrive is the share of a motor's power that comes to the spindle through belts and gears:
// common practice.
const throughDrive = 0.75

// usualWeb is the web of a twist drill over its diameter; from memory.
const usualWeb = 0.18

// WebShare is how thick the web of a drill is, as a share of its diameter, at most: a pilot no wider
// only takes the work off its point. From memory: twist drills have 0.15 to 0.2.
const WebShare = 0.2

// DrillFeed is the feed of a drill a turn, mm: as the step says it, else the least that is printed for
// its size and metal. False where neither is known.
func DrillFeed(st *model.Step, t Pick, group string) (float64, bool) {
	if st != nil {
		if f := st.Feed.V; st.Feed.Is() && f.Kind == drawing.PerTurn {
			return f.Rate, f.Rate > 0
		}
	}
	f, err := cutting.FeedFor("drilling", t.Cutter.Of.Or("HSS"), group, t.Size)
	return f.Lo, err == nil && !f.None() && f.Lo > 0
}

// DrillWatts is the least power, W, that a drill in the solid asks of the motor at a feed in mm a turn
// and a speed in rev/min. It grows with the speed as that does. False where no table gives it.
func DrillWatts(t Pick, group string, feed, speed float64) (float64, bool) {
	d, err := cutting.Drill(group, t.Size, feed, t.Cutter.Point.Or(118), usualWeb, speed)
	if err != nil || d.Torque.None() {
		return 0, false
	}
	kW, err := cutting.Motor(d.Power.Lo, throughDrive)
	if err != nil {
		return 0, false
	}
	return 1000 * kW, true
}
