package solid

import (
	"fmt"
	"math"
)

// What the mill, the saw, the dividing head and the rotary table take. Each form lies in a frame
// of its own: At is a place on the face, U runs along the form, W looks out of the metal, V is
// W×U. over says how far the cut goes out beyond the face, so that skin above it goes too.

// On gives the frame of a form on a face: it begins at a place, runs along one direction, and the
// face looks out along another; only the part of along that is square to out counts.
func On(at, along, out Vec) Frame {
	w := out.Unit()
	u := along.Sub(w.Times(w.Dot(along))).Unit()
	return Frame{At: at, U: u, V: w.Cross(u)}
}

// Slot takes a slot along U from the frame's place: its whole length, width and depth. A round
// end is half a circle of that width within the length, as an end mill or a slot drill leaves.
func (f Frame) Slot(length, width, depth, over float64, roundStart, roundEnd bool, by string) []Removal {
	r := width / 2
	lo, hi := Vec{0, -r, -depth}, Vec{length, r, over}
	var out []Removal
	end := func(u float64) {
		out = append(out, Removal{Take: Cylinder(f.Point(u, 0, -depth), f.Point(u, 0, over), r), By: by})
	}
	if roundStart {
		lo[0] = r
		end(r)
	}
	if roundEnd {
		hi[0] = length - r
		end(length - r)
	}
	if s := f.Block(lo, hi); s.kind != empty {
		out = append(out, Removal{Take: s, By: by})
	}
	return out
}

// Keyway takes a keyway in a shaft whose surface lies at the frame's face, both ends round or
// both open.
func (f Frame) Keyway(length, width, depth, over float64, round bool, by string) []Removal {
	return f.Slot(length, width, depth, over, round, round, by)
}

// RunOut takes a slot as a side and face cutter of a diameter leaves it: full depth from the
// frame's place over the length, and beyond either end the arc of the cutter.
func (f Frame) RunOut(length, width, depth, over, diameter float64, by string) []Removal {
	r := diameter / 2
	disc := func(u float64) Removal {
		return Removal{Take: Cylinder(f.Point(u, -width/2, r-depth), f.Point(u, width/2, r-depth), r), By: by}
	}
	return []Removal{{Take: f.Block(Vec{0, -width / 2, -depth}, Vec{length, width / 2, max(over, 0)}), By: by}, disc(0), disc(length)}
}

// Keyseat takes the seat of a woodruff key, its middle at the frame's place: a disc of the
// cutter's diameter sunk to a depth.
func (f Frame) Keyseat(diameter, width, depth float64, by string) Removal {
	r := diameter / 2
	return Removal{Take: Cylinder(f.Point(0, -width/2, r-depth), f.Point(0, width/2, r-depth), r), By: by}
}

// TeeSlot takes a tee slot: a throat, and a foot of its own width and height above the floor,
// which lies at depth.
func (f Frame) TeeSlot(length, throat, depth, footWidth, footHeight, over float64, by string) []Removal {
	return []Removal{
		{Take: f.Block(Vec{0, -throat / 2, -depth}, Vec{length, throat / 2, over}), By: by},
		{Take: f.Block(Vec{0, -footWidth / 2, -depth}, Vec{length, footWidth / 2, footHeight - depth}), By: by},
	}
}

// dovetail gives the prism of a dovetail along U from w = -depth to 0: narrow where said, each
// side leaning out by depth/tan(angle); angle in radians between floor and flank.
func (f Frame) dovetail(length, narrow, depth, angle float64, wideBelow bool) (Shape, error) {
	if !(angle > 0.1) || !(angle < math.Pi/2+1e-9) {
		return Shape{}, fmt.Errorf("a dovetail of %.1f degrees: it has 6 to 90", angle*180/math.Pi)
	}
	more := depth / math.Tan(angle)
	below, above := narrow/2, narrow/2+more
	if wideBelow {
		below, above = above, below
	}
	across := Frame{f.At, f.V, f.W()}
	return across.Column([][2]float64{{-below, -depth}, {below, -depth}, {above, 0}, {-above, 0}}, length)
}

// Dovetail takes a dovetail slot, narrow at its mouth between the sharp corners; angle in
// radians between floor and flank.
func (f Frame) Dovetail(length, narrow, depth, angle, over float64, by string) ([]Removal, error) {
	s, err := f.dovetail(length, narrow, depth, angle, true)
	if err != nil {
		return nil, err
	}
	out := []Removal{{Take: s, By: by}}
	if m := f.Block(Vec{0, -narrow / 2, 0}, Vec{length, narrow / 2, over}); m.kind != empty {
		out = append(out, Removal{Take: m, By: by})
	}
	return out, nil
}

// Tongue takes what lies beside a dovetail tongue, narrow at its foot, within reach of its
// middle line to either side; the tongue's top lies at the face and what is above it goes too.
func (f Frame) Tongue(length, narrow, depth, angle, reach, over float64, by string) ([]Removal, error) {
	s, err := f.dovetail(length, narrow, depth, angle, false)
	if err != nil {
		return nil, err
	}
	return []Removal{{Take: f.Block(Vec{0, -reach, -depth}, Vec{length, reach, max(over, 0)}), Less: []Shape{s}, By: by}}, nil
}

// ArcSlot takes a slot swept on a rotary table whose axis is W through the frame's place: middle
// radius, width and depth, from an angle to a larger one (radians, from U towards V), its ends
// round. It is exact: a disc less the disc within and less the sector that is not swept, and a
// disc at either end. From a full turn on it is a ring.
func (f Frame) ArcSlot(radius, width, depth, over, from, to float64, by string) []Removal {
	r := width / 2
	m := f.Ring(radius-r, radius+r, depth, over, by)
	if to-from >= 2*math.Pi-1e-12 || !(to >= from) {
		return []Removal{m}
	}
	m.Less = append(m.Less, f.sector(to, from+2*math.Pi, radius+r, -depth, over)...)
	out := []Removal{m}
	for _, t := range [2]float64{from, to} {
		sin, cos := math.Sincos(t)
		u, v := radius*snapped(cos), radius*snapped(sin)
		out = append(out, Removal{Take: Cylinder(f.Point(u, v, -depth), f.Point(u, v, over), r), By: by})
	}
	return out
}

// Ring takes a ring about W between two radii; the inner may be 0 or below.
func (f Frame) Ring(inner, outer, depth, over float64, by string) Removal {
	m := Removal{Take: Cylinder(f.Point(0, 0, -depth), f.Point(0, 0, over), outer), By: by}
	if inner > 0 {
		m.Less = []Shape{Cylinder(f.Point(0, 0, -depth), f.Point(0, 0, over), inner)}
	}
	return m
}

// sector gives prisms that together cover a sector about W out to a radius, between two heights:
// triangles of at most a third of a turn, and a little higher than asked.
func (f Frame) sector(from, to, r, low, high float64) (out []Shape) {
	n := int(math.Ceil((to - from) / (2 * math.Pi / 3) * (1 - 1e-12)))
	g := f
	g.At = f.Point(0, 0, low-1)
	for i := range n {
		a := from + (to-from)*float64(i)/float64(n)
		b := from + (to-from)*float64(i+1)/float64(n)
		d := (r + 1) / math.Cos((b-a)/2)
		corner := func(t float64) [2]float64 {
			sin, cos := math.Sincos(t)
			return [2]float64{d * snapped(cos), d * snapped(sin)}
		}
		if s, err := g.Column([][2]float64{{0, 0}, corner(a), corner(b)}, high-low+2); err == nil {
			out = append(out, s)
		}
	}
	return out
}

// ToothGaps takes the gaps between teeth of an axle, evenly round, straight along the axis; the
// middle of the first lies at an angle (radians, from top towards back). The outline of a gap
// is convex, in mm sideways (towards growing angles) and outwards from the axis: draw it within
// the true gap, and what is left is never less than the teeth.
func (a Axle) ToothGaps(count int, start, from, to float64, outline [][2]float64, by string) ([]Removal, error) {
	if count < 1 || count > most360 {
		return nil, fmt.Errorf("%d gaps: they are 1 to %d", count, most360)
	}
	var out []Removal
	for i := range count {
		w := Out(start + 2*math.Pi*float64(i)/float64(count))
		side := Out(start + 2*math.Pi*float64(i)/float64(count) + math.Pi/2)
		f := Frame{a.At(from), side, w} // side × out is +x
		s, err := f.Column(outline, to-from)
		if err != nil {
			return nil, err
		}
		out = append(out, Removal{Take: s, By: by})
	}
	return out, nil
}

// Trapezium gives the outline of a gap: half its width at a root radius and at a tip radius, its
// sides drawn on for over beyond the tip.
func Trapezium(root, tip, halfRoot, halfTip, over float64) [][2]float64 {
	top := max(0, halfTip+(halfTip-halfRoot)/(tip-root)*over)
	return [][2]float64{{-halfRoot, root}, {halfRoot, root}, {top, tip + over}, {-top, tip + over}}
}

// Envelope is a form known by bounds: a thread, teeth, a worm, a knurl. Most leaves the most
// metal that can stand (its crests all round), Least the least (its roots all round): what is to
// be clear of it is asked of Most, what must be strong enough or thick enough of Least.
type Envelope struct{ Most, Least Removal }

// Threaded gives the envelope of a thread, of teeth, of a worm or of a knurl on an outside, by the
// radii of its crests and roots.
func (a Axle) Threaded(raw Shape, from, to, crest, root float64, by string) Envelope {
	return Envelope{a.Outside(raw, from, to, crest, by), a.Outside(raw, from, to, root, by)}
}

// Tapped gives the envelope of a thread or teeth in a round hole along any line, by the radii of
// its crests (the bore before it is cut) and of its roots.
func Tapped(from, to Vec, crest, root float64, by string) Envelope {
	return Envelope{Removal{Take: Cylinder(from, to, crest), By: by}, Removal{Take: Cylinder(from, to, root), By: by}}
}
