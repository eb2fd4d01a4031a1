package rules

import (
	"fettle/eval"
	"fettle/schema/finding"
	"fettle/schema/model"
)

var _ = enter(Rule{
	Name:  "centres-wrong-for-wheels",
	Title: "the axes lie so that the teeth jam, or let each other go",
	Why: `Wheels run at the distance at which their pitch circles touch: half the module times the sum of the teeth. Laid out by the
outside diameters they hardly touch; too close they jam. Move a hole, or shift the teeth. On a rack the wheel's axis stands half
its pitch diameter, and its shift, from the rack's pitch line, which lies a module below the tips.`,
	Rows:      []string{"H18"},
	Source:    []string{"distance of the axes, backlash and contact ratio by ISO 21771 and the gear handbooks, from the teeth with their shift and thinning"},
	Level:     finding.Scrap,
	Judgement: finding.Fact,
	Trips:     exampleWheels("count = 40\n    module = 1", "count = 20\n    module = 1", "  centres = \"32 ±0.02\"\n"),
	Sound:     exampleWheels("count = 40\n    module = 1\n    thinned = 0.1", "count = 20\n    module = 1", "  centres = \"30 ±0.02\"\n"),
	OnJoint:   centresWrongForWheels,
})

func centresWrongForWheels(j *eval.Joint, a *Ask) {
	o := j.Mesh
	if o == nil || !o.Centres.Is() || !o.Standard.Is() {
		return
	}
	cause, at := j.Item.Path(), placeIn(j, "centres")
	own := "their pitch circles touch at " + mm(round(o.Standard.V))
	if o.IsWorm {
		wormCentres(j, a, cause, own)
		return
	}
	if o.Rack {
		rackCentres(j, a, cause)
		return
	}
	limits, ok := Need(a, o.At)
	if !ok {
		return
	}
	if !o.Close.Is() || !o.Far.Is() { // nearer than the base circles let them, or twice as far
		where := limits.Hi
		if !o.Close.Is() {
			where = limits.Lo
		}
		a.Say(cause, at, "at %s the teeth of %s and %s do not go into mesh at all; %s", mm(round(where)), o.Wheel.Name, o.Pinion.Name, own)
		return
	}
	// Of an outside pair the teeth come closer with the axes, of an inside pair as these part.
	tight, loose, where, far := o.Close.V, o.Far.V, limits.Lo, limits.Hi
	if o.Far.V.Backlash < o.Close.V.Backlash {
		tight, loose, where, far = o.Far.V, o.Close.V, limits.Hi, limits.Lo
	}
	switch {
	case loose.ContactRatio < 1:
		m := a.Say(cause, at, "at %s the teeth of %s and %s touch by %s of a pitch only: one lets go before the next holds; %s", mm(round(far)), o.Wheel.Name, o.Pinion.Name, hundredth(max(0, loose.ContactRatio)), own)
		m.Margin = finding.Margin{Has: loose.ContactRatio, Wants: 1, Unit: "pitch"}
	case tight.Backlash < -model.Same:
		m := a.Say(cause, at, "at %s the teeth of %s and %s jam by %s; %s", mm(round(where)), o.Wheel.Name, o.Pinion.Name, mm(round(-tight.Backlash)), own)
		m.Margin = Room(round(tight.Backlash), 0)
	default:
		if play, ok := o.Play.Get(); ok && (tight.Backlash < play.Lo-0.0005 || loose.Backlash > play.Hi+0.0005) {
			a.Say(cause, placeIn(j, "backlash"), "at %s the teeth of %s and %s have %s of backlash; %s is wanted; %s", span(limits), o.Wheel.Name, o.Pinion.Name,
				span(eval.Limits{Lo: tight.Backlash, Hi: loose.Backlash}), span(play), own)
			return
		}
		a.Clear(Room(round(tight.Backlash), 0), "the backlash of "+j.Item.Path())
	}
}

// rackCentres holds the distance of a wheel's axis from the pitch line of its rack against what the teeth want.
func rackCentres(j *eval.Joint, a *Ask, cause string) {
	o := j.Mesh
	at := placeIn(j, "centres")
	limits, ok := Need(a, o.At)
	if !ok || !o.RackClose.Is() || !o.RackFar.Is() {
		return
	}
	tight, loose := o.RackClose.V, o.RackFar.V
	own := "the teeth fit at " + mm(round(o.Standard.V)) + " from the axis to the pitch line, " + mm(round(o.Standard.V-o.Addendum)) + " to the tips of the rack"
	switch clear := min(tight.Clearance[0], tight.Clearance[1]); {
	case loose.ContactRatio < 1:
		m := a.Say(cause, at, "at %s the teeth of %s and %s touch by %s of a pitch only: one lets go before the next holds; %s", mm(round(limits.Hi)), o.Wheel.Name, o.Pinion.Name, hundredth(max(0, loose.ContactRatio)), own)
		m.Margin = finding.Margin{Has: loose.ContactRatio, Wants: 1, Unit: "pitch"}
	case tight.Backlash < -model.Same:
		m := a.Say(cause, at, "at %s the teeth of %s and %s jam by %s; %s", mm(round(limits.Lo)), o.Wheel.Name, o.Pinion.Name, mm(round(-tight.Backlash)), own)
		m.Margin = Room(round(tight.Backlash), 0)
	case clear < -model.Same:
		m := a.Say(cause, at, "at %s tips run %s into the floors between the teeth of %s and %s; %s", mm(round(limits.Lo)), mm(round(-clear)), o.Wheel.Name, o.Pinion.Name, own)
		m.Margin = Room(round(clear), 0)
	default:
		if play, ok := o.Play.Get(); ok && (tight.Backlash < play.Lo-0.0005 || loose.Backlash > play.Hi+0.0005) {
			a.Say(cause, placeIn(j, "backlash"), "at %s the teeth of %s and %s have %s of backlash; %s is wanted; %s", span(limits), o.Wheel.Name, o.Pinion.Name,
				span(eval.Limits{Lo: tight.Backlash, Hi: loose.Backlash}), span(play), own)
			return
		}
		a.Clear(Room(round(tight.Backlash), 0), "the backlash of "+j.Item.Path())
	}
}

// wormCentres compares the distance of worm and wheel: nearer than the pitch circles, the
// outsides of the worm run into the floors of the gashes by more than the usual clearance, a
// quarter of the module; farther by more than a module the teeth let go.
func wormCentres(j *eval.Joint, a *Ask, cause, own string) {
	o := j.Mesh
	m, ok := Need(a, o.Pinion.Module)
	if !ok {
		return
	}
	limits := eval.Limits{Lo: o.Mesh.Centres.V.Nominal, Hi: o.Mesh.Centres.V.Nominal}
	if o.At.Is() {
		limits = o.At.V
	}
	if near, far := limits.Lo-o.Standard.V, limits.Hi-o.Standard.V; near < -0.25*m-0.0005 || far > m+0.0005 {
		off := limits.Hi
		if near < -0.25*m-0.0005 {
			off = limits.Lo
		}
		f := a.Say(cause, placeIn(j, "centres"), "%s and %s are set %s apart; %s", o.Wheel.Name, o.Pinion.Name, mm(round(off)), own)
		f.Margin = Bound(round(abs(off-o.Standard.V)), round(m), "mm")
		return
	}
	a.Clear(finding.Margin{}, "")
}
