package reckon

import (
	"fmt"
	"math"

	"fettle/eval/reckon/gear"
)

// lengths adds rows to a table of lengths, in mm and inch, and the same by name.
func (g *geared) lengths(t *Table, rows ...Value) {
	if t.Head == nil {
		t.Head = []Column{left(""), right("mm"), right("in")}
	}
	for _, v := range rows {
		t.Rows = append(t.Rows, []string{v.Name, millimetres(v.Figure), inches(v.Figure)})
		g.out.Values = append(g.out.Values, v)
	}
}

func gearLength(name string, x float64) Value { return figure(name, x, "mm", "worked out") }

// worm answers for a worm and its wheel.
func (g *geared) worm() error {
	if err := cmpErr(g.only("a worm and wheel", "worm", "module", "dp", "pressure", "depth", "face"), g.wants(2, "the worm's starts and the wheel's teeth, as in 2,30"), g.pitch()); err != nil {
		return err
	}
	w := gear.Worm{Starts: g.teeth[0], Teeth: g.teeth[1], Module: g.m, Pressure: g.angle, Depth: g.depth}
	w.Diameter, _ = g.Length("worm")
	w.Face, _ = g.Length("face")
	d, err := w.Drive()
	if err != nil {
		return err
	}
	g.say("Centre distance %s; ratio %s to 1.", g.Says(d.Centre), round(float64(w.Teeth)/float64(w.Starts), 6))
	g.say("Worm: turn it to %s, cut a lead of %s in %s, %s deep.", g.Says(d.WormTip), g.Says(d.Lead), counted(w.Starts, "start"), g.Says(d.Whole))
	g.say("Wheel: throat diameter %s, hollow of radius %s; gash with the blank set over by the lead angle of %s degrees, to the side of the worm's hand.",
		g.Says(d.Throat), g.Says(d.ThroatRadius), round(d.LeadAngle, 4))
	g.say("Worm and wheel are of one hand.")
	if d.Undercut {
		g.say("A wheel of fewer than %d teeth is undercut.", int(math.Ceil(d.LeastTeeth-1e-9)))
	}
	var t Table
	g.lengths(&t, gearLength("axial pitch", d.Pitch), gearLength("lead", d.Lead), gearLength("worm pitch diameter", w.Diameter), gearLength("worm tip diameter", d.WormTip), gearLength("worm root diameter", d.WormRoot),
		gearLength("wheel pitch diameter", d.Wheel), gearLength("throat diameter", d.Throat), gearLength("wheel root diameter", d.WheelRoot), gearLength("throat radius", d.ThroatRadius),
		gearLength("whole depth", d.Whole), gearLength("normal module", d.NormalModule), gearLength("rim that the worm fills", d.Face), gearLength("centre distance", d.Centre))
	if d.Corner > 0 {
		g.lengths(&t, gearLength("diameter over the corners", d.Corner))
	}
	g.out.Tables = append(g.out.Tables, t)
	g.value("lead angle", d.LeadAngle, "degrees", "worked out")
	g.value("virtual teeth", d.Virtual, "", "worked out")
	g.step("Lead = starts x pi x module = %d x %s = %s mm; tan(lead angle) = lead / (pi x %s).", w.Starts, millimetres(d.Pitch), millimetres(d.Lead), millimetres(w.Diameter))
	g.step("Centre distance = (%s + %s) / 2 = %s mm.", millimetres(w.Diameter), millimetres(d.Wheel), millimetres(d.Centre))
	g.step("A straight gash by a form cutter: virtual teeth = z / cos^3(lead angle) = %s. Finish with a hob or a fluted worm of the same size.", round(d.Virtual, 3))
	g.source("metric worm formulas; width of rim 2 m sqrt(q + 1) from memory")
	g.out.Caution = gearCaution
	return nil
}

// bevel answers for a pair of bevel wheels.
func (g *geared) bevel() error {
	if err := cmpErr(g.only("bevel wheels", "bevel", "module", "dp", "pressure", "depth", "shaft", "long", "face"), g.wants(2, "the teeth of pinion and wheel, as in 20,40"), g.pitch()); err != nil {
		return err
	}
	b := gear.Bevel{Teeth: [2]int{g.teeth[0], g.teeth[1]}, Module: g.m, Pressure: g.angle, Shaft: 90, Long: g.Yes("long"), Depth: g.depth}
	if s, ok := g.Angle("shaft"); ok {
		b.Shaft = s
	}
	b.Face, _ = g.Length("face")
	if b.Long && g.given("depth") {
		return fmt.Errorf("--depth says nothing of long and short addenda: their depth is laid down, 2.188 modules")
	}
	p, err := b.Pair()
	if err != nil {
		return err
	}
	if b.Long {
		g.out.Sources = []string{"long and short addenda of 90 degree drives: gear handbooks (from memory)"}
	}
	lengths := Table{Head: []Column{left(""), right("first mm"), right("in"), right("second mm"), right("in")}}
	angles := Table{Head: []Column{left(""), right("first degrees"), right("second degrees")}}
	row := func(name string, of func(gear.Cone) float64) {
		x, y := of(p.Cone[0]), of(p.Cone[1])
		lengths.Rows = append(lengths.Rows, []string{name, millimetres(x), inches(x), millimetres(y), inches(y)})
		g.out.Values = append(g.out.Values, gearLength("first "+name, x), gearLength("second "+name, y))
	}
	turn := func(name string, of func(gear.Cone) float64) {
		x, y := of(p.Cone[0]), of(p.Cone[1])
		angles.Rows = append(angles.Rows, []string{name, round(x, 4), round(y, 4)})
		g.value("first "+name, x, "degrees", "worked out")
		g.value("second "+name, y, "degrees", "worked out")
	}
	for i, c := range p.Cone {
		g.say("%s, %d teeth: turn it to %s at the large end with a face angle of %s degrees, and set the head to the root angle of %s degrees.",
			[]string{"First wheel", "Second wheel"}[i], b.Teeth[i], g.Says(c.Tip), round(c.Face, 4), round(c.Root, 4))
	}
	g.say("Depth at the large end %s; cone distance %s; the face should be at most a third of that, %s.", g.Says(p.Whole), g.Says(p.Distance), g.Says(p.MostFace))
	if b.Face > p.MostFace {
		g.say("The face of %s is wider.", g.Says(b.Face))
	}
	row("pitch diameter", func(c gear.Cone) float64 { return c.Reference })
	row("tip diameter", func(c gear.Cone) float64 { return c.Tip })
	row("addendum", func(c gear.Cone) float64 { return c.Addendum })
	row("dedendum", func(c gear.Cone) float64 { return c.Dedendum })
	row("apex to the tip's plane", func(c gear.Cone) float64 { return c.Apex })
	if b.Face > 0 {
		row("tip at the small end", func(c gear.Cone) float64 { return c.SmallTip })
	}
	turn("pitch angle", func(c gear.Cone) float64 { return c.Pitch })
	turn("face angle", func(c gear.Cone) float64 { return c.Face })
	turn("root angle", func(c gear.Cone) float64 { return c.Root })
	g.out.Tables = append(g.out.Tables, lengths, angles)
	g.value("cone distance", p.Distance, "mm", "worked out")
	g.step("tan(pitch angle) = sin S / (%d / %d + cos S), S = %s degrees: %s and %s degrees.", b.Teeth[1], b.Teeth[0], round(b.Shaft, 4), round(p.Cone[0].Pitch, 4), round(p.Cone[1].Pitch, 4))
	g.step("Cone distance = %s / (2 sin %s) = %s mm.", millimetres(p.Cone[0].Reference), round(p.Cone[0].Pitch, 4), millimetres(p.Distance))
	for i, c := range p.Cone {
		g.cone(i, c, b.Teeth[i])
	}
	g.source("straight bevel wheels, tip and root cones to one apex: any gear text")
	g.out.Caution = gearCaution + " A form cutter leaves a bevel tooth only near its true shape: the cutter must be thin enough for the space at the small end."
	return nil
}

// cone names the cutter of one bevel wheel.
func (g *geared) cone(i int, c gear.Cone, teeth int) {
	name := []string{"First wheel", "Second wheel"}[i]
	if c.Pitch > 90 {
		g.say("%s is hollow: no form cutter cuts it.", name)
		return
	}
	v := gear.Whole(c.Virtual)
	g.step("%s: virtual teeth = z / cos(pitch angle) = %d / cos %s, about %d.", name, teeth, round(c.Pitch, 4), v)
	g.value([]string{"first", "second"}[i]+" virtual teeth", float64(v), "", "worked out")
	g.cutters(name, v)
}
