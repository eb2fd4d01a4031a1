package eval

import (
	"fettle/eval/solid"
	"fettle/schema/model"
)

// A boring head turns with the spindle of a mill and carries a bar set out from the middle: what its
// edge sweeps is the bore, and its slide sets how wide that is. The bar reaches no deeper than it
// stands out, and goes some way beyond the far side of a through bore.

// boresWithHead says whether a hole is bored by a bar that turns.
func (c *CutChoice) boresWithHead() bool {
	return c.By == "boring" && c.Tool.Cutter != nil && c.Tool.Cutter.Kind == "boring_bar"
}

// BoresWithHead says whether a hole is bored by a bar that turns with the spindle.
func (k *Cut) BoresWithHead() bool { return k.Choice.boresWithHead() }

// swung gives the bar of a boring head the room that it sweeps: as wide as the bore that it cuts.
func (k *Cut) swung(s *Stack) {
	if !k.Choice.boresWithHead() || len(s.Bodies) == 0 || len(k.Step.Makes) == 0 || k.Step.Makes[0].Form == nil {
		return
	}
	d := k.wantedDiameter(k.Step.Makes[0].Form)
	b := &s.Bodies[0]
	for _, one := range [2]*solid.Turned{&b.Least, &b.Most} {
		one.R0, one.R1 = d/2, d/2
	}
	s.Diameter = model.Sure(d)
}

// Head is the boring head of an operation; nil where it has none.
func (k *Cut) Head() *model.Holder {
	for _, m := range k.Choice.Mounts {
		if m.Holder != nil && m.Holder.Kind == "boring_head" {
			return m.Holder
		}
	}
	return nil
}

// boredHere bores, drills or reams a bore in a holding that does not turn, where it goes in along
// the spindle; false of other forms.
func (k *Cut) boredHere(t Target) bool {
	f := t.Form
	if f.Feature.Kind != "bore" || f.Lathe == nil || len(f.Mouths) == 0 || k.Step.Work.Kind != "setup" {
		return false
	}
	switch k.Choice.By {
	case "boring", "drilling", "reaming", "spotting":
	default:
		return false
	}
	k.hole(t)
	if k.Part.Own(f.About) && !f.several() && len(k.Works) > 0 {
		l, d := f.Lathe, k.Part.Feature(k.After, f).Diameter
		k.After.Profile = k.After.Profile.bored(l.X0, l.X1, d/2, d/2)
	}
	return true
}
