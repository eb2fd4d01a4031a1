package eval

import (
	"math"

	"fettle/schema/model"
)

// Largest is the largest diameter at which the edge cuts, mm: of a tool in the tailstock its
// own, of metal the largest that it meets.
func (k *Turn) Largest() float64 {
	d := 0.0
	for _, w := range k.Works {
		switch {
		case w.Inside && k.Choice.Post == nil && k.Choice.Tool.Size > 0:
			d = math.Max(d, k.Choice.Tool.Size)
		case w.Inside:
			d = math.Max(d, 2*math.Max(w.R0, w.R1))
		default:
			d = math.Max(d, 2*w.Had)
		}
	}
	return d
}

// TurnedAs names a process on the lathe as the tables of cutting speeds do.
func TurnedAs(by string) string {
	switch by {
	case "parting", "grooving":
		return "parting"
	case "drilling", "spotting", "centring", "counterboring", "countersinking":
		return "drilling"
	case "reaming":
		return "reaming"
	case "tapping":
		return "tapping_machine"
	}
	return "turning"
}

// Axial is where a place lies along the axis of a turned part; false where it does not say.
func (p *Part) Axial(pos model.Position) (float64, bool) { return p.axial(pos) }

// Deepest is the place of a target that lies nearest the held end, in the part's frame; false
// where it has none that a lathe works.
func (p *Part) Deepest(t Target, held model.Face) (float64, bool) {
	lo, hi := 0.0, 0.0
	switch {
	case t.Form != nil && t.Form.Lathe != nil && t.Form.Lathe.Inside && (t.Form.Through || !p.Round || p.endsAt(t.Form, held)):
		return 0, false // the tool works within the piece, wherever that is held
	case t.Form != nil && t.Form.Lathe != nil:
		lo, hi = t.Form.Lathe.X0, t.Form.Lathe.X1
	case t.Form == nil && t.Face != model.NoFace && t.Face.Axis() == held.Axis():
		lo = p.FaceAt(t.Face)
		hi = lo
	case p.Round && t.Form != nil && t.Form.Wrong == "" && len(t.Form.Lacks) == 0 && radial(t.Form.Into.Face):
		lo, hi = t.Form.Lo[0], t.Form.Hi[0]
		for i, m := range t.Form.Mouths {
			r := t.Form.Diameter.Or(0) / 2
			if i == 0 {
				lo, hi = m[0]-r, m[0]+r
			}
			lo, hi = math.Min(lo, m[0]-r), math.Max(hi, m[0]+r)
		}
	case !p.Round && t.Form != nil && t.Form.Wrong == "" && len(t.Form.Lacks) == 0 && t.Form.Into.Face != model.NoFace && t.Form.Into.Face.Axis() != held.Axis():
		a, b := t.Form.extent()
		if lo, hi = a[held.Axis()], b[held.Axis()]; math.IsInf(hi-lo, 0) {
			return 0, false
		}
	default:
		return 0, false
	}
	if held.Sign() > 0 {
		return hi, true
	}
	return lo, true
}

// endsAt says whether a feature that a lathe makes comes to an end face.
func (p *Part) endsAt(f *Form, end model.Face) bool {
	if end == model.NoFace || end.Axis() != 0 {
		return false
	}
	at := p.FaceAt(end)
	return near(f.Lathe.X0, at) || near(f.Lathe.X1, at)
}

// WantedDiameter is what the step asks of a hole on the axis: `to`, or the finished size less
// what it leaves.
func (k *Turn) WantedDiameter(f *Form) float64 { return 2 * k.radius(f.Diameter.V/2, true) }

// Opened is the radius of the hole that a tool which bores goes into: the least that stood open, but for what the point
// of a drill leaves at the floor of a blind hole, some third of the hole's diameter (a point of 118 degrees).
func (k *Turn) Opened(w *Turning) float64 {
	f := w.Target.Form
	if f == nil || f.Lathe == nil || !w.Inside || f.Into.Face == model.NoFace || w.Had > 0 {
		return w.Had
	}
	x0, x1 := w.X0, w.X1
	there := k.Before.Profile.Between(x0, x1)
	least := math.Inf(1)
	for _, z := range there {
		if in := math.Min(z.In0, z.In1); in > 0 {
			least = math.Min(least, in)
		} else if f.Into.Face.Sign() > 0 {
			x0 = math.Max(x0, z.X1)
		} else {
			x1 = math.Min(x1, z.X0)
		}
	}
	if left := (w.X1 - w.X0) - (x1 - x0); math.IsInf(least, 1) || left > 0.65*least+model.Grain {
		return w.Had
	}
	return least
}

// larger narrows a stretch to where the metal is thicker than a radius; as it was where none is.
func larger(p Profile, r, x0, x1 float64) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, z := range p {
		if z.Most() > r+model.Grain {
			lo, hi = math.Min(lo, z.X0), math.Max(hi, z.X1)
		}
	}
	if lo > hi {
		return x0, x1
	}
	return lo, hi
}

// LikeBar is the diameter of plain bar that would give way as much as the work does where a
// force pushes it sideways at a place u in front of the jaws, the jaws holding it stiffly.
// The end of a stepped bar gives way by F/E times the integral of (u-x)^2/I(x), with
// I = pi (D^4 - d^4)/64 (beam theory); of plain bar that is F u^3/(3 E I).
func (k *Turn) LikeBar(u float64) float64 {
	sum := 0.0
	for _, z := range k.Hold.Within(k.Before.Profile, 0, u) {
		a, b := k.Hold.At(z.X0), k.Hold.At(z.X1)
		a, b = math.Min(a, b), math.Max(a, b)
		out, in := 2*z.Least(), z.In0+z.In1
		second := math.Pow(out, 4) - math.Pow(in, 4)
		if !(second > 0) {
			return 0
		}
		sum += (math.Pow(u-a, 3) - math.Pow(u-b, 3)) / 3 / second
	}
	if !(sum > 0) {
		return 0
	}
	return math.Pow(u*u*u/3/sum, 0.25)
}
