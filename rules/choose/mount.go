package choose

import (
	"math"

	"sort"

	"fettle/eval"
	"fettle/eval/reckon/gear"
	"fettle/schema/drawing"
	"fettle/schema/model"
)

// mounts lists the ways a tool can be held in a machine, in the order they are tried: what
// is written alone; a disc cutter on arbors, those with its bore first; a shank in collets
// first where it mills, in a drill chuck first where it drills; a tapered shank straight in
// the spindle. What does not fit comes last, so that there is something to speak of.
func (c *chooser) mounts(k *asked, m *model.Machine, t eval.Pick) [][]eval.Mount {
	if refs := k.pinnedHolders(); len(refs) > 0 {
		return [][]eval.Mount{c.pinnedMounts(t, refs)}
	}
	if m == nil {
		return [][]eval.Mount{nil}
	}
	var fit, other [][]eval.Mount
	add := func(good bool, ms ...eval.Mount) {
		if good {
			fit = append(fit, ms)
		} else {
			other = append(other, ms)
		}
	}
	shank := eval.ShankDiameter(t)
	switch {
	case bored(t.Cutter):
		c.arbors(m, t, add)
	case t.Cutter.Kind == "boring_bar":
		c.boringHeads(k, m, add)
	default:
		chucks := func() { c.drillChucks(m, shank, add) }
		if k.side() {
			c.collets(m, shank, add)
			chucks()
		} else {
			chucks()
			c.collets(m, shank, add)
		}
		c.tapered(m, t, add)
	}
	all := append(fit, other...)
	if len(all) == 0 {
		return [][]eval.Mount{nil}
	}
	return all
}

// bored says whether a cutter sits on an arbor by its bore.
func bored(cu *model.Cutter) bool {
	switch cu.Kind {
	case "slitting_saw", "side_and_face_cutter", "gear_cutter":
		return true
	case "face_mill", "angle_cutter":
		return cu.Bore.Is()
	}
	return false
}

// gearCutters lists the cutters for the teeth of wheels: those that are printed for these teeth
// first, then those of which something is not known, then the others. The gashes of a throated wheel
// are finished by a hob or a tap of its worm's pitch.
func (c *chooser) gearCutters(k *asked) []eval.Pick {
	var out [3][]eval.Pick
	f := k.target.Form
	if f.Tooth != nil && f.Tooth.Throat != nil && k.part.Feature(k.before, f).Begun {
		return c.hobs(k)
	}
	for _, cu := range c.here([]string{"gear_cutter"}) {
		fit, _ := f.Served(cu)
		if eval.IsHob(cu) {
			fit = gear.No
		}
		d, _ := cu.Diameter.V.Nearest(0)
		out[fit] = append(out[fit], c.pick(k, cu, d))
	}
	return append(append(out[gear.Yes], out[gear.NotKnown]...), out[gear.No]...)
}

// notchCutters lists the discs for gaps whose sides lean: angle cutters, the one whose edges stand nearest to as
// far apart first, those of which that is not known after them, then fly cutters, whose bit may be ground so.
func (c *chooser) notchCutters(k *asked, s *eval.GapSection) []eval.Pick {
	var out, unknown []eval.Pick
	off := func(p eval.Pick) float64 { return abs(p.Cutter.Angle.V - s.Included()) }
	for _, cu := range c.here([]string{"angle_cutter"}) {
		d, ok := cu.Diameter.V.Nearest(0)
		switch {
		case !ok || !cu.Bore.Is():
		case cu.Angle.Is():
			out = append(out, c.pick(k, cu, d))
		default:
			unknown = append(unknown, c.pick(k, cu, d))
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return off(out[i]) < off(out[j])-1e-9 })
	out = append(out, unknown...)
	for _, cu := range c.here([]string{"fly_cutter"}) {
		if w, ok := cu.SwingOf.Get(); ok && len(w) > 0 {
			out = append(out, eval.Pick{Cutter: cu, Size: w[0]})
		}
	}
	return out
}

// hobs lists what finishes a throated wheel: hobs first, then taps as long in the pitch as the worm, then
// fly cutters.
func (c *chooser) hobs(k *asked) []eval.Pick {
	t := k.target.Form.Tooth
	var out []eval.Pick
	for _, cu := range c.here([]string{"gear_cutter"}) {
		if fit, _ := t.Served(cu); eval.IsHob(cu) && fit != gear.No {
			d, _ := cu.Diameter.V.Nearest(0)
			out = append(out, c.pick(k, cu, d))
		}
	}
	for _, cu := range c.here([]string{"tap"}) {
		for _, th := range cu.Threads.V {
			if abs(th.Pitch/t.Throat.Drive.Pitch-1) < 0.01 {
				out = append(out, eval.Pick{Cutter: cu, Size: th.Diameter, Thread: th})
			}
		}
	}
	for _, cu := range c.here([]string{"fly_cutter"}) {
		if d, ok := k.throatSwing(cu); ok && d >= t.Throat.Drive.WormTip {
			out = append(out, eval.Pick{Cutter: cu, Size: d})
		}
	}
	return out
}

// throatSwing is how wide a fly cutter swings for the gaps of a throated wheel, as near to what is wanted
// as it can; false of other tools and other work.
func (k *asked) throatSwing(cu *model.Cutter) (float64, bool) {
	f := k.target.Form
	if f == nil || f.Tooth == nil || f.Tooth.Throat == nil || len(cu.SwingOf.V) != 2 || cu.Kind != "fly_cutter" {
		return 0, false
	}
	return min(max(2*f.Tooth.Throat.Reach(), cu.SwingOf.V[0]), cu.SwingOf.V[1]), true
}

// faceSwing is how wide a fly cutter is set to swing over a face of a block, so that it covers the narrower
// side of it if it can; false of other tools and other work.
func (k *asked) faceSwing(cu *model.Cutter) (float64, bool) {
	if f := k.target.Face; k.target.Form == nil && f != model.NoFace && !k.part.Round && cu.Kind == "fly_cutter" && len(cu.SwingOf.V) == 2 {
		across := math.Inf(1)
		for a := range 3 {
			if a != f.Axis() {
				across = min(across, k.part.Size[a])
			}
		}
		return min(max(across, cu.SwingOf.V[0]), cu.SwingOf.V[1]), true
	}
	return 0, false
}

// points lists the pointed tools that engrave: the sharpest first; those with a shank that is
// known before others.
func (c *chooser) points(k *asked) []eval.Pick {
	var out []eval.Pick
	for _, cu := range c.here([]string{"turning_tool", "threading_tool"}) {
		if !cu.Inside.V {
			out = append(out, eval.Pick{Cutter: cu})
		}
	}
	blunt := func(t eval.Pick) float64 {
		b := t.Cutter.Nose.Or(0.5)
		if !t.Cutter.Shank.Is() {
			b += 10
		}
		return b
	}
	sort.SliceStable(out, func(i, j int) bool { return blunt(out[i]) < blunt(out[j]) })
	return out
}

// inSpindle gives what must come between the spindle and a tapered shank: nothing, or a
// sleeve. False where neither serves.
func (c *chooser) inSpindle(m *model.Machine, shank model.Known[drawing.Taper]) ([]eval.Mount, bool) {
	if sameTaper(m.Taper, shank) {
		return nil, true
	}
	for _, s := range c.build.Shop.Sleeves {
		if s.AtHand() && sameTaper(m.Taper, s.Outside) && sameTaper(s.Inside, shank) {
			return []eval.Mount{{Sleeve: s}}, true
		}
	}
	return nil, false
}

func shankTaper(s model.Known[model.Shank]) model.Known[drawing.Taper] {
	if !s.Is() || s.V.Taper.Written == "" && s.V.Taper.Series == "" {
		return model.Known[drawing.Taper]{Of: s.Of, Attr: s.Attr, At: s.At}
	}
	return model.Known[drawing.Taper]{V: s.V.Taper, From: s.From, At: s.At, Of: s.Of, Attr: s.Attr}
}

func (c *chooser) holders(kind string) []*model.Holder { return c.shelf.holders[kind] }

type adder func(good bool, ms ...eval.Mount)

func (c *chooser) arbors(m *model.Machine, t eval.Pick, add adder) {
	for _, a := range c.holders("arbor") {
		pre, ok := c.inSpindle(m, shankTaper(a.Shank))
		seat := !a.Seat.Is() || !t.Cutter.Bore.Is() || abs(a.Seat.V-t.Cutter.Bore.V) < model.Grain
		add((ok || !a.Shank.Is()) && seat, append(pre, eval.Mount{Holder: a})...)
	}
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

func (c *chooser) drillChucks(m *model.Machine, shank model.Known[float64], add adder) {
	for _, h := range c.holders("drill_chuck") {
		pre, ok := c.inSpindle(m, shankTaper(h.Shank))
		if sameTaper(m.Taper, h.Mounts) {
			pre, ok = nil, true
		}
		r, known := h.Range.Get()
		holds := !known || !shank.Is() || len(r) == 2 && shank.V >= r[0]-model.Grain && shank.V <= r[1]+model.Grain
		add((ok || !h.Shank.Is()) && holds, append(pre, eval.Mount{Holder: h})...)
	}
}

// collets lists collet chucks with the collets of their system, and collets that go
// straight into the spindle.
func (c *chooser) collets(m *model.Machine, shank model.Known[float64], add adder) {
	for _, h := range c.holders("collet_chuck") {
		pre, ok := c.inSpindle(m, shankTaper(h.Shank))
		for _, co := range c.build.Shop.Collets {
			if !co.AtHand() || h.System.Is() && co.System.Is() && co.System.V != h.System.V {
				continue
			}
			n, holds := c.nominal(co, shank)
			add((ok || !h.Shank.Is()) && holds, append(append([]eval.Mount{}, pre...), eval.Mount{Holder: h}, eval.Mount{Collets: co, Collet: n})...)
		}
	}
	for _, co := range c.build.Shop.Collets {
		t, err := drawing.ParseTaper(co.System.V)
		if !co.AtHand() || co.System.Is() && (err != nil || m.Taper.Is() && !t.Same(m.Taper.V)) {
			continue
		}
		n, holds := c.nominal(co, shank)
		add(holds, eval.Mount{Collets: co, Collet: n})
	}
}

// nominal gives the collet of a set for a shank: the smallest that is not too small.
func (c *chooser) nominal(co *model.Collets, shank model.Known[float64]) (float64, bool) {
	if !shank.Is() {
		_, hi, _ := eval.ColletSizes(co).Range()
		return hi, true
	}
	ns := eval.ColletSizes(co).Within(shank.V-model.Grain, shank.V+1.5, 1)
	if len(ns) == 0 {
		n, _ := eval.ColletSizes(co).Nearest(shank.V)
		return n, false
	}
	closes, ok := eval.ColletCloses(co, ns[0])
	return ns[0], !ok || shank.V >= ns[0]-closes-model.Grain
}

func (c *chooser) tapered(m *model.Machine, t eval.Pick, add adder) {
	shank := shankTaper(t.Cutter.Shank)
	if !shank.Is() {
		return
	}
	pre, ok := c.inSpindle(m, shank)
	add(ok, pre...)
}

// pinnedMounts reads the holders that are written, from the spindle outwards. A collet
// chuck that is named alone takes the collet of its system that suits the shank.
func (c *chooser) pinnedMounts(t eval.Pick, refs []model.Ref) []eval.Mount {
	shop := &c.build.Shop
	shank := eval.ShankDiameter(t)
	var out []eval.Mount
	for _, r := range refs {
		if h, ok := model.Find(shop.Holders, r.Item); ok {
			out = append(out, eval.Mount{Holder: h})
		} else if s, ok := model.Find(shop.Sleeves, r.Item); ok {
			out = append(out, eval.Mount{Sleeve: s})
		} else if co, ok := model.Find(shop.Collets, r.Item); ok {
			n, _ := c.nominal(co, shank)
			if r.Has {
				n = r.Size
			}
			out = append(out, eval.Mount{Collets: co, Collet: n})
		}
	}
	if n := len(out); n > 0 && out[n-1].Holder != nil && out[n-1].Holder.Kind == "collet_chuck" {
		for _, co := range shop.Collets {
			if co.AtHand() && (co.System.V == out[n-1].Holder.System.V || !co.System.Is()) {
				size, _ := c.nominal(co, shank)
				return append(out, eval.Mount{Collets: co, Collet: size})
			}
		}
	}
	return out
}
