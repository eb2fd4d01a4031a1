package reckon

import (
	"math"

	"fettle/eval/reckon/gear"
)

// mesh tells how two wheels run.
func (g *geared) mesh(all []toothed) error {
	centre, given := g.Length("centre")
	m, err := gear.Pair(all[0].Wheel, all[1].Wheel, centre)
	if err != nil {
		return err
	}
	g.say("Centre distance %s; ratio %d to %d, %s.", g.Says(m.Centre), all[1].Teeth, all[0].Teeth, round(float64(all[1].Teeth)/float64(all[0].Teeth), 6))
	sign := "+"
	if all[1].Internal {
		sign = "-"
	}
	g.step("Centre distance without shift = (%s %s %s) / 2 = %s mm.", millimetres(all[1].blank.Reference), sign, millimetres(all[0].blank.Reference), millimetres(m.Standard))
	if math.Abs(m.Centre-m.Standard) > 1e-9 {
		g.step("inv(working angle) = inv a + 2 tan a x shifts / teeth: the working angle is %s degrees, and the centre distance %s x cos a / cos(working angle) = %s mm.",
			round(m.Pressure, 4), millimetres(m.Standard), millimetres(m.Centre))
	}
	g.runs(m, all, given)
	if m.Shorten > 0 {
		for i := range all {
			if err := g.shorten(&all[i], m.Shorten); err != nil {
				return err
			}
		}
		g.step("The tips are shortened by %s mm so that the clearance at the root stays %s mm.", millimetres(m.Shorten), millimetres(g.depth.Clearance(g.m)))
	}
	if all[0].Helix > 0 {
		g.say("One wheel right-handed, the other left-handed; on shafts at right angles both would be of one hand. A face of %s overlaps by one tooth.", g.Says(m.Overlap))
	}
	g.value("centre distance", m.Centre, "mm", "worked out")
	g.value("working angle", m.Pressure, "degrees", "worked out")
	g.value("contact ratio", m.ContactRatio, "", "worked out")
	g.value("backlash", m.Backlash, "mm", "worked out")
	return nil
}

// runs judges backlash, contact and fouling.
func (g *geared) runs(m gear.Mesh, all []toothed, given bool) {
	switch {
	case m.Backlash < -1e-6:
		g.out.No = true
		g.say("At that centre distance the teeth jam: they are %s too thick, measured along the pitch circle.", g.Says(-m.Backlash))
	case m.Backlash > 1e-6:
		g.say("They run with %s of backlash along the pitch circle.", g.Says(m.Backlash))
	default:
		g.say("They run without backlash: real wheels want some, taken off the teeth (--backlash) or given by the centres.")
	}
	if given {
		if x, err := gear.SharedShift(all[0].Wheel, all[1].Wheel, m.Centre); err == nil {
			what := "together"
			if all[1].Internal {
				what = "more on the second than on the first"
			}
			g.say("Without backlash there the profile shift is %s modules %s.", round(x, 4), what)
			g.value("shift for the centre distance", x, "", "worked out")
		}
	}
	switch c := m.ContactRatio; {
	case c < 1:
		g.out.No = true
		g.say("The contact ratio is %s: a tooth leaves before the next one meets.", round(c, 3))
	case c < 1.2:
		g.say("The contact ratio is %s, which is little: 1.2 is usually wanted (common practice).", round(c, 3))
	}
	g.step("Contact ratio %s; clearance %s and %s mm.", round(m.ContactRatio, 3), millimetres(m.Clearance[0]+m.Shorten), millimetres(m.Clearance[1]+m.Shorten))
	if least := min(m.Clearance[0], m.Clearance[1]) + m.Shorten; least < 0 {
		g.out.No = true
		g.say("Tips foul the roots by %s.", g.Says(-least))
	}
	in, err := gear.Interferes(all[0].Wheel, all[1].Wheel, m)
	if err != nil || !all[1].Internal {
		return
	}
	if in.Involute < -1e-9 {
		g.out.No = true
		g.say("The tips of the internal wheel reach below the pinion's base circle by %s of the line of action and foul it: more teeth or shift in the pinion, or shorter tips.", g.Says(-in.Involute))
	}
	if in.Cross && in.Tips < 0 {
		g.out.No = true
		g.say("The corners of the teeth meet by %s degrees as they pass: the counts are too near each other.", round(-in.Tips, 3))
	}
}
