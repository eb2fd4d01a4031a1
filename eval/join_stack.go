package eval

import (
	"math"

	"fettle/eval/reckon/chain"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// StackJoint is a chain of dimensions and the gap that it must leave.
//
// A path of faces is walked: from the first face, which looks into the gap, to each next one.
// Two faces of one part lie apart by the dimensions of the drawing between them; two faces of
// different parts touch, and look at each other, which settles how the second part lies. What
// the walk comes to along the first face's outward direction is the gap.
//
// A path of both is walked as well: a dimension is the size of a part, crossed from the face against
// what was before to the one opposite, or a room in one, crossed from wall to wall.
//
// A path of dimensions alone has no directions. Read as people write it, it is either a row whose sum
// is wanted (nine spacers), or one room less all that stands in it (a slot, a wheel, two
// washers), whichever it is that stands in the room. The readings differ by at least twice
// the smallest dimension, or of two that are nearly alike by twice what they differ; the one whose
// nominal gap comes nearest to what is wanted is taken, and said. Where two come as near, the room
// is the only opening among the dimensions, else the one written first.
type StackJoint struct {
	Model *model.Stack
	Links []Dimension // of a path of dimensions
	Chain model.Known[[]chain.Link]
	Sure  float64 // of a path of dimensions some of which have no limits: the tolerances of the others together, mm
	Wants model.Known[Limits]
	Why   string // why it is not worked out; "" if it is
}

func (t *Trace) stack(m *model.Stack) *StackJoint {
	s := &StackJoint{Model: m, Wants: model.Known[Limits]{Of: m.Item, Attr: "wants", At: m.Item.At}}
	if w, ok := m.Wants.Get(); ok && w.Tol.Kind == drawing.Deviations {
		s.Wants = model.Sure(Limits{w.Nominal + w.Tol.Lo, w.Nominal + w.Tol.Hi})
	}
	faces := 0
	for _, r := range m.Path.V {
		if _, _, ok := t.plane(r); ok {
			faces++
		}
	}
	switch {
	case len(m.Path.V) == 0:
		s.Why = "its path is not known"
	case faces > 0 && len(m.Path.V) > 1:
		s.Chain, s.Why = t.walk(m.Path.V)
	case faces > 0:
		s.Why = "one face makes no path"
	default:
		s.Chain, s.Why = s.row(t)
	}
	return s
}

// Gap is what the chain leaves, mm: at the worst, or by the root of the sum of the squares of the
// half tolerances about the middles.
func (s *StackJoint) Gap(likely bool) model.Known[Limits] {
	if !s.Chain.Is() {
		return model.Lacking[Limits](s.Chain.Missing())
	}
	sum, err := chain.Close(s.Chain.V)
	switch {
	case err != nil:
		return model.Known[Limits]{Of: s.Model.Item, Attr: "path", At: s.Model.Item.At}
	case likely:
		return model.Sure(Limits{sum.Mean - sum.Statistical, sum.Mean + sum.Statistical})
	}
	return model.Sure(Limits{sum.Least, sum.Most})
}

// link is a dimension as a link of a chain.
func (d *Dimension) link(ratio float64) model.Known[chain.Link] {
	return model.Both(d.Size, d.Limits, func(s drawing.Size, l Limits) chain.Link {
		return chain.Link{Name: d.Path, Ratio: ratio, Size: s.Nominal, Lower: l.Lo - s.Nominal, Upper: l.Hi - s.Nominal}
	})
}

// row reads a path of dimensions.
func (s *StackJoint) row(t *Trace) (model.Known[[]chain.Link], string) {
	var links []chain.Link
	var lacks [][]model.Lack
	for _, r := range s.Model.Path.V {
		d := t.dimension(r)
		if d.Of == nil {
			return model.Known[[]chain.Link]{}, r.Path() + " is no dimension"
		}
		s.Links = append(s.Links, d)
		l := d.link(1)
		lacks = append(lacks, l.Missing())
		links = append(links, l.V)
		s.Sure += l.V.Upper - l.V.Lower
	}
	for _, l := range lacks {
		if len(l) > 0 {
			return model.Lacking[[]chain.Link](lacks...), ""
		}
	}
	if !s.Model.Wants.Is() {
		return model.Lacking[[]chain.Link](s.Model.Wants.Missing()), ""
	}
	open := make([]bool, len(links))
	for i := range s.Links {
		open[i] = s.Links[i].opening()
	}
	room, ok := nearest(links, s.Model.Wants.V.Nominal, open)
	if !ok {
		return model.Known[[]chain.Link]{}, "which of its dimensions is the room and which stand in it is not plain; name faces instead"
	}
	if room >= 0 {
		for i := range links {
			if i != room {
				links[i].Ratio = -1
			}
		}
	}
	return model.Sure(links), ""
}

// opening says whether a dimension is of room and not of metal: how wide or deep something is cut.
func (d *Dimension) opening() bool {
	if d.Of == nil {
		return false
	}
	switch d.Of.Kind {
	case "slot", "pocket", "groove", "slit", "keyway", "tee_slot", "dovetail":
		return d.Attr == "width" || d.Attr == "depth"
	case "hole", "bore":
		return d.Attr == "depth" || d.Attr == "counterbore.depth"
	}
	return false
}

// nearest finds the reading whose nominal gap is nearest to what is wanted: -1 the sum, else the
// place of the room. Of readings that lie within the tolerances of each other the one whose room
// is the only opening of the path counts, else the one whose room is written first in the path.
// False where neither tells them apart.
func nearest(links []chain.Link, wants float64, open []bool) (room int, ok bool) {
	sum, width, only := 0.0, 0.0, -1
	for i, l := range links {
		sum += l.Size
		width += l.Upper - l.Lower
		if open[i] {
			if only >= 0 {
				only = len(links)
			} else {
				only = i
			}
		}
	}
	off := func(i int) float64 {
		if i < 0 {
			return math.Abs(sum - wants)
		}
		return math.Abs(2*links[i].Size - sum - wants)
	}
	best := -1
	for i := range links {
		if len(links) > 1 && off(i) < off(best) {
			best = i
		}
	}
	tied := map[int]bool{}
	for i := -1; i < len(links); i++ {
		if (i < 0 || len(links) > 1) && off(i)-off(best) <= width+model.Same {
			tied[i] = true
		}
	}
	switch {
	case len(tied) == 1:
		return best, true
	case only >= 0 && tied[only]:
		return only, true
	case tied[0]:
		return 0, true
	}
	return best, false
}
