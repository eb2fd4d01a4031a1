package reckon

import (
	"fmt"

	"fettle/eval/reckon/geometry"
	"fettle/schema/handbook"
)

// Bars: what comes out of a round, and what a bar weighs.

func (q *drawn) polygon() error {
	n, ok := q.Whole("sides")
	across, isAcross := q.Length("across")
	bar, isBar := q.Length("round")
	if !ok || !isAcross && !isBar {
		return fmt.Errorf("polygon wants --sides, and --across or --round or both")
	}
	p, err := geometry.FromRound(n, bar)
	if isAcross {
		p, err = geometry.OfFlats(n, across)
	}
	if err != nil {
		return err
	}
	if isAcross && isBar {
		s, err := geometry.OnRound(n, across, bar)
		if err != nil {
			q.out.No = true
			q.say("No: %v.", err)
		} else if s.Lacks > 1e-9 {
			q.out.No = true
			q.say("No: %d flats %s across want a round of %s, and this one lacks %s mm.", n, q.Says(across), q.Says(p.Round), millimetres(s.Lacks))
			q.say("Its corners stay round: each flat is %s mm wide instead of %s mm, with %s mm of the round left between.", millimetres(s.Flat), millimetres(s.Want), millimetres(s.Round))
		} else {
			q.say("It fills out: the round has %s mm to spare on diameter; cut each flat %s deep into it.", millimetres(-s.Lacks), q.Says((bar-across)/2))
		}
		q.value("lacks", s.Lacks, "mm")
	}
	what := "across flats"
	if n%2 == 1 {
		what = "twice from the middle to a flat"
	}
	q.say("%d sides on a round of %s: %s %s, each flat %s wide, cut %s deep.", n, q.Says(p.Round), what, q.Says(p.Across()), q.Says(p.Side()), q.Says(p.Depth()))
	q.step("Round x cos(180 / %d) = %s: %s x %s = %s mm.", n, what, millimetres(p.Round), round(p.Across()/p.Round, 6), millimetres(p.Across()))
	q.step("Width of a flat = round x sin(180 / %d) = %s mm; depth = (%s - %s) / 2 = %s mm.", n, millimetres(p.Side()), millimetres(p.Round), millimetres(p.Across()), millimetres(p.Depth()))
	q.value("round", p.Round, "mm")
	q.value("across", p.Across(), "mm")
	q.value("side", p.Side(), "mm")
	q.value("depth", p.Depth(), "mm")
	return nil
}

func (q *drawn) bar() error {
	a, b, err := q.pair("widths")
	if err != nil {
		return err
	}
	want, err := geometry.RoundForBar(a, b)
	if err != nil {
		return err
	}
	q.say("A bar of %s x %s mm wants a round of %s, and what is wanted to clean up comes to it.", millimetres(a), millimetres(b), q.Says(want))
	if bar, ok := q.Length("round"); ok && bar < want-1e-9 {
		q.out.No = true
		q.say("No: the round of %s mm lacks %s mm; its corners stay round.", millimetres(bar), millimetres(want-bar))
	}
	q.step("sqrt(%s² + %s²) = %s mm.", millimetres(a), millimetres(b), millimetres(want))
	q.value("round", want, "mm")
	return nil
}

func (q *drawn) mass() error {
	l, err := q.lengths("size", "along")
	if err != nil {
		return err
	}
	s := geometry.Section{Size: l[0], Shape: map[string]geometry.Shape{"": geometry.Round, "round": geometry.Round, "square": geometry.Square, "hexagon": geometry.Hexagon,
		"octagon": geometry.Octagon, "flat": geometry.Flatbar}[q.Text("section")]}
	s.Other, _ = q.Length("other")
	s.Bore, _ = q.Length("bore")
	area, err := s.Area()
	if err != nil {
		return err
	}
	volume, err := s.Volume(l[1])
	if err != nil {
		return err
	}
	density, of, err := q.density()
	if err != nil {
		return err
	}
	m, err := geometry.Mass(volume, density)
	if err != nil {
		return err
	}
	q.say("%s of it weigh %s kg, by a density of %s kg/m³ of %s; the volume is %s cm³.", q.Says(l[1]), round(m, 4), round(density, 1), of, round(volume/1000, 4))
	q.step("Area across: %s mm².", round(area, 4))
	q.step("%s x %s x %s / 10^9 = %s kg.", round(area, 4), millimetres(l[1]), round(density, 1), round(m, 4))
	q.value("area", area, "mm²")
	q.value("volume", volume, "mm³")
	q.value("mass", m, "kg")
	q.out.Caution = "Bars vary in size and metal: the mass is for carrying and buying, not for what a sling or hoist may take."
	return nil
}

// density is the flag's, else the handbook's for the material.
func (q *drawn) density() (kgm3 float64, of string, err error) {
	if d, ok := q.Number("density"); ok {
		return d, "--density", nil
	}
	name := q.Text("material")
	m, ok := handbook.Material(name)
	switch {
	case name == "":
		return 0, "", fmt.Errorf("mass wants --material or --density")
	case !ok || m.Density <= 0:
		return 0, "", fmt.Errorf("%s is no metal of the handbook with a density: say --density in kg/m³", quoted(name))
	}
	q.out.Sources = append(q.out.Sources, "density of "+m.Name+": the handbook's table of materials")
	return m.Density, m.Name, nil
}
