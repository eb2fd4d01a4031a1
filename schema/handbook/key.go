package handbook

import "math"

// Key is a parallel key with its keyways, mm: width, height, and the depth of the keyway in the shaft and
// in the bore, each from the round surface at the keyway's middle, and how much deeper either may be.
type Key struct{ Width, Height, Shaft, Bore, Deeper float64 }

// Limits of a keyway's width for the usual fit of its key (DIN 6885-1, ISO/R 773, from memory): the key sits in the shaft
// and slides on to the hub.
const (
	KeyInShaft = "N9"
	KeyInBore  = "JS9"
)

// CirclipWidth are the limits of the width of a circlip's groove (DIN 471, DIN 472, from memory).
const CirclipWidth = "H13"

// KeyFor gives the parallel key for a shaft of a diameter, mm: over the lower border, up to and with the
// upper one. False for shafts that the table does not have.
func KeyFor(shaft float64) (Key, bool) {
	for _, r := range load("key").rows {
		if shaft > r.number("over_mm")+hair && shaft <= r.number("to_mm")+hair {
			return keyOf(r), true
		}
	}
	return Key{}, false
}

// KeyOfWidth gives the parallel key of a width, mm. False for a width that the table does not have.
func KeyOfWidth(width float64) (Key, bool) {
	for _, r := range load("key").rows {
		if math.Abs(r.number("width_mm")-width) < hair {
			return keyOf(r), true
		}
	}
	return Key{}, false
}

func keyOf(r row) Key {
	return Key{r.number("width_mm"), r.number("height_mm"), r.number("shaft_mm"), r.number("bore_mm"), r.number("deeper_mm")}
}

// Circlip is a ring in a groove, mm: diameter at the floor of its groove, thickness of the ring, least width of the
// groove, and the limits of the floor.
type Circlip struct {
	Floor, Ring, Width float64
	Limits             string // as on a drawing: "h11", "0/-0.04"
}

// CirclipFor gives the circlip for a shaft, or for a bore, of a diameter, mm. False for a size that the
// table does not have.
func CirclipFor(diameter float64, bore bool) (Circlip, bool) {
	on := "shaft"
	if bore {
		on = "bore"
	}
	for _, r := range load("circlip").rows {
		if r.text("on") == on && math.Abs(r.number("diameter_mm")-diameter) < hair {
			return Circlip{r.number("floor_mm"), r.number("ring_mm"), r.number("width_mm"), r.text("limits")}, true
		}
	}
	return Circlip{}, false
}
