package handbook

// Pin is what a standard says of pins of a kind and a nominal diameter.
type Pin struct {
	Least, Most float64 // diameter as it comes, mm; 0 where the standard has no one figure
	Limits      string  // class of the diameter: "h10"; "" where there is none
	Hole        string  // class of the hole that it is driven in: "H12"; "" where the standard has none
}

// PinTaper is the taper of taper pins, on diameter: ISO 2339, as kinds.tsv has it of their reamers.
const PinTaper = 1.0 / 50

// PinOf gives what a standard says of a pin of a kind ("spring", "grooved", "taper") and a nominal diameter, mm; of a
// taper pin its small end. False for others and beyond the tables.
func PinOf(kind string, diameter float64) (Pin, bool) {
	for _, r := range load("pin").rows {
		if r.text("kind") == kind && r.covers(diameter) {
			return Pin{r.number("least_mm"), r.number("most_mm"), r.text("limits"), r.text("hole")}, true
		}
	}
	return Pin{}, false
}
