package reckon

import (
	"fmt"
	"math"

	"fettle/eval/reckon/cutting"
	"fettle/schema/drawing"
	"fettle/schema/handbook"
)

// forces answers for what the cut pushes with, where enough is said.
func (c *cutPage) forces(t drawing.Thread) error {
	switch c.process {
	case "turning", "parting":
		return c.turned()
	case "milling":
		return c.milled()
	case "drilling":
		return c.drilled()
	case "tapping":
		return c.tapped(t)
	}
	return nil
}

// forceBand writes a band with its unit.
func forceBand(b cutting.Band, decimals int, unit string) string {
	lo, hi := round(b.Lo, decimals), round(b.Hi, decimals)
	if lo == hi {
		return lo + " " + unit
	}
	return lo + " to " + hi + " " + unit
}

func (c *cutPage) banded(name string, b cutting.Band, unit string) {
	c.value(name+", least", b.Lo, unit, "the tables")
	c.value(name+", most", b.Hi, unit, "the tables")
}

// tables shows what each table makes of a figure.
func (c *cutPage) tables(title string, b cutting.Band, decimals int) {
	t := Table{Title: title, Head: []Column{left("by"), right("figure")}, Most: 7}
	for _, s := range b.Says {
		t.Rows = append(t.Rows, []string{s.By, round(s.Value, decimals)})
		c.source("force: " + s.Source)
	}
	c.out.Tables = append(c.out.Tables, t)
}

// none says that no table has the metal; true where so.
func (c *cutPage) none(b cutting.Band) bool {
	if b.None() {
		c.say("No force is printed here for %s.", c.metal.Name)
	}
	return b.None()
}

func (c *cutPage) thin(is bool, chip float64) {
	if is {
		c.say("The chip of %s mm is thinner than %s mm, where the tables end: they are read at %s mm, and the edge may rub.", round(chip, 4), plain(cutting.Thin), plain(cutting.Thin))
	}
}

// motor is the power at the motor for the most that the tables make it.
func (c *cutPage) motor(b cutting.Band) error {
	share, ok := c.Number("share")
	if !ok {
		share = 0.75
	}
	kW, err := cutting.Motor(b.Hi, share)
	if err != nil {
		return err
	}
	c.say("Power at the spindle: %s; the motor needs up to %s W when %s of it comes through.", forceBand(b.Times(1000), 0, "W"), round(kW*1000, 0), plain(share))
	c.banded("power at the spindle", b, "kW")
	c.value("power of the motor, most", kW, "kW", "worked out")
	return nil
}

func (c *cutPage) turned() error {
	depth, ok := c.Length("depth")
	if c.process == "parting" {
		if depth, ok = c.Length("width"); !ok {
			return nil // the width of the blade is what it takes
		}
	}
	if !ok || c.feed <= 0 {
		return nil
	}
	d, err := cutting.Turn(c.metal.Group, depth, c.feed, 90, cutting.Speed(c.revs, c.diameter), c.diameter)
	if err != nil || c.none(d.Force) {
		return err
	}
	c.say("The cut pushes down with %s, back along the feed with %s, out of the work with %s; the torque is %s. The tables differ so much.",
		forceBand(d.Force, 0, "N"), forceBand(d.Feed, 0, "N"), forceBand(d.Back, 0, "N"), forceBand(d.Torque, 2, "N m"))
	c.thin(d.Thin, d.Chip)
	c.step("Force: %s x %s x kc, kc %s N/mm2 at a chip of %s mm: %s.", millimetres(depth), round(c.feed, 4), forceBand(d.KC, 0, "")[:len(forceBand(d.KC, 0, ""))-1], round(d.Chip, 4), forceBand(d.Force, 0, "N"))
	c.banded("force", d.Force, "N")
	c.banded("force out of the work", d.Back, "N")
	c.banded("torque", d.Torque, "N m")
	c.tables("Specific force, N/mm2", d.KC, 0)
	c.source("force along the feed 0.3 to 0.6 and out of the work 0.2 to 0.5 of the cutting force: common practice")
	return c.motor(d.Power)
}

func (c *cutPage) milled() error {
	depth, okDepth := c.Length("depth")
	width, okWidth := c.Length("width")
	teeth, okTeeth := c.Whole("teeth")
	if !okDepth || !okWidth || !okTeeth || c.feed <= 0 {
		return nil
	}
	m, err := cutting.Mill(c.metal.Group, c.diameter, width, depth, c.feed, teeth, c.revs)
	if err != nil || c.none(m.Tooth) {
		return err
	}
	c.say("A tooth pushes with %s while it cuts, %s at its most; round the cutter that is %s in the mean, a torque of %s.",
		forceBand(m.Tooth, 0, "N"), forceBand(m.Peak, 0, "N"), forceBand(m.Force, 0, "N"), forceBand(m.Torque, 2, "N m"))
	c.thin(m.Thin, m.Chip)
	c.step("Engaged: arccos(1 - 2 x %s/%s) = %s degrees; mean chip %s mm, %s teeth in the cut.", millimetres(width), millimetres(c.diameter), round(m.Engaged, 2), round(m.Chip, 4), round(m.TeethInCut, 2))
	c.step("Metal removed: %s x %s x feed = %s cm3/min.", millimetres(depth), millimetres(width), round(m.Removed, 2))
	c.banded("force of a tooth", m.Tooth, "N")
	c.banded("force of a tooth at its most", m.Peak, "N")
	c.banded("torque", m.Torque, "N m")
	c.tables("Specific force, N/mm2", m.KC, 0)
	return c.motor(m.Power)
}

func (c *cutPage) drilled() error {
	if c.feed <= 0 || c.diameter > 100 {
		return nil
	}
	d, err := cutting.Drill(c.metal.Group, c.diameter, math.Min(c.feed, 3), 118, 0.18, c.revs)
	if err != nil || c.none(d.Torque) {
		return err
	}
	c.say("The drill wants %s and pushes with %s; a thick chisel edge can push with twice as much. Hold the work against turning: clamp it, never by hand.", forceBand(d.Torque, 2, "N m"), forceBand(d.Thrust, 0, "N"))
	c.thin(d.Thin, d.Chip)
	c.step("Point 118 degrees, web 0.18 of the diameter: chip %s x sin 59 / 2 = %s mm at each lip.", round(c.feed, 4), round(d.Chip, 4))
	c.banded("torque", d.Torque, "N m")
	c.banded("thrust", d.Thrust, "N")
	c.tables("Torque, N m", d.Torque, 2)
	return c.motor(d.Power)
}

func (c *cutPage) tapped(t drawing.Thread) error {
	hole, ok := c.Length("hole")
	from := "--hole"
	if !ok {
		if hole, _, ok = handbook.TappingDrill(t); !ok {
			hole = t.Diameter - t.Pitch
		}
		from = "the tables"
	}
	if hole >= t.Diameter {
		return fmt.Errorf("--hole of %s mm leaves no thread of %s: below %s mm is wanted", millimetres(hole), t, millimetres(t.Diameter))
	}
	d, err := cutting.Tap(c.metal.Group, t.Diameter, t.Pitch, hole, t.Coarse)
	if err != nil || c.none(d.Torque) {
		return err
	}
	c.say("The tap wants %s in a hole of %s, by the tap and the table; a worn or a bottoming tap up to %s N m.", forceBand(d.Torque, 2, "N m"), c.Says(hole), round(d.Worn, 2))
	c.step("By the pitch: kc x %s x %s x %s / 8000; by the thread: tan 30 x kc x K x (%s - %s)^2 x (%s + 2 x %s) / 24000.", millimetres(t.Pitch), millimetres(t.Pitch), millimetres(t.Diameter),
		millimetres(t.Diameter), millimetres(hole), millimetres(t.Diameter), millimetres(hole))
	c.value("hole", hole, "mm", from)
	c.banded("torque", d.Torque, "N m")
	c.value("torque of a worn tap", d.Worn, "N m", "twice the most")
	c.tables("Torque, N m", d.Torque, 2)
	return nil
}

// finish says what ridges a nose leaves.
func (c *cutPage) finish() error {
	nose, ok := c.Length("nose")
	if !ok {
		return nil
	}
	if c.process != "turning" {
		return fmt.Errorf("--nose is of turning, not of %s", c.process)
	}
	if c.feed <= 0 {
		return nil
	}
	rz, ra, err := cutting.Rz(c.feed, nose)
	if err != nil {
		return err
	}
	c.say("A nose of %s leaves ridges of %s micrometres in theory, Ra about %s; tearing and shake add to it.", c.Says(nose), round(rz, 2), round(ra, 2))
	c.step("Ridges: 1000 x %s^2 / (8 x %s) = %s micrometres; Ra about a quarter.", round(c.feed, 4), millimetres(nose), round(rz, 3))
	c.value("Rz", rz, "um", "worked out")
	c.value("Ra", ra, "um", "about a quarter of Rz: common practice")
	c.source("finish: basic turning formulas of a toolmaker's catalogue 2016-17")
	return nil
}

// reaches says whether the process usually comes to a wanted grade and roughness.
func (c *cutPage) reaches() {
	process := c.process
	if r := map[string]string{"slitting": "slitting_saw", "parting": "turning"}[process]; r != "" {
		process = r
	}
	words := map[cutting.Reached]string{
		cutting.ByEvery: "usually comes to %s, by every source", cutting.BySome: "comes to %s by some sources and not by others",
		cutting.ByNone: "does not usually come to %s by any source", cutting.NotSaid: "comes to %s or not: no source here says",
	}
	if grade, ok := c.Whole("grade"); ok {
		c.say("%s "+words[cutting.ReachesGrade(process, grade)]+".", capital(c.process), fmt.Sprintf("grade IT%d", grade))
		c.source("grades: ANSI B4.1 as reprinted in Machinery's Handbook, from memory, and others in the handbook's table")
	}
	if ra, ok := c.Number("ra"); ok {
		c.say("%s "+words[cutting.ReachesRa(process, ra)]+".", capital(c.process), "Ra "+plain(ra)+" micrometres")
		c.source("roughness: two web tables of roughness by process")
	}
}
