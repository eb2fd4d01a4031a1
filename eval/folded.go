package eval

import (
	"math"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Sheet with bends is cut flat and then folded. A part with bends so lies in three ways. Its drawing
// (Part itself) has all legs along one line, each over its outside to the outside of the next. Flat (Flat.Part)
// every leg lies nearer to the one before it by what the bend between them takes. Folded it has the frame of
// its base, the longest leg along either axis, in which that lies as it is drawn; every other leg is turned
// about the line in which the outsides of two legs would meet. Since legs are measured to that very line, a
// leg's own frame is always the drawing's: turned about the line where it is folded, shifted by what the bend
// takes where it is not yet. At a bend over 90 degrees either leg is measured to the outermost place of the
// bend, as that leg lies (solid.Setback): a leg is shifted besides from the one place to the other (solid.Apart).
//
// The work begins on the flat sheet. A bench that makes a bend folds it (fold): the legs are carried with
// what was cut in them, what is cut across a bend is carried as it is on the bend's middle line, and later
// work is held in the folded frame and cut leg by leg, each in its own (seen.go). Bends across either axis
// may be in one part, a tray, as long as the metal in its corners is cut out: a corner belongs to no leg.

// Folding is the flat sheet of a part with bends, and how it is folded.
type Folding struct {
	Drawn *Part
	Part  *Part // as it lies flat; its forms in the order of the drawing's
	Along [2]Chain
	Legs  []Leg
	Bends []Crease
	parts map[string]*Part // as it is with some bends folded, by which
}

// Chain are the legs along one axis.
type Chain struct {
	Sheet FlatSheet // no folds: one leg from end to end
	Base  int       // which leg is the longest: it keeps its place
}

// Leg is a straight piece of bent sheet.
type Leg struct {
	Axis, No int        // along which axis it lies from the base, and which of that chain; the base itself: 0 and its number there
	Lo, Hi   [2]float64 // its straight part, as it is drawn
	Over     [4]float64 // from and to over the outsides along either axis: from x, to x, from y, to y
}

// Crease is a bend of a pattern.
type Crease struct {
	Form     *Form
	Axis, No int
	At       float64 // where the outsides meet, along the axis, as it is drawn
	Angle    float64 // radians, above 0 towards top
	Inside   float64
	Setback  float64
	Takes    float64
	Near     int     // the leg that is nearer to the base
	Far      int     // the leg that is folded
	Sign     float64 // along the axis from the near leg to the far one
	From, To float64 // along the bend, as it is drawn: the straight part of the base there
}

// Allowance is the length of flat sheet that the bend takes up, mm.
func (c *Crease) Allowance() float64 { return 2*c.Setback - c.Takes }

// folding works out the flat sheet; nil where the part has no bends, or where it cannot be, and then why.
func (p *Part) folding() (w *Folding, why string) {
	sheets := p.FlatSheets()
	if len(sheets) == 0 {
		return nil, ""
	}
	w = &Folding{Drawn: p, parts: map[string]*Part{}}
	for axis := range 2 {
		w.Along[axis].Sheet = FlatSheet{Axis: axis, Drawn: p.Size[axis]}
	}
	bends := 0
	for _, s := range sheets {
		c := &w.Along[s.Axis]
		c.Sheet = s
		if !s.Flat.Is() {
			why = "what a bend takes of the sheet is not known"
			if ls := s.Flat.Missing(); len(ls) > 0 {
				why += ": " + ls[0].Fact
			}
			return nil, why
		}
		for _, k := range s.Straights() {
			if !(k.V > model.Grain) {
				return nil, "one of its legs has no straight metal"
			}
		}
		for i := range len(s.Folds) + 1 {
			from, to := c.over(p, i)
			if bf, bt := c.over(p, c.Base); to-from > bt-bf+model.Grain {
				c.Base = i
			}
		}
		bends += len(s.Folds)
	}
	for _, f := range p.Forms {
		if f.Feature.Kind == "bend" {
			bends--
		}
	}
	if bends != 0 {
		return nil, "where one of its bends lies is not known"
	}
	w.legs(p)
	if !w.creases(p) {
		return nil, "one of its bends rises towards neither top nor bottom"
	}
	w.Part = p.flat(w)
	for i, f := range w.Part.Forms {
		if f.Wrong != p.Forms[i].Wrong {
			return nil, f.Name() + " goes over a bend and does not close on the flat sheet"
		}
	}
	return w, ""
}

// flatOr settles the flat sheet of a part with bends and gives the part as it lies flat; another where it has
// none, and then its bends say why.
func (p *Part) flatOr(q *Part) *Part {
	var why string
	if p.Flat, why = p.folding(); p.Flat != nil {
		return p.Flat.Part
	}
	for _, f := range p.Forms {
		if f.Feature.Kind == "bend" && why != "" && f.Later {
			f.later("the sheet stays flat on paper, and it is judged as it is written: " + why)
		}
	}
	return q
}

// over is the stretch of a leg over its outsides, as it is drawn.
func (c *Chain) over(p *Part, i int) (from, to float64) {
	from, to = p.Low[c.Sheet.Axis], p.High()[c.Sheet.Axis]
	if i > 0 {
		from = c.Sheet.Folds[i-1].At
	}
	if i < len(c.Sheet.Folds) {
		to = c.Sheet.Folds[i].At
	}
	return from, to
}

// straight is the stretch of a leg that is straight, as it is drawn.
func (c *Chain) straight(p *Part, i int) (from, to float64) {
	from, to = c.over(p, i)
	if i > 0 {
		from += c.Sheet.Folds[i-1].Setback.V
	}
	if i < len(c.Sheet.Folds) {
		to -= c.Sheet.Folds[i].Setback.V
	}
	return from, to
}

// no is the leg that a place along the axis lies on, as it is drawn.
func (c *Chain) no(at float64) int {
	for i, f := range c.Sheet.Folds {
		if at < f.At {
			return i
		}
	}
	return len(c.Sheet.Folds)
}

// taken is what the bends before a leg take of the sheet.
func (c *Chain) taken(i int) (sum float64) {
	for _, f := range c.Sheet.Folds[:i] {
		sum += f.Takes.V
	}
	return sum
}

// legs lists the legs: the base, then those along x, then those along y.
func (w *Folding) legs(p *Part) {
	put := func(axis, no int) {
		l := Leg{Axis: axis, No: no}
		for a := range 2 {
			n := w.Along[a].Base
			if a == axis {
				n = no
			}
			l.Lo[a], l.Hi[a] = w.Along[a].straight(p, n)
			l.Over[2*a], l.Over[2*a+1] = w.Along[a].over(p, n)
		}
		w.Legs = append(w.Legs, l)
	}
	put(0, w.Along[0].Base)
	for axis := range 2 {
		for i := range len(w.Along[axis].Sheet.Folds) + 1 {
			if i != w.Along[axis].Base {
				put(axis, i)
			}
		}
	}
}

// leg is the number of a leg of a chain.
func (w *Folding) leg(axis, no int) int {
	if no == w.Along[axis].Base {
		return 0
	}
	for i, l := range w.Legs {
		if i > 0 && l.Axis == axis && l.No == no {
			return i
		}
	}
	return 0
}

// creases lists the bends; false where one rises towards neither top nor bottom.
func (w *Folding) creases(p *Part) bool {
	for axis := range 2 {
		c := &w.Along[axis]
		for i, f := range c.Sheet.Folds {
			k := Crease{Form: f.Form, Axis: axis, No: i, At: f.At, Inside: f.Inside.V, Setback: f.Setback.V, Takes: f.Takes.V,
				Angle: f.Form.Feature.Angle.Or(90) * math.Pi / 180, Near: w.leg(axis, i), Far: w.leg(axis, i+1), Sign: 1}
			if i < c.Base {
				k.Near, k.Far, k.Sign = k.Far, k.Near, -1
			}
			switch pl, ok := p.PlaneOf(f.Form.Feature.Towards.V); {
			case ok && pl.Face == model.Top:
			case ok && pl.Face == model.Bottom:
				k.Angle = -k.Angle
			default:
				return false
			}
			k.From, k.To = w.Along[1-axis].straight(p, w.Along[1-axis].Base)
			w.Bends = append(w.Bends, k)
		}
	}
	return true
}

// flat is the part as it lies flat.
func (p *Part) flat(w *Folding) *Part {
	q := *p
	q.Flat, q.Folded = nil, w
	q.Forms, q.Work, q.boxes = nil, nil, nil
	for axis := range 2 {
		c := &w.Along[axis]
		q.Size[axis] -= c.taken(len(c.Sheet.Folds))
		q.Sized[axis].Nominal = q.Size[axis]
	}
	was := map[*Form]*Form{}
	for _, f := range p.Forms {
		g := *f
		g.beside = nil
		was[f] = &g
		q.Forms = append(q.Forms, &g)
	}
	for _, g := range q.Forms {
		w.flatten(&q, g)
		for i := range g.Rims {
			g.Rims[i].Hole = was[g.Rims[i].Hole]
		}
	}
	q.spell()
	return &q
}

// low moves a place of the drawing to where it lies flat. At the outside of a bend it is that of the leg on
// the side of another place beside it.
func (w *Folding) low(axis int, x, beside float64) float64 {
	c := &w.Along[axis]
	for _, f := range c.Sheet.Folds {
		if math.Abs(x-f.At) < model.Grain {
			return x - c.taken(c.no((x+beside)/2))
		}
	}
	return x - c.taken(c.no(x))
}

// notchAt moves a corner of an outline to where it lies flat: one at the outside of a bend to its bend line,
// where a notch for it ends, whichever leg its edges run to.
func (w *Folding) notchAt(axis int, x float64) float64 {
	c := &w.Along[axis]
	for i, f := range c.Sheet.Folds {
		if math.Abs(x-f.At) < model.Grain {
			return x - c.taken(i) - f.Takes.V/2
		}
	}
	return w.low(axis, x, x)
}

// flatten moves a form of the drawing to where it lies flat.
func (w *Folding) flatten(q *Part, f *Form) {
	if f.Wrong != "" || len(f.Lacks) > 0 {
		return
	}
	at := func(v solid.Vec, beside solid.Vec) solid.Vec {
		return solid.Vec{w.low(0, v[0], beside[0]), w.low(1, v[1], beside[1]), v[2]}
	}
	plane := func(pl Plane) Plane {
		if a := pl.Face; a != model.NoFace && a.Axis() < 2 {
			pl.At = w.low(a.Axis(), pl.At, pl.At-a.Sign())
		}
		return pl
	}
	mid := f.Lo.Add(f.Hi).Times(0.5)
	f.Lo, f.Hi = at(f.Lo, mid), at(f.Hi, mid)
	f.Into = plane(f.Into)
	f.Edge = [2]Plane{plane(f.Edge[0]), plane(f.Edge[1])}
	f.Mouths = append([]solid.Vec(nil), f.Mouths...)
	for i, m := range f.Mouths {
		f.Mouths[i] = at(m, m)
	}
	f.Rims = append([]Rim(nil), f.Rims...)
	for i := range f.Rims {
		f.Rims[i].Face = plane(f.Rims[i].Face)
	}
	if f.Skew != nil {
		s := *f.Skew
		s.A, s.B = at(s.A, s.B), at(s.B, s.A)
		f.Skew = &s
	}
	if len(f.Copies) > 0 {
		f.Centre = at(f.Centre, f.Centre)
	}
	if f.Under != nil && f.Across < 2 {
		u := *f.Under
		u.Middle = w.low(f.Across, u.Middle, u.Middle)
		f.Under = &u
	}
	if f.Into.Face != model.NoFace && f.Into.Face.Axis() < 2 && f.Through && f.Depth.Is() {
		f.Depth.V = q.far(f.Into)
	}
	if f.Way != nil {
		o := *f.Way
		o.Corners = append([]solid.Vec(nil), o.Corners...)
		for i, v := range f.Way.Corners {
			o.Corners[i] = solid.Vec{w.notchAt(0, v[0]), w.notchAt(1, v[1]), v[2]}
		}
		f.Way = &o
		q.drawOutline(f)
	}
}
