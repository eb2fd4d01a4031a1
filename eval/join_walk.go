package eval

import (
	"fmt"
	"math"

	"fettle/eval/reckon/chain"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// plane finds the flat face that a reference of a joint names.
func (t *Trace) plane(r model.Ref) (*Part, Plane, bool) {
	var p *Part
	if r.Item != nil {
		p = t.partOf(r.Part())
	}
	if p == nil {
		return nil, Plane{}, false
	}
	if r.Item == p.Part.Item || r.Item.Kind == "face" {
		name := r.Sub
		if r.Item.Kind == "face" {
			name = r.Item.Label
		}
		if r.Face != model.NoFace {
			return p, Plane{r.Face, p.FaceAt(r.Face), r.Face.String()}, true
		}
		if f, ok := model.ParseFace(lastWord(name)); ok {
			return p, Plane{f, p.FaceAt(f), f.String()}, true
		}
		return nil, Plane{}, false
	}
	pl, ok := p.PlaneOf(model.Ref{Item: r.Item, Sub: r.Sub})
	return p, pl, ok
}

// lastWord is what stands behind the last dot.
func lastWord(s string) string {
	for i := len(s) - 1; i >= 0; i-- {
		if s[i] == '.' {
			return s[i+1:]
		}
	}
	return s
}

// walker goes round a gap from one side to the other. Where it stands is a face that looks along the
// gap's own direction (looks +1) or against it (-1): that of the first face, into the gap.
type walker struct {
	t     *Trace
	links []chain.Link
	lacks []model.Lack
	at    *Part
	plane Plane // of at, where known
	known bool
	way   float64 // +1: the axis of the part at hand points as the first face looks
	looks float64
}

// walk goes from face to face round a gap, and through dimensions, and gives the links of the way. Each
// part lies as its first face is met: facing the one before it. A dimension is the size of a part, which
// is crossed from the face that lies against what was before to the one opposite, or a room in one, from
// wall to wall.
func (t *Trace) walk(path []model.Ref) (model.Known[[]chain.Link], string) {
	w := walker{t: t, way: 1}
	for i, r := range path {
		why := ""
		p, pl, ok := t.plane(r)
		if !ok {
			p, pl, ok = t.axisInPath(path, i)
		}
		if ok {
			why = w.toFace(p, pl, i == 0)
		} else {
			why = w.cross(r, i == 0)
		}
		if why != "" {
			return model.Known[[]chain.Link]{}, why
		}
	}
	switch {
	case w.looks > 0:
		return model.Known[[]chain.Link]{}, "its last face does not look back at its first one, across the gap"
	case len(w.lacks) > 0:
		return model.Lacking[[]chain.Link](w.lacks), ""
	case len(w.links) == 0:
		return model.Known[[]chain.Link]{}, "its path crosses no dimension"
	}
	return model.Sure(w.links), ""
}

// toFace goes on to a face: along the part at hand, or over to another part that touches there.
func (w *walker) toFace(p *Part, pl Plane, first bool) string {
	switch {
	case first:
		w.way = pl.Face.Sign()
	case p == w.at && !w.known:
		return "which faces of " + p.Label + " its path crosses between is not plain; name faces instead"
	case p == w.at:
		if pl.Face.Axis() != w.plane.Face.Axis() {
			return "two neighbouring faces of its path are not parallel"
		}
		got, lack, why := w.t.between(p, w.plane, pl)
		if why != "" {
			return why
		}
		w.lacks = append(w.lacks, lack...)
		for _, l := range got {
			l.Ratio *= w.way
			w.links = addLink(w.links, l)
		}
	default:
		// Faces that touch look at each other.
		w.way = -w.looks * pl.Face.Sign()
	}
	w.at, w.plane, w.known, w.looks = p, pl, true, w.way*pl.Face.Sign()
	return ""
}

// cross goes through a dimension. Of another part than the one at hand metal leads on the way that the
// face looks, and room back; of the same part it is the other way round, and the face that it comes to
// looks the other way. The first of a path is crossed from the face that looks into the gap.
func (w *walker) cross(r model.Ref, first bool) string {
	d := w.t.dimension(r)
	size := d.Of != nil && d.Of.Kind == "part" && d.Attr != "" || d.Of != nil && d.Part == nil
	switch {
	case d.Of == nil:
		return r.Path() + " is no flat face and no dimension"
	case !size && !d.opening():
		return r.Path() + " is neither the size of a part nor a room in one: beside faces, name the two faces between which it lies"
	}
	own := first || d.Part != nil && d.Part == w.at
	if first {
		w.looks = 1
	}
	if own && w.known && d.Part != nil && !d.Part.Round && size && w.plane.Face.Axis() != map[string]int{"length": 0, "width": 1, "height": 2, "thickness": 2}[d.Attr] {
		return r.Path() + " does not lie square to the face before it"
	}
	ratio := w.looks
	if own {
		ratio, w.looks = -ratio, -w.looks
	}
	if !size {
		ratio = -ratio
	}
	l := d.link(ratio)
	w.lacks = append(w.lacks, l.Missing()...)
	w.links = addLink(w.links, l.V)
	w.at, w.known = d.Part, false
	return ""
}

// addLink adds a link; one that is there already counts again.
func addLink(to []chain.Link, l chain.Link) []chain.Link {
	for i := range to {
		if to[i].Name == l.Name {
			to[i].Ratio += l.Ratio
			return to
		}
	}
	return append(to, l)
}

// tie is a dimension of the drawing between two places along an axis.
type tie struct {
	from, to float64 // nominal places
	ratio    float64 // of the dimension in the way from one to the other: 1, or 0.5 to a middle
	dim      Dimension
}

// between finds the fewest dimensions of the drawing that lead from one face of a part to
// another along their axis.
func (t *Trace) between(p *Part, a, b Plane) (links []chain.Link, lacks []model.Lack, why string) {
	if near(a.At, b.At) {
		return nil, nil, ""
	}
	ties := t.ties(p, a.Face.Axis())
	type way struct {
		at float64
		by []int // ties gone along, forwards counted from 1, backwards below nought
	}
	seen := []float64{a.At}
	for queue := []way{{at: a.At}}; len(queue) > 0; queue = queue[1:] {
		w := queue[0]
		if near(w.at, b.At) {
			for _, n := range w.by {
				sign := 1.0
				if n < 0 {
					sign, n = -1, -n
				}
				e := ties[n-1]
				if e.to < e.from {
					sign = -sign
				}
				l := e.dim.link(sign * e.ratio)
				lacks = append(lacks, l.Missing()...)
				links = addLink(links, l.V)
			}
			return links, lacks, ""
		}
		for n, e := range ties {
			for _, step := range [2]struct {
				from, to float64
				by       int
			}{{e.from, e.to, n + 1}, {e.to, e.from, -n - 1}} {
				if !near(step.from, w.at) || visited(seen, step.to) {
					continue
				}
				seen = append(seen, step.to)
				queue = append(queue, way{at: step.to, by: append(append([]int(nil), w.by...), step.by)})
			}
		}
	}
	return nil, nil, fmt.Sprintf("no dimensions of %s lead from %s to %s", p.Label, a.Name, b.Name)
}

func visited(seen []float64, x float64) bool {
	for _, s := range seen {
		if near(s, x) {
			return true
		}
	}
	return false
}

// ties lists the dimensions of a part along an axis: its own size, the depths and widths of
// its features, and the distances of their places from faces.
func (t *Trace) ties(p *Part, axis int) []tie {
	var out []tie
	add := func(from, to, ratio float64, d Dimension) {
		if d.Size.Is() {
			out = append(out, tie{from, to, ratio, d})
		}
	}
	hi := model.FaceOn(axis, 1)
	if _, attr := p.FaceSize(hi); !p.Round || axis == 0 {
		add(p.FaceAt(hi.Opposite()), p.FaceAt(hi), 1, t.dimension(model.Ref{Item: p.Part.Item, Sub: attr}))
	}
	for _, f := range p.Forms {
		if f.Wrong != "" || len(f.Lacks) > 0 {
			continue
		}
		out = append(out, t.tiesOf(p, f, axis)...)
	}
	return out
}

// tiesOf lists the dimensions that one feature has along an axis.
func (t *Trace) tiesOf(p *Part, f *Form, axis int) []tie {
	var out []tie
	i, m := f.Feature.Item, f.Feature
	if f.Into.Face != model.NoFace && f.Into.Face.Axis() == axis && !f.Through && f.Depth.Is() {
		from := f.Into.At
		if pl, ok := p.PlaneOf(m.Depth.V.From); ok && !m.Depth.V.From.IsNone() {
			from = pl.At
		}
		floor := f.Into.At - f.Into.Face.Sign()*f.Depth.V
		out = append(out, tie{from, floor, 1, t.dimension(model.Ref{Item: i, Sub: "depth"})})
	}
	if x, ok := f.holeAt(axis); ok && m.At.Is() && len(m.At.V) == 1 {
		out = append(out, t.placed(p, i, m.At.V[0], axis, x, "at")...)
	}
	if m.Width.Is() && f.Width > 0 && f.Across == axis && f.Lathe == nil && len(f.Mouths) == 0 && f.Hi[axis]-f.Lo[axis] > model.Grain {
		d := t.dimension(model.Ref{Item: i, Sub: "width"})
		mid := (f.Lo[axis] + f.Hi[axis]) / 2
		out = append(out, tie{f.Lo[axis], f.Hi[axis], 1, d}, tie{f.Lo[axis], mid, 0.5, d}, tie{mid, f.Hi[axis], 0.5, d})
		if m.At.Is() && len(m.At.V) == 1 {
			out = append(out, t.placed(p, i, m.At.V[0], axis, mid, "at")...)
		}
	}
	for _, end := range [2]struct {
		at   model.Known[model.Position]
		attr string
	}{{m.From, "from"}, {m.To, "to"}} {
		if end.at.Is() && f.Lathe != nil && axis == f.About.Along {
			if x, ok := p.placeOn(end.at.V, axis); ok {
				out = append(out, t.placed(p, i, end.at.V, axis, x, end.attr)...)
			}
		}
	}
	return out
}

// placed is the dimension that lays a place from its datum along an axis.
func (t *Trace) placed(p *Part, i *model.Item, pos model.Position, axis int, at float64, attr string) []tie {
	var size drawing.Size
	from, found := 0.0, false
	if n := len(pos.Short); n > 0 {
		if n > 1 {
			return nil
		}
		size, from, found = pos.Short[0], p.Low[axis], true
	}
	for _, c := range pos.Coords {
		switch {
		case c.Datum.Face != model.NoFace && c.Datum.Face.Axis() == axis:
			size, from, found = c.Size, p.FaceAt(c.Datum.Face), true
		case c.Datum.Face == model.NoFace:
			if pl, ok := p.planeDatum(c.Datum); ok && pl.Face.Axis() == axis {
				size, from, found = c.Size, pl.At, true
			}
		}
	}
	if !found || !near(math.Abs(at-from), size.Nominal) {
		return nil
	}
	d := Dimension{Part: p, Path: i.Path() + "." + attr, Of: i, Attr: attr, At: i.At, Size: model.Sure(size), Known: true}
	d.Drawn = LimitsOf(size, t.Build.Recipe.General, i, attr)
	d.Limits = d.Drawn
	return []tie{{from, at, 1, d}}
}
