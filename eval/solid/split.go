package solid

// Split gives the two pieces that a cut through the whole of a piece leaves: below and above a
// plane n·p = c (n of any length), less half of a kerf on either side of it. It is exact.
func (p *Piece) Split(n Vec, c, kerf float64, by string) (below, above *Piece) {
	l := n.Len()
	if !(l > 0) || p.blank.kind == empty || !finite(Vec{c / l, kerf}) {
		return p, nil
	}
	n, c = n.Times(1/l), c/l
	half := max(kerf, 0) / 2
	return p.Cut(p.beyond(n, c-half, by)), p.Cut(p.beyond(n.Times(-1), -c-half, by))
}

// beyond takes everything of a piece where n·p > c; n is a unit vector.
func (p *Piece) beyond(n Vec, c float64, by string) Removal {
	lo, hi := p.blank.lo, p.blank.hi
	middle := lo.Add(hi).Times(0.5)
	r := hi.Sub(lo).Len()/2 + 1
	e := square(n)
	f := Frame{At: middle.Add(n.Times(c - n.Dot(middle))), U: e, V: n.Cross(e)} // W is n
	far := max(r-(c-n.Dot(middle)), 0) + 1
	return Removal{Take: f.Block(Vec{-r, -r, 0}, Vec{r, r, far}), By: by}
}
