package eval

import (
	"fettle/eval/solid"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// Part is a part made ready for the dry run: its envelope, the forms of its features, its
// raw piece and its work spelled out.
type Part struct {
	*model.Part
	Build  *model.Build
	Size   solid.Vec // finished envelope, nominal
	Low    solid.Vec // its left, front, bottom corner: 0 but for turned parts, whose origin is on the axis
	Round  bool      // turned: the axis is x
	Across float64   // of a turned part: its diameter, or across the flats of its bar
	Sized  [3]drawing.Size
	Forms  []*Form // in the order of the features
	Blank  Blank
	Work   []*Work
	Drawn  *Part       // of a mirrored part: the same as its blocks say it, not turned over
	Apart  *Part       // with a split that is drawn closed: the part as it lies before its pieces are together
	Joint  *SplitJoint // of a part that lies apart
	Flat   *Folding    // of sheet with bends: how it lies before it is folded
	Folded *Folding    // of sheet that lies flat or folded: what it is folded by
	Bent   *Bent       // of sheet that is folded at some of its bends, or will be next
	Leg    bool        // it is seen from one of its legs
	boxes  []bounds    // round what each form takes away, in their order; once they are asked for
	// Of an assembly: what is joined in it, and the holes that another of its parts stands in.
	Members []Member
	Filled  map[*Form]bool
	whole   *solid.Piece  // all of it, as the work on it begins
	seen    map[int]*Part // the same in the frames of its members, once they are asked for
	// Unplayed says in a sentence why the part is not made on paper; "" if it is.
	Unplayed string
}

// Plane is a flat face: the direction that it looks in, and where it lies along that axis.
type Plane struct {
	Face model.Face // its outward direction
	At   float64    // co-ordinate along the face's axis
	Name string     // "top", "pocket.a.floor"
}

// Normal is the outward direction of a face.
func Normal(f model.Face) solid.Vec {
	var v solid.Vec
	if f != model.NoFace {
		v[f.Axis()] = f.Sign()
	}
	return v
}

// FaceAt is where a finished face of the envelope lies along its axis.
func (p *Part) FaceAt(f model.Face) float64 {
	if f.Sign() > 0 {
		return p.Low[f.Axis()] + p.Size[f.Axis()]
	}
	return p.Low[f.Axis()]
}

// High is the right, back, top corner of the finished envelope.
func (p *Part) High() solid.Vec { return p.Low.Add(p.Size) }

// FaceSize is the dimension of the part square to a face, with its attribute.
func (p *Part) FaceSize(f model.Face) (drawing.Size, string) {
	names := [3]string{"length", "width", "height"}
	if f.Axis() == 2 && p.Thickness.Is() {
		return p.Sized[2], "thickness"
	}
	return p.Sized[f.Axis()], names[f.Axis()]
}

// across are the two axes of a face, in the order x, y, z.
func across(f model.Face) (a, b int) {
	switch f.Axis() {
	case 0:
		return 1, 2
	case 1:
		return 0, 2
	}
	return 0, 1
}

// PlaneOf finds the flat face that a reference names: one of the six, or the floor or a
// wall of a feature. False where it names none that is flat.
func (p *Part) PlaneOf(r model.Ref) (Plane, bool) {
	if r.Face != model.NoFace {
		return Plane{r.Face, p.FaceAt(r.Face), r.Face.String()}, true
	}
	f := p.FormOf(r.Item)
	if f == nil {
		return Plane{}, false
	}
	return f.face(r.Sub)
}

// FormOf finds the form of a feature's block; nil if the part has none.
func (p *Part) FormOf(i *model.Item) *Form {
	if i == nil {
		return nil
	}
	for _, f := range p.Forms {
		if f.Feature.Item == i {
			return f
		}
	}
	return nil
}

// formMeant finds the form that a reference names: in an assembly of both hands that of the part that it
// names; nil if the part has none.
func (p *Part) formMeant(r model.Ref) *Form {
	for _, f := range p.Forms {
		if r.Item != nil && f.Feature.Item == r.Item && f.Owner != nil && f.Owner.Part.Item == r.Part() {
			return f
		}
	}
	return p.FormOf(r.Item)
}

// coordinate resolves one distance to an axis and a place along it. The axis of a feature
// as datum is free: it is the one that the other co-ordinate leaves, given by spare.
func (p *Part) coordinate(c model.Coordinate, spare int) (axis int, at float64, ok bool) {
	if c.Datum.Face != model.NoFace {
		f := c.Datum.Face
		return f.Axis(), p.FaceAt(f) - f.Sign()*c.Size.Nominal, true
	}
	if pl, ok := p.planeDatum(c.Datum); ok {
		return pl.Face.Axis(), pl.At + pl.Face.Sign()*c.Size.Nominal, true
	}
	f := p.FormOf(c.Datum.Item)
	if f == nil || spare < 0 {
		return 0, 0, false
	}
	return spare, f.middle()[spare] + c.Size.Nominal, true
}

func (p *Part) planeDatum(r model.Ref) (Plane, bool) {
	if r.Item == nil || r.Sub == "" {
		return Plane{}, false
	}
	return p.PlaneOf(r)
}

// locate resolves a position on a face. known says which of the face's two axes it fixes.
func (p *Part) locate(f model.Face, pos model.Position) (v solid.Vec, known [3]bool) {
	a, b := across(f)
	if len(pos.Short) > 0 {
		for i, s := range pos.Short {
			axis := [2]int{a, b}[min(i, 1)]
			v[axis], known[axis] = s.Nominal, true
		}
		return v, known
	}
	for pass := range 2 { // faces first, so that a feature's axis is the one left over
		for _, c := range pos.Coords {
			spare := -1
			if pass == 1 {
				switch {
				case known[a] && !known[b]:
					spare = b
				case known[b] && !known[a]:
					spare = a
				}
			} else if c.Datum.Face == model.NoFace {
				if _, ok := p.planeDatum(c.Datum); !ok {
					continue
				}
			}
			if axis, at, ok := p.coordinate(c, spare); ok && !known[axis] {
				v[axis], known[axis] = at, true
			}
		}
	}
	return v, known
}
