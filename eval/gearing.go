package eval

import (
	"fettle/eval/reckon/screwcut"
	"fettle/schema/model"
)

// Trains finds the change wheels of a lathe that cut a lead, the best first: at most two pairs, and
// an error either way of at most within parts in a million. Lead screw, wheels and fixed train of
// the lathe must be known; the error says which figure is out of range.
func Trains(m *model.Machine, lead screwcut.Pitch, within float64) (screwcut.Answer, error) {
	l, err := gears(m)
	if err != nil {
		return screwcut.Answer{}, err
	}
	for _, w := range m.Wheels.V {
		l.Wheels = append(l.Wheels, int(w))
	}
	return screwcut.Trains(l, screwcut.Wanted{Lead: lead, Within: within, Pairs: 2})
}

// gears is the lead screw and the fixed train of a lathe, without its wheels.
func gears(m *model.Machine) (l screwcut.Lathe, err error) {
	if s := m.LeadScrew.V; s.TPI > 0 {
		l.Screw, err = screwcut.PerInch(s.TPI)
	} else {
		l.Screw, err = screwcut.Millimetres(s.Lead)
	}
	if err == nil {
		l.Head, err = screwcut.FractionOf(m.FixedTrain.V)
	}
	return l, err
}

// WormLead is the axial pitch of a worm as it is written, exact, and that times its starts.
func WormLead(f *model.Feature) (pitch, lead screwcut.Pitch, err error) {
	switch {
	case f.Module.Is():
		pitch, err = screwcut.Module(f.Module.V)
	case f.DiametralPitch.Is():
		pitch, err = screwcut.DiametralPitch(f.DiametralPitch.V)
	default:
		pitch, err = screwcut.Millimetres(f.Pitch.V)
	}
	if err != nil {
		return pitch, lead, err
	}
	lead, err = pitch.Times(max(1, f.Starts.Or(1)))
	return pitch, lead, err
}

// Train is the train for what an operation cuts with a tool on the saddle, thread or worm: that of the
// wheels that are written, else the best; false where the lathe does not tell its wheels, or nothing serves.
func (k *Turn) Train() (screwcut.Train, bool) {
	m := k.Lathe()
	lead, within, ok := k.leadCut()
	if !ok || !m.LeadScrew.Is() || !m.FixedTrain.Is() {
		return screwcut.Train{}, false
	}
	if k.Step.Step.Wheels.Is() {
		t, err := k.GivenTrain()
		return t, err == nil
	}
	if !m.Wheels.Is() {
		return screwcut.Train{}, false
	}
	found, err := Trains(m, lead, within)
	if err != nil || len(found.Trains) == 0 {
		return screwcut.Train{}, false
	}
	return found.Trains[0], true
}

// leadCut is the lead that a tool on the saddle cuts, and how far it may be off, parts in a million;
// false of all other operations.
func (k *Turn) leadCut() (lead screwcut.Pitch, within float64, ok bool) {
	if k.Lathe() == nil || k.Unplayed != "" || k.Choice.Tool.Cutter == nil || k.Choice.Tool.Cutter.Kind != "threading_tool" {
		return lead, 0, false
	}
	lead, err := screwcut.Millimetres(k.Choice.Tool.Thread.Pitch)
	within = NearThread
	for _, t := range k.Step.Makes {
		switch {
		case t.Form == nil:
		case t.Form.Feature.Kind == "worm":
			_, lead, err = WormLead(t.Form.Feature)
			within = NearWorm
		case t.Form.Feature.Kind == "thread":
			lead, err = LeadOf(t.Form, k.Choice.Tool.Thread.Pitch)
			within = k.NearLead(t.Form)
		}
	}
	return lead, within, err == nil
}

// GivenTrain is the train of the wheels that are written at an operation, which cuts a lead; an error
// says why they make none. Lead screw and fixed train of the lathe must be known.
func (k *Turn) GivenTrain() (screwcut.Train, error) {
	lead, _, _ := k.leadCut()
	l, err := gears(k.Lathe())
	if err != nil {
		return screwcut.Train{}, err
	}
	var wheels []int
	for _, w := range k.Step.Step.Wheels.V {
		wheels = append(wheels, int(w))
	}
	return screwcut.Given(l, wheels, lead)
}

// How far the lead of a train may be off and still serve, parts in a million: of a thread, common
// practice; of a worm it is looked for up to a fiftieth, and a rule asks how much is too much.
const (
	NearThread = 500.0
	NearWorm   = 20000.0
)
