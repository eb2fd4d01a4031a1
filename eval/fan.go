package eval

import (
	"math"
	"slices"

	"fettle/eval/solid"
	"fettle/schema/model"
)

// Leaning holes round a circle in a part that is not turned lean alike, as those round the axis of a turned
// part do: the first leans towards the face that is named, each other is it turned on about the middle of the
// circle. (Holes that all lean the same way are written as a list of places.) No two of them look the same way,
// so that in one holding that turns nothing only those are made that look at the spindle; a dividing head that
// stands at their angle brings one after another up.

// dir is the direction in which one hole of a form goes in.
func (f *Form) dir(i int) solid.Vec {
	if i < len(f.Dirs) {
		return f.Dirs[i]
	}
	return f.Dir
}

// fan settles how leaning holes round a circle lean.
func (p *Part) fan(f *Form) {
	n := len(f.Mouths)
	if p.Round || !f.tilted() || n < 2 || len(f.Feature.At.V) != 1 || f.Wrong != "" {
		return
	}
	step := f.Feature.Around.Over.Or(360) / float64(n)
	if over := f.Feature.Around.Over.Or(360); over < 360 {
		step = over / float64(n-1)
	}
	a, b := across(f.Into.Face)
	f.Dirs = make([]solid.Vec, n)
	for i := range n {
		sin, cos := sinCos(float64(i) * step)
		d := f.Dir
		d[a], d[b] = f.Dir[a]*cos-f.Dir[b]*sin, f.Dir[a]*sin+f.Dir[b]*cos
		f.Dirs[i] = d
	}
}

// fanned makes leaning holes round a circle one by one, each as it leans: on a dividing head all of them,
// elsewhere those that look at the spindle. False of other targets.
func (k *Cut) fanned(t Target) bool {
	f := t.Form
	if f == nil || len(f.Dirs) == 0 || f.Wrong != "" || len(f.Lacks) > 0 {
		return false
	}
	fs := k.Part.change(k.After, f)
	beside := t.Sub != "" || k.Choice.By == "spotting" || k.Choice.By == "centring"
	was, twice, done, made, finished := fs.Finished, fs.Twice || fs.Finished, fs.Turns, 0, true
	var rims []*Burr
	for i, m := range f.Mouths {
		one := *f
		one.Mouths, one.Dir, one.Dirs, one.Of, one.beside = []solid.Vec{m}, f.Dirs[i], nil, f, nil
		up := k.Hold.Pose.Dir(one.looksOut())[2]
		if k.Choice.From == f.Into.Face.Opposite() && f.Through {
			up = -up
		}
		if k.Hold.Carried == nil && !k.Choice.ByHand && up < 1-1e-9 {
			continue
		}
		fs.Finished = false
		had := len(k.Works)
		k.work(Target{Ref: t.Ref, Form: &one, Sub: t.Sub})
		rims = append(rims, k.rims(f)...)
		for j := range k.Works[had:] {
			k.Works[had+j].Target = t
		}
		made++
		finished = finished && fs.Finished
	}
	for _, b := range rims {
		if !slices.Contains(k.After.Burrs, b) {
			k.After.Burrs = append(k.After.Burrs, b)
		}
	}
	if beside {
		fs.Finished = was
	} else {
		fs.Turns = min(done+made, len(f.Mouths))
		fs.Finished = finished && made > 0 && fs.Turns >= len(f.Mouths)
		fs.Twice = twice && made > 0
	}
	if made == 0 {
		k.Works = append(k.Works, Working{Target: t, Entry: f.Into, Wrong: "none of its places looks at the spindle: they lean " +
			inDegrees(f.Slope()*math.Pi/180) + " from square, each its own way; a dividing head with its axis at " + model.Figure(math.Round((90-f.Slope())*1e4)/1e4) + " degrees brings one after another there"})
	}
	return true
}

// rims are the burrs round the mouths of a hole, as they are after the cut so far.
func (k *Cut) rims(f *Form) (out []*Burr) {
	for _, b := range k.After.Burrs {
		if b.Round && len(b.Names) > 0 && b.Names[0] == f.Name() {
			out = append(out, b)
		}
	}
	return out
}
