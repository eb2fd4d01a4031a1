package choose

import (
	"fettle/eval"
	"fettle/schema/model"
)

// veeBlock is the vee block that a set-up names; nil where it names none.
func (c *chooser) veeBlock(s *model.SetUp) *model.VBlock {
	for _, r := range s.Hold.V {
		if v, ok := model.Find(c.build.Shop.VBlocks, r.Item); ok {
			return v
		}
	}
	return nil
}

// veed stands the vee block of a set-up: as written, else with its vee up under work that lies; work that
// stands on end is squeezed between the fixed jaw and a block at the moving one, or has the block behind
// it on a table. One block stands in the middle of the work, two flush with its ends. Common practice.
// It gives a sentence where what is written is not made on paper.
func (c *chooser) veed(p *eval.Part, before *eval.State, s *model.SetUp, a *eval.HoldChoice) (*eval.Veed, string) {
	b := c.veeBlock(s)
	if b == nil {
		return nil, ""
	}
	v := &eval.Veed{Block: b, Looks: "up"}
	upright := a.Up == model.Left || a.Up == model.Right
	if upright {
		v.Looks = "front"
		if a.Vise != nil {
			v.Looks = "back"
		}
	}
	if s.Vee.Looks.Is() {
		v.Looks = s.Vee.Looks.V
	} else {
		v.Chosen = append(v.Chosen, "its vee looks "+veeWords(v.Looks, a))
	}
	if v.Looks != "up" && !upright && a.Vise == nil {
		return nil, "work that lies along a vee block on its side under clamps is not made on paper"
	}
	v.At = s.Vee.At.V
	if !s.Vee.At.Is() || len(v.At) == 0 {
		lo, hi := before.Piece.Extent(0, -1), before.Piece.Extent(0, 1)
		v.At = []float64{(lo + hi) / 2}
		long, ok := b.Length.Get()
		switch {
		case v.Looks != "up":
		case ok && b.Quantity.V >= 2 && hi-lo >= 2*long:
			v.At = []float64{lo + long/2, hi - long/2}
			v.Chosen = append(v.Chosen, "two blocks, flush with the ends of the work")
		default:
			v.Chosen = append(v.Chosen, "in the middle of the work")
		}
	}
	return v, ""
}

// veeWords says where a vee looks.
func veeWords(looks string, a *eval.HoldChoice) string {
	switch {
	case looks == "up":
		return "up"
	case a.Vise != nil && looks == "back":
		return "to the fixed jaw"
	case a.Vise != nil:
		return "to the moving jaw"
	case looks == "back":
		return "to the column"
	}
	return "to the front"
}
