package choose

import (
	"math"
	"sort"

	"fettle/eval"
	"fettle/schema/model"
)

// softJaws spreads a holding over the heights of the soft jaws that are named: the one that is picked, else all,
// those nearest to the vise's own jaws first. What sits on parallels between them sits so on all.
func (c *chooser) softJaws(s *model.SetUp, a eval.HoldChoice, j *model.SoftJaws) (out []eval.HoldChoice) {
	a.Soft = j
	named := s.Soft.Named().V
	heights := []float64{named.Size}
	if !named.Has {
		heights = j.Heights.V.Within(0, 1000, mostPairs)
	}
	if len(heights) == 0 {
		return c.heights(s, a)
	}
	own := a.Vise.JawDepth.Or(0)
	sort.SliceStable(heights, func(i, k int) bool {
		return math.Abs(heights[i]-own) < math.Abs(heights[k]-own)-model.Same
	})
	for _, h := range heights {
		a.SoftHigh = h
		out = append(out, c.heights(s, a)...)
	}
	return out
}
