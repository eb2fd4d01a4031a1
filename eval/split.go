package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Halving is a form that a split cuts in two lengthwise: a bore along the joint, a slot over it.
type Halving struct {
	Form  int     // which of the part's forms
	Size  float64 // across the joint, as drawn
	Loses float64 // what sawing and cleaning take out of it where it was made before, mm
}

// Splits lists the splits of a part whose two pieces are put together again.
func (p *Part) Splits() []*Form {
	var out []*Form
	for _, f := range p.Forms {
		if f.Feature.Kind == "split" && f.Wrong == "" && len(f.Lacks) == 0 && !f.Feature.StaysOpen.V {
			out = append(out, f)
		}
	}
	return out
}

// Halved lists what a split cuts in two lengthwise.
func (p *Part) Halved(split *Form) []Halving {
	loses := split.Width + 2*p.cleanUp(split)
	var out []Halving
	if p.Apart != nil {
		for _, i := range p.Apart.Joint.halved {
			f := p.Forms[i]
			d := f.Hi[split.Across] - f.Lo[split.Across]
			if len(f.Mouths) > 0 {
				d = f.Diameter.V
			}
			out = append(out, Halving{i, d, loses})
		}
		return out
	}
	if !p.Round || split.Across == 0 {
		return nil
	}
	at := (split.Lo[split.Across] + split.Hi[split.Across]) / 2
	for i, f := range p.Forms {
		r := 0.0
		switch {
		case f.Wrong != "" || len(f.Lacks) > 0:
		case f.Lathe != nil && f.Lathe.Inside && f.Feature.Kind == "bore":
			r = f.Lathe.R0
		case len(f.Mouths) == 1 && f.Into.Face.Axis() == 0 && near(f.Mouths[0][split.Across], 0):
			r = f.Diameter.Or(0) / 2
		}
		if r > math.Abs(at)+model.Grain {
			out = append(out, Halving{i, 2 * r, loses})
		}
	}
	return out
}

// Loose is a piece of a closed joint that nothing holds against the other one.
type Loose struct {
	Split *Form
	Piece string
}

// Loose finds the piece that is not held in a holding of both pieces of a split: the jaws do not
// press the joint together, and do not touch that piece on both sides.
func (h *Holding) Loose() (l Loose, known bool) {
	p := h.Part
	if !h.Before.Closed || p.Apart == nil || h.Jaws() == nil || h.Unplayed != "" {
		return l, true
	}
	split := p.Forms[p.Apart.index(p.Apart.Joint.Form)]
	if math.Abs(h.Pose.Dir(Normal(model.FaceOn(split.Across, 1)))[1]) > 0.5 {
		return l, true // the jaws press it together
	}
	fixed, ok := h.Fixed.Get()
	moving, ok2 := h.Moving.Get()
	if !ok || !ok2 {
		return l, false
	}
	lumps := h.Piece.Lumps()
	if len(lumps) != 2 {
		return l, true
	}
	for n, q := range lumps {
		touch := func(sign, at float64, r solid.Rect) bool { return q.Contact(1, sign, at, r).Area > 0.01 }
		if !touch(1, h.Hi[1], fixed.Rect) || !touch(-1, h.Lo[1], moving.Rect) {
			return Loose{split, split.Feature.Pieces.V[n]}, true
		}
	}
	return l, true
}

func (p *Part) index(f *Form) int {
	for i, g := range p.Forms {
		if g == f {
			return i
		}
	}
	return 0
}

// Fastened says whether the pieces of a split are joined before a stretch of work: a bench or heat
// of the part before it joins, or a screw of the recipe goes through or into this part.
func (p *Part) Fastened(before *Work) bool {
	for _, w := range p.Work {
		if w.SetUp == before.SetUp {
			break
		}
		if w.SetUp.Joins.Is() {
			return true
		}
	}
	for _, s := range p.Build.Screwed {
		for _, r := range append(append([]model.Ref{}, s.Through.V...), s.Into.V) {
			if r.Item == p.Part.Item || p.FormOf(r.Item) != nil {
				return true
			}
		}
	}
	return false
}
