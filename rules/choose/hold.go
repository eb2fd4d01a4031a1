package choose

import (
	"slices"
	"sort"

	"fettle/eval"
	"fettle/schema/model"
)

// holds lists the ways a stretch of work could be held, in the order they are tried: what
// is written down first and alone where anything is; of vises and mills by name; the faces
// that its operations enter up; the pair of jaws with the longer grip first; of parallels
// the tallest first.
func (c *chooser) holds(p *eval.Part, before *eval.State, w *eval.Work) []eval.HoldChoice {
	var out []eval.HoldChoice
	base := eval.HoldChoice{}
	s := w.SetUp
	machines, why := c.machines(p, w)
	if why != "" {
		return []eval.HoldChoice{{NotPlayed: why}}
	}
	grips, why := c.grips(s)
	if why != "" {
		return []eval.HoldChoice{{NotPlayed: why}}
	}
	share := mostHolds / len(machines) // so that the holdings on one machine do not crowd out the next
	for i, m := range machines {
		base.Machine = m
		for _, g := range grips {
			if len(out) >= share*(i+1) {
				break
			}
			h := base
			h.Vise, h.Clamps, h.Plate, h.ByHand = g.Vise, g.Clamps, g.Plate, g.ByHand
			if g.Divided != nil {
				out = append(out, c.onHeads(p, before, w, h, g.Divided)...)
				continue
			}
			out = append(out, c.attitudes(p, before, w, h)...)
		}
		out = out[:min(len(out), share*(i+1))]
	}
	return out
}

// mostHolds bounds what is tried for one set-up.
const mostHolds = 400

// machines lists the machines for a stretch of work: as written, else the mills, then, for
// holes alone, the drill presses.
func (c *chooser) machines(p *eval.Part, w *eval.Work) ([]*model.Machine, string) {
	shop := &c.build.Shop
	if r, ok := w.SetUp.Machine.Get(); ok {
		m, found := model.Find(shop.Machines, r.Item)
		switch {
		case r.Item == nil:
			return nil, r.Text + " is in no shop that was named"
		case !found:
			return nil, "work on " + r.Path() + " is not made on paper"
		}
		return []*model.Machine{m}, ""
	}
	var mills, presses []*model.Machine
	for _, m := range c.shelf.machines {
		switch {
		case m.Kind == "mill":
			mills = append(mills, m)
		case m.Kind == "drill_press":
			presses = append(presses, m)
		}
	}
	if !namesDisc(w) { // an upright spindle is the usual one for ends of cutters
		sort.SliceStable(mills, func(i, j int) bool { return !level(mills[i]) && level(mills[j]) })
	}
	if w.OnlyHoles() {
		mills = append(mills, presses...)
	}
	if len(mills) == 0 {
		if shop.Label == "" && len(shop.All) == 0 {
			return nil, "no shop was named, so no machine is known"
		}
		return nil, eval.NoMachineHere
	}
	return mills, ""
}

// namesDisc says whether a step names a cutter that goes on an arbor.
func namesDisc(w *eval.Work) bool {
	for _, st := range w.Steps {
		if st.Step == nil {
			continue
		}
		for _, r := range st.Step.Tool.V {
			if r.Item != nil && slices.Contains([]string{"side_and_face_cutter", "slitting_saw", "angle_cutter", "gear_cutter"}, r.Item.Kind) {
				return true
			}
		}
	}
	return false
}

// grips lists what could hold the piece: as written, else every vise that is here.
func (c *chooser) grips(s *model.SetUp) ([]eval.HoldChoice, string) {
	shop := &c.build.Shop
	if refs, ok := s.Hold.Get(); ok {
		for _, r := range refs {
			if d := c.divided(r.Item); d != nil { // what holds the piece on it stands before it
				if b := c.veeBlock(s); b != nil {
					return nil, b.Path() + " on " + r.Path() + " is not made on paper"
				}
				return []eval.HoldChoice{{Divided: d}}, ""
			}
		}
		for _, r := range refs {
			if r.Item == nil {
				switch r.Text {
				case "hand":
					return []eval.HoldChoice{{ByHand: true}}, ""
				case "centres":
					if on := c.centred(); len(on) > 0 {
						return on, ""
					}
					return nil, "no dividing head with a footstock is here to turn it between centres"
				}
				return nil, r.Text + " is in no shop that was named"
			}
			if v, ok := model.Find(shop.Vises, r.Item); ok {
				if p := c.anglePlate(s); p != nil {
					return nil, p.Path() + " in a vise is not made on paper"
				}
				return []eval.HoldChoice{{Vise: v}}, ""
			}
			if v, ok := model.Find(shop.Clamps, r.Item); ok {
				return []eval.HoldChoice{{Clamps: v, Plate: c.anglePlate(s)}}, ""
			}
		}
		if p := c.anglePlate(s); p != nil {
			out, why := c.clampsHere("nothing is here to clamp the work to " + p.Path() + " with")
			for i := range out {
				out[i].Plate = p
			}
			return out, why
		}
		if c.veeBlock(s) != nil {
			return c.clampsHere("nothing is here to clamp the work down in the vee block with")
		}
		if len(refs) > 0 {
			return nil, "how " + refs[len(refs)-1].Path() + " stands on a mill's table is not made on paper"
		}
	}
	var out []eval.HoldChoice
	for _, v := range c.shelf.vises {
		out = append(out, eval.HoldChoice{Vise: v})
	}
	if len(s.Clamps) > 0 {
		more, _ := c.clampsHere("")
		out = append(out, more...)
	}
	if len(out) == 0 {
		return nil, "nothing is known to hold it in"
	}
	return out, ""
}

// anglePlate is the angle plate that a set-up names as holding the work; nil where it names none.
func (c *chooser) anglePlate(s *model.SetUp) *model.AnglePlate {
	for _, r := range append(append([]model.Ref{}, s.Carries.V...), s.Hold.V...) {
		if v, ok := model.Find(c.build.Shop.AnglePlates, r.Item); ok {
			return v
		}
	}
	return nil
}

// clampsHere lists the clamps that are here; with none, why nothing holds.
func (c *chooser) clampsHere(why string) (out []eval.HoldChoice, without string) {
	for _, v := range c.build.Shop.Clamps {
		if v.AtHand() {
			out = append(out, eval.HoldChoice{Clamps: v})
		}
	}
	if len(out) == 0 {
		return nil, why
	}
	return out, ""
}

// heldSo spreads a grip with one face up and one back over the heights.
func (c *chooser) heldSo(p *eval.Part, before *eval.State, w *eval.Work, a eval.HoldChoice, up, back model.Face) []eval.HoldChoice {
	s := w.SetUp
	a.Up, a.Back = up, back
	if j := s.Jaws.V; len(j) == 2 {
		a.MovedJaw = j[1].Face
	}
	a.Along, a.Centred = s.Along.V, !s.Along.Is()
	for _, k := range s.Packing {
		a.Packing = max(a.Packing, k.Under.V) // several pieces lie side by side
	}
	if a.Plate != nil {
		a.Free = s.Free.V
	}
	lean, ok := c.lean(p, w, &a)
	if !ok {
		a.NotPlayed = "how far the piece is to lean is not known"
		return []eval.HoldChoice{a}
	}
	a.Lean = lean
	if a.Vee, a.NotPlayed = c.veed(p, before, s, &a); a.NotPlayed != "" {
		return []eval.HoldChoice{a}
	}
	if a.Vee != nil && a.Vee.Looks == "up" && a.Back.Axis() == 0 && !s.Jaws.Is() && !s.Back.Is() {
		return nil // the jaws, or the column, are beside the work
	}
	if a.Vise == nil {
		return []eval.HoldChoice{a}
	}
	a.RoundBar = c.roundBar(before, w, &a)
	all := c.heights(s, a)
	if j, ok := model.Find(c.build.Shop.SoftJaws, s.Soft.Named().V.Item); ok && s.Soft.Named().Is() {
		return c.softJaws(s, a, j)
	}
	if a.Vee != nil && !s.Parallels.Height.Is() && !s.Parallels.Of.Is() && !s.Grip.Is() {
		return all[len(all)-1:] // the block stands on the bed
	}
	if !s.Parallels.Height.Is() && !s.Parallels.Of.Is() && !s.Grip.Is() && !s.Soft.Step.Is() && a.JawDepth().Is() {
		high := before.Piece.Extent(up.Axis(), 1) - before.Piece.Extent(up.Axis(), -1)
		all = halfGripped(all, a.JawDepth().V-high/2)
	}
	return all
}

// roundBar is the bar at the moving jaw: as written; for a square_up with rough metal there
// the first that the shop has.
func (c *chooser) roundBar(before *eval.State, w *eval.Work, a *eval.HoldChoice) float64 {
	rb := w.SetUp.RoundBar
	rough := before.Faces[a.Back.Opposite()].Skin != ""
	if w.Facing != model.NoFace && !rough {
		return 0
	}
	switch {
	case rb.Diameter.Is():
		return rb.Diameter.V
	case rb.Of.Is():
		if rb.Of.V.Has {
			return rb.Of.V.Size
		}
		if b, ok := model.Find(c.build.Shop.RoundBars, rb.Of.V.Item); ok {
			d, _ := b.Diameter.V.Nearest(0)
			return d
		}
	case w.Facing != model.NoFace:
		for _, b := range c.build.Shop.RoundBars {
			if d, ok := b.Diameter.V.Nearest(0); ok && b.AtHand() {
				return d
			}
		}
	}
	return 0
}

// heights spreads a holding over the parallels: the height that is written, else with
// `grip` those that leave it, tallest first, else all of them, tallest first, and the bed.
func (c *chooser) heights(s *model.SetUp, a eval.HoldChoice) []eval.HoldChoice {
	at := func(pair *model.Parallels, height float64) eval.HoldChoice {
		h := a
		h.Pair, h.Height = pair, height
		return h
	}
	var most = a.JawDepth().Or(0)
	switch {
	case s.Soft.Step.Is() && s.Soft.Step.V > 0 && !s.Parallels.Height.Is() && !s.Parallels.Of.Is():
		a.Step = s.Soft.Step.V
		return []eval.HoldChoice{a}
	case s.Parallels.Height.Is():
		want := s.Parallels.Height.V
		for _, p := range c.build.Shop.Parallels {
			if p.AtHand() && p.Heights.V.Has(want) {
				return []eval.HoldChoice{at(p, want)}
			}
		}
		return []eval.HoldChoice{at(nil, want)}
	case s.Parallels.Of.Is():
		r := s.Parallels.Of.V
		p, _ := model.Find(c.build.Shop.Parallels, r.Item)
		if r.Has || p == nil {
			return []eval.HoldChoice{at(p, r.Size)}
		}
		return c.tallest(a, []*model.Parallels{p}, most)
	}
	switch {
	case s.Grip.Is():
		most -= s.Grip.V
	case !a.JawDepth().Is():
		most = tallestTried // how deep the jaws are is asked of the grip
	default:
		most -= model.Grain
	}
	return c.tallest(a, c.build.Shop.Parallels, most)
}

// halfGripped puts ways that come with the tallest pair first in the order in which they are tried
// where nothing is written: first the tallest that leaves half the piece between the jaws, then
// taller ones, then lower ones. Common practice.
func halfGripped(all []eval.HoldChoice, half float64) []eval.HoldChoice {
	n := 0 // so many are taller
	for n < len(all) && all[n].Height > half+model.Grain {
		n++
	}
	if n == 0 || n == len(all) {
		return all
	}
	taller := append([]eval.HoldChoice{}, all[:n]...)
	sort.SliceStable(taller, func(i, j int) bool { return taller[i].Height < taller[j].Height-model.Same })
	out := append([]eval.HoldChoice{all[n]}, taller...)
	return append(out, all[n+1:]...)
}

// tallestTried is the greatest height of parallels thought of in jaws of unknown depth, mm.
const tallestTried = 100

// mostPairs bounds how many heights of parallels are tried.
const mostPairs = 24

func (c *chooser) tallest(a eval.HoldChoice, pairs []*model.Parallels, most float64) []eval.HoldChoice {
	var out []eval.HoldChoice
	for _, p := range pairs {
		if !p.AtHand() || most <= 0 {
			continue
		}
		lo, _, _ := p.Heights.V.Range()
		hs := p.Heights.V.Within(max(lo, most-500), most, mostPairs)
		for i := len(hs) - 1; i >= 0; i-- {
			h := a
			h.Pair, h.Height = p, hs[i]
			out = append(out, h)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Height > out[j].Height+model.Same })
	return append(out, a)
}
