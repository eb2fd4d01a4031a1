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
	if !w.Inside {
		for i, f := range k.Part.Forms {
			if !k.Before.Features[i].Begun || f.Wrong != "" {
				continue
			}
			if t, x, ok := k.besideLine(w, f); ok && t < wall-model.Same {
				wall, at, bored = t, x, true
			}
		}
	}
	return wall, at, bored
}

// besideLine is the least metal between an outside as it is turned and holes or a bore made before it
// that run along the line that turns, beside it, with the place of its middle along that line. False
// where there is none, and where the outside cuts it open.
func (k *Turn) besideLine(w *Turning, f *Form) (wall, at float64, ok bool) {
	a := k.Hold.About
	if len(f.Mouths) == 0 || f.Into.Face.Axis() != a.Along || f.Into.Face == model.NoFace || f.tilted() || !f.Diameter.Is() || !f.Depth.Is() {
		return 0, 0, false
	}
	far := f.Into.At - f.Into.Face.Sign()*f.Depth.V
	x0, x1 := math.Max(w.X0, math.Min(f.Into.At, far)), math.Min(w.X1, math.Max(f.Into.At, far))
	if x1-x0 < model.Grain {
		return 0, 0, false
	}
	out := math.Min(line(w.X0, w.X1, w.R0, w.R1, x0), line(w.X0, w.X1, w.R0, w.R1, x1))
	for _, m := range f.Mouths {
		m[a.Along] = 0
		e := m.Sub(a.At).Len()
		if t := out - e - f.Radius(); e > model.Grain && t > -model.Grain && (!ok || t < wall) {
			wall, at, ok = t, (x0+x1)/2, true
		}
	}
	return wall, at, ok
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
