package eval

import "fettle/schema/model"

// MetalBelow is how much metal stays below the tip in a blind hole, on its axis, before any
// of it is cut; below 0 the tip comes out. False where no metal lies on the axis.
func (k *Cut) MetalBelow(w *Working) (float64, bool) {
	f := w.Target.Form
	best, ok := 0.0, false
	for i, m := range f.Mouths {
		out := k.Part.outward()
		spans := k.Before.Piece.Ray(m.Sub(f.dir(i).Times(out)), f.dir(i))
		tip := w.Depth + w.Point
		left := -tip
		for _, s := range spans {
			a, b := s.A-out, s.B-out
			if a <= tip+model.Grain && b > a {
				left = b - tip
			}
		}
		if len(spans) > 0 && (!ok || left < best) {
			best, ok = left, true
		}
	}
	return best, ok
}

// BurrsOn lists the burrs that lie within a contact of the holding, or along its border.
func (h *Holding) BurrsOn(c Contact) []Burr {
	if !c.Touches {
		return nil
	}
	var out []Burr
	for _, b := range h.Before.Burrs {
		if b.On != c.Face {
			continue
		}
		a, e := h.Pose.Point(b.A), h.Pose.Point(b.B)
		u, v := 0, 1
		if n := h.Pose.Dir(Normal(b.On)); n[2] < 0.5 && n[2] > -0.5 {
			u, v = 0, 2
			if n[0] > 0.5 || n[0] < -0.5 {
				u, v = 1, 2
			}
		}
		lo := [2]float64{min(a[u], e[u]) - b.R, min(a[v], e[v]) - b.R}
		hi := [2]float64{max(a[u], e[u]) + b.R, max(a[v], e[v]) + b.R}
		if lo[0] < c.Hi[0]-model.Grain && hi[0] > c.Lo[0]+model.Grain && lo[1] < c.Hi[1]-model.Grain && hi[1] > c.Lo[1]+model.Grain ||
			along(lo, hi, c) {
			out = append(out, *b)
		}
	}
	return out
}

// along says whether a straight burr runs along the border of what is touched.
func along(lo, hi [2]float64, c Contact) bool {
	for i := range 2 {
		j := 1 - i
		onBorder := near(lo[i], hi[i]) && (near(lo[i], c.Lo[i]) || near(lo[i], c.Hi[i]))
		if onBorder && lo[j] < c.Hi[j]-model.Grain && hi[j] > c.Lo[j]+model.Grain {
			return true
		}
	}
	return false
}
