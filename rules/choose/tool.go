package choose

import (
	"math"
	"sort"

	"fettle/eval"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
	"fettle/schema/model"
)

// mostSizes bounds how many members of one set are tried.
const mostSizes = 12

// tools lists the tools for an operation in the order they are tried: what is written
// alone, else what the process calls for.
func (c *chooser) tools(k *asked) []eval.Pick {
	if refs := k.pinnedTools(); len(refs) > 0 {
		var out []eval.Pick
		for _, r := range refs {
			if cu, ok := model.Find(c.build.Shop.Cutters, r.Item); ok {
				out = append(out, c.picked(k, cu, r)...)
			}
		}
		return out
	}
	switch k.by {
	case "drilling":
		return c.drills(k)
	case "reaming":
		return append(c.sized(k, []string{"reamer"}, k.wanted()), c.opened(k.wanted())...)
	case "tapping":
		return c.taps(k)
	case "counterboring":
		d := k.target.Form.Feature.Counterbore.Diameter.V.Nominal
		return c.sized(k, []string{"counterbore", "end_mill", "slot_drill"}, d)
	case "countersinking":
		return c.countersinks(k)
	case "spotting", "centring":
		if f := k.target.Form; f != nil && f.Feature.Kind == "centre_hole" {
			return c.centreDrills(k)
		}
		return c.any(k, []string{"centre_drill"}, false)
	case "sawing":
		return c.saws(k)
	case "engraving":
		return c.points(k)
	case "threading":
		return c.dies(k)
	case "boring":
		return c.boringBars(k)
	case "milling", "plunging":
		switch f := k.target.Form; {
		case f.Module() > 0:
			return c.gearCutters(k)
		case f.Section() != nil:
			return c.notchCutters(k, f.Section())
		}
		return c.mills(k)
	}
	return nil
}

// picked gives the members that a pinned block offers: the one named, else those that suit.
func (c *chooser) picked(k *asked, cu *model.Cutter, r model.Ref) []eval.Pick {
	if cu.Kind == "tap" {
		if out := tapPicks(k, cu, r); len(out) > 0 {
			return out
		}
		return []eval.Pick{{Cutter: cu}}
	}
	if t, ok := setTo(cu, k.wanted()); ok && k.by == "reaming" && (!r.Has || t.Size >= r.Size && t.Size <= r.Size+cu.Opens.V) {
		return []eval.Pick{t}
	}
	if r.Has {
		return []eval.Pick{c.pick(k, cu, r.Size)}
	}
	if d, ok := k.throatSwing(cu); ok {
		return []eval.Pick{{Cutter: cu, Size: d}}
	}
	if d, ok := k.faceSwing(cu); ok {
		return []eval.Pick{{Cutter: cu, Size: d}}
	}
	if cu.Diameter.Is() && cu.Diameter.V.Single {
		d, _ := cu.Diameter.V.Nearest(0)
		return []eval.Pick{c.pick(k, cu, d)}
	}
	want := k.wanted()
	if k.by == "drilling" {
		want = k.drillSize()
		if d, ok := k.nearDrill(cu, want); ok {
			return []eval.Pick{c.pick(k, cu, d)}
		}
	}
	var out []eval.Pick
	for _, d := range cu.Diameter.V.Within(want-exactly, want+exactly, 1) {
		out = append(out, c.pick(k, cu, d))
	}
	if len(out) == 0 && k.by == "milling" {
		for _, d := range downFrom(cu.Diameter.V, k.widest()) {
			out = append(out, c.pick(k, cu, d))
		}
	}
	if len(out) == 0 {
		if d, ok := cu.Diameter.V.Nearest(want); ok {
			out = append(out, c.pick(k, cu, d))
		} else {
			out = append(out, eval.Pick{Cutter: cu})
		}
	}
	return out
}

func (c *chooser) pick(k *asked, cu *model.Cutter, d float64) eval.Pick {
	t := eval.Pick{Cutter: cu, Size: d}
	for _, m := range cu.Diameter.V.List {
		if math.Abs(m.Size-d) < model.Same {
			t.Name = m.Name
		}
	}
	return t
}

func (c *chooser) here(kinds []string) []*model.Cutter {
	var out []*model.Cutter
	for _, kind := range kinds {
		for _, cu := range c.build.Shop.Cutters {
			if cu.Kind == kind && cu.AtHand() {
				out = append(out, cu)
			}
		}
	}
	return out
}

// sized lists the tools of the kinds that cut just that size.
func (c *chooser) sized(k *asked, kinds []string, d float64) []eval.Pick {
	var out []eval.Pick
	for _, cu := range c.here(kinds) {
		for _, m := range cu.Diameter.V.Within(d-exactly, d+exactly, 1) {
			out = append(out, c.pick(k, cu, m))
		}
	}
	return out
}

// opened lists the adjustable reamers that are set to just that size.
func (c *chooser) opened(d float64) []eval.Pick {
	var out []eval.Pick
	for _, cu := range c.here([]string{"reamer"}) {
		if t, ok := setTo(cu, d); ok {
			out = append(out, t)
		}
	}
	return out
}

// setTo is an adjustable reamer opened to a size above the least of one of its blades; false where it
// does not open so far, or is not adjustable.
func setTo(cu *model.Cutter, d float64) (eval.Pick, bool) {
	if cu.Kind != "reamer" || !(cu.Opens.V > 0) {
		return eval.Pick{}, false
	}
	least := cu.Diameter.V.Within(d-cu.Opens.V, d-exactly, 1)
	return eval.Pick{Cutter: cu, Size: d}, len(least) > 0
}

// any lists one member of every tool of the kinds: the largest, or the smallest.
func (c *chooser) any(k *asked, kinds []string, largest bool) []eval.Pick {
	var out []eval.Pick
	for _, cu := range c.here(kinds) {
		lo, hi, ok := cu.Diameter.V.Range()
		if !ok {
			continue
		}
		if largest {
			lo = hi
		}
		out = append(out, c.pick(k, cu, lo))
	}
	return out
}

func (c *chooser) taps(k *asked) []eval.Pick {
	var out []eval.Pick
	for _, cu := range c.here([]string{"tap"}) {
		out = append(out, tapPicks(k, cu, model.Ref{})...)
	}
	return out
}

// tapPicks lists the taps of a block that cut the thread, or the member that is named:
// through holes begin with the longest lead, blind ones with the shortest.
func tapPicks(k *asked, cu *model.Cutter, named model.Ref) []eval.Pick {
	var want drawing.Thread
	ok := false
	if named.Has {
		want, ok = tapNamed(cu, named.Name)
	} else if f := k.target.Form; f != nil {
		want, ok = f.Feature.Thread.Size.Get()
	}
	if !ok {
		return nil
	}
	has := false
	for _, t := range cu.Threads.V {
		has = has || t.Same(want)
	}
	if !has {
		return nil
	}
	leads := append([]model.Lead(nil), cu.Leads.V...)
	sort.SliceStable(leads, func(i, j int) bool {
		if k.target.Form != nil && k.target.Form.Through {
			return eval.LeadLength(leads[i]) > eval.LeadLength(leads[j])
		}
		return eval.LeadLength(leads[i]) < eval.LeadLength(leads[j])
	})
	if len(leads) == 0 {
		leads = []model.Lead{{}}
	}
	var out []eval.Pick
	for _, l := range leads {
		out = append(out, eval.Pick{Cutter: cu, Size: want.Diameter, Thread: want, Lead: l})
	}
	return out
}

// tapNamed finds the thread of a set of taps by its designation.
func tapNamed(cu *model.Cutter, name string) (drawing.Thread, bool) {
	t, err := drawing.ParseThread(name)
	if err != nil {
		return t, false
	}
	if full, ok := handbook.FillThread(t); ok {
		t = full
	}
	for _, o := range cu.Threads.V {
		if o.Same(t) {
			return o, true
		}
	}
	return t, false
}

func (c *chooser) countersinks(k *asked) []eval.Pick {
	f := k.target.Form
	need, angle := f.Feature.Countersink.Diameter.V.Nominal, f.Feature.Countersink.Angle
	if len(f.Rims) > 0 {
		need = f.Rims[0].Hole.Diameter.Or(0) + 2*f.Size
		angle = model.Known[float64]{V: 2 * f.Feature.Angle.Or(45), From: model.WorkedOut}
	}
	var out []eval.Pick
	for _, cu := range c.here([]string{"countersink"}) {
		if a, ok := cu.Angle.Get(); ok && angle.Is() && math.Abs(a-angle.V) > 0.01 {
			continue
		}
		for _, d := range cu.Diameter.V.Within(need-model.Grain, need+100, 1) {
			out = append(out, c.pick(k, cu, d))
		}
	}
	return out
}

// saws lists the saws as wide as the slit, the smallest first: it runs truest. The width
// counts as right where the saw, with its wobble, cuts within the limits of the slit.
func (c *chooser) saws(k *asked) []eval.Pick {
	f := k.target.Form
	size := f.Feature.Width
	if f.Feature.Kind == "split" {
		size = f.Feature.Kerf
	}
	lim := eval.LimitsOf(size.V, c.build.Recipe.General, f.Feature.Item, "width")
	var out []eval.Pick
	for _, cu := range c.here([]string{"slitting_saw", "side_and_face_cutter"}) {
		w, ok := cu.Width.Get()
		d, ok2 := cu.Diameter.V.Nearest(0)
		if !ok || !ok2 {
			continue
		}
		cuts := w + cu.Wobble.Or(0)
		right := math.Abs(w-f.Width) < 0.005
		if l, ok := lim.Get(); ok {
			right = right || w >= l.Lo-model.Grain && cuts <= l.Hi+model.Grain
		}
		if right {
			out = append(out, c.pick(k, cu, d))
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Size < out[j].Size })
	return out
}

// mills lists the milling cutters: for a face the widest first; for a slot the one that
// fills it, then narrower ones; for an inside corner none with a larger radius.
func (c *chooser) mills(k *asked) []eval.Pick {
	kinds := []string{"end_mill", "slot_drill"}
	t := k.target
	if k.faces() {
		kinds = []string{"face_mill", "end_mill", "slot_drill", "fly_cutter"}
	} else if u := t.Form.Under; u != nil && k.part.Feature(k.before, t.Form).Begun {
		return c.undercutters(k, u)
	} else if s := t.Form.Seat; s != nil {
		return c.keyseats(k, s.Diameter)
	} else if t.Form.Feature.Kind == "slot" || t.Form.Feature.Kind == "keyway" || u != nil || t.Form.Feature.Kind == "pocket" || k.by == "plunging" {
		kinds = []string{"slot_drill", "end_mill"}
	}
	widest := k.widest()
	out := c.blades(k)
	for _, cu := range c.here(kinds) {
		if cu.Kind == "fly_cutter" {
			if s, ok := cu.SwingOf.Get(); ok && len(s) > 0 {
				out = append(out, eval.Pick{Cutter: cu, Size: s[len(s)-1]})
			}
			continue
		}
		for _, d := range downFrom(cu.Diameter.V, widest) {
			out = append(out, c.pick(k, cu, d))
		}
	}
	n := len(c.blades(k)) // they stay in front
	sort.SliceStable(out[n:], func(i, j int) bool { return out[n+i].Size > out[n+j].Size+model.Same })
	return out
}

// undercutters lists the cutters for the second go at a tee slot or dovetail, the largest that
// goes in first.
func (c *chooser) undercutters(k *asked, u *eval.Undercut) []eval.Pick {
	kind := "tee_slot_cutter"
	if u.Angle > 0 {
		kind = "dovetail_cutter"
	}
	most := u.Foot
	if u.Tongue {
		most = 1000
	}
	var out []eval.Pick
	for _, cu := range c.here([]string{kind}) {
		if a, ok := cu.Angle.Get(); ok && u.Angle > 0 && math.Abs(a-u.Angle*180/math.Pi) > 0.01 {
			continue
		}
		for _, d := range downFrom(cu.Diameter.V, most) {
			out = append(out, c.pick(k, cu, d))
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Size > out[j].Size+model.Same })
	return out
}

// downFrom lists the members not above a size, the largest first.
func downFrom(s model.Sizes, most float64) []float64 {
	lo, hi, ok := s.Range()
	if !ok {
		return nil
	}
	most = min(most, hi)
	var out []float64
	for len(out) < mostSizes && most >= lo-model.Same {
		d, ok := under(s, most)
		if !ok {
			break
		}
		out = append(out, d)
		most = d - 2*model.Same
	}
	return out
}

// under gives the largest member not above a size.
func under(s model.Sizes, most float64) (float64, bool) {
	best, ok := 0.0, false
	for _, m := range s.List {
		if m.Size <= most+model.Same && (!ok || m.Size > best) {
			best, ok = m.Size, true
		}
	}
	for _, r := range s.Series {
		if r.By <= 0 || most < r.From-model.Same {
			continue
		}
		n := math.Floor((min(most, r.To)-r.From)/r.By + model.Same)
		if d := r.From + n*r.By; !ok || d > best {
			best, ok = d, true
		}
	}
	return best, ok
}

// material is what the part is made of, for the cutting tables.
func material(p *eval.Part) string { return p.MetalGroup() }

func sameTaper(a, b model.Known[drawing.Taper]) bool {
	return a.Is() && b.Is() && a.V.Same(b.V)
}
