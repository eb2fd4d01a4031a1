package eval

import (
	"math"
	"sort"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// milledAbout cuts the raw section of a block about a line into zones at the ends of what is milled
// in it, each of which sweeps no more than the corners of the metal that is left there.
func (p *Part) milledAbout(s *State, a Axis, z Zone) Profile {
	cuts, milled := []float64{z.X0, z.X1}, false
	for i, f := range p.Forms {
		switch f.Feature.Kind {
		case "slot", "pocket", "step", "outline", "tee_slot", "dovetail":
		default:
			continue
		}
		if !s.Features[i].Begun {
			continue
		}
		milled = true
		for _, x := range [2]float64{f.Lo[a.Along], f.Hi[a.Along]} {
			if x > z.X0+model.Grain && x < z.X1-model.Grain {
				cuts = append(cuts, x)
			}
		}
	}
	if !milled {
		return Profile{z}
	}
	sort.Float64s(cuts)
	var out Profile
	for i := 1; i < len(cuts); i++ {
		c := z
		c.X0, c.X1 = cuts[i-1], cuts[i]
		if c.X1-c.X0 < model.Grain {
			continue
		}
		if r, ok := sweptBetween(s.Piece, a, c.X0, c.X1); ok && r < c.Out0 {
			c.Out0, c.Out1 = r, r
		}
		out = append(out, c)
	}
	return out
}

// sweptBetween is the radius of a circle about a line that all metal between two places along it lies
// in: that of the corners of the room which the metal takes up there. False where there is none.
func sweptBetween(piece *solid.Piece, a Axis, x0, x1 float64) (float64, bool) {
	var lo, hi solid.Vec
	for i := range 3 {
		lo[i], hi[i] = piece.Extent(i, -1), piece.Extent(i, 1)
		if math.IsNaN(lo[i]) {
			return 0, false
		}
	}
	one := solid.Vec{1, 1, 1}
	low, high := lo.Sub(one), hi.Add(one)
	left, right := high, low
	left[a.Along], right[a.Along] = x0, x1
	if x0 > lo[a.Along]+model.Grain {
		piece = piece.Cut(solid.Removal{Take: solid.Box(low, left), By: "zone"})
	}
	if x1 < hi[a.Along]-model.Grain {
		piece = piece.Cut(solid.Removal{Take: solid.Box(right, high), By: "zone"})
	}
	sum := 0.0
	for i := range 3 {
		if i == a.Along {
			continue
		}
		d := math.Max(piece.Extent(i, 1)-a.At[i], a.At[i]-piece.Extent(i, -1))
		if math.IsNaN(d) {
			return 0, false
		}
		sum += d * d
	}
	return math.Sqrt(sum), true
}
