package eval

import (
	"strings"

	"fettle/schema/finding"
	"fettle/schema/model"
)

// BoughtThing is a thing that is bought ready and goes into the build.
type BoughtThing struct {
	Thing   string // "bearings.small", "pins.dowels[4], 16 mm long", "M5x16 cap screw"
	For     string // "part.race", "fit.pin"
	Spot    finding.Spot
	Of      []*Part // the parts that it goes into, or is
	Missing bool    // the shop says that it is not here, or not in that size
}

// BoughtThings lists what is bought: parts in their order, then what joints and grooves take.
func (t *Trace) BoughtThings() (out []BoughtThing) {
	pins := map[*FitJoint]*PinLength{}
	for _, l := range t.PinLengths() {
		pins[l.One], pins[l.Two] = &l, &l
	}
	for _, p := range t.Parts {
		m := p.Part.Part
		if as, ok := m.Bought.As.Get(); ok && as.Item != nil {
			out = append(out, BoughtThing{Thing: as.Path(), For: m.Path(), Spot: finding.Spot{Part: m.Label}, Of: []*Part{p.Part}, Missing: !isHere(as.Item)})
		} else if m.Bought.Yes.V {
			out = append(out, BoughtThing{Thing: m.Path(), For: "bought ready", Spot: finding.Spot{Part: m.Label}, Of: []*Part{p.Part}})
		}
		out = append(out, t.rings(p.Part)...)
	}
	for _, j := range t.Joints {
		switch {
		case j.Fit != nil:
			out = append(out, t.boughtForFit(j, pins[j.Fit])...)
		case j.Screw != nil && j.Screw.Thread.Is():
			out = append(out, t.boughtScrew(j))
		}
	}
	return out
}

// rings are the circlips of a part's grooves.
func (t *Trace) rings(p *Part) (out []BoughtThing) {
	for _, f := range p.Forms {
		_, on, ok := p.CirclipOf(f.Feature)
		if !ok {
			continue
		}
		seat, inside := "shaft", f.Lathe != nil && f.Lathe.Inside
		if inside {
			seat = "bore"
		}
		r := BoughtThing{Thing: "circlip for a " + seat + " of " + model.Figure(on) + " mm", For: p.Path() + "." + f.Name(), Spot: finding.Spot{Part: p.Label}, Of: []*Part{p}}
		for _, c := range t.Build.Shop.Circlips {
			if c.Inside.Or(false) == inside && c.Here() {
				r.Missing = true // until one of them has it
			}
		}
		for _, c := range t.Build.Shop.Circlips {
			if c.Inside.Or(false) == inside && c.Here() && c.Diameter.V.Has(on) {
				r.Missing = false
			}
		}
		out = append(out, r)
	}
	return out
}

// boughtForFit is the bearing or pin that a fit names itself.
func (t *Trace) boughtForFit(j *Joint, l *PinLength) (out []BoughtThing) {
	f := j.Fit
	for _, d := range []*Dimension{&f.Hole, &f.Shaft} {
		r, _, ok := d.thing()
		if !ok || d.Part != nil {
			continue
		}
		r.Sub = ""
		b := BoughtThing{Thing: r.Path(), For: j.Item.Path(), Spot: j.Spot, Missing: !isHere(r.Item)}
		if l != nil && l.Length.Is() && d == &f.Shaft {
			b.Thing += ", " + model.Figure(l.Length.V) + " mm long"
		}
		for _, p := range []*Part{f.Hole.Part, f.Shaft.Part} {
			if p != nil {
				b.Of = append(b.Of, p)
			}
		}
		out = append(out, b)
	}
	return out
}

// boughtScrew is the screw of a joint, from the box of the shop that has it.
func (t *Trace) boughtScrew(j *Joint) BoughtThing {
	s := j.Screw
	kind := "screw"
	if h := s.Model.Head; h.V == "stud" {
		kind = h.V
	} else if h.Is() {
		kind = h.V + " screw"
	}
	b := BoughtThing{Thing: strings.TrimSpace(s.Model.Size.V) + " " + kind, For: j.Item.Path(), Spot: j.Spot}
	if s.Part != nil {
		b.Of = append(b.Of, s.Part)
	}
	for _, p := range s.Passes {
		if p.Part != nil {
			b.Of = append(b.Of, p.Part)
		}
	}
	for _, box := range t.Build.Shop.Screws {
		th, ok := box.Thread.Get()
		if !ok || !box.Here() || !th.Same(s.Thread.V) || box.Head.Is() && s.Model.Head.Is() && box.Head.V != s.Model.Head.V || !box.Lengths.Is() || s.Length == 0 {
			continue
		}
		if box.Lengths.V.Has(s.Length) {
			b.Thing, b.Missing = b.Thing+", of "+box.Path(), false
			break
		}
		b.Missing = true
	}
	return b
}

// isHere says whether a thing of the shop is here, as far as it says.
func isHere(i *model.Item) bool {
	if s := i.Attr("state"); s != nil {
		switch s.Value.Text {
		case "lent out", "to make", "on order":
			return false
		}
	}
	return true
}
