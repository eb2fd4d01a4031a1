package choose

import (
	"sort"

	"fettle/eval"
	"fettle/schema/model"
)

// blades lists the disc cutters for a level spindle: for a slot, or the gaps of a rack, those that go in, the
// widest first; for a step or a face the widest first. On an upright spindle they are taken where they are named.
func (c *chooser) blades(k *asked) []eval.Pick {
	if k.hold == nil || !level(k.hold.Choice.Machine) {
		return nil
	}
	f := k.target.Form
	most := 1e6
	switch {
	case k.faces():
	case f.Feature.Kind == "slot", f.Rack != nil, f.Feature.Kind == "keyway" && f.Feature.Ends.V == "run-out":
		most = f.Width
	case f.Feature.Kind != "step":
		return nil
	}
	var out []eval.Pick
	for _, cu := range c.here([]string{"side_and_face_cutter"}) {
		w, ok := cu.Width.Get()
		d, ok2 := cu.Diameter.V.Nearest(0)
		if ok && ok2 && w <= most+model.Grain {
			out = append(out, c.pick(k, cu, d))
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Cutter.Width.V > out[j].Cutter.Width.V+model.Grain })
	return out
}

// keyseats lists the cutters for half-round keys: those of the seat's own width and diameter first.
func (c *chooser) keyseats(k *asked, diameter float64) []eval.Pick {
	width := k.target.Form.Width
	var right, other []eval.Pick
	for _, cu := range c.here([]string{"keyseat_cutter"}) {
		d, ok := cu.Diameter.V.Nearest(diameter)
		w := cu.Width.Or(width)
		if ok && abs(d-diameter) < model.Grain && abs(w-width) < model.Grain {
			right = append(right, c.pick(k, cu, d))
		} else if ok {
			other = append(other, c.pick(k, cu, d))
		}
	}
	return append(right, other...)
}
