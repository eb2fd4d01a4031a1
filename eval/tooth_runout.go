package eval

import (
	"math"

	"fettle/schema/model"
)

// RunOut is how a disc cutter stands to metal beside the teeth: how far it cuts along the axis past
// the end of full depth where there is metal of that radius, and how far away that metal is.
type RunOut struct {
	Wants, Has float64
	Radius     float64 // of the metal
	Right      bool    // beyond the right end of the teeth
	Thing      string  // what it is: "the jaws of chuck.three"; "" the piece
	Item       *model.Item
}

// beyondMiddle is sqrt(h (D - h)): how far a disc of a diameter D cuts beyond its middle at a height h
// above its deepest place; half of D from there on.
func beyondMiddle(d, h float64) float64 {
	if h <= 0 {
		return 0
	}
	if h >= d/2 {
		return d / 2
	}
	return math.Sqrt(h * (d - h))
}

// RunOuts lists what stands beside teeth that a disc cuts: shoulders and hubs of the piece higher
// than the floor of the gaps, and the jaws that it is held in. Metal of the surface that the teeth
// lie on does not count: there they run out as they must.
func (k *Cut) RunOuts(w *Working) (out []RunOut, lacks []model.Lack) {
	f := w.Target.Form
	d := k.Choice.Tool.Size
	if f == nil || f.Tooth == nil || f.Tooth.Inside || !k.disc() || k.Hold.Carried == nil {
		return nil, nil
	}
	if d <= 0 {
		return nil, k.Choice.Tool.Cutter.Diameter.Missing()
	}
	on := k.Part.reach(f.On)
	root := f.Hi[2] - w.Depth
	x0, x1 := f.Lo[0], f.Hi[0]
	for _, z := range k.besideTeeth(f, on, x0, x1) {
		out = append(out, aside(d, root, x0, x1, z.X0, z.X1, z.Most()))
	}
	c := k.Hold.Carried
	if ch := c.Choice.Chuck; ch != nil {
		s, ok := c.Sweeps().Get()
		if !ok {
			lacks = append(lacks, c.Sweeps().Missing()...)
			s = c.Gripped
		}
		j := aside(d, root, x0, x1, c.Jaw, c.Jaw, s/2)
		j.Has = (math.Min(x0*c.Sign, x1*c.Sign) - c.Jaw*c.Sign)
		j.Right, j.Thing, j.Item = c.Sign < 0, "the jaws of "+ch.Path(), ch.Item
		if ok {
			out = append(out, j)
		} else if j.Has < d/2 {
			if j.Has < j.Wants-model.Grain {
				out = append(out, j) // even jaws no wider than what they grip are met
			}
		} else {
			lacks = nil // beyond the whole of the cutter: clear whatever the jaws sweep
		}
	}
	return k.leanOuts(f, out), append(lacks, k.leanLacks(f)...)
}

// leanOuts is how far a disc that leans with the gaps cuts along the axis: what it does along its own way
// by the cosine, and half its width by the sine. One that is fed in over the middle of the rim stays
// half of that back.
func (k *Cut) leanOuts(f *Form, out []RunOut) []RunOut {
	sin, cos := math.Sincos(math.Abs(f.Tooth.Lean) * math.Pi / 180)
	for i := range out {
		o := &out[i]
		if o.Wants > 0 {
			o.Wants = o.Wants*cos + k.Choice.Tool.Cutter.Width.V/2*sin
		}
		if k.plunges(f) {
			o.Wants = math.Max(0, o.Wants-(f.Hi[0]-f.Lo[0])/2)
		}
	}
	return out
}

func (k *Cut) leanLacks(f *Form) []model.Lack {
	if f.Tooth.Lean == 0 || k.Choice.Tool.Cutter.Kind == "fly_cutter" {
		return nil
	}
	return k.Choice.Tool.Cutter.Width.Missing()
}

// besideTeeth is the metal of the finished part left and right of the surface that teeth lie on, as
// it now is, and no thicker than it will be: what is turned away later may be cut into.
func (k *Cut) besideTeeth(f *Form, on Lathe, x0, x1 float64) (out Profile) {
	p, low, high := k.Before.Profile, k.Part.Low[0], k.Part.High()[0]
	if f.On == nil {
		on.X0, on.X1 = x0, x1
	}
	both := append(p.Between(low, math.Min(x0, on.X0)), p.Between(math.Max(x1, on.X1), high)...)
	for _, g := range k.Part.Forms {
		if g.Feature.Kind == "outside" && g.Lathe != nil {
			l := *g.Lathe
			e := g.About.Aside()
			both = both.turned(l.X0, l.X1, l.R0+e, l.R1+e, Zone{})
		}
	}
	for _, z := range both {
		if f.On != nil || z.Most() < on.R0-model.Grain {
			out = append(out, z)
		}
	}
	return out
}

func aside(d, root, x0, x1, z0, z1, r float64) RunOut {
	o := RunOut{Radius: r, Wants: beyondMiddle(d, r-root), Has: z0 - x1, Right: true}
	if z1 <= x0+model.Grain {
		o.Right, o.Has = false, x0-z1
	}
	return o
}
