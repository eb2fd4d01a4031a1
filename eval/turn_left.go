package eval

import (
	"math"

	"fettle/schema/model"
)

// Thinnest is the thinnest wall between outside and bore that an operation leaves where it cut,
// mm, on the flats of bar and the thin side of what is set over, with the place of its middle along the axis; false where nothing there is bored.
func (k *Turn) Thinnest(w *Turning) (wall, at float64, bored bool) {
	wall = math.Inf(1)
	for _, z := range k.After.Profile.Between(w.X0, w.X1) {
		for _, end := range [2][3]float64{{z.X0, z.coreAt(z.X0), z.In0}, {z.X1, z.coreAt(z.X1), z.In1}} {
			if end[2] <= 0 {
				continue
			}
			if t := end[1] - end[2]; t < wall-model.Same {
				wall, at, bored = t, (z.X0+z.X1)/2, true
			}
		}
	}
	return wall, at, bored
}

// Skin is the worst raw skin on the metal that a cut of the outside meets, and how deep it usually
// lies; "" where all of it is machined.
func (k *Turn) Skin(w *Turning) string {
	for _, z := range k.Before.Profile.Between(w.X0, w.X1) {
		if z.Skin == "black" || z.Skin == "cast" {
			return z.Skin
		}
	}
	return ""
}

// Stroke is how far a tool in the tailstock goes into the work: from the metal's end to the tip.
func (w *Turning) Stroke() float64 { return w.X1 - w.X0 + w.Point }
