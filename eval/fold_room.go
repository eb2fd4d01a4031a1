package eval

import (
	"math"

	"fettle/schema/model"
)

// A square bend, and the first 90 degrees of one that goes farther, is folded over the edge of what holds the sheet: the jaws of a bench vise, or a bar beside
// them. One of the two legs that meet at it is held, the other is turned over the edge. What was folded
// before must find room there:
//
//   - the leg that is held lies flat between the jaws, so that its other end is not folded yet;
//   - the leg that is turned comes to lie on top of the jaw; where its other end is folded the same way,
//     that leg then points down behind the jaw, which must be no thicker than the room between the two;
//   - walls across both ends of the bend stand beside the jaws, which must be no wider than the room
//     between them. Beside one wall alone the sheet is slid along.
//
// A leg that is folded over 90 degrees leans in over the jaw, and leaves less room at its tip. One that is folded
// right back, a hem, lies on the leg that it was folded from: it stands in nobody's way, and goes between the
// jaws with it. What goes over 90 degrees is taken out of the jaws then and closed by itself (common practice).
//
// Either leg may be the one that is held. Bends of less than 90 degrees are not asked about.

// FoldRoom is what a bend finds folded already, for one choice of the leg that is held.
type FoldRoom struct {
	Held   int   // which leg
	Flat   *Form // the bend at the other end of the leg that is held, so that it cannot be; else nil
	Behind *Form // the bend that leaves room behind the jaw; else nil
	Thick  float64
	Walls  [2]*Form // the walls that leave room for the jaws' width; else nil
	Wide   float64
}

// FoldOver is one bend as it is folded at a bench, with what it is folded over.
type FoldOver struct {
	Form       *Form
	Bench      *model.SetUp
	Over       *model.Item // what it is folded over; nil where nothing is named
	Thick      model.Known[float64]
	Wide       model.Known[float64]
	Rooms      []FoldRoom
	Constrains bool // whether anything that is folded already stands in either way
}

// FoldsOver lists the bends of 90 degrees and more in the order in which benches fold them.
func (p *Part) FoldsOver() (out []FoldOver) {
	w := p.Flat
	if w == nil {
		return nil
	}
	made := make([]bool, len(w.Bends))
	for _, work := range p.Work {
		if work.Kind != "bench" {
			continue
		}
		for _, st := range work.Steps {
			for _, t := range st.Makes {
				for i := range w.Bends {
					k := &w.Bends[i]
					if t.Form == nil || k.Form.Feature != t.Form.Feature || made[i] {
						continue
					}
					if o, ok := w.over(p, k, made); ok {
						o.Bench = work.SetUp
						o.Over, o.Thick, o.Wide = p.foldedOver(work.SetUp)
						out = append(out, o)
					}
					made[i] = true
				}
			}
		}
	}
	return out
}

// squarely says whether a bend goes through a right angle, or just to it.
func (k *Crease) squarely() bool { return math.Abs(k.Angle) > math.Pi/2-1e-9 }

// hem says whether a bend folds its leg right back.
func (k *Crease) hem() bool { return math.Abs(k.Angle) > math.Pi-1e-9 }

// inset is how far inwards of the outermost place of a bend the leg beyond it reaches, that leg being so long:
// of a square bend the thickness.
func (k *Crease) inset(long, thick float64) float64 {
	sin, cos := math.Sincos(math.Abs(k.Angle))
	return k.Inside + thick - k.Inside*sin + long*max(0, -cos)
}

// over works out what a bend finds folded already.
func (w *Folding) over(p *Part, k *Crease, made []bool) (FoldOver, bool) {
	o := FoldOver{Form: k.Form}
	if !k.squarely() {
		return o, false
	}
	for _, held := range [2]int{k.Far, k.Near} {
		turned := k.Near + k.Far - held
		r := FoldRoom{Held: held}
		in := 0.0 // what walls across both ends lean in
		for i := range w.Bends {
			b := &w.Bends[i]
			if !made[i] || b == k {
				continue
			}
			outer := b.Far
			if b.Far == turned || b.Far == held {
				outer = b.Near
			}
			long := w.Legs[outer].Hi[b.Axis] - w.Legs[outer].Lo[b.Axis]
			switch of := b.Near == held || b.Far == held; {
			case !b.squarely():
				return o, false
			case b.hem():
			case b.Axis == k.Axis && of:
				r.Flat = b.Form
			case b.Axis == k.Axis && (b.Near == turned || b.Far == turned) && b.Angle*k.Angle > 0:
				r.Behind, r.Thick = b.Form, math.Abs(b.At-k.At)-b.inset(long, p.Size[2])-p.Size[2]
			case b.Axis != k.Axis && (of || (b.Near == turned || b.Far == turned) && b.Angle*k.Angle > 0):
				r.Walls[(1+int(b.Sign))/2] = b.Form
				in += b.inset(long, p.Size[2])
			}
		}
		if r.Walls[0] == nil || r.Walls[1] == nil {
			r.Walls = [2]*Form{}
		} else {
			l := w.Legs[0]
			r.Wide = l.Over[2*(1-k.Axis)+1] - l.Over[2*(1-k.Axis)] - in
		}
		o.Constrains = o.Constrains || r.Flat != nil || r.Behind != nil || r.Walls[0] != nil
		o.Rooms = append(o.Rooms, r)
	}
	return o, true
}

// foldedOver is what a bench folds sheet over: the first bar that is named as its tool, else the jaws of its
// vise.
func (p *Part) foldedOver(s *model.SetUp) (on *model.Item, thick, wide model.Known[float64]) {
	shop := &p.Build.Shop
	for _, r := range s.Tool.V {
		if x, ok := model.Find(shop.Parallels, r.Item); ok {
			return x.Item, x.Thickness, x.Length
		}
		if x, ok := model.Find(shop.Packing, r.Item); ok {
			return x.Item, x.Thickness, x.Length
		}
	}
	for _, r := range s.Hold.V {
		if v, ok := model.Find(shop.Vises, r.Item); ok {
			if barsBeside(s) { // whose sizes a shop does not say so
				return v.Item, model.Lacking[float64](s.Tool.Missing()), model.Lacking[float64](s.Tool.Missing())
			}
			return v.Item, v.JawThickness, v.JawWidth
		}
	}
	lack := []model.Lack{{Fact: s.Item.Path() + ".hold (what the sheet is folded over)", At: s.Item.At}}
	return nil, model.Lacking[float64](lack), model.Lacking[float64](lack)
}
